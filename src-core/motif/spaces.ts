/**
 * M30: the spaces round a motif, counted. They lie evenly all round, one of them towards a neighbour; number 1 is the
 * last before the place at which the hand begins, so that what is joined comes late in the round; or the next, where
 * that one is the last to be joined.
 */
import type { Anchor, MotifAccount, Point } from '../../shared-types/plan'
import { directionOf, polar } from '../geometry/points'
import type { Radians } from '../units/quantity'
import { AT_SPACE } from './constants'

const TURN = 2 * Math.PI

type Spaced = Pick<MotifAccount, 'spaces'> & Partial<Pick<MotifAccount, 'anchors'>>

/** A space (or mark) by its number, or two that a place lies between. */
export interface SpacePlace {
  readonly marks?: true
  readonly number: number
  /** The next in working direction, where the place lies between the two; else null. */
  readonly next: number | null
}

/** How far on from the space that is counted as `at` a direction lies, in spaces. */
function along({ count, way, at }: NonNullable<MotifAccount['spaces']>, direction: Radians): number {
  const share = (way * (direction - at)) / TURN
  return (share - Math.floor(share)) * count
}

const isWhole = (place: number): boolean => Math.abs(place - Math.round(place)) <= AT_SPACE

/** How many spaces on from the one at `spaces.at` the first is, where the hand begins at a place of the motif. */
function startOf({ anchors = [], spaces }: Spaced, firstPetal: number): number {
  const begin = anchors.find(({ petal }) => petal === firstPetal)
  if (!spaces || !begin) return 0
  const from = Math.floor(along(spaces, directionOf(begin)) + 1e-6)
  const { count } = spaces
  const isOnFirst = anchors.some((anchor) => {
    const place = (along(spaces, directionOf(anchor)) - from + count) % count
    return anchor !== begin && isWhole(place) && Math.round(place) % count === 0
  })
  return (isOnFirst ? from + 1 : from) % count
}

/** Where a direction of a motif as it is drawn, unturned, meets its spaces; null for one that has none. */
export function spaceAt(account: Spaced, direction: Radians, firstPetal = 1): SpacePlace | null {
  const { spaces } = account
  if (!spaces) return null
  const from = startOf(account, firstPetal)
  const place = along(spaces, direction) - from + spaces.count
  const named = (index: number): number => (((index % spaces.count) + spaces.count) % spaces.count) + 1
  const marks = spaces.marks && { marks: spaces.marks }
  if (isWhole(place)) return { number: named(Math.round(place)), next: null, ...marks }
  return { number: named(Math.floor(place)), next: named(Math.floor(place) + 1), ...marks }
}

/** "space 4", "between spaces 2 and 3", "mark 4". */
export function spaceWords({ number, next, marks }: SpacePlace): string {
  const what = marks ? 'mark' : 'space'
  return next === null ? `${what} ${number}` : `between ${what}s ${number} and ${next}`
}

/** In how many parts hands divide an edge with markers, the fewest first (ours). */
const DIVISIONS = [4, 6, 8, 12] as const

/**
 * A round of which nothing but its measures is known, its edge divided evenly so that a mark lies towards every
 * neighbour; as it is where no such division is.
 */
export function dividedEvenly(account: MotifAccount, way: 1 | -1): MotifAccount {
  const { anchors, rounds, shape, spaces } = account
  const [first] = anchors
  if (shape !== 'round' || spaces || rounds.length > 0 || !first) return account
  const at = directionOf(first)
  const divided = (count: number) => ({ count, way, at, marks: true }) as const
  const count = DIVISIONS.find((parts) =>
    anchors.every((anchor) => isWhole(along(divided(parts), directionOf(anchor)))),
  )
  return count === undefined ? account : { ...account, spaces: divided(count) }
}

/** Whether a place of a motif lies between two of its spaces. */
export const liesBetween = (account: Spaced, anchor: Anchor): boolean =>
  (spaceAt(account, directionOf(anchor))?.next ?? null) !== null

/** Turned so that as many neighbours as can be lie towards a space, those before others in working order. */
export function turnedToSpaces(account: MotifAccount): MotifAccount {
  const { anchors, spaces } = account
  if (!spaces || anchors.length === 0) return account
  const off = (at: Radians): number =>
    anchors.reduce((sum, anchor) => {
      const place = along({ ...spaces, at }, directionOf(anchor))
      return sum + (place - Math.round(place)) ** 2
    }, 0)
  const best = anchors
    .map((anchor) => directionOf(anchor))
    .reduce((least, at) => (off(at) < off(least) - 1e-6 ? at : least))
  return { ...account, spaces: { ...spaces, at: best } }
}

/** A space as a place of its own, for pictures that number it. */
export function numberedSpaces(
  account: Spaced & Pick<MotifAccount, 'overTips'>,
  firstPetal = 1,
): { anchor: Anchor; number: number }[] {
  const { spaces, overTips } = account
  if (!spaces) return []
  const from = startOf(account, firstPetal)
  return Array.from({ length: spaces.count }, (_, i) => {
    const direction = spaces.at + (spaces.way * (i + from) * TURN) / spaces.count
    const at: Point = polar(overTips / 2, direction)
    const anchor: Anchor = {
      ...{ id: `space-${i + 1}`, kind: 'side', petal: i + 1, ...at },
      outward: polar(1, direction),
      address: spaceWords({ number: i + 1, next: null, ...(spaces.marks && { marks: spaces.marks }) }),
    }
    return { anchor, number: i + 1 }
  })
}

/** The numbers of the spaces in which, or between which, places of a motif lie. */
export const spacesMet = (
  account: Pick<MotifAccount, 'anchors' | 'spaces'>,
  ids: ReadonlySet<string>,
  firstPetal = 1,
): ReadonlySet<number> =>
  new Set(
    account.anchors.flatMap((anchor) => {
      const space = ids.has(anchor.id) ? spaceAt(account, directionOf(anchor), firstPetal) : null
      return space ? [space.number, ...(space.next === null ? [] : [space.next])] : []
    }),
  )
