/** M8: cornered rounds, told by their apothem (half side to side). */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import { relativeHeight } from '../../stitches/table'
import type { Millimetres, Radians } from '../../units/quantity'
import { CORNER_LOOP, CORNERS } from './constants'
import { angleOf, at, heightOf, mean, radiusOf, topWidth } from './ground'
import type { LocatedRound } from './ground'
import { finish } from './finish'

interface Corner {
  /** Element at the corner: its loop of chains, its middle stitch, or the first of two that share a place. */
  readonly element: WorkedElement
  readonly group: number
}

/** Stitches of one kind differ by less than this in a corner; a petal's rise to its middle. */
const PETAL_RISES = 1.3
/** Sides may differ by so many elements: the round begins and ends in one of them. */
const UNEVEN_SIDES = 3

/**
 * The corners of a round: 3 to 8 equal groups, each in one place at equal distance, with a loop or a stitch in
 * its middle; or 3 to 8 increases, each over the tip of a petal.
 * Null for everything else. A group whose stitches rise to its middle is a petal.
 */
export function cornersOf(
  round: WorkedRound,
  upright: readonly WorkedElement[],
  before: readonly LocatedRound[],
): Corner[] | null {
  const corners = markedCorners(round, upright) ?? increasesOverTips(upright, before)
  return corners && evenlySpaced(round, corners) ? corners : null
}

const isCount = (count: number): boolean => count >= CORNERS.least && count <= CORNERS.most

function markedCorners(round: WorkedRound, upright: readonly WorkedElement[]): Corner[] | null {
  const spaces = round.places.filter((place) => place.corner && place.kind === 'space')
  const marked = spaces.length > 0 ? spaces : round.places.filter((place) => place.corner)
  const perGroup = new Map<number, (typeof marked)[number][]>()
  for (const place of marked) perGroup.set(place.group, [...(perGroup.get(place.group) ?? []), place])
  if (!isCount(perGroup.size)) return null
  const sides = upright.some((element) => !perGroup.has(element.group))
  const corners: Corner[] = []
  for (const [group, places] of perGroup) {
    const element = round.elements[places[Math.floor((places.length - 1) / 2)]!.element]
    if (!element) return null
    const heights = upright.filter((own) => own.group === group && own !== element).map(relative)
    if (heights.length > 0 && Math.max(...heights) / Math.min(...heights) > PETAL_RISES) return null
    // Without stitches along the sides only a loop makes a corner: shells are petals.
    if (!sides && element.role !== 'space') return null
    corners.push({ element, group })
  }
  return corners
}

/** An edging round that increases over every petal's tip pulls the petals into a polygon. */
function increasesOverTips(
  upright: readonly WorkedElement[],
  before: readonly LocatedRound[],
): Corner[] | null {
  const groups = new Map<number, WorkedElement[]>()
  for (const element of upright) groups.set(element.group, [...(groups.get(element.group) ?? []), element])
  const increases = [...groups.values()].filter((members) => members.length > 1)
  if (!isCount(increases.length) || increases.length === groups.size) return null
  const overTips = increases.every((members) => {
    const place = members[0]!.into[0]
    const below = before.find((entry) => entry.round.index === place?.round)
    return place !== undefined && below?.seats[place.index]?.tip === true && members.length <= 3
  })
  if (!overTips) return null
  return increases.map((members) => ({
    element: members[Math.floor((members.length - 1) / 2)]!,
    group: members[0]!.group,
  }))
}

function evenlySpaced(round: WorkedRound, corners: readonly Corner[]): boolean {
  // Slip stitches that travel to the corner, and the join, are no part of a side.
  const along = round.elements.filter((element) => element.standing || element.role === 'space')
  const places = corners.map((corner) => along.indexOf(corner.element)).sort((a, b) => a - b)
  const steps = places.map((place, i) => {
    const next = places[(i + 1) % places.length]!
    return (next - place + along.length) % along.length
  })
  return Math.max(...steps) - Math.min(...steps) <= UNEVEN_SIDES
}

const relative = (element: WorkedElement): number => relativeHeight(element.countsAs ?? element.stitch)

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
  const length = round.elements.reduce((sum, element) => sum + topWidth(element, gauge), 0)
  const byHeight = baseApothem(onto, count) + height
  const byLength = length / (2 * count * Math.tan(half))
  const apothem = (byHeight + 2 * byLength) / 3
  const first = cornerAngle(corners[0]!, stood)
  const angles = corners.map((_, k) => first + (k * 2 * Math.PI) / count)
  const positions = alongSides(round, corners, gauge)
  const placed = stood.map((entry) => {
    const { corner, share } = positions.get(entry.element) ?? { corner: 0, share: 0 }
    const top = onPolygon(apothem, half, angles[corner]!, share)
    return { element: entry.element, base: entry.base, top, petal: -1 }
  })
  const located = finish(round, placed, onto, gauge, { cornered: { radius: apothem, angles } })
  return raiseCorners(located, corners, angles, apothem / Math.cos(half), gauge)
}

/** Half side to side of the ground; of a round one its radius. */
function baseApothem(onto: LocatedRound, count: number): Millimetres {
  if (onto.corners === count) return onto.radius
  // Loops and petals under a cornered round: what carries it are its seats.
  const carrying = onto.seats.filter((seat) => seat.kind !== 'slip').map((seat) => radiusOf(seat.point))
  return onto.petals.length > 0 ? mean(carrying) : onto.radius
}

function cornerAngle(corner: Corner, stood: readonly Upright[]): Radians {
  const own = stood.filter((entry) => entry.element.group === corner.group)
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
