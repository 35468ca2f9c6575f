/**
 * Steps with their joins: a chain is parted by the slip stitch into the neighbor, which replaces its middle chain
 * (§joining-last-round); a picot likewise; where a stitch stands at the place, its loop is drawn through the
 * neighbor's stitch, which adds none (common practice, no source).
 */
import { stitchAbbreviation } from '../stitches/terms'
import type { Terms } from '../../shared-types/project'
import type { WorkedElement } from '../notation/worked'
import { elementsOf } from './steps'
import type { ChainStep, Step, StitchStep } from './steps'

/** How one join is made. */
export interface JoinWords {
  /** "ch-2 sp", "picot", "dc": what it goes into, of the neighbor. */
  readonly into: string
  /** Others are joined there already. */
  readonly shared: boolean
  /** Chains of a joining chain, out and back. */
  readonly bridge: number
}

/** Chains on either side of the join that parts so many; an odd chain loses its middle one. */
export const halfOf = (chains: number): number => Math.floor(chains / 2)

/** What is worked before and behind the join that stands for an element. */
export interface Parted {
  /** Chains on either side of the join; the element itself stays where it is a stitch. */
  readonly chains: number
  /** The element stays: the join comes behind it. */
  readonly stays: boolean
  readonly picot: boolean
}

/** How a join parts an element; `closed`: the chain ends in a tall stitch that stands for its last chains. */
export function partedBy(element: WorkedElement, join: JoinWords, closed: boolean): Parted {
  const { role, count } = element
  const isLoop = (role === 'space' && !closed) || role === 'picot'
  return {
    chains: join.bridge + (isLoop ? halfOf(count) : 0),
    stays: !isLoop,
    picot: role === 'picot',
  }
}

interface Setting {
  readonly joins: ReadonlyMap<number, JoinWords>
  readonly terms: Terms
  /** Indices of chains that a tall stitch ends. */
  readonly closed: ReadonlySet<number>
}

/** The steps with the joins in them, by index of the element; null where a step cannot be parted in words. */
export function withJoins(
  steps: readonly Step[],
  joins: ReadonlyMap<number, JoinWords>,
  closed: ReadonlySet<number>,
  terms: Terms,
): Step[] | null {
  return joinAll(steps, { joins, closed, terms })
}

function joinAll(steps: readonly Step[], setting: Setting): Step[] | null {
  const made: Step[] = []
  for (let at = 0; at < steps.length; at++) {
    const step = steps[at]!
    const joined = elementsOf(step).filter(({ index }) => setting.joins.has(index))
    if (joined.length === 0) {
      made.push(step)
      continue
    }
    const parts = partsOf(step, joined, setting)
    if (!parts) return null
    made.push(...parts)
    // The slip stitch that closed the picot is told with it.
    const closes = step.type === 'chain' && joined[0]!.role === 'picot' && elementsOf(steps[at + 1] ?? step)
    if (closes && closes.length === 0) at++
  }
  return made
}

function partsOf(step: Step, joined: readonly WorkedElement[], setting: Setting): Step[] | null {
  if (step.type === 'group') {
    const steps = joinAll(step.steps, setting)
    return steps && [{ ...step, steps }]
  }
  if (step.type === 'stitch') return partedStitches(step, joined, setting)
  const [element, ...more] = joined
  if (!element || more.length > 0) return null
  if (step.type === 'chain') return partedChain(step, element, setting)
  return step.elements.at(-1) === element ? [step, ...joinSteps(element, setting)] : null
}

const words = (text: string): Step => ({ type: 'words', words: text, attached: false, elements: [] })
const chain = (count: number): Step[] => (count > 0 ? [{ type: 'chain', count, elements: [] }] : [])

/** The join itself with the chains that belong to it. */
function joinSteps(element: WorkedElement, { joins, closed, terms }: Setting): Step[] {
  const join = joins.get(element.index)!
  const { chains, stays, picot } = partedBy(element, join, closed.has(element.index))
  const slip = stitchAbbreviation('sl st', terms)
  const place = `${join.shared ? 'joined' : 'corresponding'} ${join.into} of neighbour`
  if (stays && chains === 0 && element.role !== 'space')
    return [words(`drop lp, insert hook in ${place}, draw lp through`)]
  const close = picot ? [words(`${slip} in first ch of picot`)] : []
  return [...chain(chains), words(`${slip} in ${place}`), ...chain(chains), ...close]
}

function partedChain(step: ChainStep, element: WorkedElement, setting: Setting): Step[] | null {
  const at = step.elements.indexOf(element)
  const before = step.elements.slice(0, at)
  const stands = before.reduce((sum, { count }) => sum + count, 0)
  if (at + 1 < step.elements.length || stands + element.count !== step.count) return null
  if (element.role === 'beginning') return [step, ...joinSteps(element, setting)]
  const { stays } = partedBy(element, setting.joins.get(element.index)!, setting.closed.has(element.index))
  const parts = joinSteps(element, setting)
  if (stays) return [step, ...parts]
  // Chains that stand for a stitch go on into those before the join.
  const [first, ...rest] = parts
  if (stands === 0) return parts
  return first?.type === 'chain'
    ? [{ ...first, count: first.count + stands, elements: before }, ...rest]
    : [{ type: 'chain', count: stands, elements: before }, ...parts]
}

function partedStitches(step: StitchStep, joined: readonly WorkedElement[], setting: Setting): Step[] | null {
  const isPicot = joined[0]?.role === 'picot'
  if (step.whole && !isPicot) return spelledOut(step, setting)
  if (step.elements.length !== step.count) return null
  const split: Step[] = []
  let from = 0
  for (const element of joined) {
    const at = step.elements.indexOf(element)
    split.push(...some(step, from, isPicot ? at : at + 1), ...joinSteps(element, setting))
    from = at + 1
  }
  split.push(...some(step, from, step.count))
  if (!step.place || step.count === 1) return split
  const steps = split.map((each) => (each.type === 'stitch' ? { ...each, place: null } : each))
  return [{ type: 'group', steps, place: step.place }]
}

/** Some of the stitches of a step. */
const some = (step: StitchStep, from: number, to: number): Step[] =>
  to > from ? [{ ...step, count: to - from, elements: step.elements.slice(from, to) }] : []

/** A shell or V-stitch, stitch by stitch. */
function spelledOut(step: StitchStep, setting: Setting): Step[] | null {
  if (step.count !== 1 || step.elements.some(({ form, role }) => form !== 'plain' || role === 'picot'))
    return null
  const single = step.elements.map((element): Step =>
    element.role === 'space'
      ? { type: 'chain', count: element.count, elements: [element] }
      : {
          ...{ type: 'stitch', count: 1, place: null, whole: false, elements: [element] },
          name: stitchAbbreviation(element.stitch, setting.terms),
        },
  )
  const steps = joinAll(single, setting)
  return steps && (step.place ? [{ type: 'group', steps, place: step.place }] : steps)
}
