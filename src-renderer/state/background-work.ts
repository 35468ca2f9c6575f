/** What is asked of the background, and how it is answered: pure, the same in a worker and in tests. */
import type { Plan } from '../../shared-types/plan'
import type { Project } from '../../shared-types/project'
import type { BestRotation } from '../../src-core/layout/rotation'
import { fitProject } from '../../src-core/plan'
import type { Planner } from '../../src-core/plan'
import type { Fit } from './background'
import { takeFit } from './edits/layout'
import { shared } from './sharing'

export type Question =
  | { readonly lane: 'document' | 'picture'; readonly kind: 'plan'; readonly project: Project }
  | {
      readonly lane: 'fits'
      readonly kind: 'fits'
      readonly project: Project
      readonly wish: { readonly width: number; readonly height: number }
    }
  | { readonly lane: 'rotation'; readonly kind: 'rotation'; readonly project: Project }

export interface Answer {
  readonly value:
    | { readonly kind: 'plan'; readonly change: Partial<Plan> }
    | { readonly kind: 'fits'; readonly fits: readonly Fit[] }
    | { readonly kind: 'rotation'; readonly rotation: BestRotation | null }
}

/** How many arrangements are offered as pictures. */
const OFFERED = 6
/** A picture of more motifs than this would only be a grey patch, and slow to make. */
const MOST_IN_PICTURE = 2_000

/** The fields of a plan that are not the same as before. */
function changed(before: Plan | undefined, plan: Plan): Partial<Plan> {
  if (!before) return plan
  return Object.fromEntries(
    Object.entries(plan).filter(([key, value]) => before[key as keyof Plan] !== value),
  ) as Partial<Plan>
}

/** Answers questions one by one and remembers for each lane what the last one was about. */
export function answerer(makePlanner: () => Planner): (question: Question) => Answer {
  const memories = new Map<string, { readonly planner: Planner; project?: Project; plan?: Plan }>()
  return (question) => {
    const memory = memories.get(question.lane) ?? { planner: makePlanner() }
    memories.set(question.lane, memory)
    // What came through a message is a copy: give back what is known, so that the planner remembers it.
    const project = shared(memory.project, question.project)
    memory.project = project
    switch (question.kind) {
      case 'plan': {
        const plan = memory.planner.plan(project)
        const change = changed(memory.plan, plan)
        memory.plan = plan
        return { value: { kind: 'plan', change } }
      }
      case 'fits': {
        const { arrangements } = fitProject(project, question.wish)
        const fits = arrangements.slice(0, OFFERED).map((arrangement) => ({
          arrangement,
          plan:
            arrangement.motifs > MOST_IN_PICTURE ? null : memory.planner.plan(takeFit(project, arrangement)),
        }))
        return { value: { kind: 'fits', fits } }
      }
      case 'rotation':
        return { value: { kind: 'rotation', rotation: memory.planner.rotation(project) } }
    }
  }
}
