/**
 * The ground that a round leaves for the next ones: where its stitches and spaces lie. Everything is about the
 * motif's centre, in mm, seen from the right side by a left-hander: working direction is clockwise on paper.
 * Right-handers see the mirror image, which is taken at the end.
 */
import type { SideCount } from './side-stitches'
import type { Point } from '../../../shared-types/plan'
import { firstStitchOf } from '../../notation/worked'
import type { WorkedElement, WorkedPlace, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import { COMPOUND_TOP_WIDTH, relativeHeight } from '../../stitches/table'
import type { Millimetres, Radians } from '../../units/quantity'
import type { Arch } from './arch'

/** One place that a round leaves: where a stitch worked into it begins. */
export interface Seat {
  readonly kind: 'stitch' | 'space' | 'slip'
  /** Working direction, from 12 o'clock. */
  readonly angle: Radians
  readonly point: Point
  /** The loop of a space. */
  readonly arch: Arch | null
  readonly chains: number
  /** Where the stitch itself begins: the seat of its posts. */
  readonly foot: Point
  /** The open chain at the tip of a petal or in a corner: raised already, no loop to be pulled. */
  readonly tip: boolean
}

/** An element of a round with its place: from `base` to `top`; a loop with the points of its chains. */
export interface LocatedElement {
  readonly element: WorkedElement
  readonly base: Point
  readonly top: Point
  readonly chain: readonly Point[]
  /** Of a decrease over several places: where each of its legs begins. */
  readonly feet?: readonly Point[]
  /** Of a stitch around a post: how far above its base the stitch ends that it goes around, in mm. */
  readonly behindUpTo?: Millimetres
  /** Of a stitch in a space: its chains, which lie across it, and how far it leans over them. */
  readonly over?: { readonly chains: number; readonly lean: Radians }
  /** Of chains between stitches, which begin at `base`: where they end. */
  readonly end?: Point
}

/** A post stitch shows so much of itself above what it goes around, in stitch widths, to be drawn with it (by eye). */
const POST_SHOWS = 0.85

/** Too short a post stitch: its symbol would lie on the stitch that it goes around. */
export function hidesItself({ element, base, top, behindUpTo }: LocatedElement): boolean {
  if (behindUpTo === undefined) return false
  const height = Math.hypot(top.x - base.x, top.y - base.y)
  return height - behindUpTo < (POST_SHOWS * height) / relativeHeight(element.stitch)
}

export interface Petal {
  /** Standing stitches and the length of the top edge they stand on (M12). */
  readonly stitches: number
  readonly edge: Millimetres
  /** Chains of the loop that it stands in; 0 where it stands in a stitch. */
  readonly chains: number
}

export interface LocatedRound {
  readonly round: WorkedRound
  readonly seats: readonly Seat[]
  readonly elements: readonly LocatedElement[]
  /** What shapes nothing and is drawn all the same: chains that do not count, joins, slip stitches on the way. */
  readonly asides: readonly LocatedElement[]
  /** Points of the round's outer edge, in working order. */
  readonly edge: readonly Point[]
  /** Mean radius; of a cornered round half side to side. */
  readonly radius: Millimetres
  /** Corners of a cornered round, else 0. */
  readonly corners: number
  /** Stitches of each of its sides, where they have as many. */
  readonly side?: SideCount
  /** Directions of the corners. */
  readonly cornerAngles: readonly Radians[]
  /** The way around, in radii: what a round that lies flat is long (M17). */
  readonly around: number
  /** Rounds running in which increases stand over each other, and the directions of this round's. */
  readonly stacked: number
  readonly stackedAt: readonly Radians[]
  readonly petals: readonly Petal[]
  /** What an over-full round stands out beyond its height; it is judged without (M17). */
  readonly extra: Millimetres
  /** N·w: stitches and chains along the round. */
  readonly length: Millimetres
  /** Loops that are shorter than what they span: by how much, in mm. */
  readonly tight: Millimetres
}

/** Width of an element's top in mm; chains lie along the round, slip stitches and picots take no room. */
export function topWidth(element: WorkedElement, gauge: ResolvedGauge): Millimetres {
  if (element.role === 'space') return element.count * gauge.width
  if (!element.standing && element.role !== 'closing') return 0
  const compound =
    element.legs > 1 && element.into.length <= 1
      ? COMPOUND_TOP_WIDTH.cluster
      : element.form === 'puff' || element.form === 'popcorn' || element.form === 'bobble'
        ? COMPOUND_TOP_WIDTH[element.form]
        : 1
  return compound * gauge.width
}

/** Height of a standing element in mm. */
export function heightOf(element: WorkedElement, gauge: ResolvedGauge): Millimetres {
  if (element.role === 'beginning' || element.role === 'stem') {
    if (element.countsAs) return gauge.height(element.countsAs)
    return element.count * gauge.width
  }
  return gauge.height(element.stitch)
}

/** The point at `radius` in working direction `angle`. */
export const at = (radius: Millimetres, angle: Radians): Point => ({
  x: radius * Math.sin(angle),
  y: -radius * Math.cos(angle),
})

export const radiusOf = (point: Point): Millimetres => Math.hypot(point.x, point.y)

/** Direction of a point in [0, 2π). */
export const angleOf = (point: Point): Radians => {
  const angle = Math.atan2(point.x, -point.y)
  return angle < 0 ? angle + 2 * Math.PI : angle
}

/** `angle` brought within half a turn of `near`. */
export const unwrap = (angle: Radians, near: Radians): Radians =>
  angle + 2 * Math.PI * Math.round((near - angle) / (2 * Math.PI))

export const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

export const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length

/** Stands at the round's end and takes part in its shape. */
export const isUpright = (element: WorkedElement): boolean =>
  element.role === 'stitch' ||
  element.role === 'closing' ||
  ((element.role === 'beginning' || element.role === 'stem') && element.standing)

/** A slip stitch that is part of the work, none that brings the hook along or closes a round. */
export const isSlip = (element: WorkedElement): boolean => element.role === 'slip'

/** The seat that a place names, or null for a ring or a round that is only known by its counts. */
export function seatOf(place: WorkedPlace | undefined, before: readonly LocatedRound[]): Seat | null {
  if (!place || place.round < 0) return null
  const round = before.find((entry) => entry.round.index === place.round)
  if (round && place.kind === 'gap') return gapSeat(round, place.index)
  return round?.seats[place.index] ?? null
}

/** Between a stitch of a round and the next one, counted among its stitches. */
function gapSeat({ seats }: LocatedRound, index: number): Seat | null {
  const stitches = seats.filter(({ kind }) => kind === 'stitch')
  const [before, next] = [stitches[index], stitches[(index + 1) % stitches.length]]
  if (!before || !next) return null
  const angle = (before.angle + unwrap(next.angle, before.angle)) / 2
  const between = (a: Point, b: Point): Point => at((radiusOf(a) + radiusOf(b)) / 2, angle)
  const [point, foot] = [between(before.point, next.point), between(before.foot, next.foot)]
  return { kind: 'space', angle: angleOf(point), point, arch: null, chains: 0, foot, tip: false }
}

/** Whether two elements go into the same place of an earlier round. */
export function samePlace(one: WorkedElement, other: WorkedElement): boolean {
  const [a, b] = [one.into[0], other.into[0]]
  return a !== undefined && b !== undefined && a.round === b.round && a.index === b.index && a.kind === b.kind
}

/** By element: the nearest one of `of` on one side of it, going round; null where there is none. */
export function neighbours(
  all: readonly WorkedElement[],
  of: ReadonlySet<WorkedElement>,
  side: 'before' | 'behind',
): (WorkedElement | null)[] {
  const found: (WorkedElement | null)[] = all.map(() => null)
  let last: WorkedElement | null = null
  // Twice round, so that the first ones know the last.
  for (let step = 0; step < 2 * all.length; step++) {
    const along = step % all.length
    const i = side === 'before' ? along : all.length - 1 - along
    found[i] = last
    if (of.has(all[i]!)) last = all[i]!
  }
  return found
}

/**
 * By element: what carries the chains before and behind it, stitches and slip stitches of the round. Chains that a round
 * begins with hang from where the hook stood: where yarn was joined, or where the round that it goes onto was closed.
 */
export function carriersOf(
  round: WorkedRound,
  onto: WorkedRound | undefined,
): { before: readonly (WorkedElement | null)[]; behind: readonly (WorkedElement | null)[] } {
  const { elements } = round
  const carries = (each: WorkedElement) => (isUpright(each) && each.role !== 'closing') || isSlip(each)
  const opens = elements.findIndex((each) => carries(each) || each.role === 'space')
  const begun = elements[opens]?.role === 'space' && round.onto >= 0 ? startOf(round, opens, onto) : null
  const all = begun ? [begun, ...elements] : elements
  const carriers = new Set(all.filter(carries))
  const side = (which: 'before' | 'behind') => neighbours(all, carriers, which).slice(begun ? 1 : 0)
  return { before: side('before'), behind: side('behind') }
}

/** Where the hook stands when a round begins, as a slip stitch in that place; null where it only goes on. */
function startOf(
  { elements }: WorkedRound,
  opens: number,
  onto: WorkedRound | undefined,
): WorkedElement | null {
  const travel = elements.slice(0, opens).findLast(({ role }) => role === 'travel')
  if (travel) return isWorkedAgain(elements, travel) ? null : { ...travel, role: 'slip' }
  const first = elements[opens]
  if (!onto?.joined || !first) return null
  const into = [closingPlace(onto)]
  const start: WorkedElement = { ...first, index: -1, role: 'slip', stitch: 'sl st', count: 1, into }
  return isWorkedAgain(elements, start) ? null : start
}

/** Where a round was closed: in its first stitch, or, where it begins with a loop, where its last one came back to. */
function closingPlace({ index, places }: WorkedRound): WorkedPlace {
  const last = places.length - 1
  const isLoop = places[0]?.kind === 'space' && places[last]?.kind !== 'space'
  return isLoop ? { ...firstStitchOf(index), index: last } : firstStitchOf(index)
}

/**
 * "Join in any sc, *ch 6, sc in next sc; rep from * 5 more times": as many loops as stitches or slip stitches, each in a
 * place of its own, the first or the last of which is where the hook stood. All loops hang between stitches then; none goes from a place to itself.
 */
function isWorkedAgain(elements: readonly WorkedElement[], start: WorkedElement): boolean {
  const upright = elements.filter((each) => isUpright(each) || isSlip(each))
  const loops = elements.filter(({ role }) => role === 'space')
  const places = new Set(upright.map(({ into: [place] }) => `${place?.kind} ${place?.round} ${place?.index}`))
  const isAlone = loops.length === upright.length && places.size === upright.length
  const [first, last] = [upright[0], upright.at(-1)]
  return isAlone && upright.length > 1 && [first, last].some((each) => samePlace(start, each!))
}

/** Adds to the list under a key. */
export function gather<Key, Value>(lists: Map<Key, Value[]>, key: Key, value: Value): void {
  const list = lists.get(key)
  if (list) list.push(value)
  else lists.set(key, [value])
}
