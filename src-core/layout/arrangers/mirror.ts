/** Mirrored pairs: the same items on the other side of a line. */
import type { Degrees, Millimetres } from '../../units/quantity'
import { roundTurn } from './arranged'
import type { ArrangedItem } from './arranged'

export interface MirrorAxis {
  /** An upright line has left and right change places, a level one top and bottom. */
  readonly direction: 'upright' | 'level'
  /** x of an upright line, y of a level one. */
  readonly at: Millimetres
}

/**
 * The item's place on the other side of the line. Its turn follows the mirror, so that a motif that is its own
 * mirror image about 12 o'clock (a flower, a leaf) comes out as in a looking glass; one that is not wants to be
 * flipped as well, wrong side up.
 */
export function mirrored<Item extends ArrangedItem>(item: Item, axis: MirrorAxis): Item {
  const upright = axis.direction === 'upright'
  const turn: Degrees = roundTurn(upright ? -item.turn : 180 - item.turn)
  return upright ? { ...item, x: 2 * axis.at - item.x, turn } : { ...item, y: 2 * axis.at - item.y, turn }
}

/** The item and its mirror image, which lies wrong side up where `flip` says so. */
export function mirroredPair<Item extends ArrangedItem & { readonly flipped?: boolean }>(
  item: Item,
  axis: MirrorAxis,
  flip = false,
): [Item, Item] {
  const other = mirrored(item, axis)
  return [item, flip ? { ...other, flipped: item.flipped !== true } : other]
}
