/** M42: how many motifs a yarn on hand is enough for follows from what one takes, whatever else is worked in it. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

/** 120 squares of 5 g with 10 % waste, 5.5 g each as they were weighed. */
const squares = (more: 'nothing' | 'joins' | 'border' | 'both', onHandGrams: number): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  yarns: [
    { id: 'y1', name: 'Oat', ballGrams: 50, ballMetres: 125, price: 4, onHandGrams },
    { id: 'y2', name: 'Rust', ballGrams: 50, ballMetres: 125, price: 4 },
  ],
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
  motifs: [
    {
      ...{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 60 },
      slots: [{ slot: 'all', grams: 5 }],
      weighed: { motifs: 1, resolution: 0 },
    },
  ],
  colourways: [{ id: 'a', motif: 'm', yarns: { all: 'y1' } }],
  joining: { rule: 'seam', yarn: more === 'joins' || more === 'both' ? 'y1' : 'y2' },
  allowance: { wastePercent: 10 },
  layout: {
    ...{ kind: 'blanket', motif: 'm', columns: 12, rows: 10 },
    cells: { fill: { pattern: 'repeat', colourways: ['a'] } },
    edging: { rounds: ['sc', 'dc', 'sc'], yarn: more === 'border' || more === 'both' ? 'y1' : 'y2' },
  },
})

const needOf = (more: Parameters<typeof squares>[0]) => planProject(squares(more, 0)).yarns[0]!.grams
const enoughOf = (more: Parameters<typeof squares>[0], missing: number): number => {
  const { findings } = planProject(squares(more, needOf(more).high - missing))
  const told = findings.find(({ code }) => code === 'yarn/stash-short')?.message ?? ''
  return Number(/at least (\d+) of the 120 motifs/.exec(told)?.[1])
}

describe('M42 a yarn that is short', () => {
  // Beyond what may be missing of a border and seams at the high end alone.
  it.each([22.1, 27.4, 27.6, 38.4, 65.9, 66.1, 110])(
    'by %d g is short of the same motifs with joins or a border in it as without',
    (missing) => {
      const least = 120 - Math.ceil(missing / 5.5 - 1e-9)
      for (const more of ['joins', 'border', 'both'] as const) {
        const { expected, high } = needOf(more)
        expect(high - expected).toBeLessThan(22)
        expect([more, enoughOf(more, missing)]).toEqual([more, least])
      }
      expect(enoughOf('nothing', missing)).toBe(least)
    },
  )
})
