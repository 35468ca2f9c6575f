/** What a text states of its stitches: what counts as what, and how many there are at the end. */
import type { StitchKey } from '../stitches/table'
import { readChains, readNoun, sizeAhead } from './nouns'
import { askedAhead, passCountLabel, passInEach, passPer, passWhere, totalAhead } from './count-labels'
import { LEAVING, LONGEST_COUNT, isWorked, turnsBehind } from './count-sentences'
import { passUncounted, readCountedRound, readInTurn } from './in-turn'
import type { Reader } from './reader'
import { readSides, sidesAhead } from './sides-told'
import {
  chainsBesides,
  chainsMade,
  chainsOf,
  startsChains,
  ONE,
  isBehindChain,
  isBehindGroup,
  isOneStitch,
  isStitchAt,
  numberAt,
  passUnder,
  standsForOne,
} from './some-chains'
import { ENTRY_SEPARATORS, passSmall, readLooseNoun } from './loose-nouns'
import { endsCounts, passHalf } from './told-counts'
import type { Span } from './tokens'
import type { CountEntry, CountItem, Item, StatementItem } from './tree'
import { readStitch } from './vocabulary'

/** "Counts as first shell": its stitches stand side by side. */
const NO_CLUSTER: ReadonlySet<string> = new Set(['plain', 'special', 'shell', 'v-stitch', 'picot'])
const STANDS_FOR = new Set([...ONE, 'for', 'as'])
const UNDER = new Set(['base', 'foundation', 'bottom', 'skipped', 'unworked'])

const HOLDS_ON = new Set([',', 'here', 'throughout', 'always', 'ever', 'hereafter'])

