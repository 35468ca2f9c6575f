import type { ColourCell } from '../../../src-core/colour/assign'

type Step = readonly [number, number]

/** Cells of a rectangle whose neighbours are found by steps that may depend on the row's parity. */
function lattice(rows: number, columns: number, steps: (row: number) => readonly Step[]): ColourCell[] {
  const cells: ColourCell[] = []
  for (let row = 1; row <= rows; row++) {
    for (let column = 1; column <= columns; column++) {
      const neighbours = steps(row).flatMap(([down, right]) => {
        const [r, c] = [row + down, column + right]
        return r >= 1 && r <= rows && c >= 1 && c <= columns ? [(r - 1) * columns + c - 1] : []
      })
      cells.push({ id: `${row},${column}`, row, column, neighbours })
    }
  }
  return cells
}

const SQUARE: readonly Step[] = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
]
const EVEN: readonly Step[] = [...SQUARE, [1, 1], [-1, 1]]
const ODD: readonly Step[] = [...SQUARE, [1, -1], [-1, -1]]

export const square = (rows: number, columns: number) => lattice(rows, columns, () => SQUARE)
/** Offset rows: even rows stand half a pitch to the right; six neighbours. */
export const offset = (rows: number, columns: number) =>
  lattice(rows, columns, (row) => (row % 2 === 0 ? EVEN : ODD))
/** Squares that also touch at their corners; eight neighbours. */
export const corners = (rows: number, columns: number) =>
  lattice(rows, columns, () => [...SQUARE, [1, 1], [1, -1], [-1, 1], [-1, -1]])

/** Cells from a list of edges. */
export function cellsOf(count: number, edges: readonly Step[]): ColourCell[] {
  return Array.from({ length: count }, (_, index) => ({
    id: `1,${index + 1}`,
    row: 1,
    column: index + 1,
    neighbours: edges.flatMap(([a, b]) => (a === index ? [b] : b === index ? [a] : [])),
  }))
}
