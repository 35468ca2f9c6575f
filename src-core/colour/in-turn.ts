/**
 * Patterns that take colours in turn, within limits: a colour that may stand less often than its turn comes keeps turns
 * spread evenly over all of them, the others go on in its place.
 */
import { countsWithin, excessOf, isWithinLimits } from './counts'
import { countTask, roomFor, tallied } from './limits'
import type { Limits, Proof } from './limits'

/** Groups of cells with the colours that they take. */
export interface Filled extends Proof {
  /** Colour of each group. */
  readonly colours: Int16Array
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** Tells turn after turn of a sequence which of them a colour keeps. */
class Turns {
  /** Parts of a turn that each colour has saved up: those kept lie in the middle of what they stand for. */
  readonly #saved = new Map<number, number>()

  constructor(private readonly sequence: readonly number[]) {}

  at(turn: number): number {
    return this.sequence[turn % this.sequence.length] ?? 0
  }

  /** Whether a colour keeps its turn, if each colour may have so many more of them. */
  isKept(turn: number, left: readonly number[]): boolean {
    const colour = this.at(turn)
    const turns = this.#turnsOf(colour, turn, this.#untilAllHad(turn, left))
    const saved = (this.#saved.get(colour) ?? 0.5) + (turns === 0 ? 0 : (left[colour] ?? 0) / turns)
    const isKept = saved >= 1 - 1e-9
    this.#saved.set(colour, isKept ? saved - 1 : saved)
    return isKept
  }

  /** Turns from one on until every colour had all that it may have. */
  #untilAllHad(turn: number, left: readonly number[]): number {
    const { length } = this.sequence
    const ahead = new Map<number, number[]>()
    for (let step = 0; step < length; step++) {
      const colour = this.at(turn + step)
      ahead.set(colour, [...(ahead.get(colour) ?? []), step])
    }
    let most = 0
    for (const [colour, steps] of ahead) {
      const more = Math.ceil((left[colour] ?? 0) - 1e-9) - 1
      if (more < 0) continue
      const last = Math.floor(more / steps.length) * length + (steps[more % steps.length] ?? 0)
      most = Math.max(most, last + 1)
    }
    return most
  }

  /** How many of some turns are of one colour. */
  #turnsOf(colour: number, turn: number, many: number): number {
    const { length } = this.sequence
    const whole = Math.floor(many / length) * this.sequence.filter((each) => each === colour).length
    const rest = Array.from({ length: many % length }, (_, step) => this.at(turn + step))
    return whole + rest.filter((each) => each === colour).length
  }
}

/**
 * Takes colours in turn so that each comes as often as was counted out for it: `counts` are groups of each size of a
 * task, by colour. Groups without a free cell take their turn and use none up.
 */
function inTurn(
  sizes: readonly number[],
  sequence: readonly number[],
  task: ReturnType<typeof countTask>,
  counts: readonly (readonly number[])[],
): Int16Array {
  const room = roomFor(task, counts)
  const left = task.wish.map((_, colour) => sum(counts.map((row) => row[colour] ?? 0)))
  const turns = new Turns(sequence)
  const colours = new Int16Array(sizes.length)
  let next = 0
  for (const [group, size] of sizes.entries()) {
    const round = [...sequence.keys()].map((step) => next + step)
    const fits = (turn: number): boolean => room.fits(turns.at(turn), size)
    const turn =
      size === 0
        ? next
        : (round.find((each) => fits(each) && turns.isKept(each, left)) ?? round.find(fits) ?? next)
    const colour = turns.at(turn)
    colours[group] = colour
    next = turn + 1
    if (size === 0) continue
    room.take(colour, size)
    left[colour] = (left[colour] ?? 0) - 1
  }
  return colours
}

/** Runs a sequence of colours through groups of `sizes` free cells, in their order. */
export function repeatWithin(
  sizes: readonly number[],
  sequence: readonly number[],
  limits: Limits | null,
): Filled {
  const wished = Int16Array.from(sizes, (_, group) => sequence[group % sequence.length] ?? 0)
  if (!limits) return { colours: wished, isLeast: true }
  const wish = tallied(limits.most.length, wished, sizes)
  if (isWithinLimits(limits, wish)) return { colours: wished, isLeast: true }
  const task = countTask(limits, sizes, wish)
  const { groups, cells, isLeast } = countsWithin(task)
  // A pattern is not changed for nothing.
  if (!isLess(excessOf(limits, cells), excessOf(limits, wish))) return { colours: wished, isLeast }
  return { colours: inTurn(sizes, sequence, task, groups), isLeast }
}

/**
 * Runs a sequence of colours through rows, each row in one; `rows` are the groups of each. Where whole rows go beyond
 * the limits and single cells do not, or less far, rows are broken; answers how many.
 */
