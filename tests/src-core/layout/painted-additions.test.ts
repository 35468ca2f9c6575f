/** M27, M28: fillers and half motifs have addresses of their own, are painted by them, and have yarn. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { projectSchema } from '../../../shared-types/project'
import type { Project } from '../../../shared-types/project'
import { pieceAt, placedPieces } from '../../../src-core/layout/placed'
import { planProject } from '../../../src-core/plan'
import { blanket, ROUND } from './additions'

const SMALL = { outline: 'round', across: 12 }

const both = (layout: object = {}): Project =>
  blanket(ROUND, SMALL, {
    ...{ arrangement: 'offset-rows', columns: 4, rows: 4, halves: true, fillers: { motif: 'f' } },
    ...layout,
  })

const painted = (cells: Record<string, string>): Project =>
  both({ cells: { fill: { pattern: 'one', colourways: ['a'] }, painted: cells } })

describe('addresses of fillers and half motifs', () => {
  it('tell the row and side, or the motifs round it, each once', () => {
    const plan = planProject(both())
    expect(plan.halves.map(({ id }) => id)).toEqual(['1,right', '2,left', '3,right', '4,left'])
    expect(plan.fillers[0]!.id).toBe('1,1+1,2+2,1')
    expect(plan.fillers.map(({ id, motifs }) => id === motifs.join('+')).every(Boolean)).toBe(true)
    const ids = placedPieces(plan).map(({ id }) => id)
    expect(new Set(ids).size).toBe(16 + plan.halves.length + plan.fillers.length)
    expect(pieceAt(plan, '2,left')).toMatchObject({ kind: 'half', row: 2, side: 'left', colourway: 'a' })
    expect(pieceAt(plan, '1,1+1,2+2,1')).toMatchObject({ kind: 'filler', colourway: 'b', motif: 'f' })
    expect(plan.counts).toMatchObject({ motifs: 16, halves: 4, fillers: plan.fillers.length })
  })

  it('are unique, and stay the same where columns and rows are added', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('straight-rows' as const, 'offset-rows' as const),
        fc.constantFrom('same' as const, 'oneFewer' as const, 'oneMore' as const),
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 2, max: 6 }),
        (arrangement, alternateRows, columns, rows) => {
          const across = arrangement === 'straight-rows' ? 33 : 12
          const at = (more: number) =>
            planProject(
              blanket(
                ROUND,
                { outline: 'round', across },
                {
                  ...{ arrangement, alternateRows, halves: true, fillers: { motif: 'f' } },
                  ...{ columns: columns + more, rows: rows + more },
                },
              ),
            )
          const less = at(0)
          const ids = placedPieces(less).map(({ id }) => id)
          expect(new Set(ids).size).toBe(ids.length)
          const more = new Set(at(1).fillers.map(({ id }) => id))
          for (const { id } of less.fillers) expect(more.has(id)).toBe(true)
        },
      ),
      { numRuns: 30 },
    )
  })
})

describe('painted fillers and half motifs', () => {
  it('carry their own colourway, and only they', () => {
    const plain = planProject(both())
    const plan = planProject(painted({ '1,1+1,2+2,1': 'c', '2, left': 'c' }))
    const others = (entry: { id: string }) => entry.id !== '1,1+1,2+2,1' && entry.id !== '2,left'
    expect(pieceAt(plan, '1,1+1,2+2,1')!.colourway).toBe('c')
    expect(pieceAt(plan, '2,left')!.colourway).toBe('c')
    expect(placedPieces(plan).filter(others)).toEqual(placedPieces(plain).filter(others))
    expect(plan.findings.filter(({ code }) => code === 'file/unknown-cell')).toEqual([])
  })

  it('take the yarn that they are painted with: 0.5 g of a filler moves from one yarn to the other', () => {
    const grams = (project: Project) =>
      Object.fromEntries(planProject(project).yarns.map(({ id, grams }) => [id, grams.expected]))
    const before = grams(both())
    const after = grams(painted({ '1,1+1,2+2,1': 'c' }))
    expect(after['y']! - before['y']!).toBeCloseTo(0.5, 9)
    expect(before['z']! - after['z']!).toBeCloseTo(0.5, 9)
  })

  it('addresses where nothing stands are told, while there are fillers or halves at all', () => {
    const unknown = (project: Project) =>
      planProject(project)
        .findings.filter(({ code }) => code === 'file/unknown-cell')
        .map(({ where }) => where)
    const cells = { '1,1+9,9+2,1': 'c', '1,left': 'a', '9,9': 'a' }
    expect(unknown(painted(cells)).sort()).toEqual(
      Object.keys(cells)
        .map((key) => `layout.cells.painted["${key}"]`)
        .sort(),
    )
    const bare = both({ halves: false, fillers: undefined, cells: { painted: { '2,left': 'a' } } })
    expect(unknown(bare)).toEqual([])
  })

  it('stand in the file among the painted cells, and are read back as they were', () => {
    const project = painted({ '1,1+1,2+2,1': 'c', '2,left': 'a', '1,1': 'a' })
    expect(projectSchema.parse(JSON.parse(JSON.stringify(project)))).toEqual(project)
  })
})
