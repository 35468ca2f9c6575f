/** M8: cornered rounds, told by their apothem (half side to side). */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { CORNER_LOOP, GROWS, LENGTH_TELLS, PETALS_SPREAD, POINT_LOOP } from './constants'
import type { Corner } from './corners'
import { angleOf, at, heightOf, mean, neighbours, radiusOf, topWidth } from './ground'
import type { LocatedRound } from './ground'
import { isDrawing } from './drawing'
import { finish } from './finish'
import { farthest } from './profile'
import { standsOut } from './stands-out'

interface Upright {
  readonly element: WorkedElement
  readonly base: Point
  readonly top: Point
}

/** A cornered round on the ground `onto`. */
export function locateCornered(
  round: WorkedRound,
  corners: readonly Corner[],
  onto: LocatedRound,
  gauge: ResolvedGauge,
  stood: readonly Upright[],
): LocatedRound {
  const count = corners.length
  const half = Math.PI / count
  const groups = new Set(corners.map((corner) => corner.group))
  const along = stood.filter((entry) => !groups.has(entry.element.group))
  const upright = along.length > 0 ? along : stood
  const height = mean(upright.map((entry) => heightOf(entry.element, gauge)))
  const apothem = apothemOf(round, corners, onto, stood, height, gauge)
  const first = cornerAngle(round, corners[0]!, stood)
  const angles = corners.map((_, k) => first + (k * 2 * Math.PI) / count)
  const positions = alongSides(round, corners, gauge)
  const placed = stood.map((entry) => {
    const { corner, share } = positions.get(entry.element) ?? { corner: 0, share: 0 }
    const top = onPolygon(apothem, half, angles[corner]!, share)
    return { element: entry.element, base: entry.base, top, petal: -1 }
  })
  const around = corners.every((corner) => corner.stacked)
    ? (2 * Math.PI) / roundShare(count)
    : aroundPolygon(count)
  const located = finish(round, placed, onto, gauge, { cornered: { radius: apothem, angles, around } })
  const length = wayAlong(round, corners, onto, gauge)
  return raiseCorners({ ...located, length }, corners, angles, apothem / Math.cos(half), gauge)
}

/**
 * M7, M8: a round is as high as its stitches. What it is longer or shorter than the way around that it then has draws
 * it out or in, as far as stitches give way; the rest ruffles or cups (M17).
 */
function apothemOf(
  round: WorkedRound,
  corners: readonly Corner[],
  onto: LocatedRound,
  stood: readonly Upright[],
  height: Millimetres,
  gauge: ResolvedGauge,
): Millimetres {
  const count = corners.length
  const around = aroundPolygon(count)
  if (corners.every((corner) => corner.stacked)) {
    // A disc that has become a polygon covers as much as before.
    const share = roundShare(count)
    return (onto.corners === count ? onto.radius : share * onto.radius) + share * height
  }
  const base = baseApothem(onto, count, stood)
  const length = wayAlong(round, corners, onto, gauge)
  if (isDrawing(gauge)) return Math.max(base + height, gauge.reach(round))
  const free = length / around - base - height
  // Petals are spread as far as the round over their tips is long.
  if (onto.petals.length > 0) return Math.min(base + PETALS_SPREAD * free, farthest([onto])) + height
  const wanted = LENGTH_TELLS * free
  const most = GROWS.most * height * standsOut(length, around * (base + height))
  return base + height + Math.min(most, Math.max(-GROWS.least * height, wanted))
}

/** Stitches and chains along a round. Long loops at corners stand out as points, and what is worked into them with them. */
function wayAlong(
  round: WorkedRound,
  corners: readonly Corner[],
  onto: LocatedRound,
  gauge: ResolvedGauge,
): Millimetres {
  const most = POINT_LOOP.counts * gauge.width
  const points = new Set(corners.map((corner) => corner.element))
  const inPoints = new Map<number, Millimetres>()
  let length = 0
  for (const element of round.elements) {
    const width = topWidth(element, gauge)
    const place = element.into[0]
    const seat = place?.round === onto.round.index ? onto.seats[place.index] : null
    if (element.role === 'space' && points.has(element) && element.count >= POINT_LOOP.from)
      length += Math.min(width, most)
    else if (seat?.tip && seat.chains >= POINT_LOOP.from)
      inPoints.set(element.group, (inPoints.get(element.group) ?? 0) + width)
    else length += width
  }
  for (const width of inPoints.values()) length += Math.min(width, most)
  return length
}

