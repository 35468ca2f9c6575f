/** Located stitches → the symbols of the chart, one for each, in the order worked. */
import type { Point } from '../../../shared-types/plan'
import { hidesItself } from '../../motif/rounds/ground'
import type { LocatedElement, LocatedRound } from '../../motif/rounds/ground'
import type { WorkedElement } from '../../notation/worked'
import {
  bunchInk,
  chainInk,
  decreaseInk,
  distance,
  hookInk,
  loopInk,
  picotInk,
  postInk,
  PROPORTION,
  reverseInk,
  slipInk,
  stackInk,
  together,
} from './symbols'
import type { Ink, Stand } from './symbols'

/** From the motif's own mm to the page's: mirrored for right-handers, scaled, moved. */
export interface ChartView {
  readonly scale: number
  readonly mirrored: boolean
  readonly centre: Point
  /** Printed width of a stitch in mm. */
  readonly unit: number
  /** Printed radius inside of which the ring is drawn. */
  readonly ring: number
  /** Printed radius from which on stitches into the ring are drawn. */
  readonly ringFoot: number
  /** Clockwise, in radians. */
  readonly turn: number
}

export interface ChartMark {
  readonly round: LocatedRound
  readonly element: WorkedElement
  /** Where the model puts it, on the page. */
  readonly base: Point
  readonly top: Point
  readonly ink: Ink
}

/** A point of the motif on the page. */
export function toPage(point: Point, { centre, scale, mirrored, turn }: ChartView): Point {
  const cos = Math.cos(turn)
  const sin = Math.sin(turn)
  const x = point.x * cos - point.y * sin
  return {
    x: centre.x + (mirrored ? -1 : 1) * scale * x,
    y: centre.y + scale * (point.x * sin + point.y * cos),
  }
}

/** Everything of a round, in the order worked. */
export const elementsInOrder = (round: LocatedRound): LocatedElement[] =>
  [...round.elements, ...round.asides].sort((a, b) => a.element.index - b.element.index)

/** The symbols of a round. */
export function roundMarks(round: LocatedRound, view: ChartView): ChartMark[] {
  const inOrder = elementsInOrder(round)
  const upright = round.elements.filter((entry) => entry.chain.length === 0)
  // Beginning chains stand low: bars at the top do not mind them.
  const withChains = inOrder.filter((entry) => upright.includes(entry) || entry.element.role === 'beginning')
  const middle = (entry: LocatedElement): Point => ({
    x: (entry.base.x + entry.top.x) / 2,
    y: (entry.base.y + entry.top.y) / 2,
  })
  return inOrder.map((entry, i) => {
    const base = toPage(entry.base, view)
    const top = toPage(entry.top, view)
    const room = {
      middle: nearest(entry, withChains, middle) * view.scale,
      top: nearest(entry, upright, (other) => other.top) * view.scale,
    }
    const before = inOrder[i - 1]
    const shared = before !== undefined && distance(before.base, entry.base) < 1e-9
    const ink = inkOf(entry, { base, top, unit: view.unit, room }, view, shared)
    return { round, element: entry.element, base, top, ink }
  })
}

/** One element by itself, without neighbours. */
export function elementInk(entry: LocatedElement, view: ChartView): Ink {
  const room = { middle: Infinity, top: Infinity }
  const stand = { base: toPage(entry.base, view), top: toPage(entry.top, view), unit: view.unit, room }
  return inkOf(entry, stand, view)
}

/** Distance of an element's point to the nearest of its neighbours in working order. */
function nearest(
  entry: LocatedElement,
  standing: readonly LocatedElement[],
  pointOf: (entry: LocatedElement) => Point,
): number {
  const index = standing.indexOf(entry)
  if (index < 0 || standing.length < 2) return Infinity
  const own = pointOf(entry)
  const beside = [index - 1, index + 1].map((i) => standing[(i + standing.length) % standing.length]!)
  return Math.min(...beside.map((other) => distance(own, pointOf(other))))
}

