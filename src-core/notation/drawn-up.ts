/** Loops that are drawn up with new yarn, and rings that are drawn together: no steps of a stitch. */
import { readColourName } from './colour-words'
import { readPlace } from './places'
import { joinedIn } from './plain-place'
import type { Reader } from './reader'
import type { ColourItem, NoteItem, Place } from './tree'

const PULLS = /^(pull|pulls|pulling|draw|draws|drawing|bring|tug)$/
const TIGHT = /^(tight|tightly|closed|shut|together|snug|snugly|firmly|in|gently|to)$/
/** What a ring is drawn together by. */
const RING = /^(loops?|rings?|circles?|tails?|ends?|yarn|thread|wool|centre|center|hole|it)$/

const readAny = (reader: Reader): Place | null => {
  const place = joinedIn(reader, readPlace(reader))
  return place?.parts[0]?.which === 'any' ? place : null
}

/** "Draw up a long loop in the first st, puff in same st" where a round begins. */
const readFirst = (reader: Reader): Place | null =>
  reader.attempt(() => {
    const place = readPlace(reader)
    const [part, ...others] = place?.parts ?? []
    return part?.which === 'first' && part.count === 1 && others.length === 0 ? place : null
  })

/** "A loop (of B)", "up a loop": passes it; the colour of the loop, '' where none is told. */
const readLoopOfYarn = (reader: Reader): string | null =>
  reader.attempt(() => {
    reader.skip('up')
    if (!reader.skip('a', 'the', 'your')) return null
    reader.skip('long', 'tall')
    if (!reader.skip('lp')) return null
    reader.skip('up')
    const colour = reader.attempt(() =>
      reader.skip('of', 'with', 'using', 'in') ? readColourName(reader, true) || null : null,
    )
    return colour ?? ''
  })

/** "Pull up a loop in any dc", "insert hook in any ch-2 sp and draw up a loop of B": new yarn is joined there. */
function readPulledUp(reader: Reader): ColourItem | null {
  const start = reader.at
  const before = reader.tokens[start - 1]
  const opens = before === undefined || reader.peek()?.first || before.key === ':'
  return reader.attempt((): ColourItem | null => {
    let place: Place | null = null
    if (reader.skip('insert', 'put')) {
      while (reader.skip('the', 'your')) continue
      if (!reader.skip('hook')) return null
      place = readAny(reader)
      if (!place) return null
      while (reader.skip(',', 'and', 'then')) continue
    }
    if (!PULLS.test(reader.spelled())) return null
    reader.at++
    const colour = readLoopOfYarn(reader)
    if (colour === null) return null
    place ??= (opens ? readFirst(reader) : null) ?? readAny(reader)
    if (!place) return null
    return { type: 'colour', colour: colour || null, place, stitch: null, ...reader.span(start) }
  })
}

/** "Pull the loop tight (and ss into the top of the 3 ch)", "draw the ring closed": passes it. */
function readDrawnTight(reader: Reader): NoteItem | null {
  const start = reader.at
  return reader.attempt((): NoteItem | null => {
    if (!PULLS.test(reader.spelled())) return null
    reader.at++
    while (reader.skip('the', 'your', 'on', 'magic', 'short', 'beg', 'gently', 'up')) continue
    if (!RING.test(reader.spelled())) return null
    reader.at++
    if (!TIGHT.test(reader.spelled())) return null
    while (reader.peek() && !/^([,;.:!()[\]*–—]|and|then)$/.test(reader.key())) reader.at++
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}

export const readDrawnUp = (reader: Reader): ColourItem | NoteItem | null =>
  readPulledUp(reader) ?? readDrawnTight(reader)
