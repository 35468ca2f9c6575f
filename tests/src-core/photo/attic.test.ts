/** The finder on pictures made of distances by a poor phone; `npm run photos -- 60 0 attic` takes more of them. */
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { attic } from './attic'
import { BOUNDS, trialOf } from './rates'

describe('a motif in the attic', () => {
  // Petals like a fan of cards on felt, in mohair.
  it.each([11])('has its petals counted and measured: picture %i', (number) => {
    const { picture, sheet, ...drawn } = attic(number, 520)
    const trial = trialOf(drawn, measurePhoto(picture, { sheet }))
    expect(trial.petalsRight).toBe(true)
    expect(Math.abs(trial.tips)).toBeLessThan(BOUNDS.tips.most)
    expect(Math.abs(trial.dips)).toBeLessThan(BOUNDS.dips.most)
  })
})
