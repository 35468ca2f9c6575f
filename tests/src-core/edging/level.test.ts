/** A levelling edging: what fills the dips, by hand, by area, and in whole plans. */
import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import type { BlanketLayout, MeasuredMotif, Project } from '../../../shared-types/project'
import type { EdgingDip, Plan } from '../../../shared-types/plan'
import { leveledRound } from '../../../src-core/edging/words'
import { levelDips } from '../../../src-core/edging/level'
import type { EdgeDip } from '../../../src-core/edging/level'
import { signedArea } from '../../../src-core/geometry/points'
import { createPlanner, planProject } from '../../../src-core/plan'
import { resolveGauge, stitchYarn } from '../../../src-core/stitches/gauge'
import type { StitchKey } from '../../../src-core/stitches/table'

const gauge = resolveGauge({ stitch: 'sc', stitches: 20, over: 100 }, 'US')
const height = (stitch: string) => gauge.height(stitch as StitchKey)

/** Hexagons of `across` mm from side to side, points up: rows end short by half of one in turn. */
const hexagons = (across: number, layout: Partial<BlanketLayout> = {}): Project => ({
  format: 'petalyard-project',
  version: 1,
  gauge: { stitch: 'sc', stitches: 20, over: 100 },
  yarns: [{ id: 'y', name: 'Slate', ballGrams: 50, ballMetres: 125 }],
  motifs: [{ id: 'm', kind: 'measured', outline: 'hexagon', sideToSide: across } as MeasuredMotif],
  layout: {
    kind: 'blanket',
    motif: 'm',
    arrangement: 'offset-rows',
    columns: 8,
    rows: 9,
    turn: 0,
    ...layout,
    edging: { style: 'level', rounds: ['sc'], yarn: 'y', ...layout.edging },
  },
})

const dipsOf = (project: Project): readonly EdgingDip[] => planProject(project).edging?.dips ?? []
const codes = ({ findings }: Plan) => findings.map(({ code }) => code)

/** Area in mm² that a dip's stitches fill above what the round's own would. */
const areaOf = ({ work, rows, rowStitch = 'sc' }: EdgingDip): number =>
  gauge.width *
  (work.reduce((sum, { stitch, count }) => sum + count * (height(stitch) - height('sc')), 0) +
    rows.reduce((sum, count) => sum + count * height(rowStitch), 0))

