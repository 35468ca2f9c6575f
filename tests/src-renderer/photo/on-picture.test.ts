import { describe, expect, it } from 'vitest'
import type { Corners } from '../../../src-core/photo/homography'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'
import {
  cornerWords,
  drawnOn,
  firstCorners,
  sheetPath,
  withSpot,
  rulerPath,
  firstPoints,
} from '../../../src-renderer/photo/on-picture'

/** A4 seen straight from above, four pixels to the millimetre. */
const STRAIGHT: Corners = [
  { x: 100, y: 50 },
  { x: 940, y: 50 },
  { x: 940, y: 1238 },
  { x: 100, y: 1238 },
]
const numbers = (path: string): number[] => [...path.matchAll(/-?[\d.]+/g)].map(([each]) => Number(each))

describe('what is drawn on a photo', () => {
  it('stands where it was found: in millimetres of the sheet, about the middle of the motif', () => {
    const measures = { middle: { x: 105, y: 148.5 }, outline: [[-10, 0] as const, [0, -20] as const] }
    const { outline, circles } = drawnOn({ size: SHEET_SIZES.A4, corners: STRAIGHT }, measures, [80])
    expect(numbers(outline)).toEqual([480, 644, 520, 564])
    const circle = numbers(circles[0]!)
    for (let i = 0; i < circle.length; i += 2)
      expect(Math.hypot(circle[i]! - 520, circle[i + 1]! - 644)).toBeCloseTo(160, 0)
    expect(sheetPath(STRAIGHT)).toBe('M100.0 50.0L940.0 50.0L940.0 1238.0L100.0 1238.0Z')
  })

  it('names each corner by where it is, however the sheet lies', () => {
    expect(cornerWords(STRAIGHT)).toEqual(['top left', 'top right', 'bottom right', 'bottom left'])
    expect(cornerWords(firstCorners(1200, 900))).toEqual([
      ...['top right', 'bottom right', 'bottom left', 'top left'],
    ])
    const onItsCorner: Corners = [
      { x: 500, y: 0 },
      { x: 900, y: 500 },
      { x: 500, y: 1000 },
      { x: 100, y: 500 },
    ]
    expect(new Set(cornerWords(onItsCorner)).size).toBe(4)
  })

  it('keeps a corner inside the picture', () => {
    const moved = withSpot(STRAIGHT, 2, { x: 5000, y: -3 }, { width: 1000, height: 1300 })
    expect(moved[2]).toEqual({ x: 999, y: 0 })
    expect(moved[1]).toBe(STRAIGHT[1])
    const points = withSpot(firstPoints(1000, 1300), 1, { x: 900, y: 1400 }, { width: 1000, height: 1300 })
    expect(rulerPath(points)).toBe('M250.0 1105.0L900.0 1299.0')
  })
})
