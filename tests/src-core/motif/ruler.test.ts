import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif } from '../../../shared-types/project'
import { measuredAccount } from '../../../src-core/motif/measured'
import { assumedSecond, circlesOf, layingOf, readingsOf, rulerWords } from '../../../src-core/motif/ruler'

const measured = (motif: Partial<MeasuredMotif>) =>
  measuredAccount({ id: 'm', kind: 'measured', outline: 'petals', ...motif } as MeasuredMotif, {
    ...{ hand: 'right', terms: 'US', growth: 0 },
  })

describe('M16 what a ruler shows of a flower', () => {
  it('82 mm from tip to opposite dip over a 60 mm circle of dips is a flower of 104 mm', () => {
    expect(layingOf(5, undefined)).toBe('opposite')
    expect(circlesOf('opposite', { lead: 82, second: 30 }, 0.7)).toEqual({ overTips: 104, overValleys: 60 })
    expect(readingsOf('opposite', { overTips: 104, overValleys: 60 }, 0.7)).toEqual({ lead: 82, second: 30 })
  })

  it('is what lies between two points of the outline, for every odd count', () => {
    for (const petals of [3, 5, 7, 9, 23]) {
      const { outline } = measured({ petals, overTips: 104, overValleys: 60 }).account!
      const top = outline.reduce((best, point) => (point.y < best.y ? point : best))
      // Right under the tip at 12 o'clock: where the outline crosses the same upright below the centre.
      const under = outline.filter(({ x, y }) => y > 0 && Math.abs(x - top.x) < 1e-6)
      expect(Math.min(...under.map(({ y }) => y)) - top.y).toBeCloseTo(82, 6)
    }
  })

  it('comes back as it was typed, both ways of laying it', () => {
    const size = fc.integer({ min: 20, max: 4000 }).map((eighths) => (eighths / 8) * 25.4)
    fc.assert(
      fc.property(size, fc.double({ min: 0.1, max: 0.45, noNaN: true }), (lead, share) => {
        for (const laying of ['across', 'opposite', 'centre'] as const) {
          const typed = { lead, second: lead * share }
          const back = readingsOf(laying, circlesOf(laying, typed, 0.7), 0.7)
          expect(back.lead).toBeCloseTo(lead, 5)
          expect(back.second).toBeCloseTo(typed.second, 5)
          const alone = readingsOf(laying, circlesOf(laying, { lead, second: undefined }, 0.7), 0.7)
          expect(alone.lead).toBeCloseTo(lead, 5)
          expect(alone.second).toBeUndefined()
        }
      }),
    )
  })

  it('the second measure follows the first until it is typed', () => {
    expect(assumedSecond('across', 100, 0.68)).toBeCloseTo(68)
    // R + 0.68 R = 84, so that R is 50 and the dips lie 34 from the center.
    expect(assumedSecond('opposite', 84, 0.68)).toBeCloseTo(34)
    expect(assumedSecond('centre', 50, 0.68)).toBeCloseTo(34)
  })

  it('has its names in either spelling', () => {
    expect(rulerWords('across', 'US')).toEqual({ lead: 'tip to tip', second: 'dip to dip' })
    expect(rulerWords('opposite', 'US')).toEqual({ lead: 'tip to opposite dip', second: 'center to dip' })
    expect(rulerWords('centre', 'UK')).toEqual({ lead: 'centre to tip', second: 'centre to dip' })
  })

  it('findings name what was measured, with the numbers that stand there', () => {
    const messages = (motif: Partial<MeasuredMotif>) => measured(motif).findings.map(({ message }) => message)
    expect(messages({ petals: 5, overTips: 100 })).toEqual([
      'center to dip was not measured; 34 mm is assumed.',
    ])
    expect(messages({ petals: 6, overTips: 100 })).toEqual(['dip to dip was not measured; 68 mm is assumed.'])
    // 60 mm from tip to opposite dip with 40 mm from the center to a dip: no tip would lie outside of the dips.
    const circles = circlesOf('opposite', { lead: 60, second: 40 }, 0.7)
    expect(messages({ petals: 5, ...circles })).toEqual([
      'center to dip (40 mm) must be smaller than half of tip to opposite dip (30 mm), but not below 18 % of it.',
    ])
    expect(messages({ petals: 5, ruler: 'centre', overTips: 40, overValleys: 60 })).toEqual([
      'center to dip (30 mm) must be smaller than center to tip (20 mm), but not below 10 % of it.',
    ])
  })
})
