/**
 * Text → tokens. Loss-free: every token knows where it stands, and what lies between two tokens is white space,
 * so the designer's words can always be given back. One pass, sticky expressions without backtracking, so the
 * time grows with the length of the text alone.
 */

import { withoutDress } from './dress'
import { STITCH_KEYS } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import { LIMITS } from './limits'
import { aliasesOf, withAliases } from './aliases'
import { STOPS, wordOf } from './words'

/** A stretch of the text, as offsets; `line` and `column` (both from 1) are of its first character. */
export interface Span {
  readonly start: number
  readonly end: number
  readonly line: number
  readonly column: number
}

export type TokenKind =
  | 'word'
  | 'number'
  /** "2nd", "3rd". */
  | 'ordinal'
  /** "ch-5", "5-ch": chains that are already there. */
  | 'chains'
  /** Punctuation, one character each, but for `**`. */
  | 'mark'

export interface Token extends Span {
  readonly kind: TokenKind
  /** As written. */
  readonly text: string
  /** Lower case, typographic signs made plain, without the stops of "s.c."; "ea" is "each". */
  readonly key: string
  /** The word that it is a spelling of: "loops" is "lp". */
  readonly is: string
  /** What that word can stand for (`words.ts`). */
  readonly kinds: ReadonlySet<string>
  /** Of numbers, ordinals and chains; 0 for the rest. */
  readonly value: number
  /** First on its line. */
  readonly first: boolean
  /** White space before it. */
  readonly spaced: boolean
  /** A number that hangs on the next word with a hyphen: "3-dc cluster". */
  readonly hyphen: boolean
  /** A blank line stands before it. */
  readonly paragraph: boolean
}

const HYPHEN = '[-\\u2010\\u2011]'
/** "2d" and "3d" as older print has them; "2d.c." and "3d c" are stitches. */
const ORDINAL = /(\d+)(?:(?:st|nd|rd|th)(?![\p{L}\d])|(?<=[23])d(?![\p{L}\d]|\.?[ \t]?(?:c|tr)(?!\p{L})))/iuy
const CHAINS_AFTER = new RegExp(`ch(?:ain)?s?\\.?${HYPHEN}(\\d+)`, 'iuy')
const CHAINS_BEFORE = new RegExp(`(\\d+)${HYPHEN}ch(?:ain)?s?(?![\\p{L}\\d])`, 'iuy')
const SPELLED_CHAINS = new RegExp(
  `^(one|two|three|four|five|six|seven|eight|nine|ten|twelve)${HYPHEN}ch(?:ain)?s?$`,
  'iu',
)
const TOGETHER = /\p{L}{1,6}\d{1,2}tog(?![\p{L}\d])/iuy
const NUMBER = /\d+(?:[.,]\d+)?/uy
const WORD = new RegExp(`\\p{L}[\\p{L}\\u2019']*(?:${HYPHEN}\\p{L}[\\p{L}\\u2019']*)*`, 'uy')
/**
 * Abbreviations written with full stops, as older print has them: "s.c.", "h. d. c.", "sl. st.", "Ch. 4", "sk. 1 st.,".
 * The last stop belongs to the word only where the sentence goes on behind it; else it ends the sentence.
 */
const STITCH_STOPS = (['US', 'UK'] as const).flatMap((terms) =>
  STITCH_KEYS.map((key) => stitchAbbreviation(key, terms)).filter((name) => !name.includes(' ')),
)
const DOTTED = new RegExp(
  [
    "((?:h\\.[ \\t]?)?[sdp]\\.[ \\t]?c|s\\.[ \\t]?s|(?:h|l|r|d|dbl|t|tr|trip|d\\.[ \\t]?d|quad)\\.[ \\t]?tr|[yw]\\.[ \\t]?[or]\\.[ \\t]?h|y\\.[ \\t]?o|sl\\.-sts?)(?![\\p{L}\\d'])",
    `(${STOPS.stop.join('|')})(?=\\.)`,
    '(sl)(?=\\.)',
    '(chs?)(?=\\.)',
    `(?:(?:slip|half|v|ch|chain)-)?(?:${[...STOPS['stop-in'], ...STITCH_STOPS].join('|')})(?=\\.)`,
  ].join('|'),
  'iuy',
)
const GOES_ON =
  '[ \\t]*[,;:)\\]]|\\s+(?:in|into|of|on|to|from|around|round|between|bet|over|through|across|at|before|after|and|or|as|where|made|worked|tog|together|twice|each|ea|evenly|all|work|make|sps?|lps?|sts?|spaces?|loops?|stitch(?:es)?|up|down|along|onto|behind|unworked|unused|free|remaining|only|but|with|that|which|below|under|just|left|instead|taken|replacing|being|drawn|by|upon|more|above|beneath|within|towards?|again|for|till|until|thus|points?|tips?|corners?|arcs?|arch(?:es)?)(?![\\p{L}])|\\s+\\((?:p|picots?)(?!\\p{L})|\\s+\\([^()\\d]{1,24}\\bmade\\)'
