/** M19: an outline lies over the same motifs while rows and motifs in a row come and go. Every number is made up. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, OutlineShape, Project } from '../../../shared-types/project'
import { fitProject, planProject } from '../../../src-core/plan'
import { holdWork } from '../../../src-core/progress/hold'
import { lostMade } from '../../../src-core/progress/lost'
import { markMade } from '../../../src-core/progress/mark'
import { layoutOfFit } from '../../../src-core/layout/taken'
import { withOutlineTaken } from '../../../src-core/progress/outline-stays'
import { project } from './project'
import { runs } from '../../runs'

const withBlanket = (of: Project, patch: Partial<BlanketLayout>): Project => ({
  ...of,
  layout: { ...(of.layout as BlanketLayout), ...patch },
})
const outlineOf = (of: Project) => (of.layout as BlanketLayout).outlineShape
const ids = (of: Project) => planProject(of).motifs.map(({ id }) => id)
const codes = (of: Project) => planProject(of).findings.map(({ code }) => code)
/** Discs of 60 mm, 12 in each of 10 rows, cut out. */
const shawl = (outlineShape: OutlineShape, blanket: Partial<BlanketLayout> = {}): Project =>
  project({}, { columns: 12, rows: 10, outlineShape, ...blanket })

const shapes: OutlineShape[] = [
  { kind: 'triangle', size: 560, height: 480, points: 'down' },
  { kind: 'hexagon', size: 540 },
  { kind: 'circle', size: 500 },
  { kind: 'rectangle', size: 400, height: 300 },
]

describe('an outline', () => {
  it.each(shapes)('$kind: keeps its motifs under one more row, one more column, and again', (shape) => {
    for (const arrangement of ['straight-rows', 'offset-rows'] as const) {
      const before = shawl(shape, { arrangement })
      const stood = ids(before)
      const taller = holdWork(before, withBlanket(before, { rows: 11 }))
      expect(ids(taller)).toEqual(stood)
      const wider = holdWork(taller, withBlanket(taller, { columns: 14, rows: 12 }))
      expect(ids(wider)).toEqual(stood)
      // Without the middle that is kept, other motifs lie under it.
      const { middle, ...bare } = outlineOf(taller)!
      expect(middle).toBeDefined()
      expect(ids(withBlanket(taller, { outlineShape: bare }))).not.toEqual(stood)
      // Back again it is the same piece.
      expect(ids(holdWork(wider, withBlanket(wider, { columns: 12, rows: 10 })))).toEqual(stood)
    }
  })

  it('takes nothing made away without a question, whatever rows come (property)', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...shapes),
        fc.constantFrom('straight-rows' as const, 'offset-rows' as const),
        fc.integer({ min: 0, max: 7 }),
        fc.integer({ min: 0, max: 7 }),
        fc.constantFrom('same' as const, 'oneFewer' as const),
        (shape, arrangement, rows, columns, alternateRows) => {
          const start = shawl(shape, { arrangement })
          const before = markMade(start, planProject(start).motifs.slice(0, 9), '2026-12-01')
          const next = holdWork(
            before,
            withBlanket(before, { rows: 10 + rows, columns: 12 + columns, alternateRows }),
          )
          expect(lostMade(before, next)).toBeNull()
          const now = new Set(ids(next))
          for (const key of Object.keys(before.made!)) expect(now.has(key), key).toBe(true)
        },
      ),
      { numRuns: runs(60) },
    )
  })

  it('goes on lying in the middle of rows that do not reach to its edges yet', () => {
    const before = shawl({ kind: 'circle', size: 900 })
    expect(codes(before)).toContain('layout/outline-larger')
    const next = holdWork(before, withBlanket(before, { rows: 16, columns: 16 }))
    expect(outlineOf(next)).toEqual(outlineOf(before))
    expect(codes(next)).not.toContain('layout/outline-larger')
    // Unless something is made.
    const made = markMade(before, planProject(before).motifs.slice(0, 5), '')
    const held = holdWork(made, withBlanket(made, { rows: 16, columns: 16 }))
    // Half way down 10 rows and across 12 motifs, by hand.
    expect(outlineOf(held)!.middle).toEqual({ row: 5.5, place: 6.5 })
    expect(codes(held)).toContain('layout/outline-aside')
  })

  it('lies in the middle again of rows that do not reach round it any more, and of an arrangement that is taken', () => {
    const shape: OutlineShape = { kind: 'circle', size: 500 }
    const before = shawl(shape)
    const taller = holdWork(before, withBlanket(before, { rows: 12 }))
    expect(outlineOf(taller)!.middle).toBeDefined()
    expect(outlineOf(holdWork(taller, withBlanket(taller, { rows: 6, columns: 6 })))).toEqual(shape)
    // As it is told before it is taken.
    const [fit] = fitProject(taller, { width: 600, height: 900 }).arrangements
    const taken = holdWork(taller, withOutlineTaken(taller, withBlanket(taller, layoutOfFit(taller, fit!))))
    // Larger or smaller than before, and in the middle.
    expect(outlineOf(taken)).toEqual({ ...shape, ...fit!.outline })
    expect(planProject(taken).motifs.length).toBe(fit!.motifs)
  })

  it('lies where the file says, and rings and other arrangements have theirs in the middle', () => {
    // A circle of 130 mm about the third motif of row 2: it and the four beside it, whose middles are 60 mm away.
    const at = shawl({ kind: 'circle', size: 130, middle: { row: 2, place: 3 } })
    expect(ids(at)).toEqual(['1,3', '2,2', '2,3', '2,4', '3,3'])
    expect(outlineOf(holdWork(at, withBlanket(at, { arrangement: 'offset-rows' })))).not.toHaveProperty(
      'middle',
    )
    const rings = shawl({ kind: 'circle', size: 130 }, { arrangement: 'rings', rings: 4 })
    expect(ids(holdWork(rings, withBlanket(rings, { rings: 5 }))).length).toBe(ids(rings).length)
  })

  it('that is given in numbers nobody can use lies in the middle, and says so', () => {
    const at = shawl({ kind: 'circle', size: 130, middle: { row: 1e9, place: 3 } })
    expect(codes(at)).not.toContain('layout/nothing-left')
  })
})
