/** Outlines with no more points than their size on screen or paper can show. */
import type { Point } from '../../shared-types/plan'
import { distance } from './points'
import type { Outline } from './points'
import type { Millimetres } from '../units/quantity'

/** Points of an outline that are nearer to each other lie in one place. */
const SAME_PLACE: Millimetres = 1e-9

/**
 * A closed outline without the points off the line of their neighbours by less than `tolerance` mm, cut at its first
 * point and the one farthest from it (Ramer 1972; Douglas and Peucker 1973).
 */
export function simplify(outline: Outline, tolerance: Millimetres): Point[] {
  const count = outline.length
  if (count < 4 || tolerance <= 0) return [...outline]
  const first = outline[0]!
  const far = outline.reduce(
    (best, point, i) => (distance(point, first) > distance(outline[best]!, first) ? i : best),
    0,
  )
  const kept = new Uint8Array(count)
  kept[0] = kept[far] = 1
  const stack: [number, number][] = [
    [0, far],
    [far, count],
  ]
  for (let range = stack.pop(); range; range = stack.pop()) {
    const [from, to] = range
    const a = outline[from]!
    const b = outline[to % count]!
    const [dx, dy] = [b.x - a.x, b.y - a.y]
    const length = Math.hypot(dx, dy)
    let most = tolerance
    let at = -1
    for (let i = from + 1; i < to; i++) {
      const point = outline[i]!
      const off =
        length < SAME_PLACE
          ? distance(point, a)
          : Math.abs(dx * (point.y - a.y) - dy * (point.x - a.x)) / length
      if (off > most) {
        most = off
        at = i
      }
    }
    if (at < 0) continue
    kept[at] = 1
    stack.push([from, at], [at, to])
  }
  return outline.filter((_, i) => kept[i])
}
