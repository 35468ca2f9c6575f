/** M46: within limits a pattern stays as it was chosen, and what changes limits a little changes few motifs. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { YarnForMotifs } from '../../../shared-types/plan'
import type { ColourCell, Fill } from '../../../src-core/colour/assign'
import { assignByMotif } from '../../../src-core/colour/by-hand'
import { offset, square } from './lattices'
import { runs } from '../../runs'

const ALL = ['c0', 'c1', 'c2', 'c3', 'c4']
const WAYS = ALL.map((id, index) => ({ id, code: 'ABCDE'[index], motif: 'm1' }))
const SAME = ['repeat', 'shade', 'scatter'] as const
const PATTERNS = [...SAME, 'rows'] as const
/** Of these the file remembers what stood, so that they are tried with whole projects below. */
const IN_TURN = ['repeat', 'shade', 'rows'] as const

interface Case {
  readonly cells: readonly ColourCell[]
  readonly fill: Fill
  readonly painted?: Record<string, string>
  readonly held?: Record<string, string>
  readonly stash?: readonly YarnForMotifs[]
}
const coloursOf = ({ cells, fill, painted, held, stash = [] }: Case): readonly string[] =>
  assignByMotif(
    ...([
      cells.map((cell) => ({ ...cell, kind: 0 })),
      { seed: 7, ...fill },
      painted,
      WAYS,
      undefined,
    ] as const),
    ...(['straight-rows', ['m1'], stash, held] as const),
  ).colourways
const countsOf = (colourways: readonly string[]): number[] =>
  ALL.map((id) => colourways.filter((each) => each === id).length)
const changed = (one: readonly string[], other: readonly string[]): number[] =>
  one.flatMap((id, cell) => (id === other[cell] ? [] : [cell]))
const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)
const apart = (one: readonly number[], other: readonly number[]): number =>
  sum(one.map((many, at) => Math.abs(many - other[at]!)))

const moss = (left: number, each: readonly number[], id = 'y1'): YarnForMotifs => ({
  ...{ id, name: 'Moss', left },
  each: Object.fromEntries(each.map((grams, at) => [ALL[at]!, grams])),
})
const grams = fc.constantFrom(0, 0.5, 1.54, 3, 5.17)
const maps = fc.record({
  rows: fc.integer({ min: 3, max: 9 }),
  columns: fc.integer({ min: 3, max: 9 }),
  isOffset: fc.boolean(),
  colours: fc.integer({ min: 2, max: 5 }),
  sequence: fc.array(fc.nat(4), { minLength: 1, maxLength: 6 }),
  each: fc.array(grams, { minLength: 5, maxLength: 5 }),
  other: fc.array(grams, { minLength: 5, maxLength: 5 }),
  /** How much of what the plain pattern takes there is, and what is nudged. */
  share: fc.double({ min: 0.2, max: 1.1, noNaN: true }),
  nudge: fc.double({ min: -12, max: 12, noNaN: true }),
  most: fc.option(fc.nat(20), { nil: undefined }),
})
type Drawn = typeof maps extends fc.Arbitrary<infer Value> ? Value : never

/** A case whose limits bind, as a function of the grams there are more. */
function drawn(pattern: Fill['pattern'], { rows, columns, isOffset, ...of }: Drawn): (more: number) => Case {
  const cells = (isOffset ? offset : square)(rows, columns)
  const chosen = ALL.slice(0, of.colours)
  const turns = [...of.sequence.map((at) => chosen[at % of.colours]!), ...chosen]
  const fill: Fill = {
    ...{ pattern, colourways: turns },
    ...(of.most !== undefined && { most: { c0: of.most } }),
  }
  const plain = countsOf(coloursOf({ cells, fill: { ...fill, most: {} } }))
  const takes = (each: readonly number[]): number => sum(plain.map((many, at) => many * each[at]!))
  return (more) => ({
    ...{ cells, fill },
    stash: [moss(takes(of.each) * of.share + more, of.each), moss(takes(of.other) * 0.9, of.other, 'y2')],
  })
}

