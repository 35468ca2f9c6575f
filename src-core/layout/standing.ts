/** What of a blanket stands: its counts and its rows, without the rest of its plan. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import { laidBlanketOf } from '../plans/layouts'
import { settled } from '../settled'
import { blanketCounts, layBlanket } from './blanket'
import type { BlanketCounts } from './blanket'
import { groundOf } from './ground'

/** How many motifs the rows of a plan have, from the top. */
export function rowLengths({
  motifs,
}: {
  readonly motifs: readonly Pick<Plan['motifs'][number], 'row'>[]
}): readonly number[] {
  const rows = new Map<number, number>()
  for (const { row } of motifs) rows.set(row, (rows.get(row) ?? 0) + 1)
  return [...rows].sort(([a], [b]) => a - b).map(([, count]) => count)
}

/** The same of a project that is not planned yet. */
export function rowsStanding(project: Project): readonly number[] {
  const parts = groundOf(project)
  if (!parts) return []
  const { grid, counts, cells, cut } = parts
  return rowLengths({ motifs: layBlanket(grid, counts, cells, cut.test).placements })
}

/** The counts of a project's blanket; null where they cannot be used. */
export function countsOf(project: Project): BlanketCounts | null {
  const layout = laidBlanketOf(settled(project))
  return layout ? blanketCounts(layout).counts : null
}
