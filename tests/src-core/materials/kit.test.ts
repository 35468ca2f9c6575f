import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { YarnNeed } from '../../../shared-types/plan'
import type { Kit, Layout, Motif, Project, Yarn } from '../../../shared-types/project'
import { kitAccount, woundGrams } from '../../../src-core/materials/kit/kit'
import { cheapestMix } from '../../../src-core/materials/kit/packs'
import type { Pack } from '../../../src-core/materials/kit/packs'
import { breakEven, toCents } from '../../../src-core/materials/kit/price'
import { breakEvenWords } from '../../../src-core/figures/kit-words'
import { planProject } from '../../../src-core/plan'
import { project } from './helpers'

const need = (id: string, high: number): YarnNeed => ({
  id,
  grams: { low: high * 0.8, expected: high * 0.9, high },
  metres: null,
  balls: null,
  onHand: 0,
  toBuy: null,
  leftover: null,
  cost: null,
  parts: { motifs: high, joins: 0, edging: 0, tails: 0, waste: 0 },
})

const account = (kit: Kit, needs = [need('y1', 31.2), need('y2', 8)], yarns?: Yarn[]) =>
  kitAccount(kit, project(yarns ? { yarns } : {}).yarns, needs)
const codes = ({ findings }: ReturnType<typeof account>): string[] => findings.map(({ code }) => code)

/** Every mix of packs up to what any sensible one holds: the cheapest price for at least `needed`. */
function bruteForce(packs: readonly Pack[], needed: number): number {
  let best = Infinity
  const search = (from: number, grams: number, price: number): void => {
    if (grams >= needed) {
      best = Math.min(best, price)
      return
    }
    for (let i = from; i < packs.length; i++) search(i, grams + packs[i]!.grams, price + packs[i]!.price)
  }
  search(0, 0, 0)
  return best
}

describe('M52: the cheapest mix of packs', () => {
  it('is as cheap as the best of all mixes (brute force), holds enough, and wastes no pack', () => {
    const packs = fc.array(
      fc.record({
        grams: fc.integer({ min: 20, max: 400 }),
        price: fc.integer({ min: 0, max: 3000 }).map((cents) => cents / 100),
      }),
      { minLength: 1, maxLength: 4 },
    )
    fc.assert(
      fc.property(packs, fc.integer({ min: 1, max: 700 }), (sizes, needed) => {
        const mix = cheapestMix(sizes, needed)!
        const cost = mix.reduce((sum, pack) => sum + pack.count * pack.price!, 0)
        const held = mix.reduce((sum, pack) => sum + pack.count * pack.grams, 0)
        expect(cost).toBeCloseTo(bruteForce(sizes, needed), 6)
        expect(held).toBeGreaterThanOrEqual(needed)
        for (const pack of mix) if (pack.price! > 0) expect(held - pack.grams).toBeLessThan(needed)
      }),
      { numRuns: 300 },
    )
  })

  it('mixes: 430 g of 50 g at 3.90, 200 g at 13.20 and 1000 g at 60 are two large and one small', () => {
    const packs = [
      { grams: 50, price: 3.9 },
      { grams: 200, price: 13.2 },
      { grams: 1000, price: 60 },
    ]
    expect(cheapestMix(packs, 430)).toEqual([
      { grams: 200, price: 13.2, count: 2 },
      { grams: 50, price: 3.9, count: 1 },
    ])
    expect(cheapestMix(packs, 400.0000001)).toEqual([{ grams: 200, price: 13.2, count: 2 }])
    // A cone that is cheaper than what would do is taken.
    expect(cheapestMix(packs, 950)).toEqual([{ grams: 1000, price: 60, count: 1 }])
    expect(cheapestMix(packs, 0)).toEqual([])
    expect(cheapestMix([], 10)).toBeNull()
    expect(cheapestMix([{ grams: 0.1, price: 1 }], 1e9)).toBeNull()
  })
})

