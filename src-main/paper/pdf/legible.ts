/** Makes any text printable: what the face lacks becomes a box that shows, never a gap and never a crash. */

/** Stands for a character that the face does not have. */
export const UNPRINTABLE = '□'

const CONTROL = /[\p{Cc}\p{Cf}\u2028\u2029]/gu
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** The text with one box for every character (as a reader counts them) that has a part without a glyph. */
export function legible(text: string, hasGlyph: (codePoint: number) => boolean): string {
  const composed = text.normalize('NFC').replace(/[\t\n\r]+/g, ' ')
  const printable = (part: string): boolean => [...part].every((c) => hasGlyph(c.codePointAt(0)!))
  // A joiner or a direction mark prints nothing, but belongs to the character that it stands in.
  const bare = (part: string): string => part.replace(CONTROL, '').replace(/[\ufe00-\ufe0f]/g, '')
  if (printable(composed) && bare(composed) === composed) return composed
  let result = ''
  for (const { segment } of graphemes.segment(composed)) {
    const part = bare(segment)
    if (part === '') continue
    result += printable(part) ? part : UNPRINTABLE
  }
  return result
}
