/** The small clauses: how often, and "rep from * …". */
import { readEnding } from './ending-words'
import { passUntilMore, untilAhead } from './in-all'
import { readNoun } from './nouns'
import { passAtEach } from './stop-at-double'
import { passUntilDone, passUntilEach } from './until-done'
import { readUntilLeft } from './until-left'
import { inBrackets, MARKS, passDoThis, passPartBetween, passUpTo, passWhatIsMarked } from './marked'
import type { Reader } from './reader'
import type { Item, RepeatClause } from './tree'

/** Where a sequence ends: at its bracket, at the end of the clause (`placed`: of what a place is named for), or behind one part with an asterisk. */
export type Stop = 'close' | 'clause' | 'star' | 'placed'

/** Reads items up to a stop; handed in, since clauses and sequences hold each other. */
export type SequenceReader = (reader: Reader, stop: Stop) => Item[]

/** What marks the beginning of a part that is repeated. */
export const STARS = new Set(['*', '**', '***', '†'])

interface Amount {
  readonly amount: number | null
  readonly said: RepeatClause['said']
  readonly lastCount: number
  readonly around: boolean
  /** "across to next corner". */
  readonly toCorner: boolean
}

const AROUND: Amount = { amount: null, said: 'plain', lastCount: 0, around: true, toCorner: false }

/** "Around to give 7 loops" tells a count. */
const GIVE = /^(give|make|form|leave)$/
const ALL_WORDS = new Set(['all', 'total', 'altogether'])

function skipInAll(reader: Reader): boolean {
  return (
    reader.attempt(() => {
      reader.skip('for')
      reader.skip('in', 'a')
      reader.skip('a')
      if (!reader.seesAny(ALL_WORDS)) return null
      // "in all sts" goes on: that is a place.
      if (reader.isA('stitch', 1) || reader.isA('space', 1) || reader.key(1) === 'the') return null
      reader.at++
      return true
    }) !== null
  )
}

/** "(sc, inc)*6", "(sc, inc) * 6 [18]": an asterisk before a figure that ends the phrase says "times"; passes both. */
export const readTimesStar = (reader: Reader): number | null =>
  reader.attempt(() => {
    if (!reader.skip('*') || reader.peek()?.kind !== 'number' || reader.peek()!.hyphen) return null
    const times = reader.number()
    const next = reader.peek()
    return !next || next.first || /^[,;:.([)\]–—=-]$/.test(next.key) ? times : null
  })

/** "and keep going", "and so on", "and carry on": as often as there is room; passes it. */
const passGoingOn = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip(',')
    reader.skip('and')
    if (reader.skipAll('so', 'on')) return true
    if (!reader.skipAll('keep', 'going') && !reader.skip('continue', 'carry', 'go')) return null
    while (reader.skip('on', 'like', 'this', 'in', 'way', 'st', 'pattern')) continue
    // "Continue from * to * around": the clause says it itself.
    return reader.sees('from') || reader.sees('rep') ? null : true
  }) === true

/** "(repeat) the whole round", "for the entire rnd"; passes it. */
const passWholeRound = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('for', 'over', 'in')
    reader.skip('the')
    return reader.skip('whole', 'entire') && reader.skipA('round') ? true : null
  }) === true

