/** "3 tr in next space, 3 htr in the next", "… in each of the other 11": behind a space those may be spaces as well. */
import type { Item, Noun, Place } from './tree'

const SPACE: Noun = { kind: 'space', chains: null, corner: false }
const BARE = /\bnext$/i
const OTHERS = /\beach of (the )?(other|rem(aining)?) (\d+|[a-z]+)$/i

/** The items of a round with each bare "next" or "other 11" behind a space meaning a space; null where there is none. */
export function nextSpaces(items: readonly Item[], text: string): readonly Item[] | null {
  let behindSpace = false
  let found = false
  const inPlace = (place: Place): Place => {
    const [part] = place.parts
    if (!part || place.parts.length > 1) return place
    const { noun } = part
    const words = text.slice(part.start, part.end).trim()
    const unnamed = noun.kind === 'stitch' && noun.name === null && part.which === 'next'
    if (unnamed && behindSpace && (part.count === 1 ? BARE : OTHERS).test(words)) {
      found = true
      return { ...place, parts: [{ ...part, noun: SPACE }] }
    }
    behindSpace = noun.kind === 'space' || noun.kind === 'corner'
    return place
  }
  const one = (item: Item): Item => {
    const placed = 'place' in item && item.place ? { ...item, place: inPlace(item.place) } : item
    return 'items' in placed ? { ...placed, items: placed.items.map(one) } : placed
  }
  const after = items.map(one)
  return found ? after : null
}
