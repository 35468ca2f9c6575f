/** What is advised where neighbours meet once is something that can be done with motifs of that shape. */
import { describe, expect, it } from 'vitest'
import type { OutlineKind, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

const SIZES: Partial<Record<OutlineKind, object>> = {
  round: { across: 80 },
  petals: { petals: 8, overTips: 80, overValleys: 60 },
  square: { sideToSide: 80 },
}
function told(outline: OutlineKind, turn = 0) {
  const project: Project = {
    ...{ format: 'petalyard-project', version: 1, terms: 'US' },
    motifs: [{ id: 'm1', kind: 'measured', outline, ...SIZES[outline] }],
    joining: { rule: 'tips' },
    layout: {
      ...{ kind: 'blanket', motif: 'm1', arrangement: 'straight-rows', columns: 4, rows: 4, turn },
    },
  } as Project
  return planProject(project).findings.filter(({ code }) => /^joins\/(weak|corners-alone)/.test(code))
}

describe('neighbors that meet at one point', () => {
  it('of circles are not to be rotated, and have no petals', () => {
    const [found, ...others] = told('round')
    expect(others).toEqual([])
    expect(found).toMatchObject({ code: 'joins/weak-round' })
    expect(found!.mend).toMatch(/^Fillers in the openings/)
    expect(`${found!.message} ${found!.mend}`).not.toMatch(/petal|rotate the/i)
  })

  it('of flowers are to be rotated so that two petals face each', () => {
    const [found] = told('petals')
    expect(found).toMatchObject({ code: 'joins/weak' })
    expect(found!.mend).toMatch(/two petals face each neighbor/)
  })

  it('of squares that meet by their corners are to be joined along their sides', () => {
    const [found, ...others] = told('square', 45)
    expect(others).toEqual([])
    expect(found).toMatchObject({ code: 'joins/corners-alone', severity: 'warning' })
    expect(found!.mend).toMatch(/along the sides/)
    expect(found!.mend).not.toMatch(/petal/)
  })
})
