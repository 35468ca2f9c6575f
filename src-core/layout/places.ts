/** M21–M23: which places an arrangement has: rows from the top, places from the left, both from 1. */
import type { AlternateRows, Arrangement } from '../../shared-types/project'
import { remembered } from '../memo'

export interface Place {
  readonly id: string
  readonly row: number
  readonly column: number
  /** Position in half column pitches from the left edge of row 1's first motif. */
  readonly halves: number
}

export interface PlaceCounts {
  readonly arrangement: Arrangement
  readonly columns: number
  readonly rows: number
  readonly alternateRows: AlternateRows
  readonly rings: number
}

export const placeId = (row: number, column: number): string => `${row},${column}`

/** How many motifs the arrangement has, without laying it out. */
export function countPlaces({ arrangement, columns, rows, alternateRows, rings }: PlaceCounts): number {
  if (arrangement === 'rings') return 3 * rings * (rings + 1) + 1
  const shifted = arrangement === 'offset-rows' ? Math.floor(rows / 2) : 0
  return columns * rows + shifted * extra(alternateRows)
}

/** Motifs that a shifted row has more than the others. */
const extra = (alternateRows: AlternateRows): number =>
  alternateRows === 'oneFewer' ? -1 : alternateRows === 'oneMore' ? 1 : 0

/** One row: its places begin `start` half column pitches from the left edge of row 1's first motif. */
interface RowSpan {
  readonly row: number
  readonly start: number
  readonly count: number
}

/** The rows of an arrangement, from the top. */
export function rowSpans({ arrangement, columns, rows, alternateRows, rings }: PlaceCounts): RowSpan[] {
  if (arrangement === 'rings')
    return Array.from({ length: 2 * rings + 1 }, (_, i) => {
      const fromMiddle = Math.abs(i - rings)
      return { row: i + 1, start: fromMiddle, count: 2 * rings + 1 - fromMiddle }
    })
  return Array.from({ length: rows }, (_, i) => {
    const shifted = arrangement === 'offset-rows' && i % 2 === 1
    if (!shifted) return { row: i + 1, start: 0, count: columns }
    return { row: i + 1, start: alternateRows === 'oneMore' ? -1 : 1, count: columns + extra(alternateRows) }
  })
}

/** Every place of the arrangement, row by row. */
export function placesOf(counts: PlaceCounts): Place[] {
  const places: Place[] = []
  for (const { row, start, count } of rowSpans(counts))
    for (let i = 0; i < count; i++)
      places.push({ id: placeId(row, i + 1), row, column: i + 1, halves: start + 2 * i })
  return places
}

/** How many motifs every row has, from the top, where none is left out. */
export const fullLengths = remembered((counts: PlaceCounts): readonly number[] =>
  rowSpans(counts).map(({ count }) => count),
)