describe('M52: the run', () => {
  it('winds up from the high value to the step', () => {
    expect(woundGrams(31.2, 1)).toBe(32)
    expect(woundGrams(32, 1)).toBe(32)
    expect(woundGrams(0.3, 0.1)).toBe(0.3)
    expect(woundGrams(31.2, 5)).toBe(35)
  })

  it('kits add up to the run to the last gram; loss and spares come on top', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom(0.1, 0.5, 1, 2.5, 10),
        fc.double({ min: 0.2, max: 900, noNaN: true }),
        fc.integer({ min: 0, max: 40 }),
        (count, windTo, high, sparePercent) => {
          const { kit } = account({ count, windTo, sparePercent }, [need('y1', high)])
          const [perKit] = kit!.perKit
          const [run] = kit!.run
          expect(perKit!.grams).toBeGreaterThanOrEqual(high - 1e-6)
          expect(perKit!.grams - high).toBeLessThanOrEqual(windTo + 1e-6)
          expect(run!.grams).toBe(count * perKit!.grams)
          expect(kit!.spares).toBe(Math.ceil((count * sparePercent) / 100 - 1e-9))
          const needed = run!.grams + kit!.spares * perKit!.grams
          // Whole balls go in as they are; the rest is wound, or is a ball, too, where a ball holds just that.
          const bundles = count + kit!.spares
          const whole = Math.floor(perKit!.grams / 50 + 1e-9)
          const wound = bundles * (perKit!.grams - whole * 50)
          const least = Math.min(Math.ceil((wound * 1.02) / 50 - 1e-5), wound > 1e-6 ? bundles : 0)
          expect(run!.balls!).toBe(bundles * whole + least)
          expect(run!.loss).toBeLessThanOrEqual(wound * 0.02 + 1e-6)
          if (wound < bundles * 49 && least < bundles) expect(run!.loss).toBeCloseTo(wound * 0.02, 5)
          expect(run!.balls! * 50).toBeGreaterThanOrEqual(needed + run!.loss - 1e-4)
          expect(kit!.costPerKit! * count).toBeCloseTo(kit!.runCost!, 6)
        },
      ),
    )
  })

  it('golden: 25 kits with spares, extras, packaging, fees and tax', () => {
    const { kit, findings } = account({
      count: 25,
      windTo: 1,
      sparePercent: 5,
      extras: [{ name: 'cotton cord, 2 m', price: 0.4 }],
      packaging: 0.6,
      marginPercent: 45,
      fees: { fixed: 0.3, sharePercent: 5 },
      taxPercent: 19,
    })
    expect(findings).toEqual([])
    expect(kit!.perKit.map(({ grams }) => grams)).toEqual([32, 8])
    expect(kit!.perKit[0]!.metres).toBe(80)
    // 27 bundles: 864 g and 2 % = 881.28 g, 18 balls; 216 g and 2 % = 220.32 g, 5 balls.
    expect(kit!.run.map(({ balls, cost }) => [balls, cost])).toEqual([
      [18, 70.2],
      [5, 20.5],
    ])
    // 70.20 + 20.50 + 27 cords at 0.40 + 25 packagings at 0.60.
    expect(kit!.runCost).toBe(116.5)
    expect(kit!.costPerKit).toBeCloseTo(4.66, 9)
    // (4.66 + 0.30)/(1 − 0.45 − 0.05).
    expect(kit!.price).toBeCloseTo(9.92, 9)
    expect(kit!.asked).toEqual({ beforeTax: 9.92, tax: 1.88, withTax: 11.8 })
    // 116.50 / (9.92 · 0.95 − 0.30) = 12.77.
    expect(kit!.breakEven).toBe(13)
  })

  it('the price leaves the wished margin, to the cent; before tax and tax are what is paid', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 9, noNaN: true }),
        fc.double({ min: 0, max: 30, noNaN: true }),
        (marginPercent, sharePercent, taxPercent) => {
          const { kit } = account({ count: 10, marginPercent, fees: { fixed: 1, sharePercent }, taxPercent })
          const { price, costPerKit, asked } = kit!
          const left = price! * (1 - sharePercent / 100) - 1 - costPerKit!
          expect(left).toBeCloseTo((price! * marginPercent) / 100, 6)
          expect(Math.abs(asked!.beforeTax - price!)).toBeLessThanOrEqual(0.005 + 1e-9)
          expect(asked!.beforeTax + asked!.tax).toBeCloseTo(asked!.withTax, 9)
          expect(kit!.breakEven).toBeLessThanOrEqual(10)
        },
      ),
    )
    expect(toCents(1.005, 0).beforeTax).toBe(1.01)
  })

  it('breaks even at the price that is asked: 24 × 42.28 are 8 cents short of 1,014.80', () => {
    const asked = { beforeTax: 42.28, tax: 0, withTax: 42.28 }
    const free = { count: 40, feeShare: 0, feeFixed: 0 }
    expect(breakEven(1014.8, asked, free)).toEqual({ kits: 25, short: 0 })
    // 24 × 46.73 = 1,121.52 of 1,121.60.
    expect(breakEven(1121.6, { ...asked, beforeTax: 46.73 }, free)).toEqual({ kits: 25, short: 0 })
    // With fees of 6.5 % and 0.25: 42.28 leaves 39.2818, and 26 × 39.2818 = 1,021.33; 25 × it is 982.05.
    expect(breakEven(1014.8, asked, { ...free, feeShare: 6.5, feeFixed: 0.25 })).toMatchObject({ kits: 26 })
    expect(breakEven(1, { ...asked, beforeTax: 0 }, free)).toBeNull()
    // One cent over 3 × 20,000.00.
    const dear = { ...asked, beforeTax: 20_000 }
    expect(breakEven(60_000, dear, free)).toEqual({ kits: 3, short: 0 })
    expect(breakEven(60_000.01, dear, free)).toEqual({ kits: 4, short: 0 })
  })

  it('without a margin the last kit pays for the run, to the cent where the cent allows it', () => {
    // 2 kits of one ball at 3.90 each: the price is the cost, 2 × 3.90 = 7.80.
    const even = account({ count: 2, windTo: 50, marginPercent: 0 }, [need('y1', 50)]).kit!
    expect(even).toMatchObject({ runCost: 7.8, asked: { beforeTax: 3.9 }, breakEven: 2 })
    expect(even).not.toHaveProperty('shortByRounding')
    // 10.00 over 3 kits: asked are 3.33, and 3 × 3.33 = 9.99.
    const yarns = [{ id: 'y1', ballGrams: 50, ballMetres: 125, price: 10 }]
    const three = account({ count: 3, marginPercent: 0 }, [need('y1', 10)], yarns).kit!
    expect(three).toMatchObject({
      runCost: 10,
      asked: { beforeTax: 3.33 },
      breakEven: 3,
      shortByRounding: 0.01,
    })
    expect(breakEvenWords(three, (amount) => `€${amount}`)).toBe(
      'at 3 of 3, less €0.01 lost in rounding the price',
    )
    expect(breakEvenWords(even, String)).toBe('at 2 of 2')
  })

  it('takes fees from what they are charged on: the price, or all that the buyer pays', () => {
    const fees = { fixed: 0.25, sharePercent: 6.5 }
    const numbers = { count: 10, marginPercent: 40, taxPercent: 20 }
    const plain = account({ ...numbers, fees }).kit!
    expect(account({ ...numbers, fees: { ...fees, on: 'price' } }).kit).toEqual(plain)
    const paid = account({ ...numbers, fees: { ...fees, on: 'paid' } }).kit!
    const cost = plain.costPerKit!
    expect(plain.price).toBeCloseTo((cost + 0.25) / 0.535, 9)
    // 6.5 % of 120 % of the price are 7.8 % of it, and the margin of 40 % is left of each.
    expect(paid.price).toBeCloseTo((cost + 0.25) / 0.522, 9)
    expect(paid.price! - 0.065 * 1.2 * paid.price! - 0.25 - cost).toBeCloseTo(0.4 * paid.price!, 9)
    // Without tax both are the same.
    const free = { ...numbers, taxPercent: 0 }
    expect(account({ ...free, fees: { ...fees, on: 'paid' } }).kit!.price).toBe(
      account({ ...free, fees }).kit!.price,
    )
    // 3.90 of 10.00 with 2.00 of tax: 10.00 - 12.00 / 10 leave 8.80, and 88 take ten kits, 88.01 eleven.
    const asked = { beforeTax: 10, tax: 2, withTax: 12 }
    const run = { count: 40, feeShare: 10, feeFixed: 0, feesOnTax: true }
    expect([breakEven(88, asked, run), breakEven(88.01, asked, run)].map((even) => even?.kits)).toEqual([
      10, 11,
    ])
    // 55 % and 40 % leave 5 %, but 40 % of 120 % leave nothing.
    const most = { ...numbers, marginPercent: 55, fees: { sharePercent: 40 } }
    expect(codes(account(most))).toEqual([])
    expect(codes(account({ ...most, fees: { ...most.fees, on: 'paid' } }))).toEqual(['kit/margin'])
  })

  it('asks for whole coins of the currency: yen have no hundredths, dinars have thousandths', () => {
    expect(toCents(1233.4, 10, 'JPY')).toEqual({ beforeTax: 1233, tax: 123, withTax: 1356 })
    expect(toCents(12.3456, 0, 'KWD').beforeTax).toBe(12.346)
    expect(toCents(12.3456, 0, 'EUR').beforeTax).toBe(12.35)
    // 100 over 3 kits in yen: asked are 33, and the run is 1 short.
    const yarns = [{ id: 'y1', ballGrams: 50, ballMetres: 125, price: 100 }]
    const { kit } = kitAccount({ count: 3 }, yarns, [need('y1', 10)], undefined, 'JPY')
    expect(kit).toMatchObject({ asked: { beforeTax: 33 }, breakEven: 3, shortByRounding: 1 })
  })

  it('no fewer kits than told pay for the run, and these do, or lack what is told (coins of whole numbers)', () => {
    const whole = fc.integer({ min: 1, max: 2_000_000 })
    fc.assert(
      fc.property(
        whole,
        fc.integer({ min: 1, max: 500 }),
        fc.integer({ min: 0, max: 90 }),
        (cents, count, margin) => {
          const asked = toCents(cents / 100 / count / (1 - margin / 100), 0)
          const even = breakEven(cents / 100, asked, { count, feeShare: 0, feeFixed: 0 })
          const each = Math.round(asked.beforeTax * 100)
          if (!even) {
            expect(each).toBe(0)
            return
          }
          expect(even.kits).toBeLessThanOrEqual(count)
          expect((even.kits - 1) * each).toBeLessThan(cents)
          expect(Math.max(0, cents - even.kits * each)).toBe(Math.round(even.short * 100))
        },
      ),
    )
  })

  it('loses nothing where whole balls are put in, by hand', () => {
    // 50 g balls; 25 kits and 2 to spare of 2 balls each: 54 balls, nothing wound.
    const whole = account({ count: 25, sparePercent: 5, windTo: 50 }, [need('y1', 63.4)]).kit!
    expect(whole.perKit[0]!.grams).toBe(100)
    expect(whole.run[0]).toMatchObject({ grams: 2500, spares: 200, loss: 0, balls: 54, leftover: 0 })
    // Wound to 25 g: 75 g in each, a ball and 25 g of another: 27 × 25 = 675 g and 2 % are 688.5 g, 14 balls.
    const wound = account({ count: 25, sparePercent: 5, windTo: 25 }, [need('y1', 63.4)]).kit!
    expect(wound.run[0]).toMatchObject({ grams: 1875, spares: 150, loss: 13.5, balls: 27 + 14 })
  })

  it('buys the cheapest mix where a yarn is sold in several packs', () => {
    const yarns = [
      { id: 'y1', ballGrams: 50, ballMetres: 125, price: 3.9, packs: [{ grams: 400, price: 20 }] },
    ]
    const { kit } = account({ count: 10 }, [need('y1', 42)], yarns)
    // 420 g and 2 % = 428.4 g.
    expect(kit!.run[0]).toMatchObject({ balls: 2, cost: 23.9 })
    expect(kit!.run[0]!.packs).toEqual([
      { grams: 400, price: 20, count: 1 },
      { grams: 50, price: 3.9, count: 1 },
    ])
  })
})

