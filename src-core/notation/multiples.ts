/** "Multiple of 6 sts + 1, plus 1 ch for the base": over how many stitches a pattern is worked; none of them are made. */
import { readGrowsOn } from './grows-on'
import type { Reader } from './reader'
import type { Item, NoteItem } from './tree'

const NAMES = /^(multiples?|divisible)$/
/** Words before it, at most. */
const MOST = 7

/** Whether a word says over how many stitches a pattern goes. */
export const isMultiple = (key: string): boolean => NAMES.test(key)

/** A sentence about the pattern as a whole: over how many stitches it goes, which rows form it, how it grows on. */
export const readOfPattern = (reader: Reader): Item | null => readMultiple(reader) ?? readGrowsOn(reader)

/** Passes the sentence, where it begins at the cursor and makes no chain itself ("ch a multiple of 6"). */
const readMultiple = (reader: Reader): Item | null => {
  const start = reader.at
  const chained = readChained(reader) ?? readFormsPattern(reader)
  if (chained) return chained
  const before = reader.tokens[start - 1]
  if (before && !reader.peek()?.first && !/^[.!:)]$/.test(before.key)) return null
  let ahead = 0
  while (ahead < MOST && reader.peek(ahead)?.kind === 'word' && !isMultiple(reader.spelled(ahead))) ahead++
  if (!isMultiple(reader.spelled(ahead)) || (reader.isA('chain') && ahead > 0)) return null
  while (reader.peek() && !reader.sees('.') && !(reader.at > start && reader.peek()!.first)) reader.at++
  return { type: 'note', effect: null, ...reader.span(start) }
}

/** What says that a number is the one that was worked. */
const SAMPLE = /^(sample|swatch|example|shown|pictured|here|photo|model|ours|mine)s?$/

/**
 * "Chain a multiple of 6 plus 2 (sample: 38)", "make a chain of any multiple of 6 sts + 2, 38 ch for the sample": the
 * chain where the sentence tells one; else it only says over how many the pattern goes.
 */
const readChained = (reader: Reader): Item | null =>
  reader.attempt(() => {
    const start = reader.at
    if (start > 0 && !reader.peek()?.first && !/^[.!:;,)]$/.test(reader.key(-1))) return null
    if (reader.skip('make', 'work', 'beg', 'begin')) reader.skip('with')
    reader.skip('a')
    if (!reader.skipA('chain')) return null
    reader.skip('of')
    reader.skip('a', 'any')
    if (!isMultiple(reader.spelled())) return null
    let count = 0
    let isSample = false
    let behind = false
    while (reader.peek() && !reader.sees('.') && !reader.peek()!.first) {
      const word = reader.spelled()
      isSample ||= SAMPLE.test(word)
      // The number of the sample stands behind those of the multiple, apart from them.
      behind ||= /^[,(:;—–]$/.test(reader.key())
      const { kind, value } = reader.peek()!
      if (behind && (kind === 'number' || kind === 'chains')) count = value
      reader.at++
    }
    const span = reader.span(start)
    return isSample && count > 0 ? { type: 'chain', count, ...span } : { type: 'note', effect: null, ...span }
  })

/** "Rows 2-5 form the pattern", "the last 2 rows set the patt": nothing is worked by it. */
const readFormsPattern = (reader: Reader): NoteItem | null =>
  reader.attempt(() => {
    const start = reader.at
    if (start > 0 && !reader.peek()?.first && !/^[.!)\]]$/.test(reader.key(-1))) return null
    for (let words = 0; words < MOST && !FORMS.test(reader.spelled()); words++, reader.at++)
      if (!reader.isA('round') && !/^(the|last|these|and|to|[-–&,]|\d+)$/.test(reader.key())) return null
    const rows = reader.tokens.slice(start, reader.at).some(({ kinds }) => kinds.has('round'))
    if (!rows || !FORMS.test(reader.spelled())) return null
    reader.at++
    while (reader.skip('up', 'the', 'a', 'one', 'st')) continue
    if (!/^(patt(ern)?|repeat|rep)$/.test(reader.spelled())) return null
    reader.at++
    while (reader.skip('rep')) continue
    return { type: 'note', effect: null, ...reader.span(start) }
  })
const FORMS = /^(forms?|sets?|establish(es)?|makes?|is|are|create|creates)$/
