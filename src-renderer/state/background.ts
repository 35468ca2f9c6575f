/**
 * Work that may take longer than a frame, done beside the window: plans of large projects, arrangements that
 * fit, the best rotation. Questions in a lane overtake each other: only the latest that waits is asked.
 */
import type { FitArrangement, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { BestRotation } from '../../src-core/layout/rotation'
import { createPlanner } from '../../src-core/plan'
import type { Answer, Question } from './background-work'
import { answerer } from './background-work'

export interface Fit {
  readonly arrangement: FitArrangement
  /** For its picture; null where it has too many motifs for a small one. */
  readonly plan: Plan | null
}

export interface Background {
  /** The plan of a project; null where a later question in the same lane overtook this one. */
  plan(lane: 'document' | 'picture', project: Project): Promise<Plan | null>
  /** Arrangements nearest a wished size in mm, best first; null where overtaken. */
  fits(project: Project, wish: { readonly width: number; readonly height: number }): Promise<Fit[] | null>
  /** Null where there is nothing to rotate yet. */
  rotation(project: Project): Promise<BestRotation | null>
  stop(): void
}

interface Waiting {
  readonly question: Question
  readonly resolve: (answer: Answer['value'] | null) => void
}

type Send = (question: Question, heard: (answer: Answer) => void) => void

/** Asks one question of a lane at a time; of those that wait meanwhile only the last is kept. */
function lanes(send: Send): (question: Question) => Promise<Answer['value'] | null> {
  const busy = new Set<string>()
  const waiting = new Map<string, Waiting>()
  const ask = ({ question, resolve }: Waiting): void => {
    busy.add(question.lane)
    send(question, ({ value }) => {
      busy.delete(question.lane)
      resolve(value)
      const next = waiting.get(question.lane)
      waiting.delete(question.lane)
      if (next) ask(next)
    })
  }
  return (question) =>
    new Promise((resolve) => {
      const asked = { question, resolve }
      if (!busy.has(question.lane)) return ask(asked)
      waiting.get(question.lane)?.resolve(null)
      waiting.set(question.lane, asked)
    })
}

function over(send: Send, stop: () => void): Background {
  const ask = lanes(send)
  /** The parts of a plan that did not change are not sent again. */
  const plans = new Map<string, Plan>()
  return {
    async plan(lane, project) {
      const value = await ask({ lane, kind: 'plan', project })
      if (value?.kind !== 'plan') return null
      const plan = { ...plans.get(lane), ...value.change } as Plan
      plans.set(lane, plan)
      return plan
    },
    async fits(project, wish) {
      const value = await ask({ lane: 'fits', kind: 'fits', project, wish })
      return value?.kind === 'fits' ? [...value.fits] : null
    },
    async rotation(project) {
      const value = await ask({ lane: 'rotation', kind: 'rotation', project })
      return value?.kind === 'rotation' ? value.rotation : null
    },
    stop,
  }
}

/** In a worker of its own. */
export function workerBackground(): Background {
  const worker = new Worker(new URL('./background-worker.ts', import.meta.url), { type: 'module' })
  const heard = new Map<number, (answer: Answer) => void>()
  let asked = 0
  worker.addEventListener('message', ({ data }: MessageEvent<{ id: number; answer: Answer }>) => {
    heard.get(data.id)?.(data.answer)
    heard.delete(data.id)
  })
  return over(
    (question, listener) => {
      const id = ++asked
      heard.set(id, listener)
      worker.postMessage({ id, question })
    },
    () => worker.terminate(),
  )
}

/** At once, in the same thread: where there are no workers. */
export function sameThreadBackground(): Background {
  const answer = answerer(createPlanner)
  return over(
    (question, listener) => listener(answer(question)),
    () => undefined,
  )
}
