/**
 * M27: where fillers can stand in an opening: in its middle, or in each of its lobes where a neck between two motifs
 * is too narrow for one that is joined to all of them.
 */
import polylabel from 'polylabel'
import type { Point } from '../../shared-types/plan'
import { clockwise, grow } from '../geometry/polygons'
import { distance, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import type { Millimetres } from '../units/quantity'
import { FILLER_GIVES } from './constants'
import type { OpeningKind } from './holes'

/** Where a circle is as large as it can be in an opening, about the first motif round it. */
export interface Room {
  readonly middle: Point
  readonly radius: Millimetres
}

/** The largest circle of an opening. */
export const middleOf = ({ pole, radius }: OpeningKind): Room => ({ middle: pole, radius })

/** Into so many steps the search for necks parts what a filler leaves of the way to the middle. */
const STEPS = 16
/** Middles that are nearer to each other than this are the same, in mm. */
const SAME: Millimetres = 0.05

/**
 * The rooms of an opening for a filler of so much radius, the largest first: what is left of it where it is narrowed
 * step by step falls apart at its necks, and each part has a largest circle of its own.
 */
export function roomsIn(kind: OpeningKind, radius: Millimetres): Room[] {
  const { contour, by, pole } = kind
  const least = Math.max(0, Math.min(radius, kind.radius) - FILLER_GIVES - by)
  const step = (kind.radius - by - least) / STEPS
  const found: Room[] = []
  // A part of what was narrowed by `narrowed`: its own parts, or where none is left, its middle.
  const look = (part: Outline, narrowed: Millimetres): void => {
    const parts = partsOf(part, step)
    if (parts.length > 0) return parts.forEach((each) => look(each, narrowed + step))
    const ring = part.map(({ x, y }): [number, number] => [x, y])
    ring.push(ring[0]!)
    const own = polylabel([ring], 0.01)
    const middle = { x: own[0]!, y: own[1]! }
    found.push(
      distance(middle, pole) < SAME ? middleOf(kind) : { middle, radius: own.distance + narrowed + by },
    )
  }
  for (const part of partsOf(clockwise(contour), least)) look(part, least)
  return found.sort((a, b) => b.radius - a.radius)
}

const partsOf = (outline: Outline, by: Millimetres): Outline[] =>
  grow([outline], -by).filter((part) => signedArea(part) > 0)
