/** Rounds worked again, in words: "Rep Rnd 7", "as Rnd 3, but with …", "complete as for first motif". */
import { readChanges } from './changed-rounds'
import { readAmount } from './clauses'
import { passPartName } from './part-names'
import type { Reader } from './reader'
import { passLikeRound, passSameAgain } from './same-as-round'
import { readCounts } from './stated'
import type { Span } from './tokens'
import type { RepeatRoundItem } from './tree'

/** Words that tell of what has grown: "one more group", "increasing", "on each side", "between increases". */
const GROWN =
  /\b(more|extra|additional|increas\w*)\b|\b(on|along|to|for|per|at|in)\s+(each|every|the|all|a|four|both|side)?\s*(of the )?sides?\b|\b(each|every|per)\s+side\b|\bbetween\s+(the\s+|each\s+)?(two\s+)?(corners?|incs?\b|increases?)|\bthere\s+(are|will|is)\s+(be\s+)?(now\b|more\b|\d+\b|two\b|three\b|four\b|five\b|six\b)|\bnow\s+(there|be)\b/iu
/** "3 tr in each sp between groups and (3 tr, 2 ch, 3 tr) in each corner": all of it, told for sides and corners. */
const TOLD_WHOLE = /\b(each|every|all)\b.*\b(each|every|all|the|4|four)\s+corners?\b/iu
/** Words of the longest sentence that tells it (ours). */
const LONGEST = 60
const ENDS = new Set(['.', ';', '!', '—', '–', '=', '*'])

/** Whether a bracket at the cursor tells a count; passes nothing. */
function opensCount(reader: Reader): boolean {
  const { at } = reader
  let close = at + 1
  while (close < reader.end && close - at < LONGEST && !/^[)\]]$/.test(reader.tokens[close]!.key)) close++
  reader.at = at + 1
  const found = readCounts(reader, close, true, true) !== null
  reader.at = at
  return found
}

/** What has grown, behind the round that is worked again, up to the end of the sentence; null for anything else. */
const readGrowth = (reader: Reader): Span | null =>
  reader.attempt(() => {
    while (reader.skip(',')) continue
    const start = reader.at
    while (reader.peek() && reader.at - start < LONGEST) {
      if (reader.seesAny(ENDS) || reader.peek()!.paragraph) break
      if ((reader.sees('(') || reader.sees('[')) && opensCount(reader)) break
      reader.at++
    }
    if (reader.at === start) return null
    const span = reader.span(start)
    const words = reader.words(span)
    return GROWN.test(words) || TOLD_WHOLE.test(words) ? span : null
  })

/** Names that stand for a part whether or not it has a heading. */
const LOOSE = /^(first|previous|prev|last|basic) (motif|square|hexagon|flower|circle|petal|leaf|one)s?$/

/** "first motif", "Center": the name of a part of the pattern; passes it. */
function readPartName(reader: Reader): string | null {
  return reader.attempt(() => {
    while (reader.skip('for', 'the', 'on', 'of')) continue
    return passPartName(reader, (name) => reader.parts.has(name) || LOOSE.test(name))
  })
}

const readNth = (reader: Reader): number | null => reader.ordinal() ?? (reader.skip('first') ? 1 : null)
const passTo = (reader: Reader): boolean => reader.skip('-', '–', '—', 'to', 'and', 'through')

/** "(Repeat Row 3), increasing 2 sts each row", "decreasing 1 st at each end of every row": what the row says itself; passes it. */
const passEachTime = (reader: Reader): void => {
  reader.attempt(() => {
    reader.skip(',')
    if (!/^(inc|dec)/.test(reader.spelled()) || !/ing$/.test(reader.spelled())) return null
    reader.at++
    reader.skip('by')
    if (reader.number() === null || !reader.skipA('stitch')) return null
    while (reader.skip('at', 'on', 'in', 'both', 'end', 'sides', 'side', 'of', 'each', 'every', 'per'))
      continue
    return reader.skipA('round') || null
  })
}

