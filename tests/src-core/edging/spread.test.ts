/** M36: how a side gets as many stitches as its repeats come out even on, where it has not. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { wholeSides } from '../../../src-core/edging/fit'
import type { Multiple } from '../../../src-core/edging/fit'
import { spreadWords } from '../../../src-core/edging/spread'
import { runs } from '../../runs'

describe('M36 stitches spread along a side', () => {
  it('are told once for sides that are alike, and sides that stay are left out', () => {
    const long = { stitches: 46, more: -2 }
    expect(spreadWords([long, { stitches: 31, more: 1 }, long, { stitches: 30, more: 0 }])).toBe(
      'work 2 together twice along each of the 2 sides of 46 sts, about every 15 sts; work 2 in one stitch once along the side of 31 sts, near its middle',
    )
    expect(spreadWords([{ stitches: 30, more: 0 }])).toBe('')
    expect(spreadWords([{ stitches: 1, more: 5 }])).toContain('about every 1 st')
  })

  it('bring each side to whole repeats by as few stitches as can be', () => {
    const drawn = fc.record({
      of: fc.integer({ min: 2, max: 20 }),
      perMark: fc.integer({ min: 0, max: 19 }),
      stretches: fc.array(fc.integer({ min: 25, max: 200 }), { minLength: 3, maxLength: 6 }),
    })
    fc.assert(
      fc.property(drawn, ({ of, perMark, stretches }) => {
        const plus = (stretches.length * perMark) % of
        const multiple = { of, plus, perMark, least: stretches.length, by: 'round' } as unknown as Multiple
        const whole = wholeSides(stretches, multiple)
        const fits = (count: number) => (count - perMark) % of === 0
        if (!whole) {
          expect(stretches.every(fits)).toBe(true)
          return
        }
        expect(whole.sides.map(({ stitches }) => stitches)).toEqual(stretches)
        for (const { stitches, more } of whole.sides) {
          expect(fits(stitches + more)).toBe(true)
          expect(Math.abs(more)).toBeLessThanOrEqual(of / 2)
        }
        const near = whole.sides.reduce((sum, { stitches, more }) => sum + stitches + more, 0)
        expect(near).toBeGreaterThanOrEqual(whole.fewer)
        expect(near).toBeLessThanOrEqual(whole.more)
      }),
      { numRuns: runs(200) },
    )
  })
})
