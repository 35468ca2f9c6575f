/**
 * M16: an outline as it was traced. The points give the shape, the measures the size: the farthest point comes to lie
 * on the circle through the tips and the nearest dip on the one through the dips, what is between them evenly between.
 */
import type { Anchor, Point } from '../../shared-types/plan'
import type { Hand, Trace } from '../../shared-types/project'
import { said } from '../findings/finding'
import type { Said } from '../findings/finding'
import { boundValues, lengthValue } from '../findings/quantities'
import { contains, directionOf, distanceToEdge, reachOf, signedArea, turnOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { remembered } from '../memo'
import type { Millimetres, Radians } from '../units/quantity'
import { unevenAnchors, workingSign } from './anchors'
import { LEAST_LOBE, MOTIF_SIZE, PETALS } from './constants'
import { extremesOf } from './extremes'

/** A traced line that can be planned: clockwise, tip 1 at 12 o'clock, tips and dips alternating. */
export interface TracedOutline {
  readonly outline: Outline
  readonly tips: readonly number[]
  /** The dip that follows each tip, clockwise. */
  readonly dips: readonly number[]
  /** How far its farthest point and its nearest dip are from the middle, as traced. */
  readonly tip: Millimetres
  readonly valley: Millimetres
}

/** Fewest points of a line that goes round something. */
const LEAST_POINTS = 8
/** A tip is the farthest point between its dips, to within this share: stitches make small bumps beside it. */
const TIP_SLACK = 0.05
/** Points nearer to each other lie in one place. */
const SAME_PLACE: Millimetres = 1e-6

/** Reads a traced outline, or says why it cannot be planned. */
export const tracedOutline = remembered((traced: Trace): TracedOutline | { readonly refused: Said } => {
  const given = (traced.points ?? []).map(([x = NaN, y = NaN]) => ({ x, y }))
  if (given.some(({ x, y }) => !Number.isFinite(x) || !Number.isFinite(y)))
    return { refused: said('motif/trace-numbers') }
  // The last point may be the first once more.
  const kept = given.map((point, i) => !isSame(point, given[(i + given.length - 1) % given.length]!))
  const points = given.filter((_, i) => kept[i])
  if (points.length < LEAST_POINTS)
    return { refused: said('motif/trace-short', { received: points.length, least: LEAST_POINTS }) }
  const across = 2 * reachOf(points)
  if (across < MOTIF_SIZE.least || across > MOTIF_SIZE.most)
    return {
      refused: said('motif/size-range', {
        what: 'the traced outline',
        received: lengthValue(across),
        ...boundValues(MOTIF_SIZE),
      }),
    }
  if (crossesItself(points)) return { refused: said('motif/trace-crosses') }
  if (!contains(points, { x: 0, y: 0 })) return { refused: said('motif/trace-middle') }
  const reach = points.map(({ x, y }) => Math.hypot(x, y))
  const places = (list: readonly number[]) => placesOf(list, kept)
  const isNamed = traced.tips !== undefined || traced.dips !== undefined
  const named = isNamed
    ? { tips: places(traced.tips ?? []), dips: places(traced.dips ?? []) }
    : foundPlaces(points, reach)
  if (!areTipsAndDips(reach, named.tips, named.dips, isNamed ? TIP_SLACK : Infinity))
    return {
      refused: said('motif/trace-places', {
        tips: (traced.tips ?? named.tips).length,
        dips: (traced.dips ?? named.dips).length,
        ...PETALS,
      }),
    }
  return upright(points, reach, named.tips, named.dips)
})

const isSame = (a: Point, b: Point): boolean =>
  Math.abs(a.x - b.x) < SAME_PLACE && Math.abs(a.y - b.y) < SAME_PLACE

/** Places in the list as given → among the points that were kept; −1 where there is none. */
function placesOf(list: readonly number[], kept: readonly boolean[]): number[] {
  const moved: number[] = []
  let last = -1
  for (const own of kept) moved.push(own ? ++last : Math.max(0, last))
  return list.map((place) => moved[place] ?? -1)
}

/** Tips and dips by the reach; a line without enough of them is joined at four places, the farthest first. */
function foundPlaces(points: Outline, reach: readonly number[]): { tips: number[]; dips: number[] } {
  const mean = reach.reduce((sum, each) => sum + each, 0) / reach.length
  const { tips, dips } = extremesOf(reach, LEAST_LOBE * mean)
  if (tips.length >= PETALS.least) return { tips: [...tips], dips: [...dips] }
  const first = directionOf(points[reach.indexOf(Math.max(...reach))]!)
  const toward = (turn: Radians): number => {
    const away = (point: Point) => Math.cos(directionOf(point) - first - turn)
    return points.reduce((best, point, i) => (away(point) > away(points[best]!) ? i : best), 0)
  }
  const quarters = [0, 1, 2, 3].map((k) => (k * Math.PI) / 2)
  return { tips: quarters.map(toward), dips: quarters.map((turn) => toward(turn + Math.PI / 4)) }
}

/** Whether tips and dips are points of the line that take turns, each tip being farthest between its dips, but for `slack`. */
function areTipsAndDips(
  reach: readonly number[],
  tips: readonly number[],
  dips: readonly number[],
  slack: number,
): boolean {
  if (tips.length !== dips.length || tips.length < PETALS.least || tips.length > PETALS.most) return false
  if ([...tips, ...dips].some((place) => !Number.isInteger(place) || place < 0)) return false
  const tipAt = new Set(tips)
  const all = [...tips, ...dips].sort((a, b) => a - b)
  if (new Set(all).size < all.length) return false
  return all.every((place, i) => {
    const next = all[(i + 1) % all.length]!
    if (tipAt.has(place) === tipAt.has(next)) return false
    const tip = reach[tipAt.has(place) ? place : next]!
    for (let k = place; k !== next; k = (k + 1) % reach.length)
      if (reach[k]! > tip * (1 + slack)) return false
    return true
  })
}

/** The line clockwise, its first tip at 12 o'clock. */
function upright(
  points: Outline,
  reach: readonly number[],
  tips: readonly number[],
  dips: readonly number[],
): TracedOutline {
  const count = points.length
  const turned = turnOutline(points, -directionOf(points[tips[0]!]!))
  const back = signedArea(points) < 0
  const first = tips[0]!
  /** Steps along the line from the first tip, clockwise. */
  const along = (place: number): number => ((back ? first - place : place - first) + count) % count
  const outline = Array.from(
    { length: count },
    (_, k) => turned[((back ? first - k : first + k) + count) % count]!,
  )
  const inOrder = (places: readonly number[]) => places.map(along).sort((a, b) => a - b)
  return {
    outline,
    tips: inOrder(tips),
    dips: inOrder(dips),
    tip: Math.max(...reach),
    valley: Math.min(...dips.map((place) => reach[place]!)),
  }
}

/** Whether two edges that are not neighbours cross or touch. */
function crossesItself(points: Outline): boolean {
  const count = points.length
  const edges = points.map((a, i) => {
    const b = points[(i + 1) % count]!
    return { i, a, b, left: Math.min(a.x, b.x), right: Math.max(a.x, b.x) }
  })
  // By their left ends: only edges that overlap sideways are held against each other.
  edges.sort((one, two) => one.left - two.left)
  for (let k = 0; k < count; k++) {
    const one = edges[k]!
    for (let l = k + 1; l < count && edges[l]!.left <= one.right; l++) {
      const two = edges[l]!
      const apart = Math.abs(one.i - two.i)
      if (apart === 1 || apart === count - 1) continue
      if (meet(one.a, one.b, two.a, two.b)) return true
    }
  }
  return false
}

const side = (a: Point, b: Point, p: Point): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)

