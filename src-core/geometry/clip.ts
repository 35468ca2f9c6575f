/** The part of an outline that lies in a box, for what is drawn through a window. */
import type { Point } from '../../shared-types/plan'
import type { Box, Outline } from './points'

type Cut = readonly [axis: 'x' | 'y', at: number, sign: 1 | -1]

/**
 * An outline cut to a box (Sutherland and Hodgman 1974): within it fills and lines are as they were, along its sides run
 * those that the cut adds. Empty where nothing of it lies in the box.
 */
export function clipOutline(outline: Outline, { left, top, right, bottom }: Box): Outline {
  const cuts: readonly Cut[] = [
    ['x', left, 1],
    ['x', right, -1],
    ['y', top, 1],
    ['y', bottom, -1],
  ]
  return cuts.reduce(cutAt, outline)
}

function cutAt(outline: Outline, [axis, at, sign]: Cut): Outline {
  const within = (point: Point): number => sign * (point[axis] - at)
  if (outline.every((point) => within(point) >= 0)) return outline
  const kept: Point[] = []
  outline.forEach((b, i) => {
    const a = outline.at(i - 1)!
    const [before, here] = [within(a), within(b)]
    if (before * here < 0) {
      const share = before / (before - here)
      kept.push({ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share })
    }
    if (here >= 0) kept.push(b)
  })
  return kept
}
