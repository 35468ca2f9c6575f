/**
 * M46: how often each colour may stand, by a small integer program. First as little as possible beyond the limits, then the
 * counts nearest those that are wished. Exact as long as its steps last; they are counted, never timed.
 */
import { solve } from 'yalps'
import type { Constraint, Model } from 'yalps'
import { COLOUR_CONSTANTS } from './constants'

/** What a yarn has left for the free cells, and what one cell of each colour takes of it, both in grams. */
export interface YarnLimit {
  readonly left: number
  readonly each: readonly number[]
}

interface Group {
  readonly size: number
  readonly many: number
  /** The colours that they may take; left out: all. */
  readonly colours?: readonly number[]
}

export interface CountTask {
  /** Cells that take one colour together: how many such groups there are of each size. */
  readonly groups: readonly Group[]
  /** The most cells of each colour; Infinity where there is no limit. */
  readonly most: readonly number[]
  /** Of colours that share one limit, the place in `most` where it stands; left out: each its own. */
  readonly shares?: readonly number[] | undefined
  readonly yarns: readonly YarnLimit[]
  /** The counts to come near to, as the sum of squares. */
  readonly wish: readonly number[]
}

export interface Counts {
  /** Groups of each size by colour. */
  readonly groups: readonly (readonly number[])[]
  /** Cells of each colour. */
  readonly cells: readonly number[]
  /** Whether no counts whatever go less far beyond the limits. */
  readonly isLeast: boolean
}

/** What a count goes beyond its limits: cells by limit, which each colour has one of, and grams by yarn. */
export interface Excess {
  readonly cells: readonly number[]
  readonly grams: readonly number[]
}

/** Grams that a rounding error may make (a millionth of a gram is no yarn). */
const NO_GRAMS = 1e-6

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

type Limiting = Pick<CountTask, 'most' | 'yarns' | 'shares'>

/** Cells that each limit counts. */
const shared = ({ most, shares }: Limiting, cells: readonly number[]): readonly number[] => {
  if (!shares) return cells
  const together = most.map(() => 0)
  cells.forEach((count, colour) => (together[shares[colour]!]! += count))
  return together
}

/** How far counts of cells go beyond the limits. */
export function excessOf(limits: Limiting, cells: readonly number[]): Excess {
  const beyond = (value: number): number => (value > NO_GRAMS ? value : 0)
  return {
    cells: shared(limits, cells).map((count, at) => Math.max(0, count - (limits.most[at] ?? Infinity))),
    grams: limits.yarns.map(({ left, each }) =>
      beyond(sum(cells.map((count, colour) => count * (each[colour] ?? 0))) - left),
    ),
  }
}

/** Whether counts keep to the limits. */
export const isWithinLimits = (limits: Limiting, cells: readonly number[]): boolean => {
  const { cells: over, grams } = excessOf(limits, cells)
  return sum(over) === 0 && sum(grams) === 0
}

/** What a step costs that holds counts against their limits: more colours and yarns are more to look through. */
export const stepCost = ({ most, yarns }: Pick<Limiting, 'most' | 'yarns'>): number =>
  Math.max(1, Math.floor((most.length * yarns.length) / COLOUR_CONSTANTS.looksPerStep))

const squares = (cells: readonly number[], wish: readonly number[]): number =>
  sum(cells.map((count, colour) => (count - (wish[colour] ?? 0)) ** 2))

/** A program of more than this costs too much a step, and takes too many. */
const MOST_EXACT = 4

/** Counts that keep to the limits as far as can be, and come nearest to the wish among those. */
export function countsWithin(task: CountTask): Counts {
  const wished = byDescent(task, fillUp(task))
  if (isWithinLimits(task, cellsOf(task, wished)) && isSimple(task)) return answer(task, wished, true)
  // So much is not worked out exactly.
  if (stepCost(task) > MOST_EXACT) return answer(task, wished, false)
  const program = new Program(task)
  const isLeast = program.minimise('over') && program.minimise('short')
  const start = program.groups ?? wished
  const even = byDescent(task, start)
  if (program.groups) program.approach(even)
  const best =
    program.groups && squaresOf(task, program.groups) < squaresOf(task, even) ? program.groups : even
  return answer(task, best, isLeast)
}

