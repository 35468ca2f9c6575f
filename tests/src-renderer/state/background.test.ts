/** Whatever falls over or runs over in planning is told, and the next question is answered. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { createPlanner, planProject } from '../../../src-core/plan'
import { NoAnswerError, workerBackground } from '../../../src-renderer/state/background'
import type { PlanningWorker } from '../../../src-renderer/state/background'
import { answerer } from '../../../src-renderer/state/background-work'
import type { Message, Question } from '../../../src-renderer/state/background-work'
import { SMALL } from '../projects'

type Behaviour = 'answers' | 'hangs' | 'dies' | 'throws'

/** Workers that do as their project's title says. */
function workers() {
  const started: { ended: boolean; hangs: boolean }[] = []
  const start = (): PlanningWorker => {
    const listeners = new Map<string, (event: unknown) => void>()
    const own = { ended: false, hangs: false }
    started.push(own)
    const planner = createPlanner()
    const answer = answerer(() => ({
      ...planner,
      plan: (project) => {
        if (project.title === 'throws') throw new Error('a bug in the engine')
        return planner.plan(project)
      },
    }))
    return {
      addEventListener: (name: string, listener: unknown) =>
        void listeners.set(name, listener as (event: unknown) => void),
      terminate: () => void (own.ended = true),
      postMessage: ({ id, question }: { id: number; question: Question }) => {
        const behaviour = question.project.title as Behaviour
        // What hangs keeps the worker from everything behind it.
        own.hangs ||= behaviour === 'hangs'
        queueMicrotask(() => {
          if (own.ended || own.hangs) return
          if (behaviour === 'dies')
            listeners.get('error')?.({ message: 'out of memory', preventDefault: () => undefined })
          else {
            const tell = (data: Message) => listeners.get('message')?.({ data })
            tell({ id, answer: answer(question, (numbers) => tell({ id, numbers })) })
          }
        })
      },
    } as unknown as PlanningWorker
  }
  return { start, started }
}

const titled = (title: Behaviour): Project => ({ ...SMALL, title })

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

describe('planning beside the window', () => {
  it.each(['throws', 'dies', 'hangs'] as const)(
    'tells a plan that %s, and makes the next one',
    async (how) => {
      const { start, started } = workers()
      const background = workerBackground(start, 5_000)
      await background.plan('document', titled('answers'))
      const failed = expect(background.plan('document', titled(how))).rejects.toBeInstanceOf(NoAnswerError)
      await vi.advanceTimersByTimeAsync(6_000)
      await failed
      const plan = await background.plan('document', titled('answers'))
      expect(plan).toEqual(planProject(titled('answers')))
      // What falls over leaves its worker; what dies or hangs is ended, and a new one goes on.
      expect(started.map((each) => each.ended)).toEqual(how === 'throws' ? [false] : [true, false])
    },
  )

  it('says at once that a worker died, and takes no part of its plans into those of the next', async () => {
    const background = workerBackground(workers().start)
    await background.plan('document', { ...titled('answers'), layout: { kind: 'garland' } })
    await expect(background.plan('document', titled('dies'))).rejects.toThrow('out of memory')
    expect(await background.plan('document', titled('answers'))).toEqual(planProject(titled('answers')))
  })

  it('answers what waited behind a plan that hangs, and never ends a worker that works', async () => {
    const { start, started } = workers()
    const background = workerBackground(start, 5_000)
    const hanging = background.plan('document', titled('hangs'))
    const other = background.plan('picture', titled('answers'))
    const latest = background.plan('document', titled('answers'))
    hanging.catch(() => undefined)
    await vi.advanceTimersByTimeAsync(6_000)
    await expect(hanging).rejects.toThrow(/more than 5 seconds/)
    expect(await latest).not.toBeNull()
    expect(await other).not.toBeNull()
    await vi.advanceTimersByTimeAsync(60_000)
    // One for the document, one for everything else.
    expect(started.filter((each) => !each.ended)).toHaveLength(2)
  })

  it('tells what a plan comes to before the plan is there', async () => {
    const background = workerBackground(workers().start)
    const heard: string[] = []
    const project = titled('answers')
    await background
      .plan('document', project, (numbers) => heard.push(`${numbers.counts.motifs} motifs`))
      .then(() => heard.push('plan'))
    expect(heard).toEqual([`${planProject(project).counts.motifs} motifs`, 'plan'])
  })

  it('plans the document while a search for arrangements goes on', async () => {
    const { start } = workers()
    const background = workerBackground(start, 5_000)
    const search = background.fits(titled('hangs'), { width: 900, height: 900 })
    expect(await background.plan('document', titled('answers'))).not.toBeNull()
    await vi.advanceTimersByTimeAsync(6_000)
    expect(await search).toBeNull()
  })

  it('forgets parts of a plan that are gone', async () => {
    const background = workerBackground(workers().start)
    const garland: Project = { ...titled('answers'), layout: { kind: 'garland' } }
    await background.plan('document', garland)
    expect(await background.plan('document', titled('answers'))).toEqual(planProject(titled('answers')))
  })
})