describe('M46 a fill within limits is stable', () => {
  it.each(PATTERNS)('what leaves the counts as they are changes no motif: %s', (pattern) => {
    fc.assert(
      fc.property(maps, (map) => {
        const of = drawn(pattern, map)
        const [before, after] = [coloursOf(of(0)), coloursOf(of(map.nudge))]
        if (apart(countsOf(before), countsOf(after)) === 0) expect(after).toEqual(before)
      }),
      { numRuns: runs(300) },
    )
  })

  it.each(SAME)('so many more or fewer of a colour change about as many motifs: %s', (pattern) => {
    fc.assert(
      fc.property(maps, (map) => {
        const of = drawn(pattern, map)
        const [before, after] = [coloursOf(of(0)), coloursOf(of(map.nudge))]
        const moved = apart(countsOf(before), countsOf(after))
        expect(changed(before, after).length).toBeLessThanOrEqual(2 * moved)
      }),
      { numRuns: runs(300) },
    )
  })

  it.each(IN_TURN)('marking motifs as made, in any order, changes none: %s', (pattern) => {
    fc.assert(
      fc.property(maps, fc.array(fc.nat(80), { maxLength: 40 }), (map, marks) => {
        const of = drawn(pattern, map)(0)
        const before = coloursOf(of)
        const made = marks.flatMap((mark) => of.cells[mark % of.cells.length] ?? [])
        const held = Object.fromEntries(
          made.map(({ id }) => [id, before[of.cells.findIndex((c) => c.id === id)]!]),
        )
        expect(changed(before, coloursOf({ ...of, held }))).toEqual([])
        expect(changed(before, coloursOf({ ...of, painted: held }))).toEqual([])
      }),
      { numRuns: runs(200) },
    )
  })

  it('takes the counts that come nearest to the pattern, of all that there are', () => {
    fc.assert(
      fc.property(maps, (map) => {
        const of = drawn('repeat', { ...map, colours: 3 })(0)
        const { fill, stash, cells } = of
        const wish = countsOf(coloursOf({ cells, fill: { ...fill, most: {} } }))
        const costOf = (counts: readonly number[]): readonly number[] => [
          Math.max(0, counts[0]! - (fill.most?.c0 ?? Infinity)),
          sum(
            stash!.map(({ left, each }) =>
              Math.max(0, sum(counts.map((many, at) => many * (each[ALL[at]!] ?? 0))) - left),
            ),
          ),
          sum(counts.map((many, at) => (many - wish[at]!) ** 2)),
        ]
        const isLess = (one: readonly number[], other: readonly number[]): boolean => {
          const at = one.findIndex((cost, place) => Math.abs(cost - other[place]!) > 1e-5)
          return at >= 0 && one[at]! < other[at]!
        }
        const found = costOf(countsOf(coloursOf(of)))
        // A pattern is left for nothing but to come nearer to its limits.
        if (!isLess(found.slice(0, 2), costOf(wish).slice(0, 2))) {
          expect(found).toEqual(costOf(wish))
          return
        }
        for (let a = 0; a <= cells.length; a++)
          for (let b = 0; a + b <= cells.length; b++)
            expect(isLess(costOf([a, b, cells.length - a - b, 0, 0]), found)).toBe(false)
      }),
      { numRuns: runs(60) },
    )
  })

  it.each(SAME)('one painted motif changes few others: %s', (pattern) => {
    const far: number[] = []
    fc.assert(
      fc.property(maps, fc.nat(80), fc.nat(4), (map, at, way) => {
        const of = drawn(pattern, map)(0)
        const before = coloursOf(of)
        const cell = at % of.cells.length
        const painted = { [of.cells[cell]!.id]: ALL[way % map.colours]! }
        const others = changed(before, coloursOf({ ...of, painted })).filter((each) => each !== cell)
        far.push(others.length)
        expect(others.length).toBeLessThanOrEqual(9)
      }),
      { numRuns: runs(300) },
    )
    expect(sum(far) / far.length).toBeLessThan(1.5)
  })
})
