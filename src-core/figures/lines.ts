/** Breaking text into lines. */
import { breakable, withDirection } from '../letters/breaking'
import type { MeasureText, TextWeight } from './figure'

/** A line never breaks at a no-break space; on paper it is a space like any other. */
const NO_BREAK = '\u00a0'
/** The text as it is printed. */
export const plain = (text: string): string => text.replaceAll(NO_BREAK, ' ')

/** A number and its unit, the two numbers of a size, how many of something, and how many chains. */
const UNITS =
  /([\d⅛¼⅜½⅝¾⅞]) (?=(?:mm|cm|m|in|yd|g|oz|h|min|%|sts?|sc|hdc|dc|tr|htr|dtr|ch)\b|%|×)|(?<=\d) (?=×)|× (?=[\d⅛¼⅜½⅝¾⅞])|(?<=\d[ \u00a0])× (?=\S)|\b(?:[Cc]h|Rnd|Round|Row) (?=\d)|(?<=\bch-\d{1,2}|\d-ch) (?=sps?\b)/g

/** Numbers stay with their units, and sizes in one piece. */
const keepUnits = (text: string): string => text.replace(UNITS, (found) => found.replace(' ', NO_BREAK))

/** Breaks a text into lines that fit a width; a single word that is too long is cut. */
export function breakLines(
  text: string,
  width: number,
  measure: MeasureText,
  size: number,
  weight: TextWeight = 'regular',
): string[] {
  const lines: string[] = []
  let line = ''
  let filled = 0
  const space = measure(' ', size, weight)
  for (const word of keepUnits(text).split(/[ \n\t]+/)) {
    if (word === '') continue
    const pieces = measure.manyScripts ? breakable(word) : [word]
    for (const [i, piece] of pieces.entries()) {
      const before = line === '' || i > 0 ? '' : ' '
      const gap = before === '' ? 0 : space
      const wide = measure(plain(piece), size, weight)
      if (line !== '' && filled + gap + wide <= width) {
        line += before + piece
        filled += gap + wide
        continue
      }
      if (line !== '') lines.push(line)
      const cut = wide > width ? cutWord(piece, width, measure, size, weight) : [piece]
      lines.push(...cut.slice(0, -1))
      line = cut.at(-1)!
      filled = cut.length > 1 ? measure(plain(line), size, weight) : wide
    }
  }
  if (line !== '' || lines.length === 0) lines.push(line)
  return (measure.manyScripts ? withDirection(lines, text) : lines).map(plain)
}

/** Fewest words that a line keeps which gives its last one to the next. */
const KEEPS = 3

/** Lines of a paragraph of which the last is no single short word: one of the line before stands with it. */
export function withoutOrphan(lines: readonly string[]): readonly string[] {
  const [last = '', before = ''] = lines.toReversed()
  const words = keepUnits(before).split(' ')
  const [kept, moved] = [words.slice(0, -1), words.at(-1)!]
  const isLost = last !== '' && last.length <= ORPHAN && !last.includes(' ')
  // Lines that are written from the right have marks of their own.
  const isFit = moved.length + 1 + last.length <= FITS * before.length && !MARKED.test(before + last)
  if (!isLost || !isFit || words.length <= KEEPS) return lines
  return [...lines.slice(0, -2), plain(kept.join(' ')), plain(`${moved} ${last}`)]
}

/** Characters of a word that stands alone on a last line, up to which it looks lost there (by eye). */
const ORPHAN = 6
/** Share of the line before that both words take at most, by their characters. */
const FITS = 0.8
const MARKED = /[\u200e\u200f\u2066-\u2069]/

function cutWord(
  word: string,
  width: number,
  measure: MeasureText,
  size: number,
  weight: TextWeight,
): string[] {
  const pieces: string[] = []
  let piece = ''
  for (const character of word) {
    if (piece !== '' && measure(plain(piece + character), size, weight) > width) {
      pieces.push(piece)
      piece = ''
    }
    piece += character
  }
  return [...pieces, piece]
}
