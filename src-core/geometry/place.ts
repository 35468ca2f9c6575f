/** An outline laid in its place: mirrored left to right where its wrong side is up, then turned, then moved. */
import type { Point } from '../../shared-types/plan'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { turnPoint } from './points'
import type { Outline } from './points'

interface Place {
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
  readonly flipped?: boolean
}

/** A point of a motif, about its centre, where it comes to lie. */
export function placePoint(point: Point, { x, y, turn, flipped }: Place): Point {
  const turned = turnPoint(flipped ? { x: -point.x, y: point.y } : point, radians(turn))
  return { x: turned.x + x, y: turned.y + y }
}

/** A whole outline where it comes to lie; a mirrored one runs the other way round. */
export const placeOutline = (outline: Outline, place: Place): Outline =>
  outline.map((point) => placePoint(point, place))
