/**
 * One cell takes another colour and as little else as possible changes with it: neighbours that are alike now
 * are recoloured by an exhaustive search for the fewest changes, nearby; among equally few, those that leave the
 * counts most even.
 */
import type { Random } from '../units/random'
import { COLOUR_CONSTANTS } from './constants'
import { FREE, countColours, evenCounts } from './graph'
import type { ColourTask } from './graph'
import { mendAlike } from './repair'

/** What a cell may take, and what that costs beside the changes of others. */
export interface ColourOption {
  readonly colour: number
  readonly cost: number
}

/** A colouring that is being changed in place, with the cells that must stay as they are. */
interface Canvas {
  readonly task: Pick<ColourTask, 'neighbours' | 'colours'>
  readonly colouring: Int16Array
  /** 1 where a cell may not be changed. */
  readonly held: Uint8Array
  /** Whether neighbours have to differ. */
  readonly differs: boolean
  readonly random: Random
  /** Something could not be mended: no patient search any more, what is left alike is mended in the end. */
  isTroubled: boolean
}

type Changes = ReadonlyMap<number, number>

/** Gives a cell one of `options`, the first of which is what is wished, and mends what is alike then, if it can. */
export function recolour(canvas: Canvas, cell: number, options: readonly ColourOption[]): void {
  const { colouring, differs } = canvas
  const wished = options[0]?.colour ?? colouring[cell] ?? FREE
  const uneven = excess(canvas)
  const changes = differs
    ? (fewestChanges(canvas, cell, options) ?? furtherChanges(canvas, cell, wished))
    : new Map([[cell, wished]])
  for (const [at, colour] of changes) colouring[at] = colour
  evenNear(canvas, cell, Math.max(0, uneven))
}

/** Where the fewest changes are too many to be found one by one: a chain of two colours, or what a patient search finds. */
function furtherChanges(canvas: Canvas, cell: number, wished: number): Changes {
  const chain = chainOf(canvas, cell, canvas.colouring[cell] ?? FREE, wished)
  const sought = canvas.isTroubled ? null : soughtChanges(canvas, cell, wished)
  if (!chain && !sought) canvas.isTroubled = true
  if (chain && sought) return chain.size <= sought.size ? chain : sought
  return chain ?? sought ?? new Map([[cell, wished]])
}

/** Changes that leave nobody alike, from a search that moves on from what stands; null where it finds none. */
function soughtChanges(
  { task, colouring, held, random }: Canvas,
  cell: number,
  wished: number,
): Changes | null {
  const tried = Int16Array.from(colouring)
  tried[cell] = wished
  const fixed = tried.map((colour, at) => (held[at] === 1 || at === cell ? colour : FREE))
  const group = [...fixed.keys()].filter((at) => fixed[at] === FREE)
  const counts = countColours(tried, task.colours)
  if (!mendAlike({ ...task, fixed }, group, tried, counts, random, colouring)) return null
  return new Map([...tried.entries()].filter(([at, colour]) => colour !== colouring[at]))
}

