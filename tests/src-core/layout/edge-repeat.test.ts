/** The edge of a large blanket repeats that of a small one: the line that is taken is the repeated one, not the fallback. */
import { afterAll, expect, it, vi } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { perimeter } from '../../../src-core/geometry/points'
import type * as EdgeRepeat from '../../../src-core/layout/edge-repeat'
import { repeatEdge } from '../../../src-core/layout/edge-repeat'
import { planProject } from '../../../src-core/plan'

// Files share modules: this one gets its own, and leaves none behind.
vi.hoisted(() => vi.resetModules())
vi.mock('../../../src-core/layout/edge-repeat', async (original) => {
  const own = await original<typeof EdgeRepeat>()
  return { ...own, repeatEdge: vi.fn(own.repeatEdge) }
})
afterAll(() => {
  vi.doUnmock('../../../src-core/layout/edge-repeat')
  vi.resetModules()
})

it.each([
  ['straight-rows', 'same', 6],
  ['offset-rows', 'same', 6],
  ['offset-rows', 'oneFewer', 6],
  ['offset-rows', 'oneMore', 8],
] as const)('of %s (%s) with %i petals', (arrangement, alternateRows, petals) => {
  for (const [columns, rows] of [
    [6, 8],
    [17, 21],
    [40, 50],
  ] as const) {
    vi.mocked(repeatEdge).mockClear()
    const project: Project = {
      format: 'petalyard-project',
      version: 1,
      gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
      motifs: [{ id: 'm', kind: 'measured', outline: 'petals', petals, overTips: 82, overValleys: 60 }],
      joining: { rule: 'bridge', bridgeChains: 2 },
      layout: {
        kind: 'blanket',
        motif: 'm',
        ...{ arrangement, alternateRows, columns, rows },
        edging: { style: 'follow', rounds: ['sc'] },
      },
    }
    const plan = planProject(project)
    const [told] = vi.mocked(repeatEdge).mock.results
    const line = told?.value as ReturnType<typeof repeatEdge>
    expect(perimeter(line!)).toBeCloseTo(plan.edging!.length, 0)
    expect(plan.edgingLines).toHaveLength(1)
    expect(plan.edgingLines[0]).toHaveLength(line!.length)
  }
})
