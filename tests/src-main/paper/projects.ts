/** Projects of several kinds, planned by the engine, for the tests of paper. */
import type { Plan } from '../../../shared-types/plan'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'
import { samplePlan } from '../../src-core/figures/sample'

export const DATE = new Date('2026-11-24T10:00:00Z')
export const VERSION = '0.1.0'

const base = samplePlan({ columns: 2, rows: 2, colourways: 8 }).project

/** A project of six-petal flowers in offset rows, changed as wished. */
export function flowers(layout: Partial<BlanketLayout> = {}, changes: Partial<Project> = {}): Project {
  const colourways = base.colourways!.slice(0, 4).map(({ id }) => id)
  return {
    ...base,
    layout: {
      kind: 'blanket',
      arrangement: 'offset-rows',
      motif: 'm1',
      columns: 12,
      rows: 10,
      turn: 30,
      cells: { fill: { pattern: 'repeat', colourways } },
      ...layout,
    },
    ...changes,
  }
}

/** The same with its plan. */
export function planned(project: Project): { project: Project; plan: Plan } {
  return { project, plan: createPlanner().plan(project) }
}
