/** M30: two motifs joined in a way of their own are marked between them. Every number is made up. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Joining, Project } from '../../../shared-types/project'
import { MapPainter } from '../../../src-core/figures/map'
import { mapGround } from '../../../src-core/figures/map-ground'
import { pairLegend, pairMarkItems, pairMarks, pairSentence } from '../../../src-core/figures/pair-marks'
import { mapSize } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { cellsProject } from '../cells/projects'
import { record } from './recorder'

const grid = (single: Joining['single'], layout: Partial<BlanketLayout> = {}): Project =>
  cellsProject(
    ['flower'],
    { arrangement: 'straight-rows', columns: 5, rows: 3, ...layout },
    {
      gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
      joining: { rule: 'tips', ...(single && { single }) },
    },
  )

describe('M30 marks of single pairs', () => {
  it('stand in the middle between the two, and say which they are', () => {
    const plan = planProject(
      grid([
        { places: ['2,2', '2,3'], rule: 'bridge', bridgeChains: 4 },
        { places: [' 1,1 ', '2, 1'], rule: 'apart' },
      ]),
    )
    const at = (id: string) => plan.motifs.find((motif) => motif.id === id)!
    const [level, upright] = pairMarks(plan)
    expect(level!.x).toBeCloseTo((at('2,2').x + at('2,3').x) / 2, 9)
    expect(level!.y).toBeCloseTo(at('2,2').y, 9)
    expect(Math.abs(Math.sin(level!.angle))).toBeCloseTo(0, 9)
    expect(Math.abs(Math.cos(upright!.angle))).toBeCloseTo(0, 9)
    expect(pairLegend(plan)).toEqual(['joined', 'apart'])
    const [a, b, c, d] = ['2,2', '2,3', '1,1', '2,1'].map((id) => at(id).label)
    expect(pairSentence(plan)).toBe(
      `Two strokes between two motifs: joined in their own way; one stroke between them: not joined to each other (${a} and ${b}, 4 chains between; ${c} and ${d}, not joined).`,
    )
    const lines = (index: number) =>
      record({
        items: pairMarkItems(pairMarks(plan)[index]!, { x: 0, y: 0 }, { ...LOOK, reach: 2 }),
      }).paths.filter(({ paint }) => paint.stroke === LOOK.ink)
    expect(lines(0)).toHaveLength(2)
    expect(lines(1)).toHaveLength(1)
  })

  it('are drawn on the map over what is joined; none where no pair is its own, or a place is not there', () => {
    const strokes = (project: Project) => {
      const items = new MapPainter(mapGround(planProject(project), 'ink'), 0.3).window({
        ...{ x: 0, y: 0 },
        ...mapSize(planProject(project)),
      })
      return record({ items }).paths.length
    }
    const bare = strokes(grid(undefined))
    // Each stroke has a hem.
    expect(strokes(grid([{ places: ['2,2', '2,3'], rule: 'edges' }]))).toBe(bare + 4)
    expect(strokes(grid([{ places: ['2,2', '2,3'], rule: 'apart' }]))).toBe(bare + 2)
    expect(pairMarks(planProject(grid([{ places: ['2,2', '9,9'], rule: 'apart' }])))).toEqual([])
    expect(pairSentence(planProject(grid(undefined)))).toBe('')
    // Of two rules for one pair there is one mark.
    const twice = grid([
      { places: ['2,2', '2,3'], rule: 'apart' },
      { places: ['2,3', '2,2'], rule: 'edges' },
    ])
    expect(pairMarks(planProject(twice)).map(({ rule }) => rule)).toEqual(['edges'])
  })

  it('where a round closes stand at both ends of its map', () => {
    const plan = planProject(grid([{ places: ['2,1', '2,5'], rule: 'edges' }], { inTheRound: true }))
    const marks = pairMarks(plan)
    expect(marks).toHaveLength(2)
    expect(Math.abs(marks[0]!.x - marks[1]!.x)).toBeCloseTo(plan.round!.circumference, 6)
    for (const { x } of marks) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThanOrEqual(plan.round!.map)
    }
  })
})

const LOOK = { reach: 2, line: 0.3, ink: '#000000', paper: '#ffffff' } as const
