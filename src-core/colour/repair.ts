/**
 * Where no colouring keeps all neighbours apart, or none was found in time: as few alike pairs as a patient
 * search finds (min-conflicts with a short memory of moves not to take back).
 */
import type { Random } from '../units/random'
import { COLOUR_CONSTANTS } from './constants'
import { FREE } from './graph'
import type { ColourTask } from './graph'
import { Waiting } from './search'

/** Most moves that a colour stays forbidden to a cell after it left it (common practice for such searches). */
const LONGEST_MEMORY = 10

/**
 * Mends the alike pairs of a group that is coloured already, in place, and puts back `from` what need not have
 * changed; answers whether none is left. The steps are bounded as for `colourWithFewAlike`.
 */
export function mendAlike(
  task: ColourTask,
  group: readonly number[],
  colouring: Int16Array,
  counts: number[],
  random: Random,
  from: Int16Array,
): boolean {
  const { floor, perCell } = COLOUR_CONSTANTS.repairSteps
  colourWithFewAlike(task, group, colouring, counts, floor + perCell * group.length, random)
  comeBack(task.neighbours, group, colouring, counts, from)
  return group.every((cell) => !isAlike(task.neighbours, colouring, cell, colouring[cell] ?? FREE))
}

const isAlike = (
  neighbours: ColourTask['neighbours'],
  colouring: Int16Array,
  cell: number,
  colour: number,
): boolean => (neighbours[cell] ?? []).some((other) => colouring[other] === colour)

/** Gives cells the colour back that they had, wherever no neighbour has it now. */
export function comeBack(
  neighbours: ColourTask['neighbours'],
  group: readonly number[],
  colouring: Int16Array,
  counts: number[],
  from: Int16Array,
): void {
  for (let isChanged = true; isChanged;) {
    isChanged = false
    for (const cell of group) {
      const [now, before] = [colouring[cell] ?? FREE, from[cell] ?? FREE]
      if (now === before || before === FREE || isAlike(neighbours, colouring, cell, before)) continue
      counts[now] = (counts[now] ?? 0) - 1
      counts[before] = (counts[before] ?? 0) + 1
      colouring[cell] = before
      isChanged = true
    }
  }
}

/** Colours the free cells of `group` in `colouring` (in place), then mends alike pairs for `steps` steps. */
export function colourWithFewAlike(
  task: ColourTask,
  group: readonly number[],
  colouring: Int16Array,
  counts: number[],
  steps: number,
  random: Random,
): void {
  const { neighbours, colours } = task
  const alike = (cell: number, colour: number): number => {
    let sum = 0
    for (const other of neighbours[cell] ?? []) if (colouring[other] === colour) sum++
    return sum
  }
  const paint = (cell: number, colour: number): void => {
    const before = colouring[cell] ?? FREE
    if (before !== FREE) counts[before] = (counts[before] ?? 0) - 1
    colouring[cell] = colour
    counts[colour] = (counts[colour] ?? 0) + 1
  }
  /** The colour with the fewest alike neighbours, then the least used one, among those allowed. */
  const best = (cell: number, allowed: (colour: number) => boolean): number => {
    let found = FREE
    let foundRank = Infinity
    for (let colour = 0; colour < colours; colour++) {
      if (!allowed(colour)) continue
      const rank = alike(cell, colour) * 1e6 + (counts[colour] ?? 0) + random.next()
      if (rank < foundRank) [found, foundRank] = [colour, rank]
    }
    return found
  }

  // First the cells with the most different neighbours, so that alike pairs gather where regions meet.
  const variety = (cell: number): number => {
    const seen = new Set<number>()
    for (const other of neighbours[cell] ?? []) {
      const colour = colouring[other] ?? FREE
      if (colour !== FREE && colour < colours) seen.add(colour)
    }
    return seen.size
  }
  const any = (): boolean => true
  const isCurrent = (cell: number, many: number) => colouring[cell] === FREE && variety(cell) === many
  const waiting = new Waiting(colours, isCurrent, random)
  for (const cell of group) waiting.push(cell, variety(cell))
  for (let cell = waiting.take(); cell !== null; cell = waiting.take()) {
    paint(cell, best(cell, any))
    for (const other of neighbours[cell] ?? []) {
      if (colouring[other] === FREE) waiting.push(other, variety(other))
    }
  }
  if (colours < 2) return

  const kept = new Int16Array(group.length)
  const keep = () => group.forEach((cell, index) => (kept[index] = colouring[cell] ?? FREE))
  const pairs = (): number => group.reduce((sum, cell) => sum + alike(cell, colouring[cell] ?? FREE), 0)
  keep()
  let now = pairs()
  let fewest = now
  const memory = Math.min(LONGEST_MEMORY, group.length)
  const forbiddenUntil = new Map<number, number>()
  const troubled = group.filter((cell) => alike(cell, colouring[cell] ?? FREE) > 0)
  for (let step = 0; step < steps && troubled.length > 0 && now > 0; step++) {
    const picked = random.below(troubled.length)
    const cell = troubled[picked] ?? 0
    const old = colouring[cell] ?? FREE
    const before = alike(cell, old)
    if (before === 0) {
      troubled[picked] = troubled[troubled.length - 1] ?? 0
      troubled.pop()
      continue
    }
    const colour = best(
      cell,
      (candidate) => candidate !== old && (forbiddenUntil.get(cell * colours + candidate) ?? 0) <= step,
    )
    if (colour === FREE) continue
    // A pair inside the group is counted from both its ends, one with a fixed cell once: count moves as pairs.
    paint(cell, colour)
    forbiddenUntil.set(cell * colours + old, step + 1 + random.below(memory))
    for (const other of neighbours[cell] ?? []) {
      const free = task.fixed[other] === FREE
      if (colouring[other] === old) now -= free ? 2 : 1
      if (colouring[other] === colour) {
        now += free ? 2 : 1
        if (free) troubled.push(other)
      }
    }
    if (now < fewest) {
      fewest = now
      keep()
    }
  }
  group.forEach((cell, index) => {
    if (colouring[cell] !== kept[index]) paint(cell, kept[index] ?? 0)
  })
}
