/** What changed to keep limits and need not have: it takes the colours back that stood. */
import { FREE, countColours, sizeOf } from './graph'
import type { ColourTask } from './graph'
import { NO_GRAMS, weightOf } from './least-beyond'
import type { Limits } from './limits'

/** Pairs of patches are tried up to so many patches (our choice). */
const MOST_PATCHES = 150

/**
 * Gives patches of changed cells, and single ones, the colours of `stood` back in place, as long as limits are passed
 * no further by it. Both colourings keep the same neighbours apart; whatever changed with none of its neighbours may
 * change back without them.
 */
export function comeBackWithin(
  task: ColourTask,
  stood: Int16Array,
  colours: Int16Array,
  limits: Limits,
): void {
  const { neighbours, fixed } = task
  const cells = countColours(
    colours.map((colour, cell) => (fixed[cell] === FREE ? colour : FREE)),
    task.colours,
    task.sizes,
  )
  let weight = weightOf(limits, cells)
  const swap = (patch: readonly number[], to: Int16Array, from: Int16Array): void => {
    for (const cell of patch) {
      cells[from[cell]!]! -= sizeOf(task, cell)
      cells[to[cell]!]! += sizeOf(task, cell)
    }
  }
  /** Changes patches back if limits allow it. */
  const isBack = (...patches: readonly (readonly number[])[]): boolean => {
    for (const patch of patches) swap(patch, stood, colours)
    const now = weightOf(limits, cells)
    if (now > weight + NO_GRAMS) {
      for (const patch of patches) swap(patch, colours, stood)
      return false
    }
    weight = now
    for (const patch of patches) for (const cell of patch) colours[cell] = stood[cell]!
    return true
  }
  const isChanged = (cell: number): boolean => fixed[cell] === FREE && colours[cell] !== stood[cell]
  const patchesNow = (): number[][] => {
    const seen = new Set<number>()
    return [...colours.keys()].flatMap((start) => {
      if (seen.has(start) || !isChanged(start)) return []
      const patch = [start]
      seen.add(start)
      for (const cell of patch)
        for (const other of neighbours[cell] ?? [])
          if (!seen.has(other) && isChanged(other)) {
            seen.add(other)
            patch.push(other)
          }
      return [patch]
    })
  }
  for (let isMoving = true; isMoving;) {
    const patches = patchesNow().sort((a, b) => b.length - a.length)
    const left = patches.filter((patch) => !isBack(patch))
    isMoving = left.length < patches.length
    for (const cell of left.flat()) {
      const isAlike = (neighbours[cell] ?? []).some((other) => colours[other] === stood[cell])
      if (!isAlike && isBack([cell])) isMoving = true
    }
    if (isMoving || left.length > MOST_PATCHES) continue
    for (const [at, one] of left.entries())
      for (const other of left.slice(at + 1))
        if (isChanged(one[0]!) && isChanged(other[0]!) && isBack(one, other)) isMoving = true
  }
}
