/** Picots: closed loops of chains on top of a stitch, apart from each other where several stand on one. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { PICOT } from './constants'
import { isDrawing } from './drawing'
import { angleOf, at, middleOf } from './ground'

const TURN = 2 * Math.PI
/** Picots that follow each other on one stitch lean apart by so much, and keep so far from each other (by eye). */
const PICOTS_LEAN: Radians = (75 * Math.PI) / 180
const PICOTS_APART = 0.3

/** Direction of a picot, and how far from its stitch it begins where several stand on that. */
export function picotLean(
  element: WorkedElement,
  carrier: WorkedElement,
  { elements }: WorkedRound,
  before: readonly (WorkedElement | null)[],
  gauge: ResolvedGauge,
): { lean: Radians; clear: Millimetres } {
  const beside = elements.filter((each, i) => each.role === 'picot' && before[i] === carrier)
  if (beside.length < 2 || !isDrawing(gauge)) return { lean: 0, clear: 0 }
  const largest = PICOT * gauge.width * Math.max(...beside.map(({ count }) => count))
  const apart = (largest + PICOTS_APART * gauge.width) / (2 * Math.sin(PICOTS_LEAN / 2))
  const lean = (beside.indexOf(element) - (beside.length - 1) / 2) * PICOTS_LEAN
  return { lean, clear: Math.max(0, apart - largest / 2) }
}

/** A point so far from another one, at an angle to the way outward. */
export function alongFrom(foot: Point, distance: Millimetres, lean: Radians): Point {
  const out = at(distance, angleOf(foot) + lean)
  return { x: foot.x + out.x, y: foot.y + out.y }
}

/** A closed loop of chains on top of a stitch, drawn as a small circle. */
export function picotChain(foot: Point, top: Point, count: number): Point[] {
  const centre = middleOf(foot, top)
  const size = Math.hypot(top.x - foot.x, top.y - foot.y)
  const angle = Math.atan2(top.x - foot.x, foot.y - top.y)
  return Array.from({ length: count }, (_, k) => {
    const around = angle + Math.PI + ((k + 1) / (count + 1)) * TURN
    return { x: centre.x + (size / 2) * Math.sin(around), y: centre.y - (size / 2) * Math.cos(around) }
  })
}
