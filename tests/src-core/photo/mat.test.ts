/** The finder on pictures of the seventh renderer; `npm run photos -- 60 0 mat` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { mat } from './mat'
import { BOUNDS, trialOf } from './rates'

describe('a motif on the cutting mat', () => {
  // Fuzzy shells on a wooden board under two lights; sixteen petals where a pencil lies over the sheet's edge.
  it.each([0, 1])('has its petals counted and measured through a wide lens: picture %i', (number) => {
    const { picture, sheet, ...drawn } = mat(number, 600)
    const answer = measurePhoto(picture, { sheet })
    const trial = trialOf(drawn, answer)
    expect(answer.sure).toBe(true)
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })
})
