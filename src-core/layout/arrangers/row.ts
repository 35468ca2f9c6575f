/** A row: items at equal distances along a drawn line. */
import type { Point } from '../../../shared-types/plan'
import { readPath } from '../../geometry/svg-path'
import type { PathTrouble } from '../../geometry/svg-path'
import { radians } from '../../units/quantity'
import type { Degrees } from '../../units/quantity'
import { facingTurn, Line, wholeCount } from './arranged'
import type { ArrangedItem, Facing } from './arranged'

interface RowOptions {
  readonly count: number
  /** The line as it was drawn. */
  readonly points: readonly Point[]
  /** Whether the line comes back to its beginning: the last item then keeps its distance from the first. */
  readonly closed?: boolean
  /** Outward is to the left of the way the line runs: up for a line drawn from left to right. */
  readonly facing?: Facing
  readonly turn?: Degrees
}

/** Items from the line's first end to its last; a single one lies in the middle. Distances are along the line. */
export function rowAlong(options: RowOptions): ArrangedItem[] {
  const { points, closed = false, facing = 'outward', turn = 0 } = options
  const count = wholeCount(options.count)
  const usable = points.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))
  if (!usable || points.length < 2) return []
  const line = new Line(closed ? [...points, points[0]!] : points)
  if (line.length === 0) return []
  return Array.from({ length: count }, (_, i) => {
    const share = closed ? i / count : count === 1 ? 0.5 : i / (count - 1)
    const { point, direction } = line.at(share * line.length)
    return { ...point, turn: facingTurn(facing, direction - radians(90), direction, turn) }
  })
}

/** The line of SVG path data in mm, as a row follows it: one piece. */
export function lineOfPath(
  text: string,
): { points: readonly Point[]; closed: boolean } | { trouble: PathTrouble } | { pieces: number } {
  const read = readPath(text)
  if ('trouble' in read) return read
  const pieces = read.subPaths.filter(({ points }) => points.length > 1)
  return pieces.length === 1 ? pieces[0]! : { pieces: pieces.length }
}
