/** A large blanket in four colourways of which some are made, and edits of it, for tests of what is held. */
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { standingColours, standingPlaces } from '../../../src-core/colour/hold'
import { planProject } from '../../../src-core/plan'
import { markLaidOut, markMade } from '../../../src-core/progress/mark'
import { withOutlineTaken } from '../../../src-core/progress/outline-stays'
import { project } from './project'

export const colours = ['a', 'b', 'c', 'd']
/** 16 rows of 20 in four colourways, of which so many are made, in reading order. */
export function large(many: number, blanket: Partial<BlanketLayout> = {}): Project {
  const base: Project = {
    ...project({}, { columns: 20, rows: 16, ...blanket }),
    colourways: colours.map((id) => ({
      id,
      code: id.toUpperCase(),
      motif: 'm',
      yarns: { middle: 'sand', rim: 'moss' },
    })),
  }
  const pieces = planProject(base).motifs.slice(0, many)
  return markMade(base, pieces, '2026-12-01')
}
export const withBlanket = (of: Project, patch: Partial<BlanketLayout>): Project => ({
  ...of,
  layout: { ...(of.layout as BlanketLayout), ...patch },
})
export const withFill = (
  of: Project,
  fill: NonNullable<NonNullable<BlanketLayout['cells']>['fill']>,
): Project => {
  const layout = of.layout as BlanketLayout
  return withBlanket(of, { cells: { ...layout.cells, fill: { ...layout.cells?.fill, ...fill } } })
}
export const painted = (of: Project, cells: Record<string, string>): Project => {
  const layout = of.layout as BlanketLayout
  return withBlanket(of, { cells: { ...layout.cells, painted: { ...layout.cells?.painted, ...cells } } })
}
/** So many motifs laid out anew as ones that are made already: every one of them is marked, without a day. */
export function laidAnew(of: Project, patch: Partial<BlanketLayout>): Project {
  const laid = withOutlineTaken(of, withBlanket(of, patch))
  return markLaidOut(of, laid, standingPlaces(laid))
}
/** Colourway by address. */
export function coloursOf(of: Project): Map<string, string> {
  const standing = standingColours(of)!
  return new Map(standing.places.map(({ id }, i) => [id, standing.assignment.colourways[i]!]))
}

export const fill = { pattern: 'no-two-alike', colourways: colours, seed: 1 } as const
