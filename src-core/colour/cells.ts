/** The places of a blanket as cells to be coloured, each with the neighbours that it stands side by side with. */
import type { Place } from '../layout/places'
import type { ColourCell } from './assign'

/**
 * Cells with their neighbours: left and right, and in the rows above and below those that face it (one in
 * straight rows, two in offset rows and rings). Motifs that meet at a corner alone are no neighbours.
 */
export function colourCells(placements: readonly Place[], offset: boolean): ColourCell[] {
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
  return placements.map(({ id, row, column, halves }) => {
    const neighbours: number[] = []
    for (const [down, across] of steps) {
      const other = index.get(placeKey(row + down!, halves + across!))
      if (other !== undefined) neighbours.push(other)
    }
    return { id, row, column, neighbours }
  })
}

/** A number for each row and half pitch; there are at most some thousands of either. */
const placeKey = (row: number, halves: number): number => row * 100_000 + halves
