/**
 * The desk of a worker: questions come in while it works, and it looks up from its work between the numbers of a plan
 * and the rest of it. A plan of a project that has changed since is put away, so that the next numbers do not wait
 * for what nobody will see; while changes come without end, a plan is finished now and then all the same. Where a plan
 * takes longer than a held key needs for its next change, that change is waited for before the plan is begun.
 */
import type { Project } from '../../shared-types/project'
import type { Planner } from '../../src-core/plan'
import { stepwise } from './background-work'
import type { Message, Question } from './background-work'
import { rehearsalsOf } from './rehearsal'

/** ms. A map that stood still for so long while a key is held is drawn, even though the next change waits. */
const LONGEST_STILL = 500

/**
 * ms. A key that is held sends its next change sooner than this; changes that come so fast are of such a key. Of plans
 * that take longer, changes are as fast that come within the time of one.
 */
const NEXT_CHANGE = 60

/** ms. A plan that takes longer holds up the numbers of the change behind it. */
const HOLDS_UP = 20

/** ms. Rehearsals take no more of a processor than this in all; what has run so long has been compiled. */
const LONGEST_REHEARSING = 1_000

/** Every so many rehearsals a whole plan is made: numbers that come next wait for it. */
const WHOLE = 3

interface Desk {
  readonly makePlanner: () => Planner
  readonly post: (message: Message) => void
  /** Lets in what was sent meanwhile. */
  readonly lookUp: () => Promise<void>
  /** ms, of any clock. */
  readonly now: () => number
  /** Waits so many ms. */
  readonly pause: (time: number) => Promise<void>
}

interface Asked {
  readonly id: number
  readonly question: Question
  /** Right behind another change, as of a key that is held. */
  readonly isHurried: boolean
}

/** Takes questions, in the order in which they came. */
export function openDesk({
  makePlanner,
  post,
  lookUp,
  now,
  pause,
}: Desk): (id: number, question: Question) => void {
  const answer = stepwise(makePlanner)
  const waiting: Asked[] = []
  let isWorking = false
  /** What is worked out while nobody asks; null until a plan was made. */
  let rehearsals: Project[] | null = null
  let rehearser: Planner | null = null
  let rehearsedFor = 0
  /** When the first of the plans that were put away since the last whole one was asked for. */
  let stillSince: number | null = null
  /** When the last change came, or the last plan was done, behind which the next change may have stood. */
  let changedAt = -Infinity
  /** ms. How long the last plan took behind its numbers. */
  let planTook = 0
  let arrived: () => void = () => undefined

  const isOvertaken = ({ question }: Asked) => waiting.some((later) => later.question.lane === question.lane)
  const putAway = ({ id }: Asked) => post({ id, answer: { value: { kind: 'overtaken' } } })

  const fastest = () => Math.max(NEXT_CHANGE, planTook)

  /** Until the next question comes, or none does so soon. */
  const nextChange = () =>
    Promise.race([
      pause(Math.min(fastest(), LONGEST_STILL)),
      new Promise<void>((resolve) => (arrived = resolve)),
    ])

  async function work(asked: Asked): Promise<void> {
    const steps = answer(asked.question)
    let step = steps.next()
    while (!step.done) {
      post({ id: asked.id, numbers: step.value })
      await lookUp()
      stillSince ??= now()
      const mayStand = now() - stillSince < LONGEST_STILL
      if (asked.isHurried && planTook > HOLDS_UP && mayStand && !isOvertaken(asked)) await nextChange()
      if (isOvertaken(asked) && now() - stillSince < LONGEST_STILL) return putAway(asked)
      const began = now()
      step = steps.next()
      changedAt = now()
      planTook = changedAt - began
    }
    const { question } = asked
    if (question.kind === 'plan') {
      stillSince = null
      if (question.lane === 'document') rehearsals ??= rehearsalsOf(question.project)
    }
    post({ id: asked.id, answer: step.value })
  }

  function rehearse(project: Project): void {
    const began = now()
    try {
      rehearser ??= makePlanner()
      rehearser.numbers(project)
      if (rehearsals && rehearsals.length % WHOLE === 0) rehearser.plan(project)
    } catch {
      // Whatever falls over here is told when it is asked for.
      rehearsals = []
    }
    rehearsedFor += now() - began
    if (rehearsedFor > LONGEST_REHEARSING) rehearsals = []
  }

  return (id, question) => {
    const isChange = question.kind === 'plan' && question.lane === 'document'
    const isHurried = isChange && now() - changedAt < fastest()
    if (isChange) changedAt = now()
    waiting.push({ id, question, isHurried })
    arrived()
    if (isWorking) return
    isWorking = true
    void (async () => {
      for (;;) {
        const asked = waiting.shift()
        if (asked && isOvertaken(asked)) putAway(asked)
        else if (asked) {
          await work(asked)
          await lookUp()
        } else {
          const project = rehearsals?.shift()
          if (!project) break
          rehearse(project)
          await lookUp()
        }
      }
      rehearser = null
      isWorking = false
    })()
  }
}
