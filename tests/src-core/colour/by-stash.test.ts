/** M47: colourways as often as there is yarn for them, against every filling of small maps and numbers by hand. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { YarnForMotifs } from '../../../shared-types/plan'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { assignColourways } from '../../../src-core/colour/assign'
import type { Fill } from '../../../src-core/colour/assign'
import { planProject } from '../../../src-core/plan'
import { square } from './lattices'

const ids = (many: number) => Array.from({ length: many }, (_, i) => `c${i}`)

/** One yarn for each colourway. */
const stashOf = (left: readonly number[], each: readonly number[]): YarnForMotifs[] =>
  left.map((grams, i) => ({ id: `y${i}`, name: `Y${i}`, left: grams, each: { [`c${i}`]: each[i]! } }))

const assign = (
  columns: number,
  rows: number,
  stash: readonly YarnForMotifs[],
  colours: number,
  { painted, ...fill }: Partial<Fill> & { painted?: Record<string, string> } = {},
) =>
  assignColourways(
    ...([
      square(rows, columns),
      { pattern: 'by-stash', colourways: ids(colours), ...fill },
      painted,
    ] as const),
    ...([ids(colours).map((id) => ({ id })), undefined, 'straight-rows', stash] as const),
  )

const countsOf = (colourways: readonly string[], colours: number): number[] =>
  ids(colours).map((id) => colourways.filter((each) => each === id).length)

/** All ways to part so many motifs. */
function* partings(many: number, colours: number): Generator<number[]> {
  if (colours === 1) yield [many]
  else
    for (let first = 0; first <= many; first++)
      for (const rest of partings(many - first, colours - 1)) yield [first, ...rest]
}

