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
