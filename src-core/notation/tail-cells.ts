/** How many chains of a foundation are kept for what stands behind the laps of a repeat. */
import { cellsLeft } from './chain-targets'
import { lapOf } from './laps'
import type { ItemRunner } from './stitching'
import { placeParts } from './tree'
import type { Item } from './tree'
import type { Work } from './work'

/** Chains that what follows the laps takes; "sk next ch, dc in last ch" takes two, however far away the last one is. */
export function tailCells(after: Work, rest: readonly Item[], run: ItemRunner): number {
  const taken = (items: readonly Item[]) =>
    cellsLeft(after.chain!) - cellsLeft(lapOf(after, items, run).after.chain!)
  const at = rest.findIndex((item) => [...placeParts([item])].some(({ which }) => which === 'last'))
  if (at < 0) return taken(rest)
  const [part] = placeParts([rest[at]!])
  return taken(rest.slice(0, at)) + part!.count
}