describe('M47 as the stash goes', () => {
  it.each([
    ['scarce', 300],
    ['just enough', 350],
    ['plenty', 1000],
  ])('parts a yarn for the centres of all of them as their petals allow, where it is %s', (_, centre) => {
    // 99 motifs of 8 g of petals, by 14, 12 and 8 balls of 50 g: 99 · 14/34 = 40.8, 34.9, 23.3.
    const stash = [
      ...stashOf([700, 600, 400], [8, 8, 8]),
      { id: 'centre', name: 'Centre', left: centre, each: { c0: 3, c1: 3, c2: 3 } },
    ]
    const { colourways } = assign(9, 11, stash, 3)
    expect(countsOf(colourways, 3)).toEqual([41, 35, 23])
  })

  it('agrees with every way to part the motifs: least beyond the limits, then nearest to the shares', () => {
    const cases = fc.record({
      columns: fc.integer({ min: 1, max: 4 }),
      rows: fc.integer({ min: 1, max: 3 }),
      left: fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 2, maxLength: 4 }),
      each: fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 4, maxLength: 4 }),
      most: fc.option(fc.integer({ min: 0, max: 4 }), { nil: undefined }),
      painted: fc.array(fc.integer({ min: 0, max: 3 }), { maxLength: 3 }),
    })
    fc.assert(
      fc.property(cases, ({ columns, rows, left, each, most, painted }) => {
        const colours = left.length
        const cells = square(rows, columns)
        const own = painted.slice(0, cells.length).map((colour) => colour % colours)
        const hand = Object.fromEntries(own.map((colour, i) => [cells[i]!.id, `c${colour}`]))
        const limits = most === undefined ? {} : { most: { c0: most } }
        const { colourways } = assign(columns, rows, stashOf(left, each), colours, {
          ...limits,
          painted: hand,
        })
        const found = countsOf(colourways, colours)
        for (const [cell, id] of Object.entries(hand))
          expect(colourways[cells.findIndex((each) => each.id === cell)]).toBe(id)
        const makes = left.map((grams, i) => grams / each[i]!)
        const sum = makes.reduce((all, one) => all + one, 0)
        const shares = makes.map((one) => (sum > 0 ? one / sum : 1 / colours) * cells.length)
        const rank = (counts: readonly number[]) => [
          Math.max(0, counts[0]! - (most ?? Infinity)),
          counts.reduce((grams, many, i) => grams + Math.max(0, many * each[i]! - left[i]!), 0),
          counts.reduce((all, many, i) => all + (many - shares[i]!) ** 2, 0),
        ]
        const byHand = ids(colours).map((_, i) => own.filter((colour) => colour === i).length)
        const others = [...partings(cells.length - own.length, colours)].map((free) =>
          rank(free.map((many, i) => many + byHand[i]!)),
        )
        const best = others.reduce((least, one) => {
          const differs = one.findIndex((value, i) => Math.abs(value - least[i]!) > 1e-6)
          return differs >= 0 && one[differs]! < least[differs]! ? one : least
        })
        rank(found).forEach((value, i) => expect(value).toBeCloseTo(best[i]!, 5))
      }),
      { numRuns: 300 },
    )
  })

  it('comes to whole motifs by largest remainder (by hand)', () => {
    // 70 : 20 : 10 of 12 are 8.4, 2.4 and 1.2: the first has what is over, and of 100 it is exact.
    expect(countsOf(assign(4, 3, stashOf([70, 20, 10], [1, 1, 1]), 3).colourways, 3)).toEqual([9, 2, 1])
    expect(countsOf(assign(10, 10, stashOf([70, 20, 10], [0.1, 0.1, 0.1]), 3).colourways, 3)).toEqual([
      70, 20, 10,
    ])
    // Twice the yarn for a motif, half the motifs: 60/2 : 30/1 is 1 : 1.
    expect(countsOf(assign(4, 3, stashOf([60, 30], [2, 1]), 2).colourways, 2)).toEqual([6, 6])
    // A yarn of two colourways is parted between them: 20, 20 and 40 g.
    const shared: YarnForMotifs[] = [
      { id: 'y0', name: 'Y', left: 40, each: { c0: 1, c1: 1 } },
      { id: 'y1', name: 'Z', left: 40, each: { c2: 1 } },
    ]
    expect(countsOf(assign(8, 5, shared, 3).colourways, 3)).toEqual([10, 10, 20])
    // What was painted counts: 9 of 12, of which three stand already.
    const painted = { '1,1': 'c0', '1,2': 'c0', '1,3': 'c0' }
    const { colourways } = assign(4, 3, stashOf([70, 20, 10], [1, 1, 1]), 3, { painted })
    expect(countsOf(colourways, 3)).toEqual([9, 2, 1])
  })

  it('lies evenly over the map, and keeps to a mirror', () => {
    const { colourways } = assign(24, 24, stashOf([300, 200, 100], [0.1, 0.1, 0.1]), 3)
    expect(countsOf(colourways, 3)).toEqual([288, 192, 96])
    for (let row = 0; row < 24; row += 6)
      for (let column = 0; column < 24; column += 6) {
        const block = Array.from(
          { length: 36 },
          (_, i) => colourways[(row + Math.floor(i / 6)) * 24 + column + (i % 6)]!,
        )
        countsOf(block, 3).forEach((many, i) =>
          expect(Math.abs(many - [18, 12, 6][i]!)).toBeLessThanOrEqual(4),
        )
      }
    const mirrored = assign(6, 4, stashOf([300, 100], [1, 1]), 2, { symmetry: 'left-right' }).colourways
    expect(countsOf(mirrored, 2)).toEqual([18, 6])
    mirrored.forEach((id, at) => expect(mirrored[at - (at % 6) + 5 - (at % 6)]).toBe(id))
  })
})

