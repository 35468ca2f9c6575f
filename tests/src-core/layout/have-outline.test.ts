/** M26: what is cut out, from motifs that are made and from the yarn on hand. Sizes are those of a maker's trial. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { crookedSteps } from '../../../src-core/layout/nearness'
import { layoutOfFit } from '../../../src-core/layout/taken'
import { fitFromHave, planProject, proposeProject } from '../../../src-core/plan'

const TRIANGLE = { kind: 'triangle', size: 1500, height: 800, points: 'down' } as const

/** A shawl of hexagons of 5 g, without waste. */
const shawl: Project = {
  ...{ format: 'petalyard-project', version: 1 },
  yarns: [{ id: 'y', name: 'Tide', ballGrams: 50, ballMetres: 125, onHandGrams: 450 }],
  motifs: [
    {
      ...{ id: 'h', kind: 'measured', outline: 'hexagon', sideToSide: 62 },
      ...{ slots: [{ slot: 'all', grams: 5 }], weighed: { motifs: 1, resolution: 0 } },
    },
  ],
  colourways: [{ id: 'c', motif: 'h', yarns: { all: 'y' } }],
  joining: { rule: 'edges' },
  allowance: { wastePercent: 0 },
  layout: {
    ...{ kind: 'blanket', motif: 'h', arrangement: 'offset-rows', alternateRows: 'oneFewer' },
    ...{ columns: 24, rows: 14, outlineShape: TRIANGLE, target: { width: 1500, height: 800 } },
    cells: { fill: { pattern: 'repeat', colourways: ['c'] } },
  },
}

describe('a shawl from what there is', () => {
  it.each([90, 181, 300])('of %i motifs made uses nearly all of them, and tells what is left', (made) => {
    const { arrangements } = fitFromHave(shawl, { motifs: made })
    const [best] = arrangements
    expect(best!.left).toBeLessThanOrEqual(0.06 * made)
    expect(best!.arrangement).toBe('offset-rows')
    for (const fit of arrangements) {
      expect(fit.motifs + fit.left!).toBe(made)
      expect(fit.left).toBeGreaterThanOrEqual(0)
      const layout = { ...shawl.layout, ...layoutOfFit(shawl, fit) } as BlanketLayout
      const plan = planProject({ ...shawl, layout })
      expect(plan.counts.motifs).toBe(fit.motifs)
      expect(plan.size.width).toBeCloseTo(fit.size.width, 6)
      // Its proportions stay: 1500 to 800, to a motif.
      expect(Math.abs(fit.size.height - (fit.size.width * 800) / 1500)).toBeLessThan(100)
    }
  })

  it('has edges that run evenly where there is such a one for nearly all', () => {
    const [best] = fitFromHave(shawl, { motifs: 90 }).arrangements
    expect(crookedSteps(best!.lengths!, TRIANGLE)).toBe(0)
  })

  it('of the yarn on hand is as large as it lasts: 450 g are 90 of 5 g', () => {
    const { arrangements, findings } = fitFromHave(shawl, { stash: true })
    expect(findings).toEqual([])
    for (const fit of arrangements) {
      expect(fit.motifs).toBeLessThanOrEqual(90)
      expect(fit.motifs).toBeGreaterThanOrEqual(80)
    }
  })

  it('begins in the rows in which its hexagons close', () => {
    const [first] = proposeProject(shawl, { width: 1500, height: 800 }).proposals
    expect(first!.fit.arrangement).toBe('offset-rows')
    expect(first!.opening).toBe(0)
  })
})

it.each([
  [[9, 7, 5, 3, 1], 0],
  [[17, 14, 13, 12, 9, 8, 7, 4, 3, 2, 1], 0],
  [[24, 21, 20, 17, 16, 13, 12, 9], 0],
  [[24, 21, 20, 19, 16, 15, 14, 13, 10, 9, 8, 5], 1],
  [[14, 14, 14, 12, 10, 8, 8, 6, 4], 1],
] as const)('rows of %j step %s from an even edge', (lengths, crooked) => {
  expect(crookedSteps(lengths, TRIANGLE)).toBe(crooked)
})