/** The colours that a group may take. */
const coloursOf = ({ groups, wish }: CountTask, at: number): readonly number[] =>
  groups[at]!.colours ?? [...wish.keys()]

/** Groups of one size: giving each to the colour that lacks most is the best there is, if limits allow it. */
const isSimple = ({ groups }: CountTask): boolean => groups.filter(({ many }) => many > 0).length <= 1

const squaresOf = (task: CountTask, groups: readonly (readonly number[])[]): number =>
  squares(cellsOf(task, groups), task.wish)

const cellsOf = ({ groups, wish }: CountTask, chosen: readonly (readonly number[])[]): number[] =>
  wish.map((_, colour) => sum(groups.map(({ size }, at) => size * (chosen[at]?.[colour] ?? 0))))

const answer = (task: CountTask, groups: readonly (readonly number[])[], isLeast: boolean): Counts => ({
  groups,
  cells: cellsOf(task, groups),
  isLeast,
})

/** Gives group after group, the largest first, to the colour that lacks most and has room. */
function fillUp(task: CountTask): number[][] {
  const { groups, most, shares, wish } = task
  const cells = wish.map(() => 0)
  const chosen = groups.map(() => wish.map(() => 0))
  const order = [...groups.keys()].sort((a, b) => groups[b]!.size - groups[a]!.size)
  for (const at of order) {
    const { size, many } = groups[at]!
    const colours = coloursOf(task, at)
    for (let given = 0; given < many; given++) {
      let best = colours[0] ?? 0
      let bestRank = -Infinity
      const taken = shared(task, cells)
      for (const colour of colours) {
        const limit = shares?.[colour] ?? colour
        const isFull = taken[limit]! + size > most[limit]!
        const rank = wish[colour]! - cells[colour]! - (isFull ? 1e9 : 0)
        if (rank > bestRank) [best, bestRank] = [colour, rank]
      }
      cells[best]! += size
      chosen[at]![best]! += 1
    }
  }
  return chosen
}

/**
 * Single groups, and pairs of them, change colour as long as the counts come nearer to the wish and go no further
 * beyond the limits than they did.
 */
function byDescent(task: CountTask, start: readonly (readonly number[])[]): number[][] {
  const { groups, wish } = task
  const chosen = start.map((row) => [...row])
  const cells = cellsOf(task, chosen)
  const before = excessOf(task, cells)
  const isNoWorse = (): boolean => {
    const now = excessOf(task, cells)
    return sum(now.cells) <= sum(before.cells) && sum(now.grams) <= sum(before.grams) + NO_GRAMS
  }
  const shift = (at: number, from: number, to: number, many: number): void => {
    chosen[at]![from]! -= many
    chosen[at]![to]! += many
    cells[from]! -= many * groups[at]!.size
    cells[to]! += many * groups[at]!.size
  }
  /** Makes one change if it helps. */
  const isBetter = (moves: readonly (readonly [number, number, number])[], many: number): boolean => {
    const old = squares(cells, wish)
    for (const [at, from, to] of moves) shift(at, from, to, many)
    const isPossible = moves.every(([at, from]) => chosen[at]![from]! >= 0)
    if (isPossible && squares(cells, wish) < old - NO_GRAMS && isNoWorse()) return true
    for (const [at, from, to] of moves) shift(at, to, from, many)
    return false
  }
  const moves: (readonly [number, number, number])[] = []
  groups.forEach((_, at) => {
    const colours = coloursOf(task, at)
    for (const from of colours) for (const to of colours) if (from !== to) moves.push([at, from, to])
  })
  const largest = Math.max(1, ...groups.map(({ many }) => many))
  const cost = stepCost(task)
  let left: number = Math.floor(COLOUR_CONSTANTS.countSteps / cost)
  for (let many = 2 ** Math.floor(Math.log2(largest)); many >= 1; many = Math.floor(many / 2)) {
    for (let isMoving = true; isMoving && left > 0;) {
      isMoving = false
      for (const move of moves) if (left-- > 0 && isBetter([move], many)) isMoving = true
      if (isMoving || many > 1) continue
      for (const one of moves)
        for (const other of moves) if (left-- > 0 && isBetter([one, other], 1)) isMoving = true
    }
  }
  return chosen
}

