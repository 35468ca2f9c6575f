import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MaterialsInput } from '../../../src-core/materials/input'
import { materials } from '../../../src-core/materials/materials'
import { resolveGauge } from '../../../src-core/stitches/gauge'
import { daisy, flower, flowerAccount, input, project } from './helpers'

const amount = fc.double({ min: 0, max: 1000, noNaN: true })
const maybe = fc.option(fc.double({ min: -10, max: 1000, noNaN: true }), { nil: undefined })
const yarnOf = (id: string) =>
  fc.record({ id: fc.constant(id), ballGrams: maybe, ballMetres: maybe, price: maybe, onHandGrams: maybe })

/** Any project that the schema lets through, odd numbers and gaps included. */
const anyInput: fc.Arbitrary<MaterialsInput> = fc
  .record({
    yarns: fc.tuple(yarnOf('y1'), yarnOf('y2')),
    weighed: fc.option(
      fc.record({
        motifs: maybe,
        grams: maybe,
        resolution: maybe,
        shares: fc.option(fc.record({ centre: maybe, petals: maybe }), { nil: undefined }),
      }),
      { nil: undefined },
    ),
    grams: fc.tuple(maybe, maybe),
    measured: fc.boolean(),
    accounted: fc.boolean(),
    colourway: fc.constantFrom('c1', '', 'nowhere'),
    motifs: fc.nat(2000),
    joins: fc.nat(5000),
    rule: fc.constantFrom('tips', 'bridge', 'seam', 'apart' as const),
    chains: maybe,
    style: fc.constantFrom('follow', 'bridge', 'level' as const),
    rounds: fc.array(fc.constantFrom('sc', 'dc', 'tr', '??'), { maxLength: 3 }),
    base: fc.option(
      fc.record({ length: amount, outerCorners: fc.nat(9), tips: fc.nat(200), chord: amount }),
      { nil: null },
    ),
    allowance: fc.option(fc.record({ wastePercent: maybe, tail: maybe }), { nil: undefined }),
    stitches: maybe,
    seam: fc.record({ length: amount, count: fc.nat(50) }),
  })
  .map((made) => {
    const slots = [
      { slot: 'centre', grams: made.grams[0] },
      { slot: 'petals', grams: made.grams[1] },
    ]
    const shares = Object.fromEntries(
      Object.entries(made.weighed?.shares ?? {}).filter(([, share]) => share !== undefined),
    ) as Record<string, number>
    const weighed = made.weighed && { ...made.weighed, shares }
    return input({
      project: project({
        yarns: made.yarns,
        allowance: made.allowance,
        joining: { rule: made.rule as 'tips', bridgeChains: made.chains, yarn: 'y2' },
        layout: { kind: 'blanket', edging: { style: made.style as 'follow', rounds: made.rounds } },
      }),
      motif: made.measured ? { ...daisy, slots, weighed } : { ...flower, weighed },
      account: made.accounted ? flowerAccount : null,
      counts: { motifs: made.motifs, byColourway: { [made.colourway]: made.motifs } },
      joinOperations: made.joins,
      seams: made.seam,
      edgingBase: made.base,
      gauge: resolveGauge({ stitches: made.stitches }, 'US'),
    })
  })

const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value]
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : []
}

describe('M42 totals', () => {
  it('M42 never answers NaN or infinity, and keeps low ≤ expected ≤ high', () => {
    fc.assert(
      fc.property(anyInput, (made) => {
        const found = materials(made)
        for (const number of numbersIn(found)) expect(Number.isFinite(number)).toBe(true)
        for (const { grams, metres } of found.yarns) {
          for (const range of [grams, ...(metres ? [metres] : [])]) {
            expect(range.low).toBeGreaterThanOrEqual(0)
            expect(range.low).toBeLessThanOrEqual(range.expected)
            expect(range.expected).toBeLessThanOrEqual(range.high)
          }
        }
        expect(JSON.stringify(found.findings)).not.toMatch(/NaN|undefined|Infinity/)
      }),
      { numRuns: 500 },
    )
  })

  it('M42 parts add up to the expected grams exactly', () => {
    fc.assert(
      fc.property(anyInput, (made) => {
        for (const { grams, parts } of materials(made).yarns) {
          expect(parts.motifs + parts.joins + parts.edging + parts.tails + parts.waste).toBe(grams.expected)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('M42 balls hold the high value, leftovers and stash add up', () => {
    fc.assert(
      fc.property(anyInput, (made) => {
        const found = materials(made)
        for (const { id, grams, balls, toBuy, leftover } of found.yarns) {
          const yarn = made.basis.yarns?.find((candidate) => candidate.id === id)
          if (balls === null || toBuy === null || leftover === null || !yarn?.ballGrams) continue
          const stash = Math.max(0, yarn.onHandGrams ?? 0)
          // A billionth of a ball is a rounding error, not a ball.
          const rounding = 1e-6 * (yarn.ballGrams + grams.high)
          expect(balls * yarn.ballGrams).toBeGreaterThanOrEqual(grams.high - rounding)
          expect((balls - 1) * yarn.ballGrams).toBeLessThanOrEqual(grams.high)
          expect(stash + toBuy * yarn.ballGrams - grams.expected).toBeCloseTo(leftover, 6)
          expect(toBuy).toBeLessThanOrEqual(balls)
          expect(stash + toBuy * yarn.ballGrams).toBeGreaterThanOrEqual(grams.high - rounding)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('M42 is monotone: more motifs, joins, seams, waste or a longer edge never take less yarn', () => {
    const grow = (made: MaterialsInput): MaterialsInput[] => {
      const id = Object.keys(made.counts.byColourway)[0] ?? ''
      const motifs = made.counts.motifs + 7
      const stated = made.basis.allowance?.wastePercent
      const waste = (stated !== undefined && stated >= 0 ? stated : 10) + 5
      return [
        { ...made, counts: { motifs, byColourway: { [id]: motifs } } },
        { ...made, joinOperations: made.joinOperations + 3 },
        { ...made, seams: { length: made.seams.length + 100, count: made.seams.count + 1 } },
        {
          ...made,
          basis: { ...made.basis, allowance: { ...made.basis.allowance, wastePercent: waste } },
        },
        {
          ...made,
          edgingBase: made.edgingBase && { ...made.edgingBase, length: made.edgingBase.length + 50 },
        },
      ]
    }
    fc.assert(
      fc.property(anyInput, (made) => {
        const before = new Map(materials(made).yarns.map((need) => [need.id, need.grams]))
        for (const more of grow(made)) {
          for (const { id, grams } of materials(more).yarns) {
            const was = before.get(id)?.expected ?? 0
            expect(grams.expected).toBeGreaterThanOrEqual(was * (1 - 1e-12))
          }
        }
      }),
    )
  })

  it('M42 scales: k times the motifs take k times the yarn', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 20 }), (motifs, k) => {
        const grams = (count: number) =>
          materials(input({ counts: { motifs: count, byColourway: { c1: count } } })).yarns.map(
            (need) => need.grams.high,
          )
        const one = grams(motifs)
        grams(motifs * k).forEach((many, index) => expect(many / (one[index] ?? 0)).toBeCloseTo(k, 9))
      }),
    )
  })
})
