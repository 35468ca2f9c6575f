/** Paths of the draw lists: the few shapes that figures are made of. All lengths in mm. */
import type { Point } from '../../shared-types/plan'
import type { Bounds, Path, PathSegment } from './figure'

/** Control distance of the cubic that stands for a quarter circle of radius 1: 4/3·(√2 − 1). */
const QUARTER = 0.5522847498

export const linePath = (x1: number, y1: number, x2: number, y2: number): Path => [
  ['M', x1, y1],
  ['L', x2, y2],
]

/** An upright cross that reaches so far to every side. */
export const crossPath = (x: number, y: number, reach: number): Path => [
  ...linePath(x - reach, y, x + reach, y),
  ...linePath(x, y - reach, x, y + reach),
]

/** Corners above, right of, below and left of a place, each as far. */
export const diamondPath = (x: number, y: number, reach: number): Path =>
  polygonPath([
    { x, y: y - reach },
    { x: x + reach, y },
    { x, y: y + reach },
    { x: x - reach, y },
  ])

/** A path as SVG writes it, its numbers to so many places. */
export function pathData(path: Path, places = 3): string {
  const unit = 10 ** places
  return path
    .map(
      ([command, ...values]) =>
        command + values.map((value) => String(Math.round(value * unit) / unit || 0)).join(' '),
    )
    .join('')
}

/** Corners joined by straight lines; closed unless told otherwise. */
export function polygonPath(points: readonly Point[], closed = true): Path {
  const segments: PathSegment[] = points.map((p, i) => [i === 0 ? 'M' : 'L', p.x, p.y] as const)
  // An end without an edging has no line: nothing is closed there.
  if (closed && segments.length > 0) segments.push(['Z'])
  return segments
}

export const rectanglePath = (x: number, y: number, width: number, height: number): Path => [
  ['M', x, y],
  ['L', x + width, y],
  ['L', x + width, y + height],
  ['L', x, y + height],
  ['Z'],
]

export function circlePath(x: number, y: number, radius: number): Path {
  const k = QUARTER * radius
  return [
    ['M', x + radius, y],
    ['C', x + radius, y + k, x + k, y + radius, x, y + radius],
    ['C', x - k, y + radius, x - radius, y + k, x - radius, y],
    ['C', x - radius, y - k, x - k, y - radius, x, y - radius],
    ['C', x + k, y - radius, x + radius, y - k, x + radius, y],
    ['Z'],
  ]
}

/** An arc about (x, y) from one angle to another (radians clockwise from 12 o'clock), either way round. */
export function arcPath(x: number, y: number, radius: number, from: number, to: number): Path {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 2)))
  const step = (to - from) / pieces
  const k = (4 / 3) * Math.tan(step / 4) * radius
  const segments: PathSegment[] = [['M', x + radius * Math.sin(from), y - radius * Math.cos(from)]]
  for (let i = 0; i < pieces; i++) {
    const a = from + i * step
    const b = a + step
    segments.push([
      'C',
      x + radius * Math.sin(a) + k * Math.cos(a),
      y - radius * Math.cos(a) + k * Math.sin(a),
      x + radius * Math.sin(b) - k * Math.cos(b),
      y - radius * Math.cos(b) - k * Math.sin(b),
      x + radius * Math.sin(b),
      y - radius * Math.cos(b),
    ])
  }
  return segments
}

/** Two short strokes that make the head of an arrow whose point is at (x, y), pointing along (dx, dy). */
export function arrowHead(x: number, y: number, dx: number, dy: number, size: number): Path {
  const length = Math.hypot(dx, dy) || 1
  const ux = (dx / length) * size
  const uy = (dy / length) * size
  return [
    ['M', x - ux - uy * 0.7, y - uy + ux * 0.7],
    ['L', x, y],
    ['L', x - ux + uy * 0.7, y - uy - ux * 0.7],
  ]
}

/** A straight arrow. */
export const arrowPath = (x1: number, y1: number, x2: number, y2: number, head: number): Path => [
  ...linePath(x1, y1, x2, y2),
  ...arrowHead(x2, y2, x2 - x1, y2 - y1, head),
]

/** A dot as a stroke of no length with round ends: many of them make one short path. */
export const dotPath = (x: number, y: number): Path => linePath(x, y, x, y)

/** Bounding box of points, grown on every side. */
export function boundsOf(points: readonly Point[], grow = 0): Bounds {
  let left = Infinity
  let top = Infinity
  let right = -Infinity
  let bottom = -Infinity
  for (const { x, y } of points) {
    if (x < left) left = x
    if (x > right) right = x
    if (y < top) top = y
    if (y > bottom) bottom = y
  }
  if (left > right) return { x: 0, y: 0, width: 0, height: 0 }
  return { x: left - grow, y: top - grow, width: right - left + 2 * grow, height: bottom - top + 2 * grow }
}

/** Points turned by `turn` degrees clockwise (y down) and scaled. */
export function turnAndScale(points: readonly Point[], turn: number, scale: number): Point[] {
  const angle = (turn * Math.PI) / 180
  const c = Math.cos(angle) * scale
  const s = Math.sin(angle) * scale
  return points.map((p) => ({ x: c * p.x - s * p.y, y: s * p.x + c * p.y }))
}

/** Smallest distance from the origin to a closed outline: the circle that fits inside about the centre. */
export function innerRadius(outline: readonly Point[]): number {
  let best = Infinity
  for (let i = 0; i < outline.length; i++) {
    const a = outline[i]!
    const b = outline[(i + 1) % outline.length]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const square = dx * dx + dy * dy
    const t = square > 0 ? Math.min(1, Math.max(0, -(a.x * dx + a.y * dy) / square)) : 0
    best = Math.min(best, Math.hypot(a.x + t * dx, a.y + t * dy))
  }
  return Number.isFinite(best) ? best : 0
}

/** Largest distance from the origin to a corner of the outline. */
export const outerRadius = (outline: readonly Point[]): number =>
  outline.reduce((best, p) => Math.max(best, Math.hypot(p.x, p.y)), 0)

/** Whether two boxes have more than a border in common. */
export const overlap = (a: Bounds, b: Bounds): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height
