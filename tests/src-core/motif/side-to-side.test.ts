/** M15: a measured distance across the sides is how far apart the middles of neighbours are that meet along them. */
import { describe, expect, it } from 'vitest'
import type { MeasuredSizes, Project, RoundsMotif } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import type { BlanketPlan } from '../../../shared-types/plan'
import { GAUGE } from './written-motif'

/** Corners of two chains reach farther out than the stitches between them. Our own rounds. */
const HEXAGON = [
  'Ch 3 (counts as dc), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times, sl st in top of beg ch-3.',
  'Sl st in next dc and ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 4 more times, sl st in top of beg ch-3.',
]
const SQUARE = [
  'Ch 3 (counts as dc), 2 dc in ring, ch 3, *3 dc in ring, ch 3; rep from * 2 more times, sl st in top of beg ch-3.',
  'Sl st in next 2 dc and ch-3 sp, ch 3 (counts as dc), (2 dc, ch 3, 3 dc) in same sp, *(3 dc, ch 3, 3 dc) in next ch-3 sp; rep from * 2 more times, sl st in top of beg ch-3.',
]

function planned(rounds: readonly string[], arrangement: 'offset-rows' | 'straight-rows', m: MeasuredSizes) {
  const motif: RoundsMotif = {
    ...{ id: 'm', kind: 'rounds', gauge: GAUGE, foundation: { ring: 'magic' }, measured: m },
    rounds: rounds.map((work) => ({ work })),
  }
  const project = {
    ...{
      format: 'petalyard-project',
      version: 1,
      title: 'Laps',
      units: 'metric',
      terms: 'US',
      hand: 'right',
    },
    ...{ currency: 'EUR', joining: { rule: 'edges' }, motifs: [motif], yarns: [], colourways: [] },
    layout: { kind: 'blanket', arrangement, motif: 'm', columns: 8, rows: 4, turn: 0 },
  } as unknown as Project
  const plan = planProject(project) as BlanketPlan
  expect(plan.motif?.shape).toBe('straight')
  return { ...plan, motif: plan.motif! }
}

describe('M15 side to side is where neighbours meet', () => {
  it('a hexagon of which nothing else was measured', () => {
    const { pitch, size, motif } = planned(HEXAGON, 'offset-rows', { sideToSide: 122 })
    expect(pitch.column).toBeCloseTo(122, 6)
    expect(pitch.row).toBeCloseTo((122 * Math.sqrt(3)) / 2, 6)
    expect(size.width).toBeCloseTo(8.5 * 122, 6)
    expect(motif.overTips).toBeCloseTo(122 / Math.cos(Math.PI / 6), 6)
  })

  it('a square of which nothing else was measured', () => {
    const { pitch, size } = planned(SQUARE, 'straight-rows', { sideToSide: 122 })
    expect(pitch.column).toBeCloseTo(122, 6)
    expect(pitch.row).toBeCloseTo(122, 6)
    expect(size.width).toBeCloseTo(8 * 122, 6)
  })

  it.each([['offset-rows', HEXAGON] as const, ['straight-rows', SQUARE] as const])(
    '%s: what the gauge says of it is laid as what a ruler says',
    (arrangement, rounds) => {
      const { pitch, motif } = planned(rounds, arrangement, {})
      expect(pitch.column).toBeCloseTo(motif.overValleys, 6)
      const again = planned(rounds, arrangement, { sideToSide: motif.overValleys })
      expect(again.pitch.column).toBeCloseTo(pitch.column, 6)
    },
  )

  it('blunt corners that were measured too take nothing from where sides meet', () => {
    const { pitch, motif } = planned(HEXAGON, 'offset-rows', { sideToSide: 122, pointToPoint: 138 })
    expect(pitch.column).toBeCloseTo(122, 6)
    expect(motif.overTips).toBeCloseTo(138, 6)
  })
})
