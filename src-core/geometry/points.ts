/** Points, turns and boxes. Axes as on paper: x right, y down; angles clockwise from 12 o'clock. */
import type { Point } from '../../shared-types/plan'
import type { Millimetres, Radians } from '../units/quantity'

export type Outline = readonly Point[]

export interface Box {
  readonly left: Millimetres
  readonly top: Millimetres
  readonly right: Millimetres
  readonly bottom: Millimetres
}

/** The point at `radius` in the direction `angle` (clockwise from 12 o'clock). */
export const polar = (radius: Millimetres, angle: Radians): Point => ({
  x: radius * Math.sin(angle),
  y: -radius * Math.cos(angle),
})

/** Direction of a point from the origin, clockwise from 12 o'clock, in (−π, π]. */
export const directionOf = (point: Point): Radians => Math.atan2(point.x, -point.y)

export const distance = (a: Point, b: Point): Millimetres => Math.hypot(a.x - b.x, a.y - b.y)

/** `point` turned clockwise by `angle` about the origin. */
export function turnPoint(point: Point, angle: Radians): Point {
  const cos = Math.cos(angle)
  const sin = Math.sin(angle)
  return { x: point.x * cos - point.y * sin, y: point.x * sin + point.y * cos }
}

/** An outline turned clockwise by `angle` about the origin; the same object for no turn. */
export function turnOutline(outline: Outline, angle: Radians): Outline {
  return angle === 0 ? outline : outline.map((point) => turnPoint(point, angle))
}

export const moveOutline = (outline: Outline, dx: Millimetres, dy: Millimetres): Outline =>
  outline.map((point) => ({ x: point.x + dx, y: point.y + dy }))

export const scaleOutline = (outline: Outline, factor: number): Outline =>
  outline.map((point) => ({ x: point.x * factor, y: point.y * factor }))

/** Box round one or more outlines; an empty input gives a box of no size at the origin. */
export function boxOf(...outlines: readonly Outline[]): Box {
  let left = Infinity
  let top = Infinity
  let right = -Infinity
  let bottom = -Infinity
  for (const outline of outlines) {
    for (const point of outline) {
      if (point.x < left) left = point.x
      if (point.x > right) right = point.x
      if (point.y < top) top = point.y
      if (point.y > bottom) bottom = point.y
    }
  }
  return left > right ? { left: 0, top: 0, right: 0, bottom: 0 } : { left, top, right, bottom }
}

/** Signed area in mm²: positive for an outline that runs clockwise on paper. */
export function signedArea(outline: Outline): number {
  let twice = 0
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[j]!
    const b = outline[i]!
    twice += a.x * b.y - b.x * a.y
  }
  return twice / 2
}

/** Whether two outlines have the same points in the same order. */
export const isSameOutline = (one: Outline, other: Outline): boolean =>
  one.length === other.length && one.every(({ x, y }, i) => x === other[i]!.x && y === other[i]!.y)

/** Length of a closed outline. */
export function perimeter(outline: Outline): Millimetres {
  let sum = 0
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++)
    sum += distance(outline[j]!, outline[i]!)
  return sum
}

/** Largest distance of an outline's points from the origin. */
export function reachOf(outline: Outline): Millimetres {
  let most = 0
  for (const point of outline) most = Math.max(most, Math.hypot(point.x, point.y))
  return most
}

/** Whether a point lies inside an outline (even-odd rule; points on the edge may go either way). */
export function contains(outline: Outline, point: Point): boolean {
  let inside = false
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[i]!
    const b = outline[j]!
    if (a.y > point.y !== b.y > point.y && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x)
      inside = !inside
  }
  return inside
}

/** The place on the edge from `a` to `b` that lies nearest to a point, as a share of the edge. */
export function nearestShare(point: Point, a: Point, b: Point): number {
  const squared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2
  if (squared === 0) return 0
  return Math.min(1, Math.max(0, ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / squared))
}

/** Distance of a point from the edge between `a` and `b`. */
export function distanceToEdge(point: Point, a: Point, b: Point): Millimetres {
  const share = nearestShare(point, a, b)
  return Math.hypot(a.x + (b.x - a.x) * share - point.x, a.y + (b.y - a.y) * share - point.y)
}
