import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { BlanketLayout } from '../../../shared-types/project'
import { holdColours } from '../../../src-core/colour/hold'
import { createPlanner } from '../../../src-core/plan'
import { holesCut, openingsAmong } from './grid'
import { cellsPlan, cellsProject } from './projects'
import { runs } from '../../runs'

const join = (plan: Plan) =>
  plan.joins.map(({ members }) => members.map(({ motif, anchor }) => `${motif}:${anchor}`).join(' '))

/** V − E + F of the graph of motifs and meetings: 1 for every piece, where F counts what the meetings enclose. */
function euler(plan: Plan): { vertices: number; edges: number } {
  const edges = new Set(
    plan.joins.flatMap(({ members }) =>
      members.flatMap(({ motif }, i) =>
        members.slice(i + 1).map((other) => [motif, other.motif].sort().join(' ')),
      ),
    ),
  )
  return { vertices: plan.motifs.length, edges: edges.size }
}

const without = (ids: readonly string[]) => Object.fromEntries(ids.map((id) => [id, null]))

describe('M19: cells left out', () => {
  const planner = createPlanner()
  const cellIds = fc.uniqueArray(
    fc
      .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 1, max: 8 }))
      .map(([row, place]) => `${row},${place}`),
    { maxLength: 20 },
  )
  const kinds = fc.constantFrom<Partial<BlanketLayout>>(
    { arrangement: 'straight-rows' },
    { arrangement: 'offset-rows', alternateRows: 'oneFewer' },
    { arrangement: 'rings', rings: 3 },
    { arrangement: 'straight-rows', inTheRound: true },
    { arrangement: 'offset-rows', inTheRound: true },
  )

  it('leave the plan as it was, less what hung on them', () => {
    fc.assert(
      fc.property(cellIds, kinds, (ids, kind) => {
        const full = planner.plan(cellsProject(['six'], kind))
        const plan = planner.plan(cellsProject(['six'], { ...kind, cells: { motifs: without(ids) } }))
        const gone = new Set(ids)
        const kept = full.motifs.filter(({ id }) => !gone.has(id))
        expect(plan.motifs.map(({ id }) => id)).toEqual(kept.map(({ id }) => id))
        if (kept.length === 0) return
        // They stand where they stood, but for what the frame moved.
        const [dx, dy] = [plan.motifs[0]!.x - kept[0]!.x, plan.motifs[0]!.y - kept[0]!.y]
        plan.motifs.forEach(({ x, y }, i) => {
          expect(x - kept[i]!.x).toBeCloseTo(dx, 6)
          expect(y - kept[i]!.y).toBeCloseTo(dy, 6)
        })
        expect(plan.pitch).toEqual(full.pitch)
        const left = full.joins
          .map(({ members }) => members.filter(({ motif }) => !gone.has(motif)))
          .filter((members) => members.length > 1)
          .map((members) => members.map(({ motif, anchor }) => `${motif}:${anchor}`))
        const sorted = (lists: readonly (readonly string[])[]) =>
          lists.map((list) => [...list].sort().join(' ')).sort()
        expect(sorted(join(plan).map((each) => each.split(' ')))).toEqual(sorted(left))
      }),
      { numRuns: runs(60) },
    )
  })

  it('motifs − joins + openings is the number of pieces, less the holes that are cut', () => {
    fc.assert(
      fc.property(cellIds, (ids) => {
        const plan = planner.plan(cellsProject(['flower'], { cells: { motifs: without(ids) } }))
        const { vertices, edges } = euler(plan)
        // Of a grid a square of four motifs encloses an opening: counted from the cells alone.
        const there = new Set(plan.motifs.map(({ id }) => id))
        const openings = openingsAmong(there, 6, 8, 'straight')
        expect(plan.holes.reduce((sum, { count }) => sum + count, 0)).toBe(openings)
        // Pieces minus holes: what a picture of squares would have (4-connected).
        expect(vertices - edges + openings).toBe(plan.pieces - holesCut(there, 6, 8))
      }),
      { numRuns: runs(60) },
    )
  })

  it('in the round V − E + F is 0 for the band: its two ends are no faces', () => {
    for (const [columns, rows] of [
      [3, 1],
      [5, 4],
      [8, 6],
    ] as const) {
      const plan = cellsPlan(['flower'], { columns, rows, inTheRound: true })
      const { vertices, edges } = euler(plan)
      const openings = plan.holes.reduce((sum, { count }) => sum + count, 0)
      expect(edges).toBe(columns * rows + columns * (rows - 1))
      expect(vertices - edges + openings).toBe(0)
    }
  })

  it('a line of the edging runs round a hole, and not round an opening between motifs', () => {
    const edging = { rounds: ['sc'], style: 'bridge' as const }
    const full = cellsPlan(['flower'], { edging })
    const plan = cellsPlan(['flower'], { edging, cells: { motifs: { '3,4': null } } })
    expect(full.edgingLines).toHaveLength(1)
    expect(plan.edgingLines).toHaveLength(2)
    // From tip to tip round the hole: 5 free tips of each neighbour are left, of which 3 face it.
    expect(plan.edging!.length).toBeGreaterThan(full.edging!.length + 200)
    // The outer line is the same.
    const notch = cellsPlan(['flower'], { edging, cells: { motifs: { '1,1': null } } })
    expect(notch.edgingLines).toHaveLength(1)
  })

  it('a hole in a blanket large enough that its edge is taken from the border alone has the same line', () => {
    const edging = { rounds: ['sc'], style: 'follow' as const }
    const hole = (size: number, row: number) => {
      const layout = { columns: size, rows: size, edging }
      const full = planner.plan(cellsProject(['flower'], layout))
      const cut = planner.plan(
        cellsProject(['flower'], { ...layout, cells: { motifs: { [`${row},${row}`]: null } } }),
      )
      return cut.edging!.length - full.edging!.length
    }
    expect(hole(14, 7)).toBeCloseTo(hole(5, 3), 0)
  })

  it('nothing left is an error, and everything else is told', () => {
    const ids = Array.from({ length: 4 }, (_, i) => `${1 + Math.floor(i / 2)},${1 + (i % 2)}`)
    const plan = cellsPlan(['flower'], { columns: 2, rows: 2, cells: { motifs: without(ids) } })
    expect(plan.findings.map(({ code }) => code)).toContain('layout/nothing-left')
    expect(plan.motif?.id).toBe('flower')
  })

  it('no filler stands where a motif round it is left out, and no half beside one', () => {
    const { motifs } = cellsProject(['flower', 'bud'])
    const more = { motifs: [motifs![0]!, { ...motifs![1]!, overTips: 30, overValleys: 22 } as never] }
    const filled = { fillers: { motif: 'bud' } }
    const full = cellsPlan(['flower'], filled, more)
    const plan = cellsPlan(['flower'], { ...filled, cells: { motifs: { '3,4': null } } }, more)
    expect(full.fillers).toHaveLength(35)
    expect(plan.fillers).toHaveLength(35 - 4)
    const halves = { arrangement: 'offset-rows' as const, alternateRows: 'oneFewer' as const, halves: true }
    const all = cellsPlan(['six'], halves)
    const some = cellsPlan(['six'], { ...halves, cells: { motifs: { '2,1': null } } })
    expect(all.halves).toHaveLength(6)
    expect(some.halves.map(({ id }) => id)).toEqual(
      all.halves.map(({ id }) => id).filter((id) => id !== '2,left'),
    )
  })
})