/** "counts as dc and ch 1", "does not count as a st", "V-st made"; at the first word, inside or without brackets. */
export function readStatement(reader: Reader, end: number): StatementItem | null {
  const start = reader.at
  return reader.attempt((): StatementItem | null => {
    const statement = (rest: Omit<StatementItem, keyof Span | 'type'>): StatementItem => {
      reader.at = end
      return { type: 'statement', ...rest, ...reader.span(start) }
    }
    const keys: string[] = reader.tokens.slice(reader.at, end).map(({ is }) => is)
    keys.forEach((key, at) => key === 'standing' && keys[at + 1] === 'for' && (keys[at] = 'stands'))
    // "(= 1 dc)", "(that's your first dc)", "(this is 1 dc)" in the bracket behind the chains.
    const is = keys[0] === '=' || keys[0] === "that's" ? 0 : keys[1] === 'is' ? 1 : -1
    const equal = keys[0] === '=' && (isBehindChain(reader, start) || isStitchAt(reader, start + 1))
    // "(ch 4 = dc + ch 1)" behind what begins with them.
    const sign = keys.indexOf('=')
    if (sign === 2 && keys.slice(0, 2).includes('ch') && isBehindGroup(reader, start)) keys[sign] = 'counts'
    if (is >= 0 && (equal || keys.length === is + 2 || ONE.has(keys[is + 1] ?? ''))) keys[is] = 'counts'
    const made = chainsMade(keys)
    if (made > 0) keys[made] = 'counts'
    // "(not a stitch)", "(is no st)", "(not a stitch, here and below)".
    const tail = keys.findIndex((key) => HOLDS_ON.has(key))
    const told = tail < 0 ? keys : keys.slice(0, tail)
    if (told.length <= 4 && told.some((key) => key === 'not' || key === 'no') && told.at(-1) === 'st')
      return statement({ says: 'does-not-count', stitch: null, cluster: false, chains: 0 })
    // "for first dc", "for dc and ch 2", right behind the chains.
    const forOne = ONE.has(keys[1] ?? '') || (isBehindChain(reader, start) && isStitchAt(reader, start + 1))
    if ((keys[0] === 'for' || keys[0] === 'as') && forOne) keys[0] = 'counts'
    const count = keys.indexOf('counts')
    const stands = keys.findIndex((key, index) => key === 'stands' && STANDS_FOR.has(keys[index + 1] ?? ''))
    // "3 ch (1 tr)", "6 ch (1 tr, 3 ch)".
    const bare = isBehindChain(reader, start) && isOneStitch(keys, reader.tokens[end + 1])
    const at = bare ? -1 : count >= 0 ? count : stands
    if (
      (bare || at >= 0) &&
      at <= 11 &&
      !keys.slice(0, at).some((key) => ['(', '[', '{', ',', ';', '*'].includes(key))
    ) {
      const nothing = keys.slice(at, at + 3).includes('nothing')
      const negative = nothing || keys.slice(0, at + 2).some((key) => key === 'not' || key === 'no')
      if (negative) return statement({ says: 'does-not-count', stitch: null, cluster: false, chains: 0 })
      const some = chainsBesides(reader, start, reader.at + at)
      reader.at += at + 1
      // "(this one does count, as a tr)".
      if (reader.sees(',', 'as')) reader.at++
      reader.skip('as', 'for')
      passUnder(reader)
      reader.skip('the', 'a', 'an', 'your')
      if (!reader.skip('first', 'beg')) reader.ordinal()
      reader.number()
      const named = readStitch(reader)
      let chains = 0
      while (reader.at < end) {
        const token = reader.peek()!
        // "Ch 3 = 1 dc, join with ss to top of ch 3": behind the comma other things are told.
        if (token.key === ',' && !startsChains(reader)) break
        const before = reader.tokens[reader.at - 1]
        if (token.kind === 'chains') chains = token.value
        // "A dc, a ch-2 mesh and 2 base chs": those lie under the mesh.
        if (token.is === 'ch' && !UNDER.has(before?.is ?? '')) {
          chains = numberAt(reader, 1) ?? numberAt(reader, -1) ?? 1
        }
        reader.at++
      }
      if (some !== null && chains === 0) chains = some
      const stitch: StitchKey | null = named?.stitch ?? null
      const cluster = named !== null && !NO_CLUSTER.has(named.form)
      return statement({ says: 'counts', stitch, cluster, chains })
    }
    // "(first cluster made; ch-3 is a part of it)".
    if (keys.includes(';')) keys.length = keys.indexOf(';')
    const last = keys[keys.length - 1]
    // "Ch 3 + 2 dc (first cluster)".
    const isFirst = keys.length === 2 && /^(first|beg)$/.test(keys[0]!) && isBehindGroup(reader, start)
    if (isFirst && /^(cluster|group|shell|fan|petal)$/.test(last!))
      return statement({ says: 'made', stitch: null, cluster: false, chains: 0 })
    if (keys.length <= 7 && last === 'made') {
      const cluster = keys.some((key) => /^(cluster|puff|popcorn|bobble|dc\dtog|tr\dtog)$/.test(key))
      return statement({ says: 'made', stitch: null, cluster, chains: 0 })
    }
    return null
  })
}

/** "(28 dc, that's 7 on each side)". */
const LISTS = new Set([',', ';', 'and', '&', '+'])
const rest = ({ tokens, at }: Reader, end: number): string[] => tokens.slice(at, end).map(({ is }) => is)
const THAT_IS = new Set(['that', 'which', 'is', 'so'])
const TRAILING = new Set(
  'each every both row rnd round in all total altogether told made around now at end of per the'.split(' '),
)

/** "12 dc, counting the beg ch-3 as a dc", "13 sts, I don't count the ch 3s", "20 sts; the ch 3 isn't counted". */
function tellsOfCounting(reader: Reader, end: number): boolean {
  const parted = /^[,;—–-]$/.test(reader.key()) ? 1 : 0
  if (['counts', 'including', 'incl', 'includes'].includes(reader.key(parted))) return true
  if (parted === 0 || reader.peek(1)?.kind === 'number' || reader.isA('number', 1)) return false
  for (let at = reader.at + 1; at < Math.min(end, reader.at + LONGEST_COUNT); at++)
    if (reader.tokens[at]!.is === 'counts') return true
  return false
}

/**
 * "12 sc", "8 cl, 8 ch-3 sps", "24 sc each rnd", "18" between the cursor and `end`; null if it is anything else.
 * Where nothing but counts can stand, some of them may be named in words of the text's own (`loose`).
 */