/** The way around a polygon of so many sides, in apothems. */
const aroundPolygon = (count: number): number => 2 * count * Math.tan(Math.PI / count)

/** Apothem of a polygon as large as a circle, in its radii. */
const roundShare = (count: number): number => Math.sqrt((2 * Math.PI) / aroundPolygon(count))

/** Half side to side of the ground; of one without these corners where its stitches begin. */
const baseApothem = (onto: LocatedRound, count: number, stood: readonly Upright[]): Millimetres =>
  onto.corners === count ? onto.radius : mean(stood.map(({ base }) => radiusOf(base)))

/** Where the stitches of a corner begin; of chains between two stitches by themselves, where those do. */
function cornerAngle({ elements }: WorkedRound, corner: Corner, stood: readonly Upright[]): Radians {
  const at = elements.indexOf(corner.element)
  const standing = new Set(stood.map(({ element }) => element))
  const beside = new Set(
    (['before', 'behind'] as const).map((side) => neighbours(elements, standing, side)[at]),
  )
  const own = stood.filter(({ element }) =>
    corner.group >= 0 ? element.group === corner.group : beside.has(element),
  )
  const sum = own.reduce((total, entry) => ({ x: total.x + entry.base.x, y: total.y + entry.base.y }), {
    x: 0,
    y: 0,
  })
  return angleOf(sum)
}

/** For each standing element the corner before it and its share of the way to the next one. */
function alongSides(round: WorkedRound, corners: readonly Corner[], gauge: ResolvedGauge) {
  const { elements } = round
  const start = elements.indexOf(corners[0]!.element)
  const cornerOf = new Map(corners.map((corner, k) => [corner.element, k]))
  const found = new Map<WorkedElement, { corner: number; share: number }>()
  let corner = 0
  let walked = 0
  let onSide: { element: WorkedElement; at: number }[] = []
  const close = (total: number) => {
    for (const { element, at: place } of onSide)
      found.set(element, { corner, share: place / Math.max(total, 1e-9) })
    onSide = []
  }
  for (let k = 0; k <= elements.length; k++) {
    const element = elements[(start + k) % elements.length]!
    const width = topWidth(element, gauge)
    const index = cornerOf.get(element)
    if (index !== undefined) {
      if (k > 0) close(walked + width / 2)
      if (k === elements.length) break
      corner = index
      found.set(element, { corner, share: 0 })
      walked = width / 2
      continue
    }
    onSide.push({ element, at: walked + width / 2 })
    walked += width
  }
  return found
}

/** The point on a regular polygon at `share` of the side that follows the corner at `angle`. */
function onPolygon(apothem: Millimetres, half: Radians, angle: Radians, share: number): Point {
  const corner = apothem / Math.cos(half)
  const a = at(corner, angle)
  const b = at(corner, angle + 2 * half)
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
}

/** Corner loops reach a little beyond the corner itself. */
function raiseCorners(
  located: LocatedRound,
  corners: readonly Corner[],
  angles: readonly Radians[],
  corner: Millimetres,
  gauge: ResolvedGauge,
): LocatedRound {
  const raised = new Map<number, Point>()
  corners.forEach(({ element }, k) => {
    const loop = element.role === 'space' ? CORNER_LOOP * element.count * gauge.width : 0
    raised.set(element.index, at(corner + loop, angles[k]!))
  })
  const elements = located.elements.map((entry) => {
    const top = raised.get(entry.element.index)
    return top ? { ...entry, top } : entry
  })
  const seats = located.seats.map((seat, i) => {
    const point = raised.get(located.round.places[i]!.element)
    // The next round's corner stitches sit in the loop, at the corner of the polygon.
    return point ? { ...seat, point: at(corner, angleOf(point)), angle: angleOf(point), tip: true } : seat
  })
  const edge = [...elements].sort((a, b) => angleOf(a.top) - angleOf(b.top)).map((entry) => entry.top)
  return { ...located, elements, seats, edge }
}
