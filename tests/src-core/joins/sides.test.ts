/** M34, M43: motifs that are joined along whole sides: how many sides, how long, in how many stitches, and their time. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { sidesJoined } from '../../../src-core/figures/seam-words'
import { closedBySides, seamsBetween } from '../../../src-core/joins/sides'
import { MATERIAL_CONSTANTS } from '../../../src-core/materials/constants'
import { planProject } from '../../../src-core/plan'
import { settled } from '../../../src-core/settled'

const [COLUMNS, ROWS, SIDE, WIDTH] = [4, 3, 100, 5]
/** 4 × 3 squares of 100 mm, sewn; a stitch is 5 mm wide. */
const sewn = (joining: Project['joining'] = { rule: 'seam' }, changes: Partial<Project> = {}): Project => ({
  format: 'petalyard-project',
  version: 1,
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 20 * WIDTH, hook: 4 },
  motifs: [
    { id: 'm', kind: 'measured', outline: 'square', sideToSide: SIDE, minutes: 10, slots: [{ slot: 'all' }] },
  ],
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: COLUMNS, rows: ROWS },
  joining,
  ...changes,
})
/** A grid has so many sides between its squares. */
const SIDES = ROWS * (COLUMNS - 1) + COLUMNS * (ROWS - 1)

describe('M43 squares that are sewn', () => {
  it('are joined along 2mn − m − n sides, from corner to corner, in stitches as wide as the gauge says', () => {
    const { counts, settled: made } = planProject(sewn())
    expect(counts.sides).toMatchObject({ count: SIDES, stitches: SIDES * (SIDE / WIDTH) })
    expect(counts.sides!.length).toBeCloseTo(SIDES * SIDE, 6)
    // Corners and places between them all lie on seams.
    expect(counts.sides!.points).toBe(counts.joins)
    expect(sidesJoined(counts, made)).toBe('17 seams, 1.7 m in all, about 340 stitches by length')
  })

  it('take the time of their stitches, not one minute for each join point or side', () => {
    const { minutes, ends } = planProject(sewn())
    const stitches = SIDES * (SIDE / WIDTH)
    const seams = stitches * MATERIAL_CONSTANTS.seamStitchMinutes
    expect(minutes!.expected).toBeCloseTo(12 * 10 + seams + ends, 6)
    // Twice as wide stitches are half as many.
    const wide = planProject(
      sewn(undefined, { gauge: { stitch: 'sc', stitches: 10, rows: 11, over: 100, hook: 8 } }),
    )
    expect(wide.minutes!.expected).toBeCloseTo(12 * 10 + seams / 2 + wide.ends, 6)
  })

  it('take the minutes that the maker says for each seam, where there are any', () => {
    const plan = planProject(sewn({ rule: 'seam', minutes: 2 }))
    expect(plan.minutes!.expected).toBeCloseTo(12 * 10 + 2 * SIDES + plan.ends, 6)
    // Of what is left, those of the seams that are left: without the three of the first row.
    const row = Object.fromEntries([1, 2, 3, 4].map((place) => [`1,${place}`, '']))
    const { left } = planProject(sewn({ rule: 'seam', minutes: 2 }, { made: row, joined: row })).progress
    expect(left.minutes!.expected).toBeCloseTo(8 * 10 + 2 * (SIDES - 3) + left.ends, 6)
  })

  it('have only those seams still to come whose motifs are not joined', () => {
    const all = planProject(sewn())
    // The first row is sewn: its three sides are done.
    const row = Object.fromEntries([1, 2, 3, 4].map((place) => [`1,${place}`, '']))
    const { left } = planProject(sewn(undefined, { made: row, joined: row })).progress
    const stitches = (SIDES - 3) * (SIDE / WIDTH)
    const minutes = 8 * 10 + stitches * MATERIAL_CONSTANTS.seamStitchMinutes + left.ends
    expect(left.minutes!.expected).toBeCloseTo(minutes, 6)
    expect(planProject(sewn(undefined, { made: {} })).progress.left.minutes).toEqual(all.minutes)
  })
})

