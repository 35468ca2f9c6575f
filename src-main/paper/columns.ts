/** A long list in two columns: what belongs together stays together, and the last page has no empty column. */
import type { Sheet } from './setting'

/** Something that no column's end tears apart. */
export interface Block {
  readonly height: number
  readonly draw: (sheet: Sheet, x: number, y: number) => void
  /** Stands with the block after it. */
  readonly keep?: boolean
  /** Said above it where it begins a column, apart from what it belongs to. */
  readonly again?: string
}

/** Height of a column, with the line above it where it begins in the middle of something. */
const columnHeight = (column: readonly Block[], lead: number): number =>
  column.reduce((sum, { height }) => sum + height, column[0]?.again ? lead : 0)

/** Blocks that stay together, in order. */
function unitsOf<B extends Block>(blocks: readonly B[]): B[][] {
  const units: B[][] = []
  let open: B[] = []
  for (const block of blocks) {
    open.push(block)
    if (block.keep) continue
    units.push(open)
    open = []
  }
  return open.length > 0 ? [...units, open] : units
}

/**
 * Pages of two columns, filled from the top; those of the last page are of one height, as nearly as they can.
 * `room` is the height of a page's columns, `lead` of the line above what is continued.
 */
export function intoPages<B extends Block>(
  blocks: readonly B[],
  room: (page: number) => number,
  lead: number,
): B[][][] {
  const columns: B[][][] = [[]]
  let height = 0
  for (const unit of unitsOf(blocks)) {
    const page = Math.floor((columns.length - 1) / 2)
    const column = columns.at(-1)!
    const added = unit.reduce((sum, block) => sum + block.height, 0)
    if (column.length > 0 && height + added > room(page)) columns.push([unit])
    else column.push(unit)
    height = columns.at(-1)!.length === 1 ? columnHeight(unit, lead) : height + added
  }
  const pages: B[][][][] = []
  for (let i = 0; i < columns.length; i += 2) pages.push(columns.slice(i, i + 2))
  const last = balanced(pages.at(-1)!.flat(), lead)
  return [...pages.slice(0, -1), last].map((page) => page.map((column) => column.flat()))
}

/** The split whose higher column is the lowest: of several the first whose left column is not the lower one. */
function balanced<B extends Block>(units: readonly B[][], lead: number): B[][][] {
  let best: B[][][] = [[...units]]
  let lowest = Infinity
  for (let at = 1; at < units.length; at++) {
    const [left, right] = [units.slice(0, at), units.slice(at)]
    const heights = [columnHeight(left.flat(), lead), columnHeight(right.flat(), lead)] as const
    const higher = Math.max(...heights)
    if (higher < lowest) [best, lowest] = [[left, right], higher]
    if (heights[0] >= heights[1]) break
  }
  return best
}
