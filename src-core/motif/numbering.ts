/**
 * M15, M33: how the places of a motif are counted and named. Words, pictures, tables and paper all ask here, so
 * that petal 3 is the same petal wherever it is told of: a motif by itself counts from 12 o'clock, a placed one
 * from the petal that the hand works first on it.
 */
import type { Anchor, MotifAccount, PlacedMotif } from '../../shared-types/plan'
import { directionOf } from '../geometry/points'
import { radians } from '../units/quantity'
import type { Degrees } from '../units/quantity'
import { addressOf, clock } from './anchors'
import { numberedSpaces, spaceAt, spaceWords } from './spaces'

/** How a motif lies: turned clockwise, counted from one of its own petals (1 where nothing is said). */
interface Counted {
  readonly turn: Degrees
  readonly firstPetal?: number
}

/** A motif by itself. */
const ALONE: Counted = { turn: 0 }

/** The number of a petal when the petals are counted, in working direction, from the one that is worked first. */
export const countedFrom = (petal: number, first: number, count: number): number =>
  ((petal - first + count) % count) + 1

/** How many petals (corners, places round the clock) its places belong to. */
export const countOf = (anchors: readonly Anchor[]): number =>
  anchors.reduce((most, anchor) => Math.max(most, anchor.petal), 1)

/** A petal or corner with its number. */
interface NumberedPlace {
  readonly anchor: Anchor
  readonly number: number
}

/**
 * The petals, corners or spaces that a picture numbers, in working direction from the first. Leaves have none, nor
 * rounds whose spaces are not counted: the places of these are told by the clock, those of a leaf by their names.
 */
export function numberedPlaces(
  account: Pick<MotifAccount, 'anchors' | 'petals' | 'shape' | 'spaces' | 'overTips'>,
  { firstPetal = 1 }: Pick<Counted, 'firstPetal'> = ALONE,
): NumberedPlace[] {
  const { anchors, petals, shape } = account
  if (account.spaces) return numberedSpaces(account, firstPetal)
  if (shape !== 'petals' && shape !== 'straight') return []
  return anchors
    .filter(({ kind }) => kind === 'tip' || kind === 'corner')
    .map((anchor) => ({ anchor, number: countedFrom(anchor.petal, firstPetal, petals) }))
    .sort((a, b) => a.number - b.number)
}

/** A place in words: "petal 3", "place 2 of side 3", "9 o'clock" (as it lies), "stem end". */
export function placeName(
  account: Pick<MotifAccount, 'petals' | 'shape' | 'spaces'> & Partial<Pick<MotifAccount, 'anchors'>>,
  anchor: Anchor,
  { turn, firstPetal = 1 }: Counted,
): string {
  const { shape, petals } = account
  const space = spaceAt(account, directionOf(anchor), firstPetal)
  if (space) return spaceWords(space)
  if (shape === 'round') return clock(directionOf(anchor) + radians(turn))
  if (shape === 'leaf') return anchor.address
  return addressOf(anchor, countedFrom(anchor.petal, firstPetal, petals), petals)
}

/** A place of a placed motif in words, for tables and ears: "petal 3", "at 9 o'clock". */
export function placeOn(
  account: Pick<MotifAccount, 'anchors' | 'petals' | 'shape' | 'spaces'>,
  placed: PlacedMotif,
  id: string,
): string {
  const anchor = account.anchors.find((entry) => entry.id === id)
  if (!anchor) return ''
  const name = placeName(account, anchor, placed)
  return account.shape === 'round' && !account.spaces ? `at ${name}` : name
}

/** Whether the hand may begin a motif at any of its petals: they all reach equally far. */
export function isAlike({ anchors }: Pick<MotifAccount, 'anchors'>): boolean {
  const reach = anchors
    .filter(({ kind }) => kind === 'tip' || kind === 'corner')
    .map(({ x, y }) => Math.hypot(x, y))
  return Math.max(...reach) - Math.min(...reach) < 1e-6 * Math.max(...reach)
}
