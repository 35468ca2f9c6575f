import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { beside, bringing, moved, nearest, wholeView, zoomed } from '../../../src-main/phone/client/view'

const DRAWING = { width: 300, height: 200 }
const BOX = { width: 390, height: 440 }
const whole = wholeView(DRAWING, BOX)
const shape = (view: { width: number; height: number }) => view.width / view.height

describe('what the map on the phone shows', () => {
  it('is all of the drawing at first, in the shape of its box', () => {
    expect(shape(whole)).toBeCloseTo(BOX.width / BOX.height)
    expect(whole.x).toBeLessThanOrEqual(0)
    expect(whole.x + whole.width).toBeGreaterThanOrEqual(DRAWING.width)
    expect(whole.y + whole.height).toBeGreaterThanOrEqual(DRAWING.height)
  })

  it('keeps the place under the finger while it zooms', () => {
    const view = zoomed(whole, whole, 0.5, 100, 80)
    expect((100 - view.x) / view.width).toBeCloseTo((100 - whole.x) / whole.width)
    expect((80 - view.y) / view.height).toBeCloseTo((80 - whole.y) / whole.height)
    expect(view.width).toBeCloseTo(whole.width / 2)
  })

  it('never leaves the drawing nor its shape, whatever fingers do', () => {
    const gesture = fc.record({
      factor: fc.double({ min: 0.05, max: 20, noNaN: true }),
      dx: fc.double({ min: -1000, max: 1000, noNaN: true }),
      dy: fc.double({ min: -1000, max: 1000, noNaN: true }),
      x: fc.double({ min: -50, max: 400, noNaN: true }),
      y: fc.double({ min: -50, max: 400, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(gesture, { maxLength: 20 }), (gestures) => {
        let view = whole
        for (const { factor, dx, dy, x, y } of gestures)
          view = zoomed(moved(view, whole, dx, dy), whole, factor, x, y)
        expect(shape(view)).toBeCloseTo(shape(whole), 6)
        expect(view.x).toBeGreaterThanOrEqual(whole.x - 1e-6)
        expect(view.y).toBeGreaterThanOrEqual(whole.y - 1e-6)
        expect(view.x + view.width).toBeLessThanOrEqual(whole.x + whole.width + 1e-6)
        expect(view.y + view.height).toBeLessThanOrEqual(whole.y + whole.height + 1e-6)
      }),
    )
  })

  it('brings what is outside into the middle and leaves the rest alone', () => {
    const close = zoomed(whole, whole, 0.2, 150, 100)
    expect(bringing(close, whole, 150, 100, 5)).toBe(close)
    const there = bringing(close, whole, 250, 100, 5)
    expect(there.x + there.width / 2).toBeCloseTo(250)
  })

  const grid = [0, 1, 2].flatMap((row) =>
    [0, 1, 2].map((column) => ({ x: column * 10, y: row * 10, reach: 5 })),
  )

  it('selects the nearest within reach of a finger', () => {
    expect(nearest(grid, 11, 9)).toBe(4)
    expect(nearest(grid, 60, 60)).toBe(-1)
  })

  it('goes to the neighbor that an arrow points to, and stays at the edge', () => {
    expect(beside(grid, 4, 1, 0)).toBe(5)
    expect(beside(grid, 4, 0, -1)).toBe(1)
    expect(beside(grid, 2, 1, 0)).toBe(-1)
    expect(beside(grid, -1, 1, 0)).toBe(0)
    expect(beside([], -1, 1, 0)).toBe(-1)
  })
})
