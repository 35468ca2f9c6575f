/** The words of one round: its items, with the count at its end taken off first. */
import { passSameBack } from './along-chain'
import { isUnreadCount } from './brackets'
import { readRepeatBrackets, readTimesStar } from './clauses'
import { readComesTo } from './count-lines'
import { passExplanation } from './explained'
import { listsSquares } from './filet'
import { passHung } from './hung'
import { readInAll } from './in-all'
import type { Body } from './preamble'
import type { Reader } from './reader'
import { matchBrackets, sequenceReader } from './sequence'
import { markBefore, repeatAll } from './stars'
import { readCounts } from './stated'
import { spanOf } from './tokens'
import type { Span, Token } from './tokens'
import type { Item } from './tree'
import { unreadWords } from './unread'
import { readStitch } from './vocabulary'
import { repeatWhole } from './whole-repeats'

/** The stretch from one token up to another. */
export function spanTokens(tokens: readonly Token[], from: number, to: number): Span {
  const first = tokens[from] ?? tokens[tokens.length - 1]
  const last = tokens[to - 1] ?? first
  return first && last ? spanOf(first, last) : { start: 0, end: 0, line: 1, column: 1 }
}

/** "10 hdc." or "—36 dc" as the last words of a round: what it comes to, not more to work. */
function readEndCount(reader: Reader, from: number, to: number): { item: Item; at: number } | null {
  let end = to
  while (end > from && ['.', ';', ':', '!'].includes(reader.tokens[end - 1]!.key)) end--
  let start = end
  while (start > from && end - start < 24) {
    const before = reader.tokens[start - 1]!.key
    if (['.', '—', '–', '-', '=', ';', ':', '|', '→'].includes(before)) break
    // "… into top of ch-3. // 18 dc".
    if (before === '/' && reader.tokens[start - 2]?.key === '/') break
    if (['(', ')', '[', ']', '{', '}', '*'].includes(before)) {
      if (before !== ')' && before !== ']') return null
      break
    }
    start--
  }
  if (start <= from || start >= end) return null
  const mark = reader.tokens[start - 1]!.key
  // "… and rep Rows 1-5."
  const ranged = start - 2 >= from && reader.tokens[start - 2]!.kind === 'number'
  if (mark === ';' || (ranged && ['-', '–', '—'].includes(mark))) return null
  if (mark === ':') {
    // "join with sl st in top of ch-3: 24 dc.", "Stitch count: 24 dc." tell a count, "into ring work: 12 dc." does not.
    const before = reader.tokens.slice(Math.max(from, start - 12), start - 1).map((token) => token.key)
    const labelled = [2, 3].some((back) => reader.tokens[start - back]?.kinds.has('tells'))
    if (!labelled && !before.some((key) => ['join', 'around', 'end', 'round', 'rnd', 'off'].includes(key)))
      return null
  }
  reader.at = start
  // "2 sc in each sc. 12"; "ch. 5", "hook No. 3" and a page number on a line of its own are no counts.
  const behind = reader.tokens[start - 2]
  const stopped =
    mark === '.' &&
    !reader.tokens[start]!.first &&
    !behind?.kinds.has('chain') &&
    !/^n[or]$/.test(behind?.key ?? '')
  const whole = mark === '|' ? readLineOfCounts(reader, from, start, end) : null
  if (whole) return whole
  reader.at = start
  if (listsSquares(reader, start, end)) return null
  const item = readCounts(reader, end, stopped || (mark !== '.' && mark !== ')' && mark !== ']'))
  return item ? { item, at: start } : null
}

/** "18 dc | 6 ch-1 sps | 1 ch-2 sp" on a line of its own: all of it, not the last column alone. */
function readLineOfCounts(
  reader: Reader,
  from: number,
  behind: number,
  end: number,
): { item: Item; at: number } | null {
  let start = behind
  while (start > from && !reader.tokens[start]!.first) start--
  if (start <= from) return null
  reader.at = start
  const item = readCounts(reader, end, true)
  return item ? { item, at: start } : null
}

/** Slips that leave the account open: what the rest makes is not known either. */
const UNREADABLE = new Set<string>(['rounds/unknown-abbreviation', 'rounds/repeat-without-star'])

/** The first word of the paragraph behind "Fasten off"; null where there is none. */
function paragraphBehind(tokens: readonly Token[], items: readonly Item[]): Token | null {
  const off = items.find((item) => item.type === 'note' && item.effect === 'fasten-off')
  return (off && tokens.find(({ start, paragraph }) => paragraph && start >= off.end)) ?? null
}

/** "Round 1 – Marmalade. Magic ring …": one word with a capital before the first sentence names a colour or a part. */
function isHead(tokens: readonly Token[], { start }: Span): boolean {
  const at = tokens.findIndex(({ kind }) => kind !== 'mark')
  const [word, stop] = [tokens[at], tokens[at + 1]]
  return (
    word?.start === start && /^\p{Lu}\p{L}{2,}$/u.test(word.text) && (stop?.key === '.' || stop?.key === ':')
  )
}

/** What works something, or tells what was worked. */
export const MAKES = new Set<Item['type']>([
  'work',
  'chain',
  'group',
  'placed',
  'star',
  'evenly',
  'repeat-round',
  'count',
])

/** "Pop your mug on it and enjoy!": a stitch's word without number or place works nothing. */
const worksSomething = (item: Item): boolean =>
  MAKES.has(item.type) && !(item.type === 'work' && item.count === null && item.place === null)

