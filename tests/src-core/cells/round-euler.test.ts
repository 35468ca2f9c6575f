/** Euler's number of mixed layouts with cells left out and outlines, flat and joined in the round. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, OutlineShape } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'
import { cellsProject, joinedPairs } from './projects'
import { runs } from '../../runs'

const ROWS = 6

/** A grid of cells, its rows closed or not, by its own rules: nothing of the program is asked. */
class Grid {
  constructor(
    private readonly there: ReadonlySet<string>,
    private readonly columns: number,
    private readonly isRound: boolean,
    private readonly isOffset: boolean,
  ) {}

  /** The cell so many places on, or null beyond the end of a row. */
  private cell(row: number, place: number): string | null {
    if (row < 1 || row > ROWS) return null
    if (this.isRound) return `${row},${((place - 1 + this.columns) % this.columns) + 1}`
    return place >= 1 && place <= this.columns ? `${row},${place}` : null
  }

  private at(row: number, place: number): boolean {
    const cell = this.cell(row, place)
    return cell !== null && this.there.has(cell)
  }

  /** Places above or below that a cell meets, the left one first. */
  private steps(row: number): readonly number[] {
    if (!this.isOffset) return [0]
    return row % 2 === 0 ? [0, 1] : [-1, 0]
  }

  pieces(): number {
    return this.groups([...this.there], (row, place) => [
      [row, place - 1],
      [row, place + 1],
      ...[-1, 1].flatMap((down) => this.steps(row).map((on): [number, number] => [row + down, place + on])),
    ])
  }

  private groups(
    cells: readonly string[],
    beside: (row: number, place: number) => [number, number][],
  ): number {
    const left = new Set(cells)
    let groups = 0
    for (const first of cells) {
      if (!left.delete(first)) continue
      groups++
      const stack = [first]
      while (stack.length > 0) {
        const [row, place] = stack.pop()!.split(',').map(Number) as [number, number]
        for (const [r, p] of beside(row, place)) {
          const cell = this.cell(r, p)
          if (cell !== null && left.delete(cell)) stack.push(cell)
        }
      }
    }
    return groups
  }

  /** Squares of four, or triangles of three, that are all there. */
  openings(): number {
    let count = 0
    for (const id of this.there) {
      const [row, place] = id.split(',').map(Number) as [number, number]
      if (!this.at(row, place + 1)) continue
      if (!this.isOffset) count += this.at(row + 1, place) && this.at(row + 1, place + 1) ? 1 : 0
      // Between the two lies the right one of the places that the first meets.
      else for (const down of [-1, 1]) count += this.at(row + down, place + this.steps(row)[1]!) ? 1 : 0
    }
    return count
  }

  joins(): number {
    let count = 0
    for (const id of this.there) {
      const [row, place] = id.split(',').map(Number) as [number, number]
      if (this.at(row, place + 1)) count++
      for (const on of this.steps(row)) if (this.at(row + 1, place + on)) count++
    }
    return count
  }

  /**
   * Gaps that motifs enclose: of the cells that are missing those that reach neither edge, a straight gap across
   * corners too. Round a tube, what lies above the first row and below the last are two gaps of their own, and one
   * where they reach each other.
   */
  gaps(): { count: number; outside: number } {
    const missing: string[] = []
    for (let row = 0; row <= ROWS + 1; row++)
      for (let place = this.isRound ? 1 : 0; place <= this.columns + (this.isRound ? 0 : 1); place++)
        if (!this.there.has(`${row},${place}`)) missing.push(`${row},${place}`)
    const wrap = (place: number) => (this.isRound ? ((place - 1 + this.columns) % this.columns) + 1 : place)
    const left = new Set(missing)
    let count = 0
    let outside = 0
    for (const first of missing) {
      if (!left.delete(first)) continue
      count++
      let isOutside = false
      const stack = [first]
      while (stack.length > 0) {
        const [row, place] = stack.pop()!.split(',').map(Number) as [number, number]
        if (row === 0 || row === ROWS + 1 || place === 0 || place === this.columns + 1) isOutside = true
        const around = this.isOffset ? this.steps(row) : [-1, 0, 1]
        const beside = [
          [row, place - 1],
          [row, place + 1],
          ...[-1, 1].flatMap((down) => around.map((on) => [row + down, place + on])),
        ] as [number, number][]
        for (const [r, p] of beside) {
          const cell = `${r},${wrap(p)}`
          if (left.delete(cell)) stack.push(cell)
        }
      }
      if (isOutside) outside++
    }
    return { count, outside }
  }
}

