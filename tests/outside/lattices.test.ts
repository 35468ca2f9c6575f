/**
 * Lattices against published values. The keys (§…) stand in docs/sources.md.
 */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../shared-types/project'
import { planProject } from '../../src-core/plan'

type Blanket = Extract<NonNullable<Project['layout']>, { kind: 'blanket' }>

function project(motif: object, layout: Partial<Blanket>, rest: Partial<Project> = {}): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    motifs: [{ id: 'm', kind: 'measured', ...motif } as never],
    layout: { kind: 'blanket', motif: 'm', ...layout },
    ...rest,
  }
}

const INCH = 25.4
const round = { outline: 'round', across: 80 }

describe('published blankets', () => {
  it('6-inch hexagons, 11 rows of 7 and 8: 82 motifs, 48 × 58.9 in (§michaels prints 48 × 57)', () => {
    const plan = planProject(
      project(
        { outline: 'hexagon', sideToSide: 6 * INCH },
        { arrangement: 'offset-rows', columns: 7, rows: 11, alternateRows: 'oneMore' },
      ),
    )
    expect(plan.counts.motifs).toBe(82)
    expect(plan.size.width / INCH).toBeCloseTo(48, 6)
    expect(plan.size.height / INCH).toBeCloseTo(58.9, 1)
    const rows = new Map<number, number>()
    for (const motif of plan.motifs) rows.set(motif.row, (rows.get(motif.row) ?? 0) + 1)
    expect([...rows.values()]).toEqual([7, 8, 7, 8, 7, 8, 7, 8, 7, 8, 7])
  })

  it('the same rows the other way round, 8 and 7, hold 83', () => {
    const plan = planProject(
      project(
        { outline: 'hexagon', sideToSide: 6 * INCH },
        { arrangement: 'offset-rows', columns: 8, rows: 11, alternateRows: 'oneFewer' },
      ),
    )
    expect(plan.counts.motifs).toBe(83)
    expect(plan.size.width / INCH).toBeCloseTo(48, 6)
  })

  it('flowers of 7.5 cm joined at their tips, finished 89 × 112 cm (§cutoutandkeep): 12 × 15', () => {
    const plan = planProject(
      project(
        { outline: 'petals', petals: 8, overTips: 75, overValleys: 52 },
        { arrangement: 'straight-rows', columns: 12, rows: 15 },
      ),
    )
    expect(plan.size.width).toBeCloseTo(900, 6)
    expect(plan.size.height).toBeCloseTo(1125, 6)
    expect(Math.abs(plan.size.width - 890) / 890).toBeLessThan(0.015)
    expect(Math.abs(plan.size.height - 1120) / 1120).toBeLessThan(0.01)
  })

  // The published throw (§warmupamerica) is of rectangles, 7 × 9 in, which no motif is: its width is checked, not its 63 in.
  it('a throw of 7 × 7 sections of 7 in is 49 in wide, as the published one of 49 × 63 in (§warmupamerica)', () => {
    const plan = planProject(
      project(
        { outline: 'square', sideToSide: 7 * INCH },
        { arrangement: 'straight-rows', columns: 7, rows: 7 },
      ),
    )
    expect(plan.counts.motifs).toBe(49)
    expect(plan.size.width / INCH).toBeCloseTo(49, 6)
    expect(plan.size.height / INCH).toBeCloseTo(49, 6)
  })
})

describe('circles', () => {
  it('M22 offset rows stand at √3/2 = 0.8660 of their pitch (§densest-packing)', () => {
    const plan = planProject(project(round, { arrangement: 'offset-rows', columns: 6, rows: 5 }))
    expect(plan.pitch.column).toBeCloseTo(80, 9)
    expect(plan.pitch.row / plan.pitch.column).toBeCloseTo(Math.sqrt(3) / 2, 9)
    // §densest-packing: the lattice has π/(2√3) = 0.906899682…
    const density = (Math.PI * 40 ** 2) / (plan.pitch.column * plan.pitch.row)
    expect(density).toBeCloseTo(0.9068996821, 8)
  })

  it.each([0, 7, 15, 22, 30])('M22 six-fold motifs stand so too, rotated by %d°', (turn) => {
    for (const motif of [
      { outline: 'petals', petals: 6, overTips: 80, overValleys: 46 },
      { outline: 'hexagon', sideToSide: 80 },
    ]) {
      const { pitch } = planProject(project(motif, { arrangement: 'offset-rows', columns: 4, rows: 3, turn }))
      for (const row of pitch.rows) expect(row / pitch.column).toBeCloseTo(Math.sqrt(3) / 2, 9)
    }
  })

  it('square packing has density π/4 = 0.785398163 (§oeis)', () => {
    const plan = planProject(project(round, { arrangement: 'straight-rows', columns: 6, rows: 5 }))
    expect((Math.PI * 40 ** 2) / (plan.pitch.column * plan.pitch.row)).toBeCloseTo(0.7853981634, 8)
  })

  it('every motif within has six neighbours in offset rows (§oeis, kissing number of the plane)', () => {
    const plan = planProject(project(round, { arrangement: 'rings', rings: 2 }))
    const met = plan.joins.filter((join) => join.members.some((member) => member.motif === '3,3'))
    expect(met).toHaveLength(6)
  })

  it('joins and gaps: m × n grid 2mn − m − n and (m−1)(n−1); offset rows and rings (§lattice-geometry)', () => {
    const straight = planProject(project(round, { arrangement: 'straight-rows', columns: 7, rows: 5 }))
    expect(straight.joins).toHaveLength(2 * 35 - 12)
    expect(straight.holes).toEqual([{ sides: 4, count: 24, radius: expect.closeTo(40 * 0.414214, 1) }])
    const [columns, rows] = [7, 5]
    const offset = planProject(project(round, { arrangement: 'offset-rows', columns, rows }))
    expect(offset.joins).toHaveLength(rows * (columns - 1) + (rows - 1) * (2 * columns - 1))
    expect(offset.holes).toEqual([
      { sides: 3, count: (rows - 1) * (2 * columns - 2), radius: expect.closeTo(40 * 0.154701, 1) },
    ])
    for (const n of [1, 2, 3]) {
      const rings = planProject(project(round, { arrangement: 'rings', rings: n }))
      expect(rings.counts.motifs).toBe(3 * n * (n + 1) + 1)
      expect(rings.joins).toHaveLength(9 * n * n + 3 * n)
      expect(rings.holes.reduce((sum, hole) => sum + hole.count, 0)).toBe(6 * n * n)
    }
  })
})
