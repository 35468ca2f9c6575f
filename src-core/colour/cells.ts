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
  const rows = byRow(placements)
  // One row below the other, and how far across in half pitches.
  const beside = offset ? [-1, 1] : [0]
  const cells = placements.map(({ id, row, column, halves, kind = 0 }) => {
    const neighbours: number[] = []
    const meet = (down: number, across: number): void => {
      const own = rows.get(row + down)
      const at = halves + across
      const other = own && (own[at] ?? (round > 0 ? (own[at - 2 * round] ?? own[at + 2 * round]) : undefined))
      if (other !== undefined) neighbours.push(other)
    }
    meet(0, -2)
    meet(0, 2)
    for (const down of [-1, 1]) for (const across of beside) meet(down, across)
    const cell = { id, row, column, neighbours, kind }
    return full ? { ...cell, full } : cell
  })
  for (const [one, other] of touching) {
    if (cells[one]!.neighbours.includes(other)) continue
    cells[one]!.neighbours.push(other)
    cells[other]!.neighbours.push(one)
  }
  return cells
}

/** By row and half pitch: the index of what stands there. */
function byRow(placements: readonly Place[]): ReadonlyMap<number, readonly number[]> {
  const rows = new Map<number, number[]>()
  placements.forEach(({ row, halves }, i) => {
    let own = rows.get(row)
    if (!own) rows.set(row, (own = []))
    own[halves] = i
  })
  return rows
}
