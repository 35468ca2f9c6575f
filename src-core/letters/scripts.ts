/** What the scripts are called that the paper's face lacks. */

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

/** The names of the scripts of some characters, each once; none for signs that belong to no script of the list. */
export const scriptsOf = (characters: readonly string[]): string[] => [
  ...new Set(characters.flatMap((each) => SCRIPTS.find(([pattern]) => pattern.test(each))?.[1] ?? [])),
]
