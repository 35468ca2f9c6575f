/**
 * A pattern within limits: it stays as it was chosen, and only as many motifs take another colour as the counts
 * need. Which ones follows from where they stand alone, so that other counts move the difference and nothing else.
 */
import { solve } from 'yalps'
import type { Constraint } from 'yalps'
import { COLOUR_CONSTANTS } from './constants'
import type { CountTask } from './counts'

/** Where a group of cells stands. */
export interface Standing {
  readonly row: number
  readonly column: number
}

type Groups = readonly (readonly number[])[]

const sum = (numbers: readonly number[]): number => numbers.reduce((total, value) => total + value, 0)

const fraction = (value: number): number => value - Math.floor(value)

/** The root of x³ = x + 1: steps by its powers spread points over a plane as evenly as is known (from memory). */
const PLASTIC = 1.324717957244746

/** Who changes first: low numbers lie evenly over the map, however many of them are taken. */
const rankOf = ({ row, column }: Standing): number =>
  fraction(COLOUR_CONSTANTS.rankStart + row / PLASTIC + column / PLASTIC ** 2)

/** Who takes the first of several colours: as even, and independent of the rank. */
const turnOf = ({ row, column }: Standing): number => fraction(row * Math.SQRT2 + column * Math.sqrt(3))

/** In which order groups change, and in which order those that change are given to the colours that gain. */
interface Order {
  readonly changing: (one: number, other: number) => number
  readonly gaining: (one: number, other: number) => number
}

/** Groups in the order of their ranks. */
export function byRank(places: readonly Standing[]): (one: number, other: number) => number {
  const ranks = places.map(rankOf)
  return (one, other) => ranks[one]! - ranks[other]! || one - other
}

/** Spread evenly over the map. */
export function spreadOver(places: readonly Standing[]): Order {
  const by = (of: (place: Standing) => number) => {
    const ranks = places.map(of)
    return (one: number, other: number): number => ranks[one]! - ranks[other]! || one - other
  }
  return { changing: by(rankOf), gaining: by(turnOf) }
}

/** Whole rows first: from the end of one row on before the next is begun. */
export function rowAfterRow(places: readonly Standing[]): Order {
  const ranks = places.map(({ row }) => rankOf({ row, column: 0 }))
  const backwards = (one: number, other: number): number => ranks[one]! - ranks[other]! || other - one
  return { changing: backwards, gaining: backwards }
}

/**
 * The colours of groups that take `natural` ones but for what the counts of a task need: `counts` are groups of each
 * size by colour, as they were found for it.
 */
export function changeFew(
  natural: Int16Array,
  sizes: readonly number[],
  task: CountTask,
  counts: Groups,
  { changing, gaining }: Order,
): Int16Array {
  const colours = Int16Array.from(natural)
  const had = task.groups.map(() => task.wish.map(() => 0))
  const classOf = new Map(task.groups.map(({ size }, at) => [size, at]))
  const members: number[][][] = task.groups.map(() => task.wish.map(() => []))
  sizes.forEach((size, group) => {
    const at = classOf.get(size)
    if (at === undefined) return
    had[at]![natural[group]!]! += 1
    members[at]![natural[group]!]!.push(group)
  })
  const wanted = task.groups.length > 1 ? fewestMoves(task, had, counts) : counts
  task.groups.forEach((_, at) => {
    const [own, now] = [had[at]!, wanted[at]!]
    const moving = own.flatMap((many, colour) => {
      const surplus = many - (now[colour] ?? 0)
      return surplus > 0 ? members[at]![colour]!.sort(changing).slice(0, surplus) : []
    })
    const gains = now.flatMap((many, colour) =>
      new Array<number>(Math.max(0, many - (own[colour] ?? 0))).fill(colour),
    )
    moving.sort(gaining).forEach((group, place) => (colours[group] = gains[place]!))
  })
  return colours
}

/**
 * Of all ways to the same counts of cells with groups of several sizes, one with the fewest cells that change. Where
 * that is not found within its steps, the way that is known.
 */
function fewestMoves({ groups, wish }: CountTask, had: Groups, known: Groups): Groups {
  const cellsOf = (chosen: Groups, colour: number): number =>
    sum(groups.map(({ size }, at) => size * (chosen[at]?.[colour] ?? 0)))
  const variables = new Map<string, Map<string, number>>()
  const constraints = new Map<string, Constraint>()
  const integers = new Set<string>()
  wish.forEach((_, colour) => constraints.set(`cells ${colour}`, { equal: cellsOf(known, colour) }))
  groups.forEach(({ size, many }, at) => {
    constraints.set(`all ${at}`, { equal: many })
    wish.forEach((_, colour) => {
      const name = `${at} ${colour}`
      integers.add(name)
      // As many as there were stay for nothing; each one more is a change.
      constraints.set(name, { max: had[at]![colour]! })
      const terms: [string, number][] = [
        [`all ${at}`, 1],
        [`cells ${colour}`, size],
        [name, 1],
      ]
      variables.set(name, new Map(terms))
      variables.set(
        `more ${name}`,
        new Map([
          [name, -1],
          ['changed', size],
        ]),
      )
    })
  })
  const found = solve(
    { direction: 'minimize', objective: 'changed', constraints, variables, integers },
    { tolerance: 0, timeout: Infinity, maxIterations: COLOUR_CONSTANTS.nearBranches },
  )
  if (Number.isNaN(found.result)) return known
  const values = new Map(found.variables)
  const moved = groups.map((_, at) => wish.map((_, colour) => Math.round(values.get(`${at} ${colour}`) ?? 0)))
  const isSame =
    groups.every(({ many }, at) => sum(moved[at]!) === many) &&
    wish.every((_, colour) => cellsOf(moved, colour) === cellsOf(known, colour))
  return isSame ? moved : known
}
