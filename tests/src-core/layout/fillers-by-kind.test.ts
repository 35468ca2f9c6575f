/**
 * M27: a filler, or none, for each kind of opening. Openings are counted by hand; the circle that touches three
 * touching ones comes from Descartes' theorem (k₄ = k₁ + k₂ + k₃ + 2√(k₁k₂ + k₂k₃ + k₃k₁), from memory); what fillers make
 * of the openings is counted by Euler's formula, V − E + F = 1 for what hangs together.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { blanket, ROUND } from './additions'
import { runs } from '../../runs'

type Fillers = NonNullable<Extract<NonNullable<Project['layout']>, { kind: 'blanket' }>['fillers']>

const LARGE = 40
const SMALL = 20
const disc = (id: string, across: number) => ({
  ...{ id, kind: 'measured' as const, outline: 'round' as const, across, minutes: 6 },
  slots: [{ slot: 'all', grams: 1 }],
})
const way = (id: string, motif: string) => ({ id, motif, yarns: { all: 'z' } })

/** Rows of circles of 80 mm and shifted rows of circles of 40 mm by turns; fillers `f` of 9.4 mm and `g` of 13.3 mm. */
function largeAndSmall(columns: number, rows: number, fillers?: Fillers): Project {
  const project = blanket(
    ROUND,
    { outline: 'round', across: 2 * IN_THREE },
    {
      ...{ arrangement: 'offset-rows', columns, rows, alternate: { motifs: ['m', 's'], by: 'row' } },
      cells: { fill: { pattern: 'one', colourways: ['a', 'sw'] } },
      ...(fillers && { fillers }),
    },
  )
  return {
    ...project,
    motifs: [...project.motifs!, disc('s', 2 * SMALL), disc('g', 2 * IN_FOUR)],
    colourways: [...project.colourways!, way('sw', 's'), way('gw', 'g')],
  }
}

/** Between two large circles that touch and a small one that touches both. */
const IN_THREE = (() => {
  const [k1, k2, k3] = [1 / LARGE, 1 / LARGE, 1 / SMALL] as const
  return 1 / (k1 + k2 + k3 + 2 * Math.sqrt(k1 * k2 + k2 * k3 + k3 * k1))
})()

/**
 * Between two small ones beside each other and the large ones over and under them: the largest circle touches both
 * large ones and one of the small ones, t from the middle: √(h² + t²) − 40 = (40 − t) − 20, h² = 60² − 40². So
 * t = 13.3 and the other small one is 26.7 mm away, behind a neck of 2(h − 40) = 9.4 mm: two of these circles stand
 * in the opening, each joined to three motifs.
 */
const IN_FOUR = (() => {
  const h2 = (LARGE + SMALL) ** 2 - LARGE ** 2
  const reach = 2 * LARGE - SMALL
  return LARGE - SMALL - (reach ** 2 - h2) / (2 * reach)
})()

const kindsOf = ({ openings }: Plan) =>
  openings.map(({ between, nth, count, filler }) => [between.join(' '), nth, count, filler] as const)
const found = (plan: Plan) => plan.findings.filter(({ code }) => code.startsWith('layout/filler'))

describe('M27 kinds of openings', () => {
  it('m × n circles in straight rows have one of (m − 1)(n − 1), offset rows one of (R − 1)(2C − 2)', () => {
    for (const [columns, rows] of [
      [2, 2],
      [5, 4],
      [7, 3],
    ] as const) {
      const straight = planProject(blanket(ROUND, ROUND, { columns, rows }))
      expect(kindsOf(straight)).toEqual([['m m m m', 1, (columns - 1) * (rows - 1), null]])
      const offset = planProject(blanket(ROUND, ROUND, { arrangement: 'offset-rows', columns, rows }))
      expect(kindsOf(offset)).toEqual([['m m m', 1, (rows - 1) * (2 * columns - 2), null]])
    }
  })

  it('hexagons that meet side to side, and squares, have none', () => {
    const hexagon = { outline: 'hexagon', sideToSide: 80 }
    expect(planProject(blanket(hexagon, ROUND, { arrangement: 'offset-rows', turn: 0 })).openings).toEqual([])
    expect(planProject(blanket({ outline: 'square', sideToSide: 80 }, ROUND, {})).openings).toEqual([])
  })

  it('rows of large and small ones: (R − 1)(C − 1) of three and (C − 1) of four for every small row between two large', () => {
    for (const [columns, rows] of [
      [4, 3],
      [7, 6],
      [5, 5],
    ] as const) {
      const plan = planProject(largeAndSmall(columns, rows))
      const between = Math.floor((rows - 1) / 2)
      expect(kindsOf(plan)).toEqual([
        ['m m s s', 1, between * (columns - 1), null],
        ['m m s', 1, (rows - 1) * (columns - 1), null],
      ])
      expect(plan.openings[0]!.radius).toBeCloseTo(IN_FOUR, 1)
      expect(plan.openings[1]!.radius).toBeCloseTo(IN_THREE, 1)
      // V − E + F = 1: every meeting of two circles is one join point.
      const openings = plan.openings.reduce((sum, { count }) => sum + count, 0)
      expect(plan.counts.motifs - plan.joins.length + openings).toBe(1)
    }
  })

  it('of two kinds between the same motifs the larger is the first: five petals, every other row upside down', () => {
    const five = { outline: 'petals', petals: 5, overTips: 80, overValleys: 56 }
    const plan = planProject(blanket(five, ROUND, { alternateTurn: 180 }))
    expect(kindsOf(plan).map(([between, nth]) => [between, nth])).toEqual([
      ['m m m m', 1],
      ['m m m m', 2],
    ])
    expect(plan.openings.reduce((sum, { count }) => sum + count, 0)).toBe(4 * 3)
    expect(plan.openings[0]!.radius).toBeGreaterThan(plan.openings[1]!.radius)
  })

  it('tell what lies round one of them: each motif touches the largest circle or lies beyond it', () => {
    for (const { around, radius, between } of planProject(largeAndSmall(5, 5)).openings) {
      expect(around.map(({ motif }) => motif).sort()).toEqual([...between].sort())
      const gaps = around.map(({ motif, x, y }) => Math.hypot(x, y) - (motif === 'm' ? LARGE : SMALL))
      expect(Math.min(...gaps)).toBeCloseTo(radius, 1)
    }
  })
})

