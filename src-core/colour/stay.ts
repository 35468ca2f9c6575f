/**
 * Colours that stand already stay: what is new is coloured in, what was painted by hand is worked in cell by
 * cell with as few changes as possible, and only what cannot be had so is sought anew.
 */
import type { Random } from '../units/random'
import { evenOut } from './balance'
import { FREE, countColours } from './graph'
import type { ColourTask } from './graph'
import { recolour } from './near'
import type { ColourOption } from './near'
import { colourApart } from './no-two-alike'
import type { Colouring } from './no-two-alike'
import { scatter } from './scatter'

/** What there is to start from. */
interface Start {
  /** Colour of every cell as it stood, −1 where nothing stood. */
  readonly standing: Int16Array
  /** Cells that were painted and are no longer, with the colour that they had before. */
  readonly wiped: ReadonlyMap<number, number>
  /** The colours to choose from are others now: counts are evened out wherever that may be. */
  readonly isOtherChoice: boolean
}

/** Colours a map from what stands on it; `painted` are the fixed cells in the order in which they were painted. */
export function colourFrom(
  task: ColourTask,
  start: Start,
  painted: readonly number[],
  differs: boolean,
  random: Random,
): Colouring {
  const colouring = Int16Array.from(start.standing)
  // Where the brush has been, a colour may stand that is not to be chosen.
  colouring.forEach((colour, cell) => {
    if (colour >= task.colours && colour !== task.fixed[cell]) colouring[cell] = FREE
  })
  if (colouring.includes(FREE)) {
    const rest: ColourTask = { ...task, fixed: Int16Array.from(colouring) }
    colouring.set(differs ? colourApart(rest, random).colours : scatter(rest, random))
  }
  const held = new Uint8Array(colouring.length)
  for (const cell of painted) if (colouring[cell] === task.fixed[cell]) held[cell] = 1
  const canvas = { task, colouring, held, differs, random, isTroubled: false }
  for (const [cell, under] of start.wiped) {
    if (under >= task.colours) continue
    const options: ColourOption[] = [{ colour: under, cost: 0 }]
    for (let colour = 0; colour < task.colours; colour++)
      if (colour !== under) options.push({ colour, cost: 1 })
    recolour(canvas, cell, options)
  }
  for (const cell of painted) {
    if (held[cell] === 1) continue
    held[cell] = 1
    recolour(canvas, cell, [{ colour: task.fixed[cell] ?? FREE, cost: 0 }])
    colouring[cell] = task.fixed[cell] ?? FREE
  }
  if (!differs) {
    if (start.isOtherChoice) evenAnywhere(task, colouring, random)
    return { colours: colouring, outcome: 'perfect', troubled: [] }
  }
  const solved = colourApart(task, random, colouring)
  if (start.isOtherChoice && solved.outcome === 'perfect')
    evenOut(task, solved.colours, countColours(solved.colours, task.colours), random)
  return solved
}

/** Free cells by chance change from colours that stand too often, until counts are as even as they can be. */
function evenAnywhere(task: ColourTask, colouring: Int16Array, random: Random): void {
  const counts = countColours(colouring, task.colours)
  const free = random.shuffled([...colouring.keys()].filter((cell) => task.fixed[cell] === FREE))
  for (const cell of free) {
    const from = colouring[cell] ?? 0
    const to = counts.indexOf(Math.min(...counts))
    if ((counts[from] ?? 0) - (counts[to] ?? 0) < 2) continue
    colouring[cell] = to
    counts[from] = (counts[from] ?? 0) - 1
    counts[to] = (counts[to] ?? 0) + 1
  }
}
