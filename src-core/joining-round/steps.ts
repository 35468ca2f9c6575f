/** The steps of a round as hands do them, one for each place: what a round in words is put together from. */
import type { WorkedElement } from '../notation/worked'

export type Step = WordsStep | ChainStep | StitchStep | GroupStep

/** Words that stand as they are: skipped stitches, the joining of the round, notes. */
export interface WordsStep {
  readonly type: 'words'
  readonly words: string
  /** Said of the step before it: "(counts as dc)". */
  readonly attached: boolean
  readonly elements: readonly WorkedElement[]
}

export interface ChainStep {
  readonly type: 'chain'
  readonly count: number
  readonly elements: readonly WorkedElement[]
}

/** So many stitches of one name in one place; within a group the place is that of the group. */
export interface StitchStep {
  readonly type: 'stitch'
  readonly count: number
  readonly name: string
  readonly place: PlaceWords | null
  /** A name that holds its count or its legs, like "dc2tog". */
  readonly whole: boolean
  readonly elements: readonly WorkedElement[]
}

/** Several things in one place. */
export interface GroupStep {
  readonly type: 'group'
  readonly steps: readonly Step[]
  readonly place: PlaceWords
}

export interface PlaceWords {
  /** "in next ch-3 sp", "in same st as joining". */
  readonly words: string
  /** "ch-3 sp" where the place is just the next one: several of them can be told at once. */
  readonly next: string | null
}

/** Everything that a step makes, in the order made. */
export const elementsOf = (step: Step): readonly WorkedElement[] =>
  step.type === 'group' ? step.steps.flatMap(elementsOf) : step.elements
