/** M42: a yarn is known once every motif in it is: a border alone is not what a blanket takes. Counted by hand. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { isNeedKnown } from '../../../src-core/figures/yarn-words'
import { fitProject, planProject } from '../../../src-core/plan'

const squares = (grams: number | undefined): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  yarns: [
    { id: 'y1', name: 'Oat', ballGrams: 50, ballMetres: 125, price: 4 },
    { id: 'y2', name: 'Rust', ballGrams: 50, ballMetres: 125, price: 4 },
  ],
  motifs: [
    {
      ...{ id: 'm1', kind: 'measured', outline: 'square', sideToSide: 100 },
      slots: [grams === undefined ? { slot: 'all' } : { slot: 'all', grams }],
      weighed: { motifs: 1, resolution: 0 },
    },
  ],
  colourways: [{ id: 'c1', motif: 'm1', yarns: { all: 'y1' } }],
  joining: { rule: 'seam', yarn: 'y2' },
  allowance: { wastePercent: 0 },
  layout: {
    ...{ kind: 'blanket', motif: 'm1', columns: 11, rows: 11 },
    edging: { rounds: ['sc', 'dc'], yarn: 'y1' },
    cells: { fill: { pattern: 'repeat', colourways: ['c1'] } },
  },
})

describe('a yarn of which motifs are not weighed', () => {
  it('is not known, however much its border takes: nothing is told to buy, and no cost', () => {
    const { yarns, findings } = planProject(squares(undefined))
    const [oat, rust] = yarns
    expect(oat!.parts.edging).toBeGreaterThan(10)
    expect(oat).toMatchObject({ lacking: ['m1'], balls: null, toBuy: null, leftover: null, cost: null })
    // As long as one is unknown, so is the sum: what is known stands in its parts.
    expect(oat).toMatchObject({ grams: { low: 0, expected: 0, high: 0 }, metres: null })
    expect(isNeedKnown(oat!)).toBe(false)
    // What other yarns take is known.
    expect(rust!.lacking).toBeUndefined()
    expect(rust!.toBuy).toBeGreaterThan(0)
    expect(findings.map(({ code }) => code)).toContain('yarn/no-weight')
  })

  it('is told without a weight in fits', () => {
    const [fit] = fitProject(squares(undefined), { width: 1000, height: 1000 }).arrangements
    expect(fit!.yarns.find(({ id }) => id === 'y1')!.grams).toBe(0)
  })

  it('is known once they are: 121 of 5 g and the border', () => {
    const [oat] = planProject(squares(5)).yarns
    expect(oat!.lacking).toBeUndefined()
    expect(oat!.grams.expected).toBeCloseTo(121 * 5 + oat!.parts.edging + oat!.parts.tails, 9)
    expect(oat!.toBuy).toBe(Math.ceil(oat!.grams.high / 50 - 1e-9))
  })
})
