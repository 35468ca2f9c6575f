/**
 * Work that may take longer than a frame, done beside the window: plans of large projects, arrangements that
 * fit, the best rotation. Questions in a lane overtake each other: only the latest that waits is asked.
 */
import type { FitArrangement, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { BestRotation } from '../../src-core/layout/rotation'
import type { Proposals } from '../../src-core/layout/proposals'
import type { Remedy } from '../../src-core/layout/remedy'
import { createPlanner } from '../../src-core/plan'
import type { Answer, Question } from './background-work'
import { answerer } from './background-work'

export interface Fit {
  readonly arrangement: FitArrangement
  /** For its picture; null where it has too many motifs for a small one. */
  readonly plan: Plan | null
}

/** A question that found no answer: the engine fell over it, or it ran over its time. */
export class NoAnswerError extends Error {
  constructor(readonly reason: string) {
    super(reason)
  }
}

export interface Background {
  /**
   * The plan of a project; null where a later question in the same lane overtook this one. Rejects with a
   * `NoAnswerError` where there is none.
   */
  plan(lane: 'document' | 'picture', project: Project): Promise<Plan | null>
  /** Arrangements nearest a wished size in mm, best first; null where overtaken, or where they cannot be found. */
  fits(project: Project, wish: { readonly width: number; readonly height: number }): Promise<Fit[] | null>
  /** Null where there is nothing to rotate yet, or where it cannot be found. */
  rotation(project: Project): Promise<BestRotation | null>
  /** Arrangements to start from, nearest a size in mm; null where overtaken. */
  proposals(
    project: Project,
    wish: { readonly width: number; readonly height: number },
  ): Promise<Proposals | null>
  /** What makes the project's blanket hold; undefined where overtaken, null where there is nothing to mend. */
  remedy(project: Project): Promise<Remedy | null | undefined>
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
      if (value?.kind === 'failed') throw new NoAnswerError(value.reason)
      if (value?.kind !== 'plan') return null
      // A worker that was started anew knows nothing of the plans before.
      const before = value.from === 'last' ? plans.get(lane) : undefined
      const plan = { ...before, ...value.change } as Plan
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
    async proposals(project, wish) {
      const value = await ask({ lane: 'picture', kind: 'proposals', project, wish })
      return value?.kind === 'proposals' ? value.proposals : null
    },
    async remedy(project) {
      const value = await ask({ lane: 'remedy', kind: 'remedy', project })
      return value?.kind === 'remedy' ? value.remedy : undefined
    },
    stop,
  }
}

/** ms. Far longer than the largest project takes on an old laptop; what takes longer takes for ever. */
const MOST_TIME = 20_000

/** What a worker is to its owner: so much of it as is used here. */
export type PlanningWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>

const startWorker = (): PlanningWorker =>
  new Worker(new URL('./background-worker.ts', import.meta.url), { type: 'module' })

/**
 * In a worker of its own. A worker that dies, or works longer than `mostTime` on one question, is ended: that
 * question finds no answer, and a new worker goes on with those behind it.
 */
export function workerBackground(start = startWorker, mostTime = MOST_TIME): Background {
  let worker: PlanningWorker | null = null
  /** In the order asked, which is that of the work. */
  const open = new Map<number, { readonly question: Question; readonly heard: (answer: Answer) => void }>()
  let asked = 0
  let limit: ReturnType<typeof setTimeout> | undefined
  const end = (reason: string): void => {
    worker?.terminate()
    worker = null
    const [[id, { heard }] = [0, { heard: () => undefined }]] = open
    open.delete(id)
    for (const [next, { question }] of open) running().postMessage({ id: next, question })
    watch()
    heard({ value: { kind: 'failed', reason } })
  }
  /** The clock runs for the question that is worked on: from when it was asked, or the one before was answered. */
  const watch = (): void => {
    clearTimeout(limit)
    if (open.size > 0)
      limit = setTimeout(() => end(`it takes more than ${mostTime / 1000} seconds`), mostTime)
  }
  const running = (): PlanningWorker => {
    if (worker) return worker
    const started = start()
    started.addEventListener('message', (event) => {
      const { id, answer } = (event as MessageEvent<{ id: number; answer: Answer }>).data
      const asked = open.get(id)
      open.delete(id)
      watch()
      asked?.heard(answer)
    })
    started.addEventListener('error', (event) => {
      event.preventDefault()
      if (worker === started) end((event as ErrorEvent).message || 'it ended unexpectedly')
    })
    worker = started
    return started
  }
  return over(
    (question, heard) => {
      const id = ++asked
      open.set(id, { question, heard })
      running().postMessage({ id, question })
      if (open.size === 1) watch()
    },
    () => {
      clearTimeout(limit)
      worker?.terminate()
    },
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
