import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { contains, perimeter } from '../../../src-core/geometry/points'
import { borderWalk, edgingBand } from '../../../src-renderer/drawing/edging-band'
import type { BlanketLayout } from '../../../shared-types/project'
import { project } from './scenes'

const layouts: Record<string, Partial<BlanketLayout>> = {
  'straight rows': {},
  'offset rows': { arrangement: 'offset-rows', turn: 22.5 },
  'one fewer in every other row': { arrangement: 'offset-rows', alternateRows: 'oneFewer' },
  rings: { arrangement: 'rings', rings: 3 },
}
const unstretched = { width: 1, height: 1 }

describe('the line of an edging', () => {
  it('walks along the border once, each motif beside the next', () => {
    const { motifs } = planProject(project())
    const walk = borderWalk(motifs)
    expect(new Set(walk).size).toBe(2 * (10 + 8) - 4)
    walk.forEach((motif, i) => {
      const next = walk[(i + 1) % walk.length]!
      expect(Math.hypot(motif.x - next.x, motif.y - next.y)).toBeLessThan(90)
    })
  })

  for (const [name, layout] of Object.entries(layouts))
    for (const style of ['follow', 'bridge', 'level'])
      it(`${style}: goes round every motif of ${name}`, () => {
        const own = project({ ...layout, edging: { style: style as 'follow', rounds: ['sc'] } })
        const plan = planProject(own)
        const line = edgingBand(plan.motifs, plan.motif!, style, unstretched)
        for (const motif of plan.motifs) expect(contains(line, motif)).toBe(true)
      })

  it('has about the length that the engine counts the first round of a bridging edging by', () => {
    const own = project({ edging: { style: 'level', rounds: ['sc'] } })
    const plan = planProject(own)
    const line = edgingBand(plan.motifs, plan.motif!, 'level', unstretched)
    expect(perimeter(line) / plan.edging!.rounds[0]!.length).toBeGreaterThan(0.9)
    expect(perimeter(line) / plan.edging!.rounds[0]!.length).toBeLessThan(1.1)
  })

  it('is there for one motif, one row and one column too', () => {
    for (const counts of [
      { columns: 1, rows: 1 },
      { columns: 4, rows: 1 },
      { columns: 1, rows: 4 },
    ]) {
      const plan = planProject(project({ ...counts, edging: { style: 'bridge', rounds: ['sc'] } }))
      const line = edgingBand(plan.motifs, plan.motif!, 'bridge', unstretched)
      for (const motif of plan.motifs) expect(contains(line, motif)).toBe(true)
    }
  })
})
