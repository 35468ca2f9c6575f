/**
 * The desk of a worker: questions come in while it works, and it looks up from its work between the numbers of a plan
 * and the rest of it, and every few ms of that rest. A plan of a project that has changed since is put away, so that the
 * next numbers do not wait for what nobody will see; while changes come without end, a plan is finished now and then all
 * the same, and the numbers of what waits are sent in between. Where a plan takes longer than a held key needs for its
 * next change, that change is waited for before the plan is begun.
 */
import type { PlanNumbers } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { Planner } from '../../src-core/plan'
import { tellingsOf } from '../../src-core/telling'
import { stepwise } from './background-work'
import type { Answer, Message, Question, Steps } from './background-work'
import { rehearsalsOf } from './rehearsal'

/** ms. A map that stood still for so long while a key is held is drawn, even though the next change waits. */
const LONGEST_STILL = 500

/**
 * ms. A key that is held sends its next change sooner than this; changes that come so fast are of such a key. Of plans
 * that take longer, changes are as fast that come within the time of one: the window draws each of them anew.
 */
const NEXT_CHANGE = 60

/** ms. A plan that takes longer holds up the numbers of the change behind it. */
const HOLDS_UP = 20

/** ms. What is in hand is worked on for so long before the desk looks up. */
const STRETCH = 25

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
  /** How far it has come; null where it was not begun. */
  begun: Begun | null
}

interface Begun {
  readonly steps: Steps
  step: IteratorResult<PlanNumbers | null, Answer>
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
  /** When the last change came, or a part of a plan was done, behind which the next change may have stood. */
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

  /** Begins a question, as far as its numbers. */
  function begin(asked: Asked): Begun {
    const steps = answer(asked.question)
    const step = steps.next()
    if (!step.done && step.value) post({ id: asked.id, numbers: step.value })
    return (asked.begun = { steps, step })
  }

  /**
   * Sends the numbers of the last change that waits, before a plan is gone on with. Where the engine fell over that
   * change it is answered altogether: then nobody needs the plan any more.
   */
  function mayGoOn({ question }: Asked): boolean {
    const last = waiting.findLast((later) => later.question.lane === question.lane)!
    return !(last.begun ?? begin(last)).step.done
  }

  async function work(asked: Asked): Promise<void> {
    const { question } = asked
    const begun = asked.begun ?? begin(asked)
    let took = 0
    let lookedUp = -Infinity
    while (!begun.step.done) {
      const hasNumbers = begun.step.value !== null
      if (hasNumbers || now() - lookedUp >= STRETCH) {
        await lookUp()
        stillSince ??= now()
        const since = stillSince
        const mayStand = () => now() - since < LONGEST_STILL
        const isWaited = hasNumbers && asked.isHurried && planTook > HOLDS_UP
        if (isWaited && mayStand() && !isOvertaken(asked)) await nextChange()
        // Of what has only its numbers the plan is begun first: they were reckoned for it.
        if (isOvertaken(asked) && (mayStand() || !(hasNumbers || mayGoOn(asked)))) return putAway(asked)
        lookedUp = now()
      }
      const from = now()
      begun.step = begun.steps.next()
      changedAt = now()
      took += changedAt - from
    }
    planTook = took
    if (question.kind === 'plan') {
      stillSince = null
      if (question.lane === 'document') rehearsals ??= rehearsalsOf(question.project)
    }
    post({ id: asked.id, answer: begun.step.value })
  }

  function rehearse(project: Project): void {
    const began = now()
    try {
      rehearser ??= makePlanner()
      rehearser.numbers(project)
      if (rehearsals && rehearsals.length % WHOLE === 0)
        tellingsOf(rehearser.plan(project)).forEach(({ all }) => all())
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
    waiting.push({ id, question, isHurried, begun: null })
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
