/** M52: bundles in whole lengths, by hand, and against a packing that cuts ball by ball. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { YarnNeed } from '../../../shared-types/plan'
import type { Kit, Yarn } from '../../../shared-types/project'
import { lengthsWords } from '../../../src-core/figures/kit-words'
import { kitAccount } from '../../../src-core/materials/kit/kit'
import {
  bestWay,
  joinedWays,
  lengthsIn,
  lossOfLength,
  wholeWays,
} from '../../../src-core/materials/kit/lengths'
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
  it('a ball of 50 g gives one length of 35 g: 20 kits take 20 balls, and 14.3 g of each are left', () => {
    expect(run({ count: 20 }, 35)).toMatchObject({
      ...{ balls: 20, cost: 80, grams: 700, leftover: 286, loss: 14 },
      words: ['Butter: a ball of 50 g gives 1 length of 35 g with 14.3 g left over.'],
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

  it('balls that go in as they are leave nothing to say', () => {
    expect(run({ count: 20 }, 100)).toMatchObject({ balls: 40, loss: 0, leftover: 0, words: [], wound: 0 })
    expect(run({ count: 20, windTo: 50, lengths: 'joined' }, 100)).toMatchObject({
      balls: 40,
      loss: 0,
      words: [],
    })
    // 49.5 g and 2 % are more than a ball: it gives one all the same, and nothing of it is left.
    expect(run({ count: 20, windTo: 0.1 }, 49.5)).toMatchObject({ balls: 20, loss: 10, leftover: 0 })
  })

  it('two lengths of half a ball are not in a ball, since something is lost in winding', () => {
    // 25 g and 2 % are 25.5 g: one of them leaves 24.5 g.
    expect(run({ count: 20, windTo: 25 }, 25)).toMatchObject({
      ...{ balls: 20, loss: 10, leftover: 490 },
      words: ['Butter: a ball of 50 g gives 1 length of 25 g with 25 g left over.'],
    })
    // Joined it is 20 × 25.5 g = 510 g.
    expect(run({ count: 20, windTo: 25, lengths: 'joined' }, 25)).toMatchObject({ balls: 11, pieced: 9 })
  })

  it('loses nothing of balls that are never wound, in whole lengths and joined', () => {
    // 2 balls of 100 g as they are and 17 g: 27 times 17 g are wound, and 2 % of that is 9.18 g.
    const hundred = { ...BALL, ballGrams: 100 }
    const kit: Kit = { count: 25, sparePercent: 5 }
    // Five lengths of 17.34 g from a ball: six balls. Joined 27 × 17.34 = 468.18 g are five.
    const whole = run(kit, 217, hundred)
    expect(whole).toMatchObject({ balls: 54 + 6, whole: { count: 2, grams: 100 }, wound: 17 })
    expect(whole.loss).toBeCloseTo(9.18, 9)
    expect(whole.words).toEqual(['Butter: in each kit 2 balls of 100 g as they are and a length of 17 g.'])
    const joined = run({ ...kit, lengths: 'joined' }, 217, hundred)
    expect(joined).toMatchObject({ balls: 54 + 5, wound: 17, pieced: 2 })
    expect(joined.loss).toBeCloseTo(9.18, 9)
    expect(joined.words).toEqual([
      'Butter: in each kit 2 balls of 100 g as they are and a length of 17 g; 2 of 27 lengths of 17 g are joined from two pieces or more.',
    ])
  })

  it('a ball of B gives ⌊B / L(1 + w)⌋ lengths of L, and a whole ball where it holds but one (closed form)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 400 }), (ball, each) => {
        const closed =
          ball < each ? 0 : ball < each * 1.02 ? 1 : Math.floor((ball * 100) / (each * 102) + 1e-9)
        expect(lengthsIn(ball, each)).toBe(closed)
        if (closed > 0) expect(closed * (each + lossOfLength(ball, each))).toBeLessThanOrEqual(ball + 1e-6)
        if (closed > 0 && ball >= each * 1.02) expect(lossOfLength(ball, each)).toBeCloseTo(each * 0.02, 9)
      }),
    )
  })

  it('whole lengths never take fewer balls, or cost less, than joined ends', () => {
    const pack = fc.record({
      grams: fc.constantFrom(10, 25, 50, 100, 200, 400),
      price: fc.integer({ min: 1, max: 30 }),
    })
    fc.assert(
      fc.property(
        fc.uniqueArray(pack, { minLength: 1, maxLength: 3, selector: ({ grams }) => grams }),
        fc.integer({ min: 1, max: 350 }),
        fc.integer({ min: 1, max: 60 }),
        fc.constantFrom(1, 10, 25, 50),
        (packs, least, portions, windTo) => {
          const each = Math.ceil(least / windTo) * windTo
          const whole = bestWay(wholeWays(packs, each, portions))!
          const joined = bestWay(joinedWays(packs, each, portions, windTo))!
          expect(whole.cost).toBeGreaterThanOrEqual(joined.cost)
          const balls = (way: typeof whole): number => way.mix.reduce((sum, { count }) => sum + count, 0)
          if (packs.length === 1) expect(balls(whole)).toBeGreaterThanOrEqual(balls(joined))
          for (const { mix, loss, pieced } of [whole, joined]) {
            const held = mix.reduce((sum, { grams, count }) => sum + grams * count, 0)
            expect(held).toBeGreaterThanOrEqual(portions * each + loss - 1e-6)
            expect(pieced).toBeLessThanOrEqual(portions)
          }
          expect(whole.pieced).toBe(0)
        },
      ),
    )
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
        const most = Math.max(1, Math.floor(ball / rest / 1.02 + 1e-6))
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
          const [bought] = bestWay(wholeWays([{ grams: ball, price: 3 }], each, portions))!.mix
          expect(cut(ball, bought!.count, each)).toBeGreaterThanOrEqual(portions)
          expect(cut(ball, bought!.count - 1, each)).toBeLessThan(portions)
        },
      ),
    )
  })
})
