/**
 * Where one wrong number makes a round go wrong: each number of the round is tried a little larger and smaller, and
 * what lets everything work out is offered, as a tech editor would ("4 more times?"). Common practice, no source.
 */
import type { Finding } from '../../shared-types/finding'
import { readRounds } from './read'
import type { ReadOptions, ReadRounds } from './read'
import type { Token } from './tokens'
import type { RoundNode } from './tree'
import { STITCH_KEYS } from '../stitches/table'
import { stitchAbbreviation } from '../stitches/terms'
import { numberWord, wordOf } from './words'

/** One number, or one misspelled stitch, of a text that would work out if it were another. */
export interface LikelySlip {
  /** Number of the round that does not work out. */
  readonly round: number
  /** Offsets into the text. */
  readonly start: number
  readonly end: number
  /** From 1. */
  readonly line: number
  readonly column: number
  /** As it is written, and as it would have to be: "5" and "4", "3rd" and "4th". */
  readonly was: string
  readonly now: string
  /** The words around it, as they would read: "rep from * 4 more times". */
  readonly words: string
}

/** Texts beyond this are not looked through: a page of a pattern is far shorter. */
const MOST_CHARACTERS = 30_000
/** Readings for one text, so that even a hopeless one takes no longer than a short while. */
const MOST_READINGS = 160
/** Rounds that are looked into: what goes wrong later most often hangs on the first one. */
const MOST_ROUNDS = 3
/** More ways than this to make a round work out are no answer. */
const MOST_WAYS = 3

const isWrong = ({ severity }: Finding): boolean => severity !== 'note'

/** How often each thing is wrong in each round: columns move with the digits, so they do not count. */
function tally(findings: readonly Finding[]): Map<string, number> {
  const all = new Map<string, number>()
  for (const { code, target, ...found } of findings) {
    if (!isWrong({ code, ...found })) continue
    const key = `${target?.round ?? 0} ${code}`
    all.set(key, (all.get(key) ?? 0) + 1)
  }
  return all
}

const SUFFIX = ['th', 'st', 'nd', 'rd'] as const
const suffixOf = (value: number): string =>
  SUFFIX[value % 10 > 3 || Math.floor((value % 100) / 10) === 1 ? 0 : value % 10]!

/** What a token counts; 0 where it does not. */
const valueOf = ({ value, is }: Token): number => (is === 'once' ? 1 : is === 'twice' ? 2 : value)

/** A number as its token has it, with another value; null where it cannot be told in that way. */
function restated(token: Token, value: number): string | null {
  const { text, kind, is } = token
  const was = valueOf(token)
  if (value < 1) return null
  if (/\d/.test(text)) {
    const digits = text.replace(/\d+/, String(value))
    return kind === 'ordinal' ? digits.replace(/(\d)(?:st|nd|rd|th)$/i, `$1${suffixOf(value)}`) : digits
  }
  if (is === 'once' || is === 'twice') return value === 1 ? 'once' : value === 2 ? 'twice' : `${value} times`
  const told = (['number', 'ordinal'] as const).find((each) => numberWord(was, each) === text.toLowerCase())
  return told ? numberWord(value, told) : null
}

/** "2nd ch from hook": the first one is on the hook, and nothing goes into it. */
const isFromHook = (text: string, { end }: Token): boolean =>
  /^ (?:ch|chain|st)s?\.? from (?:the )?hook/i.test(text.slice(end, end + 30))

/** Where the words around a number begin. */
const MARKS = [', ', '; ', '. ', ': ', '\n', '(', '[']

/** As the words around a number would read: from the stop or mark before it to the one behind it. */
function around(
  text: string,
  { start, end }: Token,
  now: string,
  node: { start: number; end: number },
): string {
  const before = text.slice(Math.max(node.start, start - 40), start)
  const after = text.slice(end, Math.min(node.end, end + 30))
  const from = Math.max(
    0,
    ...MARKS.map((mark) => before.lastIndexOf(mark) + mark.length).filter((at, i) => at >= MARKS[i]!.length),
  )
  const to = /[,;.)\]\n]/.exec(after)?.index ?? after.length
  const whole = start - 40 > node.start && from === 0 ? before.replace(/^\S*\s/, '') : before.slice(from)
  return `${whole}${now}${after.slice(0, to)}`.replace(/\s+/g, ' ').trim()
}

/** The stretch of text in which a round's slip can stand: the round, and the chain that it is worked along. */
function stretchOf(rounds: readonly RoundNode[], index: number): { start: number; end: number } {
  const node = rounds[index]!
  const before = rounds[index - 1]
  const start = before?.label === 'foundation' ? before.start : (node.heading?.end ?? node.start)
  return { start, end: node.end }
}

/**
 * Numbers of a text that would work out if they were one or two more or less. `read` is what reading found; nothing
 * comes back where it found nothing wrong, where no single number mends a round, or where too many would.
 */
export function likelySlips(
  text: string,
  options: ReadOptions = {},
  read = readRounds(text, options),
): LikelySlip[] {
  if (text.length > MOST_CHARACTERS || !read.findings.some(isWrong)) return []
  const slips: LikelySlip[] = []
  const budget = { left: MOST_READINGS }
  const wrong = wrongRounds(read).slice(0, MOST_ROUNDS)
  let rest = new Set(wrong.map(({ index }) => index))
  for (const round of wrong) {
    // What goes wrong only because of an earlier round is mended with that one.
    if (!rest.has(round.index)) continue
    const found = slipsOf(text, options, read, round, budget)
    slips.push(...found)
    const [first] = found
    if (!first) continue
    const { start, end, now } = first
    const mended = readRounds(text.slice(0, start) + now + text.slice(end), options)
    const still = new Set(wrongRounds(mended).map(({ index }) => index))
    rest = new Set([...rest].filter((index) => still.has(index)))
  }
  // The reader goes on from what it read last: let that be the text itself.
  if (budget.left < MOST_READINGS) readRounds(text, options)
  return slips
}

