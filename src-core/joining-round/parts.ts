/**
 * What is other than written where a motif is joined, place by place: what a round that cannot be told stitch by
 * stitch has instead, and what the map says of all joins of a motif.
 */
import { ordinal } from '../figures/words'
import type { Anchor, MotifAccount } from '../../shared-types/plan'
import type { Terms } from '../../shared-types/project'
import { listOf } from '../joins/words'
import type { WorkedElement, WorkedRound } from '../notation/worked'
import { stitchAbbreviation } from '../stitches/terms'
import { phrasesOf, written } from './fold'
import type { ChainStyle } from './fold'
import { partedBy, withJoins } from './joined-steps'
import type { JoinWords } from './joined-steps'
import { several } from './words'

/** What kind of place it is, and how it is called. */
export type PlaceKind = 'corner' | 'petal' | 'side' | 'shoulder' | 'edge'

/** A join and where it falls in the round. */
export interface LocatedJoin {
  readonly place: PlaceKind
  /** Its petal, corner or side, counted from the start. */
  readonly number: number
  /** What stands there; null where the round has nothing to join at. */
  readonly element: WorkedElement | null
  readonly join: JoinWords
}

export interface PartsSetting {
  readonly round: WorkedRound
  /** Elements at tips or corners, in the order worked. */
  readonly leading: readonly WorkedElement[]
  /** Indices of chains that a tall stitch ends. */
  readonly closed: ReadonlySet<number>
  readonly terms: Terms
  readonly chains: ChainStyle
}

export function placeKind({ shape }: Pick<MotifAccount, 'shape'>, { kind }: Anchor): PlaceKind {
  if (shape !== 'petals' && shape !== 'straight') return 'edge'
  if (kind === 'side' || kind === 'valley') return 'side'
  if (kind === 'shoulder') return 'shoulder'
  return shape === 'straight' ? 'corner' : 'petal'
}

/** What is done at one place. */
interface Part {
  readonly place: PlaceKind
  readonly number: number
  readonly shared: boolean
  /** Position among those of its name, along the side or in the round; null where the place alone tells which it is. */
  readonly at: number | null
  /** "dc", "ch 2". */
  readonly name: string
  /** The stitch is worked, and the join behind it. */
  readonly stays: boolean
  /** "ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1". */
  readonly done: string
}

function partOf({ place, number, element, join }: LocatedJoin, setting: PartsSetting): Part {
  const { terms, closed, chains } = setting
  const { shared } = join
  const slip = stitchAbbreviation('sl st', terms)
  if (!element) {
    const done = `${slip} in matching place of neighbour`
    return { ...{ place, number, shared, at: null, name: '', stays: false }, done }
  }
  const { stays } = partedBy(element, join, closed.has(element.index))
  const step = stays
    ? ({ type: 'stitch', count: 1, name: '', place: null, whole: false, elements: [element] } as const)
    : ({ type: 'chain', count: element.count, elements: [element] } as const)
  const steps = withJoins([step], new Map([[element.index, join]]), closed, terms) ?? []
  const words = written(phrasesOf(stays ? steps.slice(1) : steps, chains))
  const isAt = place === 'side' || place === 'shoulder' || place === 'edge' || stays
  return {
    ...{ place, number, shared, stays },
    at: isAt ? positionOf(element, place, setting) : null,
    name: nameOf(element, setting),
    done: shared ? words.replace(/\bin joined .+? of neighbour/, 'in the same place as their join') : words,
  }
}

function nameOf(element: WorkedElement, { terms, chains }: PartsSetting): string {
  if (element.role === 'picot') return 'picot'
  if (element.role === 'space')
    return phrasesOf([{ type: 'chain', count: element.count, elements: [] }], chains)[0]!
  return stitchAbbreviation(element.countsAs ?? element.stitch, terms)
}

/** Which one of its name it is: along a side from the corner before it, else from the beginning of the round. */
function positionOf(element: WorkedElement, place: PlaceKind, setting: PartsSetting): number {
  const { elements } = setting.round
  const before = setting.leading.findLast(({ index }) => index < element.index) ?? setting.leading.at(-1)
  const from = place === 'side' || place === 'shoulder' ? (before?.index ?? -1) : -1
  const name = nameOf(element, setting)
  const behind = (index: number): number => (index - from - 1 + elements.length) % elements.length
  const isCounted = (each: WorkedElement): boolean => each.standing || isLoop(each)
  return elements.filter(
    (each) =>
      isCounted(each) && nameOf(each, setting) === name && behind(each.index) <= behind(element.index),
  ).length
}

