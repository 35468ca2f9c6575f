/** How the dip is held between what the clefts say and what the line round the motif says. */
import { describe, expect, it } from 'vitest'
import { heldDip } from '../../../src-core/photo/valleys'

const cleft = (far: number, growth = 1.2, stray = 0.01) => ({ far, growth, stray })

describe('the dip', () => {
  it('is what one law says that fits all clefts alike', () => {
    const held = heldDip([cleft(100), cleft(101), cleft(100)], 100, 106)
    expect(held).toMatchObject({ far: 100, fits: true })
    expect(held.apart).toBeCloseTo(0.06, 10)
  })

  it('is nearer to the line where no law fits or clefts differ', () => {
    const odd = heldDip([cleft(95, 1.2, 0.2), cleft(105, 1.2, 0.2)], 100, 106)
    expect(odd.fits).toBe(false)
    expect(odd.far).toBeGreaterThan(103)
  })

  it('is never beyond the line, and the difference is told', () => {
    const held = heldDip([cleft(110), null, null], 110, 100)
    expect(held.far).toBe(100)
    expect(held.apart).toBeCloseTo(100 / 110 - 1, 10)
  })
})
