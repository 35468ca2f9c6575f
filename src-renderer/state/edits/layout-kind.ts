/** What the motifs are made into: a blanket, a garland or an appliqué; and the way from one to another. */
import type { Colourway, Layout, Project } from '../../../shared-types/project'
import { firstSizes } from './first-sizes'
import { mainMotif } from './motif'

export const LAYOUT_KINDS = ['blanket', 'garland', 'applique'] as const
export type LayoutKind = (typeof LAYOUT_KINDS)[number]

/** What a project is made into; one without a layout is a blanket. */
export const layoutKindOf = (project: Project): LayoutKind => project.layout?.kind ?? 'blanket'

/**
 * The project laid out as another kind, from the motifs that it has. What the kit holds is kept; the layout
 * before is not: undo brings it back.
 */
export function setLayoutKind(project: Project, kind: LayoutKind): Project {
  if (layoutKindOf(project) === kind && project.layout) return project
  const { kit } = project.layout ?? {}
  return { ...project, layout: { ...newLayout(project, kind), ...(kit && { kit }) } }
}

function newLayout(project: Project, kind: LayoutKind): Layout {
  const motifs = project.motifs ?? []
  const first = firstSizes(project.units)
  const wayOf = (motif: string): Colourway | undefined =>
    project.colourways?.find((way) => way.motif === motif || way.motif === undefined)
  switch (kind) {
    case 'garland': {
      const yarn = Object.values(wayOf(motifs[0]?.id ?? '')?.yarns ?? {}).at(-1) ?? project.yarns?.[0]?.id
      return {
        kind,
        cord: { ...first.cord, worked: 'chain', ...(yarn && { yarn }) },
        items: motifs.map(({ id }) => ({ motif: id, ...colourwayField(wayOf(id)) })),
        spacing: { between: 'edges', mm: first.spacing },
      }
    }
    case 'applique':
      return {
        kind,
        panel: {
          ...{ shape: 'rectangle', width: first.panel.across, height: first.panel.across },
          allowance: first.panel.allowance,
        },
        clearance: first.clearance,
        items: [],
      }
    default: {
      const motif = mainMotif(project)
      const way = motif && wayOf(motif.id)
      return {
        kind: 'blanket',
        arrangement: 'offset-rows',
        ...(motif && { motif: motif.id }),
        columns: 8,
        rows: 8,
        alternateRows: 'same',
        ...(way && { cells: { fill: { pattern: 'one', colourways: [way.id], seed: 1 } } }),
      }
    }
  }
}

const colourwayField = (way: Colourway | undefined) => (way ? { colourway: way.id } : {})
