/** M52: bundles in whole lengths, by hand, and against a packing that cuts ball by ball. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { YarnNeed } from '../../../shared-types/plan'
import type { Kit, Yarn } from '../../../shared-types/project'
import { lengthsWords } from '../../../src-core/figures/kit-words'
import { kitAccount } from '../../../src-core/materials/kit/kit'
import { cheapestLengths, wholePortions } from '../../../src-core/materials/kit/lengths'
import { planProject } from '../../../src-core/plan'
import { project } from './helpers'

const need = (high: number): YarnNeed => ({
  ...{ id: 'y1', grams: { low: high, expected: high, high }, metres: null, balls: null, onHand: 0 },
  ...{ toBuy: null, leftover: null, cost: null },
  parts: { motifs: high, joins: 0, edging: 0, tails: 0, waste: 0 },
})
const BALL: Yarn = { id: 'y1', name: 'Butter', ballGrams: 50, ballMetres: 125, price: 4 }
const run = (kit: Kit, high: number, yarn: Yarn = BALL) => {
  const told = kitAccount({ lengths: 'whole', ...kit }, [yarn], [need(high)]).kit!
  const { settled } = planProject({ ...project({}), yarns: [yarn] })
  return { ...told.run[0]!, words: lengthsWords(settled, told, 'UK') }
}

describe('M52: whole lengths', () => {
  it('a ball of 50 g gives one length of 35 g: 20 kits take 20 balls, and 15 g of each are left', () => {
    expect(run({ count: 20 }, 35)).toMatchObject({
      ...{ balls: 20, cost: 80, grams: 700, leftover: 286, loss: 14 },
      words: ['Butter: a ball of 50 g gives 1 length of 35 g with 15 g left over.'],
    })
  })

  it('with joined ends 15 balls do, and it is said how many bundles are joined', () => {
    // 20 × 35 g and 2 % are 714 g. Fifteen balls give fifteen whole lengths; the other five are made of what is left.
    expect(run({ count: 20, lengths: 'joined' }, 35)).toMatchObject({
      ...{ balls: 15, pieced: 5 },
      words: ['Butter: 5 of 20 bundles of 35 g are joined from two pieces or more.'],
    })
    expect(run({ count: 20 }, 35)).not.toHaveProperty('pieced')
  })

  it('balls that part evenly, or go in as they are, leave nothing to say', () => {
    expect(run({ count: 20 }, 25)).toMatchObject({ balls: 10, loss: 0, leftover: 0, words: [] })
    expect(run({ count: 20 }, 100)).toMatchObject({ balls: 40, loss: 0, leftover: 0, words: [] })
  })

  it('a bundle of more than a ball is whole balls and one length of another', () => {
    // Two balls in each of 20 kits, and 20 g more: two such lengths from a ball.
    expect(run({ count: 20 }, 120)).toMatchObject({
      balls: 50,
      words: ['Butter: in each kit 2 balls of 50 g as they are and a length of 20 g.'],
    })
  })

  it('takes the cheapest packs that give enough lengths', () => {
    // A cone of 200 g gives five lengths of 35 g: four cones at 13 are dearer than 20 balls at 2, cheaper than at 4.
    const cones = { ...BALL, packs: [{ grams: 200, price: 13 }] }
    expect(run({ count: 20 }, 35, cones).packs).toEqual([{ grams: 200, price: 13, count: 4 }])
    expect(run({ count: 20 }, 35, { ...cones, price: 2 }).packs).toEqual([{ grams: 50, price: 2, count: 20 }])
    // Twenty-one kits: four cones and a ball.
    expect(run({ count: 21 }, 35, cones).packs).toEqual([
      { grams: 200, price: 13, count: 4 },
      { grams: 50, price: 4, count: 1 },
    ])
  })

  it('is enough, and one ball fewer is not, whatever is wound (cut ball by ball)', () => {
    /** Portions that so many balls of one size give: whole balls first, the rest cut from opened ones, first fit. */
    const cut = (ball: number, balls: number, each: number): number => {
      const whole = Math.floor(each / ball + 1e-9)
      const rest = each - whole * ball
      const opened: number[] = []
      let left = balls
      for (let portions = 0; ; portions++) {
        left -= whole
        if (left < 0) return portions
        if (rest < 1e-9) continue
        const share = ball / rest
        const even = Math.abs(share - Math.round(share)) < 1e-6
        const most = even ? Math.round(share) : Math.max(1, Math.floor(share / 1.02 + 1e-6))
        const at = opened.findIndex((lengths) => lengths > 0)
        if (at >= 0) opened[at]!--
        else if (left > 0) {
          left--
          opened.push(most - 1)
        } else return portions
      }
    }
    fc.assert(
      fc.property(
        fc.constantFrom(20, 25, 50, 100, 200),
        fc.integer({ min: 1, max: 350 }),
        fc.integer({ min: 1, max: 60 }),
        (ball, each, portions) => {
          const [bought] = cheapestLengths([{ grams: ball, price: 3 }], each, portions)!
          expect(cut(ball, bought!.count, each)).toBeGreaterThanOrEqual(portions)
          expect(cut(ball, bought!.count - 1, each)).toBeLessThan(portions)
          expect(wholePortions(ball, bought!.count, each)).toBeGreaterThanOrEqual(portions)
        },
      ),
    )
  })
})