export function readCounts(reader: Reader, end: number, bare: boolean, loose = false): CountItem | null {
  const start = reader.at
  return reader.attempt((): CountItem | null => {
    const sides = readSides(reader, end)
    const entries: CountEntry[] = sides ? [sides] : []
    passCountLabel(reader)
    while (reader.at < end) {
      if (entries.length > 0 && tellsOfCounting(reader, end)) {
        reader.at = end
        break
      }
      const opens = entries.length === 0 || reader.key(-1) === ':'
      // "24 sts: 12 FPdc and 12 dc".
      const sums = entries.length === 1 && reader.key() === ':'
      if (sums) reader.at++
      // "- 12 dc 4 ch-2 sps".
      const next = reader.peek()?.kind === 'number' && !/^[,;.)\]]?$/.test(reader.key(1))
      const parted = ENTRY_SEPARATORS.has(reader.key()) || TRAILING.has(reader.key())
      if (!opens && !sums && !parted && !next) return null
      while (reader.at < end && (ENTRY_SEPARATORS.has(reader.key()) || reader.seesAny(THAT_IS))) reader.at++
      if (entries.length > 0 && passUncounted(reader, end)) break
      const ahead = readCountedRound(reader, end)
      const one = entries.length > 0 && reader.peek(1)?.kind === 'chains' && reader.skip('the')
      if (ahead === null && !one && reader.seesAny(TRAILING) && entries.length > 0) {
        while (reader.at < end && reader.seesAny(TRAILING)) reader.at++
        // "(21, 27, 33 tr, each with 2 ch sp)".
        if (reader.at < end && reader.sees('with')) continue
        // "24 tr now, in twelve pairs".
        if (reader.at < end && !(reader.skip(',') && passUncounted(reader, end))) return null
        break
      }
      const then = entries.length > 0 && reader.skip('then')
      const from = reader.at
      const words = () => ({ words: reader.words(reader.span(from)), ...reader.span(from) })
      const token = reader.peek()
      if (token?.hyphen) return null
      const count = one ? 1 : (reader.number() ?? (entries.length > 0 && reader.skip('a', 'an') ? 1 : null))
      if (count === null) return null
      // "28 tr after Rnd 2, 44 after Rnd 3", "28 tr, then 44, then 60".
      const counted = ahead === null && entries.length > 0 ? readCountedRound(reader, end) : null
      const alone = then && (reader.at >= end || /^(,|and|then)$/.test(reader.key()))
      if (counted !== null || (alone && entries.length > 0)) {
        const round = counted === null ? {} : { round: counted }
        entries.push({ count, noun: entries.at(-1)!.noun, ...round, ...words() })
        continue
      }
      // "(36, 48 dc)" of two rounds.
      const inTurn = readInTurn(reader, end, count)
      if (reader.at >= end) {
        // "64 hdc + 8 sc = 72".
        const sum = reader.key(-2) === '='
        if (!sum && (!bare || entries.length > 0)) return null
        entries.push({
          count,
          noun: { kind: 'stitch', name: null },
          ...(inTurn[1] && { inTurn }),
          ...words(),
        })
        break
      }
      // "24: 12 FPdc + 12 dc".
      if (reader.sees(':') && entries.length === 0) {
        entries.push({ count, noun: { kind: 'stitch', name: null }, ...words() })
        reader.at++
        continue
      }
      // "24 hdc; 6 per side".
      const bareOf = passPer(reader, end)
      if (bareOf) {
        entries.push({ count, noun: { kind: 'own', chain: 0, of: 0, words: bareOf }, ...words() })
        continue
      }
      // "4 x 4-ch sps"; "4 x 3 dc" are twelve.
      const each =
        reader.skipA('times-sign') && !sizeAhead(reader) && !reader.peek()?.hyphen ? reader.number() : null
      // "12 puffs with 12 lots of 3 ch".
      const lots = reader.attempt(() =>
        reader.skip('lots') && reader.skip('of') ? readChains(reader) : null,
      )
      if (lots !== null) {
        entries.push({ count, noun: { kind: 'space', chains: lots, corner: false }, ...words() })
        continue
      }
      // Of one size there may be fewer than of all.
      const named = passSmall(reader) && reader.isA('counted') ? 'half' : reader.key()
      // "4 corner ch-2 sps" are spaces, "4 corners" only themselves.
      const space = reader.attempt(() => {
        const found = readNoun(reader)
        return found?.kind === 'space' ? found : null
      })
      const behind = reader.peek(1)
      if (!space && reader.isA('counted')) {
        const corner = named === 'corner' ? chainsOf(reader) : null
        if (corner !== null) {
          const noun = { kind: 'space', chains: corner, corner: true } as const
          entries.push({ count, noun, ...words() })
          continue
        }
        reader.at++
        // "4 corners of ch 2".
        reader.attempt(() => (reader.skip('of') && readChains(reader) !== null && reader.at <= end) || null)
        // "3 leaves of 11 sts each", "5 points of 5 sts".
        const ofEachOne =
          reader.tokens[end - 1]?.is === 'each' || !rest(reader, end).some((key) => LISTS.has(key))
        if (reader.sees('of') && reader.peek(1)?.kind === 'number' && ofEachOne) reader.at = end
        entries.push({ count, noun: { kind: 'own', chain: 0, of: 0, words: named }, ...words() })
        continue
      }
      if (reader.sees('picot', 'lp')) reader.at++
      // "12 dc & 12 ch-1": spaces by their chains alone.
      const chained =
        entries.length > 0 && count > 2 && behind !== undefined && /^[,;&)\]}.]$/.test(behind.key)
      if (!space && chained && reader.peek()?.kind === 'chains') {
        const chains = reader.peek()!.value
        reader.at++
        entries.push({ count, noun: { kind: 'space', chains, corner: false }, ...words() })
        continue
      }
      if (passHalf(reader)) {
        entries.push({ count, noun: { kind: 'own', chain: 0, of: 0, words: 'half' }, ...words() })
        continue
      }
      const noun =
        space ?? reader.attempt(() => readNoun(reader)) ?? (loose ? readLooseNoun(reader, end) : null)
      if (!noun || reader.at > end) return null
      // "12 shells of 5 dc".
      if (noun.kind === 'stitch' && noun.name?.form === 'shell')
        reader.attempt(() => (reader.skip('of') && reader.number() !== null && readStitch(reader)) || null)
      if (noun.kind === 'stitch' && noun.name?.stitch === 'ch' && noun.name.form === 'plain') return null
      if (noun.kind === 'chain') return null
      // "7 dc per side" is no count of the round, nor is "5 petals with 2 dtr each".
      const ofEach = entries.length > 0 && passInEach(reader, end) ? 'each' : null
      const per =
        passPer(reader, end) ?? ofEach ?? (entries.length > 0 && passWhere(reader, end) ? 'each' : null)
      // "15 sts with one chain loop at each end".
      if (per && noun.kind === 'space' && !noun.corner) {
        entries.push({ count, noun, ofEach: true, ...words() })
        continue
      }
      if (per) {
        entries.push({ count, noun: { kind: 'own', chain: 0, of: 0, words: per }, ...words() })
        continue
      }
      const several = inTurn.length > 1 ? { inTurn } : {}
      const said = words()
      const round = ahead ?? readCountedRound(reader, end)
      const ofRound = round === null ? {} : { round }
      entries.push({ count: inTurn[inTurn.length - 1]! * (each ?? 1), noun, ...several, ...ofRound, ...said })
    }
    if (entries.length === 0 || reader.at !== end) return null
    // "Each side now has 14 dc and 11 ch-1 spaces": none of it is of the whole round.
    // "Each side has 15 sts: 60 sts in total": what stands behind the colon is.
    const until = reader.tokens.slice(start, end).findLast(({ key }) => key === ':')?.start
    const ofSide = (entry: CountEntry) => sides !== null && (until === undefined || entry.start < until)
    const told = entries.map((entry) => (ofSide(entry) ? { ...entry, noun: sides!.noun } : entry))
    return { type: 'count', entries: told, ...reader.span(start) }
  })
}

