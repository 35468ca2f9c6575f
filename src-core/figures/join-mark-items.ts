/** The printed marks of join points, in ink alone: a dot, a ring, a diamond. */
import type { FigureItem } from './figure'
import { drawPath, INK, PAPER } from './figure'
import { JOIN_MARK_SIZES } from './join-marks'
import type { JoinMark } from './join-marks'
import { circlePath, dotPath, polygonPath } from './path'

/** A mark about a point; `dot` is the diameter of a plain dot in printed mm. */
export function joinMarkItems(mark: JoinMark, x: number, y: number, dot: number): FigureItem[] {
  if (mark === 'two') return [drawPath(dotPath(x, y), { stroke: INK, width: dot, cap: 'round' })]
  const size = dot * JOIN_MARK_SIZES[mark]
  if (mark === 'several') {
    const width = size * 0.28
    return [drawPath(circlePath(x, y, (size - width) / 2), { fill: PAPER, stroke: INK, width })]
  }
  const half = size / 2
  const diamond = [
    { x, y: y - half },
    { x: x + half, y },
    { x, y: y + half },
    { x: x - half, y },
  ]
  return [drawPath(polygonPath(diamond), { fill: INK, stroke: PAPER, width: size * 0.08 })]
}
