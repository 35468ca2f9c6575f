/**
 * Exact search for a colouring without two alike neighbours: always the cell with the fewest colours left
 * (Brélaz' DSATUR), least-used colours first, with full backtracking. When it ends without an answer there
 * is none; when its steps run out it says so instead of hanging.
 */
import type { Random } from '../units/random'
import { FREE } from './graph'
import type { ColourTask } from './graph'

type SearchEnd = 'found' | 'impossible' | 'out-of-steps'

/** Limits beside the neighbours: whether a cell may take a colour, and what cells have taken. */
interface SearchRoom {
  readonly fits: (cell: number, colour: number) => boolean
  readonly add: (cell: number, colour: number, times: 1 | -1) => void
}

interface Choice {
  readonly cell: number
  readonly options: readonly number[]
  next: number
}

/** Where cells wait for a colour, by how many colours are barred to them; stale entries are dropped when they come up. */
export class Waiting {
  readonly #byBarred: number[][]
  #top = 0

  constructor(
    colours: number,
    private readonly isCurrent: (cell: number, barred: number) => boolean,
    private readonly random: Random,
  ) {
    this.#byBarred = Array.from({ length: colours + 1 }, () => [])
  }

  push(cell: number, barred: number): void {
    this.#byBarred[barred]?.push(cell)
    this.#top = Math.max(this.#top, barred)
  }

  /** A cell with the most colours barred, any of them; null when none waits. */
  take(): number | null {
    for (; this.#top >= 0; this.#top--) {
      const cells = this.#byBarred[this.#top] ?? []
      while (cells.length > 0) {
        const picked = this.random.below(cells.length)
        const cell = cells[picked] ?? 0
        cells[picked] = cells[cells.length - 1] ?? 0
        cells.pop()
        if (this.isCurrent(cell, this.#top)) return cell
      }
    }
    this.#top = 0
    return null
  }
}

/**
 * Colours one group of free cells in `colouring` (in place). `counts` are the uses of each colour so far and
 * are kept up to date, and limits kept where there is `room` for some. Unless 'found' is answered, the group is left free and the counts as they were.
 */
export function searchGroup(
  task: ColourTask,
  group: readonly number[],
  colouring: Int16Array,
  counts: number[],
  steps: number,
  random: Random,
  room?: SearchRoom,
): SearchEnd {
  const { neighbours, colours } = task
  const barredBy = new Uint16Array(group.length * colours)
  const barred = new Uint16Array(group.length)
  const place = new Map(group.map((cell, index) => [cell, index]))
  const usedHere = new Uint32Array(colours)
  const waiting = new Waiting(
    colours,
    (cell, many) => colouring[cell] === FREE && barred[place.get(cell) ?? 0] === many,
    random,
  )

  const bar = (cell: number, colour: number, change: 1 | -1): void => {
    const index = place.get(cell)
    if (index === undefined || colouring[cell] !== FREE) return
    const slot = index * colours + colour
    const before = barredBy[slot] ?? 0
    barredBy[slot] = before + change
    if (change === 1 ? before > 0 : before > 1) return
    barred[index] = (barred[index] ?? 0) + change
    waiting.push(cell, barred[index])
  }

  for (const cell of group) {
    for (const other of neighbours[cell] ?? []) {
      const colour = colouring[other] ?? FREE
      if (colour === FREE || colour >= colours) continue
      bar(cell, colour, 1)
      usedHere[colour] = (usedHere[colour] ?? 0) + 1
    }
    waiting.push(cell, barred[place.get(cell) ?? 0] ?? 0)
  }

  const assign = (cell: number, colour: number): void => {
    colouring[cell] = colour
    counts[colour] = (counts[colour] ?? 0) + 1
    usedHere[colour] = (usedHere[colour] ?? 0) + 1
    room?.add(cell, colour, 1)
    for (const other of neighbours[cell] ?? []) bar(other, colour, 1)
  }
  const release = (cell: number): void => {
    const colour = colouring[cell] ?? 0
    for (const other of neighbours[cell] ?? []) bar(other, colour, -1)
    colouring[cell] = FREE
    counts[colour] = (counts[colour] ?? 0) - 1
    usedHere[colour] = (usedHere[colour] ?? 0) - 1
    room?.add(cell, colour, -1)
  }

  /** Colours left for a cell; of those that nothing here uses yet one stands for all. */
  const optionsFor = (cell: number): number[] => {
    const index = place.get(cell) ?? 0
    const options: { colour: number; rank: number }[] = []
    let fresh: { colour: number; rank: number } | null = null
    for (let colour = 0; colour < colours; colour++) {
      if (barredBy[index * colours + colour] || room?.fits(cell, colour) === false) continue
      const option = { colour, rank: (counts[colour] ?? 0) + random.next() }
      // Colours with limits of their own do not stand for each other.
      if (room || usedHere[colour]) options.push(option)
      else if (fresh === null || option.rank < fresh.rank) fresh = option
    }
    if (fresh) options.push(fresh)
    return options.sort((a, b) => a.rank - b.rank).map((option) => option.colour)
  }

  const choices: Choice[] = []
  let left = steps
  for (;;) {
    const cell = waiting.take()
    if (cell === null) return 'found'
    choices.push({ cell, options: optionsFor(cell), next: 0 })
    for (;;) {
      const choice = choices.at(-1)
      if (!choice) return 'impossible'
      if (colouring[choice.cell] !== FREE) release(choice.cell)
      const colour = choice.options[choice.next++]
      if (colour === undefined || left-- <= 0) {
        const index = place.get(choice.cell) ?? 0
        waiting.push(choice.cell, barred[index] ?? 0)
        choices.pop()
        if (left >= 0) continue
        for (const { cell: held } of choices) if (colouring[held] !== FREE) release(held)
        return 'out-of-steps'
      }
      assign(choice.cell, colour)
      break
    }
  }
}
