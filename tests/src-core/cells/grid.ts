/** Independent counts on a grid of cells, to hold plans against. */

/** How a lattice joins: to the cells beside, above and below, or in offset rows (even rows half a cell on) to six. */
export type Lattice = 'straight' | 'offset'

const BESIDE = {
  straight: () => [
    [0, 1],
    [0, -1],
    [1, 0],
    [-1, 0],
    [1, 1],
    [1, -1],
    [-1, 1],
    [-1, -1],
  ],
  offset: (row: number) => {
    const on = row % 2 === 0 ? 1 : -1
    return [
      [0, 1],
      [0, -1],
      [1, 0],
      [-1, 0],
      [1, on],
      [-1, on],
    ]
  },
} satisfies Record<Lattice, (row: number) => number[][]>

/**
 * Groups of missing cells that are wholly enclosed by those that are there ("row,place"): in straight rows, where
 * motifs are joined across sides, gaps reach each other across corners.
 */
export function holesCut(
  there: ReadonlySet<string>,
  rows: number,
  columns: number,
  lattice: Lattice = 'straight',
): number {
  const seen = new Set<string>()
  const flood = (row: number, place: number): void => {
    const stack = [[row, place] as const]
    while (stack.length > 0) {
      const [r, p] = stack.pop()!
      const id = `${r},${p}`
      if (r < 0 || p < 0 || r > rows + 1 || p > columns + 1 || there.has(id) || seen.has(id)) continue
      seen.add(id)
      for (const [down, across] of BESIDE[lattice](r)) stack.push([r + down!, p + across!])
    }
  }
  flood(0, 0)
  let holes = 0
  for (let row = 1; row <= rows; row++)
    for (let place = 1; place <= columns; place++)
      if (!there.has(`${row},${place}`) && !seen.has(`${row},${place}`)) {
        holes++
        flood(row, place)
      }
  return holes
}

/** Openings between cells that are there: squares of four, in offset rows triangles of three. */
export function openingsAmong(
  there: ReadonlySet<string>,
  rows: number,
  columns: number,
  lattice: Lattice,
): number {
  const at = (row: number, place: number) => there.has(`${row},${place}`)
  let openings = 0
  for (let row = 1; row <= rows; row++)
    for (let place = 1; place <= columns; place++) {
      if (!at(row, place) || !at(row, place + 1)) continue
      if (lattice === 'straight') {
        if (at(row + 1, place) && at(row + 1, place + 1)) openings++
        continue
      }
      const between = row % 2 === 0 ? place + 1 : place
      if (at(row + 1, between)) openings++
      if (at(row - 1, between)) openings++
    }
  return openings
}