/** What stands behind the stop where it is no end: after any of them, after "sk." and its like, "sl.", "ch.". */
const BEHIND_ANY = new RegExp(GOES_ON, 'uy')
const BEHIND_SKIP = /[ \t]*[,;)]|\s+[\p{Ll}\d]/uy
const BEHIND_SLIP = /\s*sts?(?!\p{L})/iuy
const BEHIND_CHAIN = new RegExp(`\\s+\\d|\\s+\\((?:p|picots?|for|to|counts?|as)(?!\\p{L})|${GOES_ON}`, 'uy')
/** "dc's": a plural as some write it. */
const APOSTROPHE_PLURAL = /^(\p{L}{1,8})'s$/u
/** "d c", "s c", "h d c", "h dc", "d tr", "tr c": abbreviations of older print with blanks and without stops. */
const SPACED_LETTERS =
  /(?:(?:[Hh][ \t])?[SsDd][ \t][Cc]|[Hh][ \t](?:dc|tr|DC|TR)|(?:[Dd][ \t])?(?:TR|[Tt]r)[ \t]c|[Dd][ \t](?:tr|TR))(?![\p{L}\d'-]|\.[\p{L}\d-])/uy
const BEGINS_SPACED = /^(?:[hsd]|tr)$/i
/** "air chains", "air ch": what chains are called where other languages are at home. */
const AIR_CHAINS = /air[ \t-]+(?:chains?|chs?)(?![\p{L}\d])/iuy
/** "St-sc", "stand-BPdc": how the stitch begins, before its name. */
const STANDING = /st(?:an)?d?-(?=(?:[fb]p)?(?:sc|hdc|dc|htr|tr|dtr)\d?)/iuy
/** ":)", ";-)", "<3" behind a blank: a smile ends a sentence, and closes no bracket. */
const SMILE = /(?:[:;]['-]?[)DP]+|<3+)(?![\p{L}\d])/uy
/** "w/": with. */
const WITH = /w\/(?!o)/iuy
const SPACE = /[\s\u00a0\ufeff]+/uy
const OTHER = /\*\*|★★|./suy
/** An arrow of plain signs. */
const ARROW = /[-=]{1,3}>/y
/** Stars and brackets of other founts, by the sign that says the same. */
const SIGNS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ...{
      '->': '→',
      '-->': '→',
      '--->': '→',
      '=>': '→',
      '==>': '→',
      '===>': '→',
      '★': '*',
      '★★': '**',
      '☆': '†',
      '✱': '*',
      '✻': '*',
      '✽': '*',
      '❋': '*',
      '⁎': '*',
      '∗': '*',
      '＊': '*',
    },
    ...{ '【': '[', '】': ']', '〔': '[', '〕': ']', '［': '[', '］': ']', '（': '(', '）': ')', '‡': '†' },
  }),
)

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at
  return pattern.exec(text)
}

const PLAIN = /^[\x20-\x7e]*$/

/** Plain spelling for comparison: lower case, straight apostrophes, plain hyphens. */
export function plain(text: string): string {
  const lower = text.toLowerCase()
  if (PLAIN.test(lower)) return lower
  return lower.replace(/\u2019/gu, "'").replace(/[\u2010\u2011]/gu, '-')
}

interface Found {
  kind: TokenKind
  text: string
  value: number
  hyphen: boolean
}

/** The value of figures; more digits than count anything are only very many. */
const figure = (digits: string): number => Math.min(Number(digits), LIMITS.figure)

