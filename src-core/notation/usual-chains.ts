/** What a text says once of the chains that all its rounds begin with. */
import type { Reader } from './reader'
import { LIMITS } from './limits'
import { ONE } from './some-chains'
import { readStatement } from './stated'
import type { Token } from './tokens'
import type { StatementItem, UsualChain } from './tree'
import type { Loop } from './stitch-name'
import { readStitch } from './vocabulary'
import { wordOf } from './words'

/** "ch-3", "ch 3", "3 ch", "three chains": how many the word there stands for; 0 where none are named, null: no chains. */
function chainsAt(words: readonly Token[], index: number): number | null {
  const token = words[index]!
  if (token.kind === 'chains') return token.value
  if (token.is !== 'ch') return null
  const [number] = [words[index + 1], words[index - 1]].filter(
    (found) => found?.kind === 'number' || found?.kinds.has('number'),
  )
  return number ? number.value || wordOf(number.is).value : 0
}

/** "Ch 3 (counts as first dc), 4 dc in same place, …": where the bracket closes that holds what is told; -1 for none. */
function closing(words: readonly Token[], told: number): number {
  for (let at = told; at >= 0 && !CLOSES.test(words[at]!.key); at--)
    if (OPENS_BRACKET.test(words[at]!.key))
      return words.findIndex(({ key }, index) => index > told && CLOSES.test(key))
  return -1
}
const OPENS_BRACKET = /^[([{]$/
const CLOSES = /^[)\]}]$/

const ENDS_ROUND = /^(ends?|ending|closes|closing|finishes)$/i

const TELLS = ['counts', 'stands', '=']
/** "Ch 3 counts as a dc, ch 2 as an hdc": behind the second chains. */
const SHARES = /^(as|for)$/

/** "… is the first dc", "… is your 1st treble": whether a stitch may be told behind "is". */
const isOne = (words: readonly Token[], at: number): boolean =>
  at > 0 && words[at]!.is === 'is' && (ONE.has(words[at + 1]?.is ?? '') || words[at + 1]?.kind === 'ordinal')

/** "3ch = 1tr, 4ch = 1dtr", "ch 3 counts as dc and ch 4 counts as tr": whether the next part of a list is told of chains of its own. */
function beginsAnother(reader: Reader, from: number, to: number): boolean {
  const part: Token[] = []
  for (let at = from; at < to && !reader.tokens[at]!.first; at++) {
    const { is, kind } = reader.tokens[at]!
    if (TELLS.includes(is) || SHARES.test(is)) return part.some((_, index) => chainsAt(part, index))
    // "… and chain-1 or as first tr": another stitch for the same chains.
    if (kind === 'mark' || is === 'or') return false
    part.push(reader.tokens[at]!)
  }
  return false
}

/** What may stand before the next part of a list: "counts as a st (ch 3 = dc, ch 2 = hdc)", "… as stitches: ch 2 as hdc". */
const PARTS = new Set([',', 'and', ':', '(', '-', '–', '—', '/'])

/** "Ch 3 and ch 2 count as …": what stands before "and" is told together with what stands behind it. */
const endsPart = (mark: string, isTold: boolean): boolean => isTold || !/^(and|,|\/)$/.test(mark)
const SAYS = /^(as|is|not)$/

/** "Ch 3 and ch 2 count as a dc and an hdc": where the stitch of each stands, one behind the other; none for another number of them. */
function inTurn(reader: Reader, from: number, to: number, count: number, least: number): readonly number[] {
  const at: number[] = []
  for (reader.at = from; reader.at < to;) {
    const begins = reader.at
    if (reader.attempt(() => readStitch(reader))) at.push(begins)
    else reader.at++
  }
  return at.length === count && count >= least ? at : []
}