describe('bad input', () => {
  it.each<[string, Kit]>([
    ['kit/value', { count: 0 }],
    ['kit/value', { count: 2.5 }],
    ['kit/value', { count: 1e9 }],
    ['kit/value', { count: 5, windTo: 0 }],
    ['kit/value', { count: 5, sparePercent: -1 }],
    ['kit/value', { count: 5, packaging: -1 }],
    ['kit/value', { count: 5, taxPercent: -1 }],
    ['kit/value', { count: 5, fees: { fixed: -1 } }],
    ['kit/value', { count: 5, extras: [{ name: 'hook', price: -2 }] }],
    ['kit/margin', { count: 5, marginPercent: 100 }],
    ['kit/margin', { count: 5, marginPercent: 250 }],
    ['kit/margin', { count: 5, marginPercent: 95, fees: { sharePercent: 6 } }],
    ['kit/no-price', { count: 5, extras: [{ name: 'hook' }] }],
    ['kit/pattern', { count: 5, pattern: { by: 'A. Maker' } }],
  ])('%s is told', (code, kit) => {
    const told = account(kit)
    expect(codes(told)).toContain(code)
    if (code === 'kit/value') expect(told.kit).toBeNull()
    if (code === 'kit/margin') expect(told.kit).toMatchObject({ price: null, asked: null, breakEven: null })
    if (code === 'kit/pattern') expect(codes(account({ pattern: { by: 'A', allowed: true } }))).toEqual([])
  })

  it('tells packs that cannot be bought, runs beyond reckoning, and yarns without grams', () => {
    const yarn = { id: 'y1', ballGrams: 50, price: 3.9 }
    for (const pack of [{ grams: -1, price: 2 }, { grams: 0.123, price: 2 }, { grams: 50 }])
      expect(codes(account({}, [need('y1', 5)], [{ ...yarn, packs: [pack] }]))).toEqual(['kit/pack'])
    expect(codes(account({ count: 100_000 }, [need('y1', 1e6)]))).toEqual(['kit/run-too-large'])
    expect(codes(account({}, [need('y1', 0)]))).toEqual(['kit/not-counted'])
  })

  it('warns where a motif of the kit comes without a word of how it is worked', () => {
    const motif: Motif = {
      id: 'm1',
      name: 'Tile',
      kind: 'measured',
      outline: 'square',
      sideToSide: 80,
      slots: [{ slot: 'all', grams: 4 }],
    }
    const layout: Layout = {
      kind: 'blanket',
      motif: 'm1',
      columns: 3,
      rows: 4,
      cells: { fill: { pattern: 'one', colourways: ['c1'] } },
    }
    const colourways = [{ id: 'c1', motif: 'm1', yarns: { all: 'y1' } }]
    const told = (first: Motif, kit?: Kit): string[] => {
      const motifs = [first, { ...motif, id: 'm2', name: 'Unused' }]
      const { findings } = planProject(project({ motifs, colourways, layout: { ...layout, kit } }))
      return findings.flatMap(({ code, message }) => (code === 'kit/no-instructions' ? [message] : []))
    }
    expect(told(motif, { count: 4 })).toEqual([expect.stringMatching(/^Tile: /)])
    expect(told({ ...motif, instructions: ' \n ' }, { count: 4 })).toHaveLength(1)
    expect(told({ ...motif, instructions: 'Rnd 1: 12 sc in ring.' }, { count: 4 })).toEqual([])
    expect(told(motif)).toEqual([])
  })

  it('a blanket can be a kit too', () => {
    const blanket: Project = project({
      motifs: [
        {
          id: 'm1',
          kind: 'measured',
          outline: 'square',
          sideToSide: 80,
          slots: [{ slot: 'all', grams: 4 }],
        },
      ],
      colourways: [{ id: 'c1', motif: 'm1', yarns: { all: 'y1' } }],
      layout: {
        kind: 'blanket',
        motif: 'm1',
        columns: 3,
        rows: 4,
        cells: { fill: { pattern: 'one', colourways: ['c1'] } },
        kit: { count: 4, marginPercent: 30 },
      },
    })
    const plan = planProject(blanket)
    expect(plan.kit?.perKit).toEqual([
      { yarn: 'y1', grams: Math.ceil(plan.yarns[0]!.grams.high), metres: expect.any(Number) as number },
    ])
  })
})
