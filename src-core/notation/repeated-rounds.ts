/** Rounds that are worked once more: "Rep Rnds 2 and 3", "as Rnd 2 of First Motif". */
import { partName } from './part-names'
import type { Reading } from './reading'
import type { Item, RepeatRoundItem, RoundNode, RoundsTree } from './tree'

/** Items of the rounds that "Rep Rnds 2 and 3" names, in turn. */
export function repeatedItems(
  reading: Reading,
  tree: Omit<RoundsTree, 'repeats'>,
  item: RepeatRoundItem,
  number: number,
  lap: number,
): readonly Item[] | null {
  const { lastOf = 1 } = item
  const before = number - lap - lastOf + (lap % lastOf)
  const from = item.from === 'last' ? before : item.from === 'same' ? number : item.from
  const to = item.to === 'last' || item.to === 'same' ? from : item.to
  const turn = lap % Math.max(1, to - from + 1)
  const wanted = item.from === 'same' ? number : from + turn
  const numbered = (round: RoundNode) =>
    round.numbers !== null && wanted >= round.numbers[0] && wanted <= round.numbers[1]
  const there = tree.rounds.filter((round) => numbered(round) && !round.items.includes(item))
  const found =
    item.part === null
      ? (there.findLast((round) => round.part === reading.part && round.start < item.start) ??
        there.findLast((round) => round.start < item.start) ??
        there[0])
      : (there.find(({ part }) => part !== null && partName(part) === item.part) ??
        there.find((round) => round.part !== reading.part) ??
        // Where the text has no parts, the first of that number.
        there.find((round) => round.start < item.start))
  const byOrder =
    found ??
    (item.from === 'last'
      ? tree.rounds.filter((round) => round.label !== 'foundation')[wanted - 1]
      : undefined)
  if (!byOrder) return null
  const again = byOrder.items.find((inner) => inner.type === 'repeat-round')
  if (
    again?.type === 'repeat-round' &&
    again !== item &&
    typeof again.from === 'number' &&
    again.from < wanted
  ) {
    return repeatedItems(reading, tree, again, wanted, 0)
  }
  return again ? null : byOrder.items.filter((inner) => inner.type !== 'count')
}

/** "Rep Rnds 2 and 3 twice": four rounds. */
export function lapsOf(item: RepeatRoundItem): number {
  const { from, to, lastOf = 1 } = item
  const span = typeof from === 'number' && typeof to === 'number' ? Math.max(1, to - from + 1) : lastOf
  return span * Math.max(1, item.times)
}
