/** Special stitches that take no place of the round in hand: loops of chains, and stitches that all go into an earlier round. */
import { definitionOf } from './stitching'
import type { ItemRunner } from './stitching'
import type { StitchName } from './stitch-name'
import type { Item } from './tree'
import type { Work } from './work'

/** Names within names: more than that is no explanation. */
const DEEPEST = 8

const isLoop = (items: readonly Item[]): boolean =>
  items.some(({ type }) => type === 'chain') &&
  items.every((item) => item.type === 'chain' || (item.type === 'work' && item.stitch.form === 'picot'))

const isBelow = (items: readonly Item[]): boolean =>
  items.length > 1 &&
  items.every((item) => item.type === 'work' && item.place?.parts.every(({ round }) => round !== null))

/** "Picot loop: ch 3, p, ch 3", "Crossed FPdtr: FPdtr around FPtr of Rnd 3, FPdtr around FPtr of Rnd 3 to the right": worked as it is told. */
export function runOwnWay(work: Work, name: StitchName, count: number, run: ItemRunner): boolean {
  if (name.form !== 'shell' && name.form !== 'special') return false
  const definition = work.depth < DEEPEST ? definitionOf(work, name) : null
  const items = definition?.items.filter(({ type }) => type !== 'note' && type !== 'count') ?? []
  if (!isLoop(items) && (work.here || !isBelow(items))) return false
  work.depth++
  for (let at = 0; at < count; at++) run(work, items)
  work.depth--
  return true
}
