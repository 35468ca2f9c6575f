/**
 * What a worker works out while nobody asks, once it has planned a blanket: the same blanket a little changed, as by
 * keys, so that its code has run by the time the first key is pressed. Nothing of it is kept.
 */
import type { Project } from '../../shared-types/project'
import { blanketOf } from './edits/layout'

/** How often at most, and on how many columns and rows: enough for the code to be compiled, in about a second. */
const TIMES = 36
const MOST = 30

/** Projects to work out numbers of; none where these are not asked for apart from the plan. */
export function rehearsalsOf(project: Project): Project[] {
  const { joining } = project
  const layout = project.layout && blanketOf(project)
  if (!layout || layout.kit) return []
  const least = (count: number | undefined) => (count === undefined ? undefined : Math.min(count, MOST))
  const [columns, rows] = [least(layout.columns), least(layout.rows)]
  return Array.from({ length: TIMES }, (_, i): Project => {
    const grown = 1 + (i + 1) / 200
    const motifs = project.motifs?.map((motif) =>
      motif.kind === 'measured' && motif.overTips !== undefined
        ? { ...motif, overTips: motif.overTips * grown }
        : motif,
    )
    const small = { ...layout, columns, rows: rows && i % 2 === 1 ? rows + 1 : rows }
    const chains = joining?.bridgeChains
    return {
      ...project,
      motifs,
      layout: small,
      joining: chains === undefined ? joining : { ...joining, bridgeChains: chains + (i % 3) },
    }
  })
}
