/** "(1 dc, 3 tr, 1 dc) into same sp, then the same into each sp to end": the group made last, where it goes next. */
import { readPlace } from './places'
import type { Reader } from './reader'
import type { Item } from './tree'

/** Words that may stand before it, at most (ours). */
const MOST_BEFORE = 6

/** Puts it there and passes the words; false for anything else. */
export const passTheSame = (reader: Reader, items: Item[]): boolean => {
  const last = items.at(-1)
  if (last?.type !== 'group' || !last.place || last.times !== null) return false
  const passed = reader.attempt(() => {
    const start = reader.at
    const leads = () => reader.skip(',', ';', 'and', 'then', 'now', 'work', 'rep', 'make')
    while (reader.at - start < MOST_BEFORE && leads()) continue
    reader.skip('the', 'exactly')
    if (!reader.skip('same')) return null
    reader.skip('again', 'group')
    const place = reader.isA('into') ? readPlace(reader) : null
    const [part, ...others] = place?.parts ?? []
    if (!part || others.length > 0 || !['space', 'stitch', 'corner'].includes(part.noun.kind)) return null
    items.push({ ...last, place, ...reader.span(start) })
    return true
  })
  return passed === true
}
