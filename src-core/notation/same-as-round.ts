/** A round that is another one over again, in loose words: "Just the same as Row 2", "one more row the same", "same again". */
import type { Reader } from './reader'

const ADVERBS = ['just', 'exactly', 'simply', 'also', 'again', 'now', 'once', 'more', 'precisely']
/** A whole sentence, or what stands right behind the heading. */
const opens = (reader: Reader): boolean => {
  const before = reader.tokens[reader.at - 1]
  return before === undefined || reader.peek()?.first === true || /^[.:)\]–—-]$/.test(before.key)
}
const passAdverbs = (reader: Reader): void => {
  while (reader.skip(...ADVERBS)) continue
}

/** "This row is", "work another row", "make one more", "do", "a": what stands before the likeness; passes it. */
function passLead(reader: Reader): void {
  passAdverbs(reader)
  reader.attempt(() => {
    reader.skip('this', 'it', 'the', 'these')
    const named = reader.skipA('round') || reader.key(-1) === 'it' || reader.key(-1) === 'this'
    return named && reader.skip('is', 'are') ? true : null
  })
  reader.skip('we', 'you', 'i')
  reader.skip('work', 'worked', 'make', 'do', 'crochet', 'knit')
  reader.attempt(() => {
    const one = reader.skip('another', 'a', 'one', '1', 'this')
    reader.skip('more')
    return one && reader.skipA('round') ? true : null
  })
  passAdverbs(reader)
}

/** "(Just) the same as", "exactly like", "a repeat of", "identical to", "what you did in": before the name of a round; passes it. */
export const passLikeRound = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!opens(reader)) return null
    passLead(reader)
    reader.skip('the', 'a', 'an')
    const like =
      reader.attempt(() => (reader.skip('same') && reader.skip('as', 'like')) || null) ??
      reader.attempt(() => ((reader.skip('rep') || skipWord(reader, 'copy')) && reader.skip('of')) || null) ??
      reader.attempt(() => (skipWord(reader, 'identical') && reader.skip('to', 'with')) || null) ??
      reader.attempt(
        () => (skipWord(reader, 'what') && reader.skip('you', 'we') && passDid(reader)) || null,
      ) ??
      (reader.skip('like', 'as') || null)
    if (!like) return null
    while (reader.skip('for', 'in', 'on', 'with')) continue
    const { at } = reader
    reader.skip('the')
    const named =
      reader.isA('round') ||
      ((reader.isA('ordinal') || reader.peek()?.kind === 'ordinal') && reader.isA('round', 1))
    const last =
      (reader.sees('last') || reader.sees('prev') || reader.sees('first')) && reader.isA('round', 1)
    reader.at = at
    return named || last || null
  }) === true

const skipWord = (reader: Reader, word: string): boolean => reader.spelled() === word && ++reader.at > 0
const passDid = (reader: Reader): boolean =>
  /^(did|do|worked|made)$/.test(reader.spelled()) && ++reader.at > 0

/** "Same again", "the same once more", "one more row the same", "ditto", "do the same": the last round, for a whole sentence; passes it. */
export const passSameAgain = (reader: Reader): boolean =>
  reader.attempt(() => {
    if (!opens(reader)) return null
    const { at } = reader
    const ditto = skipWord(reader, 'ditto')
    if (!ditto) {
      passLead(reader)
      while (reader.skip('the', 'in')) continue
      if (!reader.skip('same') && !(reader.key(-1) === 'same')) return null
      while (reader.skip('way', 'again', 'once', 'more', 'as', 'before', 'over', 'all')) continue
    }
    const whole = !reader.peek() || reader.peek()!.first || /^[.;([=!–—]$/.test(reader.key())
    return whole && reader.at > at + Number(!ditto) ? true : null
  }) === true