describe('M27 fillers by kind of opening', () => {
  const three = { between: ['m', 's', 'm'], motif: 'f' }
  const four = { between: ['s', 's', 'm', 'm'], motif: 'g' }

  it('each kind takes its own: places, joins, colourways, yarn and time', () => {
    const bare = planProject(largeAndSmall(7, 6))
    const plan = planProject(largeAndSmall(7, 6, { openings: [three, { ...four, colourway: 'gw' }] }))
    expect(kindsOf(plan)).toEqual([
      ['m m s s', 1, 12, 'g'],
      ['m m s', 1, 30, 'f'],
    ])
    const by = (id: string) => plan.fillers.filter(({ motif }) => motif === id)
    expect([by('f').length, by('g').length]).toEqual([30, 2 * 12])
    expect(
      by('f').every(
        ({ joins, motifs, colourway }) => joins === 3 && motifs.length === 3 && colourway === 'b',
      ),
    ).toBe(true)
    expect(by('g').every(({ joins, colourway }) => joins === 3 && colourway === 'gw')).toBe(true)
    expect(plan.fillerMotifs.map(({ id }) => id).sort()).toEqual(['f', 'g'])
    expect(plan.counts.fillers).toBe(54)
    expect(plan.counts.joins).toBe(plan.joins.length + 3 * 30 + 3 * 24)
    // 30 of 0.5 g and 24 of 1 g, in yarn z with the small motifs of 1 g; without waste.
    const motifs = (one: Plan) => one.yarns.find(({ id }) => id === 'z')!.parts.motifs
    expect(motifs(plan) - motifs(bare)).toBeCloseTo(30 * 0.5 + 24 * 1, 6)
    expect(plan.minutes!.expected - bare.minutes!.expected).toBeGreaterThanOrEqual(30 * 5 + 24 * 6)
    // Every filler comes after the motifs round it, and says which one it is.
    expect(plan.fillerSteps).toHaveLength(54)
    const made = new Set<string>()
    for (const { motif, kind } of plan.order) {
      if (kind === 'filler')
        for (const round of plan.fillers.find(({ id }) => id === motif)!.motifs) expect(made).toContain(round)
      made.add(motif)
    }
  })

  it('leave what is left open: the joins of all are V − E + F = 1 whatever is filled', () => {
    const choice = fc.constantFrom(null, undefined, 'f', 'g')
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 6 }),
        fc.integer({ min: 3, max: 7 }),
        choice,
        choice,
        choice,
        (columns, rows, main, inThree, inFour) => {
          const plan = planProject(
            largeAndSmall(columns, rows, {
              ...(main && { motif: main }),
              openings: [
                { ...three, motif: inThree },
                { ...four, motif: inFour },
              ],
            }),
          )
          const filled = plan.openings.filter(({ filler }) => filler !== null)
          // Among three one, joined to three; among four one in each lobe.
          const fillers = filled.reduce((sum, { count, between }) => sum + count * (between.length - 2), 0)
          const sides = 3 * fillers
          expect(plan.fillers.reduce((sum, { joins }) => sum + joins, 0)).toBe(sides)
          const openings = plan.openings.reduce((sum, { count }) => sum + count, 0)
          expect(plan.fillers).toHaveLength(fillers)
          const [vertices, edges] = [plan.counts.motifs + fillers, plan.joins.length + sides]
          expect(vertices - edges + (openings - fillers + sides)).toBe(1)
          // What is chosen for a kind is what it has, none too; what has no choice of its own has the filler of all or none.
          const of = (between: string) =>
            plan.openings.find((each) => each.between.join(' ') === between)!.filler
          for (const [between, own] of [
            ['m m s', inThree],
            ['m m s s', inFour],
          ] as const)
            if (own !== undefined) expect(of(between)).toBe(own)
            else expect([main ?? null, null]).toContain(of(between))
        },
      ),
      { numRuns: runs(25) },
    )
  })

  it('the filler of all goes where it fits best, as in files without kinds, and nowhere where that kind has its own', () => {
    const plain = planProject(largeAndSmall(5, 5, { motif: 'f' }))
    expect(kindsOf(plain).map(([, , , filler]) => filler)).toEqual([null, 'f'])
    const both = planProject(largeAndSmall(5, 5, { motif: 'f', openings: [four] }))
    expect(kindsOf(both).map(([, , , filler]) => filler)).toEqual(['g', 'f'])
    const moved = planProject(largeAndSmall(5, 5, { motif: 'f', openings: [{ ...three, motif: null }] }))
    expect(moved.fillers).toEqual([])
    expect(found(moved)).toEqual([])
  })

  it('the second entry between the same motifs is for the next smaller kind', () => {
    const five = { outline: 'petals', petals: 5, overTips: 80, overValleys: 56 }
    const between = ['m', 'm', 'm', 'm']
    const plan = planProject(
      blanket(
        five,
        { outline: 'round', across: 20 },
        {
          alternateTurn: 180,
          fillers: {
            openings: [
              { between, motif: null },
              { between, motif: 'f' },
            ],
          },
        },
      ),
    )
    expect(kindsOf(plan).map(([, , , filler]) => filler)).toEqual([null, 'f'])
    expect(plan.fillers).toHaveLength(plan.openings[1]!.count)
  })

  it('as one makes them: what is left of either kind is its own yarn and time, by hand', () => {
    const project = largeAndSmall(7, 6, { openings: [three, four] })
    const plan = planProject(project)
    const left = (open: readonly string[]) => {
      const made = [...plan.motifs, ...plan.fillers.filter(({ motif }) => !open.includes(motif))].map(
        ({ id }) => id,
      )
      const { progress } = planProject({ ...project, made: Object.fromEntries(made.map((id) => [id, ''])) })
      const yarn = progress.left.yarns.find(({ id }) => id === 'z')
      return {
        others: progress.left.others,
        grams: yarn?.parts.motifs ?? 0,
        minutes: progress.left.minutes?.expected ?? 0,
      }
    }
    const [none, f, g, both] = [left([]), left(['f']), left(['g']), left(['f', 'g'])]
    expect([none, f, g, both].map(({ others }) => others)).toEqual([0, 30, 24, 54])
    expect(f.grams).toBeCloseTo(30 * 0.5, 6)
    expect(g.grams).toBeCloseTo(24 * 1, 6)
    expect(both.grams).toBeCloseTo(39, 6)
    expect(f.minutes + g.minutes - none.minutes).toBeCloseTo(both.minutes, 6)
  })

  it('one motif may fill several kinds', () => {
    const plan = planProject(largeAndSmall(4, 3, { openings: [three, { ...four, motif: 'f' }] }))
    expect(plan.fillers).toHaveLength(2 * 3 + 2 * 3)
    expect(plan.fillerMotifs).toHaveLength(1)
  })
})

