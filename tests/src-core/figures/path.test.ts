import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { breakLines } from '../../../src-core/figures/lines'
import { arcPath, boundsOf, innerRadius, outerRadius, turnAndScale } from '../../../src-core/figures/path'
import { figureToPoint } from './sample-points'
import { sampleMotif } from './sample'
import { simplify } from '../../../src-core/geometry/simplify'

describe('paths', () => {
  it('simplified outlines stay within the tolerance, at every size', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), (size) => {
        const outline = turnAndScale(sampleMotif().outline, 0, size)
        const tolerance = 0.5 * size
        const simple = simplify(outline, tolerance)
        expect(simple.length).toBeLessThan(outline.length)
        for (const p of outline) expect(figureToPoint(simple, p)).toBeLessThanOrEqual(tolerance * 1.000001)
      }),
    )
  })

  it('the circle inside the valleys and the one through the tips are found', () => {
    const { outline } = sampleMotif()
    expect(outerRadius(outline)).toBeCloseTo(39, 6)
    expect(innerRadius(outline)).toBeCloseTo(26, 1)
  })

  it('an arc keeps its radius', () => {
    for (const [from, to] of [
      [0, 6],
      [0.5, -5.5],
      [1, 1.2],
    ] as const) {
      for (const segment of arcPath(3, 4, 10, from, to)) {
        if (segment[0] === 'Z') continue
        const [x, y] = segment.slice(-2) as [number, number]
        expect(Math.hypot(x - 3, y - 4)).toBeCloseTo(10, 9)
      }
    }
  })

  it('bounds hold every point and grow on every side', () => {
    expect(
      boundsOf(
        [
          { x: 1, y: 2 },
          { x: -1, y: 5 },
        ],
        0.5,
      ),
    ).toEqual({ x: -1.5, y: 1.5, width: 3, height: 4 })
    expect(boundsOf([])).toEqual({ x: 0, y: 0, width: 0, height: 0 })
  })
})

describe('breaking lines', () => {
  const measure = (text: string): number => text.length

  it('loses no word and no line is too long', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,30}$/), { maxLength: 40 }), (words) => {
        const lines = breakLines(words.join(' '), 12, measure, 10)
        for (const line of lines) expect(line.length).toBeLessThanOrEqual(12)
        expect(lines.join('').replaceAll(' ', '')).toBe(words.join(''))
      }),
    )
  })

  it('keeps a number with its unit', () => {
    expect(breakLines('flowers of 78\u00a0mm wide', 13, measure, 10)).toEqual(['flowers of', '78 mm wide'])
  })
})