describe('M34 M43 hexagons that are sewn in rows', () => {
  /** Every hexagon has six edges: what is not on the rim is shared by two. */
  const seamsOf = (columns: number, rows: number): number => {
    const rim = 4 * rows + 4 * columns - 2
    return 3 * columns * rows - rim / 2
  }

  it.each([
    [1, 2],
    [3, 3],
    [6, 5],
    [7, 8],
    [12, 10],
  ])(
    '%i × %i: a seam of one edge for every two that meet, none for points where three do',
    (columns, rows) => {
      const plan = planProject(
        sewn(
          { rule: 'seam', seam: 'whip', minutes: 6, yarn: 'y' },
          {
            motifs: [
              {
                ...{ id: 'm', kind: 'measured', outline: 'hexagon', sideToSide: SIDE, minutes: 10 },
                slots: [{ slot: 'all' }],
              },
            ],
            yarns: [{ id: 'y', ballGrams: 50, ballMetres: 125 }],
            layout: { kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns, rows },
          },
        ),
      )
      const seams = seamsOf(columns, rows)
      expect(plan.counts.sides!.count).toBe(seams)
      expect(plan.counts.sides!.length).toBeCloseTo((seams * SIDE) / Math.sqrt(3), 6)
      expect(plan.time!.joins).toBeCloseTo(6 * seams, 6)
      // Whip stitch takes three times what it closes; 125 m are 50 g.
      const metres = (3 * seams * SIDE) / Math.sqrt(3) / 1000
      expect(plan.yarns[0]!.parts.joins).toBeCloseTo((metres * 50) / 125, 6)
      expect(sidesJoined(plan.counts, plan.settled)).toMatch(new RegExp(`^${seams} seams?,`))
    },
  )
})

describe('M34 M43 what is sewn in the round', () => {
  const round = (layout: object, outline: 'square' | 'hexagon' = 'square'): Project =>
    sewn(undefined, {
      motifs: [{ id: 'm', kind: 'measured', outline, sideToSide: SIDE, slots: [{ slot: 'all', grams: 4 }] }],
      yarns: [{ id: 'y', ballGrams: 50, ballMetres: 125 }],
      colourways: [{ id: 'c', motif: 'm', yarns: { all: 'y' } }],
      joining: { rule: 'seam', seam: 'whip', yarn: 'y' },
      layout: {
        ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm', rows: ROWS, inTheRound: true },
        ...layout,
      } as Project['layout'],
    })

  it.each([3, 4, 5, 8])('%i squares round about have m · n + m · (n − 1) seams of their side', (columns) => {
    const { counts, yarns, progress } = planProject(round({ columns }))
    const sides = columns * ROWS + columns * (ROWS - 1)
    expect(counts.sides).toMatchObject({ count: sides, stitches: sides * (SIDE / WIDTH) })
    expect(counts.sides!.length).toBeCloseTo(sides * SIDE, 6)
    // The same without the round, and without the seam that closes each of its rows.
    const flat = planProject(round({ columns, inTheRound: false }))
    expect(counts.sides!.length - flat.counts.sides!.length).toBeCloseTo(ROWS * SIDE, 6)
    // By the piece, as the work goes, they are as long as by the whole.
    const begun = planProject({ ...round({ columns }), made: {} })
    expect(begun.progress.left.yarns).toEqual(progress.left.yarns)
    expect(yarns[0]!.parts.joins).toBeGreaterThan(flat.yarns[0]!.parts.joins)
    expect(yarns[0]!.parts.joins).toBeLessThan((flat.yarns[0]!.parts.joins * sides) / (sides - ROWS) + 1)
  })

  it.each([3, 4, 7])(
    '%i hexagons round about have m · n + 2 · m · (n − 1) seams of their side',
    (columns) => {
      const { sides } = planProject(round({ columns, arrangement: 'offset-rows' }, 'hexagon')).counts
      const count = columns * ROWS + 2 * columns * (ROWS - 1)
      expect(sides!.count).toBe(count)
      expect(sides!.length).toBeCloseTo((count * SIDE) / Math.sqrt(3), 6)
    },
  )

  it('two that meet on both sides of each other have two seams, each as long as it is', () => {
    // A large square on two places and a small one on the third; below them the same again.
    const large = planProject({
      ...round({
        ...{ columns: 3, rows: 2 },
        cells: { motifs: { '1,1': 'l' }, large: { '1,1': 2 } },
      }),
      motifs: [
        { id: 'm', kind: 'measured', outline: 'square', sideToSide: SIDE },
        { id: 'l', kind: 'measured', outline: 'square', sideToSide: 2 * SIDE },
      ],
    })
    expect(large.motifs).toHaveLength(3)
    // The large one has each small one at its left and at its right, and these meet each other.
    expect(large.counts.sides!.count).toBe(5)
    expect(large.counts.sides!.length).toBeCloseTo(5 * SIDE, 6)
  })
})

