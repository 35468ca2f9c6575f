/** M35, the line that an edging runs along: one line, counted, printed and shown alike. Common practice, no source. */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, EdgingStyle, MeasuredMotif, Project } from '../../../shared-types/project'
import type { Plan } from '../../../shared-types/plan'
import { mapGround } from '../../../src-core/figures/map-ground'
import { indexEdges, pointDistance } from '../../../src-core/geometry/edges'
import { contains, perimeter } from '../../../src-core/geometry/points'
import { createPlanner, planProject } from '../../../src-core/plan'
import { runs } from '../../runs'

const STYLES: readonly EdgingStyle[] = ['follow', 'bridge', 'level']
const BLANKETS = readdirSync('examples')
  .map((name) => ({ name, project: JSON.parse(readFileSync(`examples/${name}`, 'utf8')) as Project }))
  .flatMap(({ name, project }) =>
    project.layout?.kind === 'blanket' ? [{ name, project, layout: project.layout }] : [],
  )

/** Open ends are no lines round motifs. */
const EXAMPLES = BLANKETS.filter(({ layout }) => !layout.inTheRound)

const edged = (project: Project, layout: BlanketLayout, style: EdgingStyle): Project => ({
  ...project,
  layout: {
    ...layout,
    edging: { ...layout.edging, rounds: layout.edging?.rounds ?? ['sc'], style },
  },
})

/** Length of the plan's lines together, before blocking stretched them. */
function drawnLength({ edgingLines: lines }: Plan, layout: BlanketLayout): number {
  const { width = 1, height = 1 } = layout.blocking ?? {}
  const flat = lines.map((line) => line.map(({ x, y }) => ({ x: x / width, y: y / height })))
  return flat.reduce((sum, line) => sum + perimeter(line), 0)
}

const PETALS: Partial<MeasuredMotif> = { outline: 'petals', overTips: 82, overValleys: 60 }

const blanket = (
  motif: Partial<MeasuredMotif>,
  layout: Partial<BlanketLayout>,
  style: EdgingStyle,
): Project => ({
  format: 'petalyard-project',
  version: 1,
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
  motifs: [{ id: 'm', kind: 'measured', ...motif } as MeasuredMotif],
  layout: { kind: 'blanket', motif: 'm', ...layout, edging: { style, rounds: ['sc'] } },
})

