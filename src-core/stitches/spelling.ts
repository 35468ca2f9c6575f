/**
 * American and British spelling. Texts for people stand in British spelling in the source; who reads US terms gets
 * them in American. Only what the program itself says goes through here: names and notes of people stay as they are.
 */
import type { Terms } from '../../shared-types/project'

/** British stem → American stem; what follows the stem (plural, -way, -ing) stays. */
const STEMS: readonly (readonly [british: string, american: string])[] = [
  ['anticlockwise', 'counterclockwise'],
  ['cancelled', 'canceled'],
  ['catalogue', 'catalog'],
  ['centimetre', 'centimeter'],
  ['centre', 'center'],
  ['colour', 'color'],
  ['favourite', 'favorite'],
  ['fibre', 'fiber'],
  ['grey', 'gray'],
  ['kilometre', 'kilometer'],
  ['labelled', 'labeled'],
  ['labelling', 'labeling'],
  ['licence', 'license'],
  ['metre', 'meter'],
  ['millimetre', 'millimeter'],
  ['neighbour', 'neighbor'],
  ['towards', 'toward'],
]

const AMERICAN = new Map<string, string>(STEMS)
/** "centred" and "centring" lose the letter that "centre" has; a name behind a brace is a place for a value. */
const BRITISH = new RegExp(
  `(?<!\\{)\\b(?:centr(?=ed\\b|ing\\b)|${STEMS.map(([stem]) => stem).join('|')})`,
  'gi',
)

const likewise = (model: string, word: string): string =>
  model[0] === model[0]?.toUpperCase() ? word[0]!.toUpperCase() + word.slice(1) : word

/** Whether a text has words that are spelled in two ways. */
export const isSpelledTwoWays = (text: string): boolean => text.search(BRITISH) >= 0

/** A text of the program as its reader spells: "grey neighbours" → "gray neighbors" (US). */
export const inSpelling = (text: string, terms: Terms): string =>
  terms === 'UK'
    ? text
    : text.replace(BRITISH, (stem) => likewise(stem, AMERICAN.get(stem.toLowerCase()) ?? 'center'))

export type Say = (parts: TemplateStringsArray, ...values: readonly (string | number)[]) => string

/** A tag for texts: its words are spelled for the reader, what is put in between stays as it is. */
export const saying =
  (terms: Terms): Say =>
  (parts, ...values) =>
    parts.map((part, i) => `${inSpelling(part, terms)}${values[i] ?? ''}`).join('')

/** "color B" or "center", as the program names a part of a motif, in the spelling of who reads it; names that people gave stay. */
export const colourSpelled = (name: string, terms: Terms): string =>
  /^((main )?colou?r( [A-Z]{1,2})?|cent(re|er))$/.test(name)
    ? name.replace(/colou?r/, inSpelling('colour', terms)).replace(/cent(re|er)/, inSpelling('centre', terms))
    : name

/** American and British, of words that stand in rounds and instructions; names of yarns have none of them. */
const IN_PATTERNS: readonly (readonly [american: string, british: string])[] = [
  ['colors', 'colours'],
  ['colored', 'coloured'],
  ['color', 'colour'],
  ['centers', 'centres'],
  ['centered', 'centred'],
  ['center', 'centre'],
  ['neighbors', 'neighbours'],
  ['neighbor', 'neighbour'],
]

/** A designer's text that is printed in other terms than it was written in, in their spelling: “color of the center”. */
export function respelled(text: string, from: Terms, to: Terms): string {
  if (from === to) return text
  const pairs = IN_PATTERNS.map(([us, uk]) => (from === 'US' ? ([us, uk] as const) : ([uk, us] as const)))
  const others = new Map(pairs)
  return text.replace(new RegExp(`\\b(?:${pairs.map(([word]) => word).join('|')})\\b`, 'gi'), (word) =>
    likewise(word, others.get(word.toLowerCase()) ?? word),
  )
}
