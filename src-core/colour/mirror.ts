/** Cells that mirror each other across the middle of a map, so that they take one colour together. */
import type { FILL_SYMMETRIES } from '../../shared-types/project'

type Symmetry = (typeof FILL_SYMMETRIES)[number]

interface RowAndColumn {
  readonly row: number
  readonly column: number
}

/** Least and greatest of some numbers. */
interface Span {
  readonly least: number
  readonly most: number
}

const spanOf = (numbers: readonly number[]): Span =>
  numbers.reduce(
    ({ least, most }, value) => ({ least: Math.min(least, value), most: Math.max(most, value) }),
    { least: Infinity, most: -Infinity },
  )

/**
 * The groups of cells that are alike, each in the order of the cells, the groups in the order of their first ones.
 * Left and right mirror within each row, so that shifted rows do too; a cell without a partner stands alone.
 */
export function mirrored(cells: readonly RowAndColumn[], symmetry: Symmetry | undefined): number[][] {
  if (!symmetry) return cells.map((_, cell) => [cell])
  const at = new Map(cells.map(({ row, column }, cell) => [`${row},${column}`, cell]))
  const columnsOf = new Map<number, number[]>()
  for (const { row, column } of cells) columnsOf.set(row, [...(columnsOf.get(row) ?? []), column])
  const spans = new Map([...columnsOf].map(([row, columns]) => [row, spanOf(columns)]))
  const rows = spanOf([...columnsOf.keys()])
  const first = cells.map((_, cell) => cell)
  const rootOf = (cell: number): number => {
    let root = cell
    while (first[root] !== root) root = first[root] ?? root
    return root
  }
  const tie = (cell: number, other: number | undefined): void => {
    if (other === undefined) return
    const [a, b] = [rootOf(cell), rootOf(other)]
    first[Math.max(a, b)] = Math.min(a, b)
  }
  cells.forEach(({ row, column }, cell) => {
    const { least, most } = spans.get(row)!
    if (symmetry !== 'top-bottom') tie(cell, at.get(`${row},${least + most - column}`))
    if (symmetry !== 'left-right') tie(cell, at.get(`${rows.least + rows.most - row},${column}`))
  })
  const groups = new Map<number, number[]>()
  cells.forEach((_, cell) => {
    const root = rootOf(cell)
    groups.set(root, [...(groups.get(root) ?? []), cell])
  })
  return [...groups.values()]
}
