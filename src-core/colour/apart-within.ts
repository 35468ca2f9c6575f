/**
 * Neighbours apart and limits kept: from a colouring that keeps neighbours apart, single cells and chains of two
 * colours change until nothing is beyond its limit; small maps are searched through, and what a limit cannot hold is
 * proved by how many cells a colour can take at most.
 */
import type { Random } from '../units/random'
import { evenOut } from './balance'
import { COLOUR_CONSTANTS } from './constants'
import { countsWithin, excessOf, isWithinLimits, stepCost } from './counts'
import { fewestAlike } from './fewest-alike'
import { FREE, countColours, sizeOf } from './graph'
import type { ColourTask } from './graph'
import type { Filled } from './in-turn'
import { leastBeyond, MOTIF_WEIGHT, NO_GRAMS, weightOf } from './least-beyond'
import { countTask } from './limits'
import type { Limits } from './limits'
import { searchGroup } from './search'

/** Motifs that the free cells of each colour stand for. */
const freeCells = (task: ColourTask, colouring: Int16Array): number[] =>
  countColours(
    colouring.map((colour, cell) => (task.fixed[cell] === FREE ? colour : FREE)),
    task.colours,
    task.sizes,
  )

/**
 * Brings a colouring within limits and leaves no more neighbours alike than it had. `isApart` says that it had none;
 * `wish` are the counts of free motifs to come near to.
 */
export function apartWithin(
  task: ColourTask,
  from: Int16Array,
  isApart: boolean,
  limits: Limits,
  wish: readonly number[],
  random: Random,
): Filled {
  const colours = Int16Array.from(from)
  const isDone = (): boolean => isWithinLimits(limits, freeCells(task, colours))
  if (isDone()) return { colours, isLeast: true }
  const sizes = [...task.fixed.keys()].map((cell) => (task.fixed[cell] === FREE ? sizeOf(task, cell) : 0))
  const most = limits.most.map((limit, colour) =>
    isApart ? Math.min(limit, mostApart(task, colour)) : limit,
  )
  const bounded = { ...limits, most }
  const target = countsWithin(countTask(bounded, sizes, wish))
  // Whoever keeps neighbours apart keeps to what is bounded by them: it goes beyond limits alone.
  const bound = target.isLeast ? excessOf(bounded, target.cells) : null
  const least = bound ? sum(bound.cells) * MOTIF_WEIGHT + sum(bound.grams) : 0
  const surplus = freeCells(task, colours).map((count, colour) => count - (target.cells[colour] ?? 0))
  evenOut(task, colours, surplus, random)
  if (weightOf(limits, freeCells(task, colours)) > 0) {
    lighten(task, colours, limits, random)
    evenAgain(task, colours, limits, target.cells, random)
  }
  const weight = weightOf(limits, freeCells(task, colours))
  if (weight <= least + NO_GRAMS) return { colours, isLeast: true }
  let atLeast = bound && least > 0 ? { motifs: sum(bound.cells), grams: sum(bound.grams) } : undefined
  if (!isApart) {
    const fewest = Int16Array.from(colours)
    const isLeast = fewestAlike(task, fewest, limits)
    return { colours: fewest, isLeast, atLeast }
  }
  if (!atLeast) {
    const sought = Int16Array.from(task.fixed)
    const group = [...sought.keys()].filter((cell) => sought[cell] === FREE)
    const lack = target.cells.map((count) => -count)
    const floor = Math.floor(COLOUR_CONSTANTS.searchSteps.floor / stepCost(limits))
    const end = searchGroup(task, group, sought, lack, floor, random, roomOver(task, limits))
    if (end === 'found') return { colours: sought, isLeast: true }
    if (end === 'impossible' && limits.yarns.length === 0) atLeast = { motifs: 1, grams: 0 }
  }
  const isLeast = leastBeyond(task, colours, limits, least)
  return { colours, isLeast, atLeast }
}

