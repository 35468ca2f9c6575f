/** The rows of a map: where they stand, how they are worked, how places are counted. */
import type { Plan, PlacedMotif } from '../../shared-types/plan'

export interface MapRow {
  readonly row: number
  /** By place. */
  readonly motifs: readonly PlacedMotif[]
  /** Mean of the centres, in plan mm. */
  readonly y: number
  /** The way along which the working numbers grow; null where they do not run through the row. */
  readonly direction: 'right' | 'left' | null
}

/** Working number of a placed motif. */
const workingNumber = (motif: PlacedMotif): number => Number(motif.label)

function direction(motifs: readonly PlacedMotif[]): MapRow['direction'] {
  if (motifs.length < 2) return null
  const step = workingNumber(motifs[1]!) - workingNumber(motifs[0]!)
  if (Math.abs(step) !== 1) return null
  for (let i = 2; i < motifs.length; i++) {
    if (workingNumber(motifs[i]!) - workingNumber(motifs[i - 1]!) !== step) return null
  }
  return step > 0 ? 'right' : 'left'
}

/** The rows from the top; each with its motifs from the left. */
export function mapRows(plan: Plan): MapRow[] {
  const byRow = new Map<number, PlacedMotif[]>()
  for (const motif of plan.motifs) {
    const row = byRow.get(motif.row)
    if (row) row.push(motif)
    else byRow.set(motif.row, [motif])
  }
  return [...byRow]
    .sort(([a], [b]) => a - b)
    .map(([row, motifs]) => {
      motifs.sort((a, b) => a.column - b.column)
      const y = motifs.reduce((sum, motif) => sum + motif.y, 0) / motifs.length
      return { row, motifs, y, direction: direction(motifs) }
    })
}

/** Whether the order of work runs row by row: every row of two or more has a direction. */
export const workedByRows = (rows: readonly MapRow[]): boolean =>
  rows.some((row) => row.direction !== null) &&
  rows.every((row) => row.direction !== null || row.motifs.length < 2)

/**
 * Where places can be numbered along the top: the longest row's centres, when the same place of every row stands
 * within 0.6 of a pitch of them; otherwise, and for rings, an empty list.
 */
export function placeColumns(plan: Plan, rows: readonly MapRow[]): { place: number; x: number }[] {
  if (plan.arrangement === 'rings') return []
  const longest = rows.reduce<MapRow | null>(
    (best, row) => (best === null || row.motifs.length > best.motifs.length ? row : best),
    null,
  )
  if (!longest || longest.motifs.length === 0) return []
  const first = longest.motifs[0]!
  const last = longest.motifs.at(-1)!
  const pitch = longest.motifs.length > 1 ? (last.x - first.x) / (longest.motifs.length - 1) : Infinity
  // A number at the top counts the places: it would be wrong of a motif to the left of which one is missing.
  if (rows.some(({ motifs }) => motifs.some(({ column }, i) => column !== i + 1))) return []
  const places = new Map(longest.motifs.map((motif) => [motif.column, motif.x]))
  for (const row of rows) {
    for (const motif of row.motifs) {
      const x = places.get(motif.column)
      if (x === undefined || Math.abs(motif.x - x) > 0.6 * pitch) return []
    }
  }
  return [...places].map(([place, x]) => ({ place, x }))
}
