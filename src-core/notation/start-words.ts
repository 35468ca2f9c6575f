/** Where a round starts, in words that work nothing: "starting in same place as ss", "beginning with any dc". */
import { readNoun } from './nouns'
import { readPlace } from './places'
import type { Reader } from './reader'
import type { NoteItem } from './tree'

/** Chains behind a comma or colon. */
const chainsAhead = (reader: Reader): boolean =>
  reader.isA('chain', 1) || (reader.peek(1)?.kind === 'number' && reader.isA('chain', 2))

/** "Starting in same place as ss": the next stitch goes where it goes anyway. */
export const readStart = (reader: Reader): NoteItem | null => {
  const start = reader.at
  return reader.attempt(() => {
    if (!reader.skip('starting', 'begin', 'beg')) return null
    // "Starting at a corner: …", "beginning with any dc, …": on the way round it is met as it comes.
    const at = reader.attempt(() => {
      if (!reader.skip('at', 'with', 'from', 'in') || !reader.skip('a', 'an', 'any')) return null
      const space = reader.key(-2) === 'in'
      if (!readNoun(reader) || !/^[:,]$/.test(reader.key())) return null
      // "Start in any ch-2 space: ch 3, …": the round begins there.
      return space && chainsAhead(reader) ? null : true
    })
    if (at) return { type: 'note', effect: null, ...reader.span(start) }
    const which = readPlace(reader)?.parts[0]?.which
    if (which !== 'same' && which !== 'first') return null
    return { type: 'note', effect: null, ...reader.span(start) }
  })
}