/** The smallest set of changes that gives `cell` one of its options and leaves it and them without alike neighbours. */
function fewestChanges(
  { task, colouring, held }: Canvas,
  cell: number,
  options: readonly ColourOption[],
): Changes | null {
  const { neighbours, colours } = task
  const changed = new Map<number, number>()
  const colourOf = (at: number): number => changed.get(at) ?? colouring[at] ?? FREE
  const isLocked = (at: number): boolean => held[at] === 1 || changed.has(at)
  const counts = countColours(colouring, colours)
  const count = (colour: number, by: number): void => {
    if (colour !== FREE && colour < colours) counts[colour] = (counts[colour] ?? 0) + by
  }
  const put = (at: number, colour: number): void => {
    count(colouring[at] ?? FREE, -1)
    count(colour, 1)
    changed.set(at, colour)
  }
  const take = (at: number): void => {
    count(changed.get(at) ?? FREE, -1)
    count(colouring[at] ?? FREE, 1)
    changed.delete(at)
  }
  /** Cells that must change now: alike to one that has been changed, and free to. */
  const pressed = (): number[] => {
    const found = new Set<number>()
    for (const [at, colour] of changed)
      for (const other of neighbours[at] ?? [])
        if (!isLocked(other) && colourOf(other) === colour) found.add(other)
    return [...found]
  }
  let best: Map<number, number> | null = null
  let bestRank = Infinity
  let left: number = COLOUR_CONSTANTS.nearSteps
  const search = (budget: number): void => {
    if (left-- <= 0) return
    const waiting = pressed()
    if (waiting.length === 0) {
      const rank = counts.reduce((sum, many) => sum + many * many, 0)
      if (rank < bestRank) [best, bestRank] = [new Map(changed), rank]
      return
    }
    if (waiting.length > budget) return
    const next = waiting[0] ?? 0
    const barred = new Set((neighbours[next] ?? []).filter(isLocked).map(colourOf))
    for (let colour = 0; colour < colours; colour++) {
      if (barred.has(colour) || colour === colouring[next]) continue
      put(next, colour)
      search(budget - 1)
      take(next)
    }
  }
  for (let budget = 0; budget <= COLOUR_CONSTANTS.nearChanges && best === null && left > 0; budget++) {
    for (const { colour, cost } of options) {
      const isBarred =
        held[cell] !== 1 &&
        (neighbours[cell] ?? []).some((other) => held[other] === 1 && colouring[other] === colour)
      if (cost > budget || isBarred) continue
      put(cell, colour)
      search(budget - cost)
      take(cell)
    }
  }
  return best
}

/** The patch of two colours round a cell with its colours changed over (a Kempe chain); null where a part of it is held. */
function chainOf({ task, colouring, held }: Canvas, cell: number, from: number, to: number): Changes | null {
  if (from === FREE || from >= task.colours || to >= task.colours) return null
  const chain = new Map([[cell, to]])
  for (const [at] of chain) {
    for (const other of task.neighbours[at] ?? []) {
      const colour = colouring[other]
      if (chain.has(other) || (colour !== from && colour !== to)) continue
      if (held[other] === 1) return null
      chain.set(other, colour === from ? to : from)
    }
  }
  return chain
}

/** How much further apart the counts of the colours are than what is held asks for. */
function excess({ task, colouring, held }: Canvas): number {
  const counts = countColours(colouring, task.colours)
  const least = countColours(
    colouring.map((colour, cell) => (held[cell] === 1 ? colour : FREE)),
    task.colours,
  )
  const free = held.reduce((sum, isHeld) => sum + (isHeld === 1 ? 0 : 1), 0)
  return gapOf(counts) - gapOf(evenCounts(least, free))
}

const gapOf = (counts: readonly number[]): number => Math.max(...counts) - Math.min(...counts)

/** Cells by how many steps they lie from one, nearest first; those that cannot be reached come last. */
function outwardFrom(neighbours: ColourTask['neighbours'], cell: number): number[] {
  const seen = new Set([cell])
  for (const at of seen) for (const other of neighbours[at] ?? []) seen.add(other)
  neighbours.forEach((_, at) => seen.add(at))
  return [...seen]
}

/** Single cells, the nearest first, change from a colour that stands too often until counts are as even as they were. */
function evenNear(canvas: Canvas, cell: number, allowed: number): void {
  const { task, colouring, held, differs } = canvas
  if (excess(canvas) <= allowed) return
  const near = outwardFrom(task.neighbours, cell)
  while (excess(canvas) > allowed) {
    const counts = countColours(colouring, task.colours)
    const pairs = counts
      .flatMap((more, from) => counts.map((less, to) => ({ from, to, gap: more - less })))
      .filter(({ gap }) => gap >= 2)
      .sort((a, b) => b.gap - a.gap)
    const moved = pairs.some(({ from, to }) => {
      const found = near.find(
        (at) =>
          held[at] !== 1 &&
          colouring[at] === from &&
          at !== cell &&
          !(differs && (task.neighbours[at] ?? []).some((other) => colouring[other] === to)),
      )
      if (found !== undefined) colouring[found] = to
      return found !== undefined
    })
    if (!moved) return
  }
}