type Goal = 'over' | 'short' | 'far'

/** The integer program of a task, one aim after the other. */
class Program {
  groups: number[][] | null = null
  readonly #variables = new Map<string, Map<string, number>>()
  readonly #constraints = new Map<string, Constraint>()
  readonly #integers = new Set<string>()

  constructor(private readonly task: CountTask) {
    const { groups, most, shares, yarns } = task
    groups.forEach(({ size, many }, at) => {
      this.#constraints.set(`all ${at}`, { equal: many })
      coloursOf(task, at).forEach((colour) => {
        const name = `${at} ${colour}`
        const terms: [string, number][] = [
          [`all ${at}`, 1],
          [`most ${shares?.[colour] ?? colour}`, size],
          ...yarns.map(({ each }, yarn): [string, number] => [`yarn ${yarn}`, size * (each[colour] ?? 0)]),
        ]
        this.#variables.set(name, new Map(terms))
        this.#integers.add(name)
      })
    })
    most.forEach((limit, colour) => {
      if (limit === Infinity) return
      this.#constraints.set(`most ${colour}`, { max: limit })
      this.#variables.set(
        `over ${colour}`,
        new Map([
          [`most ${colour}`, -1],
          ['over', 1],
        ]),
      )
    })
    yarns.forEach(({ left }, yarn) => {
      this.#constraints.set(`yarn ${yarn}`, { max: left })
      this.#variables.set(
        `short ${yarn}`,
        new Map([
          [`yarn ${yarn}`, -1],
          ['short', 1],
        ]),
      )
    })
  }

  /** Makes one sum as small as can be and keeps it there; whether that was proved. */
  minimise(goal: Goal, branches: number = COLOUR_CONSTANTS.countBranches): boolean {
    const model: Model = {
      direction: 'minimize',
      objective: goal,
      constraints: this.#constraints,
      variables: this.#variables,
      integers: this.#integers,
    }
    const { status, result, variables } = solve(model, {
      tolerance: 0,
      timeout: Infinity,
      maxIterations: branches,
    })
    if (Number.isNaN(result)) return false
    const found = new Map(variables)
    this.groups = this.task.groups.map((_, at) =>
      this.task.wish.map((_, colour) => Math.round(found.get(`${at} ${colour}`) ?? 0)),
    )
    this.#constraints.set(goal, { max: result + NO_GRAMS / 10 })
    return status === 'optimal'
  }

  /** Looks for counts nearer to the wish than `best`: squares are drawn as lines through neighbouring numbers. */
  approach(best: readonly (readonly number[])[]): void {
    const { task } = this
    const { wish } = task
    const drawn = new Set<string>()
    const draw = (colour: number, from: number): void => {
      const name = `line ${colour} ${from}`
      if (from < 0 || drawn.has(name)) return
      drawn.add(name)
      const at = (count: number): number => (count - wish[colour]!) ** 2
      const slope = at(from + 1) - at(from)
      // slope·count − far ≤ slope·from − at(from)
      this.#constraints.set(name, { max: slope * from - at(from) })
      task.groups.forEach(({ size }, group) =>
        this.#variables.get(`${group} ${colour}`)?.set(name, slope * size),
      )
      this.#variables.get(`far ${colour}`)?.set(name, -1)
    }
    wish.forEach((_, colour) => this.#variables.set(`far ${colour}`, new Map([['far', 1]])))
    let groups = best
    for (let round = 0; round < COLOUR_CONSTANTS.nearRounds; round++) {
      const before = drawn.size
      cellsOf(task, groups).forEach((count, colour) => {
        draw(colour, count - 1)
        draw(colour, count)
      })
      if (drawn.size === before) return
      this.#constraints.delete('far')
      if (!this.minimise('far', COLOUR_CONSTANTS.nearBranches)) return
      groups = this.groups ?? groups
    }
  }
}
