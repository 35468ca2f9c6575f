/** Chains that are passed over at the beginning ("dc in 4th ch from hook") and what they stand for. */
import { STITCHES } from '../stitches/table'
import type { StitchKey } from '../stitches/table'
import type { Item, StatementItem } from './tree'
import { push } from './work'
import type { Target, Work } from './work'

/** What the text says of the chains that are passed over: right behind "in 5th ch from hook", or behind the chains. */
function saidOfSkipped(items: readonly Item[]): StatementItem | null {
  const at = items.findIndex(
    (item) => 'place' in item && item.place?.parts.some((part) => part.which === 'from-hook'),
  )
  const told = [items[at + 1], items[at - 1]].find((item) => item?.type === 'statement')
  // "counts as ch 1 and dc": the chain is the one that is worked into.
  return at >= 0 && told?.type === 'statement' && told.stitch !== 'ch' ? told : null
}

/** "The 4 skipped ch are just the edge, don't count them": said anywhere in the row. */
const NOT_COUNTED =
  /\b(skipped|missed|unworked|turning)\s+ch[^.;)]*\b(not|never|don.?t|doesn.?t|no)\b[^.;)]*\b(counts?|sts?|stitch|stitches|tr|dc)\b/i

const makesChains = (items: readonly Item[], count: number): boolean =>
  items.some(
    (item) =>
      (item.type === 'chain' && item.count === count) ||
      ('items' in item && item.type !== 'placed' && makesChains(item.items, count)),
  )

const isRepeated = (item: Item): boolean =>
  item.type === 'star' || (item.type === 'group' && !item.place && (item.times !== null || item.around))

/** "Dc in 8th ch from hook, *ch 2, skip 2 ch, dc in next ch*": the chains over those that a first space passes over. */
function meshSpace({ node: { items }, tree }: Work, over: number): number {
  if (over <= 0 || over % 2 === 1) return 0
  const mesh = items.some(isRepeated) && makesChains(items, over / 2)
  const squares = tree.filet?.chains === over / 2 && items.some((item) => item.type === 'work' && item.square)
  return mesh || squares ? over / 2 : 0
}

/**
 * Dc (or taller) in the 4th ch from the hook: the chains passed over stand for a stitch, and for a space behind it
 * where the text says so ("4 skipped chs count as dc and ch 1").
 */
export function standForSkipped(work: Work, target: Target, stitch: StitchKey, fresh: boolean): void {
  if (!fresh || target.place.kind !== 'chain' || (work.foundation ?? work.base).kind !== 'chain') return
  const along = work.chain
  if (!along || along.opposite || work.elements.some((element) => element.standing)) return
  const made = along.element >= 0
  const found = made ? work.elements[target.place.index] : undefined
  if (made ? found?.role !== 'stem' || work.elements.length !== 1 : work.elements.length > 0) return
  const passed = along.chains - 1 - target.place.cell
  const said = saidOfSkipped(work.node.items)
  if (
    said?.says === 'does-not-count' ||
    NOT_COUNTED.test(work.tree.text.slice(work.node.start, work.node.end))
  )
    return
  const stated = said?.says === 'counts'
  const countsAs = (stated && said.stitch) || stitch
  const high = passed >= STITCHES[countsAs].beginningChains && STITCHES[countsAs].beginningCounts
  if (!stated && !high) return
  // Of a chain made before the round its last chains stand up.
  const stem = found ?? push(work, 'beginning', 'ch', work.node, { count: passed })
  stem.standing = true
  stem.countsAs = countsAs
  stem.group = target.group
  const space = stated ? said.chains : meshSpace(work, passed - STITCHES[countsAs].beginningChains)
  if (space === 0) return
  const chains = Math.min(space, stem.count - 1)
  stem.count -= chains
  push(work, 'space', 'ch', said ?? work.node, { count: chains })
}
