/** Sequences of phrases: commas and stops, brackets of three kinds, asterisks and what repeats them. */
import { passListAlong, sameBackAhead } from './along-chain'
import { STARS, readAmount, readClosedAmount, readRepeatClause, readTimesStar } from './clauses'
import { readEnding } from './ending-words'
import { readSaid } from './count-lines'
import { readCounts, readStatement } from './stated'
import { changedSweep } from './evenly'
import { passConnector } from './connectors'
import { passExplanation } from './explained'
import { passMiddle } from './foundation'
import { passManner, passOverview, passShifted } from './manner'
import { passPlaceLabel } from './place-labels'
import { readPhrase } from './phrases'
import { readProse } from './prose'
import type { Stop } from './clauses'
import { passSharedPlace, passTimesOver, withBefore } from './loose-groups'
import { timesOf } from './times-of'
import { endBehindCount, goOn, readShortRepeat, readStarredGroup, wrapStar } from './stars'
import type { OpenStar } from './stars'
import { explains, isMadeOf, isUnreadCount, namesIt, remarks, tellsFirst } from './brackets'
import { readPlace } from './places'
import { readTersePlace } from './plain-place'
import { repeatsWhole } from './whole-repeats'
import type { Reader } from './reader'
import type { Span } from './tokens'
import type { GroupItem, Item, Place, StarItem } from './tree'

const SEPARATORS = new Set([
  ',',
  ';',
  '.',
  ':',
  'and',
  'then',
  '&',
  'plus',
  '-',
  '–',
  '—',
  '+',
  '/',
  '=',
  '→',
  '"',
  '!',
  '?',
  'but',
])
const DASHES = new Set(['-', '–', '—', '=', '→'])
const OPENERS: ReadonlyMap<string, string> = new Map(Object.entries({ '(': ')', '[': ']', '{': '}' }))
const CLOSERS = new Set([')', ']', '}'])
/** Brackets nest about three deep in print; the limit keeps a hostile text from exhausting the stack. */
const DEEPEST = 40

/** For each opening bracket the token that closes it; reports what is left open or closed without cause. */
export function matchBrackets(
  reader: Reader,
  from: number,
  to: number,
): { matches: Map<number, number>; broken: boolean } {
  const matches = new Map<number, number>()
  const open: number[] = []
  let broken = false
  for (let index = from; index < to; index++) {
    const key = reader.tokens[index]!.key
    if (OPENERS.get(key)) {
      open.push(index)
      if (open.length > DEEPEST) {
        reader.report('rounds/nested-too-deep', reader.tokens[index]!, { depth: DEEPEST })
        return { matches, broken: true }
      }
    } else if (CLOSERS.has(key)) {
      const opener = open[open.length - 1]
      if (opener !== undefined && OPENERS.get(reader.tokens[opener]!.key) === key) {
        open.pop()
        matches.set(opener, index)
      } else {
        reader.report('rounds/bracket-close', reader.tokens[index]!, { bracket: key })
        // "(sc, ch 2, sc]" is one slip, told once.
        open.pop()
        broken = true
      }
    }
  }
  for (const index of open) {
    const bracket = reader.tokens[index]!
    const word = index + 1 < to ? reader.tokens[index + 1]! : bracket
    const span: Span = { start: bracket.start, end: word.end, line: bracket.line, column: bracket.column }
    reader.report('rounds/bracket-open', span, { bracket: bracket.key, word: word.text })
    broken = true
  }
  return { matches, broken }
}

