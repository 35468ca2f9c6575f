/** Colours by chance, in even numbers. */
import type { Random } from '../units/random'
import { FREE, countColours, evenCounts } from './graph'
import type { ColourTask } from './graph'

/** Free cells take colours in random places, with counts as even as what is painted allows. */
export function scatter(task: ColourTask, random: Random): Int16Array {
  const painted = countColours(task.fixed, task.colours)
  const free: number[] = []
  task.fixed.forEach((colour, cell) => {
    if (colour === FREE) free.push(cell)
  })
  const even = evenCounts(painted, free.length)
  const bag = even.flatMap((count, colour) => new Array<number>(count - (painted[colour] ?? 0)).fill(colour))
  const colouring = Int16Array.from(task.fixed)
  random.shuffled(bag).forEach((colour, index) => {
    const cell = free[index]
    if (cell !== undefined) colouring[cell] = colour
  })
  return colouring
}
