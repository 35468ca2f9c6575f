/** M33: from the last row up, as a shawl is begun at its point. Counted by hand. */
import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { cellsProject } from '../cells/projects'

describe('M33 from the last row up', () => {
  it('begins at the left of the last row and goes there and back', () => {
    const plan = planProject(cellsProject(['square'], { columns: 3, rows: 3 }, { order: 'upward' }))
    const byNumber = [...plan.motifs].sort((a, b) => Number(a.label) - Number(b.label)).map(({ id }) => id)
    expect(byNumber).toEqual(['3,1', '3,2', '3,3', '2,3', '2,2', '2,1', '1,1', '1,2', '1,3'])
    // The first has nothing to be joined to; the one above it is joined to it.
    const [first, , , , , sixth] = plan.order
    expect(first!.joins).toEqual([])
    expect(sixth!.joins.flatMap((join) => join.with.map(({ motif }) => motif))).toContain('3,1')
    expect(plan.joins).toHaveLength(12)
  })

  it('begins a triangle that points down at its point', () => {
    const shawl = cellsProject(
      ['six'],
      {
        ...{ arrangement: 'offset-rows', columns: 9, rows: 9, alternateRows: 'oneFewer' },
        outlineShape: { kind: 'triangle', size: 720, height: 600, points: 'down' },
      },
      { order: 'upward' },
    )
    const plan = planProject(shawl)
    const last = Math.max(...plan.motifs.map(({ row }) => row))
    expect(plan.motifs.find(({ label }) => label === '1')!.row).toBe(last)
    expect(plan.motifs.find(({ label }) => label === String(plan.motifs.length))!.row).toBe(1)
    // Made up to any number, what there is hangs together: each after the first in its row or above is joined.
    const loose = plan.order.slice(1).filter(({ joins }) => joins.length === 0)
    expect(loose).toEqual([])
  })
})
