/** The finder on pictures of the tenth renderer; `npm run photos -- 60 0 hall` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { hall } from './hall'
import { BOUNDS, trialOf } from './rates'

describe('a motif in the hall', { timeout: 120_000 }, () => {
  // Hearts in pale yarn on a dark folded sheet under the hand's shadow: smeared, toned, sharpened and saved in few bytes by the phone.
  it('has its petals counted and measured on a folded sheet, a hand over its corner, and is sure', async () => {
    const { picture, sheet, ...drawn } = await hall(20, 640)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(drawn.name).toMatch(/folded hand$/)
    expect(answer.findings).toEqual([])
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.rms)
  })
})
