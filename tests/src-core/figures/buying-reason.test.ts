/** Why whole balls are bought: counted by hand, prices and weights of the band our own. */
import { describe, expect, it } from 'vitest'
import { buyingReason, buyingRemark } from '../../../src-core/figures/yarn-words'
import type { YarnNeed } from '../../../shared-types/plan'

const need = (expected: number, high: number, onHand: number, toBuy: number | null): YarnNeed => ({
  id: 'y1',
  grams: { low: expected * 0.9, expected, high },
  metres: null,
  balls: null,
  onHand,
  toBuy,
  leftover: null,
  cost: null,
  parts: { motifs: expected, joins: 0, edging: 0, tails: 0, waste: 0 },
})
const FIFTY = { id: 'y1', name: 'Straw', ballGrams: 50 }

describe('the reason for whole balls', () => {
  it('is the least that is sold, where little is needed or missing', () => {
    expect(buyingReason(need(4, 4.4, 0, 1), FIFTY, 'metric', 'US')).toBe(
      'up to 4.4 g needed, and a whole skein is the least that is sold',
    )
    expect(buyingReason(need(107, 111.2, 100, 1), FIFTY, 'metric', 'UK')).toBe(
      'up to 11.2 g missing, and a whole ball is the least that is sold',
    )
  })

  it('is the high end of the range, where what is expected needs fewer', () => {
    expect(buyingReason(need(48, 53, 50, 1), FIFTY, 'metric', 'US')).toBe(
      '50 g would do for 48 g, but it may take up to 53 g',
    )
    expect(buyingReason(need(96, 104, 0, 3), FIFTY, 'metric', 'US')).toBe(
      '100 g would do for 96 g, but it may take up to 104 g',
    )
  })

  it('is not given where the grams show it, nothing is bought, or another count rules', () => {
    expect(buyingReason(need(130, 140, 0, 3), FIFTY, 'metric', 'US')).toBe('')
    expect(buyingReason(need(40, 44, 50, 0), FIFTY, 'metric', 'US')).toBe('')
    expect(buyingReason(need(40, 44, 0, null), {}, 'metric', 'US')).toBe('')
    expect(buyingReason(need(4, 4.4, 0, 2), FIFTY, 'metric', 'US')).toBe('')
  })

  it('stands below a table by the name of the yarn', () => {
    expect(buyingRemark([need(4, 4.4, 0, 1)], [FIFTY], 'metric', 'US')).toBe(
      'Straw, 1 skein: up to 4.4 g needed, and a whole skein is the least that is sold.',
    )
  })
})
