/// <reference types="vite/client" />
/**
 * Work that may take longer than a frame, done beside the window: plans of large projects, arrangements that
 * fit, the best rotation. Questions in a lane overtake each other: only the latest that waits is asked.
 */
import type { FitArrangement, Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { SizeWay, WishedSize } from '../../shared-types/ways'
import type { RoundSlip } from '../../src-core/motif/rounds/read-motif'
import type { BestRotation } from '../../src-core/layout/rotation'
import type { Proposals } from '../../src-core/layout/proposals'
import type { Remedy } from '../../src-core/layout/remedy'
import type { Toward } from './resize'
import { createPlanner } from '../../src-core/plan'
import type { RoundsChart } from '../drawing/rounds-chart'
import type { Answer, FitWish, HearNumbers, Held, Message, Question } from './background-work'
import { answerer } from './background-work'
import address from './background-worker.ts?worker&url'
import { settled } from '../../src-core/settled'
import { unpacked } from './plan-parcel'
import { keepScript, startFrom } from './worker-scripts'

export interface Fit {
  readonly arrangement: FitArrangement
  /** For its picture; null where it has too many motifs for a small one. */
  readonly plan: Plan | null
}

/** A way to a size, and what it looks like. */
export interface OfferedWay {
  readonly way: SizeWay
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
  /** Whether it is another thread: what hangs in it leaves the window as it is, and is ended. */
  readonly isBeside: boolean
  /**
   * The plan of a project; null where a later question in the same lane overtook this one. Rejects with a
   * `NoAnswerError` where there is none. What the plan of a document comes to is heard before all of it is there.
   */
  plan(lane: 'document' | 'picture', project: Project, hearNumbers?: HearNumbers): Promise<Plan | null>
  /** Arrangements for a wish, best first; null where overtaken, or where they cannot be found. */
  fits(project: Project, wish: FitWish): Promise<Fit[] | null>
  /** Ways to a size in mm, the nearest first; null where overtaken, or where they cannot be found. */
  ways(project: Project, wish: WishedSize): Promise<OfferedWay[] | null>
  /** Null where there is nothing to rotate yet, or where it cannot be found. */
  rotation(project: Project): Promise<BestRotation | null>
  /** Arrangements to start from, nearest a size in mm; null where overtaken. */
  proposals(
    project: Project,
    wish: { readonly width: number; readonly height: number },
  ): Promise<Proposals | null>
  /** What makes the project's blanket hold; undefined where overtaken, null where there is nothing to mend. */
  remedy(project: Project): Promise<Remedy | null | undefined>
  /** What brings a blanket nearer to its target size; undefined where overtaken, null where nothing does. */
  toward(project: Project): Promise<Toward | null | undefined>
  /**
   * The chart of a motif in written rounds, by its id; undefined where overtaken, null where there is none. Rejects
   * with a `NoAnswerError` where it cannot be drawn.
   */
  chart(project: Project, motif: string): Promise<RoundsChart | null | undefined>
  /** Numbers of a motif's rounds that would work out if they were others; undefined where overtaken. */
  slips(project: Project, motif: string): Promise<readonly RoundSlip[] | undefined>
  /** What an edit must add to keep colours where they are; null where that cannot be found out. */
  hold(before: Project, after: Project): Promise<Held | null>
  stop(): void
}

interface Waiting {
  readonly question: Question
  readonly hearNumbers: HearNumbers
  readonly resolve: (answer: Answer['value'] | null) => void
}

type Send = (question: Question, heard: (answer: Answer) => void, hearNumbers: HearNumbers) => void

/**
 * Asks one question of a lane at a time; of those that wait meanwhile only the last is kept. The document's are all
 * asked at once: the worker itself sees what overtakes what, between the numbers and the rest of a plan.
 */
function lanes(
  send: Send,
): (question: Question, hearNumbers?: HearNumbers) => Promise<Answer['value'] | null> {
  const busy = new Set<string>()
  const waiting = new Map<string, Waiting>()
  const ask = ({ question, hearNumbers, resolve }: Waiting): void => {
    busy.add(question.lane)
    const heard = ({ value }: Answer): void => {
      busy.delete(question.lane)
      resolve(value)
      const next = waiting.get(question.lane)
      waiting.delete(question.lane)
      if (next) ask(next)
    }
    send(question, heard, hearNumbers)
  }
  return (question, hearNumbers = () => undefined) =>
    new Promise((resolve) => {
      const asked = { question, hearNumbers, resolve }
      if (question.lane === 'document') return send(question, ({ value }) => resolve(value), hearNumbers)
      if (!busy.has(question.lane)) return ask(asked)
      waiting.get(question.lane)?.resolve(null)
      waiting.set(question.lane, asked)
    })
}

function over(isBeside: boolean, send: Send, stop: () => void): Background {
  const ask = lanes(send)
  /** The parts of a plan that did not change are not sent again. */
  const plans = new Map<string, Plan>()
  return {
    isBeside,
    async plan(lane, project, hearNumbers) {
      const value = await ask({ lane, kind: 'plan', project }, hearNumbers)
      if (value?.kind === 'failed') throw new NoAnswerError(value.reason)
      if (value?.kind !== 'plan') return null
      // A worker that was started anew knows nothing of the plans before.
      const before = value.from === 'last' ? plans.get(lane) : undefined
      const plan = unpacked(value.change, settled(project), before)
      plans.set(lane, plan)
      return plan
    },
    async fits(project, wish) {
      const value = await ask({ lane: 'fits', kind: 'fits', project, wish })
      return value?.kind === 'fits' ? [...value.fits] : null
    },
    async ways(project, wish) {
      const value = await ask({ lane: 'ways', kind: 'ways', project, wish })
      return value?.kind === 'ways' ? [...value.ways] : null
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
    async toward(project) {
      const value = await ask({ lane: 'toward', kind: 'toward', project })
      return value?.kind === 'toward' ? value.toward : undefined
    },
    async chart(project, motif) {
      const value = await ask({ lane: 'chart', kind: 'chart', project, motif })
      if (value?.kind === 'failed') throw new NoAnswerError(value.reason)
      return value?.kind === 'chart' ? value.chart : undefined
    },
    async slips(project, motif) {
      const value = await ask({ lane: 'slips', kind: 'slips', project, motif })
      return value?.kind === 'slips' ? value.slips : undefined
    },
    async hold(before, after) {
      const value = await ask({ lane: 'hold', kind: 'hold', project: before, after })
      return value?.kind === 'hold' ? value : null
    },
    stop,
  }
}

/** ms. Far longer than the largest project takes on an old laptop; what takes longer takes for ever. */
const MOST_TIME = 20_000

/** What a worker is to its owner: so much of it as is used here. */
export type PlanningWorker = Pick<Worker, 'postMessage' | 'terminate' | 'addEventListener'>

const script = keepScript(address)
const startWorker = (): PlanningWorker => startFrom(script)

/**
 * In workers: one plans the document, so that no search for arrangements keeps a key press waiting, one does the
 * rest. A worker that dies, or works longer than `mostTime` on one question, is ended: that question finds no
 * answer, and a new worker goes on with those behind it.
 */
export function workerBackground(start = startWorker, mostTime = MOST_TIME): Background {
  const document = workerSend(start, mostTime)
  const others = workerSend(start, mostTime)
  return over(
    true,
    (question, heard, hearNumbers) =>
      (question.lane === 'document' ? document : others).send(question, heard, hearNumbers),
    () => {
      document.stop()
      others.stop()
    },
  )
}

interface Asked {
  readonly question: Question
  readonly heard: (answer: Answer) => void
  readonly hearNumbers: HearNumbers
}

function workerSend(start: () => PlanningWorker, mostTime: number): { send: Send; stop: () => void } {
  let worker: PlanningWorker | null = null
  /** In the order asked, which is that of the work. */
  const open = new Map<number, Asked>()
  let count = 0
  let limit: ReturnType<typeof setTimeout> | undefined
  const end = (reason: string): void => {
    worker?.terminate()
    worker = null
    const [[id, asked] = [0, null]] = open
    open.delete(id)
    for (const [next, { question }] of open) running().postMessage({ id: next, question })
    watch()
    asked?.heard({ value: { kind: 'failed', reason } })
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
      const message = (event as MessageEvent<Message>).data
      const asked = open.get(message.id)
      if ('numbers' in message) return asked?.hearNumbers(message.numbers)
      open.delete(message.id)
      watch()
      asked?.heard(message.answer)
    })
    started.addEventListener('error', (event) => {
      event.preventDefault()
      if (worker === started) end((event as ErrorEvent).message || 'it ended unexpectedly')
    })
    worker = started
    return started
  }
  return {
    send(question, heard, hearNumbers) {
      const id = ++count
      open.set(id, { question, heard, hearNumbers })
      running().postMessage({ id, question })
      if (open.size === 1) watch()
    },
    stop() {
      clearTimeout(limit)
      worker?.terminate()
    },
  }
}

/** At once, in the same thread: where there are no workers. */
export function sameThreadBackground(): Background {
  const answer = answerer(createPlanner)
  return over(
    false,
    (question, listener, hearNumbers) => listener(answer(question, hearNumbers)),
    () => undefined,
  )
}
