/** What the entries of a list of counts are parted by, and what they name in words of the text's own. */
import { readNoun } from './nouns'
import type { Reader } from './reader'
import { DOING } from './told-counts'
import type { Noun } from './tree'

export const ENTRY_SEPARATORS = new Set(', and & + ; with plus - – — = | · •'.split(' '))

/** "(16 trebles with 16) little (windows)", "(3) small (petals and 2 big ones)": passes it. */
export function passSmall(reader: Reader): boolean {
  const { at } = reader
  while (SMALL.has(reader.key()) && reader.peek(1)?.kind === 'word') reader.at++
  return reader.at > at
}
const SMALL = new Set(['little', 'small', 'tiny', 'big', 'neat', 'pretty'])

/** What follows a number in a list of counts that names it in words of its own: "4 lacy corner ch-2 sps". */
export function readLooseNoun(reader: Reader, end: number): Noun | null {
  for (let words = 0; words <= 5; words++) {
    if (reader.at >= end || ENTRY_SEPARATORS.has(reader.key()))
      return words > 0 ? { kind: 'own', chain: 0, of: 0, words: reader.spelled(-1) } : null
    if (reader.seesAny(DOING) || (reader.peek()!.kind !== 'word' && reader.peek()!.kind !== 'chains'))
      return null
    const noun = words > 0 ? reader.attempt(() => readNoun(reader)) : null
    if (noun && reader.at <= end) return noun
    reader.at++
  }
  return null
}
