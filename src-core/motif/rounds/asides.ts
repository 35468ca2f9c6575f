/** Where the chart puts what shapes nothing: chains that do not count, the join, slip stitches on the way. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Radians } from '../../units/quantity'
import { archAt } from './arch'
import { clearPlace, clearWay, distance, isBeside } from './clear-places'
import type { Way } from './clear-places'
import { angleOf, at, hidesItself, radiusOf, samePlace, seatOf, unwrap } from './ground'
import type { LocatedElement, LocatedRound, Seat } from './ground'

/** Shares of the first stitch's height, so that chain and join lie above each other in the gap before it (ours). */
const CHAIN_UP_TO = 0.66
/** Places for a join, of which the first is taken that is clear: under the bars, between posts. */
const JOIN_AT = [0.82, 0.95]
const JOIN_LOW = 0.5
/** The same for slip stitches on the way, behind the stitch that they lie in. */
const TRAVEL_AT = [0.8, 0.6]
/** The same where loops end at the first stitch's top: lower, beside its post. */
const LOWER = { chain: 0.4, join: 0.58 } as const
/** … and so many stitch widths from it. */
const BESIDE = 0.44
/** A stitch leans when it goes outward by less than this share of its height; then the join lies over its top. */
const LEANS = 0.75
const ON_TOP = 0.18
/** Where other symbols lie in the gap before the first stitch, a beginning chain hangs so many stitch widths from that … */
const CHAIN_ASIDE = [0.5, 0.66, 0.85]
/** … between these shares of its height (by eye). */
const CHAIN_BETWEEN = [
  [0.05, 0.7],
  [0.22, 0.85],
  [0.4, 1],
] as const
/** Where a join's dot lies beside the first stitch then, in stitch widths. */
const JOIN_ASIDE = [0.62, 0.8, 1]
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
  const hung = round.elements.find(({ role, standing }) => role === 'beginning' && !standing)
  const usual: Way = [before(0), before(afterLoop ? LOWER.chain : CHAIN_UP_TO)]
  const below = earlier.find((entry) => entry.round.index === round.onto)?.elements ?? []
  const aside = CHAIN_ASIDE.flatMap((away) =>
    CHAIN_BETWEEN.map(([from, to]): Way => {
      const [low, high] = [from, to].map((share) => beside(first, away * gauge.width, share))
      return [low!, high!]
    }),
  )
  const chain = hung ? clearWay([...elements, ...below], gauge, hung.count, usual, aside) : null
  const placeOf = (element: WorkedElement): Way | null => {
    switch (element.role) {
      case 'beginning':
        return element.standing ? null : chain
      case 'join': {
        const over = onTop(first, ON_TOP * gauge.width)
        if (opening) return [opening, opening]
        const isMoved = chain !== null && chain !== usual
        // A chain that does not count hangs in the same gap.
        const free = (point: Point): boolean => !chain || isBeside(point, ...chain, gauge)
        const gaps = JOIN_AT.map(before)
        const wanted = afterLoop ? [leans(first) ? over : before(LOWER.join)] : gaps
        const shares = [...JOIN_AT, JOIN_LOW]
        const [near = [], ...far] = [BESIDE, ...JOIN_ASIDE].map((away) =>
          shares.map((share) => beside(first, away * gauge.width, share)).filter(free),
        )
        // Over the stitch lies what the next round works into it.
        const last = isMoved || afterLoop ? [...far.flat(), over] : [over, ...far.flat()]
        const point = clear([...(isMoved ? gaps.filter(free) : wanted), ...near, ...last])
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
