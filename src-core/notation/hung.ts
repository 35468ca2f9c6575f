/** What hangs on a motif, told in a sentence behind its last round: "For the stalk 7 ch, …", "To hang, ch 40, …". */
import { namesAccessory } from './accessories'
import type { Reader } from './reader'
import { makesUp } from './sections'
import { isWorked } from './count-sentences'
import type { Item, NoteItem } from './tree'

const MOST_NOTES = 6
const LONGEST_NAME = 4

/** "For the stalk", "for a hanging loop": passes it. */
const passFor = (reader: Reader): boolean =>
  reader.attempt(() => {
    const start = reader.at
    if (!reader.skip('for')) return null
    for (let words = 0; words < LONGEST_NAME && reader.peek()?.kind === 'word'; words++) {
      reader.at++
      if (namesAccessory(reader.words(reader.span(start)))) return true
    }
    return null
  }) === true

/** "To hang", "to string them up"; passes the first two words. */
const passTo = (reader: Reader): boolean =>
  reader.attempt(() => (reader.skip('to') && makesUp(reader.spelled()) ? ++reader.at > 0 || null : null)) ===
  true

/** Passes such a sentence where `items` have come to the end of a round; null where it is none. */
export function passHung(reader: Reader, items: readonly Item[]): NoteItem | null {
  const before = reader.tokens[reader.at - 1]
  if (!before || (!reader.peek()?.first && !/^[.!?)\]]$/.test(before.key))) return null
  if (!reader.sees('for') && !reader.sees('to')) return null
  if (!isWorked(items.filter(({ type }) => type !== 'count').slice(-MOST_NOTES))) return null
  const start = reader.at
  if (!passFor(reader) && !passTo(reader)) return null
  while (reader.peek() && !reader.sees('.') && !reader.peek()!.paragraph) reader.at++
  return { type: 'note', effect: null, ...reader.span(start) }
}
