/** How much of each part (colour section) of a motif can be seen on a drawing of it. */
import type { MotifAccount, Point } from '../../shared-types/plan'
import { difference } from '../geometry/polygons'
import { signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'

/** Corners of a circle that is cut out of an outline: its area is right to a thousandth. */
const CIRCLE_CORNERS = 72

const circle = ({ x, y }: Point, radius: number): Outline =>
  Array.from({ length: CIRCLE_CORNERS }, (_, i) => {
    const angle = (2 * Math.PI * i) / CIRCLE_CORNERS
    return { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) }
  })

/** A disc that covers a part of the drawing. */
interface Cover {
  readonly centre: Point
  readonly radius: number
}

/**
 * The area of each part that neither a part above it nor a disc covers, in the square of the unit of `layers`
 * (outermost first). A part that is drawn in several layers counts with all of them.
 */
export function areasShown(layers: MotifAccount['layers'], cover?: Cover): Map<string, number> {
  const areas = new Map<string, number>()
  const lid = cover && cover.radius > 0 ? [circle(cover.centre, cover.radius)] : []
  layers.forEach(({ slot, outline }, i) => {
    const above = layers.slice(i + 1).map((layer) => layer.outline)
    const left = difference([outline], [...above, ...lid])
    const area = Math.abs(left.reduce((sum, piece) => sum + signedArea(piece), 0))
    areas.set(slot, (areas.get(slot) ?? 0) + area)
  })
  return areas
}
