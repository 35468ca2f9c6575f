import { describe, expect, it } from 'vitest'
import type { Layout, Project } from '../../shared-types/project'
import { checkProject, createPlanner, planProject } from '../../src-core/plan'

/** A motif in whose second round a stitch is left over. */
const motif = (id: string) => ({
  id,
  kind: 'rounds' as const,
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 },
  foundation: { ring: 'adjustable' },
  rounds: [
    { slot: 'centre', work: 'ch 1, 12 sc in ring, join with sl st in first sc (12 sc)' },
    { slot: 'petals', work: 'ch 1, sc in each of next 11 sts, join with sl st in first sc' },
  ],
})

const project = (layout: Layout): Project => ({
  format: 'petalyard-project',
  version: 1,
  motifs: [motif('one'), motif('two')],
  layout,
})

const LAYOUTS: readonly Layout[] = [
  { kind: 'blanket', arrangement: 'straight-rows', motif: 'one', columns: 2, rows: 2 },
  {
    kind: 'garland',
    cord: { length: 1000 },
    items: [{ motif: 'one' }],
    spacing: { between: 'edges', mm: 30 },
  },
  {
    kind: 'applique',
    panel: { shape: 'rectangle', width: 300, height: 300 },
    items: [{ motif: 'one', x: 150, y: 150 }],
  },
]

describe('findings on motifs that are not placed', () => {
  it.each(LAYOUTS)('stand beside those of a $kind, and each is told once', (layout) => {
    const made = project(layout)
    const plan = planProject(made)
    const others = createPlanner().unplaced(made, plan)
    expect(others.length).toBeGreaterThan(0)
    expect(others.every((entry) => entry.target?.motif === 'two')).toBe(true)
    const all = checkProject(made)
    expect(all).toHaveLength(plan.findings.length + others.length)
    // What is wrong with the one is wrong with the other: each is told once of each.
    for (const { code, message } of others) {
      const told = all.filter((entry) => entry.code === code && entry.message === message)
      expect(told.map((entry) => entry.target?.motif).sort()).toEqual(['one', 'two'])
    }
  })

  it('say nothing twice of a filler', () => {
    const [blanket] = LAYOUTS
    const made = project({ ...blanket!, fillers: { motif: 'two' } } as Layout)
    expect(createPlanner().unplaced(made, planProject(made))).toEqual([])
    const told = checkProject(made).map((entry) => `${entry.where} ${entry.message}`)
    expect(new Set(told).size).toBe(told.length)
  })
})
