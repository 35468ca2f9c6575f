/** Where the chart puts what shapes nothing: chains that do not count, the join, slip stitches on the way. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { MOST_SYMBOLS } from './constants'
import { archAt } from './arch'
import { angleOf, at, hidesItself, radiusOf, samePlace, seatOf, unwrap } from './ground'
import type { LocatedElement, LocatedRound, Seat } from './ground'

/** Shares of the first stitch's height, so that chain and join lie above each other in the gap before it (ours). */
const CHAIN_UP_TO = 0.66
/** Places for a join, of which the first is taken that is clear: under the bars, between posts. */
const JOIN_AT = [0.82, 0.95]
const JOIN_LOW = 0.5
/** The same for slip stitches on the way, behind the stitch that they lie in. */
const TRAVEL_AT = [0.8, 0.6]
/** A dot keeps so far from posts and chains, in stitch widths (by eye). */
const DOT_CLEAR = { post: 0.24, bunch: 0.16, bar: 0.17, chain: 0.34, dot: 0.3 } as const
/** Half of a bar and of the lens of a bunch, in stitch widths; the share of a post from which on it is drawn. */
const DRAWN = { bar: 0.27, bulge: 0.34, from: 0.1 } as const
/** The same where loops end at the first stitch's top: lower, beside its post. */
const LOWER = { chain: 0.4, join: 0.58 } as const
/** … and so many stitch widths from it. */
const BESIDE = 0.44
/** A stitch leans when it goes outward by less than this share of its height; then the join lies over its top. */
const LEANS = 0.75
const ON_TOP = 0.18
/** Slip stitches into a loop lie at this share of it, so many stitch widths inside (by eye). */
const INTO_LOOP = { share: 0.25, inside: 0.36 } as const

/** Asides of a located round, in the order worked. */
export function locateAsides(
  { round, elements }: Pick<LocatedRound, 'round' | 'elements'>,
  earlier: readonly LocatedRound[],
  gauge: ResolvedGauge,
): LocatedElement[] {
  const upright = elements.filter((entry) => entry.chain.length === 0)
  const [begins] = upright
  if (!begins) return []
  const first = { ...begins, base: footOf(begins) }
  // Chains end at the first stitch's top: beside its foot there is room.
  const afterLoop = elements[elements.length - 1]!.chain.length > 0
  const gap = gapBefore(first, elements, gauge)
  const before = (share: number): Point =>
    afterLoop ? beside(first, BESIDE * gauge.width, share) : between(first, gap, share)
  const clear = clearPlace(elements, gauge)
  const opening = openingOf(elements, gauge)
  const hangs = round.elements.some(({ role, standing }) => role === 'beginning' && !standing)
  const placeOf = (element: WorkedElement): [Point, Point] | null => {
    switch (element.role) {
      case 'beginning':
        return element.standing ? null : [before(0), before(afterLoop ? LOWER.chain : CHAIN_UP_TO)]
      case 'join': {
        const over = onTop(first, ON_TOP * gauge.width)
        if (opening) return [opening, opening]
        if (afterLoop) {
          const point = leans(first) ? over : before(LOWER.join)
          return [point, point]
        }
        const sides = [...JOIN_AT, JOIN_LOW].map((share) => beside(first, BESIDE * gauge.width, share))
        // A chain that does not count hangs in the same gap.
        const free = sides.filter((point) => !hangs || isBeside(point, before(0), before(CHAIN_UP_TO), gauge))
        const point = clear([...JOIN_AT.map(before), ...free, over])
        return [point, point]
      }
      case 'travel': {
        const seat = seatOf(element.into[0], earlier)
        const stands = upright.some((entry) => samePlace(entry.element, element))
        const stitch = seat && { base: seat.foot, top: seat.point }
        const aside = stitch ? TRAVEL_AT.map((share) => beside(stitch, -BESIDE * gauge.width, share)) : []
        const point =
          !seat || (stands && !seat.arch) ? before(0) : clear([travelPoint(seat, gauge), ...aside])
        return [point, point]
      }
      default:
        return null
    }
  }
  const inPlace = new Set(elements.map((entry) => entry.element))
  return round.elements.flatMap((element) => {
    const place = inPlace.has(element) ? null : placeOf(element)
    return place ? [{ element, base: place[0], top: place[1], chain: [] }] : []
  })
}

/** Of a round that begins with chains: where those hang from, beside it. Null for others. */
function openingOf(elements: readonly LocatedElement[], { width }: ResolvedGauge): Point | null {
  const [first] = elements
  const shared = elements.some(
    ({ element, base }) => element.role === 'slip' && first && distance(base, first.base) < width / 2,
  )
  if (!first || first.chain.length === 0 || first.element.role === 'beginning') return null
  const radius = radiusOf(first.base)
  const angle = angleOf(first.base)
  // Where a slip stitch lies in that place as well, this one lies under it.
  return shared
    ? at(radius - 2 * ON_TOP * width, angle)
    : at(radius, angle - (2 * ON_TOP * width) / Math.max(radius, width))
}

