/** M19: where the middle of an outline lies among the rows that it is cut out of. */
import type { Point } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'
import type { BlanketCounts, OutlineMiddle } from './blanket'
import { pitchUnder } from './lattice'
import type { Lattice } from './lattice'
import { rowSpans } from './places'

/** How far below row 1 a row lies, in mm; parts of a row count by the pitch that they are part of. */
function depthOf(lattice: Lattice, row: number): Millimetres {
  const whole = Math.max(1, Math.floor(row))
  let down = (row - whole) * pitchUnder(lattice, whole)
  for (let above = 1; above < whole; above++) down += pitchUnder(lattice, above)
  return down
}

const lastRow = (counts: BlanketCounts): number =>
  counts.arrangement === 'rings' ? 2 * counts.rings + 1 : counts.rows

/** The middle of an arrangement, told as an outline's. */
export function middleOf(lattice: Lattice, counts: BlanketCounts): Required<OutlineMiddle> {
  const down = depthOf(lattice, lastRow(counts)) / 2
  let row = 1
  while (depthOf(lattice, row + 1) <= down) row++
  const halves = rowSpans(counts).flatMap(({ start, count }) => [start, start + 2 * (count - 1)])
  return {
    row: row + (down - depthOf(lattice, row)) / pitchUnder(lattice, row),
    place: 1 + (Math.min(...halves) + Math.max(...halves)) / 4,
  }
}

/** Where the middle of an outline lies, in mm from the middle of row 1's first motif. */
export function outlineMiddle(lattice: Lattice, counts: BlanketCounts, asked: OutlineMiddle): Point {
  // Rings grow about their middle.
  const { row, place } = counts.arrangement === 'rings' ? {} : asked
  const middle = middleOf(lattice, counts)
  return {
    x: ((place ?? middle.place) - 1) * lattice.column,
    y: depthOf(lattice, row ?? middle.row),
  }
}
