/** How little a map whose neighbours are kept apart can go beyond its limits: small maps are searched through. */
import { COLOUR_CONSTANTS } from './constants'
import { excessOf, stepCost } from './counts'
import { FREE, sizeOf } from './graph'
import type { ColourTask } from './graph'
import type { Limits } from './limits'

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** A motif beyond its limit weighs more than any yarn. */
export const MOTIF_WEIGHT = 1e7

/** Grams that a rounding error may make. */
export const NO_GRAMS = 1e-6

/** How far counts of cells are beyond their limits, as one number. */
export const weightOf = (limits: Limits, cells: readonly number[]): number => {
  const { cells: over, grams } = excessOf(limits, cells)
  return sum(over) * MOTIF_WEIGHT + sum(grams)
}

/**
 * Goes through the colourings that keep neighbours apart for one less far beyond the limits, and puts it into `best`;
 * what a part of a map is beyond them the whole is too. Whether `best` is then as little beyond as can be: not where
 * its steps ran out. `least` is a weight that none is under.
 */
export function leastBeyond(task: ColourTask, best: Int16Array, limits: Limits, least: number): boolean {
  const { neighbours, fixed, colours } = task
  const colouring = Int16Array.from(fixed)
  const free = nearbyFirst(task)
  const cells = limits.most.map(() => 0)
  const put = (cell: number, colour: number, times: 1 | -1): void => {
    colouring[cell] = times === 1 ? colour : FREE
    cells[colour] = (cells[colour] ?? 0) + times * sizeOf(task, cell)
  }
  const total = limits.most.map(() => 0)
  for (const cell of free) total[best[cell] ?? 0]! += sizeOf(task, cell)
  let lightest = weightOf(limits, total)
  let left: number = Math.floor(COLOUR_CONSTANTS.leastSteps / stepCost(limits))
  /** Whether it need not go on. */
  const walk = (at: number): boolean => {
    const cell = free[at]
    if (cell === undefined) {
      lightest = weightOf(limits, cells)
      best.set(colouring)
      return lightest <= least + NO_GRAMS
    }
    const options: { colour: number; weight: number }[] = []
    for (let colour = 0; colour < colours; colour++) {
      if (neighbours[cell]?.some((other) => colouring[other] === colour)) continue
      if (left-- <= 0) return true
      put(cell, colour, 1)
      options.push({ colour, weight: weightOf(limits, cells) })
      put(cell, colour, -1)
    }
    for (const { colour, weight } of options.sort((a, b) => a.weight - b.weight)) {
      if (weight >= lightest - NO_GRAMS) break
      put(cell, colour, 1)
      const isDone = walk(at + 1)
      put(cell, colour, -1)
      if (isDone) return true
    }
    return false
  }
  // A walk is as deep as there are cells; so many could not be gone through anyway.
  if (free.length > COLOUR_CONSTANTS.leastCells) return false
  walk(0)
  return left > 0
}

/** Free cells, each beside cells that come before it where there are any: what cannot be is found out soon. */
export function nearbyFirst({ neighbours, fixed }: ColourTask): number[] {
  const seen = new Set<number>()
  for (const start of fixed.keys()) {
    if (fixed[start] !== FREE || seen.has(start)) continue
    const queue = [start]
    seen.add(start)
    for (const cell of queue)
      for (const other of neighbours[cell] ?? []) {
        if (fixed[other] !== FREE || seen.has(other)) continue
        seen.add(other)
        queue.push(other)
      }
  }
  return [...seen]
}
