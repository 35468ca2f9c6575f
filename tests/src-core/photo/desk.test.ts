/** The finder on pictures of the sixth renderer; `npm run photos -- 60 0 desk` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { desk } from './desk'
import { BOUNDS, trialOf } from './rates'

const taken = (number: number) => {
  const { picture, sheet, ...drawn } = desk(number, 600)
  const answer = measurePhoto(picture, { sheet })
  return { sheet, trial: trialOf(drawn, answer), codes: answer.findings.map(({ code }) => code) }
}

describe('a motif on the desk', () => {
  // Where the shadow is not taken away, petals are miscounted and dips a third off.
  it('has seventeen petals half under the shadow of a phone, 28° off: they are counted and measured, and sure', () => {
    const { trial, codes } = taken(16)
    expect(codes).toEqual([])
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(0.015)
    expect(Math.abs(trial.dips)).toBeLessThan(0.025)
  })

  it('has petals that touch beside a bank card: whether clefts are shut is not sure', () => {
    const { sheet, trial, codes } = taken(33)
    expect(sheet).toBe('card')
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(codes).toContain('photo/dips-hidden')
  })
})