/** "*40 sc*", "~ 40 sc ~": counts between two marks alike. */
const readMarkedCount = (reader: Reader): CountItem | null =>
  reader.attempt(() => {
    const mark = reader.key()
    if (!COUNT_MARKS.has(mark) && mark !== '<') return null
    const closer = mark === '<' ? '>' : mark
    reader.at++
    let close = reader.at
    while (
      close < reader.end &&
      close - reader.at < LONGEST_COUNT &&
      reader.key(close - reader.at) !== closer
    )
      close++
    const counts = close < reader.end ? readCounts(reader, close, true, true) : null
    return counts && reader.skip(closer) ? counts : null
  })
const COUNT_MARKS = new Set(['*', '**', '~', '_', '/', '|', '•', '-', '–', '—'])

/**
 * "…, join. 12 sc. Now turn the page": a sentence of its own, or behind the joining whatever ends a sentence, that tells
 * a count; null where it tells anything else, or where `items` still go on.
 */
export function readCountSentence(reader: Reader, items: readonly Item[]): CountItem | null {
  const before = reader.tokens[reader.at - 1]
  const last = items[items.length - 1]
  if (!before || !last || reader.peek()?.first || !opensCount(reader)) return null
  // "…, dc3tog. 1 st. Fasten off.": stitches without a name are never worked.
  const unnamed = /^[.!)\]]$/.test(before.key) && reader.isA('stitch', 1) && /^[.;!]?$/.test(reader.key(2))
  // "[…] 6 times. = 24 sc": behind the sign nothing is worked.
  const isSum = reader.key() === '=' && !standsForOne(reader)
  const told = (unnamed || turnsBehind(reader, items)) && reader.peek()?.kind === 'number'
  const asked = askedAhead(reader)
  if (!isSum && !asked && !isWorked(items.slice(-MOST_NOTES)) && !told) return null
  // Behind the joining a number opens a count whether or not a stop stands before it.
  if (last.type === 'star' && !/^[.:)\]!—–=]$/.test(before.key)) return null
  const marked = readMarkedCount(reader)
  if (marked) return marked
  let end = reader.at
  while (end < reader.end && end - reader.at < LONGEST_COUNT && !endsCounts(reader, end)) {
    const lined = reader.tokens[end]!.first && !/^(,|and|&|\+)$/.test(reader.tokens[end - 1]!.key)
    if (end > reader.at && (lined || reader.tokens[end]!.paragraph || LEAVING.has(reader.tokens[end]!.key)))
      break
    end++
  }
  return readCounts(reader, end, asked, true) ?? readLabelled(reader, end) ?? readAndTalk(reader, end)
}

