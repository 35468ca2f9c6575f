import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import * as cameras from '../../../src-renderer/drawing/camera'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const size = fc.record({ width: number(10, 5000), height: number(10, 5000) })
const viewport = fc.record({
  width: number(200, 3000),
  height: number(200, 2000),
})
const camera = fc.record({ scale: number(0.02, 12), x: number(-5000, 5000), y: number(-5000, 5000) })
const point = fc.record({ x: number(0, 2000), y: number(0, 2000) })

describe('where the drawing looks', () => {
  it('fits the whole with room for its dimension lines', () => {
    fc.assert(
      fc.property(size, viewport, (own, room) => {
        const fit = cameras.fitCamera(own, room)
        const end = cameras.toScreen(fit, { x: own.width, y: own.height })
        const margin = cameras.fitMargin(room)
        expect(fit.x).toBeGreaterThanOrEqual(margin.left - 1e-6)
        expect(fit.y).toBeGreaterThanOrEqual(margin.top - 1e-6)
        expect(end.x).toBeLessThanOrEqual(room.width - margin.right + 1e-6)
        expect(end.y).toBeLessThanOrEqual(room.height - margin.bottom + 1e-6)
        // The handle at the corner stands above what covers the bottom.
        expect(cameras.showsWhole(fit, own, room)).toBe(true)
        expect(cameras.showsWhole({ ...fit, x: -1 }, own, room)).toBe(false)
      }),
    )
  })

  it('keeps the point under the pointer when zooming, within its limits', () => {
    fc.assert(
      fc.property(camera, point, number(0.1, 10), (from, at, factor) => {
        const limits = { least: 0.05, most: 15 }
        const to = cameras.zoomAt(from, factor, at, limits)
        const before = cameras.toPlan(from, at)
        const after = cameras.toPlan(to, at)
        expect(after.x).toBeCloseTo(before.x, 3)
        expect(after.y).toBeCloseTo(before.y, 3)
        expect(to.scale).toBeGreaterThanOrEqual(limits.least)
        expect(to.scale).toBeLessThanOrEqual(limits.most)
      }),
    )
  })

  it('never loses the plan out of the window', () => {
    fc.assert(
      fc.property(camera, size, viewport, (from, own, room) => {
        const kept = cameras.keptInView(from, own, room)
        expect(kept.x).toBeLessThan(room.width)
        expect(kept.x + own.width * kept.scale).toBeGreaterThan(0)
        expect(kept.y).toBeLessThan(room.height)
        expect(kept.y + own.height * kept.scale).toBeGreaterThan(0)
        expect(cameras.keptInView(kept, own, room)).toEqual(kept)
      }),
    )
  })

  it('moves only as far as needed to reveal a place', () => {
    const room = { width: 800, height: 600 }
    const from = { scale: 1, x: 0, y: 0 }
    expect(cameras.revealing(from, { x: 400, y: 300 }, room, 90)).toEqual(from)
    expect(cameras.revealing(from, { x: 1000, y: 300 }, room, 90)).toEqual({ scale: 1, x: -290, y: 0 })
    expect(cameras.revealing(from, { x: -50, y: 900 }, room, 90)).toEqual({ scale: 1, x: 140, y: -390 })
  })

  it('glides from one view to the other and ends there exactly', () => {
    const from = { scale: 0.5, x: 10, y: 20 }
    const to = { scale: 4, x: -300, y: -120 }
    expect(cameras.between(from, to, 0)).toEqual(from)
    expect(cameras.between(from, to, 1)).toBe(to)
    const middle = cameras.between(from, to, 0.5)
    expect(middle.scale).toBeCloseTo(Math.sqrt(2))
    // The point that stays where it is during the zoom does so all the way.
    const fixed = {
      x: (from.x - to.x) / (to.scale - from.scale),
      y: (from.y - to.y) / (to.scale - from.scale),
    }
    const start = cameras.toScreen(from, fixed)
    expect(cameras.toScreen(middle, fixed).x).toBeCloseTo(start.x)
    expect(cameras.toScreen(middle, fixed).y).toBeCloseTo(start.y)
  })
})
