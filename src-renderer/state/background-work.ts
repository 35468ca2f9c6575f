/** What is asked of the background, and how it is answered: pure, the same in a worker and in tests. */
import type { Plan, PlanNumbers } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { FieldEdit, WishedSize } from '../../shared-types/ways'
import type { BestRotation } from '../../src-core/layout/rotation'
import type { Proposals } from '../../src-core/layout/proposals'
import type { Have } from '../../src-core/layout/fit-have'
import { remedyOf } from '../../src-core/layout/remedy'
import type { Remedy } from '../../src-core/layout/remedy'
import { towardTarget } from './resize'
import type { Toward } from './resize'
import type { Piles } from '../../src-core/layout/piles'
import { fitFromHave, fitProject, proposeProject } from '../../src-core/plan'
import type { Planner } from '../../src-core/plan'
import { slipsOfMotif } from '../../src-core/motif/rounds/read-motif'
import type { RoundSlip } from '../../src-core/motif/rounds/read-motif'
import { settled } from '../../src-core/settled'
import { tellingsOf } from '../../src-core/telling'
import { waysToSize } from '../../src-core/ways/ways'
import { holdWork } from '../../src-core/progress/hold'
import { lostMade } from '../../src-core/progress/lost'
import type { LostMade } from '../../src-core/progress/lost'
import { differences, withEdit } from '../../src-core/ways/edit'
import { drawRounds } from '../drawing/rounds-chart'
import type { RoundsChart } from '../drawing/rounds-chart'
import type { Fit, OfferedWay } from './background'
import { takeFit } from './edits/layout'
import type { FitFrom } from './edits/layout'
import { packing } from './plan-parcel'
import type { Parcel } from './plan-parcel'
import { shared } from './sharing'

/** A size in mm, or what there is to make an arrangement from. */
export type FitWish = { readonly width: number; readonly height: number } | Have

const fitFrom = (wish: FitWish): FitFrom =>
  'stash' in wish ? 'stash' : 'motifs' in wish ? 'motifs' : 'count' in wish ? 'count' : 'size'

const pilesOf = (wish: FitWish): Piles | undefined => ('motifs' in wish ? wish.piles : undefined)

export type Question =
  | { readonly lane: 'document' | 'picture'; readonly kind: 'plan'; readonly project: Project }
  | {
      readonly lane: 'fits'
      readonly kind: 'fits'
      readonly project: Project
      readonly wish: FitWish
    }
  | {
      readonly lane: 'ways'
      readonly kind: 'ways'
      readonly project: Project
      readonly wish: WishedSize
    }
  | { readonly lane: 'rotation'; readonly kind: 'rotation'; readonly project: Project }
  | {
      readonly lane: 'picture'
      readonly kind: 'proposals'
      readonly project: Project
      readonly wish: { readonly width: number; readonly height: number }
    }
  | { readonly lane: 'remedy'; readonly kind: 'remedy'; readonly project: Project }
  | { readonly lane: 'toward'; readonly kind: 'toward'; readonly project: Project }
  | { readonly lane: 'chart'; readonly kind: 'chart'; readonly project: Project; readonly motif: string }
  | { readonly lane: 'slips'; readonly kind: 'slips'; readonly project: Project; readonly motif: string }
  | { readonly lane: 'hold'; readonly kind: 'hold'; readonly project: Project; readonly after: Project }

export interface Answer {
  readonly value:
    /** `from`: what changed is told against the plan sent before in this lane; else it is a whole one. */
    | { readonly kind: 'plan'; readonly change: Parcel; readonly from: 'last' | 'nothing' }
    /** A later question in the same lane came before this one was answered. */
    | { readonly kind: 'overtaken' }
    | { readonly kind: 'fits'; readonly fits: readonly Fit[] }
    | { readonly kind: 'ways'; readonly ways: readonly OfferedWay[] }
    | { readonly kind: 'rotation'; readonly rotation: BestRotation | null }
    /** The engine fell over the project, in its own words. */
    | { readonly kind: 'failed'; readonly reason: string }
    | { readonly kind: 'proposals'; readonly proposals: Proposals }
    | { readonly kind: 'remedy'; readonly remedy: Remedy | null }
    | { readonly kind: 'toward'; readonly toward: Toward | null }
    | { readonly kind: 'chart'; readonly chart: RoundsChart | null }
    | { readonly kind: 'slips'; readonly slips: readonly RoundSlip[] }
    | ({ readonly kind: 'hold' } & Held)
}

/** What an edit must add to keep colours where they are, and what made motifs lose by it all the same. */
export interface Held {
  readonly edit: readonly FieldEdit[]
  readonly lost: LostMade | null
}

/** What a worker sends: first what a plan comes to, where that is known earlier, then the answer. */
export type Message =
  { readonly id: number; readonly numbers: PlanNumbers } | { readonly id: number; readonly answer: Answer }

/** What changes hands with a message and is not copied. */
export const bytesIn = (message: Message): ArrayBuffer[] =>
  'answer' in message && message.answer.value.kind === 'plan'
    ? Object.values(message.answer.value.change.long).flat()
    : []

