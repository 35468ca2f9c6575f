/** Colours a map so that no two neighbours are alike, as evenly as can be (§5 of the model). */
import type { Random } from '../units/random'
import { evenOut } from './balance'
import { COLOUR_CONSTANTS } from './constants'
import { fewestAlike } from './fewest-alike'
import { FREE, alikePairs, countColours, freeGroups } from './graph'
import type { ColourTask } from './graph'
import { colourWithFewAlike, comeBack, mendAlike } from './repair'
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
 * cells keep their colours whatever stands beside them. Given a colouring to start `from`, whatever has no
 * alike neighbours there stays, counts are left as they are, and alike pairs are mended from how it stands.
 */
export function colourApart(task: ColourTask, random: Random, from?: Int16Array): Colouring {
  const colouring = Int16Array.from(task.fixed)
  const counts = countColours(colouring, task.colours)
  const { repairSteps } = COLOUR_CONSTANTS
  const troubled: number[] = []
  let outcome: Colouring['outcome'] = 'perfect'
  for (const group of freeGroups(task)) {
    const mended = from && mendFrom(task, group, colouring, counts, from, random)
    if (mended?.isApart) continue
    const end = searchGroup(task, group, colouring, counts, stepsFor(group), random)
    if (end === 'found') {
      if (from) comeBack(task.neighbours, group, colouring, counts, from)
      continue
    }
    if (outcome !== 'impossible') outcome = end === 'impossible' ? 'impossible' : 'not-found'
    if (mended) {
      group.forEach((cell, index) => {
        const colour = mended.colours[index] ?? 0
        colouring[cell] = colour
        counts[colour] = (counts[colour] ?? 0) + 1
      })
    } else {
      const steps = repairSteps.floor + repairSteps.perCell * group.length
      colourWithFewAlike(task, group, colouring, counts, steps, random)
    }
    fewestIn(task, group, colouring, counts)
    troubled.push(...group)
  }
  if (outcome === 'not-found' && alikePairs(task.neighbours, colouring).length === 0) outcome = 'perfect'
  if (outcome === 'perfect' && !from) evenOut(task, colouring, counts, random)
  return { colours: colouring, outcome, troubled }
}

/** Where a group that cannot be apart can have fewer pairs alike than were found it has the fewest. */
function fewestIn(task: ColourTask, group: readonly number[], colouring: Int16Array, counts: number[]): void {
  if (group.length > COLOUR_CONSTANTS.fewestCells) return
  const fixed = Int16Array.from(task.fixed)
  const own = new Set(group)
  // Other groups stand beside nothing of this one.
  fixed.forEach((colour, cell) => {
    if (colour === FREE && !own.has(cell)) fixed[cell] = task.colours
  })
  const best = fixed.map((colour, cell) => (own.has(cell) ? colouring[cell]! : colour))
  fewestAlike({ ...task, fixed }, best, null)
  for (const cell of group) {
    counts[colouring[cell]!]! -= 1
    counts[best[cell]!]! += 1
    colouring[cell] = best[cell]!
  }
}

/**
 * Takes a group over as it stands and mends its alike pairs. Where some are left, the group is free again and
 * the best that was found is answered.
 */
function mendFrom(
  task: ColourTask,
  group: readonly number[],
  colouring: Int16Array,
  counts: number[],
  from: Int16Array,
  random: Random,
): { isApart: boolean; colours: Int16Array } {
  for (const cell of group) {
    const colour = from[cell] ?? 0
    colouring[cell] = colour
    counts[colour] = (counts[colour] ?? 0) + 1
  }
  const isApart = mendAlike(task, group, colouring, counts, random, from)
  const colours = Int16Array.from(group, (cell) => colouring[cell] ?? 0)
  if (!isApart)
    for (const cell of group) {
      const colour = colouring[cell] ?? 0
      counts[colour] = (counts[colour] ?? 0) - 1
      colouring[cell] = FREE
    }
  return { isApart, colours }
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