function meet(a: Point, b: Point, c: Point, d: Point): boolean {
  if (Math.max(a.y, b.y) < Math.min(c.y, d.y) || Math.max(c.y, d.y) < Math.min(a.y, b.y)) return false
  if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true
  return (
    distanceToEdge(a, c, d) < SAME_PLACE ||
    distanceToEdge(b, c, d) < SAME_PLACE ||
    distanceToEdge(c, a, b) < SAME_PLACE ||
    distanceToEdge(d, a, b) < SAME_PLACE
  )
}

/** The line with its farthest point `tip` and its nearest dip `valley` from the middle. */
export function sizedOutline(traced: TracedOutline, tip: Millimetres, valley: Millimetres): Outline {
  if (tip === traced.tip && valley === traced.valley) return traced.outline
  const slope = (tip - valley) / (traced.tip - traced.valley)
  return traced.outline.map((point) => {
    const far = Math.hypot(point.x, point.y)
    if (far === 0) return point
    const to = far <= traced.valley ? (far * valley) / traced.valley : valley + (far - traced.valley) * slope
    return { x: (point.x * to) / far, y: (point.y * to) / far }
  })
}

/** Places to join at, in working direction from the tip at 12 o'clock. */
export function tracedAnchors({ tips, dips }: TracedOutline, outline: Outline, hand: Hand): Anchor[] {
  const count = tips.length
  const step = workingSign(hand)
  return unevenAnchors(
    tips.map((_, k) => {
      const at = (step * k + count) % count
      const [before, after] = [dips[(at - 1 + count) % count]!, dips[at]!]
      const flanks = [
        shoulder(outline, tips[at]!, before, -1),
        shoulder(outline, tips[at]!, after, 1),
      ] as const
      return {
        tip: outline[tips[at]!]!,
        shoulders: step === 1 ? flanks : [flanks[1], flanks[0]],
        valley: outline[step === 1 ? after : before]!,
      }
    }),
  )
}

/** Where the line from a tip to a dip passes the direction halfway between them. */
function shoulder(outline: Outline, tip: number, dip: number, way: 1 | -1): Point {
  const count = outline.length
  const from = directionOf(outline[tip]!)
  const turned = (place: number): Radians => {
    const by = way * (directionOf(outline[place]!) - from)
    return by - 2 * Math.PI * Math.round(by / (2 * Math.PI))
  }
  const half = turned(dip) / 2
  for (let at = tip; at !== dip; at = (at + way + count) % count) {
    const next = (at + way + count) % count
    const [here, there] = [turned(at), turned(next)]
    if (there < half - HALFWAY) continue
    const share = there > here ? Math.min(1, Math.max(0, (half - here) / (there - here))) : 1
    const [a, b] = [outline[at]!, outline[next]!]
    return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
  }
  return outline[dip]!
}

/** A point of the line that lies halfway itself is met as it is. */
const HALFWAY: Radians = 1e-9
