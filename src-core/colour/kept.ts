/**
 * What the file remembers of the colours that stood when they were last changed. A place is found again also
 * where rings came or went round it, or where shifted rows begin elsewhere now.
 */
import type { Arrangement, BlanketLayout } from '../../shared-types/project'
import { FREE } from './graph'

export type Kept = NonNullable<NonNullable<BlanketLayout['cells']>['kept']>
type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>

/** Where something stands: rows from the top, places from the left, both from 1. */
interface RowAndPlace {
  readonly row: number
  readonly column: number
  /** How many every row has, also where motifs are left out; as the cells tell where it is not known. */
  readonly full?: readonly number[] | undefined
}

/** In `rows`: a place painted in a colourway that the fill does not choose. */
const BY_HAND = 'x'
/** In `rows`: a place without a colourway. */
const NONE = '-'

/** Whether a fill goes by chance, so that what stands is worth remembering. */
export const isByChance = (fill: Fill | undefined): boolean =>
  fill?.pattern === 'no-two-alike' || fill?.pattern === 'scatter'

/** Whether what was remembered is of this fill in this arrangement; other colourways to choose from do not matter. */
export const isOfFill = (kept: Kept, fill: Fill, arrangement: Arrangement): boolean =>
  kept.pattern === fill.pattern && (kept.seed ?? 0) === (fill.seed ?? 0) && kept.arrangement === arrangement

/** How many motifs each row has, from the top. */
export function rowLengths(cells: readonly RowAndPlace[]): number[] {
  const [first] = cells
  if (first?.full) return [...first.full]
  const lengths: number[] = []
  for (const { row, column } of cells) lengths[row - 1] = Math.max(lengths[row - 1] ?? 0, column)
  return Array.from(lengths, (length) => length ?? 0)
}

/** Where a place of an arrangement with rows of one length is found in the same arrangement with rows of others. */
export function shiftOf(
  arrangement: Arrangement,
  before: readonly number[],
  after: readonly number[],
): (place: RowAndPlace) => RowAndPlace {
  if (arrangement === 'rings') {
    const rings = (after.length - before.length) / 2
    return ({ row, column }) => ({ row: row + rings, column: column + rings })
  }
  if (arrangement !== 'offset-rows') return (place) => place
  /** Shifted rows that have one more begin one place further to the left. */
  const early = ([first = 0, second = 0]: readonly number[]): number => (second > first ? 1 : 0)
  const shifted = early(after) - early(before)
  return ({ row, column }) => ({ row, column: row % 2 === 0 ? column + shifted : column })
}

/** A place that a key names ("3,2"), or null. */
export function placeOfKey(key: string): RowAndPlace | null {
  const [row, column, ...more] = key.split(',').map(Number)
  const isPlace = more.length === 0 && Number.isInteger(row) && Number.isInteger(column)
  return isPlace && row !== undefined && column !== undefined ? { row, column } : null
}

export const keyOfPlace = ({ row, column }: RowAndPlace): string => `${row},${column}`

/** What stood at each cell: an index into `chosen`, `byHand` where it was painted in another colourway, −1 for nothing. */
export function readKept(
  kept: Kept,
  cells: readonly RowAndPlace[],
  arrangement: Arrangement,
  chosen: readonly string[],
  byHand: (cell: number) => number,
): { standing: Int16Array; wasUnder: Map<number, string> } {
  const rows = (kept.rows ?? []).map((row) => row.trim().split(/\s+/))
  const lengths = rows.map((row) => row.length)
  const back = shiftOf(arrangement, rowLengths(cells), lengths)
  const codes = (kept.colourways ?? []).map((id) => chosen.indexOf(id))
  // A colourway that is not to be chosen here stands where it was painted.
  const codeAt = (token: string, cell: number): number => {
    const code = codes[Number(token)] ?? FREE
    return code === FREE ? byHand(cell) : code
  }
  const wasUnder = new Map<number, string>()
  const standing = Int16Array.from(cells, (cell, index) => {
    const before = back(cell)
    const under = kept.under?.[keyOfPlace(before)]
    if (under !== undefined) wasUnder.set(index, under)
    const token = rows[before.row - 1]?.[before.column - 1]
    if (token === BY_HAND) return byHand(index)
    return token === undefined || token === NONE ? FREE : codeAt(token, index)
  })
  return { standing, wasUnder }
}

/** What is to be remembered: the colourway of each cell, and what painted cells had before. */
export function writeKept(
  fill: Fill,
  arrangement: Arrangement,
  cells: readonly RowAndPlace[],
  chosen: readonly string[],
  colourways: readonly string[],
  under: ReadonlyMap<number, string>,
): Kept {
  const code = new Map(chosen.map((id, index) => [id, String(index)]))
  const rows: string[][] = rowLengths(cells).map((length) => new Array<string>(length).fill(NONE))
  cells.forEach(({ row, column }, index) => {
    const id = colourways[index]
    const places = rows[row - 1]
    if (id && places) places[column - 1] = code.get(id) ?? BY_HAND
  })
  return {
    pattern: fill.pattern,
    seed: fill.seed ?? 0,
    arrangement,
    colourways: [...chosen],
    rows: rows.map((row) => row.join(' ')),
    under: Object.fromEntries([...under].map(([index, id]) => [keyOfPlace(cells[index]!), id])),
  }
}
