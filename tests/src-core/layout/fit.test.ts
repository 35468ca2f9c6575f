import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { fitProject } from '../../../src-core/plan'
import { DEFAULTS } from '../../../src-core/settled'

const WISH = { width: 500, height: 600 }
const round = (layout: Partial<BlanketLayout>): Project => ({
  format: 'petalyard-project',
  version: 1,
  motifs: [{ id: 'a', kind: 'measured', outline: 'round', across: 80 }],
  layout: { kind: 'blanket', motif: 'a', ...layout },
})
const rowsOf = (project: Project) => fitProject(project, WISH).arrangements.map((fit) => fit.alternateRows)

describe('arrangements that fit a size', () => {
  it('are the same where a default is written out', () => {
    const fits = fitProject(round({}), WISH)
    expect(fits.arrangements.length).toBeGreaterThan(2)
    const { arrangement, alternateRows, turn, alternateTurn } = DEFAULTS.blanket
    expect(fitProject(round({ arrangement, alternateRows, turn, alternateTurn }), WISH)).toEqual(fits)
  })

  it('have alternate rows as the project has them, besides rows that are all alike', () => {
    expect(new Set(rowsOf(round({})))).toEqual(new Set(['same']))
    expect(new Set(rowsOf(round({ alternateRows: 'oneFewer' })))).toEqual(new Set(['same', 'oneFewer']))
    expect(new Set(rowsOf(round({ alternateRows: 'oneMore' })))).toEqual(new Set(['same', 'oneMore']))
  })
})
