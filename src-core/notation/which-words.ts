/** Which of what is there: "next 5", "each of next 3", "every 3rd", "same", "first", "2nd … from hook". */
import { readNoun, sizeAhead } from './nouns'
import { passPointed } from './own-places'
import type { Reader } from './reader'
import type { Noun, Which } from './tree'
import { endsPlace } from './where'

export interface Draft {
  which: Which
  count: number
  each: boolean
}

/** The next one, where nothing else is said. */
export const NEXT_ONE: Draft = { which: 'next', count: 1, each: false }
export const FIRST_ONE: Draft = { which: 'first', count: 1, each: false }
export const ALL: Draft = { which: 'each', count: 1, each: true }

/** How many are named, where the figure does not belong to the space itself. */
const amountAhead = (reader: Reader): number | null => (sizeAhead(reader) ? null : reader.number())

const amountIn = (reader: Reader): number => amountAhead(reader) ?? 1

/** "In this loop and in every": what is told besides is the place in hand. */
function isBesideThis(reader: Reader): boolean {
  const and = [-2, -3].find((at) => reader.key(at) === 'and')
  return and !== undefined && [-1, -2, -3].some((more) => /^(this|same)$/.test(reader.spelled(and + more)))
}

/** "1 tr in same st, 2 tr in every other st": an increase in the first one, and in all the others. */
function isBesideSame(reader: Reader): boolean {
  const before = Array.from({ length: 10 }, (_, at) => reader.key(at - 10)).join(' ')
  return /\bsame \S+( \S+)? ,?( and)?( then)? \d+ \S+ (in|into) (each|every)$/.test(before)
}

/** "In the stitch after that", "in the space after it": what comes next; passes it. */
export const readNounAfter = (reader: Reader): Noun | null =>
  reader.attempt(() => {
    reader.skip('the')
    const noun = reader.isA('stitch') || reader.isA('space') ? readNoun(reader) : null
    return noun && reader.skip('after') && (reader.skip('that', 'it', 'this') || endsPlace(reader))
      ? noun
      : null
  })

/** "next 5", "each of next 3", "every 3rd", "same", "first", "2nd … from hook". */
export function readWhich(reader: Reader): Draft | null {
  // "In one of the slip stitches".
  if (reader.skipAll('one', 'of')) {
    reader.skip('the', 'these')
    return { which: 'any', count: 1, each: false }
  }
  if (reader.peek(1)?.kind !== 'number' || !reader.sees('an')) reader.skip('the', 'a', 'an')
  if (['first', 'last', 'next'].includes(reader.key(1))) reader.skip('very')
  // "In the one after that".
  if (reader.skipAll('one', 'after')) {
    reader.skip('that', 'it', 'this')
    return NEXT_ONE
  }
  if (reader.skip('each', 'every', 'per')) {
    // "Into each and every sp".
    reader.attempt(() => (reader.skip('and') && reader.skip('each', 'every')) || null)
    // "In each following sp": each of those that are left.
    if (reader.spelled() === 'following') reader.at++
    // "Every one of the remaining sts", "every single st".
    if (reader.sees('one', 'of') || reader.sees('single')) reader.at++
    // "In this loop and in every other loop": in all of them.
    if (reader.sees('other') && (isBesideThis(reader) || isBesideSame(reader)) && reader.skip('other'))
      return { which: 'each', count: 1, each: true }
    if (reader.skip('other', 'alternate')) return { which: 'every', count: 2, each: true }
    const nth = reader.ordinal()
    if (nth !== null) return { which: 'every', count: nth, each: true }
    // "Into every one of the eight sps", "in every single sp".
    reader.attempt(() => (reader.skip('single') && (reader.isA('space') || reader.sees('one'))) || null)
    reader.attempt(() => (reader.skip('one') && reader.sees('of')) || null)
    if (reader.skip('of') && reader.sees('them')) return null
    while (reader.skip('the', 'these', 'those', 'your')) continue
    // "Into each of these work 3 dc": of what was told before.
    if (/^th[eo]se$/.test(reader.spelled(-1)) && (reader.isA('verb') || reader.peek()?.kind === 'mark'))
      return null
    // "in each of the other 5 sps", "in each of the remaining sps".
    if (reader.skip('rem', 'other')) {
      const count = amountAhead(reader)
      return count === null ? { which: 'each', count: 1, each: true } : { which: 'next', count, each: true }
    }
    if (reader.skip('next')) return { which: 'next', count: amountIn(reader), each: true }
    if (reader.skip('last')) return { which: 'last', count: reader.number() ?? 1, each: true }
    if (reader.skip('first')) return { which: 'first', count: reader.number() ?? 1, each: true }
    const count = amountAhead(reader)
    if (count !== null) return (reader.skip('next', 'rem'), { which: 'next', count, each: true })
    return { which: 'each', count: 1, each: true }
  }
  if (reader.skip('next')) return { which: 'next', count: amountIn(reader), each: false }
  // "3 sc over the first chain loop, …, 3 sc over the other chain loop": the one that comes next.
  const others = reader.sees('other') ? [1, 2, 3].find((ahead) => reader.isA('space', ahead)) : undefined
  if (others !== undefined && reader.key(others + 1) !== 'of' && reader.skip('other'))
    return { which: 'next', count: amountIn(reader), each: false }
  // "In the other 9 sts", "in the rest of the sts".
  if (reader.sees('other') && reader.peek(1)?.kind === 'number' && !reader.peek(1)!.hyphen) {
    reader.at++
    return { which: 'next', count: amountIn(reader), each: false }
  }
  if (reader.skipAll('rest', 'of') || reader.skipAll('remainder', 'of')) {
    while (reader.skip('the', 'your', 'those', 'these')) continue
    return { which: 'each', count: 1, each: true }
  }
  // "*In this space 3 dc, …": in each lap the next one.
  const opens = /^[*([]$/.test(reader.key(-2)) && reader.sees('this') && reader.isA('space', 1)
  if (opens && reader.skip('this')) return NEXT_ONE
  const here = reader.sees('place', 'where')
  if (here || reader.skip('same') || passPointed(reader)) return { which: 'same', count: 1, each: false }
  if (reader.skip('first')) return { which: 'first', count: amountIn(reader), each: false }
  const end = reader.sees('end') && (reader.isA('chain', 1) || reader.isA('stitch', 1))
  if (reader.skip('last') || (end && reader.skip('end')))
    return { which: 'last', count: amountIn(reader), each: false }
  if (reader.skip('any')) return { which: 'any', count: 1, each: false }
  if (reader.skip('rem', 'all')) {
    reader.skip('rem')
    const count = reader.number()
    return count === null ? { which: 'each', count: 1, each: true } : { which: 'next', count, each: true }
  }
  const nth = reader.ordinal()
  if (nth === 1) return { which: 'first', count: 1, each: false }
  if (nth !== null) return { which: 'nth', count: nth, each: false }
  const count = amountAhead(reader)
  // "In the 5 remaining sps".
  if (count !== null) return (reader.skip('rem'), { which: 'next', count, each: false })
  return null
}