function lexDigits(text: string, at: number): Found {
  let plainEnd = at + 1
  while (isDigit(text, plainEnd)) plainEnd++
  if (!goesOn(text, plainEnd, '.,-') && !isLetter(text, plainEnd)) {
    const digits = text.slice(at, plainEnd)
    return { kind: 'number', text: digits, value: figure(digits), hyphen: false }
  }
  const ordinal = match(ORDINAL, text, at)
  if (ordinal) return { kind: 'ordinal', text: ordinal[0], value: figure(ordinal[1]!), hyphen: false }
  const chains = match(CHAINS_BEFORE, text, at)
  if (chains) {
    // "Into 1-ch. sp."
    const end = at + chains[0].length
    const stop = text[end] === '.' && match(BEHIND_ANY, text, end + 1) ? '.' : ''
    return { kind: 'chains', text: `${chains[0]}${stop}`, value: figure(chains[1]!), hyphen: false }
  }
  const found = match(NUMBER, text, at)![0]
  // "1,200" and "1,5" are left to prose; a list "1,2" is two numbers. Patterns count in whole numbers.
  const whole = /^\d+,/.test(found) ? found.replace(/,.*$/, '') : found
  const hyphen = /^[-\u2010\u2011]\p{L}/u.test(text.slice(at + whole.length, at + whole.length + 2))
  return { kind: 'number', text: whole, value: figure(whole), hyphen }
}

function lexLetters(text: string, at: number, word: string): Found {
  const chains = word[0] === 'c' || word[0] === 'C' ? match(CHAINS_AFTER, text, at) : null
  if (chains) return { kind: 'chains', text: chains[0], value: figure(chains[1]!), hyphen: false }
  // "The next two-chain space".
  const [spelled, number] = word.includes('-') ? (SPELLED_CHAINS.exec(word) ?? []) : []
  if (spelled)
    return { kind: 'chains', text: spelled, value: wordOf(number!.toLowerCase()).value, hyphen: false }
  const together = isDigit(text, at + word.length) ? match(TOGETHER, text, at) : null
  if (together) return { kind: 'word', text: together[0], value: 0, hyphen: false }
  return { kind: 'word', text: word, value: 0, hyphen: false }
}

const isDigit = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at)
  return code >= 48 && code <= 57
}

const isLetter = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at) | 32
  return code >= 97 && code <= 122
}

/** The abbreviation with stops at a place, or null. "in top of 3 ch. 12 tr." ends a sentence, ", ch. 3" does not. */
function dottedAt(text: string, at: number, before: Token | undefined): string | null {
  const found = match(DOTTED, text, at)
  if (!found) return null
  const [whole, several, skip, slip, chain] = found
  const end = at + whole.length
  const opens = before === undefined || before.kind === 'mark' || /^(and|then|with)$/.test(before.key)
  const behind = skip ? BEHIND_SKIP : slip ? BEHIND_SLIP : chain && opens ? BEHIND_CHAIN : BEHIND_ANY
  if (text[end] === '.' && match(behind, text, end + 1)) return `${whole}.`
  return several === undefined ? null : whole
}

/** Signs that go on with a word, or a number, in some way: what the expressions are for. */
const goesOn = (text: string, at: number, signs: string): boolean =>
  at < text.length && (text.charCodeAt(at) > 126 || signs.includes(text[at]!))

/** The word at a place, '' where there is none. Plain words, which most are, need no expression. */
function wordAt(text: string, at: number): string {
  let end = at
  while (isLetter(text, end)) end++
  if (end > at && !goesOn(text, end, "'-")) return text.slice(at, end)
  return match(WORD, text, at)?.[0] ?? ''
}

/** Whether a character is one that is seen: those beyond ASCII are left to the expressions. */
const isPlainMark = (text: string, at: number): boolean => {
  const code = text.charCodeAt(at)
  return code > 32 && code < 127
}

/** Tokens behind which nothing is seen: what looks on from a word looks past blanks and at most thirty signs. */
const SEEN_AHEAD = 40

/** Tokens of the lines at the beginning that two texts have in common, and where the first line that may differ begins. */
function knownLines({ tokens, common }: TokensBefore): Token[] {
  let end = tokens.length
  while (end > 0 && tokens[end - 1]!.end >= common) end--
  end -= SEEN_AHEAD
  while (end > 0 && !tokens[end]!.first) end--
  return tokens.slice(0, Math.max(0, end))
}

/** A text that was read before, and how many signs at its beginning stand in this one too. */
export interface TokensBefore {
  readonly tokens: readonly Token[]
  readonly common: number
}

/**
 * All tokens of a text, in order. Never fails: what is no word and no number is a mark. Lines that stood before in a
 * text whose tokens are known are not taken apart again.
 */