/** "(The turning chain stands for the first stitch) whenever it is 2ch (htr) or 3ch (tr)": for each length its stitch. */
function whenChains(reader: Reader, from: number, to: number): UsualChain[] {
  const words = reader.tokens.slice(from, to)
  const when = words.findIndex(({ text }) => /^(when|whenever|where|if)$/i.test(text))
  if (when < 0) return []
  return words.flatMap((_, index): UsualChain[] => {
    const chains = index > when ? (chainsAt(words, index) ?? 0) : 0
    if (chains === 0) return []
    reader.at = from + index + 1
    reader.number()
    const stitch = reader.attempt(() => (reader.skip('(', '=') ? readStitch(reader) : null))?.stitch ?? null
    const said = { says: 'counts', stitch, cluster: false, chains: 0 } as const
    return [{ chains, statement: { type: 'statement', ...said, ...reader.span(from) } }]
  })
}

/** "The ch-3 at the beginning of a round counts as a dc": what a note says of all rounds. */
export function usualChains(reader: Reader, from: number, to: number): UsualChain[] {
  const found: UsualChain[] = []
  let goesOn = false
  for (let start = from; start < to;) {
    let end = start
    let isTold = false
    for (; end < to; end++) {
      const { key, is, first } = reader.tokens[end]!
      if (key === '.' || key === ';' || (end > start && first)) break
      if (PARTS.has(key) && endsPart(key, isTold) && beginsAnother(reader, end + 1, to)) break
      isTold ||= TELLS.includes(is) || SAYS.test(is)
    }
    const words = reader.tokens.slice(start, end)
    const never = words.findIndex(({ is }, at) => is === 'not' && isNoStitch(words.slice(at + 1)))
    const says = words.findIndex(({ is }, at) => TELLS.includes(is) || isOne(words, at))
    // "…, and ch 2 as an hdc": the verb was said before.
    const told: number = says < 0 && goesOn ? words.findIndex(({ is }) => SHARES.test(is)) : says
    const shared = says < 0 && told >= 0
    goesOn = end < to && PARTS.has(reader.tokens[end]!.key) && (told >= 0 || goesOn)
    const counts = told < 0 ? never : told
    // "Beginning ch-1 or ch-2 never counts"; without a number it is said of the chains at the beginning alone.
    const named = words.slice(0, Math.max(0, counts)).flatMap((_, index) => chainsAt(words, index) ?? [])
    const opens = words.slice(0, Math.max(0, counts)).some(({ is }) => OPENS.has(is))
    // "3 ch always counts as a treble and sits in a gap, never on top of a stitch" is no denial.
    const nothing = words.slice(counts).some(({ is }, at) => at < 3 && is === 'nothing')
    const negative = nothing || words.slice(0, counts + 2).some(({ is }) => is === 'not')
    // "The (ch 1, sc) that ends each round stands for the last ch-2 sp".
    const ends = words.slice(0, Math.max(0, counts)).some(({ text }) => ENDS_ROUND.test(text))
    const each = ends ? [] : [...new Set(named)]
    const when =
      told < 0 || never >= 0 || each.some((chains) => chains > 0) ? [] : whenChains(reader, start + told, end)
    if (when.length > 0) {
      found.push(...when)
      each.length = 0
    }
    const stitches = told < 0 ? [] : inTurn(reader, start + counts + 1, end, each.length, shared ? 1 : 2)
    for (const [index, chains] of each.entries()) {
      if (chains === 0 && !opens) continue
      // "Ch 3 at the beginning is the first dc": a statement with "is" is read from the word before it.
      reader.at = start + counts - (words[counts]!.is === 'is' ? 1 : 0)
      const closed = closing(words, counts)
      const read = told < 0 ? null : readStatement(reader, closed < 0 ? end : start + closed)
      // "… where the ch-1 is just for height" counts as nothing.
      if (shared && !read && words[told]!.is === 'for') continue
      const statement = told < 0 || (!read && shared) ? bareStatement(reader, end, shared) : read
      // "The ch 3 at the beginning is the hardest part" tells of no stitch.
      const isOneStitch = statement !== null && (words[counts]!.is !== 'is' || statement.stitch !== null)
      reader.at = stitches[index] ?? reader.at
      const own = stitches.length > 0 ? (readStitch(reader)?.stitch ?? null) : undefined
      const meant = !statement || own === undefined ? statement : { ...statement, stitch: own, chains: 0 }
      if (!isOneStitch) continue
      const notIn = exceptedRounds(words.slice(counts))
      const said = negative ? ({ ...meant!, says: 'does-not-count' } as const) : meant!
      found.push({ chains, statement: notIn.length > 0 ? { ...said, notIn } : said })
    }
    start = Math.max(end, start + 1)
    if (reader.tokens[end]?.first === false) start = end + 1
  }
  return found
}