/** "6 times", "4 more times", "twice", "x 6", "around", "to last 3 sts". Null where nothing says how often. */
export function readAmount(reader: Reader, plainNumber = false): Amount | null {
  return reader.attempt((): Amount | null => {
    const done = (amount: number | null, said: RepeatClause['said'], lastCount = 0): Amount => ({
      amount,
      said: said === 'plain' && skipInAll(reader) ? 'in-all' : said,
      lastCount,
      around: amount === null,
      toCorner: false,
    })
    reader.skip('another', 'a')
    // "Repeat still 14 x".
    const still = reader.skip('still')
    if (reader.skipA('times-sign')) {
      const count = reader.number()
      if (count === null) return null
      reader.skip('times')
      return done(count, 'plain')
    }
    const worded = reader.valueOf('how-often')
    if (worded !== null) {
      reader.at++
      const more = reader.skip('more', 'again')
      return done(worded, more ? 'more' : 'plain')
    }
    const count = reader.number()
    if (count !== null) {
      let more = reader.skip('more') || still
      if (reader.skipA('times-sign')) {
        more = reader.skip('more', 'again') || more
        return done(count, more ? 'more' : 'plain')
      }
      if (!reader.skip('times')) return plainNumber && more ? done(count, 'more') : null
      more = reader.skip('more', 'again') || more
      if (!reader.attempt(() => (reader.skip('around') ? true : null))) reader.skip('across')
      return done(count, more ? 'more' : 'plain')
    }
    const rest = readUntilLeft(reader)
    if (rest !== null) return done(null, 'plain', rest)
    if (passUntilDone(reader) || passUntilEach(reader) || passWholeRound(reader)) return done(null, 'plain')
    if (passUntilMore(reader) || untilAhead(reader)) return done(null, 'plain')
    if (reader.skip('all')) reader.skip('the', 'way')
    reader.skip('way')
    const heads = reader.peek()?.first === true && reader.peek(1)?.kind === 'number'
    if (!heads && reader.skip('around', 'across', 'round')) {
      reader.skip('the')
      reader.skip('rnd', 'round', 'row', 'ring')
      const rest = readUntilLeft(reader)
      if (rest !== null) return done(null, 'plain', rest)
      if (!reader.sees('to') || GIVE.test(reader.spelled(1))) return done(null, 'plain')
    }
    if (reader.skip('to', 'until')) {
      reader.skip('within')
      reader.skip('the')
      if (reader.skip('end')) {
        if (reader.skip('of')) {
          reader.skip('the')
          reader.skip('rnd', 'round', 'row')
        }
        return done(null, 'plain')
      }
      const corner = reader.attempt(() => {
        const last = reader.sees('last')
        while (reader.skip('next', 'first', 'last', 'same')) continue
        const noun = readNoun(reader)
        return noun?.kind === 'corner' || (noun?.kind === 'space' && noun.corner) ? { last } : null
      })
      // Which corner is the last is told by what stands behind.
      if (corner) return { ...done(null, 'plain'), toCorner: !corner.last }
      const last = reader.skip('last')
      const left = reader.number() ?? (last ? 1 : null)
      if (left === null) return null
      if (!readNoun(reader)) return null
      reader.skip('remain', 'rem', 'left')
      return done(null, 'plain', left)
    }
    return null
  })
}

/** "Once more from * to *", "5 more times from * to *": how often, before what is worked again. */
const readAmountFirst = (reader: Reader): Amount | null =>
  reader.attempt(() => {
    const amount = readAmount(reader)
    const mark = () => reader.skip('*', 'star')
    return amount && amount.amount !== null && reader.skip('from') && mark() && passUpTo(reader) && mark()
      ? amount
      : null
  })

/**
 * How often a part between two asterisks is worked, behind the second: "6 times", "repeat 4 more times", "repeat in
 * every sp around", "rep *-* in total 6 times", "repeat between the stars all the way round, 12 times altogether".
 */