describe('the line of an edging', () => {
  it.each(EXAMPLES)('is as long as it is counted, and goes round every motif: $name', (example) => {
    // What the style does not touch is planned once, as in a window.
    const planner = createPlanner()
    const lengths = STYLES.map((style) => {
      const project = edged(example.project, example.layout, style)
      const plan = planner.plan(project)
      expect(drawnLength(plan, example.layout)).toBeCloseTo(plan.edging!.length, 0)
      for (const motif of plan.motifs)
        expect(plan.edgingLines.some((line) => contains(line, motif))).toBe(true)
      // What is printed runs beside it, as far out as the rounds are high.
      const { edge } = mapGround(plan, 'ink')
      const lines = plan.edgingLines.map(indexEdges)
      const off = edge.flat().map((point) => Math.min(...lines.map((line) => pointDistance(point, line))))
      expect(Math.max(...off)).toBeLessThan(plan.edging!.height * 1.02 + 0.3)
      expect(Math.min(...off)).toBeGreaterThan(plan.edging!.height * 0.98 - 0.3)
      return plan.edging!.length
    })
    // Following petals is the longest way, the straight hull the shortest.
    expect(lengths[0]).toBeGreaterThan(lengths[1]! + 1)
    expect(lengths[1]).toBeGreaterThan(lengths[2]! - lengths[2]! * 0.005)
  })

  it('in the round runs along both open ends, once round each', () => {
    const rounds = BLANKETS.filter(({ layout }) => layout.inTheRound)
    expect(rounds.map(({ name }) => name)).toContain('saltmarsh-bag.petalyard')
    for (const { project, layout } of rounds)
      for (const style of STYLES) {
        const plan = planProject(edged(project, layout, style))
        const { edgingLines, edging, round, motifs } = plan
        const lengths = edgingLines.map((line) =>
          line.slice(1).reduce((sum, at, i) => sum + Math.hypot(at.x - line[i]!.x, at.y - line[i]!.y), 0),
        )
        expect(lengths).toHaveLength(2)
        expect(lengths[0]! + lengths[1]!).toBeCloseTo(edging!.length, 0)
        const rows = [1, Math.max(...motifs.map(({ row }) => row))]
        edgingLines.forEach((line, end) => {
          expect(line.at(-1)!.x - line[0]!.x).toBeCloseTo(round!.circumference, 3)
          // It begins and ends beside the first and last motif of its row, where the map is closed.
          const along = motifs.filter(({ row }) => row === rows[end]).map(({ x }) => x)
          const free = Math.min(...along) - line[0]!.x
          expect(free).toBeGreaterThan(0)
          expect(line.at(-1)!.x - Math.max(...along)).toBeCloseTo(free, 3)
        })
        // Its rounds do not grow: a band has no corners.
        expect(edging!.rounds.map(({ length }) => length)).toEqual(edging!.rounds.map(() => edging!.length))
      }
  })

  it('in the round begins and ends where the map is closed, at both ends, whatever the motif', () => {
    const motifs = [
      { ...PETALS, petals: 6 },
      { outline: 'octagon', sideToSide: 115 },
      { outline: 'hexagon', sideToSide: 80 },
    ] as const
    for (const motif of motifs)
      for (const arrangement of ['straight-rows', 'offset-rows'] as const)
        for (const rows of [4, 5])
          for (const style of STYLES) {
            const layout = { arrangement, columns: 8, rows, inTheRound: true }
            const plan = planProject(blanket(motif, layout, style))
            const half = plan.round!.circumference / 16
            expect(plan.edgingLines).toHaveLength(2)
            plan.edgingLines.forEach((line, end) => {
              const row = plan.motifs.filter((each) => each.row === (end === 0 ? 1 : rows))
              const along = row.map(({ x }) => x)
              expect(line[0]!.x).toBeCloseTo(Math.min(...along) - half, 3)
              expect(line.at(-1)!.x).toBeCloseTo(Math.max(...along) + half, 3)
            })
          }
  })

  it('is a rectangle round squares in straight rows, however many', () => {
    for (const [columns, rows] of [
      [2, 3],
      [7, 9],
      [30, 41],
    ] as const)
      for (const style of STYLES) {
        const plan = planProject(blanket({ outline: 'square', sideToSide: 50 }, { columns, rows }, style))
        // A corner is rounded off by half of what a join bridges.
        expect(Math.abs(plan.edging!.length / (100 * (columns + rows)) - 1)).toBeLessThan(0.001)
        expect(perimeter(plan.edgingLines[0]!)).toBeCloseTo(plan.edging!.length, 1)
      }
  })

  it('goes round every motif and is as long as counted, for blankets of many kinds and sizes', () => {
    fc.assert(
      fc.property(
        fc.record({
          petals: fc.integer({ min: 4, max: 9 }),
          turn: fc.constantFrom(0, 15, 22.5, 30),
          arrangement: fc.constantFrom('straight-rows' as const, 'offset-rows' as const),
          alternateRows: fc.constantFrom('same' as const, 'oneFewer' as const, 'oneMore' as const),
          columns: fc.integer({ min: 2, max: 16 }),
          rows: fc.integer({ min: 1, max: 17 }),
          style: fc.constantFrom(...STYLES),
          bridgeChains: fc.integer({ min: 1, max: 4 }),
          halves: fc.boolean(),
        }),
        ({ petals, style, bridgeChains, ...layout }) => {
          const project = blanket({ ...PETALS, petals }, layout, style)
          const plan = planProject({ ...project, joining: { rule: 'bridge', bridgeChains } })
          const length = plan.edgingLines.reduce((sum, line) => sum + perimeter(line), 0)
          expect(Math.abs(length - plan.edging!.length)).toBeLessThan(1)
          for (const motif of plan.motifs)
            expect(plan.edgingLines.some((line) => contains(line, motif))).toBe(true)
        },
      ),
      { numRuns: runs(60) },
    )
  })

  it('is the same one after other rules, pairs and weights as if it were planned alone', () => {
    const planner = createPlanner()
    const start = blanket(
      { ...PETALS, petals: 6 },
      { arrangement: 'offset-rows', columns: 5, rows: 5 },
      'bridge',
    )
    const [flower] = start.motifs! as [MeasuredMotif]
    const two = [flower, { ...flower, id: 'n', overTips: 70, overValleys: 50 }]
    const alternate: BlanketLayout['alternate'] = { motifs: ['m', 'n'], by: 'cell' }
    const rules = [
      { rule: 'tips' },
      { rule: 'edges' },
      { rule: 'tips', pairs: [{ motifs: ['m', 'n'], rule: 'apart', gap: 0 }] },
      { rule: 'tips', pairs: [{ motifs: ['m', 'm'], rule: 'apart', gap: 0 }] },
      { rule: 'tips', reach: 3 },
    ] satisfies NonNullable<Project['joining']>[]
    const weights = [undefined, { motifs: 3, grams: 30 }]
    const lengths = new Set<number>()
    for (const joining of rules)
      for (const weighed of weights)
        for (const style of STYLES) {
          const layout = { ...(start.layout as BlanketLayout), alternate }
          const motifs = two.map((motif) => ({ ...motif, ...(weighed && { weighed }) }))
          const project = edged({ ...start, motifs, joining }, layout, style)
          const { edging, edgingLines } = planner.plan(project)
          lengths.add(Math.round(edging!.length))
          const alone = planProject(project)
          expect([edging, edgingLines]).toEqual([alone.edging, alone.edgingLines])
        }
    // The rules do make a difference.
    expect(lengths.size).toBeGreaterThan(STYLES.length)
  })
})
