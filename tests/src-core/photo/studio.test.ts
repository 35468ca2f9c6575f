/** The finder on pictures of a renderer that it was not made with; `npm run photos` takes hundreds. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { BOUNDS, ratesOf, trialOf } from './rates'
import type { Trial } from './rates'
import { studio } from './studio'

const NUMBERS = [3, 14, 18, 22, 63, 67, 73, 81]
/** Pixels across: fewer than a phone's by far, and enough for all that is asked here. */
const WIDE = 760

describe('motifs of the studio', () => {
  const trials: Trial[] = []

  it.each(NUMBERS)('has its petals counted: picture %i', (number) => {
    const taken = studio(number, { wide: WIDE })
    const trial = trialOf(taken, measurePhoto(taken.picture, { sheet: taken.sheet }))
    trials.push(trial)
    expect(trial.petalsRight).toBe(true)
  })

  it('are measured on the sheet whose shape they show, though another was asked for', () => {
    // A4 that a camera with another lens could take for Letter.
    const taken = studio(115, { wide: WIDE })
    expect(taken.sheet).toBe('A4')
    const { sheet, findings } = measurePhoto(taken.picture, { sheet: 'Letter' })
    expect(sheet).toBe('A4')
    expect(findings.map(({ code }) => code)).toContain('photo/other-sheet')
  })

  it('has short shells counted by the notches between them', () => {
    const { measures, findings } = measurePhoto(studio(48).picture, { sheet: 'Letter' })
    expect(measures).toMatchObject({ kind: 'petals', petals: 7 })
    expect(findings.map(({ code }) => code)).toEqual(['photo/petals-unsure'])
  })

  it.each([
    [3456006, 'all but close a circle, each flat from notch to notch'],
    [3456028, 'step from one that is shorter to one that is longer, without a notch'],
  ])('has seven shells counted: picture %i, they %s', (number) => {
    const taken = studio(number)
    const { measures } = measurePhoto(taken.picture, { sheet: taken.sheet })
    expect(taken.motif.petals).toBe(7)
    expect(measures).toMatchObject({ kind: 'petals', petals: 7 })
    expect(Math.abs(measures!.overTips / taken.motif.overTips - 1)).toBeLessThan(0.01)
  })

  it('has nine hearts counted, of which every third is larger by chance', () => {
    const { measures } = measurePhoto(studio(5670000).picture, { sheet: 'Letter' })
    expect(measures).toMatchObject({ kind: 'petals', petals: 9 })
  })

  it('lies beside a bank card, whose edges are looked for as far off as those of a sheet', () => {
    const taken = studio(8, { rough: true })
    const { measures, findings } = measurePhoto(taken.picture, { sheet: taken.sheet })
    expect(taken.sheet).toBe('card')
    expect(findings).toEqual([])
    expect(measures!.kind).toBe('round')
    expect(Math.abs(measures!.overTips / taken.motif.overTips - 1)).toBeLessThan(0.005)
  })

  it('are measured within the bounds wherever the finder is sure', () => {
    const rates = ratesOf(trials)
    expect(trials).toHaveLength(NUMBERS.length)
    expect(rates.sure).toBeGreaterThan(0.75)
    for (const size of ['tips', 'dips'] as const) {
      expect(rates[size].rms).toBeLessThan(BOUNDS[size].rms)
      expect(rates[size].most).toBeLessThan(BOUNDS[size].most)
    }
  })
})
