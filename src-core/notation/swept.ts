/** Which phrases of a round go around together, in one sweep. */
import { TRAVELLED, cornerPlaces } from './source'
import type { GroupItem, Item, Place, PlacePart, PlacedItem, WorkItem } from './tree'
import { baseSource } from './work'
import type { Work } from './work'

export type SweptItem = (WorkItem | GroupItem | PlacedItem) & { readonly place: Place }

/** What of an item goes on around: its last parts, "each st" and "each ch-1 sp"; none where it is no sweep. */
export function sweptParts(item: Item | undefined): readonly PlacePart[] {
  if (item?.type !== 'work' && item?.type !== 'group' && item?.type !== 'placed') return []
  if (!item.place || (item.type === 'group' && (item.times !== null || item.around))) return []
  const { parts } = item.place
  return parts.slice(parts.findLastIndex((part) => part.which !== 'each' || part.noun.kind === 'chain') + 1)
}

/** "…, with 3 dc in each of the other 3 corner sps": as many as are left, which is each of them. */
function allThatAreLeft(work: Work, item: Item | undefined): Item | undefined {
  const [part, more] = item && 'place' in item ? (item.place?.parts ?? []) : []
  if (!part || more || part.which !== 'next' || !part.each || part.count < 2) return item
  if (part.noun.kind !== 'corner' && !(part.noun.kind === 'space' && part.noun.corner)) return item
  const base = baseSource(work)
  const left = base ? [...cornerPlaces(base)].filter((index) => base.used[index]! <= TRAVELLED) : []
  if (left.length !== part.count) return item
  const { place } = item as SweptItem
  return { ...item, place: { ...place, parts: [{ ...part, which: 'each', count: 1 }] } } as SweptItem
}

/** What only says how to work, or what counts, stands between the parts of a sweep. */
const isAside = (item: Item | undefined): boolean =>
  item?.type === 'statement' || (item?.type === 'note' && item.effect === null && item.unread === undefined)

/**
 * "sc in each st, 2 sc in each ch-1 sp and (sc, ch 2, sc) in each corner": nobody goes around twice in a round, so it
 * is one sweep with what goes into each. `to`: where it ends among the items.
 */
export function sweepPartners(
  work: Work,
  items: readonly Item[],
  index: number,
): { readonly partners: readonly SweptItem[]; readonly to: number } {
  const none = { partners: [], to: index }
  const first = items[index]!
  if (work.here || !sweptParts(first).some(({ noun }) => noun.kind === 'stitch')) return none
  const found = [first as SweptItem]
  let to = index + 1
  const isRound = sweptParts(first).some(({ extent }) => extent?.to === 'end')
  for (let at = index + 1; at < items.length; at++) {
    if (isAside(items[at])) continue
    const item = (isRound ? allThatAreLeft(work, items[at]) : items[at]) as SweptItem
    const parts = sweptParts(item)
    if (parts.length === 0 || parts.length < item.place.parts.length) break
    const between = work.tree.text.slice(items[to - 1]!.end, item.start)
    const named = parts.every(
      ({ noun: { kind, ...noun } }) =>
        kind === 'space' ||
        kind === 'corner' ||
        kind === 'within' ||
        (kind === 'stitch' && 'name' in noun && noun.name !== null),
    )
    if (/[.;]/.test(between) || !named) break
    found.push(item)
    to = at + 1
  }
  return found.length > 1 ? { partners: found, to } : none
}