export function tokenize(text: string, before: TokensBefore | null = null): Token[] {
  // Letters that stood for stitches may stand for themselves now.
  const known = before && aliasesOf(before.tokens) === '' ? knownLines(before) : []
  const next = known.length > 0 ? before!.tokens[known.length]! : null
  return withAliases(tokensFrom(withoutDress(text), known, next))
}

/** "(sc, inc)*6": how often, as a sum has it. */
const timesBehind = (text: string, at: number): boolean =>
  text[at] === '*' && /[)\]]/.test(text[at - 1] ?? '') && isDigit(text, at + 1)

/** Goes on behind tokens that are known, where a line begins with `next`. */
function tokensFrom(text: string, tokens: Token[], next: Token | null): Token[] {
  let at = next?.start ?? 0
  let line = next?.line ?? 1
  let lineStart = next ? at - next.column + 1 : 0
  let first = true
  let spaced = next?.spaced ?? false
  let paragraph = next?.paragraph ?? false
  let brackets = 0
  while (at < text.length) {
    const space = isPlainMark(text, at) ? null : match(SPACE, text, at)
    if (space) {
      let breaks = 0
      for (let index = at; index < at + space[0].length; index++) {
        if (text[index] !== '\n') continue
        breaks++
        lineStart = index + 1
      }
      line += breaks
      first ||= breaks > 0
      paragraph ||= breaks > 1
      if (breaks > 0) brackets = 0
      spaced = true
      at += space[0].length
      continue
    }
    let found: Found
    let dotted = false
    const word = wordAt(text, at)
    const smile = spaced && brackets === 0 && ':;<'.includes(text[at]!) ? match(SMILE, text, at) : null
    if (smile) found = { kind: 'mark', text: smile[0], value: 0, hyphen: false }
    else if (isDigit(text, at)) {
      found = lexDigits(text, at)
      dotted = found.kind === 'chains' && found.text.endsWith('.')
    } else if (text[at + 1] === '/' && match(WITH, text, at))
      found = { kind: 'word', text: text.slice(at, at + 2), value: 0, hyphen: false }
    else if (word !== '') {
      found = lexLetters(text, at, word)
      const standing = word.includes('-') ? match(STANDING, word, 0) : null
      if (standing) found = { ...found, text: standing[0] }
      const letters = word.length <= 2 && BEGINS_SPACED.test(word) ? match(SPACED_LETTERS, text, at) : null
      const air = word.startsWith('air') || word.startsWith('Air') ? match(AIR_CHAINS, text, at) : null
      const whole =
        (letters ?? air)
          ? (letters ?? air)![0]
          : found.kind === 'word' && text[at + word.length] === '.'
            ? dottedAt(text, at, tokens[tokens.length - 1])
            : null
      dotted = whole !== null
      if (whole !== null) found = { ...found, text: whole }
    } else
      found = {
        kind: 'mark',
        text: (match(ARROW, text, at) ?? match(OTHER, text, at)!)[0],
        value: 0,
        hyphen: false,
      }
    const end = at + found.text.length
    if (found.text === '(') brackets++
    else if (found.text === ')' && brackets > 0) brackets--
    const key = smile
      ? '.'
      : found.text.endsWith('/') && found.text.length > 1
        ? 'with'
        : plain(dotted ? found.text.replace(/^air[ \t-]+(?=ch)|[. \t]/giu, '') : found.text)
    const spelling =
      found.kind === 'mark'
        ? timesBehind(text, at)
          ? '×'
          : (SIGNS.get(key) ?? key)
        : key === 'ea'
          ? 'each'
          : key.replace(APOSTROPHE_PLURAL, '$1')
    const { is, kinds } = wordOf(spelling)
    // Spelled out, so that all tokens are of one shape: objects that are spread are slow to make and to read.
    tokens.push({
      kind: found.kind,
      text: found.text,
      value: found.value,
      hyphen: found.hyphen,
      key: spelling,
      is,
      kinds,
      start: at,
      end,
      line,
      column: at - lineStart + 1,
      first,
      spaced,
      paragraph,
    })
    at = end
    if (found.hyphen) at += 1
    first = false
    spaced = false
    paragraph = false
  }
  return tokens
}

/** The stretch from the first of two spans to the end of the second. */
export function spanOf(from: Span, to: Span): Span {
  return { start: from.start, end: Math.max(from.end, to.end), line: from.line, column: from.column }
}
