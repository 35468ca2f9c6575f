/** The last repeat goes as far as something of it that is named: "ending last rep after the popcorn", "stop before the corner". */
import { readChains, readNoun } from './nouns'
import { passLastLap } from './stop-at-double'
import type { Reader } from './reader'
import { NO_NAME } from './stitch-name'
import type { StitchName } from './stitch-name'
import type { Span } from './tokens'
import type { Item, Noun, Place, RepeatEnding } from './tree'
import { readStitch } from './vocabulary'

const STOPS = /^(stop|stops|stopping|end|ending|finish|finishing|break|breaking)$/

/** A place where that noun comes next. */
const nextOf = (noun: Noun, span: Span): Place => ({
  parts: [
    {
      ...{ which: 'next', count: 1, each: false, noun, extent: null, loop: null, around: false },
      ...{ round: null, unworked: false, asBeginning: false, nounSpan: span },
      ...span,
    },
  ],
  over: false,
  ...span,
})

/** What is named behind "after the", "before the": a chain, a stitch, a space or the corner. */
function readNamed(reader: Reader): Item | null {
  const start = reader.at
  while (reader.skip('the', 'that', 'last', 'its')) continue
  const work = (stitch: StitchName | null, noun: Noun | null): Item => {
    const span = reader.span(start)
    return {
      ...{ type: 'work', count: null, stitch: stitch ?? { ...NO_NAME, ...span } },
      ...{ place: noun && nextOf(noun, span), ...span },
    }
  }
  const chained = reader.attempt(() => {
    const count = readChains(reader)
    return count !== null && !reader.isA('space') ? count : null
  })
  if (chained !== null) return { type: 'chain', count: chained, ...reader.span(start) }
  const noun = reader.attempt(() => {
    const found = readNoun(reader)
    return found?.kind === 'space' || found?.kind === 'corner' ? found : null
  })
  if (noun) return work(null, noun)
  const stitch = readStitch(reader)
  return stitch && work(stitch, null)
}

/** Such words at the cursor; passes them. */
export const readStopBehind = (reader: Reader): RepeatEnding | null => {
  const start = reader.at
  return reader.attempt((): RepeatEnding | null => {
    while (reader.skip(',', ';', '(', 'and', 'but', '-', '–', '—')) continue
    const bracketed = reader.key(-1) === '('
    const early = passLastLap(reader)
    if (!STOPS.test(reader.spelled())) return null
    reader.at++
    const lap = passLastLap(reader) || early
    while (reader.skip('just', 'right', 'off')) continue
    const mode = reader.skip('after', 'behind') ? 'after' : reader.skip('before') ? 'before' : null
    if (!mode) return null
    const named = readNamed(reader)
    if (!named || !(passLastLap(reader) || lap) || (bracketed && !reader.skip(')'))) return null
    return { mode, items: [named], ...reader.span(start) }
  })
}
