/** "Until …" that says no more than all around. */
import type { Reader } from './reader'

/** "you've been all the way round": passes it. */
const passGoneRound = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip("you've", 'you’ve', 'you', 'have', 've', 'are')) continue
    if (!reader.skip('been', 'gone', 'worked', 'come', 'all')) return null
    if (reader.skip('all')) reader.skip('the')
    while (reader.skip('the', 'way', 'full')) continue
    return reader.skip('round', 'around') ? true : null
  }) === true

/** "until you're back at the beginning", "until you get back to where you started", "until the rnd is complete". */
export const passUntilDone = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('until', 'till')) return null
    // "until you've been all the way round".
    if (passGoneRound(reader)) return true
    for (let words = 0; words < LONGEST_UNTIL && reader.peek(); words++, reader.at++) {
      if (reader.skip('beg', 'begin', 'started', 'began', 'begun', 'made', 'done', 'finish', 'finished'))
        return (
          reader.skipAll('of', 'the', 'round') ||
          reader.skipAll('of', 'round') ||
          !tellsNumber(reader) ||
          null
        )
      if (reader.peek()!.kind !== 'word' || reader.isA('stitch') || reader.isA('space')) return null
    }
    return null
  }) === true
const LONGEST_UNTIL = 9
const tellsNumber = (reader: Reader): boolean => reader.peek()?.kind === 'number' || reader.isA('number')

/** "until every space has one", "until all loops are filled": all around; passes it up to its end. */
export const passUntilEach = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!reader.skip('until', 'till') || !reader.skip('each', 'every', 'all')) return null
    for (let words = 0; words < LONGEST_UNTIL && reader.peek(); words++, reader.at++)
      if (/^[.,;:()\]–—-]$/.test(reader.key()) || reader.peek()!.first) return words > 1 || null
    return !reader.peek() || null
  }) === true
