/** Patterns that take colours in turn, within limits: a colour that is used up is left out, the rest goes on. */
import { countsWithin, excessOf, isWithinLimits } from './counts'
import { FREE } from './graph'
import { countTask, roomFor, roomWithin, tallied } from './limits'
import type { Limits, Proof, Room } from './limits'

/** Groups of cells with the colours that they take. */
export interface Filled extends Proof {
  /** Colour of each group. */
  readonly colours: Int16Array
}

const BOUNDLESS: Room = { fits: () => true, take: () => undefined }

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

/** Takes colours in turn while there is room; null where none fits any more. Groups of no cells use none up. */
function inTurn(sizes: readonly number[], sequence: readonly number[], room: Room): Int16Array | null {
  const colours = new Int16Array(sizes.length).fill(FREE)
  let next = 0
  for (const [group, size] of sizes.entries()) {
    let skipped = 0
    const colourAt = (): number => sequence[(next + skipped) % sequence.length] ?? 0
    while (size > 0 && skipped < sequence.length && !room.fits(colourAt(), size)) skipped++
    if (skipped === sequence.length) return null
    colours[group] = colourAt()
    if (size > 0) room.take(colourAt(), size)
    next += skipped + 1
  }
  return colours
}

/** Runs a sequence of colours through groups of `sizes` free cells, in their order. */
export function repeatWithin(
  sizes: readonly number[],
  sequence: readonly number[],
  limits: Limits | null,
): Filled {
  const colours = inTurn(sizes, sequence, limits ? roomWithin(limits) : BOUNDLESS)
  if (colours || !limits) return { colours: colours ?? new Int16Array(sizes.length), isLeast: true }
  // Taken as they come they run into a wall: which counts are to be had is found out first.
  const wished = inTurn(sizes, sequence, BOUNDLESS)!
  const wish = tallied(limits.most.length, wished, sizes)
  const task = countTask(limits, sizes, wish)
  const { groups, cells, isLeast } = countsWithin(task)
  // A pattern is not changed for nothing.
  if (!isLess(excessOf(limits, cells), excessOf(limits, wish))) return { colours: wished, isLeast }
  return { colours: inTurn(sizes, sequence, roomFor(task, groups)) ?? wished, isLeast }
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
  for (const [row, groups] of rows.entries()) {
    const isRoomy = (colour: number): boolean => (left[colour] ?? 0) >= (rowSizes[row] ?? 0)
    const turn = [...sequence.keys()].map((at) => sequence[(next + at) % sequence.length] ?? 0)
    const skipped = Math.max(0, turn.findIndex(isRoomy))
    next += skipped + 1
    const used = new Set<number>()
    for (const group of groups) {
      const size = sizes[group] ?? 0
      const order = [turn[skipped] ?? 0, ...turn]
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
