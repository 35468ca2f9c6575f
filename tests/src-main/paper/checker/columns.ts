/**
 * What is wrong with the columns of a table, as sentences: each needs a head, and one unit in all its numbers; an
 * amount that is shown as nothing is a dash.
 */
import type { ReadTable } from '../read-tables'

const NUMBER = /[−-]?(?:\d[\d,]*(?:\.\d+)?[⅛¼⅜½⅝¾⅞]?|[⅛¼⅜½⅝¾⅞])/gu
const NOTHING = /^0(?:\.0+)? (?:g|oz|m|yd)\*?$/u
const UNIT = /mm|cm|kg|oz|lb|yd|in|ft|min|h|g|m|°|%|[$€£]/gu

/**
 * The units of a cell that is a quantity, in the order in which they stand; null of words, of an empty cell and of a
 * dash. The bounds of a range have the unit that stands before them: "410 g (380–445)".
 */
export function unitsOf(cell: string): string | null {
  const told = cell.replace(/[☐☑✓*]/gu, '').trim()
  if (!/\d|[⅛¼⅜½⅝¾⅞]/u.test(told)) return null
  const units = told.replace(NUMBER, ' # ')
  if (units.replace(UNIT, '').replace(/[#\s()–×,.]/gu, '') !== '') return null
  const range = /\(([^)]*–[^)]*)\)/u
  const [, bounds = ''] = range.exec(units) ?? []
  const head = [...new Set(units.replace(range, '').match(UNIT) ?? [])].join(' ')
  const other = (bounds.match(UNIT) ?? []).filter((unit) => unit !== head)
  return [head, ...new Set(other)].join(' ').trim()
}

/** Columns without a head, and those whose cells are in several units. */
export function columnTroubles({ heads, rows }: ReadTable): string[] {
  return heads.flatMap((head, i) => {
    if (head === '') return [`column ${i + 1} has no head: ${rows.map((row) => row[i]).join(' | ')}`]
    const cells = rows.map((row) => row[i] ?? '')
    const units = new Set(cells.map(unitsOf).filter((unit) => unit !== null))
    const nothing = cells.filter((cell) => NOTHING.test(cell))
    if (nothing.length > 0) return [`${head} is nothing: ${nothing.join(' | ')}`]
    return units.size > 1 ? [`${head} in several units: ${cells.join(' | ')}`] : []
  })
}
