/** Tables with hairlines: words left, numbers right, a heading row that comes back on every page. */
import type { TextWeight } from '../../src-core/figures/figure'
import type { Sheet } from './setting'
import { Sheet as Setting, shorten, TYPE } from './setting'

export interface Column {
  readonly heading: string
  readonly align: 'left' | 'right'
  /** Room in mm; columns without one share what is left. */
  readonly width?: number
}

export interface Row {
  readonly cells: readonly string[]
  readonly bold?: boolean
  /** Draws in front of the first cell, whose words then begin `inset` mm further in. */
  readonly mark?: (sheet: Sheet, x: number, y: number, height: number) => void
}

export interface TableOptions {
  readonly inset?: number
  readonly size?: number
}

const PADDING = 3
const ROW_LEADING = 1.75

/** Widths of the columns for a whole width: numbers take what they need, words share the rest. */
function columnWidths(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly Row[],
  size: number,
  inset: number,
) {
  const natural = columns.map((column, i) => {
    if (column.width !== undefined) return column.width
    const cell = (text: string, weight: TextWeight): number => sheet.measure(text, size, weight)
    const widest = rows.reduce(
      (most, row) => Math.max(most, cell(row.cells[i] ?? '', row.bold ? 'bold' : 'regular')),
      cell(column.heading, 'bold'),
    )
    return widest + PADDING + (i === 0 ? inset : 0)
  })
  return natural
}

/** Draws the rows that fit; returns the y below and how many were drawn. */
export function drawTable(
  sheet: Sheet,
  y: number,
  columns: readonly Column[],
  rows: readonly Row[],
  options: TableOptions = {},
): { y: number; drawn: number } {
  const { inset = 0, size = TYPE.table } = options
  const widths = columnWidths(sheet, columns, rows, size, inset)
  const total = widths.reduce((sum, width) => sum + width, 0)
  const spare = sheet.inner - total
  // Room left over goes between the columns, evenly; room that is missing is taken from the words.
  const first = spare < 0 ? widths[0]! + spare : widths[0]!
  const gap = spare > 0 ? Math.min(8, spare / Math.max(1, columns.length - 1)) : 0
  const laid = widths.map((width, i) => (i === 0 ? first : width) + (i === 0 ? 0 : gap))
  const width = laid.reduce((sum, each) => sum + each, 0)
  const line = Setting.line(size, ROW_LEADING)
  const place = (i: number): number => laid.slice(0, i).reduce((sum, each) => sum + each, sheet.left)
  const write = (i: number, text: string, top: number, weight: TextWeight, indent: number): void => {
    if (text === '') return
    const style = { size, weight, leading: ROW_LEADING } as const
    const x = place(i)
    if (columns[i]!.align === 'right') sheet.text(text, x + laid[i]!, top, { ...style, anchor: 'end' })
    else sheet.text(shorten(text, laid[i]! - indent - 1, sheet.measure, size, weight), x + indent, top, style)
  }
  columns.forEach((column, i) => write(i, column.heading, y, 'bold', i === 0 ? 0 : 0))
  y += line
  sheet.rule(y, sheet.left, sheet.left + width, 0.3)
  let drawn = 0
  for (const row of rows) {
    if (y + line > sheet.bottom) break
    row.mark?.(sheet, sheet.left, y, line)
    row.cells.forEach((text, i) => write(i, text, y, row.bold ? 'bold' : 'regular', i === 0 ? inset : 0))
    y += line
    sheet.rule(y, sheet.left, sheet.left + width, 0.12)
    drawn++
  }
  return { y, drawn }
}
