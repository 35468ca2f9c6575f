/**
 * M35: which way an edging is worked. The right side faces, so the work lies to the left of the way for right-handers,
 * to its right for left-handers: round a piece they go counterclockwise and clockwise, round a hole the other way.
 */
import type { Point } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import type { Outline } from '../geometry/points'
import type { BorderEdge } from './border'
import type { OpenCorner } from './line-places'
import { OPEN_ENDS } from './open-ends'

/**
 * Whether a line of a plan's edge is worked from its end to its beginning. Lines run with the work to their right, that
 * along the bottom of what is joined in the round, which begins where the mouth does, with it to their left.
 */
export const isAgainst = (line: number, isRound: boolean, hand: Hand): boolean =>
  (isRound && line === OPEN_ENDS - 1) === (hand === 'left')

/** A line the way it is worked; a closed one begins where it did. */
export function worked<T>(line: readonly T[], isOpen: boolean, against: boolean): readonly T[] {
  if (!against) return line
  return isOpen ? line.toReversed() : [...line.slice(0, 1), ...line.slice(1).reverse()]
}

/** A line of a plan's edge the way it is worked. */
export const workedLine = (
  lines: readonly Outline[],
  index: number,
  isRound: boolean,
  hand: Hand,
): readonly Point[] =>
  worked(lines[index] ?? [], isRound && index < OPEN_ENDS, isAgainst(index, isRound, hand))

const mirrored = <T extends Point>(point: T): T => ({ ...point, x: -point.x })

/** Directions from the one on that comes nearest to a given one: who begins at the top left begins at the top right in a mirror. */
function asFirst(directions: readonly Point[], first: Point | undefined): readonly Point[] {
  if (!first) return directions
  const towards = ({ x, y }: Point): number => (x * first.x + y * first.y) / (Math.hypot(x, y) || 1)
  const start = directions.reduce(
    (best, each, i) => (towards(each) > towards(directions[best]!) ? i : best),
    0,
  )
  return [...directions.slice(start), ...directions.slice(0, start)]
}

/**
 * An edge as its rounds are counted along it: each line the way it is worked, and where that is against its own, seen in a
 * mirror, so that it runs as it did.
 */
export function edgeAsWorked(edge: BorderEdge, hand: Hand): BorderEdge {
  const isMirrored = (index: number): boolean => isAgainst(index, edge.isRound, hand)
  const corner = ({ middle, out, into, reach }: OpenCorner): OpenCorner => ({
    ...{ middle: mirrored(middle), out: mirrored(out), reach },
    into: into === 'next' ? 'last' : 'next',
  })
  return {
    ...edge,
    lines: edge.lines.map((line, i) =>
      isMirrored(i) ? workedLine(edge.lines, i, edge.isRound, hand).map(mirrored) : line,
    ),
    // A gap follows its point: worked against, it follows the point after it.
    ...(edge.straight && {
      straight: edge.straight.map((gaps, i) => (isMirrored(i) ? gaps.toReversed() : gaps)),
    }),
    outward: isMirrored(OPEN_ENDS) ? asFirst(edge.outward.map(mirrored), edge.outward[0]) : edge.outward,
    ends: edge.ends.map((corners, i) => (isMirrored(i) ? corners.map(corner) : corners)),
  }
}
