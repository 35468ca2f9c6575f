import { expect, it } from 'vitest'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { placeSummary } from '../../../src-renderer/state/summaries'

it('counts the fillers among the other motifs of a blanket', () => {
  const flower = (id: string, overTips: number, overValleys: number): MeasuredMotif =>
    ({ id, name: id, kind: 'measured', outline: 'petals', petals: 8, overTips, overValleys }) as MeasuredMotif
  const project: Project = {
    ...{ format: 'petalyard-project', version: 1 },
    motifs: [
      flower('Big bloom', 95, 68),
      flower('Bud', 50, 36),
      { id: 'Filler', name: 'Filler', kind: 'measured', outline: 'round', across: 22 } as MeasuredMotif,
    ],
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'Big bloom', columns: 4, rows: 4 },
      alternate: { motifs: ['Big bloom', 'Bud'], by: 'cell' },
      fillers: { motif: 'Filler' },
    },
  }
  const lines = placeSummary('motif', project, planProject(project)).lines
  expect(lines).toEqual(['Big bloom of 95 mm', 'and 2 others'])
})

it('tells yarns that are not known yet apart from those of the sum', () => {
  const square = (id: string, grams?: number): MeasuredMotif => ({
    ...{ id, kind: 'measured', outline: 'square', sideToSide: 100 },
    slots: [grams === undefined ? { slot: 'all' } : { slot: 'all', grams }],
  })
  const project = (second?: number): Project => ({
    ...{ format: 'petalyard-project', version: 1 },
    yarns: ['y1', 'y2'].map((id) => ({ id, name: id, ballGrams: 50, ballMetres: 125 })),
    motifs: [square('a', 5), square('b', second)],
    colourways: [
      { id: 'c1', motif: 'a', yarns: { all: 'y1' } },
      { id: 'c2', motif: 'b', yarns: { all: 'y2' } },
    ],
    allowance: { wastePercent: 0 },
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'a', columns: 4, rows: 5 },
      alternate: { motifs: ['a', 'b'], by: 'cell' },
      // Its border is known, and no reason to tell a sum.
      edging: { rounds: ['sc'], yarn: 'y2' },
      cells: { fill: { pattern: 'repeat', colourways: ['c1', 'c2'] } },
    },
  })
  const lines = (of: Project) => placeSummary('yarn', of, planProject(of)).lines
  expect(lines(project())).toEqual(['50 g in 1 yarn, 1 not known yet', '2 skeins to buy'])
  expect(lines(project(5))[0]).toMatch(/ in 2 yarns$/)
})
