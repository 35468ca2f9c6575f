/** The places of a blanket as cells to be coloured, each with the neighbours that it stands side by side with. */
import type { Place } from '../layout/places'
import type { Fill } from './assign'
import type { KindCell } from './by-motif'

/** Whether a fill keeps apart what touches: only then it matters what does. */
export const keepsApart = (fill: Fill | undefined): boolean => fill?.pattern === 'no-two-alike'

/**
 * Cells with their neighbours: left and right, and in the rows above and below those that face it (one in
 * straight rows, two in offset rows and rings). Motifs that meet at a corner alone are no neighbours. `round`: how many
 * a row has that is joined in the round, whose ends are neighbours too; else 0. `full`: how many every row has, where
 * motifs are left out. `touching`: pairs that touch besides.
 */
export function colourCells(
  placements: readonly (Place & { readonly kind?: number })[],
  offset: boolean,
  round = 0,
  full?: readonly number[],
  touching: readonly (readonly [number, number])[] = [],
): KindCell[] {
  const index = new Map<number, number>()
  placements.forEach((p, i) => index.set(placeKey(p.row, p.halves), i))
  const steps = offset
    ? [
        [0, -2],
        [0, 2],
        [-1, -1],
        [-1, 1],
        [1, -1],
        [1, 1],
      ]
    : [
        [0, -2],
        [0, 2],
        [-1, 0],
        [1, 0],
      ]
  const at = (row: number, halves: number): number | undefined => {
    const here = index.get(placeKey(row, halves))
    if (here !== undefined || round === 0) return here
    return index.get(placeKey(row, halves - 2 * round)) ?? index.get(placeKey(row, halves + 2 * round))
  }
  const cells = placements.map(({ id, row, column, halves, kind = 0 }) => {
    const neighbours: number[] = []
    for (const [down, across] of steps) {
      const other = at(row + down!, halves + across!)
      if (other !== undefined) neighbours.push(other)
    }
    return { id, row, column, neighbours, kind, ...(full && { full }) }
  })
  for (const [one, other] of touching) {
    if (cells[one]!.neighbours.includes(other)) continue
    cells[one]!.neighbours.push(other)
    cells[other]!.neighbours.push(one)
  }
  return cells
}

/** A number for each row and half pitch; there are at most some thousands of either. */
const placeKey = (row: number, halves: number): number => row * 100_000 + halves