interface WrongRound {
  readonly number: number
  /** Index into the tree's rounds. */
  readonly index: number
}

/** Rounds that something is wrong with, in order of the text. */
function wrongRounds({ findings, tree }: ReadRounds): WrongRound[] {
  const found = new Map<number, WrongRound>()
  for (const { target, severity } of findings) {
    const { round, line } = target ?? {}
    if (severity !== 'error' || round === undefined || line === undefined) continue
    const index = tree.rounds.findLastIndex((node) => node.line <= line)
    if (index >= 0 && !found.has(index)) found.set(index, { index, number: round })
  }
  return [...found.values()].sort((a, b) => a.index - b.index)
}

/** Words of a round that are no stitch that is known. */
const misspelled = (
  read: ReadRounds,
  { start, end }: { start: number; end: number },
  number: number,
): Token[] =>
  read.tree.tokens.filter(
    (token) =>
      token.kind === 'word' &&
      token.start >= start &&
      token.end <= end &&
      read.findings.some(
        ({ code, target }) =>
          code === 'rounds/unknown-abbreviation' &&
          target?.round === number &&
          target.line === token.line &&
          target.column === token.column,
      ),
  )

/** Whether one word is the other with two letters beside each other swapped, or with one more, fewer or another. */
function isNear(word: string, other: string): boolean {
  if (word === other || Math.abs(word.length - other.length) > 1) return false
  let from = 0
  while (from < word.length && word[from] === other[from]) from++
  const [a, b] = [word.slice(from), other.slice(from)]
  if (a.length > 1 && a[0] === b[1] && a[1] === b[0] && a.slice(2) === b.slice(2)) return true
  return a.slice(1) === b.slice(1) || a.slice(1) === b || a === b.slice(1)
}

/** Stitches as this text or its terms call them that are one slip of the keys away; swapped letters first. */
function nearWords(word: string, { tree }: ReadRounds): string[] {
  const own = tree.tokens.filter(({ kind }) => kind === 'word').map(({ key }) => key)
  const names = STITCH_KEYS.map((key) => stitchAbbreviation(key, tree.terms))
  const known = new Set([...names, ...own.filter((key) => wordOf(key).known || names.includes(key))])
  const asked = word.toLowerCase()
  const isSwapped = (other: string): number => (other.length === asked.length ? 0 : 1)
  return [...known]
    .filter((other) => !other.includes(' ') && isNear(asked, other))
    .sort((a, b) => isSwapped(a) - isSwapped(b))
}

function slipsOf(
  text: string,
  options: ReadOptions,
  read: ReadRounds,
  { number, index }: WrongRound,
  budget: { left: number },
): LikelySlip[] {
  const stretch = stretchOf(read.tree.rounds, index)
  const numbers = read.tree.tokens.filter(
    (token) => valueOf(token) > 0 && token.start >= stretch.start && token.end <= stretch.end,
  )
  const before = tally(read.findings)
  const worksOut = (other: string): boolean => {
    budget.left--
    const after = tally(readRounds(other, options).findings)
    if ([...after].some(([key, count]) => count > (before.get(key) ?? 0))) return false
    return ![...after.keys()].some((key) => key.startsWith(`${number} `))
  }
  const tried = (values: (token: Token) => readonly number[]): LikelySlip[] =>
    numbers.flatMap((token) =>
      [...new Set(values(token))].flatMap((value) => {
        const now = value === valueOf(token) || budget.left <= 0 ? null : restated(token, value)
        if (now === null || (value === 1 && isFromHook(text, token))) return []
        if (!worksOut(text.slice(0, token.start) + now + text.slice(token.end))) return []
        const { start, end, line, column } = token
        const words = around(text, token, now, stretch)
        return [{ round: number, start, end, line, column, was: token.text, now, words }]
      }),
    )
  const counts = read.findings.flatMap(({ code, target }) =>
    code === 'rounds/wrong-end-count' && target?.round === number ? [target] : [],
  )
  /** A count at the end may be wrong by anything. */
  const counted = ({ line, column, end, start }: Token): readonly number[] => {
    const isCount = counts.some((at) => {
      const from = at.column ?? 0
      return at.line === line && from <= column && column + end - start <= from + (at.length ?? 0)
    })
    const made = read.rounds.find((account) => account.number === number)?.made
    return isCount && made ? [made] : []
  }
  const words = misspelled(read, stretch, number).flatMap((token) =>
    nearWords(token.text, read).flatMap((now) => {
      if (budget.left <= 0 || !worksOut(text.slice(0, token.start) + now + text.slice(token.end))) return []
      const { start, end, line, column } = token
      const told = around(text, token, now, stretch)
      return [{ round: number, start, end, line, column, was: token.text, now, words: told }]
    }),
  )
  if (words.length > 0) return words.length > MOST_WAYS ? [] : words
  const near = tried((token) => [valueOf(token) - 1, valueOf(token) + 1])
  const found =
    near.length > 0 ? near : tried((token) => [valueOf(token) - 2, valueOf(token) + 2, ...counted(token)])
  return found.length > MOST_WAYS ? [] : found
}
