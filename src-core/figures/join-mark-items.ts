/** The marks of join points: a dot, a ring, a diamond; on paper in ink alone. */
import type { FigureItem, Path } from './figure'
import { drawPath, INK, PAPER } from './figure'
import { JOIN_MARK_SIZES } from './join-marks'
import type { JoinMark } from './join-marks'
import { circlePath, diamondPath, dotPath } from './path'

/** The outline of a mark that reaches so far from its point. */
export const joinMarkPath = (mark: JoinMark, x: number, y: number, reach: number): Path =>
  mark === 'stretched' ? diamondPath(x, y, reach) : circlePath(x, y, reach)

/** A mark about a point; `dot` is the diameter of a plain dot in printed mm. */
export function joinMarkItems(mark: JoinMark, x: number, y: number, dot: number): FigureItem[] {
  if (mark === 'two') return [drawPath(dotPath(x, y), { stroke: INK, width: dot, cap: 'round' })]
  const size = dot * JOIN_MARK_SIZES[mark]
  const ring = mark === 'several' ? size * 0.28 : 0
  const path = joinMarkPath(mark, x, y, (size - ring) / 2)
  return [
    drawPath(
      path,
      ring > 0 ? { fill: PAPER, stroke: INK, width: ring } : { fill: INK, stroke: PAPER, width: size * 0.08 },
    ),
  ]
}