/** "Fasten off, or keep going with one more (sc, ch 1) per side": whether a choice, with no yarn joined, is all that follows. */
function isLeft({ tokens }: Reader, { end }: Span, to: number): boolean {
  const rest = tokens.slice(0, to).filter(({ start }) => start >= end)
  const joins = rest.some(({ is, kinds }) => TAKES_UP.has(is) || kinds.has('colour'))
  return !joins && rest.some(({ key }) => GOES_ON.has(key))
}
/** "Fasten off. Pennants are caught on to a chain, 11 tr to 11 ch": whether every sentence behind it only tells something. */
function isTold(reader: Reader, { end }: Span, to: number): boolean {
  const { tokens } = reader
  let opens = false
  let sentences = 0
  for (let at = tokens.findIndex(({ start }) => start >= end); at >= 0 && at < to; at++) {
    const { kind, kinds, key, is, first } = tokens[at]!
    if (TAKES_UP.has(is) || kinds.has('colour') || is === 'with') return false
    if (opens || first) {
      reader.at = at
      const says = tokens.slice(at + 1, at + FINITE).some((token) => STATES.has(token.key))
      if (
        kind !== 'word' ||
        !says ||
        ['verb', 'chain', 'into', 'instruction'].some((each) => kinds.has(each))
      )
        return false
      if (readStitch(reader) !== null) return false
      sentences++
    }
    opens = /^[.!?]$/.test(key)
  }
  return sentences > 0
}
const STATES = new Set([
  'is',
  'are',
  'was',
  'were',
  'hangs',
  'hang',
  'makes',
  'looks',
  'look',
  'measures',
  'finish',
])
/** Where in a sentence its verb stands at the latest (ours). */
const FINITE = 8

/** Words by which yarn is taken up again, and those that leave it to the maker whether to go on. */
const TAKES_UP = new Set(['join', 'attach', 'rejoin', 're-join', 'using', 'tie'])
const GOES_ON = new Set(['or', 'keep', 'continue', 'larger', 'bigger', 'smaller', 'wider', 'longer'])

/** Reads the words between two tokens as what a round does. */
export function readBody(reader: Reader, from: number, to: number): Body {
  const found = reader.findings.length
  const { matches, broken } = matchBrackets(reader, from, to)
  if (broken) return { items: [], broken }
  const count = readEndCount(reader, from, to)
  reader.at = from
  reader.end = count?.at ?? to
  const sequence = sequenceReader(matches)
  const items: Item[] = []
  while (reader.at < reader.end) {
    const at = reader.at
    while (reader.skip(';', '.', ',')) continue
    const told = (items.length > 0 ? readInAll(reader) : null) ?? readComesTo(reader, items)
    if (told) {
      items.push(told)
      continue
    }
    const aside = passExplanation(reader) ?? passHung(reader, items)
    if (aside) {
      items.push(aside)
      continue
    }
    if (passSameBack(reader, items)) continue
    const again = readRepeatBrackets(reader)
    if (!again && items.length > 0) repeatWhole(reader, items)
    const group = items.findLastIndex((item) => item.type === 'group')
    const repeated = items[group]
    if (again && repeated?.type === 'group' && repeated.times === null)
      items[group] = { ...repeated, times: again.times, around: again.times === null }
    const timesAt = reader.at
    const times = items.length > 0 ? readTimesStar(reader) : null
    if (times !== null) repeatAll(items, times, reader.span(timesAt))
    for (const item of sequence(reader, 'clause')) {
      const last = items.at(-1)
      const told =
        last &&
        last.type !== 'star' &&
        'bracket' in item &&
        item.bracket &&
        isUnreadCount(reader, last, item, item)
      items.push(told ? { type: 'note', effect: null, ...spanOf(item, item) } : item)
    }
    // A clause stops at full stops and semicolons, which separate phrases here.
    if (reader.at === at) {
      for (const item of sequence(reader, 'close')) items.push(item)
      if (reader.at === at) reader.at++
    }
  }
  // "Fasten off.", and a paragraph that works nothing: it tells of what becomes of the motif.
  const behind = paragraphBehind(reader.tokens.slice(from, to), items)
  if (behind && !items.some((item) => item.start >= behind.start && worksSomething(item))) {
    items.splice(0, items.length, ...items.filter((item) => item.start < behind.start))
    const kept = reader.findings.filter((finding, i) => i < found || finding.span.start < behind.start)
    reader.findings.splice(0, reader.findings.length, ...kept)
  }
  // "Fasten off. Make 9, string on a ribbon": behind it nothing is worked unless yarn is joined.
  const off = items.findIndex((item) => item.type === 'note' && item.effect === 'fasten-off')
  if (off >= 0 && (isLeft(reader, items[off]!, to) || isTold(reader, items[off]!, to))) items.length = off + 1
  if (off >= 0 && !items.slice(off).some((item) => item.type === 'colour' || worksSomething(item))) {
    const kept = reader.findings.filter(
      ({ code, span }, i) =>
        i < found || code !== 'rounds/unknown-abbreviation' || span.start < items[off]!.end,
    )
    reader.findings.splice(0, reader.findings.length, ...kept)
  }
  markBefore(items)
  if (count) items.push(count.item)
  reader.end = reader.tokens.length
  for (const slip of unreadWords(items))
    if (!isHead(reader.tokens.slice(from, to), slip))
      reader.report('rounds/unknown-abbreviation', slip, { word: reader.words(slip) })
  const unknown = reader.findings.slice(found).some((finding) => UNREADABLE.has(finding.code))
  return { items, broken: unknown }
}
