/**
 * M27. In the gap between circles of radius 1 fits one of √2 − 1 = 0.4142 among four and of 2/√3 − 1 = 0.1547
 * among three (§lattice-geometry); gaps of grids and patches are counted by Euler's formula (V − E + F = 1).
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan, Point } from '../../../shared-types/plan'
import { contains, distance, moveOutline, scaleOutline, turnOutline } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import { radians } from '../../../src-core/units/quantity'
import { blanket, ROUND } from './additions'
import { runs } from '../../runs'

const disc = (across: number) => ({ outline: 'round', across })
const codes = (plan: Plan) =>
  plan.findings.map(({ code }) => code).filter((code) => code.startsWith('layout/filler'))
const said = (plan: Plan, code: string) => plan.findings.find((found) => found.code === code)

/** Fillers of this size fit the gaps of circles of 80 mm exactly. */
const IN_FOUR = 80 * (Math.SQRT2 - 1)
const IN_THREE = 80 * (2 / Math.sqrt(3) - 1)

describe('M27 where fillers stand', () => {
  it('straight rows of m × n circles: (m − 1)(n − 1) fillers of 0.4142, in the middle of four', () => {
    for (const [columns, rows] of [
      [2, 2],
      [5, 4],
      [7, 9],
    ] as const) {
      const plan = planProject(blanket(ROUND, disc(IN_FOUR), { columns, rows, fillers: { motif: 'f' } }))
      expect(plan.fillers).toHaveLength((columns - 1) * (rows - 1))
      expect(codes(plan)).toEqual([])
      plan.fillers.forEach((filler, i) => {
        expect(filler.radius / 40).toBeCloseTo(0.414214, 3)
        expect(filler.x).toBeCloseTo(80 * ((i % (columns - 1)) + 1), 1)
        expect(filler.y).toBeCloseTo(80 * (Math.floor(i / (columns - 1)) + 1), 1)
        expect(filler.joins).toBe(4)
        expect(filler.bridge).toBeLessThan(0.05)
        expect(filler.overlap).toBeLessThan(0.05)
      })
    }
  })

  it('offset rows of circles: (R − 1)(2C − 2) fillers of 0.1547, each among three', () => {
    for (const alternateRows of ['same', 'oneFewer', 'oneMore'] as const) {
      const plan = planProject(
        blanket(ROUND, disc(IN_THREE), {
          ...{ arrangement: 'offset-rows', alternateRows, columns: 6, rows: 5 },
          fillers: { motif: 'f' },
        }),
      )
      // One fewer or more in every other row takes or adds nothing but one gap at each of the four row borders.
      const change = { same: 0, oneFewer: -4, oneMore: 4 }[alternateRows]
      expect(plan.fillers).toHaveLength(4 * (2 * 6 - 2) + change)
      for (const filler of plan.fillers) expect(filler.radius / 40).toBeCloseTo(0.154701, 3)
    }
  })

  it('n rings of circles: 6n² fillers', () => {
    for (const rings of [1, 2, 4]) {
      const plan = planProject(
        blanket(ROUND, disc(IN_THREE), { arrangement: 'rings', rings, fillers: { motif: 'f' } }),
      )
      expect(plan.fillers).toHaveLength(6 * rings * rings)
    }
  })

  it('octagons leave squares, which squares of their side fill without gap or overlap', () => {
    const side = 80 * (Math.SQRT2 - 1)
    const plan = planProject(
      blanket(
        { outline: 'octagon', sideToSide: 80 },
        { outline: 'square', sideToSide: side },
        {
          fillers: { motif: 'f' },
        },
      ),
    )
    expect(plan.fillers).toHaveLength(12)
    expect(codes(plan)).toEqual([])
    expect(plan.fillers[0]).toMatchObject({ turn: 45, joins: 4 })
    expect(Math.max(plan.fillers[0]!.bridge, plan.fillers[0]!.overlap)).toBeLessThan(0.1)
  })

  it('of several kinds of openings the one takes it that it fits best; lenses between two get none', () => {
    const five = { outline: 'petals', petals: 5, overTips: 80, overValleys: 56 }
    const layout = { alternateTurn: 180, fillers: { motif: 'f' } }
    const [wide, narrow, lens] = planProject(blanket(five, disc(1), layout)).holes
    expect([wide!.sides, narrow!.sides, lens!.sides]).toEqual([4, 4, 2])
    for (const hole of [wide!, narrow!]) {
      const plan = planProject(blanket(five, disc(2 * hole.radius), layout))
      expect(plan.fillers).toHaveLength(hole.count)
      for (const filler of plan.fillers) expect(filler.radius).toBeCloseTo(hole.radius, 3)
    }
    const lenses = planProject(blanket(five, disc(2 * lens!.radius), layout))
    expect(lenses.fillers.every(({ motifs }) => motifs.length === 4)).toBe(true)
  })

  it('edging and blocking move them with the motifs', () => {
    const layout = { fillers: { motif: 'f' }, blocking: { width: 1.1, height: 0.9 } }
    const plan = planProject(
      blanket(ROUND, disc(IN_FOUR), { ...layout, edging: { rounds: ['sc'], yarn: 'y' } }),
    )
    const at = (id: string) => plan.motifs.find((motif) => motif.id === id)!
    for (const filler of plan.fillers) {
      const round = filler.motifs.map(at)
      expect(filler.x).toBeCloseTo(round.reduce((sum, { x }) => sum + x, 0) / 4, 1)
      expect(filler.y).toBeCloseTo(round.reduce((sum, { y }) => sum + y, 0) / 4, 1)
    }
  })
})

