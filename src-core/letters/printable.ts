/**
 * Which characters of a text can be printed: the face on paper covers Latin, Greek and Cyrillic; fonts that a person
 * chose cover others.
 */
import type { CodePointRanges } from '../../shared-types/fonts'
import { GLYPH_RANGES } from './face-glyphs'

/** Prints nothing, but belongs to the character that it stands in: controls, joiners, marks of direction. */
const SILENT = /\p{Cc}|\p{Cf}|\p{Zl}|\p{Zp}|\p{Variation_Selector}/gu
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

const code = (point: number): string => `\\u{${point.toString(16)}}`
const LACKING = new RegExp(
  `[^${GLYPH_RANGES.map(([first, last]) => `${code(first)}-${code(last)}`).join('')}]`,
  'u',
)

/** As it is printed: composed, with spaces for tabs and line ends. */
const composed = (text: string): string => text.normalize('NFC').replace(/[\t\n\r]+/g, ' ')

/** Whether the face on paper has all of a text, as it is. */
export const isPlain = (text: string): boolean => !LACKING.test(composed(text))

/** Whether a range holds the code point; the ranges stand in ascending order. */
function isWithin(ranges: CodePointRanges, point: number): boolean {
  let [low, high] = [0, ranges.length - 1]
  while (low <= high) {
    const middle = (low + high) >> 1
    const [first, last] = ranges[middle]!
    if (point < first) high = middle - 1
    else if (point > last) low = middle + 1
    else return true
  }
  return false
}

/** Which of some fonts has all of a character as a reader counts it: the first, -1 for none. */
export const fontFor = (character: string, fonts: readonly CodePointRanges[]): number =>
  fonts.findIndex((ranges) => [...character].every((each) => isWithin(ranges, each.codePointAt(0)!)))

/** A character as a reader counts it, and what of it prints: '' for marks of direction and controls. */
interface Character {
  readonly text: string
  readonly bare: string
  /** Whether the face on paper has all of it. */
  readonly has: boolean
}

/** Every character of a text as it is printed, silent ones too. */
export function* everyCharacter(text: string): Generator<Character> {
  for (const { segment } of graphemes.segment(composed(text))) {
    const bare = segment.replace(SILENT, '')
    yield { text: segment, bare, has: !LACKING.test(bare) }
  }
}

/** Every character (as a reader counts them) with whether the face has all of it; silent ones are left out. */
function* characters(text: string): Generator<{ readonly text: string; readonly has: boolean }> {
  for (const { segment } of graphemes.segment(text)) {
    const bare = segment.replace(SILENT, '')
    if (bare !== '') yield { text: bare, has: !LACKING.test(bare) }
  }
}

/** The text as it can be printed: `spell` says what stands for a character that the face lacks. */
export function printableText(text: string, spell: (character: string) => string): string {
  const whole = composed(text)
  if (!LACKING.test(whole)) return whole
  let result = ''
  for (const each of characters(whole)) result += each.has ? each.text : spell(each.text)
  return result
}

/** The characters that neither the face nor one of the `fonts` has, each once, in the order of the text. */
export function unprintable(text: string, fonts: readonly CodePointRanges[] = []): string[] {
  const whole = composed(text)
  if (!LACKING.test(whole)) return []
  const lacking = [...characters(whole)].filter((each) => !each.has && fontFor(each.text, fonts) < 0)
  return [...new Set(lacking.map((each) => each.text))]
}

/** Code points as ranges, without those that the face on paper has. */
export function rangesBeyondFace(points: Iterable<number>): CodePointRanges {
  const ranges: [number, number][] = []
  for (const point of [...new Set(points)].sort((a, b) => a - b)) {
    const last = ranges.at(-1)
    if (point < 0x80 || isWithin(GLYPH_RANGES, point)) continue
    if (last && last[1] === point - 1) last[1] = point
    else ranges.push([point, point])
  }
  return ranges
}
