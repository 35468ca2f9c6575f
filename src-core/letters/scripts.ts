/** What the scripts are called that the paper's face lacks. */
import type { CodePointRanges } from '../../shared-types/fonts'

const SCRIPTS: readonly (readonly [RegExp, string])[] = [
  [/\p{Script=Hebrew}/u, 'Hebrew'],
  [/\p{Script=Arabic}/u, 'Arabic'],
  [/\p{Script=Hiragana}|\p{Script=Katakana}/u, 'Japanese'],
  [/\p{Script=Han}/u, 'Chinese or Japanese'],
  [/\p{Script=Hangul}/u, 'Korean'],
  [/\p{Script=Thai}/u, 'Thai'],
  [/\p{Script=Devanagari}/u, 'Devanagari'],
  [/\p{Script=Bengali}/u, 'Bengali'],
  [/\p{Script=Tamil}/u, 'Tamil'],
  [/\p{Script=Telugu}/u, 'Telugu'],
  [/\p{Script=Gujarati}/u, 'Gujarati'],
  [/\p{Script=Gurmukhi}/u, 'Gurmukhi'],
  [/\p{Script=Kannada}/u, 'Kannada'],
  [/\p{Script=Malayalam}/u, 'Malayalam'],
  [/\p{Script=Sinhala}/u, 'Sinhala'],
  [/\p{Script=Lao}/u, 'Lao'],
  [/\p{Script=Khmer}/u, 'Khmer'],
  [/\p{Script=Myanmar}/u, 'Burmese'],
  [/\p{Script=Tibetan}/u, 'Tibetan'],
  [/\p{Script=Mongolian}/u, 'Mongolian'],
  [/\p{Script=Georgian}/u, 'Georgian'],
  [/\p{Script=Armenian}/u, 'Armenian'],
  [/\p{Script=Ethiopic}/u, 'Ethiopic'],
  [/\p{Emoji_Presentation}|\p{Extended_Pictographic}|\p{Regional_Indicator}/u, 'emoji'],
]

const PATTERNS = SCRIPTS.map(([pattern, name]) => ({ pattern, name }))
const KANA_AND_HAN = new Set(['Japanese', 'Chinese or Japanese'])

/** The script of a character, for what is set at once; null for signs of no script of the list. */
export function scriptOf(character: string): string | null {
  const name = PATTERNS.find(({ pattern }) => pattern.test(character))?.name ?? null
  return name !== null && KANA_AND_HAN.has(name) ? 'Japanese' : name
}

/** So many characters at least of a script, before a font is said to cover it: fewer are signs. */
const OF_A_SCRIPT = 20

/** The names of the scripts that a font covers, in the order of the list. */
export function scriptsCovered(ranges: CodePointRanges): string[] {
  const counts = new Map<string, number>()
  for (const [first, last] of ranges)
    for (let point = first; point <= last; point++)
      for (const name of scriptsOf([String.fromCodePoint(point)]))
        counts.set(name, (counts.get(name) ?? 0) + 1)
  return [...new Set(SCRIPTS.map(([, name]) => name))].filter(
    (name) => (counts.get(name) ?? 0) >= OF_A_SCRIPT,
  )
}

/** The names of the scripts of some characters, each once; none for signs that belong to no script of the list. */
export const scriptsOf = (characters: readonly string[]): string[] => [
  ...new Set(characters.flatMap((each) => SCRIPTS.find(([pattern]) => pattern.test(each))?.[1] ?? [])),
]