const EXCEPT = /^(except|excepting|excluding|save|apart|not|other)$/i

/** "… except in Rows 4 and 5", "… but not in Rnd 1": the rounds that are taken out. */
function exceptedRounds(words: readonly Token[]): readonly number[] {
  const except = words.findIndex(({ text }) => EXCEPT.test(text))
  const named = words.findIndex(({ kinds }, at) => at > except && kinds.has('round'))
  if (except < 0 || named < 0 || named - except > 4) return []
  const rounds: number[] = []
  for (let at = named + 1; at < words.length; at++) {
    const { kind, value, key } = words[at]!
    if (kind === 'number' && /^([-–—]|to)$/.test(words[at - 1]!.key) && rounds.length > 0)
      for (let next = rounds.at(-1)! + 1; next <= Math.min(value, LIMITS.rounds); next++) rounds.push(next)
    else if (kind === 'number') rounds.push(value)
    else if (!/^(,|and|&|or|to|[-–—])$/.test(key)) break
  }
  return rounds
}

/** What is usual in a round: where it is taken out, the contrary. */
export function usualIn(
  usual: ReadonlyMap<number, StatementItem>,
  round: number,
): ReadonlyMap<number, StatementItem> {
  if (![...usual.values()].some(({ notIn }) => notIn?.includes(round))) return usual
  return new Map(
    [...usual].map(([chains, said]) => {
      if (!said.notIn?.includes(round)) return [chains, said]
      const says = said.says === 'counts' ? ('does-not-count' as const) : ('counts' as const)
      return [chains, { ...said, says }]
    }),
  )
}

/** Words for a loop, and words that say it of all rounds. */
const ALL_IN_LOOP =
  /\b(?:unless|throughout|always|all (?:the )?(?:sc|hdc|dc|tr|htr|single crochets?|double crochets?|trebles?) (?:is|are|will be|should be)|all rounds|every round|each round|all stitches|all sts)\b[^.\n]{0,90}?\b(back|front)[ -]?loops? only|\b(?:(back|front)[ -]?loops? only|(blo|flo))\b[^.\n]{0,60}?\b(?:throughout|unless|on all rounds|in all rounds|on every round)\b/iu

/** "Unless told otherwise work every sc in the back loop only": the loop of all rounds, told before the first one. */
export function usualLoop(words: string): Loop | null {
  const found = ALL_IN_LOOP.exec(words)
  const side = (found?.[1] ?? found?.[2] ?? found?.[3])?.toLowerCase()
  return side === undefined ? null : side.startsWith('b') ? 'back' : 'front'
}

/** "Turn at the end of every row", "turning after each row", "all rows are turned". */
const ALL_TURNED =
  /(?<!(?:not|n't|without) )\bturn(?:ing)?\b[^.\n]{0,40}\b(?:each|every|all) rows?\b|\b(?:each|every|all) rows? (?:is|are) turned\b|\bturn (?:each|every) time\b|\bat the (?:start|beginning|end) of (?:each|every|all) (?:following )?rows?\b[^.\n]{0,40}\bturn\b/iu

/** Whether a text says before its rows that they are turned, so that none of them says it again. */
export const usualTurn = (words: string): boolean => ALL_TURNED.test(words)

/** "… is NOT a stitch", "is never a st". */
const isNoStitch = (behind: readonly Token[]): boolean =>
  behind.slice(0, 2).some(({ kinds }) => kinds.has('stitch'))

/** That the chains are a stitch, or none, whichever it is. */
function bareStatement(reader: Reader, end: number, counts: boolean): StatementItem {
  const start = reader.at
  reader.at = end
  const said = {
    says: counts ? 'counts' : 'does-not-count',
    stitch: null,
    cluster: false,
    chains: 0,
  } as const
  return { type: 'statement', ...said, ...reader.span(start) }
}

/** Words for the chains that a round begins with. */
const OPENS = new Set(['beg', 'starting', 'turning', 'first'])
