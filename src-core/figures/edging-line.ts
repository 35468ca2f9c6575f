/** The outer border of a blanket's edging, for its maps: the plan's own lines grown by the height of its rounds. */
import type { Plan, Point } from '../../shared-types/plan'
import { OPEN_ENDS } from '../edging/open-ends'
import { signedArea } from '../geometry/points'
import { clockwise, grow } from '../geometry/polygons'
import { simplify } from '../geometry/simplify'

/**
 * The closed outer lines of the edging in plan mm, clockwise, without points that change it by less than `detail`
 * mm. Empty when the plan has no edging.
 */
export function edgingBorder({ edging, edgingLines, round }: Plan, detail: number): Point[][] {
  if (!edging || edging.height <= 0) return []
  const { height } = edging
  const closed = round ? edgingLines.slice(OPEN_ENDS) : edgingLines
  const [outer, holes] = [
    closed.filter((line) => signedArea(line) > 0),
    closed.filter((line) => signedArea(line) < 0),
  ]
  const ends = round
    ? edgingLines
        .slice(0, OPEN_ENDS)
        .flatMap((line, i) => (line.length > 1 ? [bandAlong(line, i === 0 ? -height : height)] : []))
    : []
  return [
    ...grow(outer, height, detail / 2).filter((border) => signedArea(border) > 0),
    // In a hole the edging grows inwards, until it is closed.
    ...holes.flatMap((hole) => grow([clockwise(hole)], -height, detail / 2)),
    ...ends,
  ].map((border) => simplify(border, detail / 2))
}

/** The band between an open line and the same line so much farther down. */
const bandAlong = (line: readonly Point[], down: number): Point[] => [
  ...line,
  ...[...line].reverse().map(({ x, y }) => ({ x, y: y + down })),
]