describe('colours beside cells left out', () => {
  it('stay where they stood when a cell is left out, in offset rows and in rings', () => {
    const colourways = ['a', 'b', 'c', 'd'].map((id) => ({ id, motif: 'six', yarns: { all: 'y' } }))
    for (const kind of [
      { arrangement: 'offset-rows', alternateRows: 'same' },
      { arrangement: 'rings', rings: 3 },
    ] as const) {
      const fill = { pattern: 'no-two-alike', seed: 4 } as const
      const before = cellsProject(['six'], { ...kind, cells: { fill } }, { colourways })
      const last = createPlanner()
        .plan(before)
        .motifs.filter(({ row }) => row === (kind.arrangement === 'rings' ? 7 : 1))
      const motifs = without(last.slice(-4).map(({ id }) => id))
      const after = holdColours(before, {
        ...before,
        layout: { ...(before.layout as BlanketLayout), cells: { fill, motifs } },
      })
      const was = new Map(
        createPlanner()
          .plan(before)
          .motifs.map(({ id, colourway }) => [id, colourway]),
      )
      const is = createPlanner().plan(after).motifs
      expect(is).toHaveLength(was.size - Object.keys(motifs).length)
      for (const { id, colourway } of is) expect(colourway).toBe(was.get(id))
    }
  })
})

describe('places left out', () => {
  it('are told where their motifs would stand: in every arrangement, edged and blocked', () => {
    for (const kind of [
      { arrangement: 'straight-rows' },
      { arrangement: 'offset-rows', alternateRows: 'oneFewer' },
      { arrangement: 'rings', rings: 3 },
    ] as const)
      for (const more of [{}, { edging: { rounds: ['sc', 'dc'] }, blocking: { width: 1.1, height: 1.2 } }]) {
        const full = cellsPlan(['six'], { ...kind, ...more })
        const plan = cellsPlan(['six'], { ...kind, ...more, cells: { motifs: without(['3,3', '4,2']) } })
        expect(full.leftOut).toBeUndefined()
        expect(plan.leftOut!.map(({ id }) => id)).toEqual(['3,3', '4,2'])
        for (const { id, x, y } of plan.leftOut!) {
          const stood = full.motifs.find((motif) => motif.id === id)!
          expect(x).toBeCloseTo(stood.x, 6)
          expect(y).toBeCloseTo(stood.y, 6)
        }
      }
  })
})
