/** Which phrases of a round go around together, in one sweep. */
import type { GroupItem, Item, Place, PlacePart, PlacedItem, WorkItem } from './tree'
import type { Work } from './work'

export type SweptItem = (WorkItem | GroupItem | PlacedItem) & { readonly place: Place }

/** What of an item goes on around: its last parts, "each st" and "each ch-1 sp"; none where it is no sweep. */
export function sweptParts(item: Item | undefined): readonly PlacePart[] {
  if (item?.type !== 'work' && item?.type !== 'group' && item?.type !== 'placed') return []
  if (!item.place || (item.type === 'group' && (item.times !== null || item.around))) return []
  const { parts } = item.place
  return parts.slice(parts.findLastIndex((part) => part.which !== 'each' || part.noun.kind === 'chain') + 1)
}

/**
 * "sc in each st, 2 sc in each ch-1 sp and (sc, ch 2, sc) in each corner": nobody goes around twice in a round, so it
 * is one sweep with what goes into each.
 */
export function sweepPartners(work: Work, items: readonly Item[], index: number): readonly SweptItem[] {
  const first = items[index]!
  if (work.here || !sweptParts(first).some(({ noun }) => noun.kind === 'stitch')) return []
  const found = [first as SweptItem]
  for (let at = index + 1; at < items.length; at++) {
    const item = items[at] as SweptItem
    const parts = sweptParts(item)
    if (parts.length === 0 || parts.length < item.place.parts.length) break
    const between = work.tree.text.slice(items[at - 1]!.end, item.start)
    const named = parts.every(
      ({ noun: { kind, ...noun } }) =>
        kind === 'space' ||
        kind === 'corner' ||
        kind === 'within' ||
        (kind === 'stitch' && 'name' in noun && noun.name !== null),
    )
    if (/[.;]/.test(between) || !named) break
    found.push(item)
  }
  return found.length > 1 ? found : []
}
