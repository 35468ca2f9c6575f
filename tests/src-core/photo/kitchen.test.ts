/** What the third renderer of pictures found, kept; `npm run photos -- 60 0 kitchen` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { kitchen } from './kitchen'
import { BOUNDS, trialOf } from './rates'

const taken = (number: number) => {
  const { picture, sheet, ...drawn } = kitchen(number, 600)
  const answer = measurePhoto(picture, { sheet })
  return { answer, trial: trialOf(drawn, answer), codes: answer.findings.map(({ code }) => code) }
}

describe('a motif in the kitchen', () => {
  it('has long and short petals that take turns, on ruled paper: each is counted', () => {
    const { answer, trial, codes } = taken(63)
    expect(trial.petalsRight).toBe(true)
    expect(answer.measures).toMatchObject({ petals: 6, symmetry: 3 })
    expect(codes).toContain('photo/petals-take-turns')
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })

  it('lies on a printed sheet half under the shadow of a hand: it is not taken to reach over the edge', () => {
    const { trial, codes } = taken(16)
    expect(codes).not.toContain('photo/motif-over-edge')
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
  })

  it('lies near the edge of a dark sheet on tiles: the sheet is found', () => {
    const { trial, codes } = taken(46)
    expect(codes).not.toContain('photo/no-sheet')
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
  })
  it('lies on a sheet with one corner outside the picture: two edges lead to it', () => {
    const { trial, codes } = taken(65)
    expect(codes).toEqual(['photo/corner-outside'])
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(0.01)
  })
})
