/** A weight that no crochet has: by hand, from the area of a square. */
import { describe, expect, it } from 'vitest'
import type { Motif, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

/** A square of 145 mm: 0.021025 m². */
const square = (weighed: object): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [
    { id: 'm', name: 'Square', kind: 'measured', outline: 'square', sideToSide: 145, weighed } as Motif,
  ],
  layout: { kind: 'blanket', motif: 'm', columns: 9, rows: 11 },
})
const saidOf = (weighed: object) =>
  planProject(square(weighed)).findings.filter(({ code }) => /weight-too-(light|heavy)/.test(code))

describe('a weight that cannot be', () => {
  it('11.8 g of one that is taken for ten: 1.18 g are 56 g to the square metre', () => {
    const [said, ...more] = saidOf({ grams: 11.8, motifs: 10 })
    expect(more).toEqual([])
    expect(said).toMatchObject({ code: 'yarn/weight-too-light', severity: 'warning' })
    expect(said!.message).toContain('comes out at 1.2 g, 56 g/m²: crochet weighs from 80 g/m² to 4,000 g/m²')
    expect(said!.mend).toBe('Is 11.8 g the weight of 10 motifs? Enter how many were weighed together.')
  })

  it('ten that are taken for one: 118 g are 5,612', () => {
    expect(saidOf({ grams: 118, motifs: 1 })).toMatchObject([{ code: 'yarn/weight-too-heavy' }])
  })

  it('is silent where it can be: 11.8 g of one are 561', () => {
    expect(saidOf({ grams: 11.8, motifs: 1 })).toEqual([])
    expect(saidOf({ grams: 118, motifs: 10 })).toEqual([])
    expect(saidOf({})).toEqual([])
  })
})
