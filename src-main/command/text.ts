/** Plain text for terminals: aligned tables and wrapped lines, no colours, safe for names from any file. */
import stringWidth from 'string-width'
import { oneLine } from '../../src-core/letters/one-line'

/** Text from a file as it may stand in one line of a terminal. */
export const printable = oneLine

type Align = 'left' | 'right'

interface Column {
  readonly head: string
  readonly align: Align
}

/** Space between two columns. */
const GUTTER = '  '
/** A column is not cut to less than this. */
const NARROWEST = 8

/**
 * Rows under their heads, columns padded to the widest cell. Where that is wider than `width`, the widest
 * left-aligned column is cut, with an ellipsis.
 */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
): string[] {
  const heads = columns.map((column) => column.head)
  const cells = [heads, ...rows].map((row) => row.map(printable))
  const widths = columns.map((_, index) => Math.max(...cells.map((row) => stringWidth(row[index] ?? ''))))
  const total = widths.reduce((sum, each) => sum + each, 0) + GUTTER.length * (columns.length - 1)
  const left = columns.flatMap((column, index) => (column.align === 'left' ? [index] : []))
  const widest = left.sort((a, b) => (widths[b] ?? 0) - (widths[a] ?? 0))[0]
  if (total > width && widest !== undefined)
    widths[widest] = Math.max(NARROWEST, (widths[widest] ?? 0) - (total - width))
  return cells.map((row) =>
    columns
      .map((column, index) =>
        pad(cut(row[index] ?? '', widths[index] ?? 0), widths[index] ?? 0, column.align),
      )
      .join(GUTTER)
      .trimEnd(),
  )
}

/** Pairs of a name and its value, one a line; long values wrap under themselves. */
export function listing(pairs: readonly (readonly [string, string])[], width: number): string[] {
  const first = Math.max(...pairs.map(([name]) => stringWidth(name)))
  return pairs.flatMap(([name, value]) =>
    wrap(value, width - first - GUTTER.length).map(
      (line, index) => `${pad(index === 0 ? name : '', first, 'left')}${GUTTER}${line}`,
    ),
  )
}

/** Text in lines of at most `width` columns, broken between words; a longer word stands alone. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of printable(text).split(' ').filter(Boolean)) {
    if (line && stringWidth(line) + 1 + stringWidth(word) > width) {
      lines.push(line)
      line = word
    } else line = line ? `${line} ${word}` : word
  }
  return line || lines.length === 0 ? [...lines, line] : lines
}

function pad(text: string, width: number, align: Align): string {
  const space = ' '.repeat(Math.max(0, width - stringWidth(text)))
  return align === 'left' ? text + space : space + text
}

function cut(text: string, width: number): string {
  if (stringWidth(text) <= width) return text
  let kept = ''
  for (const character of text) {
    if (stringWidth(kept + character) > width - 1) break
    kept += character
  }
  return `${kept}…`
}