describe('What is joined at points', () => {
  it('has no sides, and its minutes are those of its join points', () => {
    const plan = planProject(sewn({ rule: 'tips' }))
    expect(plan.counts.sides).toBeUndefined()
    expect(plan.minutes!.expected).toBeCloseTo(12 * 10 + plan.counts.joins! + plan.ends, 6)
  })

  it('is a seam at a point where two share one place alone, and no side closes it', () => {
    const nodes = [{ x: 0, y: 0, members: [{ motif: 0 }, { motif: 1 }] }]
    const seams = seamsBetween(nodes)
    expect(seams).toMatchObject([{ isSide: false }])
    expect(closedBySides(seams)(nodes[0]!)).toBe(0)
  })

  it('where four corners meet is closed by sides as far as these reach', () => {
    const side = (one: number, other: number) => ({
      ...{ motifs: [one, other] as const, length: 1, isSide: true },
    })
    const corner = { x: 0, y: 0, members: [0, 1, 2, 3].map((motif) => ({ motif })) }
    expect(closedBySides([side(0, 1), side(2, 3), side(1, 3)])(corner)).toBe(3)
    expect(closedBySides([side(0, 1), side(2, 3)])(corner)).toBe(2)
    expect(closedBySides([])(corner)).toBe(0)
  })
})

describe('M27 M43 square fillers between octagons', () => {
  const octagons = (minutes?: number): Project => ({
    ...sewn({ rule: 'edges', ...(minutes !== undefined && { minutes }) }),
    motifs: [
      ...([{ id: 'm', kind: 'measured', outline: 'octagon', sideToSide: SIDE, minutes: 10 }] as const),
      {
        ...({ id: 'f', kind: 'measured', outline: 'square', minutes: 3 } as const),
        sideToSide: SIDE * (Math.SQRT2 - 1),
        gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 20 * WIDTH, hook: 4 },
      },
    ],
    layout: {
      ...({
        kind: 'blanket',
        arrangement: 'straight-rows',
        motif: 'm',
        columns: COLUMNS,
        rows: ROWS,
      } as const),
      fillers: { motif: 'f' },
    },
  })
  const fillers = (COLUMNS - 1) * (ROWS - 1)
  /** Side of an octagon, 41.4 mm, in stitches. */
  const stitches = Math.round((SIDE * (Math.SQRT2 - 1)) / WIDTH)

  it.each([undefined, 4])(
    'are joined along each of their sides stitch for stitch, the others at points (%s min)',
    (said) => {
      const plan = planProject(octagons(said))
      expect(plan.fillers).toHaveLength(fillers)
      expect(plan.counts.sides).toMatchObject({
        ...{ count: 4 * fillers, points: 4 * fillers, stitches: 4 * fillers * stitches },
      })
      expect(sidesJoined(plan.counts, settled(octagons()))).toContain('24 sides, ')
      const points = plan.joins.reduce((sum, { members }) => sum + members.length - 1, 0)
      const sides = 4 * fillers * stitches * MATERIAL_CONSTANTS.seamStitchMinutes
      const joins = points * (said ?? 1) + sides
      expect(plan.minutes!.expected).toBeCloseTo(12 * 10 + fillers * 3 + joins + plan.ends, 6)
    },
  )
})
