/** What is told right behind the name of a stitch: how often it goes into its place, of how many chains it is. */
import type { Reader } from './reader'
import type { Place } from './tree'
import { readStitch } from './vocabulary'

/** "Sc twice in each st", "dc 3 times in next sp": how many go into one place; passes it. */
export const timesInPlace = (reader: Reader): number | null =>
  reader.attempt(() => {
    const worded = reader.valueOf('how-often')
    if (worded !== null) reader.at++
    const count = worded ?? reader.number()
    if (worded === null && !reader.skip('times')) return null
    return reader.sees('in') || reader.sees('into') ? count : null
  })

/** "1 tr in each of next 5 dtr drawn off together"; passes it. */
export const passDrawn = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('all')
    if (!/^(drawn|worked|crocheted|finished|closed)$/.test(reader.spelled())) return null
    reader.at++
    reader.skip('off')
    return reader.skip('tog') || null
  }) === true

/** "(A picot) of 3 ch": passes it. */
export function passOfChains(reader: Reader): void {
  reader.attempt(() => {
    if (!reader.skip('of', 'with', 'from')) return null
    if (reader.peek()?.kind === 'chains') return ++reader.at > 0
    const before = reader.number()
    return reader.skipA('chain') && (before ?? reader.number()) !== null ? true : null
  })
}

/** "(change to B) on last yo", "in the last pull through": where a colour changes is no place; passes it. */
export const passLastStep = (reader: Reader): void => {
  reader.attempt(() => {
    if (!reader.skip('on', 'in', 'at', 'with', 'during')) return null
    reader.skip('the')
    reader.skip('very')
    if (!reader.skip('last')) return null
    // "Changing to B in last st": in its last step.
    if (!(reader.skipA('step') || reader.skip('step', 'lp') || reader.skipA('stitch') || readStitch(reader)))
      return null
    while (reader.skip('through', 'of', 'the') || reader.skipA('stitch') || readStitch(reader)) continue
    return true
  })
}

/** The number after a stitch ("dc 5"), unless it tells how often ("dc 5 times") or begins the next phrase. */
export function countAfter(reader: Reader): number | null {
  return reader.attempt(() => {
    if (reader.peek()?.kind !== 'number' || reader.peek()!.hyphen) return null
    const count = reader.number()
    if (['times', 'more', 'x', 'tog'].includes(reader.key())) return null
    return count
  })
}

/** All places of a stitch that is drawn off over them. */
export const overAll = (place: Place): Place => ({
  ...place,
  over: true,
  parts: place.parts.map((part) => ({ ...part, each: false })),
})