/** The first of some points that no symbol of the round lies on; the first of all where there is none. */
function clearPlace(
  elements: readonly LocatedElement[],
  { width }: ResolvedGauge,
): (points: readonly Point[]) => Point {
  const isClear = (point: Point): boolean =>
    elements.every(({ element, base, top, chain, feet = [base] }) => {
      if (chain.length > 0) return chain.every((each) => distance(each, point) >= DOT_CLEAR.chain * width)
      const isBunch = feet.length < 2 && (element.legs > 1 || element.form !== 'plain')
      const kind = element.role !== 'stitch' ? 'chain' : isBunch ? 'bunch' : 'post'
      return feet.every((foot) => {
        const [along, aside, length] = onWay(point, foot, top)
        const share = along / length
        const bulge = kind === 'bunch' ? 4 * DRAWN.bulge * share * (1 - share) : 0
        const off = bulge + DOT_CLEAR[kind]
        const onPost = along > DRAWN.from * length && along < length && aside < off * width
        const onBar =
          Math.abs(along - length) < DOT_CLEAR.bar * width && aside < (DRAWN.bar + DOT_CLEAR.bar) * width
        return !onPost && !onBar
      })
    })
  const taken: Point[] = []
  return (points) => {
    // No chart is drawn of so many, and each look goes through all of them.
    if (elements.length > MOST_SYMBOLS) return points[0]!
    const found =
      points.find(
        (point) => isClear(point) && taken.every((each) => distance(each, point) > DOT_CLEAR.dot * width),
      ) ?? points[0]!
    taken.push(found)
    return found
  }
}

/** Whether a dot has room beside chains from one point to another. */
function isBeside(point: Point, from: Point, to: Point, { width }: ResolvedGauge): boolean {
  const [along, aside, length] = onWay(point, from, to)
  const past = Math.max(0, -along, along - length)
  return Math.hypot(past, aside) >= DOT_CLEAR.chain * width
}

/** How far a point lies along a way and beside it, and how long that is. */
function onWay(point: Point, from: Point, to: Point): [Millimetres, Millimetres, Millimetres] {
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const length = Math.hypot(dx, dy) || 1
  const [x, y] = [point.x - from.x, point.y - from.y]
  return [(x * dx + y * dy) / length, Math.abs(x * dy - y * dx) / length, length]
}

const distance = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y)

/** Where a stitch comes into sight: around a post, above the stitch that it goes around. */
function footOf(entry: LocatedElement): Point {
  const { base, top, behindUpTo = 0 } = entry
  if (hidesItself(entry)) return base
  const share = behindUpTo / Math.max(1e-9, Math.hypot(top.x - base.x, top.y - base.y))
  return { x: base.x + (top.x - base.x) * share, y: base.y + (top.y - base.y) * share }
}

/** Half of the free angle before the first stitch, at most half a stitch. */
function gapBefore(
  first: LocatedElement,
  elements: readonly LocatedElement[],
  gauge: ResolvedGauge,
): Radians {
  const radius = Math.max(radiusOf(first.top), gauge.width / 2)
  const own = angleOf(first.top)
  const last = elements[elements.length - 1]!
  // Chains end at the first stitch's top; beside its foot there is room.
  let free = own - unwrap(angleOf(last.top), own)
  if (free <= 0) free += 2 * Math.PI
  return Math.min(gauge.width / 2 / radius, free / 2)
}

/** A point in the gap before the first stitch, at a share of its height. */
function between({ base, top }: LocatedElement, gap: Radians, share: number): Point {
  const radius = radiusOf(base) + (radiusOf(top) - radiusOf(base)) * share
  const from = angleOf(base)
  const angle = from + (unwrap(angleOf(top), from) - from) * share
  return at(radius, (radiusOf(base) < 1e-6 ? angleOf(top) : angle) - gap)
}

/** A point beside the first stitch, on the side that it comes from. */
function beside({ base, top }: Pick<LocatedElement, 'base' | 'top'>, distance: number, share: number): Point {
  const dx = top.x - base.x
  const dy = top.y - base.y
  const length = Math.hypot(dx, dy) || 1
  return {
    x: base.x + dx * share + (dy / length) * distance,
    y: base.y + dy * share - (dx / length) * distance,
  }
}

/** A stitch of a petal that leans aside: beside it stands its petal. */
function leans({ base, top }: LocatedElement): boolean {
  const along = radiusOf(top) - radiusOf(base)
  return along < LEANS * Math.hypot(top.x - base.x, top.y - base.y)
}

function onTop({ base, top }: Pick<LocatedElement, 'base' | 'top'>, distance: number): Point {
  const length = Math.hypot(top.x - base.x, top.y - base.y) || 1
  return {
    x: top.x + ((top.x - base.x) / length) * distance,
    y: top.y + ((top.y - base.y) / length) * distance,
  }
}

/** Where a slip stitch on the way lies: over its stitch, or just inside of its loop where that begins. */
function travelPoint(seat: Seat, gauge: ResolvedGauge): Point {
  if (!seat.arch) return onTop({ base: seat.foot, top: seat.point }, ON_TOP * gauge.width)
  const { point, normal } = archAt(seat.arch, INTO_LOOP.share, at(1, seat.angle))
  const inside = INTO_LOOP.inside * gauge.width
  return { x: point.x - normal.x * inside, y: point.y - normal.y * inside }
}
