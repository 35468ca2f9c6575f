/** What is long to tell of a plan: the words of its steps, made when somebody reads them or by and by before that. */
import { readFileSync, readdirSync } from 'node:fs'
import { afterAll, describe, expect, it, vi } from 'vitest'
import { benchProject } from '../../bench/drawing-page/project'
import type { Project } from '../../shared-types/project'
import type * as Words from '../../src-core/joins/words'
import { seamWords, stepWords } from '../../src-core/joins/words'
import { createPlanner, planProject } from '../../src-core/plan'
import { tellingsOf, telling, toldAs, withFields } from '../../src-core/telling'

// Files share modules: this one gets its own, and leaves none behind.
vi.hoisted(() => vi.resetModules())
vi.mock('../../src-core/joins/words', async (original) => {
  const words = await original<typeof Words>()
  return { ...words, stepWords: vi.fn(words.stepWords), seamWords: vi.fn(words.seamWords) }
})
afterAll(() => {
  vi.doUnmock('../../src-core/joins/words')
  vi.resetModules()
})

const told = () => vi.mocked(stepWords).mock.calls.length + vi.mocked(seamWords).mock.calls.length
const forget = () => [stepWords, seamWords].forEach((words) => vi.mocked(words).mockClear())

/** Tells a plan so many steps at a time, and how often it was asked to go on. */
function byAndBy(project: Project, most: number) {
  const plan = createPlanner().plan(project)
  let turns = 0
  for (const each of tellingsOf(plan)) while (!each.further(most)) turns++
  return { plan, turns }
}

describe('the words of the steps', () => {
  const project = benchProject({ columns: 12, rows: 10 })

  it('are made when somebody reads them, once, and for nothing else that a plan holds', () => {
    forget()
    const planner = createPlanner()
    planner.numbers(project)
    const plan = planner.plan(project)
    JSON.stringify([plan.findings, plan.motifs, plan.joins, plan.counts])
    expect(told()).toBe(0)
    expect(plan.order).toHaveLength(120)
    expect(told()).toBe(120)
    expect(plan.order).toBe(plan.order)
    // The same work is told alike by the next plan, whatever it is called.
    expect(planner.plan({ ...project, title: 'Another' }).order).toBe(plan.order)
    expect(told()).toBe(120)
  })

  it('stay unread in a kit and where fonts are covered, and reach whoever copies or writes the plan', () => {
    forget()
    const kit: Project = { ...project, layout: { ...project.layout!, kit: { count: 3 } } }
    const plan = createPlanner().plan(kit, [[[32, 126]]])
    expect([plan.kit?.count, plan.covered, told()]).toEqual([3, [[[32, 126]]], 0])
    expect((JSON.parse(JSON.stringify(plan)) as typeof plan).order).toEqual(plan.order)
    expect(structuredClone(plan).order).toEqual(plan.order)
    expect({ ...plan }.order).toBe(plan.order)
    expect(told()).toBe(120)
  })

  it('are the same told by and by, of every example and of the largest plans', () => {
    const examples = readdirSync('examples')
      .filter((name) => name.endsWith('.petalyard'))
      .map((name) => JSON.parse(readFileSync(`examples/${name}`, 'utf8')) as Project)
    expect(examples.length).toBeGreaterThan(10)
    const large = (rule: 'bridge' | 'seam', petals: number, rows: number): Project => ({
      ...benchProject({ columns: 100, rows, petals }),
      joining: { rule },
    })
    for (const each of [...examples, large('bridge', 8, 100), large('seam', 6, 25)]) {
      const { plan } = byAndBy(each, 7)
      forget()
      expect(JSON.stringify(plan)).toBe(JSON.stringify(planProject(each)))
    }
  })

  it('are told so many at a time', () => {
    forget()
    const { plan, turns } = byAndBy(project, 50)
    expect([turns, told()]).toEqual([2, 120])
    expect(plan.order).toHaveLength(120)
    expect(told()).toBe(120)
  })
})

describe('a list that is told by and by', () => {
  function* falling(at: number) {
    for (let i = 0; i < 5; i++) {
      if (i === at) throw new Error('fell over')
      yield i
    }
  }

  it('is whole, or falls over each time it is read', () => {
    const begun = vi.fn(() => falling(3))
    const list = telling(begun)
    expect(list.further(2)).toBe(false)
    for (let times = 0; times < 2; times++) expect(() => list.all()).toThrow('fell over')
    expect(begun).toHaveBeenCalledTimes(2)
    const whole = telling(() => falling(9))
    expect([whole.further(5), whole.further(1), whole.further(1)]).toEqual([false, true, true])
    expect(whole.all()).toEqual([0, 1, 2, 3, 4])
    expect(whole.all()).toBe(whole.all())
  })

  it('keeps its place among other fields, and gives it up to one of its name', () => {
    const begun = vi.fn(() => [1, 2].values())
    const list = telling(begun)
    const made = withFields({ a: 1, c: 2 }, toldAs('b', list), { c: 3 })
    expect(Object.keys(made)).toEqual(['a', 'c', 'b'])
    expect(tellingsOf(made)).toEqual([list])
    expect(begun).not.toHaveBeenCalled()
    expect(made).toEqual({ a: 1, c: 3, b: [1, 2] })
    expect(tellingsOf(withFields(made, { b: [9] }))).toEqual([])
  })
})
