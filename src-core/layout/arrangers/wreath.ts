/** A wreath: items at equal distances along a circle or an ellipse. */
import type { Point } from '../../../shared-types/plan'
import { radians } from '../../units/quantity'
import type { Degrees, Millimetres } from '../../units/quantity'
import { facingTurn, Line, wholeCount } from './arranged'
import type { ArrangedItem, Facing } from './arranged'

interface WreathOptions {
  readonly count: number
  readonly centre: Point
  /** Half of the width and of the height of the line that the centres lie on. */
  readonly radiusX: Millimetres
  readonly radiusY: Millimetres
  /** Where the first item lies, clockwise from 12 o'clock on a circle; a share of the way round an ellipse. */
  readonly start?: Degrees
  readonly facing?: Facing
  /** Added to every turn. */
  readonly turn?: Degrees
}

/** Pieces that the way round an ellipse is measured with: a metre across is out by under 0.01 mm. */
const PIECES = 2880

/** Items run clockwise from `start`. An empty list for radii that are no size. */
export function wreath(options: WreathOptions): ArrangedItem[] {
  const { centre, radiusX, radiusY, start = 0, facing = 'outward', turn = 0 } = options
  const count = wholeCount(options.count)
  if (!(radiusX > 0 && radiusY > 0 && Number.isFinite(radiusX + radiusY + start))) return []
  const round = Array.from({ length: PIECES + 1 }, (_, i) => {
    const angle = (2 * Math.PI * i) / PIECES
    return { x: radiusX * Math.sin(angle), y: -radiusY * Math.cos(angle) }
  })
  const line = new Line(round)
  const circle = radiusX === radiusY
  return Array.from({ length: count }, (_, i) => {
    const share = (((start / 360 + i / count) % 1) + 1) % 1
    const { point } = line.at(share * line.length)
    const angle = circle ? 2 * Math.PI * share : Math.atan2(point.x / radiusX, -point.y / radiusY)
    const x = radiusX * Math.sin(angle)
    const y = -radiusY * Math.cos(angle)
    // The outward normal of an ellipse at this place.
    const outward = Math.atan2(x / radiusX ** 2, -y / radiusY ** 2)
    return {
      x: centre.x + x,
      y: centre.y + y,
      turn: facingTurn(facing, outward, outward + radians(90), turn),
    }
  })
}
