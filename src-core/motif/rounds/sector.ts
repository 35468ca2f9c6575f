/** Neighbours press (M10): petals and loops keep to their own sector of the round. */
import type { Point } from '../../../shared-types/plan'
import type { Millimetres, Radians } from '../../units/quantity'
import { archAt } from './arch'
import type { Arch } from './arch'
import { angleOf, at, radiusOf, unwrap } from './ground'

/** Centre of a sector and half of it, in working direction. */
export interface Sector {
  readonly angle: Radians
  readonly half: Radians
}

const TURN = 2 * Math.PI

/** Distance of a point from the nearer border of a sector, positive inside; and which border that is. */
function fromBorder(point: Point, { angle, half }: Sector): { inside: Millimetres; border: Radians } {
  const off = unwrap(angleOf(point), angle) - angle
  const border = angle + (off < 0 ? -half : half)
  return { inside: radiusOf(point) * Math.sin(half - Math.abs(off)), border }
}

/** Neighbours press: a stitch that would lean over the border of its sector stands up along it instead. */
export function pressed(base: Point, top: Point, sector: Sector, free: Millimetres): Point {
  if (sector.half >= Math.PI / 2) return top
  const { inside, border } = fromBorder(top, sector)
  if (inside >= free) return top
  const foot = fromBorder(base, sector).inside
  const height = Math.hypot(top.x - base.x, top.y - base.y)
  const across = Math.min(height, Math.max(0, foot - free))
  const along = Math.sqrt(height * height - across * across)
  const out = at(along, border)
  const side = at(across, border + (border < sector.angle ? -Math.PI / 2 : Math.PI / 2))
  return { x: base.x + out.x + side.x, y: base.y + out.y + side.y }
}

/** The share of a loop at either end where neighbours leave no room for a stitch to stand on. */
export function pressedShare(loop: Arch, outward: Point, sector: Sector, free: Millimetres): number {
  for (let step = 20; step > 0; step--) {
    const { point } = archAt(loop, step / 40, outward)
    if (fromBorder(point, sector).inside < free) return step >= 16 ? 0 : (step + 1) / 40
  }
  return 0
}

/** A chain of a loop keeps between two directions, seen from the centre: wide loops press on their neighbours. */
export function betweenEnds(point: Point, start: Radians, end: Radians, free: Millimetres): Point {
  const half = ((end - start + 2 * TURN) % TURN) / 2
  if (half >= Math.PI / 2) return point
  const sector = { angle: start + half, half }
  const { inside, border } = fromBorder(point, sector)
  const radius = radiusOf(point)
  const wanted = Math.min(free, (radius * Math.sin(half)) / 2)
  if (inside >= wanted) return point
  return at(radius, border + (border < sector.angle ? 1 : -1) * Math.asin(wanted / Math.max(radius, 1e-9)))
}