/** "Total: 48 dc = 6 of each colour": behind a label nothing is worked; what can be counted is. */
const readLabelled = (reader: Reader, end: number): CountItem | null =>
  reader.attempt(() => {
    const start = reader.at
    passCountLabel(reader)
    if (reader.at === start || reader.number() === null) return null
    for (let at = end - 1; at > reader.at; at--) {
      const { key } = reader.tokens[at]!
      if (!ENTRY_SEPARATORS.has(key) && key !== '(') continue
      reader.at = start
      const counts = readCounts(reader, at, false)
      reader.at = end
      if (counts) return counts
    }
    reader.at = end
    return { type: 'count', entries: [], ...reader.span(start) }
  })

/** "45 dc, a pot of tea, and on to the next one.": behind a round that is done, where nothing more is worked. */
const readAndTalk = (reader: Reader, end: number): CountItem | null =>
  reader.attempt(() => {
    if (!/^[.!—–]$/.test(reader.key(-1))) return null
    const comma = reader.tokens.findIndex(({ key }, at) => at > reader.at && key === ',')
    if (comma < 0 || comma >= end) return null
    const rest = reader.tokens.slice(comma + 1, end)
    const plain = rest.every(
      ({ kind, kinds }) => kind !== 'number' && !WORKING_KINDS.some((is) => kinds.has(is)),
    )
    const counts = plain ? readCounts(reader, comma, false) : null
    reader.at = end
    return counts
  })
const WORKING_KINDS = ['verb', 'stitch', 'chain', 'space', 'group', 'round']

/** How many notes may stand between the end of a round and its count. */
const MOST_NOTES = 6

/** Whether the word in hand can begin a count: a figure, a label, a mark. */
const opensCount = (reader: Reader): boolean => {
  const kind = reader.peek()?.kind
  return (
    kind === 'number' ||
    kind === 'mark' ||
    reader.isA('number') ||
    reader.sees('you', 'there', 'total', 'of') ||
    reader.sees('that') ||
    totalAhead(reader) ||
    sidesAhead(reader) ||
    reader.isA('tells') ||
    reader.isA('stitch')
  )
}
