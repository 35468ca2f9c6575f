/**
 * Evens out how often each colour stands without making two neighbours alike: single cells change sides
 * where they may, otherwise the two colours of a connected patch change places (a Kempe chain).
 */
import type { Random } from '../units/random'
import { COLOUR_CONSTANTS } from './constants'
import { FREE, sizeOf } from './graph'
import type { ColourTask } from './graph'

/** Patches of the two colours that touch no fixed cell, with how many cells of `from` they hold beyond `to`. */
function patches(task: ColourTask, colouring: Int16Array, from: number, to: number) {
  const seen = new Uint8Array(colouring.length)
  const found: { cells: number[]; surplus: number }[] = []
  for (let start = 0; start < colouring.length; start++) {
    if (seen[start] || (colouring[start] !== from && colouring[start] !== to)) continue
    const cells = [start]
    seen[start] = 1
    let surplus = 0
    let movable = true
    for (let index = 0; index < cells.length; index++) {
      const cell = cells[index] ?? 0
      surplus += colouring[cell] === from ? sizeOf(task, cell) : -sizeOf(task, cell)
      if (task.fixed[cell] !== FREE) movable = false
      for (const other of task.neighbours[cell] ?? []) {
        if (seen[other] || (colouring[other] !== from && colouring[other] !== to)) continue
        seen[other] = 1
        cells.push(other)
      }
    }
    if (movable && surplus > 0) found.push({ cells, surplus })
  }
  return found
}

/** Moves single cells from `from` to `to`, up to `wanted` of them; answers how many moved. */
function moveSingles(
  task: ColourTask,
  colouring: Int16Array,
  from: number,
  to: number,
  wanted: number,
  random: Random,
): number {
  const movable = (cell: number): boolean =>
    colouring[cell] === from &&
    task.fixed[cell] === FREE &&
    !(task.neighbours[cell] ?? []).some((other) => colouring[other] === to)
  const candidates: number[] = []
  for (let cell = 0; cell < colouring.length; cell++) if (movable(cell)) candidates.push(cell)
  let moved = 0
  for (const cell of random.shuffled(candidates)) {
    if (moved === wanted) break
    if (moved + sizeOf(task, cell) > wanted || !movable(cell)) continue
    colouring[cell] = to
    moved += sizeOf(task, cell)
  }
  return moved
}

/** Swaps patches of two colours, largest surplus first, without overshooting `wanted`; answers the shift. */
function swapPatches(
  task: ColourTask,
  colouring: Int16Array,
  from: number,
  to: number,
  wanted: number,
): number {
  let shifted = 0
  const sorted = patches(task, colouring, from, to).sort((a, b) => b.surplus - a.surplus)
  for (const { cells, surplus } of sorted) {
    if (surplus > wanted - shifted) continue
    for (const cell of cells) colouring[cell] = colouring[cell] === from ? to : from
    shifted += surplus
    if (shifted === wanted) break
  }
  if (shifted > 0 || wanted < 1) return shifted
  // All patches are too large to stop at the middle: the smallest still helps if it lands nearer to it.
  const smallest = sorted.at(-1)
  if (!smallest || smallest.surplus >= 2 * wanted) return 0
  for (const cell of smallest.cells) colouring[cell] = colouring[cell] === from ? to : from
  return smallest.surplus
}

/**
 * Makes the counts of a colouring without alike neighbours as even as these moves can, in place. `counts`
 * are kept up to date. The work is bounded by rounds, never by luck.
 */
export function evenOut(task: ColourTask, colouring: Int16Array, counts: number[], random: Random): void {
  const { colours } = task
  const shift = (from: number, to: number, many: number): void => {
    counts[from] = (counts[from] ?? 0) - many
    counts[to] = (counts[to] ?? 0) + many
  }
  let sideways = colours * 2
  for (let round = 0; round < COLOUR_CONSTANTS.balanceRounds; round++) {
    const pairs: { from: number; to: number; gap: number }[] = []
    for (let from = 0; from < colours; from++) {
      for (let to = 0; to < colours; to++) {
        const gap = (counts[from] ?? 0) - (counts[to] ?? 0)
        if (gap >= 1) pairs.push({ from, to, gap })
      }
    }
    pairs.sort((a, b) => b.gap - a.gap)
    if ((pairs[0]?.gap ?? 0) < 2) return
    const improved = pairs
      .filter((pair) => pair.gap >= 2)
      .some(({ from, to, gap }) => {
        const wanted = Math.floor(gap / 2)
        const moved =
          moveSingles(task, colouring, from, to, wanted, random) ||
          swapPatches(task, colouring, from, to, wanted)
        shift(from, to, moved)
        return moved > 0
      })
    if (improved) continue
    // No direct way down: step sideways between two colours one apart, which may open one.
    const level = random.shuffled(pairs.filter((pair) => pair.gap === 1))
    const stepped =
      sideways-- > 0 &&
      level.some(({ from, to }) => {
        const moved = moveSingles(task, colouring, from, to, 1, random)
        shift(from, to, moved)
        return moved > 0
      })
    if (!stepped) return
  }
}
