/** M34, M43: seams have as many stitches as the last round of a motif counts along a side; by length where nobody knows. */
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif, Project, RoundsMotif } from '../../../shared-types/project'
import { sidesJoined } from '../../../src-core/figures/seam-words'
import { sideWork } from '../../../src-core/joins/sides'
import { POINT_SEAM } from '../../../src-core/joins/constants'
import { SEAM_YARN } from '../../../src-core/materials/constants'
import { planProject } from '../../../src-core/plan'
import { resolveGauge } from '../../../src-core/stitches/gauge'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100 } as const

const motif = (...works: string[]): RoundsMotif => ({
  id: 'm',
  kind: 'rounds',
  foundation: { ring: 'adjustable' },
  gauge: GAUGE,
  minutes: 10,
  rounds: works.map((work) => ({ slot: 'all', work })),
})

/** Corners of ch 2 between sides of so many dc: three more pairs in each round. */
const SQUARE = motif(
  'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3 (12 dc, 4 ch-2 sps)',
  'ch 3 (counts as dc), dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times, join with sl st in top of beg ch-3 (28 dc, 4 ch-2 sps)',
)
/** Corners of three in one stitch. */
const SOLID = motif(
  'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3 (12 dc, 4 ch-2 sps)',
  'ch 1, sc in same st as joining, sc in next 2 dc, 3 sc in next ch-2 sp, *sc in next 3 dc, 3 sc in next ch-2 sp; rep from * 2 more times, join with sl st in first sc (24 sc)',
)
/** Groups of three with a chain between: chains are sewn through as well. */
const GRANNY = motif(
  'ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join with sl st in top of beg ch-3 (12 dc, 4 ch-2 sps)',
  'sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, join with sl st in top of beg ch-3 (24 dc, 4 ch-1 sps, 4 ch-2 sps)',
)

const project = (own: RoundsMotif, changes: Partial<Project> = {}): Project => ({
  format: 'petalyard-project',
  version: 1,
  gauge: GAUGE,
  yarns: [{ id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 125 }],
  motifs: [own],
  colourways: [{ id: 'c', yarns: { all: 'y' } }],
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 4, rows: 3 },
  joining: { rule: 'seam', seam: 'whip', yarn: 'y' },
  allowance: { wastePercent: 0, tail: 0 },
  ...changes,
})

/** A grid of 4 × 3 has so many sides between its squares. */
const SIDES = 3 * 3 + 4 * 2
/** Seven stitches and the two chains of a corner, each 5 mm wide. */
const SEWN = (7 + 2) * 5
/** Squares that touch at a corner alone are sewn there, too. */
const DIAGONAL = 2 * 3 * 2

describe('the stitches of a side', () => {
  it.each([
    ['between corners of chains', SQUARE, { stitches: 7, corner: 2 }],
    ['with one of its corners, where these are stitches', SOLID, { stitches: 6, corner: 0 }],
    ['with the chains along it', GRANNY, { stitches: 7, corner: 2 }],
  ])('are those of the last round, %s', (_, own, told) => {
    const account = planProject(project(own)).motif
    expect(account?.side).toMatchObject(told)
    const [a, b] = account!.anchors.filter(({ kind }) => kind === 'corner')
    expect(account!.side!.length).toBeCloseTo(Math.hypot(a!.x - b!.x, a!.y - b!.y), 9)
  })

  it.each([
    ['chains', SQUARE],
    ['stitches', SOLID],
    ['a granny', GRANNY],
  ])('M16 the last round is as large as the motif, from corner to corner: %s', (_, own) => {
    const { rounds, overTips } = planProject(project(own)).motif!
    expect(2 * rounds.at(-1)!.outerRadius).toBeCloseTo(overTips, 9)
    expect(rounds[0]!.outerRadius).toBeLessThan(rounds[1]!.outerRadius)
  })

  it('are not told where sides differ, nor of flowers', () => {
    const uneven = motif(
      SQUARE.rounds![0]!.work,
      'ch 3 (counts as dc), 2 dc in next dc, dc in next dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times, join with sl st in top of beg ch-3',
    )
    expect(planProject(project(uneven)).motif?.side).toBeUndefined()
  })
})

describe('M34 M43 seams along sides that are counted', () => {
  it('have so many stitches each, which the words, the time and the yarn follow', () => {
    const plan = planProject(project(SQUARE))
    const { sides } = plan.counts
    expect(sides).toMatchObject({ count: SIDES, counted: SIDES, each: 7, stitches: 7 * SIDES })
    expect(sidesJoined(plan.counts, plan.settled)).toMatch(
      /^17 seams, .* m and 119 stitches in all, 7 each by the last round$/,
    )
    const millimetres = (SIDES * SEWN + DIAGONAL * POINT_SEAM) * SEAM_YARN.whip
    const grams = (millimetres / 1000) * (50 / 125)
    expect(plan.yarns[0]!.parts.joins).toBeCloseTo(grams, 6)
  })

  it('are told by length where the motif was measured, as before', () => {
    const measured: MeasuredMotif = {
      ...{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 45, minutes: 10 },
      slots: [{ slot: 'all', grams: 3 }],
    }
    const { counts, settled } = planProject({ ...project(SQUARE), motifs: [measured] })
    expect(counts.sides).toMatchObject({ counted: 0, stitches: 9 * SIDES })
    expect(sidesJoined(counts, settled)).toMatch(/about 150 stitches by length$/)
  })

  it('leave what is left of them when some are sewn, in the same stitches', () => {
    const row = Object.fromEntries([1, 2, 3, 4].map((place) => [`1,${place}`, '']))
    const all = planProject(project(SQUARE))
    const { left } = planProject(project(SQUARE, { made: row, joined: row })).progress
    const joins = (grams: readonly { readonly parts: { readonly joins: number } }[]) => grams[0]!.parts.joins
    expect(joins(left.yarns) / joins(all.yarns)).toBeCloseTo(
      ((SIDES - 3) * SEWN + DIAGONAL * POINT_SEAM) / (SIDES * SEWN + DIAGONAL * POINT_SEAM),
      9,
    )
  })

  it('take of two that differ the one with more, and of a part of a side its share', () => {
    const width = resolveGauge(GAUGE, 'US').width
    const side = (stitches: number) => ({ stitches, corner: 0, length: 60 })
    expect(sideWork(60, width, [side(12), side(13)])).toEqual({
      stitches: 13,
      worked: 13 * 5,
      isCounted: true,
    })
    expect(sideWork(30, width, [side(12), undefined]).stitches).toBe(6)
    expect(sideWork(60, width, [])).toEqual({ stitches: 12, worked: 60, isCounted: false })
  })
})
