import { describe, expect, it } from 'vitest'
import { simplify } from '../../../src-core/geometry/simplify'
import { petalOutline } from '../../../src-core/motif/outlines'

describe('simpler outlines', () => {
  it('lie within the tolerance of the whole one', () => {
    const outline = petalOutline(8, 40, 25)
    for (const tolerance of [0.4, 1, 3]) {
      const simple = simplify(outline, tolerance)
      expect(simple.length).toBeLessThan(outline.length)
      for (const point of outline) {
        const off = simple.reduce((least, a, i) => {
          const b = simple[(i + 1) % simple.length]!
          const [dx, dy] = [b.x - a.x, b.y - a.y]
          const share = ((point.x - a.x) * dx + (point.y - a.y) * dy) / (dx * dx + dy * dy)
          const t = Math.min(1, Math.max(0, share))
          return Math.min(least, Math.hypot(a.x + dx * t - point.x, a.y + dy * t - point.y))
        }, Infinity)
        expect(off).toBeLessThanOrEqual(tolerance + 1e-9)
      }
    }
    expect(simplify(outline, 0)).toEqual(outline)
  })
})