export function rowsWithin(
  sizes: readonly number[],
  rows: readonly (readonly number[])[],
  sequence: readonly number[],
  limits: Limits | null,
): Filled & { readonly broken: number } {
  const rowSizes = rows.map((groups) => sum(groups.map((group) => sizes[group] ?? 0)))
  const whole = repeatWithin(rowSizes, sequence, limits)
  const spread = new Int16Array(sizes.length)
  rows.forEach((groups, row) => {
    for (const group of groups) spread[group] = whole.colours[row] ?? 0
  })
  const done = { colours: spread, isLeast: whole.isLeast, broken: 0 }
  if (!limits) return done
  const cells = tallied(limits.most.length, spread, sizes)
  if (isWithinLimits(limits, cells)) return done
  const task = countTask(limits, sizes, cells)
  const single = countsWithin(task)
  if (!isLess(excessOf(limits, single.cells), excessOf(limits, cells)))
    return { ...done, isLeast: single.isLeast }
  const room = roomFor(task, single.groups)
  const colours = new Int16Array(sizes.length)
  let next = 0
  let broken = 0
  const left = [...single.cells]
  const turns = new Turns(sequence)
  const mean = sum(rowSizes) / Math.max(1, rowSizes.filter((size) => size > 0).length)
  for (const [row, groups] of rows.entries()) {
    const whole = left.map((cells) => cells / mean)
    const round = [...sequence.keys()].map((step) => next + step)
    const isRoomy = (each: number): boolean => (left[turns.at(each)] ?? 0) >= (rowSizes[row] ?? 0)
    const turn =
      round.find((each) => isRoomy(each) && turns.isKept(each, whole)) ?? round.find(isRoomy) ?? next
    next = turn + 1
    const used = new Set<number>()
    for (const group of groups) {
      const size = sizes[group] ?? 0
      const order = [turn, ...round].map((each) => turns.at(each))
      const colour = size === 0 ? order[0] : order.find((each) => room.fits(each, size))
      colours[group] = colour ?? 0
      if (size === 0 || colour === undefined) continue
      used.add(colour)
      room.take(colour, size)
      left[colour] = (left[colour] ?? 0) - size
    }
    if (used.size > 1) broken++
  }
  return { colours, isLeast: single.isLeast, broken }
}

/** Whether one excess is smaller than another: cells first, then grams. */
function isLess(one: ReturnType<typeof excessOf>, other: ReturnType<typeof excessOf>): boolean {
  const cells = sum(one.cells) - sum(other.cells)
  return cells < 0 || (cells === 0 && sum(one.grams) < sum(other.grams) - 1e-6)
}

/** Bands of a shade: `bands` are the colours from one end to the other, `along` where each group lies, 0 to 1. */
export function shadeWithin(
  sizes: readonly number[],
  mixed: readonly number[],
  bands: readonly number[],
  limits: Limits | null,
): Filled {
  const natural = mixed.map((value) => Math.min(bands.length - 1, Math.max(0, Math.floor(value))))
  const colours = Int16Array.from(natural, (band) => bands[band] ?? 0)
  if (!limits) return { colours, isLeast: true }
  const wish = tallied(limits.most.length, colours, sizes)
  if (isWithinLimits(limits, wish)) return { colours, isLeast: true }
  const task = countTask(limits, sizes, wish)
  const { groups, cells, isLeast } = countsWithin(task)
  if (!isLess(excessOf(limits, cells), excessOf(limits, wish))) return { colours, isLeast }
  // A colour of several bands has as much of each as it would have, and what is over of the last.
  const left = new Map(task.groups.map(({ size }, at) => [size, [...(groups[at] ?? [])]]))
  const many = new Map<number, number[]>()
  for (const { size } of task.groups) {
    const had = bands.map(
      (_, band) => natural.filter((each, at) => each === band && sizes[at] === size).length,
    )
    const row = left.get(size) ?? []
    many.set(
      size,
      bands.map((colour, band) => {
        const isLast = bands.lastIndexOf(colour) === band
        const taken = Math.min(row[colour] ?? 0, isLast ? Infinity : (had[band] ?? 0))
        row[colour] = (row[colour] ?? 0) - taken
        return taken
      }),
    )
  }
  const order = [...mixed.keys()].sort((a, b) => (mixed[a] ?? 0) - (mixed[b] ?? 0) || a - b)
  for (const group of order) {
    const row = many.get(sizes[group] ?? 0)
    const band = row?.findIndex((count) => count > 0) ?? -1
    if (!row || band < 0) continue
    row[band] = (row[band] ?? 0) - 1
    colours[group] = bands[band] ?? 0
  }
  return { colours, isLeast }
}
