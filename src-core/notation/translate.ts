/**
 * The same text in other terms, or with abbreviations for long words. Word by word, so that everything else stays as
 * the designer wrote it. US → UK → US gives back a text that uses US words only: each US word has one UK word of its
 * own ("sk" – "miss", "skip" – "miss out"), and figures, order and capitals are kept. What is printed for readers of the
 * other terms (`editionText`) has chains and skips as these write them, and is not put back.
 */
import type { Terms } from '../../shared-types/project'
import { STITCH_KEYS } from '../stitches/table'
import { stitchAbbreviation, stitchName } from '../stitches/terms'
import { hasWordsOf } from './text-terms'
import { plain, tokenize } from './tokens'
import type { Token } from './tokens'
import { SHORTENED, UK_WORDS } from './words'

/** Pairs of US and UK words, as in the published US–UK tables; longer ones are looked for first. */
const WORD_PAIRS: readonly (readonly [string, string])[] = [
  // Both are in print; what is printed here is the one word.
  ['trtr', 'quad tr'],
  ...STITCH_KEYS.filter((key) => key !== 'ch').map(
    (key) => [stitchAbbreviation(key, 'US'), stitchAbbreviation(key, 'UK')] as const,
  ),
  ...STITCH_KEYS.filter((key) => key !== 'ch' && key !== 'sl st').flatMap((key) => {
    const us = stitchName(key, 'US')
    const uk = stitchName(key, 'UK')
    const short = (name: string) => name.replace(/ crochet$/, '')
    const half = key === 'hdc' || key === 'dtr' || key === 'trtr' ? ([[short(us), short(uk)]] as const) : []
    return [[us, uk], [`${us}s`, `${uk}s`], ...half] as const
  }),
  // Both are in print; what is printed is "miss".
  ...['skip', 'sk'].map((us) => [us, 'miss out'] as const),
  ['skips', 'misses out'],
  ...UK_WORDS,
  ['us terms', 'uk terms'],
  ['us terminology', 'uk terminology'],
]

const byTerms = (from: Terms): ReadonlyMap<string, string> =>
  new Map(WORD_PAIRS.filter(([us, uk]) => us !== uk).map(([us, uk]) => (from === 'US' ? [us, uk] : [uk, us])))
const WORDS: Readonly<Record<Terms, ReadonlyMap<string, string>>> = { US: byTerms('US'), UK: byTerms('UK') }
const LONGEST = 3

const COMPOUND = /^(fp|bp|blo?|flo?|e)?(sc|hdc|dc|tr|dtr|htr|trtr|qtr)(\d+tog|s)?$/i

/** The capitals of the word that stood there: "Sc" → "Dc", "SC" → "DC". */
function withCapitals(word: string, as: string): string {
  const letters = as.replace(/[^\p{L}]/gu, '')
  if (letters.length > 1 && letters === letters.toUpperCase()) return word.toUpperCase()
  const first = as[0] ?? ''
  return first !== first.toLowerCase() ? word[0]!.toUpperCase() + word.slice(1) : word
}

/** "FPdc", "dc3tog", "scs": a name with something before or behind it. */
function translateCompound(text: string, from: Terms): string | null {
  const found = COMPOUND.exec(text)
  if (!found) return null
  const [, before = '', base = '', after = ''] = found
  const other = WORDS[from].get(base.toLowerCase())
  return other === undefined || other.includes(' ') ? null : before + withCapitals(other, base) + after
}

/** "ch-5" is how US patterns name a space of five chains, "5-ch" how UK patterns do. */
function translateChains(token: Token, from: Terms): string | null {
  const found = from === 'US' ? /^(ch)\.?(-)(\d+)$/i.exec(token.text) : /^(\d+)(-)(ch)$/i.exec(token.text)
  return found ? `${found[3]}${found[2]}${found[1]}` : null
}

/** Words before a number of chains that are there already and are worked into or passed over: "in each of next 3 ch". */
const OF_CHAINS_THERE =
  /^(?:next|each|every|first|last|remaining|rem|other|these|those|same|all|miss|missed|skip|skipped|sk|leave|in|into|over|across|along|on|past|from|the|through|both)$/
const SPACES = /^(?:sps?|spaces?|loops?|lps?|arch(?:es)?)$/
/** "in each ch 3 times". */
const COUNTS = /^(?:times?|more|x|×)$/

/**
 * "ch 3" is how US patterns say that chains are made, "3 ch" how UK patterns do; chains that are there, "next 3 ch", are
 * counted alike in both. A space is named as `translateChains` names it.
 */
function translateMade(
  tokens: readonly Token[],
  at: number,
  from: Terms,
  text: string,
): { words: string; length: number } | null {
  const [one, two] = [tokens[at]!, tokens[at + 1]]
  const [chain, number] = from === 'US' ? [one, two] : [two, one]
  if (!two || chain?.key !== 'ch' || number?.kind !== 'number' || number.hyphen) return null
  if (text.slice(one.end, two.start) !== ' ') return null
  const after = tokens[at + 2]?.key ?? ''
  const [other, mark] = from === 'US' ? [`${number.text}`, 'ch'] : ['ch', number.text]
  if (SPACES.test(after)) return { words: `${other}-${mark}`, length: 2 }
  const before = tokens[at - 1]
  const isApart = before === undefined || /[,;:.()*[\]]/.test(text.slice(before.end, one.start))
  const isOfEach = before?.key === 'of' && /^(?:each|every|all)$/.test(tokens[at - 2]?.key ?? '')
  if (COUNTS.test(after) || isOfEach || (!isApart && OF_CHAINS_THERE.test(before?.key ?? ''))) return null
  const begins = /[.!?]\s+$/.test(text.slice(0, one.start))
  return { words: `${begins && from === 'UK' ? 'Ch' : other} ${mark}`, length: 2 }
}

