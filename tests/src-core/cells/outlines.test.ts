/** Blankets cut out in random outlines: which motifs are left, how they hang together, and closed forms. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Point } from '../../../shared-types/plan'
import type { BlanketLayout, OutlineShape, Project } from '../../../shared-types/project'
import { createPlanner, planProject } from '../../../src-core/plan'
import { holesCut, openingsAmong } from './grid'
import type { Lattice } from './grid'
import { cellsPlan, cellsProject, joinedPairs } from './projects'
import { runs } from '../../runs'

/** Lengths in mm that a middle may be beside an outline without either answer being wrong. */
const UNSURE = 0.05

type Sides = readonly Point[]

/** Distance from a point to a polygon's edge. */
const toEdge = (point: Point, sides: Sides): number =>
  Math.min(
    ...sides.map((from, i) => {
      const to = sides[(i + 1) % sides.length]!
      const [dx, dy] = [to.x - from.x, to.y - from.y]
      const length = dx * dx + dy * dy
      const along = length > 0 ? ((point.x - from.x) * dx + (point.y - from.y) * dy) / length : 0
      const part = Math.min(1, Math.max(0, along))
      return Math.hypot(point.x - from.x - part * dx, point.y - from.y - part * dy)
    }),
  )

/** Whether a polygon winds round a point: the sum of the angles that its sides subtend (by hand, no ray is cast). */
const isRound = (point: Point, sides: Sides): boolean => {
  let turned = 0
  sides.forEach((from, i) => {
    const to = sides[(i + 1) % sides.length]!
    const [ax, ay, bx, by] = [from.x - point.x, from.y - point.y, to.x - point.x, to.y - point.y]
    turned += Math.atan2(ax * by - ay * bx, ax * bx + ay * by)
  })
  return Math.abs(turned) > Math.PI
}

/** true within, false without, null where it is too near to say. */
type Within = (middle: Point) => boolean | null

const byDistance = (distance: number): boolean | null => (Math.abs(distance) < UNSURE ? null : distance < 0)

const polygon =
  (sides: Sides): Within =>
  (middle) =>
    toEdge(middle, sides) < UNSURE ? null : isRound(middle, sides)

/** An outline with its own rule for what lies within it. */
interface Cut {
  readonly shape: OutlineShape
  readonly within: Within
}

const size = fc.integer({ min: 60, max: 760 })
const rectangle: fc.Arbitrary<Cut> = fc
  .record({ width: size, height: fc.option(size, { nil: undefined }) })
  .map(({ width, height }) => ({
    shape: { kind: 'rectangle', size: width, ...(height !== undefined && { height }) },
    within: ({ x, y }) => byDistance(Math.max(Math.abs(x) - width / 2, Math.abs(y) - (height ?? width) / 2)),
  }))
const circle: fc.Arbitrary<Cut> = size.map((across) => ({
  shape: { kind: 'circle', size: across },
  // A polygon stands for the circle: between its sides and the circle is 1 − cos 1° of the radius.
  within: ({ x, y }) =>
    Math.abs(Math.hypot(x, y) - across / 2) < across * 1e-4 + UNSURE ? null : Math.hypot(x, y) < across / 2,
}))
const hexagon: fc.Arbitrary<Cut> = size.map((across) => ({
  shape: { kind: 'hexagon', size: across },
  within: ({ x, y }) => {
    const flat = (Math.sqrt(3) / 4) * across
    return byDistance(Math.max(Math.abs(y), (Math.sqrt(3) * Math.abs(x) + Math.abs(y)) / 2) - flat)
  },
}))
const triangle: fc.Arbitrary<Cut> = fc
  .record({ width: size, height: fc.option(size, { nil: undefined }), points: fc.constantFrom('up', 'down') })
  .map(({ width, height: asked, points }) => {
    const height = asked ?? (Math.sqrt(3) / 2) * width
    const sign = points === 'up' ? -1 : 1
    const corners = [
      { x: -width / 2, y: (-sign * height) / 2 },
      { x: width / 2, y: (-sign * height) / 2 },
      { x: 0, y: (sign * height) / 2 },
    ]
    const shape: OutlineShape = { kind: 'triangle', size: width, points: points as 'up' | 'down' }
    return { shape: asked === undefined ? shape : { ...shape, height }, within: polygon(corners) }
  })
