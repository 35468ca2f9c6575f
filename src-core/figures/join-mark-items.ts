/** The marks of join points: a dot, a ring, a diamond; on paper in ink alone. */
import type { FigureItem, Path } from './figure'
import { drawPath, hemmedLine, INK, PAPER } from './figure'
import { JOIN_MARK_SIZES } from './join-marks'
import type { JoinMark } from './join-marks'
import { circlePath, diamondPath, dotPath } from './path'

/** The outline of a mark that reaches so far from its point. */
export const joinMarkPath = (mark: JoinMark, x: number, y: number, reach: number): Path =>
  mark === 'stretched' ? diamondPath(x, y, reach) : circlePath(x, y, reach)

/** Share of a dot that the paper round it adds on either side: it is seen on dark ground too (judged on prints). */
const HEM = 0.18

/** How far a mark reaches across, its hem included; `dot` is the diameter of a plain dot. */
export const joinMarkAcross = (mark: JoinMark, dot: number): number =>
  dot * JOIN_MARK_SIZES[mark] * (1 + 2 * HEM)

/** A mark about a point; `dot` is the diameter of a plain dot in printed mm. */
export function joinMarkItems(mark: JoinMark, x: number, y: number, dot: number): FigureItem[] {
  if (mark === 'two')
    return hemmedLine(dotPath(x, y), { stroke: INK, width: dot, cap: 'round' }, PAPER, 2 * HEM * dot)
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
