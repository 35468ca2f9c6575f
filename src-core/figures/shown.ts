/** What a window of a map shows: every sheet of a large blanket asks it of the same long lists. */
import Flatbush from 'flatbush'
import type { Point } from '../../shared-types/plan'
import { remembered } from '../memo'
import type { Millimetres } from '../units/quantity'
import type { Bounds } from './figure'

/** Of so few every one is asked. */
const FEW = 64

const treeOf = remembered((points: readonly Point[]) => {
  const tree = new Flatbush(points.length)
  for (const { x, y } of points) tree.add(x, y, x, y)
  tree.finish()
  return tree
})

/** Whether a place is within a window and so many mm round it. */
export const isShown =
  ({ x, y, width, height }: Bounds, by: Millimetres) =>
  (atX: number, atY: number): boolean =>
    atX > x - by && atX < x + width + by && atY > y - by && atY < y + height + by

/** Those of a list that lie within a window and so many mm round it, in their order; the list is looked through once. */
export function shownOf<Piece extends Point>(
  pieces: readonly Piece[],
  view: Bounds,
  by: Millimetres,
): readonly Piece[] {
  const seen = isShown(view, by)
  if (pieces.length < FEW) return pieces.filter(({ x, y }) => seen(x, y))
  const { x, y, width, height } = view
  const found = treeOf(pieces).search(x - by, y - by, x + width + by, y + height + by)
  return found
    .sort((a, b) => a - b)
    .map((index) => pieces[index]!)
    .filter((piece) => seen(piece.x, piece.y))
}