export function readClosedAmount(reader: Reader): Amount | null {
  // "*sc in next st, ch 1* (12 times)".
  const bracketed = inBrackets(reader, () => readClosedAmount(reader))
  if (bracketed && bracketed.amount !== null) return bracketed
  return reader.attempt((): Amount | null => {
    // "*…* … repeat between *s 4 more times".
    while (reader.skip('…')) continue
    const first = readAmountFirst(reader)
    if (first) return first
    reader.attempt(() => (reader.skip('and') && reader.sees('do')) || null)
    const again =
      passPartBetween(reader) ||
      reader.skipAll('do', '*', 'to', '*') ||
      ['work', 'make', 'repeat'].some((verb) => reader.skipAll(verb, '*', 'to', '*')) ||
      passDoThis(reader)
    // "Keep repeating until you are back".
    reader.attempt(() => (reader.skip('keep') && (reader.skip('on'), reader.sees('rep'))) || null)
    const repeats = ['rep', 'work'].includes(reader.key()) && reader.key(1) !== 'from'
    if (repeats && !again) {
      reader.at++
      reader.skip('between')
      reader.skip('the')
      const named = reader.skip('stars', 'asterisks') || reader.skipAll('*', 's')
      if (!named && reader.skip('*') && !((passUpTo(reader) || reader.sees('*')) && reader.skip('*')))
        return null
    }
    const total = reader.skipAll('in', 'total') || reader.skipAll('in', 'all')
    const place = repeats && !total ? readEvery(reader) : null
    const starred = repeats || total ? null : readTimesStar(reader)
    if (starred !== null) return { ...AROUND, amount: starred, said: 'in-all', around: false }
    const on = !repeats && !again && passGoingOn(reader)
    reader.attempt(() => (on && reader.skip(',') ? true : null))
    const amount = place ?? readAmount(reader) ?? (on ? AROUND : null)
    if (!amount) return null
    // "all the way round, 12 times altogether": the figure is held to.
    const counted =
      amount.amount === null && !place ? reader.attempt(() => (reader.skip(','), readAmount(reader))) : null
    const told = counted?.amount != null ? counted : amount
    return total && told.amount !== null ? { ...told, said: 'in-all' } : told
  })
}

/** What a repeat goes over: places, and sides of the motif; passes it. */
const passRepeated = (reader: Reader): boolean => reader.skip('side', 'sides') || readNoun(reader) !== null

/** "in every sp around", "in each ch-1 sp", "on each side": once for each of them, which is all around. */
const readEvery = (reader: Reader): Amount | null =>
  reader.attempt(() => {
    if (!reader.skip('in', 'into', 'for', 'over', 'on', 'along') || !reader.skip('each', 'every', 'all'))
      return null
    reader.skip('the')
    reader.skip('other', 'rem')
    if (!passRepeated(reader)) return null
    reader.skip('around', 'across')
    return AROUND
  })

/** "rep from * in each of next 7 loops", "in each sp around", "on the other 3 sides", "on all 4 sides": as often as there are. */
const readInPlaces = (reader: Reader): Amount | null =>
  reader.attempt(() => {
    if (!reader.skip('in', 'into', 'on', 'along')) return null
    const each = reader.skip('each')
    const all = each || reader.skip('all')
    while (reader.skip('of', 'the')) continue
    const next = reader.skip('next', 'last', 'other')
    const others = reader.skip('rem') || next
    const count = reader.number()
    const side = (all || others) && reader.skip('sides', 'edges')
    if (!side && (!each || !passRepeated(reader) || (next && count === null))) return null
    readAmount(reader)
    // "In each of the 12 sps around": of all of them the first is one.
    const said = count === null ? 'plain' : others ? 'more' : 'in-all'
    return { amount: count, said, lastCount: 0, around: count === null, toCorner: false }
  })

/** "(Work * to *) a total of 11 times"; passes all before the figure. */
const passTotalOf = (reader: Reader): boolean =>
  reader.attempt(() => (reader.skip('a', 'for'), reader.skip('a'), reader.skipAll('total', 'of') || null)) ===
  true

interface RepeatWords {
  readonly clause: RepeatClause
  readonly mark: string
  readonly toDouble: boolean
}

/** "Rep", "work", "keep going", "continue to rep", "carry on": before "from *"; passes it. */
function passRepeating(reader: Reader): boolean {
  const start = reader.at
  if (reader.skip('keep', 'go', 'carry', 'continue', 'do'))
    while (reader.skip('on', 'to', 'this', 'it', 'around', 'in', 'rep', 'work', 'going', 'pattern')) continue
  else reader.skip('rep', 'work')
  if (reader.at === start) return false
  reader.skip('.')
  reader.skip('instructions', 'pattern', 'pat')
  return true
}