describe('M27 what is said about fillers by kind', () => {
  const three = { between: ['m', 'm', 's'] }
  const four = { between: ['m', 'm', 's', 's'] }

  it('too large for one kind and too small for the other, each where it was chosen', () => {
    const project = largeAndSmall(5, 5, {
      openings: [
        { ...three, motif: 'g' },
        { ...four, motif: 'f' },
      ],
    })
    const large = found(planProject(project))
    expect(large.map(({ code, where }) => [code, where])).toContainEqual([
      'layout/filler-large',
      'layout.fillers.openings[0]',
    ])
    expect(large[0]!.message).toContain('between 3 motifs')
    const tiny = {
      ...project,
      motifs: project.motifs!.map((motif) => (motif.id === 'f' ? { ...motif, across: 4 } : motif)),
    } as Project
    expect(found(planProject(tiny)).map(({ code, where }) => [code, where])).toContainEqual([
      'layout/filler-small',
      'layout.fillers.openings[1]',
    ])
  })

  it('a kind that there is not, and motifs that nobody knows', () => {
    const plan = planProject(
      largeAndSmall(5, 5, {
        openings: [
          { between: ['m', 'm', 'm'], motif: 'f' },
          { ...four, motif: 'x' },
        ],
      }),
    )
    expect(found(plan)).toMatchObject([
      { code: 'layout/filler-kind-missing', severity: 'note', where: 'layout.fillers.openings[0]' },
    ])
    expect(plan.findings).toContainEqual(
      expect.objectContaining({ code: 'file/unknown-motif', where: 'layout.fillers.openings[1].motif' }),
    )
    expect(plan.fillers).toEqual([])
  })
})
