/**
 * Which motif stands where, on a lattice without end: several alternate from place to place or from row to row. In
 * offset rows and rings three that alternate are spread so that no two alike touch.
 */
import type { Arrangement } from '../../shared-types/project'

/** How motifs alternate; kinds are their numbers, from 0. */
export interface Pattern {
  readonly arrangement: Arrangement
  /** How many of them alternate. */
  readonly count: number
  readonly by: 'cell' | 'row'
  /** Rings of a blanket in rings, else 0: its middle is where kinds are counted from. */
  readonly rings: number
}

/** One motif, everywhere. */
export const uniform = (arrangement: Arrangement): Pattern => ({
  arrangement,
  count: 1,
  by: 'cell',
  rings: 0,
})

const modulo = (value: number, count: number): number => ((value % count) + count) % count

/** The kind of motif at a place: `halves` in half column pitches, as in `Place`. */
export function kindAt({ arrangement, count, by, rings }: Pattern, row: number, halves: number): number {
  if (count === 1) return 0
  if (arrangement === 'rings') {
    const down = row - 1 - rings
    // Places along the row that slants to the lower right; half places have no middle.
    const across = Math.floor((halves - 2 * rings - down) / 2)
    if (by === 'row') return ringOf(down, across) % count
    return modulo(across + (count - 1) * down, count)
  }
  if (by === 'row') return modulo(row - 1, count)
  const place = Math.floor(halves / 2)
  // Offset rows come back over each other every second row, straight ones move on.
  const back = arrangement === 'offset-rows' ? modulo(row - 1, 2) : row - 1
  return modulo(place + (count - 1) * back, count)
}

/** How many rings out from the middle a place lies, by rows and by places along the slanting rows. */
const ringOf = (down: number, across: number): number =>
  Math.max(Math.abs(down), Math.abs(across), Math.abs(down + across))

/** Rows after which the pattern repeats, an even number of them. */
export const rowPeriod = ({ arrangement, count, by }: Pattern): number =>
  count === 1 || (arrangement === 'offset-rows' && by === 'cell') ? 2 : count % 2 === 0 ? count : 2 * count