const isLoop = ({ role }: WorkedElement): boolean => role === 'space' || role === 'picot'

const unique = (numbers: readonly number[]): number[] => [...new Set(numbers)].sort((a, b) => a - b)

/** "at corners 2 and 3", "along side 3". */
function placeWords(place: PlaceKind, numbers: readonly number[]): string {
  if (place === 'edge') return ''
  if (place === 'shoulder') return `at the shoulders of ${several('petal', numbers)}`
  return `${place === 'side' ? 'along' : 'at'} ${several(place, numbers)}`
}

const GENERAL: Readonly<Record<PlaceKind, string>> = {
  corner: 'at corners',
  petal: 'at petals',
  side: 'along sides',
  shoulder: 'at the shoulders of petals',
  edge: '',
}

/** "after the 8th, 16th and 24th dc, drop lp, …", "instead of the ch 2 work: ch 1, sl st …". */
function doneWords({ place, name, stays, done }: Part, positions: readonly number[]): string {
  if (name === '') return done
  const of = place === 'side' ? ' of the side' : place === 'shoulder' ? '' : ' of the round'
  const which = positions.length > 0 ? `the ${listOf(positions.map(ordinal))} ${name}${of}` : `the ${name}`
  return stays ? `after ${which}, ${done}` : `instead of ${which} work: ${done}`
}

const positionsOf = (parts: readonly Part[]): number[] =>
  unique(parts.flatMap(({ at }) => (at === null ? [] : [at])))

/** Parts with the same key together, in the order in which they come. */
function grouped(parts: readonly Part[], keyOf: (part: Part) => string): Part[][] {
  const groups = new Map<string, Part[]>()
  for (const part of parts) groups.set(keyOf(part), [...(groups.get(keyOf(part)) ?? []), part])
  return [...groups.values()]
}

const told = (words: readonly string[]): string => words.filter((each) => each !== '').join(', ')

/** "at corners 2 and 3, instead of the ch 2 work: ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1; along side 2, …" */
export function partsWords(joins: readonly LocatedJoin[], setting: PartsSetting): string {
  const alike = ({ place, name, stays, shared, done }: Part): string =>
    JSON.stringify([place, name, stays, shared, done])
  const parts = joins.map((each) => partOf(each, setting)).sort((a, b) => a.number - b.number)
  return grouped(parts, alike)
    .flatMap((group) => {
      const isCounted = group[0]!.place === 'side' || group[0]!.place === 'shoulder'
      // Sides that have their joins at the same stitches are told together.
      const bySide = isCounted ? grouped(group, ({ number }) => String(number)) : [group]
      const together = new Map<string, Part[]>()
      for (const side of bySide) {
        const key = positionsOf(side).join(' ')
        together.set(key, [...(together.get(key) ?? []), ...side])
      }
      return [...together.values()]
    })
    .map((group) => {
      const [first] = group
      const where = placeWords(first!.place, unique(group.map(({ number }) => number)))
      const others = first!.shared ? 'where others are joined already' : ''
      return told([where, others, doneWords(first!, positionsOf(group))])
    })
    .join('; ')
}

/** How a motif is joined wherever it meets neighbors. */
export interface InGeneral {
  readonly words: string
  /** The words name the stitches of a side. */
  readonly isBySideStitches: boolean
}

/** The same of all the joins that a motif has anywhere, without numbers of corners and sides. */
export function generalWords(joins: readonly LocatedJoin[], setting: PartsSetting): InGeneral {
  const own = joins.filter(({ join }) => !join.shared)
  const parts = (own.length > 0 ? own : joins).map((each) => partOf(each, setting))
  const groups = grouped(parts, ({ place, name, stays, done }) =>
    JSON.stringify([place, name, stays, done]),
  ).map((group) => {
    const [first] = group
    const counted = first!.place === 'side' ? grouped(group, ({ number }) => String(number)) : []
    const isSame = new Set(counted.map((side) => positionsOf(side).join(' '))).size === 1
    return { first: first!, positions: isSame ? positionsOf(group) : [] }
  })
  // A flower that is joined at its petals alone has nothing else to be told apart from.
  const isByPetals = groups.every(({ first }) => first.place === 'petal')
  return {
    words: groups
      .map(({ first, positions }) =>
        told([isByPetals ? '' : GENERAL[first.place], doneWords(first, positions)]),
      )
      .join('; '),
    isBySideStitches: groups.some(({ first, positions }) => first.name !== '' && positions.length > 0),
  }
}