type Rewriter = (
  tokens: readonly Token[],
  at: number,
  text: string,
) => { words: string; length: number } | null

/** Replaces words; white space, signs and all other words stay. */
function rewrite(text: string, rewriter: Rewriter): string {
  const tokens = tokenize(text)
  let result = ''
  let copied = 0
  for (let at = 0; at < tokens.length; at++) {
    const found = rewriter(tokens, at, text)
    if (!found) continue
    result += text.slice(copied, tokens[at]!.start) + found.words
    copied = tokens[at + found.length - 1]!.end
    at += found.length - 1
  }
  return result + text.slice(copied)
}

/** The words of some tokens as one key, if only single blanks or breaks lie between them. */
function keyOf(tokens: readonly Token[], at: number, length: number): string | null {
  const words: string[] = []
  for (let index = at; index < at + length; index++) {
    const token = tokens[index]
    if (!token || token.kind !== 'word') return null
    words.push(token.key)
  }
  return words.join(' ')
}

/** A text in the other terms; its own words where both are the same. */
export function translateText(text: string, from: Terms, to: Terms): string {
  if (from === to) return text
  return rewrite(text, (tokens, at) => {
    const token = tokens[at]!
    if (token.kind === 'chains') {
      const words = translateChains(token, from)
      return words === null ? null : { words, length: 1 }
    }
    if (token.kind !== 'word') return null
    for (let length = LONGEST; length >= 1; length--) {
      const key = keyOf(tokens, at, length)
      const word = key === null ? undefined : WORDS[from].get(key)
      if (word !== undefined) return { words: withCapitals(word, token.text), length }
    }
    const words = translateCompound(token.text, from)
    return words === null ? null : { words, length: 1 }
  })
}

/** A text for readers of the other terms, as patterns are published there; its own words where both are the same. */
export function editionText(text: string, from: Terms, to: Terms): string {
  if (from === to) return text
  const told = rewrite(translateText(text, from, to), (tokens, at, all) =>
    translateMade(tokens, at, from, all),
  )
  return to === 'UK' ? told.replace(/\b(miss|misses) out\b/gi, '$1') : told
}

/**
 * Texts that belong together in the other terms; as they are where one of them has words that only those have. They were
 * written in them: word by word, "3 dc" beside "sc" would come to be other stitches.
 */
export const translateTexts = (texts: readonly string[], from: Terms, to: Terms): readonly string[] =>
  from === to || texts.some((text) => hasWordsOf(text, to))
    ? texts
    : texts.map((text) => translateText(text, from, to))

/** Names of stitches written out and their abbreviations in the same terms. */
function shortNames(terms: Terms): ReadonlyMap<string, string> {
  const map = new Map([...SHORTENED, ['centre', 'center']])
  for (const key of STITCH_KEYS) {
    map.set(stitchName(key, terms), stitchAbbreviation(key, terms))
    map.set(`${stitchName(key, terms)}s`, stitchAbbreviation(key, terms))
  }
  map.set('slip stitches', `${stitchAbbreviation('sl st', terms)}${terms === 'US' ? 's' : ''}`)
  if (terms === 'UK') map.delete('skip')
  return map
}
const SHORT_NAMES: Readonly<Record<Terms, ReadonlyMap<string, string>>> = {
  US: shortNames('US'),
  UK: shortNames('UK'),
}

/** A text with the usual abbreviations for its long words, in lower case but for what is written in capitals. */
export function abbreviateText(text: string, terms: Terms): string {
  const short = rewrite(text, (tokens, at) => {
    for (let length = LONGEST; length >= 1; length--) {
      const key = keyOf(tokens, at, length)
      // A "magic loop" is a ring, no loop to work in.
      const ring = key === 'loop' && /^(magic|adjustable|sliding)$/.test(tokens[at - 1]?.key ?? '')
      // "Round the stem" is where the hook goes, no round.
      const about = key === 'round' && /^(the|stem|post|each|next|that|same)$/.test(tokens[at + 1]?.key ?? '')
      const word = key === null || ring || about ? undefined : SHORT_NAMES[terms].get(key)
      if (word !== undefined) return { words: withCapitals(word, tokens[at]!.text), length }
    }
    // "s.c." and "ea" in today's spelling.
    const { kind, key, text: own } = tokens[at]!
    if (kind === 'word' && plain(own) !== key) return { words: withCapitals(key, own), length: 1 }
    if (kind === 'chains' && own.includes('.')) return { words: own.replace('.', ''), length: 1 }
    return null
  })
  return short.replace(/\s+/g, ' ')
}
