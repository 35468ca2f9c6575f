/** Counts of one side, told the other way round: "each side now has 7 dc", "four sides of 7 dc". */
import { readNoun } from './nouns'
import type { Reader } from './reader'
import type { CountEntry } from './tree'

const passSide = (reader: Reader): boolean => /^(sides?|edges?)$/.test(reader.spelled()) && ++reader.at > 0

/** "Each side now has", "four sides of", "on each side there are now"; passes it. */
const passLabel = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('on', 'along')
    if (reader.skip('each', 'every')) {
      if (!passSide(reader)) return null
      while (reader.skip('now', 'should', 'will', 'there', 'are')) continue
      return reader.skipA('tells') || reader.skip('has', 'having') || null
    }
    const several = reader.number()
    if (several === null || several < 3) return null
    return (passSide(reader) && reader.skip('of', 'with')) || null
  }) === true

/** Whether such a count can begin here. */
export const sidesAhead = (reader: Reader): boolean => {
  const at = reader.at
  const found = passLabel(reader)
  reader.at = at
  return found
}

/** The count up to `end`; null where it is another one. */
export const readSides = (reader: Reader, end: number): CountEntry | null => {
  const start = reader.at
  return reader.attempt((): CountEntry | null => {
    if (!passLabel(reader)) return null
    const count = reader.number()
    if (count === null || !readNoun(reader)) return null
    reader.skip('each')
    const span = reader.span(start)
    const noun = { kind: 'own', chain: 0, of: 0, words: 'side' } as const
    return reader.at <= end ? { count, noun, words: reader.words(span), ...span } : null
  })
}