/** `shared`: it stands on one base with the stitch before it, which says in which loop. */
function inkOf(entry: LocatedElement, stand: Stand, view: ChartView, shared = false): Ink {
  const { element } = entry
  const { base, top, unit } = stand
  const foot = footOf(entry, base, view)
  const chain = entry.chain.map((point) => toPage(point, view))
  switch (element.role) {
    case 'slip':
    case 'join':
    case 'travel':
      return slipInk(top, unit)
    case 'space':
      return chainInk(chain, [base, entry.end ? toPage(entry.end, view) : top], unit)
    case 'picot':
      return picotInk(chain, base, top, unit)
    case 'stem':
      if (chain.length > 0) return chainInk(chain, [base, chain[chain.length - 1]!], unit)
      return stackInk(element.count, stand, foot)
    case 'beginning':
      return stackInk(element.count, stand, foot)
    default:
  }
  const place = element.into[0]
  const feet = entry.feet?.map((point) => toPage(point, view))
  const body = feet
    ? decreaseInk(element.stitch, feet, stand, foot)
    : element.legs > 1 || element.form === 'puff' || element.form === 'popcorn'
      ? bunchInk(
          element.stitch,
          element.legs,
          element.form === 'puff' ? 'puff' : element.form === 'popcorn' ? 'popcorn' : 'cluster',
          stand,
          foot,
        )
      : postInk(element.stitch, stand, foot, entry.behindUpTo !== undefined)
  const signs: Ink[] = []
  if (place?.post) signs.push(hookInk((place.post === 'front') === view.mirrored ? 1 : -1, stand, foot))
  if (place && place.loop !== 'both' && !place.post && !shared)
    signs.push(loopInk(place.loop, outwardOf(stand, view)))
  if (element.reverse) signs.push(reverseInk(stand))
  return signs.length > 0 ? together(body, ...signs) : body
}

/** The signs of loops lie along the round below, also where a stitch leans. */
function outwardOf(stand: Stand, { centre }: ChartView): Stand {
  const { base, top } = stand
  const out = { x: base.x - centre.x, y: base.y - centre.y }
  const along = out.x * (top.x - base.x) + out.y * (top.y - base.y)
  // Beside a foundation chain stitches go aside.
  const leans = along < Math.SQRT1_2 * Math.hypot(out.x, out.y) * distance(base, top)
  return leans ? stand : { ...stand, top: { x: base.x + out.x, y: base.y + out.y } }
}

/** A space of so few chains is drawn as ovals across what stands in it, no loop that it stands along. */
const FEW_CHAINS = 2

/** How far above its base a stitch in a space begins: clear of the chains, also where it leans over them. */
function spaceFoot({ over }: LocatedElement, { unit }: ChartView): number {
  const plain = PROPORTION.spaceFoot
  if (!over || over.chains > FEW_CHAINS) return plain * unit
  const { chains, lean } = over
  const [long, wide] = [(chains - 1 + PROPORTION.ovalLength) / 2, PROPORTION.ovalWidth / 2]
  const reach = 1 / Math.hypot(Math.sin(lean) / long, Math.cos(lean) / wide)
  return Math.max(plain, reach + PROPORTION.clear) * unit
}

/** How far above its base a symbol begins. */
function footOf(entry: LocatedElement, base: Point, view: ChartView): number {
  const { element, behindUpTo } = entry
  const place = element.into[0]
  const free = PROPORTION.foot * view.unit
  // The hook of a post stitch hangs down to the top of the stitch that it goes around.
  if (behindUpTo !== undefined && !hidesItself(entry))
    return behindUpTo * view.scale + (PROPORTION.loopFoot + PROPORTION.hook) * view.unit
  if (place?.kind === 'ring' || (!place && view.ring > 0)) {
    const radius = Math.hypot(base.x - view.centre.x, base.y - view.centre.y)
    return Math.max(free, view.ringFoot - radius)
  }
  if (place?.kind === 'space') return spaceFoot(entry, view)
  return place && place.loop !== 'both' ? free * 1.8 : free
}