/** A shape that goes once round a middle, its corners at any distance from it: bays and spikes, and never crossing. */
const path: fc.Arbitrary<Cut> = fc
  .record({
    radii: fc.array(fc.integer({ min: 40, max: 380 }), { minLength: 3, maxLength: 9 }),
    width: fc.option(size, { nil: undefined }),
    relative: fc.boolean(),
    x: fc.integer({ min: -500, max: 500 }),
  })
  .map(({ radii, width, relative, x }) => {
    const corners = radii.map((radius, i) => {
      const angle = (2 * Math.PI * i) / radii.length
      const [px, py] = [x + radius * Math.cos(angle), radius * Math.sin(angle)]
      return { x: Math.round(px * 100) / 100, y: Math.round(py * 100) / 100 }
    })
    const steps = corners.map((at, i) => {
      const before = corners[i - 1]
      if (!before) return `M${at.x} ${at.y}`
      return relative
        ? `l${(at.x - before.x).toFixed(2)},${(at.y - before.y).toFixed(2)}`
        : `L ${at.x},${at.y}`
    })
    const [xs, ys] = [corners.map((at) => at.x), corners.map((at) => at.y)]
    const [left, right] = [Math.min(...xs), Math.max(...xs)]
    const scale = width === undefined ? 1 : width / (right - left)
    const middle = (Math.min(...ys) + Math.max(...ys)) / 2
    const sides = corners.map((at) => ({
      x: (at.x - (left + right) / 2) * scale,
      y: (at.y - middle) * scale,
    }))
    const shape: OutlineShape = { kind: 'path', path: `${steps.join(' ')} Z` }
    return { shape: width === undefined ? shape : { ...shape, size: width }, within: polygon(sides) }
  })

const ROWS = 9
const COLUMNS = 9
/** Straight rows of eight petals meet across their sides; offset rows of six, turned by half a petal, as triangles. */
const GROUNDS = {
  straight: cellsProject(['flower'], { rows: ROWS, columns: COLUMNS }),
  offset: cellsProject(['six'], {
    ...{ rows: ROWS, columns: COLUMNS, turn: 30 },
    ...{ arrangement: 'offset-rows', alternateRows: 'same' },
  }),
} as const satisfies Record<Lattice, Project>

const withLayout = (project: Project, layout: Partial<BlanketLayout>): Project => ({
  ...project,
  layout: { ...(project.layout as BlanketLayout), ...layout },
})