describe('M35 levels', () => {
  it('a zigzag of hexagons: a dip is as wide as a hexagon from side to side, and half of its side deep', () => {
    // 30 mm from side to side is a side of 17.32 mm; offset rows of full hexagons leave a dip behind all but the last.
    const [top, side] = dipsOf(hexagons(30))
    expect(top).toMatchObject({ count: 16, rows: [], cleft: false })
    // From point to point, but for how far the line comes near to the edge at them.
    expect(top!.width).toBeGreaterThan(29)
    expect(top!.width).toBeLessThan(30)
    // Half a side, but for the join at its bottom.
    expect(top!.depth).toBeLessThanOrEqual(30 / Math.sqrt(12))
    expect(top!.depth).toBeGreaterThan(30 / Math.sqrt(12) - 0.8)
    expect(top!.work.reduce((sum, { count }) => sum + count, 0)).toBe(6)
    // The rows that are moved leave half a hexagon at the sides.
    expect(side!.count).toBe(7)
    expect(side!.depth).toBeCloseTo(15, 6)
  })

  it('says where a dip is too deep for any stitch, and fills it with rows that cover it', () => {
    const plan = planProject(hexagons(109.12))
    expect(codes(plan)).toContain('edging/deep-dips')
    const [top] = plan.edging!.dips!
    const area = (109.12 * (109.12 / Math.sqrt(12))) / 2
    expect(top).toMatchObject({ count: 16, work: [{ stitch: 'sc', count: 22 }], rowStitch: 'sc' })
    expect(top!.rows).toEqual([...top!.rows].sort((a, b) => a - b))
    expect(areaOf(top!) / area).toBeGreaterThan(0.85)
    expect(areaOf(top!) / area).toBeLessThan(1.05)
    // Each is begun and ended by itself: two ends more for each of 23 dips.
    const follow = planProject(hexagons(109.12, { edging: { style: 'follow', rounds: ['sc'] } }))
    expect(plan.ends - follow.ends).toBe(2 * 23)
    expect(codes(follow)).not.toContain('edging/deep-dips')
  })

  it('counts the yarn of what is worked: rows, slip stitches at their ends, and the round over them', () => {
    const { edging } = planProject(hexagons(109.12))
    const [round] = edging!.rounds
    const yarn = (stitch: StitchKey) => stitchYarn(stitch, gauge)
    const inRows = edging!.dips!.reduce(
      (sum, { count, rows }) =>
        sum + count * rows.reduce((all, each) => all + each * yarn('sc') + 2 * yarn('sl st'), 0),
      0,
    )
    expect(round!.metres).toBeCloseTo((round!.stitches * yarn('sc') + inRows) / 1000, 6)
  })

  it('fills what its line takes in: the dips as they lie are what the hull has more than the edge', () => {
    for (const across of [30, 109.12]) {
      const area = (lines: Plan['edgingLines']) => lines.reduce((sum, line) => sum + signedArea(line), 0)
      const level = planProject(hexagons(across))
      const follow = planProject(hexagons(across, { edging: { style: 'follow', rounds: ['sc'] } }))
      const dips = level.edgingDips!.reduce((sum, dip) => sum + Math.abs(signedArea(dip)), 0)
      const more = area(level.edgingLines) - area(follow.edgingLines)
      expect(dips / more).toBeGreaterThan(0.98)
      expect(dips / more).toBeLessThanOrEqual(1.001)
    }
  })

  it('levels a large blanket as small ones: one dip more for each column, one at a side for each second row', () => {
    const many = (columns: number, rows: number) =>
      dipsOf(hexagons(30, { columns, rows })).map(({ count }) => count)
    expect(many(8, 9)).toEqual([16, 7])
    expect(many(40, 31)).toEqual([80, 29])
  })

  it('leaves straight edges and squares alone, and levels nothing where it follows or bridges', () => {
    const squares = hexagons(30, { arrangement: 'straight-rows' })
    const motif = { id: 'm', kind: 'measured', outline: 'square', sideToSide: 60 } as MeasuredMotif
    const plan = planProject({ ...squares, motifs: [motif] })
    expect(plan.edging?.dips).toBeUndefined()
    expect(plan.edgingDips ?? []).toEqual([])
    for (const style of ['follow', 'bridge'] as const)
      expect(planProject(hexagons(30, { edging: { style, rounds: ['sc'] } })).edging?.dips).toBeUndefined()
  })

  it('levels both open ends of a round, each as often as there are motifs along it', () => {
    const bag = planProject(hexagons(30, { columns: 8, rows: 6, inTheRound: true }))
    expect(bag.edging!.dips!.map(({ count, rows }) => [count, rows])).toEqual([[16, []]])
    // One at each end lies across where the round closes: it is in two parts on the map, and none reaches beyond it.
    const parts = bag.edgingDips!
    expect(parts).toHaveLength(16 + 2)
    const areas = parts.map((part) => Math.abs(signedArea(part)))
    const whole = Math.max(...areas)
    expect(areas.reduce((sum, area) => sum + area, 0)).toBeCloseTo(16 * whole, 3)
    bag.edgingLines.slice(0, 2).forEach((line) => expect(line.at(-1)!.x - line[0]!.x).toBeGreaterThan(0))
    const right = Math.max(...bag.edgingLines.flat().map(({ x }) => x))
    expect(Math.max(...parts.flat().map(({ x }) => x))).toBeLessThanOrEqual(right + 1e-6)
  })

  it('tells the first round so that its stitches come to as many, and what fills a dip before', () => {
    const dip = { count: 6, width: 134, depth: 65, work: [{ stitch: 'sc', count: 24 }], cleft: false }
    const filled = { ...dip, rows: [2, 4, 6], rowStitch: 'sc' }
    const told = (dips: EdgingDip[], stitches: number, lines = 1) =>
      leveledRound({ dips }, { lines, stitches, stitch: 'sc' }, 'US', 'metric')
    expect(told([filled], 144)).toEqual({
      before:
        'First fill the deep dips, each with a piece of yarn of its own: in each of 6 dips 134 mm wide and 65 mm deep, 3 rows back and forth of 2, 4 and 6 sc from the bottom up, each held to the edge with a slip stitch at both ends. ',
      within: ' Work them so: 24 sc from tip to tip over each of the 6 filled dips.',
    })
    expect(told([filled], 145)!.within).toMatch(/; and 1 sc more at a tip\.$/)
    expect(told([filled], 160)!.within).toMatch(/; and the other 16 sc along the edge between them\.$/)
    expect(told([filled], 140)!.within).toMatch(/; but 4 fewer in all, here and there in the dips\.$/)
    // Half of them at either end.
    expect(told([filled], 72, 2)!.within).toBe(
      ' Work them so: 24 sc from tip to tip over each of the 3 filled dips.',
    )
    const tall = {
      ...dip,
      rows: [],
      work: [
        { stitch: 'sc', count: 20 },
        { stitch: 'tr', count: 4 },
      ],
    }
    expect(told([tall], 144)).toEqual({
      before: '',
      within: ' Work them so: in each of 6 dips 134 mm wide and 65 mm deep 20 sc, 4 tr from tip to tip.',
    })
    expect(told([], 144)).toBeNull()
  })

  it('closes a cleft of two stitches from both sides, however deep it is', () => {
    const cleft: EdgeDip = {
      width: 40,
      profile: [
        { along: 0, depth: 0 },
        { along: 16, depth: 2 },
        { along: 16, depth: 40 },
        { along: 24, depth: 40 },
        { along: 24, depth: 2 },
        { along: 40, depth: 0 },
      ],
    }
    const { dips, filled } = levelDips([cleft], 'sc', gauge)
    expect(filled).toBe(0)
    expect(dips[0]).toMatchObject({ cleft: true, rows: [] })
    expect(dips[0]!.work.find(({ stitch }) => stitch === 'dtr')?.count).toBe(2)
  })

  it('goes by the stitch and the gauge, whatever the same dips were leveled with before', () => {
    const profile = [
      { along: 0, depth: 0 },
      { along: 20, depth: 9 },
      { along: 40, depth: 0 },
    ]
    const dips: EdgeDip[] = [{ width: 40, profile }]
    const fine = resolveGauge({ stitch: 'sc', stitches: 30, over: 100 }, 'US')
    for (const [own, by] of [
      ['sc', gauge],
      ['dc', gauge],
      ['sc', fine],
      ['sc', gauge],
    ] as const)
      expect(levelDips(dips, own, by)).toEqual(levelDips(structuredClone(dips), own, by))
  })

  it('follows half motifs that come and go, and its style, as if it were planned for the first time', () => {
    const planner = createPlanner()
    for (const halves of [false, true, false])
      for (const style of ['level', 'follow', 'bridge'] as const) {
        const project = hexagons(60, { halves, edging: { style, rounds: ['sc'], yarn: 'y' } })
        expect(planner.plan(project)).toEqual(planProject(structuredClone(project)))
      }
  })

  it('fills the area of any zigzag to within what half a stitch is tall', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 200, noNaN: true }),
        fc.double({ min: 1, max: 80, noNaN: true }),
        fc.double({ min: 0.2, max: 0.8, noNaN: true }),
        (width, depth, share) => {
          const profile = [
            { along: 0, depth: 0 },
            { along: share * width, depth },
            { along: width, depth: 0 },
          ]
          const [dip] = levelDips([{ width, profile }], 'sc', gauge).dips
          // What is below the stitches that close a cleft stays open.
          if (dip?.cleft) return
          const filled = dip ? areaOf(dip) : 0
          // Half of the step from dtr to the next, along the whole width, and half a stitch at each end of a row.
          const steps = width * ((height('dtr') - height('tr')) / 2)
          const ends = (dip?.rows.length ?? 0) * gauge.width * height('sc')
          expect(Math.abs(filled - (width * depth) / 2)).toBeLessThanOrEqual(
            steps + ends + gauge.width * height('dtr'),
          )
        },
      ),
    )
  })
})
