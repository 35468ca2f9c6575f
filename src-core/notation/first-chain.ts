/** "Ch 2, 6 sc in the first chain you made": all of a round in one chain, named from its other end. */
import type { Reading } from './reading'
import type { Item, WorkItem } from './tree'

/** Stitches in one chain, from which on they are a round and no corner (ours). */
const LEAST = 4

/** The first chain made, in which all of a round is worked. */
const isRound = (item: Item | undefined): item is WorkItem => {
  const [part, ...others] = item?.type === 'work' ? (item.place?.parts ?? []) : []
  const single = part?.which === 'first' && part.count === 1 && part.noun.kind === 'chain'
  return single && others.length === 0 && ((item as WorkItem).count ?? 1) >= LEAST
}

/** The items with that chain counted from the hook, as it is named elsewhere. */
export function inFirstChain({ base, history }: Reading, items: readonly Item[]): readonly Item[] {
  if (history.size > 0) return items
  const at = items.findIndex(({ type }) => type === 'work' || type === 'group' || type === 'star')
  const item = items[at]
  if (!isRound(item)) return items
  const chain = items.slice(0, at).findLast(({ type }) => type === 'chain')
  const made = chain?.type === 'chain' ? chain.count : base.kind === 'chain' ? base.chains : 0
  // "Chain 2. Rnd 1: Ch 1, 6 sc in first ch" rises from it.
  const chains = base.kind === 'chain' ? base.chains : made
  if (chains < 2) return items
  const place = item.place!
  const parts = place.parts.map((part) => ({ ...part, which: 'from-hook' as const, count: chains }))
  return items.map((each) => (each === item ? { ...item, place: { ...place, parts } } : each))
}