/** Reads items with the given pairs of brackets; made once for each round. */
export function sequenceReader(matches: ReadonlyMap<number, number>) {
  /** `worked`: behind "in each sp work", where nothing is told of the round. */
  function bracket(reader: Reader, before: readonly Item[], worked = false): Item | null {
    const start = reader.at
    const close = matches.get(start)
    if (close === undefined) return null
    const explained = passExplanation(reader)
    if (explained) return explained
    reader.at = close + 1
    if (tellsFirst(reader, start)) return { type: 'note', effect: null, ...reader.span(start) }
    const placed = reader.attempt(() => {
      reader.skip('all')
      return readPlace(reader) ?? readTersePlace(reader)
    })
    reader.at = close + 1
    const timed = placed ? null : reader.attempt(() => readTimesStar(reader) ?? readAmount(reader))
    reader.at = start + 1
    if (!timed && !worked) {
      const statement = readStatement(reader, close)
      if (statement) {
        reader.at = close + 1
        return { ...statement, ...reader.span(start) }
      }
    }
    if (!placed && !timed && !worked) {
      const counts = readCounts(reader, close, true)
      if (counts) {
        reader.at = close + 1
        return { ...counts, ...reader.span(start) }
      }
    }
    if (!placed && !timed && remarks(reader, start)) {
      reader.at = close + 1
      return { type: 'note', effect: null, ...reader.span(start) }
    }
    reader.at = start + 1
    const outer = reader.end
    const found = reader.findings.length
    reader.end = close
    const items = sequence(reader, 'close')
    reader.end = outer
    reader.at = close + 1
    if (items.every((item) => item.type === 'note')) {
      if (!placed && !timed) reader.findings.length = found
      const effect = items.length === 1 && items[0]!.type === 'note' ? items[0]!.effect : null
      return { type: 'note', effect, ...reader.span(start) }
    }
    return finishGroup(reader, start, items, worked ? null : before)
  }

  function finishGroup(reader: Reader, start: number, items: Item[], before: readonly Item[] | null): Item {
    let place: Place | null = null
    let times: number | null = null
    let around = false
    let lastCount = 0
    let toCorner = false
    const cornered = reader.attempt(() => {
      const found = readAmount(reader)
      return found?.toCorner ? found : null
    })
    if (cornered) around = toCorner = true
    for (let round = 0; round < 2; round++) {
      if (!cornered && !reader.sees('all', 'the', 'way')) reader.skip('all')
      if (!cornered) place ??= readPlace(reader) ?? readTersePlace(reader)
      if (times !== null || around) continue
      times = readTimesStar(reader)
      if (times !== null) continue
      const amount = reader.attempt(() => {
        if (place) reader.skip(',')
        if (reader.sees('rep') && reader.key(1) !== 'from') reader.at++
        const found = readAmount(reader)
        // "(…) in each sp, around": the amount belongs to the place.
        return found && !(found.around && place) ? found : null
      })
      if (amount) {
        // "3 ch, 1 tr, 1 ch, (2 tr, 1 ch) five more times": more than what was worked before it.
        const { amount: told, said } = amount
        times = told === null ? null : timesOf(told, said === 'more', before, items)
        around = amount.around
        lastCount = amount.lastCount
        toCorner = amount.toCorner
      }
    }
    const described = items.filter((item) => item.type === 'described')
    if (described.length > 0 && described.length === items.filter((item) => item.type !== 'note').length) {
      const inside = described.map((item) => item.place).find((found) => found !== null) ?? null
      return {
        type: 'described',
        place: place ?? inside,
        closes: described.some((item) => item.closes),
        ...reader.span(start),
      }
    }
    const group: GroupItem = {
      type: 'group',
      bracket: reader.tokens[start]!.key,
      items,
      place,
      times,
      around,
      toCorner,
      lastCount,
      ...reader.span(start),
    }
    return group
  }

  /** A sequence within a sequence ("in next sp work …"), as deep as any text needs. */
  function sequence(reader: Reader, stop: Stop): Item[] {
    if (reader.depth >= DEEPEST) return reader.peek() ? [readProse(reader)] : []
    reader.depth++
    const items = readSequence(reader, stop)
    reader.depth--
    return items
  }

  function readSequence(reader: Reader, stop: Stop): Item[] {
    const items: Item[] = []
    let star: OpenStar | null = null
    const wrap = (open: OpenStar, rest: Pick<StarItem, 'repeat' | 'closed'>, toDouble = false) =>
      wrapStar(items, open, rest, reader.span(open.token), toDouble)
    while (reader.peek()) {
      // Within brackets nothing is told of the round.
      const sentence = star || reader.depth > 1 ? null : readSaid(reader, items)
      if (sentence) {
        items.push(sentence)
        endBehindCount(reader, items, sequence)
        continue
      }
      const token = reader.peek()!
      const key = token.is
      if (stop === 'star' && star === null && items.length > 0) break
      if (CLOSERS.has(key)) {
        if (matches.size === 0 && stop === 'close') reader.at++
        break
      }
      const opens = stop === 'placed' && items.length === 0 && OPENERS.has(key)
      if ((stop === 'clause' || stop === 'placed') && !opens) {
        if (key === ';' || key === '.' || STARS.has(key) || key === 'rep' || key === 'instead') break
        if (
          key === 'ending' ||
          key === 'omit' ||
          (key === 'end' && ['last', 'with', 'at'].includes(reader.key(1)))
        )
          break
        if (key === '(' || key === '[') {
          const close = matches.get(reader.at)
          const at = reader.at
          reader.at++
          const count = close !== undefined && readCounts(reader, close, true)
          reader.at = at
          if (count) break
        }
        if (key === 'in' && reader.sees('in', 'place', 'of')) break
        if (key === 'on' && reader.key(1) === 'last') break
        if (star === null && items.length > 0 && (repeatsWhole(reader, items) || sameBackAhead(reader))) break
      }
      const repeat = readRepeatClause(reader, sequence)
      if (repeat) {
        if (star) {
          wrap(star, { repeat: repeat.clause, closed: false }, repeat.toDouble)
          star = null
        } else if (items.some((item) => item.type === 'star')) {
          const times = repeat.clause.amount ?? 1
          items.push({ type: 'again', toDouble: repeat.toDouble, times, ...span(repeat.clause) })
        } else reader.report('rounds/repeat-without-star', repeat.clause, { mark: repeat.mark })
        continue
      }
      const brief = star && items.length > star.index ? readShortRepeat(reader, sequence) : null
      if (star && brief) {
        wrap(star, { repeat: brief, closed: false })
        star = null
        continue
      }
      if (items.length > (star?.index ?? 0) && passListAlong(reader, items)) continue
      const least = star?.index ?? 0
      if (passSharedPlace(reader, items, least, stop === 'placed') || passTimesOver(reader, items, least))
        continue
      const told =
        DASHES.has(key) && (items.length > 0 || STOPS.has(reader.spelled(-1))) ? readToldCount(reader) : null
      if (told) {
        items.push(told)
        continue
      }
      const explained = STOPS.has(reader.spelled(-1)) ? passExplanation(reader) : null
      if (explained) {
        items.push(explained)
        continue
      }
      if (
        (items.length > 0 && passConnector(reader)) ||
        passManner(reader) ||
        passPlaceLabel(reader) ||
        passOverview(reader) ||
        passShifted(reader)
      )
        continue
      const more = key === 'and' ? goOn(reader, items) : null
      if (more) {
        items.push(more)
        continue
      }
      if (SEPARATORS.has(key)) {
        reader.at++
        continue
      }
      if (STARS.has(key)) {
        const at = reader.at
        reader.at++
        // "*…** repeat around": the double one ends what is repeated.
        const ends = key === '**' && reader.attempt(() => readClosedAmount(reader)) !== null
        if (ends) reader.at = at + 1
        if (star && key === '**' && star.mark !== '**' && !ends) {
          items.push({ type: 'double', ...span(token) })
          continue
        }
        if (star && (key === star.mark || ends)) {
          const amountStart = reader.at
          reader.skip(',', ';', '.', ':', '-', '–', '—')
          const amount = readClosedAmount(reader)
          if (amount) {
            const amountSpan = reader.span(amountStart)
            const end = readEnding(reader, sequence)
            const said = amount.said === 'more' ? 'more' : 'in-all'
            const clause = {
              amount: amount.amount,
              said,
              lastCount: amount.lastCount,
              toCorner: amount.toCorner,
              endAtDouble: end?.atDouble ?? false,
              ending: end?.ending ?? null,
              amountSpan,
              ...reader.span(amountStart),
            } as const
            wrap(star, { repeat: clause, closed: true })
            star = null
            continue
          }
          reader.at = at + 1
          // A closing asterisk before "rep from * to * …": the clause follows.
          const follows = reader.at
          while (SEPARATORS.has(reader.key())) reader.at++
          const clause = reader.sees('rep') || readRepeatClause(reader, sequence) !== null
          reader.at = follows
          if (clause) continue
          const group = readStarredGroup(reader, items, star)
          if (group) {
            items.push(group)
            star = null
            continue
          }
          wrap(star, { repeat: null, closed: false })
        }
        star = { mark: key, token: at, index: items.length }
        continue
      }
      const begun = items.length === 0 ? passMiddle(reader) : null
      if (begun) {
        items.push(begun)
        continue
      }
      // "Work (sc, hdc, dc) in each sp": the verb adds nothing.
      if (reader.isA('verb') && (OPENERS.get(reader.key(1)) || STARS.has(reader.key(1)))) {
        reader.at++
        continue
      }
      if (OPENERS.get(key)) {
        const opened = reader.tokens[reader.at]!
        const item = bracket(reader, items, opens)
        const before = items[items.length - 1]
        if (item && before && isMadeOf(reader, before, item, opened)) items[items.length - 1] = item
        else if (item && before && (explains(reader, before, item, opened) || namesIt(before, item)))
          items.push({ type: 'note', effect: null, ...span(item) })
        else if (item && before && isUnreadCount(reader, before, item, opened))
          items.push({ type: 'note', effect: null, ...span(item) })
        else if (item) items.push(item)
        else reader.at++
        continue
      }
      const item = readPhrase(reader, sequence) ?? readProse(reader)
      const changed = changedSweep(items.at(-1), item)
      if (changed) {
        items[items.length - 1] = changed
        continue
      }
      items.push(withBefore(reader, items, least, item))
    }
    if (star) wrap(star, { repeat: null, closed: false })
    return items
  }

  return sequence
}

const span = ({ start, end, line, column }: Span): Span => ({ start, end, line, column })

/** "— 36 dc, 4 ch-5 sps. Fasten off": a count behind a dash, up to the stop. */
const readToldCount = (reader: Reader): Item | null =>
  reader.attempt(() => {
    while (reader.seesAny(DASHES)) reader.at++
    let end = reader.at
    while (end < reader.end && !STOPS.has(reader.tokens[end]!.key) && !reader.tokens[end]!.first) end++
    return readCounts(reader, end, true, true)
  })
const STOPS = new Set(['.', ';', '(', '[', '*'])
