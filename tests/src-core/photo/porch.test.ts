/** The finder on motifs made of strands of yarn in daylight; `npm run photos -- 60 0 porch` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { porch } from './porch'
import { BOUNDS, trialOf } from './rates'

describe('a motif on the porch', () => {
  // Leaves under the bars of a window, shells as wide as they come, a lace of chains.
  it.each([2, 4, 5])('has its petals counted and measured: picture %i', (number) => {
    const { picture, sheet, ...drawn } = porch(number, 560)
    const trial = trialOf(drawn, measurePhoto(picture, { sheet }))
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })
  it('lies on paper hardly lighter than the table in the same bars of shadow, told by its tint', () => {
    const { picture, sheet, ...drawn } = porch(23, 800)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.findings.map(({ code }) => code)).not.toContain('photo/sheet-cut-off')
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })

  it('has long and short petals whose strands are coarse: they take turns, and are no corners', () => {
    const { picture, sheet, ...drawn } = porch(3456012)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.measures).toMatchObject({ kind: 'petals', petals: 6, symmetry: 3 })
    expect(answer.findings.map(({ code }) => code)).toContain('photo/petals-take-turns')
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })

  it('is edged with chains so thin that some are seen half: the spaces they close off are the motif’s', () => {
    const { picture, sheet, ...drawn } = porch(21, 800)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.measures).toMatchObject({ kind: 'petals', petals: 12 })
    expect(Math.abs(trial.tips)).toBeLessThan(0.015)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })

  it('is edged with chains that are hardly seen at all: what was taken for tips ends half way, and is not sure', () => {
    const { picture, sheet, ...drawn } = porch(1234013)
    const answer = measurePhoto(picture, { sheet })
    expect(Math.abs(trialOf(drawn, answer).tips)).toBeGreaterThan(BOUNDS.tips.most)
    expect(answer.findings.map(({ code }) => code)).toEqual(['photo/like-paper'])
  })
})