const cells = fc.uniqueArray(
  fc
    .tuple(fc.integer({ min: 1, max: ROWS }), fc.integer({ min: 1, max: 8 }))
    .map(([row, place]) => `${row},${place}`),
  { maxLength: 24 },
)
const outline: fc.Arbitrary<OutlineShape> = fc
  .record({
    kind: fc.constantFrom('rectangle' as const, 'circle' as const, 'triangle' as const, 'hexagon' as const),
    size: fc.integer({ min: 150, max: 700 }),
    height: fc.integer({ min: 150, max: 500 }),
  })
  .map(({ kind, size, height }) =>
    kind === 'rectangle' || kind === 'triangle' ? { kind, size, height } : { kind, size },
  )
const cases = fc.record({
  mix: fc.constantFrom('one' as const, 'cell' as const, 'row' as const),
  lattice: fc.constantFrom('straight' as const, 'offset' as const),
  isRound: fc.boolean(),
  // In the round an even number, so that what alternates comes out even.
  columns: fc.constantFrom(4, 6, 8),
  left: cells,
  outline: fc.option(outline, { nil: undefined }),
})

describe('M19: Euler’s number of mixed layouts', () => {
  const planner = createPlanner()

  it('motifs − joins + openings is pieces less holes, with two motifs, cells left out and outlines, in the round too', () => {
    const seen = { mixed: 0, round: 0, holes: 0, cut: 0, open: 0 }
    fc.assert(
      fc.property(cases, ({ mix, lattice, isRound, columns, left, outline }) => {
        const isOffset = lattice === 'offset'
        // Offset rows of two kinds by the cell meet no longer as triangles.
        const by = isOffset && mix === 'cell' ? 'one' : mix
        const names = isOffset
          ? (['six', 'sixToo'] as const)
          : by === 'row'
            ? (['flower', 'flowerToo'] as const)
            : (['flower', 'bud'] as const)
        const layout: Partial<BlanketLayout> = {
          ...{ rows: ROWS, columns, inTheRound: isRound },
          ...(isOffset && { arrangement: 'offset-rows', alternateRows: 'same', turn: 30 }),
          motif: names[0],
          ...(by !== 'one' && { alternate: { motifs: [...names], by } }),
          ...(outline && { outlineShape: outline }),
          cells: { motifs: Object.fromEntries(left.map((id) => [id, null])) },
        }
        const bare = cellsProject(['flower', 'bud', 'six'])
        const also = bare.motifs!.flatMap((motif) => [motif, { ...motif, id: `${motif.id}Too` }])
        const project = {
          ...bare,
          motifs: also,
          colourways: [],
          layout: { ...bare.layout, alternate: undefined, ...layout } as BlanketLayout,
        }
        const plan = planner.plan(project)
        const there = new Set(plan.motifs.map(({ id }) => id))
        if (there.size === 0) return
        for (const id of left) expect(there.has(id)).toBe(false)
        const grid = new Grid(there, columns, isRound, isOffset)
        expect(joinedPairs(plan)).toBe(grid.joins())
        expect(plan.pieces).toBe(grid.pieces())
        const openings = plan.holes.reduce((sum, { count }) => sum + count, 0)
        expect(openings).toBe(grid.openings())
        const euler = there.size - joinedPairs(plan) + openings
        const { count, outside } = grid.gaps()
        if (isRound) {
          // On the sphere that a tube with both ends closed is: V − E + F = 1 + pieces, F the openings and all gaps.
          expect(euler).toBe(1 + plan.pieces - count)
          seen.round++
        } else {
          expect(outside).toBe(1)
          expect(euler).toBe(plan.pieces - (count - outside))
        }
        if (by !== 'one') seen.mixed++
        if (count > outside) seen.holes++
        if (outline) seen.cut++
        if (openings > 0) seen.open++
      }),
      { numRuns: runs(200) },
    )
    // The sample has all of it, and often.
    for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(15)
  })
})
