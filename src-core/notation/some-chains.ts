/** Chains at the beginning of which only some stand for a stitch: "5 chain (3 of these stand for a treble)". */
import type { Reader } from './reader'
import type { Token } from './tokens'
import { readStitch } from './vocabulary'

/** Tokens between the chains and what is said of them, at most. */
const NEAR = 6

/** How many chains there are besides those that the words from `from` to `to` speak of; null where they speak of all. */
export function chainsBesides(reader: Reader, from: number, to: number): number | null {
  const at = reader.at
  reader.at = from
  const some = readSome(reader)
  const told = some !== null && reader.at <= to
  reader.at = at
  if (!told) return null
  for (let back = from - 1; back >= Math.max(0, from - NEAR); back--) {
    const token = reader.tokens[back]!
    const chained = [reader.tokens[back + 1], reader.tokens[back - 1]].some((next) => next?.is === 'ch')
    if (token.kind !== 'chains' && !(token.kind === 'number' && chained)) continue
    return token.value > some ? token.value - some : null
  }
  return null
}

/** "3 of these", "of which 3", "the first 3 ch": how many of them; passes it. */
function readSome(reader: Reader): number | null {
  reader.skip('the', 'of')
  const which = reader.skip('which', 'these')
  if (which) reader.skip('the')
  const first = reader.skip('first')
  const some = reader.number()
  reader.skipA('chain')
  const of = reader.skip('of') && ['these', 'which', 'them', 'the'].includes(reader.key())
  return which || first || of ? some : null
}

/** What a bracket right behind the chains of a beginning holds. */
const BARE_NAME =
  /^(hdc|dc|tr|dtr|trtr|htr|ttr|qtr|(half )?(double|treble)( crochet| st)?)( (,|and|\+|&) (\d+ ch|ch \d+|ch-\d+|\d+-ch))?$/
const BARE =
  /^(an?|1|one|1st|first) \S+( again)?( (,|and|\+|&) (an? |one )?(\d+ ch|ch \d+|ch-\d+|\d+-ch)( sp)?)?$|^\S+ \+ (\d+ ch|ch \d+|ch-\d+|\d+-ch)$/

/** Whether a bracket that opens before `start` stands right behind chains. */
export const isBehindChain = (reader: Reader, start: number): boolean => {
  const bracket = reader.tokens[start - 1]?.key
  // "3 ch. (1 tr.)".
  const stop = reader.tokens[start - 2]?.key === '.' ? 1 : 0
  const before = reader.tokens[start - 2 - stop]
  const number = before?.kind === 'number' && reader.tokens[start - 3 - stop]?.is === 'ch'
  return (bracket === '(' || bracket === '[') && (before?.is === 'ch' || before?.kind === 'chains' || number)
}

/** Words for the one stitch that something stands for. */
export const ONE: ReadonlySet<string> = new Set(['1', 'one', 'a', 'first', 'your', 'the'])

/** "3 ch | = 1 tr, 1 tr in same st" in a round: what the chains right before the sign stand for; "= 28 tr" is a count. */
export function standsForOne(reader: Reader): boolean {
  if (!reader.inRound || !reader.sees('=')) return false
  const [before, number] = [reader.peek(-1), reader.peek(-2)]
  const made =
    before?.kind === 'chains' ||
    (before?.is === 'ch' && number?.kind === 'number') ||
    (before?.kind === 'number' && number?.is === 'ch')
  return made && (ONE.has(reader.key(1)) || isStitchAt(reader, reader.at + 1))
}

/** "1 tr", "1 tr., 3 ch.": one stitch and perhaps the chains besides. */
export const isOneStitch = (words: readonly string[], ahead?: Token): boolean => {
  const bare = words.filter((word) => word !== '.').join(' ')
  // "Ch 3 (dc), 2 dc in same sp"; "(dc) in next st" is worked there.
  return (
    BARE.test(bare) || (BARE_NAME.test(bare) && !ahead?.kinds.has('into') && !TIMED.test(ahead?.is ?? ''))
  )
}
const TIMED = /^(\d+|x|times|once|twice|thrice|all|each|every)$/

/** Whether something stands before a bracket in which the chains of a round are explained. */
export const isBehindGroup = (reader: Reader, start: number): boolean =>
  /^[([]$/.test(reader.tokens[start - 1]?.key ?? '') && start > 1

/** "(the 3 skipped ch are a dc)", "(missed chains = first tr)": the word that says so, of those before it; -1 for none. */
export const chainsMade = (words: readonly string[]): number =>
  words.findIndex((word, at) => {
    const before = words.slice(0, at)
    const said = ARE.has(word) && A_STITCH.has(words[at + 1] ?? '') && before.includes('ch')
    return said && at <= NEAR && before.some((each) => PASSED.has(each))
  })
const ARE = new Set(['is', 'are', '=', 'make', 'makes', 'form', 'forms', 'gives', 'become', 'becomes'])
const A_STITCH = new Set(['1', 'one', 'a', 'first', 'your', 'the'])
const PASSED = new Set(['skipped', 'skip', 'unworked', 'turning', 'beg'])

/** Whether behind the comma at the cursor chains are told: "1 dc, ch 1", "1 dc, and 1 ch". */
export const startsChains = (reader: Reader): boolean => {
  let ahead = 1
  while (/^(and|plus|\+|a|one|the|&)$/.test(reader.key(ahead))) ahead++
  if (reader.peek(ahead)?.kind === 'number' || reader.isA('number', ahead)) ahead++
  const token = reader.peek(ahead)
  return token?.kind === 'chains' || (token?.kinds.has('chain') ?? false)
}

/** "(4) corners of 3 ch": how many chains each has; passes it. */
export const chainsOf = (reader: Reader): number | null =>
  reader.attempt(() => {
    if (!reader.skip('corner') || !reader.skip('of', 'with')) return null
    if (reader.peek()?.kind === 'chains') return reader.tokens[reader.at++]!.value
    const count = reader.number()
    return reader.skipA('chain') ? count : null
  })

/** "Ch 4 at the beginning of a row = dc + ch 1". */
export function isStitchAt(reader: Reader, at: number): boolean {
  const outer = reader.at
  reader.at = at
  const found = readStitch(reader) !== null
  reader.at = outer
  return found
}

/** "(Counts as) 2 foundation chs, (dc and ch-2 sp)": those that lie under it; passes them. */
export const passUnder = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (reader.number() === null || !reader.skip('base', 'foundation', 'bottom', 'skipped')) return null
    return (reader.skipA('chain') && reader.skip(',', 'and', '+')) || null
  }) === true

/** The number beside the cursor, in figures or words; null for none. */
export function numberAt(reader: Reader, ahead: number): number | null {
  const { at } = reader
  reader.at += ahead
  const value = reader.number()
  reader.at = at
  return value
}
