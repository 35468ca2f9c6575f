/** The finder on pictures of the tenth renderer; `npm run photos -- 60 0 hall` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { hall } from './hall'
import { BOUNDS, trialOf } from './rates'

describe('a motif in the hall', () => {
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

  it('has pointed petals, beyond which arcs see ground alone: its dips are sure', async () => {
    const { picture, sheet, ...drawn } = await hall(5670008)
    const answer = measurePhoto(picture, { sheet })
    expect(answer.findings).toEqual([])
    expect(Math.abs(trialOf(drawn, answer).dips)).toBeLessThan(BOUNDS.dips.rms)
  })

  it('has petals so wide that the corners between them stand out farthest: its dips are not sure', async () => {
    const { picture, sheet } = await hall(5670002)
    const answer = measurePhoto(picture, { sheet })
    expect(answer.measures).toMatchObject({ petals: 4 })
    expect(answer.findings.map(({ code }) => code)).toContain('photo/dips-hidden')
  })

  it.each([
    [5670029, 'long and short petals take turns, though all of them repeat more clearly'],
    [5670026, 'a pale middle of a dark motif is yarn: it is told from shadow by its color'],
    [5670023, 'a corner of the folded sheet lies outside the picture, and no strip of it is the sheet'],
  ])('has its petals measured and is sure: picture %i, where %s', async (number) => {
    const { picture, sheet, ...drawn } = await hall(number)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.sure).toBe(true)
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.rms)
  })
})
