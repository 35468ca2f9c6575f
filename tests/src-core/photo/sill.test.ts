/** The finder on pictures of the eighth renderer; `npm run photos -- 60 0 sill` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { BOUNDS, trialOf } from './rates'
import { sill } from './sill'

const taken = (number: number) => {
  const { picture, sheet, ...drawn } = sill(number, 600)
  const answer = measurePhoto(picture, { sheet })
  return { answer, sheet, trial: trialOf(drawn, answer) }
}

describe('a motif on the window sill', () => {
  it('has clefts that lie in the hard shadow of their own petals, half of them: the dips are measured', () => {
    const { trial } = taken(12)
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(0.04)
  })

  it('is a square beside a card with a stripe and a chip on it', () => {
    const { answer, sheet, trial } = taken(2)
    expect(sheet).toBe('card')
    expect(answer.measures).toMatchObject({ kind: 'square', petals: 4 })
    expect(Math.abs(trial.tips)).toBeLessThan(0.015)
    expect(Math.abs(trial.dips)).toBeLessThan(0.015)
  })

  it('is round: nothing is counted', () => {
    const { answer, trial } = taken(5)
    expect(answer.measures).toMatchObject({ kind: 'round', petals: 0 })
    expect(Math.abs(trial.tips)).toBeLessThan(0.01)
  })

  it('is round, and its stitches stand at equal spaces: they are no petals', () => {
    const { picture, sheet } = sill(3456029)
    expect(measurePhoto(picture, { sheet }).measures).toMatchObject({ kind: 'round', petals: 0 })
  })

  it('has three arms of its own each and no symmetry: its outline stands as it is', () => {
    const { answer } = taken(7)
    expect(answer.measures).toMatchObject({ kind: 'other', petals: 0, symmetry: 0, evenOutline: [] })
    expect(answer.measures!.outline.length).toBeGreaterThan(50)
    expect(answer.findings.map(({ code }) => code)).toEqual(['photo/no-repeat'])
  })

  it('lies on a sheet of which two corners are outside the picture, and all four sides are seen', () => {
    const { picture, sheet, ...drawn } = sill(5670001)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.findings.map(({ code }) => code)).toContain('photo/corner-outside')
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
  })

  it('has dips so near the middle that they are looked for a sixth of the way out', () => {
    const { picture, sheet, ...drawn } = sill(5670003)
    const answer = measurePhoto(picture, { sheet })
    expect(answer.sure).toBe(true)
    expect(Math.abs(trialOf(drawn, answer).dips)).toBeLessThan(BOUNDS.dips.rms)
  })

  it('has flat teeth whose tips are found at a corner, and the clefts between them where they are', () => {
    const { picture, sheet, ...drawn } = sill(5670022)
    const answer = measurePhoto(picture, { sheet })
    expect(answer.sure).toBe(true)
    expect(Math.abs(trialOf(drawn, answer).dips)).toBeLessThan(BOUNDS.dips.rms)
  })
})
