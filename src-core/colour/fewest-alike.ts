/** The fewest neighbours alike where they cannot all be apart, and then the least beyond limits: small maps are searched through. */
import { COLOUR_CONSTANTS } from './constants'
import { stepCost } from './counts'
import { alikePairs, FREE, sizeOf } from './graph'
import type { ColourTask } from './graph'
import { nearbyFirst, NO_GRAMS, weightOf } from './least-beyond'
import type { Limits } from './limits'

/**
 * Goes through the colourings of the free cells for one with fewer neighbours alike than `best`, or with as few and
 * less far beyond the limits, and puts it into `best`. Whether `best` is then the least that can be had: not where
 * its steps ran out, or where there are more cells than could be gone through.
 */
export function fewestAlike(task: ColourTask, best: Int16Array, limits: Limits | null): boolean {
  const { neighbours, fixed, colours } = task
  const free = nearbyFirst(task)
  if (free.length > COLOUR_CONSTANTS.fewestCells) return false
  const cells = Array.from({ length: colours }, () => 0)
  const weigh = () => (limits ? weightOf(limits, cells) : 0)
  /** How many coloured neighbours of each cell have each colour. */
  const beside = Array.from(fixed, () => new Int16Array(colours))
  const touch = (cell: number, colour: number, times: 1 | -1): void => {
    if (colour < colours) for (const other of neighbours[cell] ?? []) beside[other]![colour]! += times
  }
  fixed.forEach((colour, cell) => colour !== FREE && touch(cell, colour, 1))
  for (const cell of free) cells[best[cell] ?? 0]! += sizeOf(task, cell)
  let least = {
    pairs: alikePairs(neighbours, best).length - alikePairs(neighbours, fixed).length,
    weight: weigh(),
  }
  cells.fill(0)
  const colouring = Int16Array.from(fixed)
  let left: number = Math.floor(COLOUR_CONSTANTS.leastSteps / (limits ? stepCost(limits) : 1))
  /** What those still to come cannot do without, beside those that are there. */
  const toCome = (at: number): number => {
    let sum = 0
    for (let i = at; i < free.length; i++) sum += Math.min(...beside[free[i]!]!)
    return sum
  }
  const walk = (at: number, pairs: number): void => {
    const cell = free[at]
    if (cell === undefined) {
      least = { pairs, weight: weigh() }
      best.set(colouring)
      return
    }
    // Those with the fewest likes beside them first, and of these what is used least.
    const order = [...cells.keys()].sort(
      (a, b) => beside[cell]![a]! - beside[cell]![b]! || cells[a]! - cells[b]!,
    )
    for (const colour of order) {
      if (left-- <= 0) return
      const now = pairs + beside[cell]![colour]!
      colouring[cell] = colour
      cells[colour]! += sizeOf(task, cell)
      touch(cell, colour, 1)
      const bound = now + toCome(at + 1)
      const isLess = bound < least.pairs || (bound === least.pairs && weigh() < least.weight - NO_GRAMS)
      if (isLess) walk(at + 1, now)
      touch(cell, colour, -1)
      cells[colour]! -= sizeOf(task, cell)
      colouring[cell] = FREE
    }
  }
  walk(0, 0)
  return left > 0
}
