/** M21–M23: which places an arrangement has: rows from the top, places from the left, both from 1. */
import type { AlternateRows, Arrangement } from '../../shared-types/project'

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

/** Every place of the arrangement, row by row. */
export function placesOf(counts: PlaceCounts): Place[] {
  const { arrangement, columns, rows, alternateRows, rings } = counts
  const places: Place[] = []
  if (arrangement === 'rings') {
    for (let row = 1; row <= 2 * rings + 1; row++) {
      const fromMiddle = Math.abs(row - 1 - rings)
      for (let column = 1; column <= 2 * rings + 1 - fromMiddle; column++)
        places.push({ id: placeId(row, column), row, column, halves: fromMiddle + 2 * (column - 1) })
    }
    return places
  }
  const offset = arrangement === 'offset-rows'
  for (let row = 1; row <= rows; row++) {
    const shifted = offset && row % 2 === 0
    const start = shifted ? (alternateRows === 'oneMore' ? -1 : 1) : 0
    const count = columns + (shifted ? extra(alternateRows) : 0)
    for (let column = 1; column <= count; column++)
      places.push({ id: placeId(row, column), row, column, halves: start + 2 * (column - 1) })
  }
  return places
}
