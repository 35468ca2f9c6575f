/** What the motifs are made into: a blanket, a garland or an appliqué; and the way from one to another. */
import type { Project } from '../../../shared-types/project'
import { LAYOUT_KINDS } from '../../../shared-types/project'
import type { LayoutKind } from '../../../src-core/plans/layouts'
import { accountOf } from '../../../src-core/accounts'
import { layoutKindOf } from '../../../src-core/plans/layouts'
import { NEW_LAYOUTS } from '../../kinds/layouts'
import { firstSizes } from '../../../src-core/layout/first-sizes'
import { mainMotif } from './motif'

export { LAYOUT_KINDS, layoutKindOf }
export type { LayoutKind }

type Layout = NonNullable<Project['layout']>

/** Layouts as they were left, one of each kind; each with the motifs that it was made of. */
export type LeftLayouts = Readonly<
  Partial<Record<LayoutKind, { readonly layout: Layout; readonly motifs: string }>>
>

const motifsOf = ({ motifs = [] }: Project): string => motifs.map(({ id }) => id).join(' ')

/** The layouts that were left, with the one that is left now. */
export const leaving = (left: LeftLayouts, project: Project): LeftLayouts =>
  project.layout
    ? { ...left, [layoutKindOf(project)]: { layout: project.layout, motifs: motifsOf(project) } }
    : left

/**
 * The project laid out as another kind: as that was left, where there are the same motifs, else made anew from those
 * that it has. What the kit holds is kept; undo brings the layout before back.
 */
export function setLayoutKind(project: Project, kind: LayoutKind, left: LeftLayouts = {}): Project {
  if (layoutKindOf(project) === kind && project.layout) return project
  const kit = project.layout?.kit
  const before = left[kind]
  if (before && before.motifs === motifsOf(project)) {
    const { kit: _, ...layout } = before.layout
    return { ...project, layout: { ...layout, ...(kit && { kit }) } as Layout }
  }
  const { motifs = [], yarns, units } = project
  const main = mainMotif(project)
  const account = main ? accountOf(project, main).account : null
  const waysOf = (motif: string) =>
    (project.colourways ?? []).filter((way) => way.motif === motif || way.motif === undefined)
  const made = NEW_LAYOUTS[kind]({
    ...{ motifs, yarns, main, account, first: firstSizes(units) },
    wayOf: (motif) => waysOf(motif)[0],
    waysOf,
  })
  return { ...project, layout: { ...made, ...(kit && { kit }) } }
}