/** What went by chance for the sake of limits comes near the counts again, as long as that costs no limit anything. */
function evenAgain(
  task: ColourTask,
  colours: Int16Array,
  limits: Limits,
  target: readonly number[],
  random: Random,
): void {
  const cells = freeCells(task, colours)
  const weight = weightOf(limits, cells)
  const evened = Int16Array.from(colours)
  evenOut(
    task,
    evened,
    cells.map((count, colour) => count - (target[colour] ?? 0)),
    random,
  )
  if (weightOf(limits, freeCells(task, evened)) <= weight + NO_GRAMS) colours.set(evened)
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** Room that can be given back: what a search takes on its way. */
function roomOver(task: ColourTask, limits: Limits) {
  const cells = limits.most.map(() => 0)
  const add = (cell: number, colour: number, times: 1 | -1): void => {
    cells[colour] = (cells[colour] ?? 0) + times * sizeOf(task, cell)
  }
  return {
    add,
    fits(cell: number, colour: number): boolean {
      add(cell, colour, 1)
      const is = isWithinLimits(limits, cells)
      add(cell, colour, -1)
      return is
    },
  }
}

/** The most free motifs that can have a colour with no two of them side by side, or more than that. */
function mostApart(task: ColourTask, colour: number): number {
  const { neighbours, fixed } = task
  const isOpen = fixed.map((own, cell) =>
    own === FREE && !(neighbours[cell] ?? []).some((other) => fixed[other] === colour) ? 1 : 0,
  )
  const paired = pairs(neighbours, isOpen)
  // Of each clique (a pair, a triangle) one cell can have the colour: the fewer cliques, the sharper.
  const inPairs = cliques(task, isOpen, (cell, isTaken) => {
    const other = paired[cell] ?? FREE
    return other !== FREE && !isTaken(other) ? [other] : []
  })
  const inTriangles = cliques(task, isOpen, (cell, isTaken) => {
    const near = (neighbours[cell] ?? []).filter((other) => isOpen[other] === 1 && !isTaken(other))
    for (const one of near) {
      const third = near.find((other) => other !== one && neighbours[one]?.includes(other))
      if (third !== undefined) return [one, third]
    }
    return near.slice(0, 1)
  })
  return Math.min(inPairs, inTriangles)
}

/** Sum over cliques that cover the open cells, of the largest cell in each. */
function cliques(
  task: ColourTask,
  isOpen: ArrayLike<number>,
  others: (cell: number, isTaken: (cell: number) => boolean) => readonly number[],
): number {
  const taken = new Set<number>()
  let total = 0
  for (let cell = 0; cell < isOpen.length; cell++) {
    if (isOpen[cell] !== 1 || taken.has(cell)) continue
    taken.add(cell)
    const clique = [cell, ...others(cell, (other) => taken.has(other))]
    for (const each of clique) taken.add(each)
    total += Math.max(...clique.map((each) => sizeOf(task, each)))
  }
  return total
}

/** Neighbours in pairs, as many as can be where the map has two sides (Kuhn's augmenting paths); −1 for none. */
function pairs(neighbours: ColourTask['neighbours'], isOpen: ArrayLike<number>): Int32Array {
  const partner = new Int32Array(isOpen.length).fill(FREE)
  const side = new Int8Array(isOpen.length)
  for (let start = 0; start < isOpen.length; start++) {
    if (isOpen[start] !== 1 || side[start] !== 0) continue
    side[start] = 1
    const queue = [start]
    for (const cell of queue)
      for (const other of neighbours[cell] ?? []) {
        if (isOpen[other] !== 1 || side[other] !== 0) continue
        side[other] = -side[cell]!
        queue.push(other)
      }
  }
  const seen = new Int32Array(isOpen.length).fill(FREE)
  for (let start = 0; start < isOpen.length; start++) {
    if (side[start] !== 1) continue
    // A path of cells to be paired anew, walked without recursion: maps are large.
    const path: { cell: number; next: number }[] = [{ cell: start, next: 0 }]
    while (path.length > 0) {
      const step = path.at(-1)!
      const other = (neighbours[step.cell] ?? [])[step.next++]
      if (other === undefined) {
        path.pop()
        continue
      }
      if (side[other] !== -1 || seen[other] === start) continue
      seen[other] = start
      const after = partner[other] ?? FREE
      if (after !== FREE) {
        path.push({ cell: after, next: 0 })
        continue
      }
      for (let at = path.length - 1; at >= 0; at--) {
        const { cell, next } = path[at]!
        const mate = neighbours[cell]![next - 1]!
        partner[mate] = cell
        partner[cell] = mate
      }
      break
    }
  }
  return partner
}

/** Cells and chains change colour by chance as long as limits are passed, for a number of steps; the best stays. */
function lighten(task: ColourTask, colours: Int16Array, limits: Limits, random: Random): void {
  const { neighbours, fixed } = task
  const free = [...fixed.keys()].filter((cell) => fixed[cell] === FREE)
  const cells = freeCells(task, colours)
  const best = Int16Array.from(colours)
  let weight = weightOf(limits, cells)
  let least = weight
  const alike = (cell: number, colour: number): number =>
    (neighbours[cell] ?? []).reduce((many, other) => many + (colours[other] === colour ? 1 : 0), 0)
  /** The cell and its patch of two colours; null where a part of it is fixed. */
  const chainOf = (cell: number, from: number, to: number): number[] | null => {
    const chain = [cell]
    const seen = new Set(chain)
    for (const at of chain)
      for (const other of neighbours[at] ?? []) {
        if (seen.has(other) || (colours[other] !== from && colours[other] !== to)) continue
        if (fixed[other] !== FREE) return null
        seen.add(other)
        chain.push(other)
      }
    return chain
  }
  const { lightenSteps, sideways } = COLOUR_CONSTANTS
  const cost = stepCost(limits)
  for (let left = lightenSteps.floor + lightenSteps.perCell * free.length; left > 0 && least > 0;) {
    left -= cost
    const cell = free[random.below(free.length)] ?? 0
    const from = colours[cell] ?? 0
    const to = random.below(task.colours)
    if (to === from) continue
    const chain = alike(cell, to) <= alike(cell, from) ? [cell] : chainOf(cell, from, to)
    if (!chain) continue
    left -= chain.length
    const swap = (): void => {
      for (const at of chain) {
        const [old, now] = colours[at] === from ? [from, to] : [to, from]
        colours[at] = now
        cells[old] = (cells[old] ?? 0) - sizeOf(task, at)
        cells[now] = (cells[now] ?? 0) + sizeOf(task, at)
      }
    }
    swap()
    const now = weightOf(limits, cells)
    if (now > weight && random.next() > sideways) swap()
    else weight = now
    if (weight >= least) continue
    least = weight
    best.set(colours)
  }
  colours.set(best)
}
