/** One half of an outline, cut along the vertical through its centre. */
import type { Point } from '../../shared-types/plan'
import type { Outline } from './points'

/**
 * The part of an outline about the origin that lies right (or left) of the vertical through it. Where the
 * outline crosses the cut more than twice, the parts hang together along the cut (Sutherland and Hodgman 1974).
 */
export function halfOutline(outline: Outline, keep: 'left' | 'right'): Outline {
  const sign = keep === 'right' ? 1 : -1
  const kept: Point[] = []
  outline.forEach((b, i) => {
    const a = outline[(i + outline.length - 1) % outline.length]!
    const before = sign * a.x
    const here = sign * b.x
    if (before * here < 0) {
      const share = before / (before - here)
      kept.push({ x: 0, y: a.y + (b.y - a.y) * share })
    }
    if (here >= 0) kept.push(b)
  })
  return kept
}
