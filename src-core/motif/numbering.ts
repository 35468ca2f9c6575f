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
 * The petals or corners that a picture numbers, in working direction from the first. Rounds and leaves have none:
 * the places of a round are told by the clock, those of a leaf by their names.
 */
export function numberedPlaces(
  { anchors, petals, shape }: Pick<MotifAccount, 'anchors' | 'petals' | 'shape'>,
  { firstPetal = 1 }: Pick<Counted, 'firstPetal'> = ALONE,
): NumberedPlace[] {
  if (shape !== 'petals' && shape !== 'straight') return []
  return anchors
    .filter(({ kind }) => kind === 'tip' || kind === 'corner')
    .map((anchor) => ({ anchor, number: countedFrom(anchor.petal, firstPetal, petals) }))
    .sort((a, b) => a.number - b.number)
}

/** A place in words: "petal 3", "place 2 of side 3", "9 o'clock" (as it lies), "stem end". */
export function placeName(
  { shape, petals }: Pick<MotifAccount, 'petals' | 'shape'>,
  anchor: Anchor,
  { turn, firstPetal = 1 }: Counted,
): string {
  if (shape === 'round') return clock(directionOf(anchor) + radians(turn))
  if (shape === 'leaf') return anchor.address
  return addressOf(anchor, countedFrom(anchor.petal, firstPetal, petals), petals)
}

/** A place of a placed motif in words, for tables and ears: "petal 3", "at 9 o'clock". */
export function placeOn(
  account: Pick<MotifAccount, 'anchors' | 'petals' | 'shape'>,
  placed: PlacedMotif,
  id: string,
): string {
  const anchor = account.anchors.find((entry) => entry.id === id)
  if (!anchor) return ''
  const name = placeName(account, anchor, placed)
  return account.shape === 'round' ? `at ${name}` : name
}
