/** Tables with hairlines: words left, numbers right, a heading row that comes back on every page. */
import type { TextWeight } from '../../src-core/figures/figure'
import { breakLines } from '../../src-core/figures/lines'
import type { Part } from '../../src-core/figures/part'
import { partOf } from '../../src-core/figures/part'
import type { Sheet } from './setting'
import { Sheet as Setting, TYPE } from './setting'

export interface Column {
  readonly heading: string
  readonly align: 'left' | 'right'
  /** Room in mm; columns without one share what is left. */
  readonly width?: number
  /** Only room between its neighbours. */
  readonly spacer?: boolean
}

export interface Row {
  readonly cells: readonly string[]
  readonly bold?: boolean
  /** Draws in front of the first cell, whose words then begin `inset` mm further in. */
  readonly mark?: (sheet: Sheet, x: number, y: number, height: number) => void
}

interface TableOptions {
  readonly inset?: number
  readonly size?: number
}

/** The row that says what is in the columns, and those below it: the first cell of a row says what the others are of. */
const COLUMN_HEAD = { scope: 'Column' } as const
const ROW_HEAD = { scope: 'Row' } as const

const PADDING = 3
const ROW_LEADING = 1.75
/** Between the lines of a cell that takes more than one. */
const CELL_LEADING = 1.25
/** mm. Columns of words give way to the others down to this. */
const NARROWEST = 20

/** Widths of the columns: numbers take what they need, words what is left, each by how much it has to say. */
function columnWidths(
  sheet: Sheet,
  columns: readonly Column[],
  rows: readonly Row[],
  size: number,
  inset: number,
): number[] {
  const natural = columns.map((column, i) => {
    if (column.width !== undefined) return column.width
    const cell = (text: string, weight: TextWeight): number => sheet.measure(text, size, weight)
    const widest = rows.reduce(
      (most, row) => Math.max(most, cell(row.cells[i] ?? '', row.bold ? 'bold' : 'regular')),
      cell(column.heading, 'bold'),
    )
    return widest + PADDING + (i === 0 ? inset : 0)
  })
  let missing = natural.reduce((sum, width) => sum + width, 0) - sheet.inner
  const widths = [...natural]
  // The widest words give way first, down to the next widest, as often as it takes.
  const words = columns.flatMap(({ align, width }, i) => (align === 'left' && width === undefined ? [i] : []))
  while (missing > 0.01) {
    const widest = words.filter((i) => widths[i]! > NARROWEST)
    if (widest.length === 0) break
    const most = Math.max(...widest.map((i) => widths[i]!))
    const giving = widest.filter((i) => widths[i]! > most - 0.01)
    const next = Math.max(NARROWEST, ...words.map((i) => widths[i]!).filter((width) => width < most - 0.01))
    const each = Math.min(most - next, missing / giving.length)
    for (const i of giving) widths[i]! -= each
    missing -= each * giving.length
  }
  return widths
}

/** Draws the rows that fit; returns the y below and how many were drawn. Words that are too long for their column wrap. */
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
  // Room left over goes between the columns, evenly.
  const gap = Math.min(8, Math.max(0, sheet.inner - total) / Math.max(1, columns.length - 1))
  const laid = widths.map((width, i) => width + (i === 0 ? 0 : gap))
  const width = laid.reduce((sum, each) => sum + each, 0)
  const line = Setting.line(size, ROW_LEADING)
  const next = Setting.line(size, CELL_LEADING)
  const place = (i: number): number => laid.slice(0, i).reduce((sum, each) => sum + each, sheet.left)
  const linesOf = (text: string, i: number, weight: TextWeight, indent: number): string[] =>
    columns[i]!.align === 'right'
      ? [text]
      : breakLines(text, laid[i]! - indent - 1, sheet.measure, size, weight)
  const write = (
    i: number,
    lines: readonly string[],
    top: number,
    weight: TextWeight,
    indent: number,
    cell: Part,
  ) => {
    if (columns[i]!.spacer) return
    const style = { size, weight, leading: ROW_LEADING, as: cell } as const
    lines.forEach((text, k) => {
      if (columns[i]!.align === 'right')
        sheet.text(text, place(i) + laid[i]!, top, { ...style, anchor: 'end' })
      else sheet.text(text, place(i) + indent, top + k * next, style)
    })
  }
  const cellsOf = (cells: readonly string[], weight: TextWeight, indent: number) => {
    const lines = cells.map((text, i) => linesOf(text, i, weight, i === 0 ? indent : 0))
    const most = Math.max(1, ...lines.map((each) => each.length))
    return { lines, height: line + (most - 1) * next }
  }
  const head = cellsOf(
    columns.map(({ heading }) => heading),
    'bold',
    0,
  )
  const table = sheet.own('Table')
  const headRow = partOf('TR', table)
  head.lines.forEach((lines, i) => write(i, lines, y, 'bold', 0, partOf('TH', headRow, COLUMN_HEAD)))
  y += head.height
  sheet.rule(y, sheet.left, sheet.left + width, 0.3)
  let drawn = 0
  for (const row of rows) {
    const weight = row.bold ? 'bold' : 'regular'
    const { lines, height } = cellsOf(row.cells, weight, inset)
    if (y + height > sheet.bottom) break
    row.mark?.(sheet, sheet.left, y, line)
    const told = partOf('TR', table)
    lines.forEach((each, i) => {
      const cell = i === 0 ? partOf('TH', told, ROW_HEAD) : partOf('TD', told)
      write(i, each, y, weight, i === 0 ? inset : 0, cell)
    })
    y += height
    sheet.rule(y, sheet.left, sheet.left + width, 0.12)
    drawn++
  }
  return { y, drawn }
}