describe('M27 what is said about them', () => {
  const straight = { fillers: { motif: 'f' } }

  it('too large: by how much it overlaps; 45 mm in a gap of 33.1 reaches 5.9 mm too far', () => {
    const plan = planProject(blanket(ROUND, disc(45), straight))
    expect(said(plan, 'layout/filler-large')).toMatchObject({ severity: 'warning' })
    expect(said(plan, 'layout/filler-large')!.message).toContain('up to 5.9 mm')
    expect(plan.fillers[0]!.overlap).toBeCloseTo((45 - IN_FOUR) / 2, 1)
  })

  it('too small: what its joins bridge; 20 mm in a gap of 33.1 leaves 6.6 mm', () => {
    const plan = planProject(blanket(ROUND, disc(20), straight))
    expect(said(plan, 'layout/filler-small')).toMatchObject({ severity: 'note' })
    expect(said(plan, 'layout/filler-small')!.message).toContain('up to 6.6 mm')
    expect(plan.fillers[0]!.bridge).toBeCloseTo((IN_FOUR - 20) / 2, 1)
  })

  it('no opening: hexagons side by side, motifs apart', () => {
    const hexagons = planProject(
      blanket({ outline: 'hexagon', sideToSide: 80 }, disc(20), { ...straight, arrangement: 'offset-rows' }),
    )
    expect(codes(hexagons)).toEqual(['layout/filler-nowhere'])
    const apart = planProject(blanket(ROUND, disc(20), straight, { joining: { rule: 'apart', gap: 4 } }))
    expect(codes(apart)).toEqual(['layout/filler-nowhere'])
    expect([...hexagons.fillers, ...apart.fillers]).toEqual([])
  })

  it('an opening under one round of sc (2 w across) stays open', () => {
    const small = { outline: 'round', across: 40 }
    const plan = planProject(blanket(small, disc(6), { ...straight, arrangement: 'offset-rows' }))
    expect(codes(plan)).toEqual(['layout/filler-stays-open'])
    expect(plan.fillers).toEqual([])
    expect(said(plan, 'layout/filler-stays-open')!.message).toContain(
      '6.2 mm across; one round of sc takes about 7.7 mm',
    )
    const uk = planProject(
      blanket(
        small,
        disc(6),
        { ...straight, arrangement: 'offset-rows' },
        { terms: 'UK', gauge: { stitch: 'dc', stitches: 26, over: 100 } },
      ),
    )
    expect(said(uk, 'layout/filler-stays-open')!.message).toContain('one round of dc')
  })

  it('names what the file does not have, and takes the first colourway of the filler', () => {
    const plan = planProject(blanket(ROUND, disc(IN_FOUR), { fillers: { motif: 'x', colourway: 'q' } }))
    expect(plan.findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['file/unknown-motif', 'file/unknown-colourway']),
    )
    expect(plan.fillers).toEqual([])
    const first = planProject(blanket(ROUND, disc(IN_FOUR), straight))
    expect(new Set(first.fillers.map(({ colourway }) => colourway))).toEqual(new Set(['b']))
    const chosen = planProject(blanket(ROUND, disc(IN_FOUR), { fillers: { motif: 'f', colourway: 'c' } }))
    expect(new Set(chosen.fillers.map(({ colourway }) => colourway))).toEqual(new Set(['c']))
  })

  it('M32 a child’s blanket is checked for what stays open beside them', () => {
    const child = { forChild: true }
    const open = planProject(blanket(ROUND, disc(IN_FOUR), {}, child))
    expect(said(open, 'joins/gap-for-hands')!.message).toContain('33.1 mm')
    const filled = planProject(blanket(ROUND, disc(IN_FOUR), straight, child))
    expect(said(filled, 'joins/gap-for-hands')).toBeUndefined()
    // The circle in the cusp between two circles of radius 1 and the filler of √2 − 1, by Descartes (1643):
    // curvature k = 1 + 1 + (√2 + 1) + 2·√(1 + 2(√2 + 1)).
    const k = 3 + Math.SQRT2 + 2 * Math.sqrt(1 + 2 * (Math.SQRT2 + 1))
    expect(said(filled, 'joins/gap-for-fingers')!.message).toContain(`${((2 * 40) / k).toFixed(1)} mm`)
  })
})