/** "rep from * 4 more times, ending last rep at **"; null where "rep" means something else. */
export function readRepeatClause(reader: Reader, sequence: SequenceReader): RepeatWords | null {
  const start = reader.at
  return reader.attempt(() => {
    const verb = passRepeating(reader)
    // "repeat 10 times from *": the amount stands first.
    let amountStart = reader.at
    let amount = verb ? readAmount(reader, true) : null
    let amountSpan = amount && reader.span(amountStart)
    reader.skip(',')
    const bracket = reader.skip('(') ? ')' : reader.skip('[') ? ']' : null
    if (verb) passWhatIsMarked(reader)
    const between = reader.skip('between')
    const from = reader.skip('from')
    if (!between && !from && !verb) return null
    // "Work *1 dc in next dc, ch 1*": what follows is worked.
    const bare = !between && !from && /^work/.test(reader.spelled(-1))
    while (reader.skip('first', 'the', 'two')) continue
    const mark = reader.key()
    if (!reader.skip('*', '**', '†', '***', 'star', 'asterisk', ...(between ? MARKS : []))) return null
    reader.skip("'s", 's')
    let toDouble = false
    let toMark = false
    if (passUpTo(reader) || reader.skip('through') || (between && reader.skip('and'))) {
      toDouble = reader.key() === '**'
      toMark = reader.skip('*', '**', '†')
      if (!toMark) {
        // "rep from * to end", "rep from * to last 2 sts": the amount says it.
        reader.at--
      }
    }
    if (bracket !== null && !reader.skip(bracket)) return null
    // "from * repeat 8 times more", "work from * to * in total 5 times".
    if (!verb) reader.skip('rep')
    if (!amount) {
      amountStart = reader.at
      reader.skip(',', ':')
      if (toDouble && passAtEach(reader)) {
        const clause = { ...AROUND, toCorner: false, endAtDouble: true, ending: null } as const
        return {
          clause: { ...clause, amountSpan: reader.span(amountStart), ...reader.span(start) },
          mark,
          toDouble: false,
        }
      }
      const total = reader.skipAll('in', 'total') || reader.skipAll('in', 'all') || passTotalOf(reader)
      const told = readInPlaces(reader) ?? readAmount(reader, true)
      const worked = !reader.words(reader.span(start)).toLowerCase().startsWith('rep')
      const inAll =
        told?.amount != null && told.said === 'plain' && (total || (toMark && !toDouble && worked))
      amount = told && inAll ? { ...told, said: 'in-all' } : told
      if (!amount && (!verb || (bare && !toMark))) return null
      if (reader.tokens[reader.at - 1]?.key === ',') reader.at--
      amountSpan = reader.at > amountStart ? reader.span(amountStart) : reader.span(start)
    }
    const { said, lastCount, toCorner, ...told } = amount ?? AROUND
    const end = readEnding(reader, sequence)
    const clause: RepeatClause = {
      amount: told.amount,
      said,
      lastCount,
      toCorner,
      endAtDouble: end?.atDouble ?? false,
      ending: end?.ending ?? null,
      amountSpan: amountSpan!,
      ...reader.span(start),
    }
    return { clause, mark, toDouble }
  })
}

/** "repeat [ ] 4 more times", "rep instructions in brackets 3 times more": what stood in brackets before. */
export function readRepeatBrackets(reader: Reader): { readonly times: number | null } | null {
  return reader.attempt(() => {
    if (!reader.skip('rep')) return null
    reader.skip('.')
    reader.skip('from', 'between')
    reader.skip('the')
    const empty =
      (reader.skip('[') && (reader.skip('to') || true) && reader.skip(']')) ||
      (reader.skip('(') && (reader.skip('to') || true) && reader.skip(')'))
    if (!empty) {
      reader.skip('instructions', 'directions', 'what', 'st')
      reader.skip('is')
      reader.skip('in', 'within', 'between')
      while (reader.skip('square', 'round', 'the')) continue
      if (!reader.skip('brackets', 'bracket', 'parentheses', 'parenthesis', 'parens')) return null
    }
    const amount = readAmount(reader)
    return {
      times: amount?.amount == null ? null : amount.said === 'in-all' ? amount.amount : amount.amount + 1,
    }
  })
}
