import { describe, expect, it } from 'vitest'
import { isBabySize } from '../../../src-core/layout/baby-size'
import { proposeProject } from '../../../src-core/plan'
import type { Project } from '../../../shared-types/project'

const octagons = (forChild: boolean, lead = 100): Project => ({
  ...{ format: 'petalyard-project', version: 1, joining: { rule: 'edges' } },
  ...(forChild && { forChild: true }),
  motifs: [
    { id: 'm', name: 'Pane', kind: 'measured', outline: 'octagon', sideToSide: lead, slots: [{ slot: 'a' }] },
  ],
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 8, rows: 8 },
})
const size = { width: 900, height: 1100 }
const openings = (of: Project) => proposeProject(of, size).proposals.map(({ opening }) => opening)

describe('M32: arrangements offered for a child', () => {
  it('have no openings for small hands in the first of them where any does without', () => {
    // Side on side, octagons of 100 mm leave squares whose sides are theirs: 100 / (1 + √2) = 41.4 mm across.
    const usual = openings(octagons(false))
    expect(usual[0]).toBeCloseTo(100 / (1 + Math.SQRT2), 1)
    const child = openings(octagons(true))
    expect(child[0]).toBeLessThan(25)
    expect([...child].sort((a, b) => a - b)).toEqual([...usual].sort((a, b) => a - b))
    const firstWide = child.findIndex((opening) => opening >= 25)
    expect(child.slice(firstWide).every((opening) => opening >= 25)).toBe(true)
  })

  it('begin with the smallest openings where all are wide', () => {
    const child = openings(octagons(true, 200))
    expect(Math.min(...child)).toBeGreaterThan(25)
    expect(child).toEqual([...child].sort((a, b) => a - b))
  })
})

describe('the size of a baby blanket', () => {
  it.each([
    [{ width: 760, height: 910 }, true],
    [{ width: 910, height: 760 }, true],
    [{ width: 914.4, height: 1143 }, true],
    [{ width: 1000, height: 1300 }, false],
    [{ width: 300, height: 1100 }, false],
    [{ width: 760, height: 1200 }, false],
  ])('%o: %s', (asked, isIt) => {
    expect(isBabySize(asked)).toBe(isIt)
  })
})
