import { describe, expect, it } from 'vitest'
import { joinMarkOf, joinMarksIn, joinMarksSentence, ownJoins } from '../../../src-core/figures/join-marks'
import { joinDetailFigure, joinLegend } from '../../../src-core/figures/join-detail'
import { mapGround } from '../../../src-core/figures/map-ground'
import { overviewMap } from '../../../src-core/figures/overview-map'
import { planProject } from '../../../src-core/plan'
import type { Project } from '../../../shared-types/project'
import { record } from './recorder'
import { samplePlan } from './sample'

const { project } = samplePlan({ columns: 2, rows: 2 })
const flowers = (turn: number, reach?: number): Project => ({
  ...project,
  layout: { kind: 'blanket', arrangement: 'offset-rows', motif: 'm1', columns: 6, rows: 5, turn },
  joining: { rule: 'tips', ...(reach === undefined ? {} : { reach }) },
})

describe('the marks of join points', () => {
  it('tell where two meet, where more do, and where the gap is too wide, as the finding counts them', () => {
    expect(joinMarksIn(planProject(flowers(30)))).toEqual(['two'])
    expect(joinMarksIn(planProject(flowers(0)))).toContain('several')
    const wide = planProject(flowers(15, 20))
    const stretched = wide.joins.filter((join) => joinMarkOf(join) === 'stretched')
    expect(stretched.length).toBeGreaterThan(0)
    const finding = wide.findings.find(({ code }) => code === 'joins/stretched')!
    expect(finding.message).toContain(String(stretched.length))
  })

  it('are drawn once each on the printed map, and said in words beside it', () => {
    const plan = planProject(flowers(0))
    const { uses } = record(overviewMap(mapGround(plan, 'ink'), 186, 170).figure)
    for (const mark of joinMarksIn(plan)) {
      const drawn = uses.filter(({ symbol }) => symbol.id === `meeting-point-${mark}`)
      expect(drawn).toHaveLength(plan.joins.filter((join) => joinMarkOf(join) === mark).length)
    }
    expect(joinMarksSentence(plan)).toMatch(
      /^A dot is a join point of two motifs, a ring one of three or more/,
    )
    expect(joinMarksSentence({ ...plan, joins: [] })).toBe('')
  })

  it('stand in the legend of the join detail as they are drawn there', () => {
    const plan = planProject(flowers(0))
    const [focus] = plan.motifs
    const look = { marks: [], hand: 'right', hosts: false, told: false } as const
    const nodes = plan.joins.filter((join) => joinMarkOf(join) === 'several').slice(0, 1)
    const detail = record(
      joinDetailFigure(plan, { focus: focus!, shown: [focus!], nodes }, look, { width: 90, height: 90 }),
    )
    const measure = (text: string, size: number) => text.length * size * 0.17
    const legend = record(
      joinLegend(
        { marks: { several: 'three or more meet' }, way: 'the way' },
        { hand: 'right', outline: [] },
        measure,
        9,
        80,
      ),
    )
    const rings = (drawn: ReturnType<typeof record>) =>
      drawn.paths.filter(({ paint }) => paint.fill === '#ffffff').map(({ paint }) => paint.width)
    expect(rings(detail)).toHaveLength(1)
    expect(rings(legend)).toEqual(rings(detail))
  })

  it('of one motif are those that it is a member of, with whether it was there first', () => {
    const plan = planProject(flowers(30))
    const motif = plan.motifs[8]!
    const own = ownJoins(plan, motif.id)
    const step = plan.order.find((entry) => entry.motif === motif.id)!
    expect(own.filter(({ hosts }) => !hosts)).toHaveLength(step.joins.length)
    expect(own.length).toBeGreaterThan(step.joins.length)
  })

  it('of a half motif are the places of its step, those included where motifs meet already', () => {
    const own = flowers(30)
    const plan = planProject({ ...own, layout: { ...own.layout, halves: true } as Project['layout'] })
    const steps = plan.order.filter(({ kind }) => kind === 'half')
    expect(steps.length).toBeGreaterThan(0)
    for (const step of steps) expect(ownJoins(plan, step.motif)).toHaveLength(step.joins.length)
  })
})

it('the motif of the step has its own shape in the key: a ring there is a join point', () => {
  const measure = (text: string, size: number) => text.length * size * 0.17
  const square = [
    { x: -40, y: -40 },
    { x: 40, y: -40 },
    { x: 40, y: 40 },
    { x: -40, y: 40 },
  ]
  const legend = joinLegend(
    { marks: {}, way: 'the way', focus: 'the square of this page' },
    { hand: 'right', outline: square },
    measure,
    9,
    80,
  )
  const thick = record(legend).paths.filter(({ paint }) => paint.width === 0.8)
  expect(thick).toHaveLength(1)
  const distances = new Set(thick[0]!.points.map(([x, y]) => Math.hypot(x - 3.5, y).toFixed(2)))
  expect(thick[0]!.points.length).toBeLessThanOrEqual(5)
  expect(distances.size).toBeLessThanOrEqual(2)
})
