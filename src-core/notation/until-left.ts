/** "Until two tr. remain", "until there are 2 sts left", "as far as the last two tr.": how many a repeat leaves. */
import { readNoun } from './nouns'
import type { Reader } from './reader'

const BEFORE = [
  'there',
  'you',
  'have',
  'are',
  'is',
  'only',
  'within',
  'the',
  'just',
  'but',
  'about',
  'reaching',
  'you',
]
const REMAINS =
  /^(remain|remains|remaining|rem|left|unworked|over|reached|are|is|be|at|of|to|go|the|end|until|still|free|round|rnd)$/
const TELLING = /^(remain|remains|remaining|rem|left|unworked|reached|end|go|free)$/

/** Null where nothing is told of what is left; passes it. */
export const readUntilLeft = (reader: Reader): number | null =>
  reader.attempt(() => {
    const leaving = reader.skip('leaving')
    if (!leaving && !reader.skipAll('as', 'far', 'as') && !reader.skip('to', 'until', 'till')) return null
    while (reader.skip(...BEFORE)) continue
    const last = reader.skip('last')
    const left = reader.number() ?? (last ? 1 : null)
    if (left === null || !readNoun(reader)) return null
    const tail = reader.at
    // "Until two tr. remain": the stop of the abbreviation.
    if (reader.sees('.') && TELLING.test(reader.spelled(reader.key(1) === 'are' ? 2 : 1))) reader.at++
    let told = false
    while (reader.peek() && !reader.peek()!.first && REMAINS.test(reader.spelled())) {
      told ||= TELLING.test(reader.spelled())
      reader.at++
    }
    if (!told) reader.at = tail
    // "Until 2 loops remain on hook" tells of a stitch in hand.
    if ((!told && (!last || leaving)) || reader.sees('on')) return null
    return left
  })
