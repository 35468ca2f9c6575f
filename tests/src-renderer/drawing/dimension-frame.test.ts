import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fitCamera } from '../../../src-renderer/drawing/camera'
import { dimensionFrame, handleAt, resized } from '../../../src-renderer/drawing/dimension-frame'

const viewport = { width: 1000, height: 700 }
const size = { width: 1300, height: 1600 }
const fitted = fitCamera(size, viewport)

describe('dimension lines', () => {
  it('stand clear over and beside a fitted plan, with ticks at both ends', () => {
    const frame = dimensionFrame(fitted, size, viewport)!
    expect(frame.width.from.y).toBeLessThan(frame.frame.top)
    expect(frame.height.from.x).toBeLessThan(frame.frame.left)
    expect(frame.width.from.x).toBeCloseTo(frame.frame.left)
    expect(frame.width.to.x).toBeCloseTo(frame.frame.left + frame.frame.width)
    expect([frame.width.startsHere, frame.width.endsHere]).toEqual([true, true])
    expect(frame.overMap).toEqual({ top: false, left: false })
    const middle = frame.widthNumber.left + frame.widthNumber.width / 2
    expect(middle).toBeCloseTo(frame.frame.left + frame.frame.width / 2)
  })

  it('put the height’s number beside a line that is too short for it in a low window', () => {
    const low = { width: 500, height: 188 }
    const shown = dimensionFrame(fitCamera(size, low), size, low)!
    expect(shown.levelHeight).toBe(true)
    const { left, top, width, height } = shown.heightNumber
    expect(left + width).toBeLessThan(shown.height.from.x)
    expect(top + height).toBeLessThanOrEqual(low.height)
    // With nothing there, or no room on its left, it stands under its line.
    const high = { width: 500, height: 460 }
    const wide = { width: 1600, height: 400 }
    const under = dimensionFrame(fitCamera(wide, high), wide, high)!
    expect(under.levelHeight).toBe(true)
    expect(under.heightNumber.top).toBeGreaterThan(under.height.to.y)
  })

  it('stay in the window, numbers and all, wherever the plan is moved', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    const camera = fc.record({ scale: number(0.1, 8), x: number(-4000, 900), y: number(-4000, 600) })
    fc.assert(
      fc.property(camera, (own) => {
        const frame = dimensionFrame(own, size, viewport)!
        for (const box of [frame.widthNumber, frame.heightNumber]) {
          expect(box.left).toBeGreaterThanOrEqual(0)
          expect(box.top).toBeGreaterThanOrEqual(0)
          expect(box.left + box.width).toBeLessThanOrEqual(viewport.width)
          expect(box.top + box.height).toBeLessThanOrEqual(viewport.height)
        }
        expect(frame.width.to.x).toBeLessThanOrEqual(Math.max(viewport.width, frame.width.from.x))
      }),
    )
  })

  it('say by their missing ticks that the plan goes on outside the window', () => {
    const frame = dimensionFrame({ scale: 2, x: -300, y: -200 }, size, viewport)!
    expect([frame.width.startsHere, frame.width.endsHere]).toEqual([false, false])
    expect(frame.overMap).toEqual({ top: true, left: true })
  })

  it('are not there for a plan of no size', () => {
    expect(dimensionFrame(fitted, { width: 0, height: 0 }, viewport)).toBeNull()
  })
})

describe('dragging the frame', () => {
  it('takes hold of handles and of the frame’s right and bottom edges, from outside', () => {
    const frame = dimensionFrame(fitted, size, viewport)!
    const right = frame.frame.left + frame.frame.width
    const bottom = frame.frame.top + frame.frame.height
    for (const { kind, at } of frame.handles) expect(handleAt(frame, { x: at.x + 4, y: at.y - 3 })).toBe(kind)
    expect(handleAt(frame, { x: right + 4, y: 300 })).toBe('width')
    expect(handleAt(frame, { x: right - 4, y: 300 })).toBeNull()
    expect(handleAt(frame, { x: (frame.frame.left + right) / 2, y: bottom + 4 })).toBe('height')
    expect(handleAt(frame, { x: (frame.frame.left + right) / 2, y: bottom - 4 })).toBeNull()
  })

  it('asks for the size under the hand, in mm, and never for less than a motif could be', () => {
    expect(resized(size, 'both', 50, -25, 0.5)).toEqual({ width: 1400, height: 1550 })
    expect(resized(size, 'width', 50, -25, 0.5)).toEqual({ width: 1400, height: 1600 })
    expect(resized(size, 'height', 50, -25, 0.5)).toEqual({ width: 1300, height: 1550 })
    expect(resized(size, 'both', -9000, -9000, 0.5)).toEqual({ width: 20, height: 20 })
  })
})
