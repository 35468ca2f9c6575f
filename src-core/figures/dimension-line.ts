/** Dimension lines, on paper and in the window: a line with an end at each place, and a gap for its number. */
import type { Point } from '../../shared-types/plan'
import type { Path } from './figure'
import { arrowHead, linePath } from './path'

/** What ends a line, at a place; (ux, uy) points away from the line. */
type LineEnd = (at: Point, ux: number, uy: number) => Path

/** A stroke across the line that reaches so far to either side. */
export const tickEnd =
  (reach: number): LineEnd =>
  ({ x, y }, ux, uy) =>
    linePath(x - uy * reach, y + ux * reach, x + uy * reach, y - ux * reach)

/** The head of an arrow of this size. */
export const arrowEnd =
  (size: number): LineEnd =>
  ({ x, y }, ux, uy) =>
    arrowHead(x, y, ux, uy, size)

interface DimensionOptions {
  readonly end: LineEnd
  /** Distances from its beginning between which the line is left out; all of it is drawn without. */
  readonly gap?: readonly [number, number] | null
  /** Whether the beginning and the end of what is measured are here; both unless told otherwise. */
  readonly ends?: readonly [boolean, boolean]
}

/** The strokes of a dimension line from one place to another. */
export function dimensionPath(
  from: Point,
  to: Point,
  { end, gap, ends = [true, true] }: DimensionOptions,
): Path {
  const length = Math.hypot(to.x - from.x, to.y - from.y)
  const [ux, uy] = length > 0 ? [(to.x - from.x) / length, (to.y - from.y) / length] : [1, 0]
  const piece = (a: number, b: number): Path =>
    b > a ? linePath(from.x + ux * a, from.y + uy * a, from.x + ux * b, from.y + uy * b) : []
  const line = gap
    ? [...piece(0, Math.min(gap[0], length)), ...piece(Math.max(gap[1], 0), length)]
    : piece(0, length)
  return [...line, ...(ends[0] ? end(from, -ux, -uy) : []), ...(ends[1] ? end(to, ux, uy) : [])]
}
