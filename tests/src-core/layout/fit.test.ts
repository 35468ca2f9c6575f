import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Motif, Project } from '../../../shared-types/project'
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

  it('have rows all alike and rows that end within the others; longer ones where the project has them', () => {
    expect(new Set(rowsOf(round({})))).toEqual(new Set(['same', 'oneFewer']))
    expect(new Set(rowsOf(round({ alternateRows: 'oneFewer' })))).toEqual(new Set(['same', 'oneFewer']))
    expect(rowsOf(round({ alternateRows: 'oneMore' }))).toContain('oneMore')
  })

  it('come first by what is nearest, whatever rows the project has', () => {
    const flower: Motif = {
      id: 'a',
      kind: 'measured',
      outline: 'petals',
      petals: 6,
      overTips: 82,
      overValleys: 61,
    }
    const flowers = (layout: Partial<BlanketLayout>): Project => ({ ...round(layout), motifs: [flower] })
    const nearest = (project: Project) => fitProject(project, { width: 900, height: 1100 }).arrangements[0]
    const fit = nearest(flowers({ arrangement: 'offset-rows' }))
    expect(fit).toMatchObject({ alternateRows: 'oneFewer', columns: 12, rows: 17, pieces: 1, single: 0 })
    expect(Math.abs(fit!.error.width)).toBeLessThan(5)
    expect(nearest(flowers({ arrangement: 'offset-rows', alternateRows: 'oneFewer' }))).toEqual(fit)
  })
})
