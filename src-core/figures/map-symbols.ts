/** The symbols of a map that every sheet of its scale shares: marks of join points, picots of an edging. */
import { picotLoop } from './edging-shapes'
import type { Colour, FigureSymbol } from './figure'
import { drawPath } from './figure'
import { joinMarkAcross, joinMarkItems } from './join-mark-items'
import type { JoinMark } from './join-marks'
import { lineOn } from './marks'
import { polygonPath } from './path'

/** The mark of a join point; a plain dot has the diameter in mm. */
export function joinSymbol(mark: JoinMark, dot: number): FigureSymbol {
  const size = joinMarkAcross(mark, dot)
  return {
    id: `meeting-point-${mark}`,
    bounds: { x: -size / 2, y: -size / 2, width: size, height: size },
    items: joinMarkItems(mark, 0, 0, dot),
  }
}

/** mm on paper: width of a stitch from which on an edging is drawn stitch by stitch; widths of its lines. */
export const LEAST_STITCH = 0.35
export const EDGE = { outline: 0.25, stitch: 0.12, band: 0.35, inner: 0.18 } as const

/** A picot of so many mm in a colour, its loop outward. */
export function picotSymbol(height: number, fill: Colour): FigureSymbol {
  const reach = height + EDGE.outline
  return {
    id: `picot-${fill}`,
    bounds: { x: -reach, y: -reach, width: 2 * reach, height: 2 * reach },
    items: [drawPath(polygonPath(picotLoop(height)), { fill, stroke: lineOn(fill), width: EDGE.outline })],
  }
}