describe('M27 how they are worked', () => {
  it('each after the last motif round it, joined to all of them in working direction', () => {
    for (const hand of ['right', 'left'] as const) {
      const plan = planProject(
        blanket(
          ROUND,
          { outline: 'petals', petals: 8, overTips: IN_FOUR, overValleys: 22 },
          { columns: 4, rows: 3, fillers: { motif: 'f' } },
          { hand },
        ),
      )
      const label = new Map(plan.motifs.map((motif) => [motif.id, Number(motif.label)]))
      expect(plan.fillerSteps.map(({ filler }) => filler).sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5])
      let before = 0
      for (const step of plan.fillerSteps) {
        const { motifs } = plan.fillers[step.filler]!
        expect(label.get(step.after)).toBe(Math.max(...motifs.map((id) => label.get(id)!)))
        expect(label.get(step.after)!).toBeGreaterThanOrEqual(before)
        before = label.get(step.after)!
        expect(step.joins.map(({ motif }) => motif).sort()).toEqual([...motifs].sort())
        for (const petal of [1, 3, 5, 7]) expect(step.words).toContain(`petal ${petal} to`)
      }
      expect(plan.fillerSteps[0]!.words).toBe(
        hand === 'right'
          ? 'filler between 3, 4, 5 and 6: join petal 1 to 3, at its half past 4; petal 3 to 6, at its half past 1; petal 5 to 5, at its half past 10; petal 7 to 4, at its half past 7'
          : 'filler between 3, 4, 5 and 6: join petal 1 to 4, at its half past 7; petal 3 to 5, at its half past 10; petal 5 to 6, at its half past 1; petal 7 to 3, at its half past 4',
      )
    }
  })

  it('finished ones are sewn or crocheted in where the motifs are', () => {
    const words = (seam: 'whip' | 'sc') =>
      planProject(
        blanket(
          ROUND,
          disc(IN_FOUR),
          { columns: 2, rows: 2, fillers: { motif: 'f' } },
          { joining: { rule: 'seam', seam } },
        ),
      ).fillerSteps[0]!.words
    expect(words('whip')).toMatch(
      /^filler between 1, 2, 3 and 4: sew at half past 10 to 1, at its half past 4;/,
    )
    expect(words('sc')).toMatch(/: crochet at half past 10 to 1,/)
  })

  it('M42, M43 they take yarn, ends and time of their own', () => {
    const without = planProject(blanket(ROUND, disc(IN_FOUR), {}))
    const plan = planProject(blanket(ROUND, disc(IN_FOUR), { fillers: { motif: 'f' } }))
    expect(plan.counts.motifs).toBe(20)
    expect(plan.yarns.find(({ id }) => id === 'z')!.grams.expected).toBeCloseTo(12 * 0.5, 9)
    expect(plan.ends - without.ends).toBe(12 * 2)
    // 5 minutes each, one for each of four joins, one for each end.
    expect(plan.minutes!.expected - without.minutes!.expected).toBeCloseTo(12 * (5 + 4 + 2), 9)
  })
})

