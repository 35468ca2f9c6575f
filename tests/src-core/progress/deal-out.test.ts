/** Finished motifs that are joined to nothing, dealt out over their places. */
import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { blanketOf } from '../../../src-core/plans/layouts'
import { dealtOut, looseMade } from '../../../src-core/progress/deal-out'
import { holdWork } from '../../../src-core/progress/hold'
import { markJoined, markMadeBefore } from '../../../src-core/progress/mark'
import type { Project } from '../../../shared-types/project'

const WAYS = ['a', 'b', 'c', 'd']
/** Sixty flowers of which there are 22, 18, 12 and 8 in four colours. */
const MOST = { a: 22, b: 18, c: 12, d: 8 }

const laid = (ways: readonly string[], most?: Record<string, number>): Project => ({
  format: 'petalyard-project',
  version: 1,
  motifs: [{ id: 'm', kind: 'measured', outline: 'square', sideToSide: 80 }],
  colourways: WAYS.map((id) => ({ id, code: id.toUpperCase(), motif: 'm' })),
  joining: { rule: 'seam' },
  layout: {
    kind: 'blanket',
    arrangement: 'straight-rows',
    motif: 'm',
    columns: 10,
    rows: 6,
    cells: { fill: { pattern: 'no-two-alike', colourways: [...ways], ...(most && { most }) } },
  },
})

const changed = (project: Project, edit: (project: Project) => Project): Project =>
  holdWork(project, edit(project))

/** All laid out in one colour and marked, then the others chosen with as many as there are. */
function sixty(): Project {
  const one = laid(['a'])
  const made = changed(one, (project) => markMadeBefore(project, planProject(project).motifs))
  return changed(made, (project) => ({ ...project, layout: laid(WAYS, MOST).layout! }))
}

describe('made motifs that are joined to nothing', () => {
  it('keep their colours until they are dealt out, then have the counts that there are, none beside its like', () => {
    const before = sixty()
    expect(planProject(before).counts.byColourway).toEqual({ a: 60 })
    const after = changed(before, dealtOut)
    const plan = planProject(after)
    expect(plan.counts.byColourway).toEqual(MOST)
    expect(
      plan.findings.filter(({ code }) => code.startsWith('colours/') && code.includes('limits')),
    ).toEqual([])
    expect(after.made).toEqual(before.made)
    const colour = new Map(plan.motifs.map(({ id, colourway }) => [id, colourway]))
    for (const [id, colourway] of colour) {
      const [row = 0, place = 0] = id.split(',').map(Number)
      expect(colour.get(`${row},${place + 1}`)).not.toBe(colourway)
      expect(colour.get(`${row + 1},${place}`)).not.toBe(colourway)
    }
    // They are held as any made motif from now on.
    const other = changed(after, (project) => ({ ...project, layout: laid(['a', 'b']).layout! }))
    expect(planProject(other).counts.byColourway).toEqual(MOST)
  })

  it('leave those that are joined as they are', () => {
    const row = Array.from({ length: 10 }, (_, i) => `1,${i + 1}`)
    const before = changed(sixty(), (project) =>
      markJoined(
        project,
        planProject(project).motifs.filter(({ id }) => row.includes(id)),
        '2026-11-01',
      ),
    )
    expect(looseMade(before)).toHaveLength(50)
    const after = changed(before, dealtOut)
    const plan = planProject(after)
    for (const { id, colourway } of plan.motifs) if (row.includes(id)) expect(colourway).toBe('a')
    expect(plan.counts.byColourway).toEqual(MOST)
    expect([after.made, after.joined]).toEqual([before.made, before.joined])
  })

  it('are none where nothing is made, and then nothing changes', () => {
    const project = laid(WAYS, MOST)
    expect(looseMade(project)).toEqual([])
    expect(dealtOut(project)).toBe(project)
    expect(blanketOf(dealtOut(project))).toBe(blanketOf(project))
  })
})