/** How many arrangements are offered as pictures. */
const OFFERED = 6
/** A picture of more motifs than this would only be a grey patch, and slow to make. */
const MOST_IN_PICTURE = 2_000

/** The fields of a plan that are not the same as before. */
function changed(before: Plan | undefined, plan: Plan): Partial<Plan> {
  if (!before) return plan
  const keys = new Set([...Object.keys(before), ...Object.keys(plan)]) as Set<keyof Plan>
  // What is gone is told as nothing.
  return Object.fromEntries(
    [...keys].filter((key) => before[key] !== plan[key]).map((key) => [key, plan[key]]),
  ) as Partial<Plan>
}

/**
 * What a plan comes to, as soon as that is known; then null between the parts of what is long to tell. Whoever waits for
 * the answer asks for it after that.
 */
export type Steps = Generator<PlanNumbers | null, Answer, void>

/** Steps of the work that are told at a stretch: a few ms of them. */
const AT_A_STRETCH = 250

/** Answers questions in steps and remembers for each lane what the last one was about; never throws. */
export function stepwise(makePlanner: () => Planner): (question: Question) => Steps {
  const answer = remembering(makePlanner)
  return function* (question) {
    try {
      return yield* answer(question)
    } catch (error) {
      return { value: { kind: 'failed', reason: error instanceof Error ? error.message : String(error) } }
    }
  }
}

/** Hears what a plan comes to, before all of it is there. */
export type HearNumbers = (numbers: PlanNumbers) => void

/** Answers questions one by one, each to its end. */
export function answerer(
  makePlanner: () => Planner,
): (question: Question, hearNumbers?: HearNumbers) => Answer {
  const answer = stepwise(makePlanner)
  return (question, hearNumbers = () => undefined) => {
    const steps = answer(question)
    let step = steps.next()
    for (; !step.done; step = steps.next()) if (step.value) hearNumbers(step.value)
    return step.value
  }
}

function remembering(makePlanner: () => Planner): (question: Question) => Steps {
  const memories = new Map<string, { readonly planner: Planner; project?: Project; plan?: Plan }>()
  return function* (question) {
    const memory = memories.get(question.lane) ?? { planner: makePlanner() }
    memories.set(question.lane, memory)
    // What came through a message is a copy: give back what is known, so that the planner remembers it.
    const project = shared(memory.project, question.project)
    memory.project = project
    switch (question.kind) {
      case 'plan': {
        const numbers = question.lane === 'document' ? memory.planner.numbers(project) : null
        if (numbers) yield numbers
        const plan = memory.planner.plan(project)
        yield null
        for (const each of tellingsOf(plan)) while (!each.further(AT_A_STRETCH)) yield null
        const from = memory.plan ? 'last' : 'nothing'
        const change = yield* packing(changed(memory.plan, plan))
        memory.plan = plan
        return { value: { kind: 'plan', change, from } }
      }
      case 'hold': {
        const after = shared(project, question.after)
        const held = holdWork(project, after)
        return {
          value: { kind: 'hold', edit: differences(after, held), lost: lostMade(project, held) },
        }
      }
      case 'fits': {
        const { wish } = question
        const { arrangements } =
          'width' in wish
            ? fitProject(project, wish, { most: OFFERED, withPresent: true })
            : fitFromHave(project, wish)
        const shown = 'width' in wish ? arrangements : arrangements.slice(0, OFFERED)
        const fits = shown.map((arrangement) => ({
          arrangement,
          plan:
            arrangement.motifs > MOST_IN_PICTURE
              ? null
              : memory.planner.plan(takeFit(project, arrangement, fitFrom(wish), pilesOf(wish))),
        }))
        return { value: { kind: 'fits', fits } }
      }
      case 'ways': {
        const { ways } = waysToSize(project, question.wish, memory.planner)
        const offered = ways.slice(0, OFFERED).map((way) => {
          const isPictured = way.motifs <= MOST_IN_PICTURE
          return { way, plan: isPictured ? memory.planner.plan(withEdit(project, way.edit)) : null }
        })
        return { value: { kind: 'ways', ways: offered } }
      }
      case 'rotation':
        return { value: { kind: 'rotation', rotation: memory.planner.rotation(project) } }
      case 'proposals':
        return { value: { kind: 'proposals', proposals: proposeProject(project, question.wish) } }
      case 'remedy':
        return { value: { kind: 'remedy', remedy: remedyOf(project, memory.planner) } }
      case 'toward':
        return { value: { kind: 'toward', toward: towardTarget(project, memory.planner.plan(project)) } }
      case 'chart':
        return { value: { kind: 'chart', chart: drawRounds(project, question.motif) } }
      case 'slips': {
        const motif = (project.motifs ?? []).find(({ id }) => id === question.motif)
        const slips = motif?.kind === 'rounds' ? slipsOfMotif(motif, settled(project).terms) : []
        return { value: { kind: 'slips', slips } }
      }
    }
  }
}