const squares = (onHand: readonly number[], layout: Partial<BlanketLayout> = {}): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  yarns: onHand.map((grams, i) => ({
    ...{ id: `y${i}`, name: `Yarn ${i}`, ballGrams: 50, ballMetres: 125, onHandGrams: grams },
  })),
  motifs: ['m', 'n'].map((id) => ({
    ...{ id, kind: 'measured' as const, outline: 'square' as const, sideToSide: 80 },
    ...{ slots: [{ slot: 'all', grams: 3 }], weighed: { motifs: 1, resolution: 0 } },
  })),
  colourways: ['m', 'n'].flatMap((motif) =>
    onHand.map((_, i) => ({ id: `${motif}${i}`, motif, yarns: { all: `y${i}` } })),
  ),
  joining: { rule: 'edges' },
  allowance: { wastePercent: 10 },
  layout: {
    ...{ kind: 'blanket', motif: 'm', columns: 8, rows: 9, target: { width: 640, height: 720 } },
    cells: { fill: { pattern: 'by-stash', colourways: onHand.map((_, i) => `m${i}`) } },
    ...layout,
  },
})

describe('M47 as the stash goes, in a plan', () => {
  it('takes 36, 24 and 12 of 72 where there are 300, 200 and 100 g, and nothing is to be bought', () => {
    const plan = planProject(squares([300, 200, 100]))
    expect(plan.counts.byColourway).toEqual({ m0: 36, m1: 24, m2: 12 })
    expect(plan.yarns.map(({ toBuy }) => toBuy)).toEqual([0, 0, 0])
    // Of what is on hand the same part is used of each: 3.3 g for each motif.
    for (const { grams, onHand } of plan.yarns) expect(grams.high / onHand).toBeCloseTo((72 * 3.3) / 600, 9)
  })

  it('takes no more of a yarn than its limit, and says what is missing where there is too little of all', () => {
    const limited = squares([300, 200, 100], {
      cells: { fill: { pattern: 'by-stash', colourways: ['m0', 'm1', 'm2'], mostGrams: { y0: 66 } } },
    })
    // 66 g are 20 of 3.3 g, so 66 : 200 : 100 of 72 are 12.98, 39.3 and 19.7.
    expect(planProject(limited).counts.byColourway).toEqual({ m0: 13, m1: 39, m2: 20 })
    const little = planProject(squares([30, 20, 10]))
    expect(little.counts.byColourway).toEqual({ m0: 36, m1: 24, m2: 12 })
    expect(little.findings.map(({ code }) => code)).toContain('colours/limits-impossible')
  })

  it('shares out what each of two alternating motifs takes', () => {
    const two = squares([300, 100], { alternate: { motifs: ['m', 'n'], by: 'cell' } })
    expect(planProject(two).counts.byColourway).toEqual({ m0: 27, m1: 9, n0: 27, n1: 9 })
  })

  it('leaves all others as they are when motifs are marked as made', () => {
    const project = squares([300, 200, 100])
    const before = planProject(project)
    const made = Object.fromEntries(before.motifs.slice(0, 30).map(({ id }) => [id, '2026-10-01']))
    const held = Object.fromEntries(before.motifs.slice(0, 30).map(({ id, colourway }) => [id, colourway!]))
    const layout = {
      ...project.layout,
      cells: { fill: (project.layout as BlanketLayout).cells!.fill, held },
    }
    const after = planProject({ ...project, made, layout } as Project)
    expect(after.motifs.map(({ colourway }) => colourway)).toEqual(
      before.motifs.map(({ colourway }) => colourway),
    )
  })

  it('has about as many of each, and says so, where nobody knows what there is', () => {
    const plan = planProject(squares([0, 0, 0]))
    expect(plan.counts.byColourway).toEqual({ m0: 24, m1: 24, m2: 24 })
    const codes = (of: typeof plan) =>
      of.findings.filter(({ code }) => code === 'colours/stash-unknown').length
    expect(codes(plan)).toBe(1)
    const two = squares([0, 0], { alternate: { motifs: ['m', 'n'], by: 'cell' } })
    expect(codes(planProject(two))).toBe(1)
    expect(codes(planProject(squares([300, 200, 100])))).toBe(0)
  })
})
