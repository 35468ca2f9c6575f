/** M29: ways to a size of what is joined in the round: round about, not across, and high with the edging where it is. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { BlanketLayout, Motif, OutlineShape, Project } from '../../../shared-types/project'
import { fitProject, planProject } from '../../../src-core/plan'
import { withEdit } from '../../../src-core/ways/edit'
import { expectKept } from './expect-kept'

const slots = [{ slot: 'all', grams: 3 }]
const measured = (id: string, shape: object) => ({ id, kind: 'measured', ...shape, slots }) as Motif

const mm = (min: number, max: number) => fc.integer({ min, max })
const shape: fc.Arbitrary<object> = fc.oneof(
  fc.record({ outline: fc.constant('petals'), petals: mm(4, 8), overTips: mm(40, 120) }),
  fc.record({ outline: fc.constantFrom('square', 'hexagon'), sideToSide: mm(40, 120) }),
  fc.record({ outline: fc.constant('round'), across: mm(30, 90) }),
)
const outlineShape: fc.Arbitrary<OutlineShape> = fc.oneof(
  fc.record({ kind: fc.constantFrom('circle' as const, 'hexagon' as const), size: mm(250, 600) }),
  fc.record({
    kind: fc.constantFrom('rectangle' as const, 'triangle' as const),
    size: mm(250, 600),
    height: mm(200, 500),
  }),
)
const cases = fc.record({
  shapes: fc.array(shape, { minLength: 1, maxLength: 2 }),
  by: fc.constantFrom('cell' as const, 'row' as const),
  rule: fc.constantFrom('tips', 'edges', 'bridge', 'seam', 'apart'),
  arrangement: fc.constantFrom('straight-rows' as const, 'offset-rows' as const),
  turned: fc.constantFrom({}, { turn: 22.5 }, { turn: 30, alternateTurn: 30 }),
  columns: mm(3, 6),
  rows: mm(1, 4),
  rounds: fc.constantFrom([], ['sc'], ['dc', 'sc']),
  ends: fc.constantFrom('both' as const, 'mouth' as const, 'bottom' as const, undefined),
  blocking: fc.constantFrom({}, { width: 1.02 }, { height: 0.98 }),
  left: fc.uniqueArray(
    fc.tuple(mm(1, 6), mm(1, 7)).map(([row, place]) => `${row},${place}`),
    { maxLength: 4 },
  ),
  outline: fc.option(outlineShape, { nil: undefined, freq: 3 }),
  share: fc.double({ min: 0.8, max: 1.3, noNaN: true }),
  side: fc.constantFrom('width' as const, 'height' as const, 'both' as const),
})
type Case = typeof cases extends fc.Arbitrary<infer Of> ? Of : never

function bagOf(asked: Case): Project {
  const { shapes, by, rule, arrangement, turned, columns, rows, rounds, ends, blocking, left, outline } =
    asked
  const ids = shapes.map((_, i) => `m${i}`)
  const layout: BlanketLayout = {
    ...{ kind: 'blanket', motif: 'm0', arrangement, columns, rows, ...turned, blocking, inTheRound: true },
    ...(ids.length > 1 && { alternate: { motifs: ids, by } }),
    ...(rounds.length > 0 && { edging: { rounds: [...rounds], yarn: 'y', ...(ends && { ends }) } }),
    ...(outline && { outlineShape: outline }),
    cells: { motifs: Object.fromEntries(left.map((id) => [id, null])) },
  }
  return {
    ...{ format: 'petalyard-project', version: 1 },
    gauge: { stitch: 'sc', stitches: 22, rows: 24, over: 100, hook: 4 },
    yarns: [{ id: 'y', ballGrams: 50, ballMetres: 125 }],
    motifs: shapes.map((each, i) => measured(`m${i}`, each)),
    colourways: ids.map((motif, i) => ({ id: `c${i}`, motif, yarns: { all: 'y' } })),
    joining: {
      ...{ rule: rule as 'tips', yarn: 'y' },
      ...(rule === 'bridge' && { bridgeChains: 2 }),
      ...(rule === 'apart' && { gap: 6 }),
    },
    layout,
  }
}

/** Nine squares and rounds in turn come nearer than ten, but do not close evenly. */
const CHESSBOARD: Case = {
  shapes: [
    { outline: 'square', sideToSide: 60 },
    { outline: 'round', across: 80 },
  ],
  ...{ by: 'cell', rule: 'tips', arrangement: 'straight-rows', turned: {}, columns: 8, rows: 4 },
  ...{ rounds: [], ends: undefined, blocking: {}, left: [], outline: undefined },
  ...{ share: 650 / 560, side: 'width' },
}

describe('M29 ways to a size in the round', () => {
  it('keep what they promise for every kind of layout that can be joined in the round', () => {
    fc.assert(
      fc.property(cases, (asked) => {
        const project = bagOf(asked)
        const before = planProject(project)
        if (before.motifs.length === 0) return
        const { width, height } = before.size
        const wish = { width: Math.round(width * asked.share), height: Math.round(height * asked.share) }
        for (const way of expectKept(
          project,
          asked.side === 'both' ? wish : { [asked.side]: wish[asked.side] },
        )) {
          const made = withEdit(project, way.edit)
          const after = planProject(made)
          const { settled, pitch, size } = after
          const laid = settled.layout as BlanketLayout
          expect(laid.inTheRound).toBe(true)
          // Round about it is as many pitches as there are places in a row: nothing sticks out, nothing is added.
          expect(size.width, way.change).toBeCloseTo(laid.columns! * pitch.column, 6)
          // What alternates evenly now does so afterwards.
          const isEven = ({ findings }: Plan) => !findings.some(({ code }) => code === 'layout/round-pattern')
          if (isEven(before)) expect(isEven(after), way.change).toBe(true)
        }
      }),
      { numRuns: 6, examples: [[CHESSBOARD]] },
    )
  })

  it('a chessboard of two motifs stays one where the round closes, in ways and in fits (by hand)', () => {
    // Eight squares of 60 and rounds of 80 mm in turn, 70 mm from middle to middle: 560 mm round about. For 650 mm
    // nine (630 mm) come nearer than ten, but then two alike meet.
    const bag: Project = {
      ...{ format: 'petalyard-project', version: 1 },
      motifs: [
        measured('s', { outline: 'square', sideToSide: 60 }),
        measured('r', { outline: 'round', across: 80 }),
      ],
      joining: { rule: 'tips' },
      layout: {
        ...{ kind: 'blanket', motif: 's', arrangement: 'straight-rows', columns: 8, rows: 4 },
        ...{ alternate: { motifs: ['s', 'r'], by: 'cell' }, inTheRound: true },
      },
    }
    expect(planProject(bag).size.width).toBeCloseTo(560, 6)
    const counts = (project: Project) => (project.layout as BlanketLayout).columns!
    const wished = expectKept(bag, { width: 650 }).map((way) => counts(withEdit(bag, way.edit)))
    expect(wished.length).toBeGreaterThan(0)
    expect(wished.filter((columns) => columns % 2 > 0)).toEqual([])
    const { arrangements } = fitProject(bag, { width: 650, height: 280 })
    const round = arrangements.map(({ columns }) => columns)
    expect(round).toContain(10)
    expect(round.filter((columns) => columns % 2 > 0)).toEqual([])
  })
})
