/** Tables with hairlines: words left, numbers right, a heading row that comes back on every page. */
import type { TextWeight } from '../../src-core/figures/figure'
import { breakLines } from '../../src-core/figures/lines'
import type { Furniture, Part } from '../../src-core/figures/part'
import { HEADER_FURNITURE, partOf } from '../../src-core/figures/part'
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

/** A text with the lines that it takes in each column, and the height of the highest. */
interface Laid {
  readonly lines: readonly (readonly string[])[]
  readonly height: number
}

/**
 * A table that may run over several pages, in columns of the same widths on all of them: one table for whoever has it
 * read aloud, with one heading row. Where it goes on, the heading is printed again and not told again.
 */
export class Table {
  private readonly widths: readonly number[]
  private readonly size: number
  private readonly inset: number
  private readonly table: Part
  private drawn = 0
  /** No row fitted where it was drawn last: the next page takes one, however high it is. */
  private isPassed = false

  constructor(
    sheet: Sheet,
    private readonly columns: readonly Column[],
    private readonly rows: readonly Row[],
    { inset = 0, size = TYPE.table }: TableOptions = {},
  ) {
    this.inset = inset
    this.size = size
    this.table = sheet.own('Table')
    const widths = columnWidths(sheet, columns, rows, size, inset)
    const total = widths.reduce((sum, width) => sum + width, 0)
    // Room left over goes between the columns, evenly.
    const gap = Math.min(8, Math.max(0, sheet.inner - total) / Math.max(1, columns.length - 1))
    this.widths = widths.map((width, i) => width + (i === 0 ? 0 : gap))
  }

  /** mm across. */
  get width(): number {
    return this.widths.reduce((sum, each) => sum + each, 0)
  }

  /** Whether rows are left to be drawn. */
  get goesOn(): boolean {
    return this.drawn < this.rows.length
  }

  /**
   * Draws the rows that fit above `bottom`, at least one on an empty page, or where the page before took none: what is
   * higher than any page would never end. Returns the y below. Words that are too long for their column wrap.
   */
  draw(sheet: Sheet, y: number, bottom = sheet.bottom): number {
    const { width } = this
    const takesOne = y <= sheet.top || this.isPassed
    const before = this.drawn
    y = this.head(sheet, y)
    sheet.rule(y, sheet.left, sheet.left + width, 0.3)
    for (let first = true; this.goesOn; first = false) {
      const row = this.rows[this.drawn]!
      const weight = row.bold ? 'bold' : 'regular'
      const laid = this.lay(sheet, row.cells, weight, this.inset)
      if (y + laid.height > bottom && !(first && takesOne)) break
      row.mark?.(sheet, sheet.left, y, Setting.line(this.size, ROW_LEADING))
      const told = partOf('TR', this.table)
      laid.lines.forEach((each, i) => {
        const cell = i === 0 ? partOf('TH', told, ROW_HEAD) : partOf('TD', told)
        this.write(sheet, i, each, y, weight, i === 0 ? this.inset : 0, cell)
      })
      y += laid.height
      sheet.rule(y, sheet.left, sheet.left + width, 0.12)
      this.drawn++
    }
    this.isPassed = this.goesOn && this.drawn === before
    return y
  }

  /** The heading row; returns the y below. */
  private head(sheet: Sheet, y: number): number {
    const headings = this.columns.map(({ heading }) => heading)
    const laid = this.lay(sheet, headings, 'bold', 0)
    const told = this.drawn === 0 ? partOf('TR', this.table) : null
    laid.lines.forEach((lines, i) => {
      const cell = told ? partOf('TH', told, COLUMN_HEAD) : HEADER_FURNITURE
      this.write(sheet, i, lines, y, 'bold', 0, cell)
    })
    return y + laid.height
  }

  private place(sheet: Sheet, column: number): number {
    return this.widths.slice(0, column).reduce((sum, each) => sum + each, sheet.left)
  }

  private lay(sheet: Sheet, cells: readonly string[], weight: TextWeight, indent: number): Laid {
    const lines = cells.map((text, i) =>
      this.columns[i]!.align === 'right'
        ? [text]
        : breakLines(text, this.widths[i]! - (i === 0 ? indent : 0) - 1, sheet.measure, this.size, weight),
    )
    const most = Math.max(1, ...lines.map((each) => each.length))
    const [line, next] = [Setting.line(this.size, ROW_LEADING), Setting.line(this.size, CELL_LEADING)]
    return { lines, height: line + (most - 1) * next }
  }

  private write(
    sheet: Sheet,
    column: number,
    lines: readonly string[],
    top: number,
    weight: TextWeight,
    indent: number,
    cell: Part | Furniture,
  ): void {
    const { align, spacer } = this.columns[column]!
    if (spacer) return
    const style = { size: this.size, weight, leading: ROW_LEADING, as: cell } as const
    const left = this.place(sheet, column)
    const next = Setting.line(this.size, CELL_LEADING)
    lines.forEach((text, k) => {
      if (align === 'right') sheet.text(text, left + this.widths[column]!, top, { ...style, anchor: 'end' })
      else sheet.text(text, left + indent, top + k * next, style)
    })
  }
}
