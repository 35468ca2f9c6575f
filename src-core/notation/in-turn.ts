/** Counts of several rounds told as one: "(36, 48 dc)", "28/44/60 tr", "28 tr after Rnd 2, 44 after Rnd 3". */
import type { Reader } from './reader'

const BETWEEN = [',', '/', 'and', '&', '→']

/** "16 [20, 24] sc": those of the rounds behind the first one stand in a bracket. */
const readBracketed = (reader: Reader): number[] | null =>
  reader.attempt(() => {
    if (!reader.skip('[', '(')) return null
    const counts: number[] = []
    do {
      const count = reader.number()
      if (count === null) return null
      counts.push(count)
    } while (reader.skip(...BETWEEN))
    return reader.skip(']', ')') ? counts : null
  })

/** Behind a number the others of a list before its noun; all of them. */
export function readInTurn(reader: Reader, end: number, first: number): number[] {
  const counts = [first, ...(readBracketed(reader) ?? [])]
  while (reader.at < end) {
    const more = reader.attempt(() => {
      if (!reader.skip(...BETWEEN)) return null
      while (reader.skip('then', 'and', 'finally')) continue
      return reader.number()
    })
    if (more === null) break
    counts.push(more)
  }
  return counts
}

/** "Rnd 4:" before a count or "after Rnd 4" behind it, where several rounds are written as one; passes it. */
export const readCountedRound = (reader: Reader, end: number): number | null =>
  reader.attempt(() => {
    while (reader.skip('after', 'for', 'in', 'on', 'at', 'end', 'of', 'the')) continue
    // "In the fourth round", "in the fourth".
    const nth = reader.ordinal()
    const ends = reader.at >= end || /^(,|and|&)$/.test(reader.key())
    if (!reader.skipA('round') && (nth === null || !ends)) return null
    const number = nth ?? reader.number()
    reader.skip(':', '=')
    return reader.at <= end ? number : null
  })

/** "24 tr, in twelve pairs", "36 dc, in 12 groups of 3": how they stand. */
const passGrouped = (reader: Reader, end: number): boolean =>
  reader.attempt(() => {
    if (!reader.skip('in') || reader.number() === null || !reader.skipA('group')) return null
    if (reader.skip('of')) reader.number()
    return reader.at === end || null
  }) === true

/** "(61 sc) and the loop", "plus the stem": what is named behind the counts without one; passes it. */
export const passUncounted = (reader: Reader, end: number): boolean =>
  passGrouped(reader, end) ||
  reader.attempt(() => {
    if (!reader.skip('the', 'your', 'its')) return null
    const start = reader.at
    while (reader.at < end) {
      if (reader.peek()!.kind !== 'word' || reader.isA('number') || reader.at - start > MOST_WORDS)
        return null
      reader.at++
    }
    return reader.at > start || null
  }) === true
const MOST_WORDS = 4
