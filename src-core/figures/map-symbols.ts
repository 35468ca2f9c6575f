/** The symbols of a map that every sheet of its scale shares: marks of join points, picots of an edging. */
import { picotLoop } from './edging-shapes'
import type { FigureSymbol } from './figure'
import { drawPath, INK, PAPER } from './figure'
import { joinMarkAcross, joinMarkItems } from './join-mark-items'
import type { JoinMark } from './join-marks'
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
export const EDGE = { outline: 0.25, stitch: 0.12 } as const

/** A picot of so many mm, its loop outward. */
export function picotSymbol(height: number): FigureSymbol {
  const reach = height + EDGE.outline
  return {
    id: 'picot',
    bounds: { x: -reach, y: -reach, width: 2 * reach, height: 2 * reach },
    items: [drawPath(polygonPath(picotLoop(height)), { fill: PAPER, stroke: INK, width: EDGE.outline })],
  }
}
