/** Lines in scripts that are written without spaces, and the direction that lines of one text share. */

/** Chinese and Japanese: a line may end behind nearly every character (UAX #14, class ID). */
const IDEOGRAPHS = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\u3000-\u303f\uff00-\uffef]/u
/** Scripts whose words stand side by side (UAX #14, class SA). */
const SPACELESS = /[\p{Script=Thai}\p{Script=Lao}\p{Script=Khmer}\p{Script=Myanmar}]/u
/** What never begins a line (UAX #14, classes CL, CJ, EX, IS, NS): closing brackets, stops, small kana, the long mark. */
const NEVER_FIRST =
  /^[\p{Pe}\p{Pf}、。，．・：；？！ー〜々ゝゞヽヾぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ%,.:;!?)\]}”’…]/u
/** What never ends one (class OP): opening brackets. */
const NEVER_LAST = /[\p{Ps}\p{Pi}“‘]$/u

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })
const words = new Intl.Segmenter('th', { granularity: 'word' })

/** The pieces of a word between which a line may break; the word itself where it may not. */
export function breakable(word: string): string[] {
  const bySpaceless = SPACELESS.test(word)
  if (!bySpaceless && !IDEOGRAPHS.test(word)) return [word]
  const pieces: string[] = []
  for (const { segment } of words.segment(word)) {
    const parts = IDEOGRAPHS.test(segment)
      ? [...graphemes.segment(segment)].map((each) => each.segment)
      : [segment]
    for (const part of parts) {
      const last = pieces.at(-1)
      if (last !== undefined && !mayBreak(last, part)) pieces[pieces.length - 1] = last + part
      else pieces.push(part)
    }
  }
  return pieces
}

const mayBreak = (before: string, after: string): boolean =>
  !NEVER_FIRST.test(after) &&
  !NEVER_LAST.test(before) &&
  [before.slice(-2), after].some((side) => IDEOGRAPHS.test(side) || SPACELESS.test(side))

/** Letters written from right to left (Unicode, Bidi_Class R and AL, by their blocks). */
export const RIGHT_TO_LEFT =
  /[\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefc\u{10800}-\u{10fff}\u{1e800}-\u{1efff}]/u
const LETTER = /\p{L}/u
const ISOLATE = { open: '\u2068', close: '\u2069' } as const
const ISOLATED = /[\u2066-\u2068][^\u2069]*(?:\u2069|$)/g

/** Which way the first letter goes that stands outside of isolates (UAX #9, P2); null without letters. */
function directionOf(text: string): 'ltr' | 'rtl' | null {
  const first = LETTER.exec(text.replace(ISOLATED, ''))?.[0]
  return first === undefined ? null : RIGHT_TO_LEFT.test(first) ? 'rtl' : 'ltr'
}

/** Marks of direction that print nothing (UAX #9, 2.6). */
const MARK = { ltr: '\u200e', rtl: '\u200f' } as const

/** Lines of one text, marked where one alone would go another way than the whole; isolates are closed on each. */
export function withDirection(lines: readonly string[], text: string): string[] {
  if (!RIGHT_TO_LEFT.test(text)) return [...lines]
  const whole = directionOf(text) ?? 'ltr'
  let isOpen = false
  return lines.map((line) => {
    const begun = isOpen ? ISOLATE.open + line : line
    isOpen = begun.lastIndexOf(ISOLATE.open) > begun.lastIndexOf(ISOLATE.close)
    const closed = isOpen ? begun + ISOLATE.close : begun
    return (directionOf(closed) ?? 'ltr') === whole ? closed : MARK[whole] + closed
  })
}

/** A name that goes its own way within a sentence that goes another, so that numbers behind it stay there. */
export const isolated = (name: string): string =>
  RIGHT_TO_LEFT.test(name)
    ? ISOLATE.open + name.replace(/[\u202a-\u202e\u2066-\u2069]/g, '') + ISOLATE.close
    : name
