/** Breaking text into lines. */
import type { MeasureText, TextWeight } from './figure'

/** A line never breaks at a no-break space; on paper it is a space like any other. */
const NO_BREAK = '\u00a0'
/** The text as it is printed. */
export const plain = (text: string): string => text.replaceAll(NO_BREAK, ' ')

/** A number and its unit, or the two numbers of a size. */
const UNITS =
  /([\d⅛¼⅜½⅝¾⅞]) (?=(?:mm|cm|m|in|yd|g|oz|h|min|%|sts?|sc|hdc|dc|tr|htr|dtr|ch)\b|%|×)|(?<=\d) (?=×)|× (?=[\d⅛¼⅜½⅝¾⅞])/g

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
    const wide = measure(plain(word), size, weight)
    if (line !== '' && filled + space + wide > width) {
      lines.push(line)
      line = ''
      filled = 0
    }
    if (line === '' && wide > width) {
      const pieces = cutWord(word, width, measure, size, weight)
      lines.push(...pieces.slice(0, -1))
      line = pieces.at(-1)!
      filled = measure(plain(line), size, weight)
    } else {
      filled += (line === '' ? 0 : space) + wide
      line = line === '' ? word : `${line} ${word}`
    }
  }
  if (line !== '' || lines.length === 0) lines.push(line)
  return lines.map(plain)
}

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
