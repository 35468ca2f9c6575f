/** Outlines with fewer points for drawing small: no point of the outline lies further than `tolerance` off. */
import type { Point } from '../../shared-types/plan'

/** Ramer's and Douglas and Peucker's halving, on a closed outline cut at its first point and the one farthest from it. */
export function simplify(outline: readonly Point[], tolerance: number): readonly Point[] {
  const count = outline.length
  if (count < 4 || tolerance <= 0) return outline
  const first = outline[0]!
  let far = 0
  let most = -1
  outline.forEach((point, i) => {
    const off = (point.x - first.x) ** 2 + (point.y - first.y) ** 2
    if (off > most) {
      most = off
      far = i
    }
  })
  const kept = new Uint8Array(count + 1)
  kept[0] = kept[far] = kept[count] = 1
  halve(outline, 0, far, tolerance, kept)
  halve(outline, far, count, tolerance, kept)
  return outline.filter((_, i) => kept[i])
}

/** Keeps the point farthest from the chord between `from` and `to` where it is too far, and goes on in both halves. */
function halve(
  outline: readonly Point[],
  from: number,
  to: number,
  tolerance: number,
  kept: Uint8Array,
): void {
  if (to - from < 2) return
  const a = outline[from % outline.length]!
  const b = outline[to % outline.length]!
  const dx = b.x - a.x
  const dy = b.y - a.y
  const length = Math.hypot(dx, dy)
  let most = tolerance
  let at = -1
  for (let i = from + 1; i < to; i++) {
    const point = outline[i]!
    const off =
      length === 0
        ? Math.hypot(point.x - a.x, point.y - a.y)
        : Math.abs(dx * (point.y - a.y) - dy * (point.x - a.x)) / length
    if (off > most) {
      most = off
      at = i
    }
  }
  if (at < 0) return
  kept[at] = 1
  halve(outline, from, at, tolerance, kept)
  halve(outline, at, to, tolerance, kept)
}
