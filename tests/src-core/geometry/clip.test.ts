/** Outlines cut to a window: within it nothing changes. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clipOutline } from '../../../src-core/geometry/clip'
import { contains, signedArea } from '../../../src-core/geometry/points'
import { runs } from '../../runs'

const star = fc
  .array(fc.double({ min: 5, max: 100, noNaN: true }), { minLength: 3, maxLength: 40 })
  .map((reach) =>
    reach.map((each, i) => ({
      x: each * Math.cos((2 * Math.PI * i) / reach.length),
      y: each * Math.sin((2 * Math.PI * i) / reach.length),
    })),
  )
const place = fc.double({ min: -120, max: 120, noNaN: true })

describe('an outline cut to a box', () => {
  it('holds within it what the outline holds, and reaches nowhere out of it', () => {
    fc.assert(
      fc.property(star, place, place, place, place, place, place, (outline, x1, x2, y1, y2, x, y) => {
        const box = { left: Math.min(x1, x2), right: Math.max(x1, x2), top: Math.min(y1, y2), bottom: Math.max(y1, y2) } // prettier-ignore
        const cut = clipOutline(outline, box)
        for (const point of cut) {
          expect(point.x).toBeGreaterThanOrEqual(box.left - 1e-6)
          expect(point.x).toBeLessThanOrEqual(box.right + 1e-6)
          expect(point.y).toBeGreaterThanOrEqual(box.top - 1e-6)
          expect(point.y).toBeLessThanOrEqual(box.bottom + 1e-6)
        }
        const isIn =
          x > box.left + 1e-6 && x < box.right - 1e-6 && y > box.top + 1e-6 && y < box.bottom - 1e-6
        if (isIn) expect(contains(cut, { x, y })).toBe(contains(outline, { x, y }))
        expect(signedArea(cut)).toBeGreaterThanOrEqual(-1e-6)
        expect(signedArea(cut)).toBeLessThanOrEqual(signedArea(outline) + 1e-6)
      }),
      { numRuns: runs(300) },
    )
  })

  it('is the outline itself where all of it lies in the box, and nothing where none does', () => {
    const outline = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 0, y: 4 },
    ]
    expect(clipOutline(outline, { left: -1, top: -1, right: 9, bottom: 9 })).toBe(outline)
    expect(clipOutline(outline, { left: 5, top: 5, right: 9, bottom: 9 })).toEqual([])
  })
})
