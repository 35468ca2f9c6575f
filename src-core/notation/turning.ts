/** Rows that are turned: the chain that brings the hook up, made before or behind the turn, and its top in the next row. */
import type { PlaceTest, Source } from './source'
import { isSlip } from './stitch-name'
import type { ChainItem, Item } from './tree'
import { baseSource } from './work'
import type { Work } from './work'
import type { LeftPlace } from './worked'

/** Whether something is worked in the top of the turning chain. */
const worksEdge = (items: readonly Item[]): boolean =>
  items.some(
    (item) =>
      ('items' in item && worksEdge(item.items)) ||
      (item.type === 'work' &&
        !isSlip(item.stitch) &&
        (item.place?.parts.some(({ noun, which }) => noun.kind === 'own' && which !== 'same') ?? false)),
  )

/** "dc in each dc across, 2 dc in top of turning ch": 1 where a sweep leaves the turning chain to what follows, else 0. */
export function keptEdge(work: Work, source: Source, kind: LeftPlace['kind'], test: PlaceTest): number {
  if (source !== baseSource(work)) return 0
  const edge = source.edge()
  if (edge < 0 || source.places[edge]!.kind !== kind || !test(source.places[edge]!, edge)) return 0
  return worksEdge(work.node.items) ? 1 : 0
}

/** What ends a row without making anything. */
const isAside = ({ type }: Item): boolean => type === 'count' || type === 'statement'
const isTurn = (item: Item | undefined): boolean => item?.type === 'note' && item.effect === 'turn'

/**
 * "…, ch 3, turn" and "… Turn, ch 3": the chain belongs to the next row. Takes it out of these items, and puts the one
 * that the row before ended with in front of them, unless they begin with a chain of their own.
 */
export function overTurn(
  items: readonly Item[],
  carried: ChainItem | null,
): { readonly items: readonly Item[]; readonly carried: ChainItem | null } {
  const ends = items.flatMap((item, at) => (isAside(item) ? [] : [at])).slice(-2)
  const pair = ends.map((at) => items[at]!)
  const chain = pair.find((item) => item.type === 'chain')
  const left = chain && pair.some(isTurn) && items.length > 2 ? chain : null
  const rest = left ? items.filter((item) => item !== left) : items
  return { items: carried && rest[0]?.type !== 'chain' ? [carried, ...rest] : rest, carried: left }
}
