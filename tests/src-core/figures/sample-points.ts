import type { Point } from '../../../shared-types/plan'

/** Distance of a point from a closed outline, by brute force. */
export function figureToPoint(outline: readonly Point[], p: Point): number {
  let best = Infinity
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const t = Math.max(0, Math.min(1, ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1)))
    best = Math.min(best, Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy))
  })
  return best
}
