/** M26: about so many motifs, or exactly so many, cut out in a shape or in rows: the nearest number, and what it is off. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, OutlineShape, Project } from '../../../shared-types/project'
import { layoutOfFit } from '../../../src-core/layout/taken'
import { fitFromHave, planProject } from '../../../src-core/plan'

const laid = (outlineShape?: OutlineShape, motif = 'hexagon'): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [
    { id: 'hexagon', kind: 'measured', outline: 'hexagon', sideToSide: 62 },
    { id: 'square', kind: 'measured', outline: 'square', sideToSide: 100 },
  ],
  joining: { rule: 'edges' },
  layout: {
    ...{ kind: 'blanket', motif, arrangement: 'offset-rows', alternateRows: 'oneFewer' },
    ...{ columns: 12, rows: 12, ...(outlineShape && { outlineShape }) },
  },
})

const SHAPES = {
  triangle: { kind: 'triangle', size: 900, height: 800, points: 'down' },
  hexagon: { kind: 'hexagon', size: 600 },
  circle: { kind: 'circle', size: 600 },
  rectangle: { kind: 'rectangle', size: 600, height: 400 },
  typed: { kind: 'path', path: 'M0 0H300V400H150Z' },
} as const satisfies Record<string, OutlineShape>

const shapes = Object.entries(SHAPES)

describe('M26 a number of motifs that is asked for', () => {
  it.each(shapes)('is met, or the nearest is told with what it is off, in a %s', (_, shape) => {
    for (const count of [61, 90]) {
      const project = laid(shape)
      const { arrangements, findings } = fitFromHave(project, { count })
      expect(findings).toEqual([])
      for (const [index, fit] of arrangements.entries()) {
        expect(fit.motifs - fit.more!).toBe(count)
        expect(Math.abs(fit.more!)).toBeLessThanOrEqual(count / 10)
        if (index > 2) continue
        const layout = { ...project.layout, ...layoutOfFit(project, fit) } as BlanketLayout
        const plan = planProject({ ...project, layout })
        expect(plan.counts.motifs).toBe(fit.motifs)
        expect(plan.size.width).toBeCloseTo(fit.size.width, 6)
        expect(layout.outlineShape?.kind).toBe(shape.kind)
      }
      // In these shapes one of the two is there to the motif.
      expect(Math.min(...arrangements.map(({ more }) => Math.abs(more!)))).toBe(0)
    }
  })

  it('of a hexagon of hexagons is 61 with five on a side: 1 + 6 · (1 + 2 + 3 + 4)', () => {
    const [best] = fitFromHave(laid(SHAPES.hexagon), { count: 61 }).arrangements
    expect(best).toMatchObject({ motifs: 61, more: 0, pieces: 1, single: 0 })
    expect(best!.lengths).toEqual([5, 6, 7, 8, 9, 8, 7, 6, 5])
  })

  it('keeps the proportions of an outline to a motif, and of one with its own height to 6 % of either', () => {
    for (const shape of [SHAPES.triangle, SHAPES.rectangle]) {
      const ratio = shape.size / shape.height
      for (const { outline } of fitFromHave(laid(shape), { count: 90 }).arrangements) {
        const now = outline!.size! / outline!.height!
        expect(now / ratio).toBeGreaterThan(0.88)
        expect(now / ratio).toBeLessThan(1.13)
      }
    }
  })

  it('weighs motifs that are missing or too many against proportions: 96 squares are 8 × 12 before 10 × 10', () => {
    // By hand, for a square of 1 m: 10 × 10 are 4 of 96 too many, 12 · 4/96 = 0.5; 8 × 12 are 1 − 8/12 out, 0.33.
    const wish = { count: 96, like: { width: 1000, height: 1000 } }
    const { arrangements } = fitFromHave(laid(undefined, 'square'), wish)
    const straight = arrangements.filter(({ arrangement }) => arrangement === 'straight-rows')
    expect(straight[0]).toMatchObject({ motifs: 96, more: 0 })
    expect([straight[0]!.columns, straight[0]!.rows].sort((a, b) => a - b)).toEqual([8, 12])
  })

  it('of rows that are not cut out is a rectangle of so many, or of the nearest', () => {
    const squares = laid(undefined, 'square')
    for (const [count, nearest] of [
      [90, 0],
      [97, 2],
    ] as const) {
      const { arrangements } = fitFromHave(squares, { count })
      const off = arrangements.map(({ motifs }) => Math.abs(motifs - count))
      expect(arrangements.map(({ more }) => Math.abs(more!))).toEqual(off)
      expect(Math.min(...off)).toBeLessThanOrEqual(nearest)
    }
  })
})
