/** Why whole balls are bought: counted by hand, prices and weights of the band our own. */
import { dyeLots } from '../../../src-core/materials/yarn-findings'
import { describe, expect, it } from 'vitest'
import { againReason, buyingReason, buyingRemark } from '../../../src-core/figures/yarn-words'
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
      'what is on hand covers the 48 g expected, one skein covers the high end of 53 g',
    )
    expect(buyingReason(need(96, 104, 0, 3), FIFTY, 'metric', 'US')).toBe(
      '2 skeins cover the 96 g expected, one more covers the high end of 104 g',
    )
    expect(buyingReason(need(96, 104, 50, 2), FIFTY, 'metric', 'UK')).toBe(
      '1 ball and what is on hand cover the 96 g expected, one more covers the high end of 104 g',
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

describe('the reason of a yarn that was weighed or counted again', () => {
  const told = { yarn: 'y1', lastsTo: 87, enough: false, over: 0, rate: 0.8, start: 200, at: 39 }

  it('is what was left and what goes into the rest, in numbers that fit', () => {
    expect(againReason({ ...told, left: 120, missing: 280 }, 'metric')).toBe(
      '120 g were left with 39 made; at that rate 400 g go into what was left to make, so 280 g are missing',
    )
    expect(againReason({ ...told, left: 120, missing: 0, over: 20, enough: true }, 'metric')).toBe(
      '120 g were left with 39 made; at that rate 100 g go into what was left to make',
    )
    const plan = { low: 300, expected: 350, high: 400 }
    expect(againReason({ ...told, left: 120, missing: 280, plan }, 'metric')).toBe(
      '120 g were left with 39 made; up to 400 g go into what was left to make, so 280 g are missing',
    )
  })
})

describe('one dye lot', () => {
  const needs = (...toBuy: (number | null)[]) =>
    toBuy.map((count, i) => ({ id: `y${i}`, toBuy: count, balls: 9 }) as unknown as YarnNeed)

  it('is asked for of yarns of which more than one ball is to be bought, and counts those', () => {
    expect(dyeLots(needs(1, 1, 0, null))).toEqual([])
    expect(dyeLots(needs(1, 2, 3)).map(({ message }) => message)).toEqual([
      expect.stringMatching(/^5 .* to buy in two yarns/),
    ])
  })
})
