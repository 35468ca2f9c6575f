/** The last repeat goes no further than `**`, in whatever words: "stopping at ** the last time", "end the 4th rep at **". */
import type { Reader } from './reader'

const STOPS =
  /^(stop|stops|stopping|end|ends|ending|finish|finishes|finishing|break|breaking|cut|cutting|leave|leaving|cease|ceasing|close|closing|omit|omits|omitting)$/
const LAST = /^(last|final)$/
/** What else such words hold. */
const SMALL =
  /^(,|the|a|on|at|in|for|of|off|out|very|only|just|as|far|up|to|until|till|from|after|all|everything|what|but|and|then|with|you|work|working|go|going|reach|time|times|rep|repeat|repetition|lap|side|one|section|part|which|is)$/
/** Words of the longest way to say it (ours). */
const LONGEST = 12

/** "(at **) on the last rep", "the fourth time", "only", "to the end": behind the mark; passes it. */
const passWhen = (reader: Reader): void => {
  reader.attempt(() => (reader.skip('to') && (reader.skip('the'), reader.skip('end')) ? true : null))
  reader.attempt(() => {
    const start = reader.at
    let last = false
    for (; reader.peek() && reader.at - start < LONGEST; reader.at++) {
      if (LAST.test(reader.spelled()) || reader.isA('ordinal') || reader.peek()!.kind === 'ordinal')
        last = true
      else if (!SMALL.test(reader.spelled()) || reader.sees(',') || reader.sees('and')) break
    }
    return last || null
  })
  reader.skip('only', 'instead')
}

/** Whether such words stand at the cursor; passes them. */
export const passStopAtDouble = (reader: Reader): boolean =>
  reader.attempt(() => {
    while (reader.skip(',', ';', '.', '(', '-', '–', '—')) continue
    const bracketed = reader.key(-1) === '('
    let stops = false
    for (let words = 0; words < LONGEST && !reader.sees('**'); words++, reader.at++) {
      const told = reader.spelled()
      const last = LAST.test(told) || reader.isA('ordinal') || reader.peek()?.kind === 'ordinal'
      if (last || STOPS.test(told)) stops = true
      else if (!SMALL.test(told)) return null
    }
    // "Working to ** only the last time": when it stops may be told behind the mark.
    if (!reader.skip('**')) return null
    const { at } = reader
    passWhen(reader)
    if (!stops && reader.at === at) return null
    if (bracketed) reader.skip(')')
    return true
  }) === true

/** "(Work from * to **) after every corner", "between the corners", "along each side": all around, and the last one ends there. */
export const passAtEach = (reader: Reader): boolean =>
  reader.attempt(() => {
    const between = reader.skip('between')
    if (!between && !reader.skip('after', 'on', 'along', 'for', 'at', 'across')) return null
    while (reader.skip('the', 'of', 'every', 'each', 'all', 'rem', 'other', 'corner')) continue
    const each = /^(every|each|all|other|corner|remaining)$/.test(reader.spelled(-1))
    const named = reader.skip('corner', 'sides', 'side', 'edges', 'edge', 'group') || reader.skipA('space')
    return (named || reader.key(-1) === 'corner') && (each || between) ? true : null
  }) === true

/** "(On) the last repeat", "the last time": passes it. */
export const passLastLap = (reader: Reader): boolean =>
  reader.attempt(() => {
    reader.skip('on', 'in', 'at', 'for')
    reader.skip('the')
    return reader.skip('last') && reader.skip('rep', 'times', 'one', 'lap') ? true : null
  }) === true
