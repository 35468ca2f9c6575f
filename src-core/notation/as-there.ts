/** "As before", "as in Rnd 2": what is told by an earlier round. */
import { readRound } from './nouns'
import type { Reader } from './reader'

const BEFORE = ['before', 'usual', 'established', 'always', 'set', 'described', 'previously']

/** "As before", "the same as last round", "like Rnd 2", "in the same way": passes it. */
export const passAsThere = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('in', 'exactly')
    reader.skip('the')
    const same = reader.skip('same')
    if (same && reader.skip('way', 'manner', 'fashion') && !reader.sees('as')) return true
    if (!reader.skip('as', 'like')) return same && /^[,;.:)]?$/.test(reader.key()) ? true : null
    if (reader.skip(...BEFORE)) return true
    while (reader.skip('for', 'in', 'on', 'of', 'the', 'those', 'corner', 'you', 'did', 'last', 'prev'))
      continue
    // "As in 3rd rnd".
    const nth = reader.ordinal() !== null || reader.skip('first')
    if (!reader.skipA('round') && (nth || !reader.skip('r'))) return null
    if (!nth) reader.number()
    return true
  }) === true

/** "Round first tr (the 6 ch) of 1st round": what stitch that is, in a bracket before its round; passes it. */
export function passAsideBefore(reader: Reader): void {
  reader.attempt(() => {
    if (!reader.skip('(')) return null
    for (let words = 0; words < LONGEST_ASIDE && !reader.sees(')'); words++) reader.at++
    const { at } = reader
    const told = reader.skip(')') && reader.sees('of') && readRound(reader) !== null
    reader.at = at + 1
    return told || null
  })
}

const LONGEST_ASIDE = 6
