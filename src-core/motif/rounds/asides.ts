/** Where the chart puts what shapes nothing: chains that do not count, the join, slip stitches on the way. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Radians } from '../../units/quantity'
import { archAt } from './arch'
import { angleOf, at, hidesItself, radiusOf, seatOf, unwrap } from './ground'
import type { LocatedElement, LocatedRound, Seat } from './ground'

/** Shares of the first stitch's height, so that chain and join lie above each other in the gap before it (ours). */
const CHAIN_UP_TO = 0.66
const JOIN_AT = 0.92
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
  const placeOf = (element: WorkedElement): [Point, Point] | null => {
    switch (element.role) {
      case 'beginning':
        return element.standing ? null : [before(0), before(afterLoop ? LOWER.chain : CHAIN_UP_TO)]
      case 'join': {
        const point =
          afterLoop && leans(first)
            ? onTop(first, ON_TOP * gauge.width)
            : before(afterLoop ? LOWER.join : JOIN_AT)
        return [point, point]
      }
      case 'travel': {
        const seat = seatOf(element.into[0], earlier)
        const point = seat ? travelPoint(seat, gauge) : before(0)
        return [point, point]
      }
      default:
        return null
    }
  }
  return round.elements.flatMap((element) => {
    const place = placeOf(element)
    return place ? [{ element, base: place[0], top: place[1], chain: [] }] : []
  })
}

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
function beside({ base, top }: LocatedElement, distance: number, share: number): Point {
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

function onTop({ base, top }: LocatedElement, distance: number): Point {
  const length = Math.hypot(top.x - base.x, top.y - base.y) || 1
  return {
    x: top.x + ((top.x - base.x) / length) * distance,
    y: top.y + ((top.y - base.y) / length) * distance,
  }
}

/** Where a slip stitch on the way lies: on its stitch, or just inside of its loop where that begins. */
function travelPoint(seat: Seat, gauge: ResolvedGauge): Point {
  if (!seat.arch) return seat.point
  const { point, normal } = archAt(seat.arch, INTO_LOOP.share, at(1, seat.angle))
  const inside = INTO_LOOP.inside * gauge.width
  return { x: point.x - normal.x * inside, y: point.y - normal.y * inside }
}
