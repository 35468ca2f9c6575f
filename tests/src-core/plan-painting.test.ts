import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { createPlanner, planProject } from '../../src-core/plan'

const layout: BlanketLayout = {
  kind: 'blanket',
  arrangement: 'offset-rows',
  motif: 'm',
  columns: 6,
  rows: 5,
  cells: { fill: { pattern: 'repeat', colourways: ['a', 'b'] } },
}
const project: Project = {
  format: 'petalyard-project',
  version: 1,
  motifs: [
    {
      id: 'm',
      kind: 'measured',
      outline: 'petals',
      petals: 6,
      overTips: 80,
      overValleys: 52,
      slots: [{ slot: 'all' }],
    },
  ],
  colourways: [
    { id: 'a', code: 'A', motif: 'm', yarns: {} },
    { id: 'b', code: 'B', motif: 'm', yarns: {} },
  ],
  layout,
}
const painted = (before: Project): Project => ({
  ...before,
  layout: { ...layout, cells: { ...layout.cells, painted: { '2,3': 'b', '3,3': 'b' } } },
})

describe('a planner that lives as long as a window', () => {
  it('keeps size, meeting points and order as the same objects while motifs are painted', () => {
    const planner = createPlanner()
    const before = planner.plan(project)
    const after = planner.plan(painted(project))
    expect(after.motifs).not.toEqual(before.motifs)
    expect(after.joins).toBe(before.joins)
    expect(after.order).toBe(before.order)
    expect(after.size).toBe(before.size)
    expect(after.holes).toBe(before.holes)
  })

  it('answers after a change what a new planner answers', () => {
    const planner = createPlanner()
    planner.plan(project)
    expect(planner.plan(painted(project))).toEqual(planProject(painted(project)))
    const turned = { ...project, layout: { ...layout, turn: 30, columns: 7 } }
    expect(planner.plan(turned)).toEqual(planProject(turned))
  })

  it('lets an order by colourway follow the paint', () => {
    const planner = createPlanner()
    const before = planner.plan({ ...project, order: 'colourway' })
    const after = planner.plan(painted({ ...project, order: 'colourway' }))
    expect(after.order).not.toBe(before.order)
    expect(after).toEqual(planProject(painted({ ...project, order: 'colourway' })))
  })
})
