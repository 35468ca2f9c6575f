/** Stitches that are counted from the last one: "in 4th st". */
import type { Source } from './source'
import { SKIPPING, takeAt } from './taking'
import type { GroupItem, Item, PlacePart, StarItem } from './tree'
import type { Work } from './work'

/** Whether something of the repeat is worked in stitches before a place. */
const takesBefore = (items: readonly Item[], { start }: PlacePart): boolean =>
  items.some((item) => item.end <= start && item.type === 'work' && item.place?.parts[0]?.which !== 'same')

/** "*5 ch, sl st in 4th st; rep from *": in a repeat they are counted from the last one, and those between are passed. */
export function passUpTo(work: Work, source: Source | null, part: PlacePart): void {
  const { which, noun, count } = part
  if (which !== 'nth' || count < 2 || noun.kind !== 'stitch' || !source?.state.ordered) return
  const repeated = work.node.items.find(
    (item): item is GroupItem | StarItem =>
      (item.type === 'star' || (item.type === 'group' && (item.around || item.times !== null))) &&
      item.start <= part.start &&
      part.end <= item.end,
  )
  // "Sk 3 sts, sl st in 4th st", "sc in each of 2 sc, 2 sc in 3rd sc" tell them already.
  if (!repeated || source.passedBehind() > 0 || takesBefore(repeated.items, part)) return
  for (let at = 1; at < count; at++) {
    const index = source.find('stitch', '', () => true)
    if (index >= 0) takeAt(work, source, index, part, SKIPPING)
  }
}
