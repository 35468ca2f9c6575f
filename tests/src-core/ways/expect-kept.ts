/** What every way to a size must keep. */
import { expect } from 'vitest'
import type { Project } from '../../../shared-types/project'
import type { SizeWay, WishedSize } from '../../../shared-types/ways'
import { holds } from '../../../src-core/joins/holding'
import { createPlanner, waysForProject } from '../../../src-core/plan'
import { withEdit } from '../../../src-core/ways/edit'

/** How far it is off at most, in whole mm. */
export const offOf = ({ error }: SizeWay): number =>
  Math.round(Math.max(...[error.width, error.height].map((mm) => Math.abs(mm ?? 0))))

/** Every way, applied and planned, has the size, error, motifs and yarn that it promises; and they are ranked. */
export function expectKept(project: Project, wish: WishedSize): readonly SizeWay[] {
  const planner = createPlanner()
  const before = planner.plan(project)
  const { ways, findings } = waysForProject(project, wish)
  expect(findings).toEqual([])
  for (const way of ways) {
    const plan = planner.plan(withEdit(project, way.edit))
    expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(plan.size.width, way.change).toBeCloseTo(way.size.width, 6)
    expect(plan.size.height, way.change).toBeCloseTo(way.size.height, 6)
    for (const side of ['width', 'height'] as const) {
      expect(way.difference[side]).toBeCloseTo(plan.size[side] - before.size[side], 6)
      if (wish[side] === undefined) expect(way.error[side]).toBeUndefined()
      else expect(way.error[side]).toBeCloseTo(plan.size[side] - wish[side], 6)
    }
    expect(way.motifs).toBe(plan.motifs.length)
    for (const { id, grams, difference } of way.yarns) {
      const [now, then] = [before, plan].map(
        ({ yarns }) => yarns.find((need) => need.id === id)?.grams.expected ?? 0,
      ) as [number, number]
      expect(grams).toBeCloseTo(then, 6)
      expect(difference).toBeCloseTo(then - now, 6)
    }
    if (before.motifs.length > 1 && holds(before)) expect(holds(plan), way.change).toBe(true)
  }
  const ranks = ways.map((way) => {
    const yarn = way.yarns.reduce((sum, { difference }) => sum + Math.abs(difference), 0)
    // While something is made, what needs nothing to be bought goes before what does, unless that is there.
    const buys = before.progress.made > 0 && offOf(way) > 1 && way.buy ? 1 : 0
    return [offOf(way) <= 1 ? 0 : 1, buys, offOf(way), way.kinds.length, yarn] as const
  })
  const sorted = [...ranks].sort((a, b) => a.map((each, i) => each - b[i]!).find((by) => by !== 0) ?? 0)
  expect(ranks).toEqual(sorted)
  return ways
}
