/** The finder on lace by the ninth renderer; `npm run photos -- 60 0 pantry` takes more of it. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { pantry } from './pantry'
import { BOUNDS, trialOf } from './rates'

const taken = async (number: number, wide?: number) => {
  const { picture, sheet, ...drawn } = await pantry(number, wide)
  const answer = measurePhoto(picture, { sheet })
  return { sheet, trial: trialOf(drawn, answer), codes: answer.findings.map(({ code }) => code) }
}

describe('lace in the pantry', () => {
  // Fans with picots on a sheet, a net of arches on one, leaves with picots beside a bank card on bare wood.
  it.each([4401, 4406, 4403])(
    'has its petals counted and measured, and is sure: picture %i',
    async (number) => {
      const { trial, codes } = await taken(number)
      expect(codes).toEqual([])
      expect(trial.petalsRight).toBe(true)
      expect(Math.abs(trial.tips)).toBeLessThan(0.015)
      expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.rms)
    },
  )

  it('lies beside a card along which a seam of the table runs, taken for its edge: that is not sure', async () => {
    const { sheet, trial, codes } = await taken(4402)
    expect(sheet).toBe('card')
    expect(trial.petalsRight).toBe(true)
    expect(codes).toContain('photo/sheet-shape')
  })
})
