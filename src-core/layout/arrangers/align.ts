/** Aligning and distributing what already lies there, by the boxes of its outlines. */
import type { Box } from '../../geometry/points'
import type { Millimetres } from '../../units/quantity'

export type Alignment = 'left' | 'centre' | 'right' | 'top' | 'middle' | 'bottom'
export type Axis = 'across' | 'down'

/** How far to move something. */
export interface Move {
  readonly dx: Millimetres
  readonly dy: Millimetres
}

const round = (boxes: readonly Box[]): Box =>
  boxes.reduce((all, box) => ({
    left: Math.min(all.left, box.left),
    top: Math.min(all.top, box.top),
    right: Math.max(all.right, box.right),
    bottom: Math.max(all.bottom, box.bottom),
  }))

/** Moves that bring all boxes to one side, or to the middle, of the box round them all. */
export function align(boxes: readonly Box[], to: Alignment): Move[] {
  if (boxes.length === 0) return []
  const all = round(boxes)
  return boxes.map((box) => {
    switch (to) {
      case 'left':
        return { dx: all.left - box.left, dy: 0 }
      case 'right':
        return { dx: all.right - box.right, dy: 0 }
      case 'centre':
        return { dx: (all.left + all.right - box.left - box.right) / 2, dy: 0 }
      case 'top':
        return { dx: 0, dy: all.top - box.top }
      case 'bottom':
        return { dx: 0, dy: all.bottom - box.bottom }
      case 'middle':
        return { dx: 0, dy: (all.top + all.bottom - box.top - box.bottom) / 2 }
    }
  })
}

/**
 * Moves that make the gaps between neighbours equal; the first and the last stay where they are, and no one
 * changes places. Gaps come out below zero where there is too little room. Fewer than three stay as they are.
 */
export function distribute(boxes: readonly Box[], axis: Axis): Move[] {
  const from = (box: Box): number => (axis === 'across' ? box.left : box.top)
  const size = (box: Box): number => (axis === 'across' ? box.right - box.left : box.bottom - box.top)
  const moves: Move[] = boxes.map(() => ({ dx: 0, dy: 0 }))
  if (boxes.length < 3) return moves
  const centre = (i: number): number => from(boxes[i]!) + size(boxes[i]!) / 2
  const order = boxes.map((_, i) => i).sort((a, b) => centre(a) - centre(b) || a - b)
  const first = boxes[order[0]!]!
  const last = boxes[order.at(-1)!]!
  const between = order.slice(1, -1)
  const filled = between.reduce((sum, i) => sum + size(boxes[i]!), 0)
  const gap = (from(last) - from(first) - size(first) - filled) / (boxes.length - 1)
  let at = from(first) + size(first) + gap
  for (const i of between) {
    const move = at - from(boxes[i]!)
    moves[i] = axis === 'across' ? { dx: move, dy: 0 } : { dx: 0, dy: move }
    at += size(boxes[i]!) + gap
  }
  return moves
}
