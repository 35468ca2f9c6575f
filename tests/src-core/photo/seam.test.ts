/** A seam of the table along an edge of the sheet, which parts two tones by more than the edge does. */
import { describe, expect, it } from 'vitest'
import type { Corners } from '../../../src-core/photo/homography'
import { measurePhoto } from '../../../src-core/photo/photo'
import { fineCorners, otherCorners } from '../../../src-core/photo/sheet-edges'
import { bestPose } from '../../../src-core/photo/pose'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'

const [WIDE, TALL, SHEET, GAP] = [460, 600, { left: 60, top: 60, right: 396, bottom: 535.2 }, 7.5]

/** An A4 sheet 1.6 pixels to the mm from straight above; the table is light up to a seam beside its right edge. */
function picture() {
  const data = new Uint8Array(4 * WIDE * TALL).fill(255)
  // How much of a pixel lies to the right of an edge, and a lens that blurs it by a pixel.
  const past = (at: number, edge: number) => 1 / (1 + Math.exp(-1.7 * (at - edge)))
  for (let y = 0; y < TALL; y++)
    for (let x = 0; x < WIDE; x++) {
      const on = past(x, SHEET.left) * (1 - past(x, SHEET.right)) * past(y, SHEET.top) * (1 - past(y, SHEET.bottom)) // prettier-ignore
      const table = 150 - 120 * past(x, SHEET.right + GAP)
      data.fill(Math.round(table + on * (235 - table)), 4 * (y * WIDE + x), 4 * (y * WIDE + x) + 3)
    }
  return { width: WIDE, height: TALL, data }
}

const cornersOf = (right: number): Corners => [
  { x: SHEET.left, y: SHEET.top },
  { x: right, y: SHEET.top },
  { x: right, y: SHEET.bottom },
  { x: SHEET.left, y: SHEET.bottom },
]

describe('a seam beside an edge of the sheet', () => {
  const taken = picture()
  const about = cornersOf(SHEET.right + GAP / 2)

  it('is the stronger line and taken for it, but the edge is the second line there', () => {
    const right = (edges: ReturnType<typeof fineCorners>) => edges!.corners[1].x
    expect(Math.abs(right(fineCorners(taken, about)) - SHEET.right - GAP)).toBeLessThan(0.3)
    const others = otherCorners(taken, about)
    const misfits = others.map(({ corners }) => bestPose(corners, SHEET_SIZES.A4, taken).misfit)
    const best = others[misfits.indexOf(Math.min(...misfits))]!
    best.corners.forEach(({ x, y }, at) => {
      const wanted = cornersOf(SHEET.right)[at]!
      expect(Math.hypot(x - wanted.x, y - wanted.y)).toBeLessThan(0.2)
    })
    expect(best.found).toBeGreaterThan(0.9)
  })

  it('is not taken for it where only the edge gives the shape of the sheet', () => {
    const { corners, findings } = measurePhoto(taken, { sheet: 'A4' })
    expect(Math.abs(Math.max(...corners!.map(({ x }) => x)) - SHEET.right)).toBeLessThan(0.3)
    expect(findings.map(({ code }) => code)).toEqual(['photo/no-motif'])
  })
})