/** "Rep Rnd 7", "rep Rnds 2 and 3 twice", "rep 2nd to 5th rows", "rep last 2 rnds", "work as for Rnd 2", "same as Rnd 3". */
export function readRepeatRound(reader: Reader): RepeatRoundItem | null {
  const start = reader.at
  return reader.attempt((): RepeatRoundItem | null => {
    const onward = readOnAsBefore(reader)
    if (onward) return { type: 'repeat-round', part: null, times: 1, ...onward, ...reader.span(start) }
    const once = readOnceMore(reader) || passSameAgain(reader)
    if (once)
      return { type: 'repeat-round', part: null, times: 1, from: 'last', to: 'last', ...reader.span(start) }
    const again = passLikeRound(reader) || reader.skip('rep') || passFollow(reader)
    const completes = !again && passCompleting(reader)
    const whole = completes ? { completes } : {}
    if (!again) {
      if (reader.skip('work', 'worked', 'make', 'continue')) reader.skip('exactly', 'on')
      reader.skip('in')
      reader.skip('the')
      const same = reader.skip('same')
      if (same) reader.skip('way', 'manner', 'fashion')
      if (!reader.skip('as', 'like') && !(same && reader.isA('round'))) return null
      reader.skip('for', 'given', 'in', 'on')
      reader.skip('for')
      const part = readPartName(reader)
      if (part)
        return {
          type: 'repeat-round',
          from: 'same',
          to: 'same',
          part,
          times: 1,
          ...whole,
          ...reader.span(start),
        }
    }
    reader.skip('.')
    reader.skip('the')
    // "As the 3rd rnd", "same as first round".
    const nth = readNth(reader)
    // "Repeat 2nd to 5th rows".
    const until = nth === null ? null : reader.attempt(() => (passTo(reader) ? readNth(reader) : null))
    const last = nth === null && reader.skip('last', 'prev')
    const lastCount = last ? (reader.number() ?? 1) : 1
    const short = reader.sees('r') && reader.peek(1)?.kind === 'number' && reader.skip('r')
    if (!short && !reader.skipA('round')) return null
    reader.skip('.')
    let from: number | 'last' = 'last'
    let to: number | 'last' = 'last'
    if (!last) {
      const number = nth ?? reader.number()
      if (number === null) return null
      from = number
      to = until ?? number
      if (nth === null && passTo(reader)) to = reader.number() ?? number
    }
    const part = reader.attempt(() => (reader.skip('of', 'as', 'from') ? readPartName(reader) : null))
    reader.skip('again')
    const times = readAmount(reader)?.amount ?? 1
    passEachTime(reader)
    const changes = readChanges(reader)
    const grows = changes.length === 0 && part === null ? readGrowth(reader) : null
    return {
      ...{ type: 'repeat-round', from, to, part, times, changes },
      ...(lastCount > 1 && { lastOf: lastCount }),
      ...(grows && { grows }),
      ...whole,
      ...reader.span(start),
    } as const
  })
}

/** "Work another round as before", "work 1 more rnd in the same way", "make as before"; passes it. */
const readOnceMore = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('work', 'make', 'do', 'crochet', 'rep')) return null
    const one = reader.skip('another', 'one', '1')
    const more = reader.skip('more')
    const named = (one || more) && reader.skipA('round')
    if (one && !named) return null
    const from = reader.at
    while (reader.skip('in', 'the', 'exactly', 'just')) continue
    if (reader.skip('as')) {
      if (!reader.skip('before', 'established', 'usual', 'above')) return null
    } else if (reader.skip('same', 'like', 'alike')) {
      while (reader.skip('way', 'manner', 'this', 'that', 'fashion')) continue
    } else reader.at = from
    return (named || reader.at > from) && /^([.;([=—–]|)$/.test(reader.key()) ? true : null
  }) === true

/** "Follow Rnd 3", "do Rnd 3 again", "work Rnd 1 again": what stands before the round; the words behind it are told. */
const passFollow = (reader: Reader): boolean =>
  reader.attempt(() => {
    const follows = reader.spelled() === 'follow' && ++reader.at > 0
    if (!follows && !reader.skip('do', 'work')) return null
    const at = reader.at
    if (!reader.skipA('round') || reader.number() === null) return null
    const again = reader.skip('again') || reader.skipAll('once', 'more')
    reader.at = at
    return follows || again || null
  }) === true

/** "Complete (the round)", "finish off", "work the rest of the round": before "as for first motif"; passes it. */
const passCompleting = (reader: Reader): boolean =>
  reader.attempt(() => {
    const rest = () => {
      while (reader.skip('the', 'of', 'this')) continue
      const left = reader.skip('rest', 'remainder', 'rem')
      while (reader.skip('the', 'of', 'this')) continue
      reader.skipA('round')
      reader.skip('off')
      return left
    }
    if (COMPLETES.has(reader.spelled())) {
      reader.at++
      rest()
    } else if (!reader.skip('work', 'continue') || !rest()) return null
    return reader.sees('as') || reader.sees('same') || reader.sees('in') || reader.sees('like') ? true : null
  }) === true
const COMPLETES = new Set(['complete', 'completing', 'finish', 'finishing'])

/** "Continue in this way, having 1 more sc between increases", "Work as before, with one more group on each side". */
const readOnAsBefore = (reader: Reader): Pick<RepeatRoundItem, 'from' | 'to' | 'grows'> | null =>
  reader.attempt(() => {
    const on = reader.skip('continue', 'work', 'carry', 'go')
    while (on && reader.skip('on', 'work', 'inc')) continue
    const alike =
      reader.skipAll('as', 'before') ||
      reader.skipAll('as', 'established') ||
      reader.attempt(() => {
        if (!on || !reader.skip('in')) return null
        while (reader.skip('the', 'same', 'this', 'that', 'established')) continue
        return reader.skip('way', 'manner', 'pattern', 'fashion') || null
      }) === true
    const grows = alike && on ? readGrowth(reader) : null
    return grows && { from: 'last' as const, to: 'last' as const, grows }
  })
