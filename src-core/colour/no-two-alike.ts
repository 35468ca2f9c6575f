/** Colours a map so that no two neighbours are alike, as evenly as can be (§5 of the model). */
import type { Random } from '../units/random'
import { evenOut } from './balance'
import { COLOUR_CONSTANTS } from './constants'
import { alikePairs, countColours, freeGroups } from './graph'
import type { ColourTask } from './graph'
import { colourWithFewAlike } from './repair'
import { searchGroup } from './search'

export interface Colouring {
  /** Colour of every cell. */
  readonly colours: Int16Array
  /** 'perfect', proved impossible, or given up within its steps with the best that was found. */
  readonly outcome: 'perfect' | 'impossible' | 'not-found'
  /** Free cells of the groups that could not be coloured well. */
  readonly troubled: readonly number[]
}

/** Steps that the search may take for a group of cells. */
const stepsFor = (group: readonly number[]): number => {
  const { floor, perCell } = COLOUR_CONSTANTS.searchSteps
  return floor + perCell * group.length
}

/**
 * A colouring without alike neighbours where there is one (exact search, bounded steps), with counts as even
 * as single changes and swaps of two colours can make them; otherwise the fewest alike pairs found. Fixed
 * cells keep their colours whatever stands beside them.
 */
export function colourApart(task: ColourTask, random: Random): Colouring {
  const colouring = Int16Array.from(task.fixed)
  const counts = countColours(colouring, task.colours)
  const { repairSteps } = COLOUR_CONSTANTS
  const troubled: number[] = []
  let outcome: Colouring['outcome'] = 'perfect'
  for (const group of freeGroups(task)) {
    const end = searchGroup(task, group, colouring, counts, stepsFor(group), random)
    if (end === 'found') continue
    if (outcome !== 'impossible') outcome = end === 'impossible' ? 'impossible' : 'not-found'
    colourWithFewAlike(
      task,
      group,
      colouring,
      counts,
      repairSteps.floor + repairSteps.perCell * group.length,
      random,
    )
    troubled.push(...group)
  }
  if (outcome === 'not-found' && alikePairs(task.neighbours, colouring).length === 0) outcome = 'perfect'
  if (outcome === 'perfect') evenOut(task, colouring, counts, random)
  return { colours: colouring, outcome, troubled }
}

/** The fewest colours, from `task.colours` + 1 on, that keep neighbours apart; null if none up to `most` is found. */
export function coloursThatDo(task: ColourTask, most: number, random: Random): number | null {
  for (let colours = task.colours + 1; colours <= most; colours++) {
    const trial: ColourTask = { ...task, colours }
    const colouring = Int16Array.from(task.fixed)
    const counts = countColours(colouring, colours)
    const does = freeGroups(trial).every(
      (group) => searchGroup(trial, group, colouring, counts, stepsFor(group), random) === 'found',
    )
    if (does) return colours
  }
  return null
}