describe('M19: outlines of any kind', () => {
  const planner = createPlanner()
  const full = { straight: planner.plan(GROUNDS.straight), offset: planner.plan(GROUNDS.offset) }
  const cases = fc.record({
    cut: fc.oneof(rectangle, circle, hexagon, triangle, path),
    lattice: fc.constantFrom<Lattice>('straight', 'offset'),
    more: fc.constantFrom<Partial<BlanketLayout>>(
      {},
      { edging: { rounds: ['sc'], style: 'follow' } },
      { edging: { rounds: ['sc', 'dc'], style: 'bridge' } },
      { edging: { rounds: ['sc'], style: 'level' } },
      { blocking: { width: 1.1, height: 0.95 } },
    ),
  })

  it('keep the motifs whose middle lies within, and motifs − joins + openings is pieces − holes', () => {
    fc.assert(
      fc.property(cases, ({ cut: { shape, within }, lattice, more }) => {
        const project = withLayout(GROUNDS[lattice], { outlineShape: shape, ...more })
        const plan = planner.plan(project)
        const all = full[lattice].motifs
        const middle = (values: number[]) => (Math.min(...values) + Math.max(...values)) / 2
        const [x, y] = [middle(all.map((each) => each.x)), middle(all.map((each) => each.y))]
        const there = new Set(plan.motifs.map(({ id }) => id))
        for (const motif of all) {
          const isWithin = within({ x: motif.x - x, y: motif.y - y })
          if (isWithin !== null) expect(there.has(motif.id), motif.id).toBe(isWithin)
        }
        if (there.size === 0) {
          expect(plan.findings.map(({ code }) => code)).toContain('layout/nothing-left')
          return
        }
        const openings = openingsAmong(there, ROWS, COLUMNS, lattice)
        expect(plan.holes.reduce((sum, { count }) => sum + count, 0)).toBe(openings)
        const euler = there.size - joinedPairs(plan) + openings
        expect(euler).toBe(plan.pieces - holesCut(there, ROWS, COLUMNS, lattice))
        // Everything is worked once, and every join by the one that comes later.
        expect([...plan.order.map(({ motif }) => motif)].sort()).toEqual([...there].sort())
        const made = plan.order.flatMap(({ joins }) => joins)
        expect(made).toHaveLength(plan.joins.reduce((sum, { members }) => sum + members.length - 1, 0))
        expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
        if (more.edging) {
          // A line round each piece and one round each hole.
          expect(plan.edgingLines.length).toBeGreaterThanOrEqual(1)
          expect(plan.edging!.length).toBeGreaterThan(0)
          for (const at of plan.edgingLines.flat()) {
            expect(at.x).toBeGreaterThan(-1e-6)
            expect(at.y).toBeGreaterThan(-1e-6)
            expect(at.x).toBeLessThan(plan.size.width + 1e-6)
            expect(at.y).toBeLessThan(plan.size.height + 1e-6)
          }
        }
      }),
      { numRuns: runs(80) },
    )
  })

  it('the same file gives the same plan, whatever was planned before it', () => {
    fc.assert(
      fc.property(cases, ({ cut: { shape }, lattice, more }) => {
        const project = withLayout(GROUNDS[lattice], { outlineShape: shape, ...more })
        const again = planProject(JSON.parse(JSON.stringify(project)) as Project)
        const { settled: _settled, ...plan } = planner.plan(project)
        const { settled: _again, ...same } = again
        for (const [name, told] of Object.entries(plan))
          expect(same[name as keyof typeof same], name).toEqual(told)
        expect(planner.numbers(project)?.size ?? null).toEqual(plan.motifs.length > 0 ? plan.size : null)
      }),
      { numRuns: runs(20) },
    )
  })

  it('a circle on straight rows keeps as many motifs as there are points of the grid within it', () => {
    // Gauss's circle problem: points (i, j) with i² + j² ≤ r² for r = 0, 1, 2, … (from memory).
    const POINTS = [1, 5, 13, 29, 49, 81, 113]
    POINTS.forEach((count, radius) => {
      const plan = cellsPlan(['flower'], {
        ...{ rows: 13, columns: 13 },
        outlineShape: { kind: 'circle', size: Math.max(2 * radius * 80 + 2, 20) },
      })
      expect(plan.motifs, `radius ${radius}`).toHaveLength(count)
    })
  })

  it('a rectangle of m × n has 2mn − m − n joins and (m − 1)(n − 1) openings', () => {
    for (const [m, n] of [
      [1, 1],
      [3, 5],
      [7, 3],
    ] as const) {
      const plan = cellsPlan(['flower'], {
        ...{ rows: 9, columns: 9 },
        outlineShape: { kind: 'rectangle', size: m * 80 - 20, height: n * 80 - 20 },
      })
      expect(plan.motifs).toHaveLength(m * n)
      expect(plan.joins).toHaveLength(2 * m * n - m - n)
      expect(plan.holes.reduce((sum, { count }) => sum + count, 0)).toBe((m - 1) * (n - 1))
      expect(plan.size).toMatchObject({ width: m * 80, height: n * 80 })
    }
  })

  it('a hexagon of r rings has 3r² + 3r + 1 motifs and 9r² + 3r joins, a triangle of n rows n(n + 1)/2 and 3n(n − 1)/2', () => {
    const layout = { rows: 13, columns: 14, turn: 30, arrangement: 'offset-rows' } as const
    const across = planner.plan(cellsProject(['six'], layout)).pitch.column
    for (const r of [1, 2, 3, 4]) {
      const plan = cellsPlan(['six'], {
        ...{ ...layout, alternateRows: 'oneFewer', columns: 13 },
        outlineShape: { kind: 'hexagon', size: 2 * r * across + 2 },
      })
      expect(plan.motifs, `${r} rings`).toHaveLength(3 * r * r + 3 * r + 1)
      expect(joinedPairs(plan)).toBe(9 * r * r + 3 * r)
    }
    for (const n of [3, 5, 7]) {
      const plan = cellsPlan(['six'], {
        ...{ ...layout, rows: n, columns: n, alternateRows: 'oneFewer' },
        outlineShape: { kind: 'triangle', points: 'down', size: (n - 1) * across + 20 },
      })
      expect(plan.motifs, `${n} rows`).toHaveLength((n * (n + 1)) / 2)
      expect(joinedPairs(plan)).toBe((3 * n * (n - 1)) / 2)
      expect(plan.holes.reduce((sum, { count }) => sum + count, 0)).toBe((n - 1) ** 2)
    }
  })
})
