/** Which characters of a text can be printed: the face on paper covers Latin, Greek and Cyrillic. */
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

/** The characters that the face lacks, each once, in the order of the text. */
export function unprintable(text: string): string[] {
  const whole = composed(text)
  if (!LACKING.test(whole)) return []
  return [...new Set([...characters(whole)].flatMap((each) => (each.has ? [] : [each.text])))]
}
