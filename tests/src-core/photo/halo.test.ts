/** Paper that a camera makes brighter than it is round dark yarn. */
import { describe, expect, it } from 'vitest'
import { fades } from '../../../src-core/photo/halo'
import { measurePhoto } from '../../../src-core/photo/photo'
import { hall } from './hall'
import { BOUNDS, trialOf } from './rates'

describe('light round a motif', () => {
  it('is a halo where it falls slowly to that of paper', () => {
    expect(fades([1.41, 1.39, 1.38, 1.34, 1.31])).toBe(true)
    expect(fades([1.41, 1.36, 1.32, 1.28, 1.24])).toBe(true)
    expect(fades([1.21, 1.16, 1.14, 1.1, 1.06])).toBe(true)
    // Wide and even, but no lighter than yarn that nobody could tell from the sheet.
    expect(fades([1.1, 1.13, 1.1, 1.1, 1.1])).toBe(true)
  })

  it('is light yarn where it goes on as bright or ends at once, and nothing where it is hardly brighter', () => {
    expect(fades([1.41, 1.4, 1.4, 1.39, 1.38])).toBe(false)
    expect(fades([1.5, 1.5, 1.5, 1.02, 1])).toBe(false)
    expect(fades([1.03, 1.02, 1.01, 1, 1])).toBe(false)
    expect(fades([])).toBe(false)
  })

  it('is no yarn: petals are measured within it, and are sure', async () => {
    const { picture, sheet, ...drawn } = await hall(5670003)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.findings).toEqual([])
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.rms)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.rms)
  })
})