const shape = fc.oneof(
  fc.record({ outline: fc.constant('round'), across: fc.constantFrom(50, 80) }),
  fc.record({
    outline: fc.constant('petals'),
    petals: fc.integer({ min: 4, max: 10 }),
    overTips: fc.constantFrom(60, 90),
    share: fc.constantFrom(0.6, 0.8),
  }),
  fc.record({ outline: fc.constantFrom('octagon', 'square'), sideToSide: fc.constantFrom(50, 80) }),
)
const measures = (given: typeof shape extends fc.Arbitrary<infer T> ? T : never) =>
  'share' in given ? { ...given, overValleys: given.overTips * given.share } : given

function placedOutline(outline: Outline, turn: number, at: Point): Outline {
  return moveOutline(turnOutline(outline, radians(turn)), at.x, at.y)
}

/** Corners of an outline and points between them. */
const dense = (outline: Outline): Point[] =>
  outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    return [0, 0.25, 0.5, 0.75].map((t) => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t }))
  })

describe('M27 properties', () => {
  it('smaller by what it is said to overlap (and a tenth of a mm) no filler reaches into a motif round it', () => {
    let fillers = 0
    fc.assert(
      fc.property(
        shape,
        shape,
        fc.constantFrom(0.25, 0.4, 0.6),
        fc.constantFrom('straight-rows' as const, 'offset-rows' as const),
        fc.constantFrom(0, 22.5, 30),
        (motif, filler, size, arrangement, turn) => {
          const small = Object.fromEntries(
            Object.entries(measures(filler)).map(([key, value]) => [
              key,
              typeof value === 'number' && key !== 'petals' ? value * size : value,
            ]),
          )
          const plan = planProject(
            blanket(measures(motif), small, {
              arrangement,
              turn,
              columns: 3,
              rows: 3,
              fillers: { motif: 'f' },
            }),
          )
          for (const each of plan.fillers) {
            fillers++
            const own = plan.fillerMotifs[0]!.outline
            const reach = Math.max(...own.map((point) => distance(point, { x: 0, y: 0 })))
            const shrunk = scaleOutline(own, (reach - each.overlap - 0.1) / reach)
            const mine = placedOutline(shrunk, each.turn, each)
            for (const id of each.motifs) {
              const placed = plan.motifs.find((entry) => entry.id === id)!
              const theirs = placedOutline(plan.motif!.outline, placed.turn, placed)
              expect(dense(mine).some((point) => contains(theirs, point))).toBe(false)
              expect(dense(theirs).some((point) => contains(mine, point))).toBe(false)
            }
          }
        },
      ),
      { numRuns: runs(60) },
    )
    expect(fillers).toBeGreaterThan(20)
  })

  it('yarn, ends and time never fall when a blanket with fillers and halves grows', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 2, max: 6 }),
        fc.boolean(),
        (c, r, wider) => {
          const at = (columns: number, rows: number) =>
            planProject(
              blanket(ROUND, disc(IN_THREE), {
                ...{ arrangement: 'offset-rows', columns, rows, halves: true, fillers: { motif: 'f' } },
              }),
            )
          const less = at(c, r)
          const more = wider ? at(c + 1, r) : at(c, r + 1)
          less.yarns.forEach((yarn) => {
            const larger = more.yarns.find(({ id }) => id === yarn.id)!
            expect(larger.grams.expected).toBeGreaterThanOrEqual(yarn.grams.expected)
          })
          expect(more.fillers.length).toBeGreaterThan(less.fillers.length)
          expect(more.ends).toBeGreaterThan(less.ends)
          expect(more.minutes!.expected).toBeGreaterThan(less.minutes!.expected)
        },
      ),
      { numRuns: runs(20) },
    )
  })
})
