/**
 * M20–M25: the lattice on which motifs stand. Column pitch and row pitches come from touching distances of the
 * turned outlines, grown by half of the rule's gap so that the gap is kept in every direction.
 */
import type { Point } from '../../shared-types/plan'
import { boxOf, turnOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { growOne } from '../geometry/polygons'
import { farProfile, profileDistance } from '../geometry/touching'
import type { Profile } from '../geometry/touching'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'

export interface Lattice {
  /** From one motif of a row to the next. */
  readonly column: Millimetres
  /** From an odd row (1, 3, …) to the even one under it, and from an even row to the odd one under it. */
  readonly rows: readonly [toEven: Millimetres, toOdd: Millimetres]
  /** How far even rows are shifted to the right. */
  readonly shift: Millimetres
  /** Turn of odd and of even rows. */
  readonly turns: readonly [Degrees, Degrees]
  /** Outlines of odd and of even rows, turned, without the gap. */
  readonly outlines: readonly [Outline, Outline]
}

const EAST: Point = { x: 1, y: 0 }
const WEST: Point = { x: -1, y: 0 }
/** Cross coordinates of a slide southwards run to the west, hence the signs of `lateral` below. */
const SOUTH: Point = { x: 0, y: 1 }
const NORTH: Point = { x: 0, y: -1 }

/** Far profiles of one turned and grown outline in the four directions that rows need. */
interface Sides {
  readonly east: Profile
  readonly west: Profile
  readonly south: Profile
  readonly north: Profile
  readonly width: Millimetres
}

function sidesOf(outline: Outline): Sides {
  const box = boxOf(outline)
  return {
    east: farProfile(outline, EAST),
    west: farProfile(outline, WEST),
    south: farProfile(outline, SOUTH),
    north: farProfile(outline, NORTH),
    width: 2 * Math.max(Math.abs(box.left), Math.abs(box.right)),
  }
}

/** Distance at which a row of `lower`, set off to the right by `shift`, first touches a row of `upper`. */
function rowDistance(upper: Sides, lower: Sides, column: Millimetres, shift: Millimetres): Millimetres {
  const reach = (upper.width + lower.width) / 2
  let most = 0
  for (let k = Math.ceil((-reach - shift) / column); k * column + shift <= reach; k++) {
    const here = profileDistance(upper.south, lower.north, -(k * column + shift))
    if (here !== null && here > most) most = here
  }
  return most
}

/**
 * The lattice for rows of one outline. `offset`: even rows are shifted by half a pitch; `turn` and
 * `alternateTurn` in degrees clockwise, the latter added on even rows; `gap` in mm between outlines.
 */
export function latticeOf(
  outline: Outline,
  offset: boolean,
  turn: Degrees,
  alternateTurn: Degrees,
  gap: Millimetres,
): Lattice {
  const odd = turnOutline(outline, radians(turn))
  const even = alternateTurn === 0 ? odd : turnOutline(outline, radians(turn + alternateTurn))
  const oddSides = sidesOf(growOne(odd, gap / 2))
  const evenSides = even === odd ? oddSides : sidesOf(growOne(even, gap / 2))
  const along = (sides: Sides) => profileDistance(sides.east, sides.west, 0) ?? 0
  const column = Math.max(along(oddSides), along(evenSides))
  const shift = offset ? column / 2 : 0
  const toEven = rowDistance(oddSides, evenSides, column, shift)
  // A row must clear the row above it and, where motifs reach through, the one above that.
  const twoOn = Math.max(
    rowDistance(oddSides, oddSides, column, 0),
    even === odd ? 0 : rowDistance(evenSides, evenSides, column, 0),
  )
  const toOdd = Math.max(rowDistance(evenSides, oddSides, column, -shift), twoOn - toEven)
  return {
    column,
    rows: [toEven, toOdd],
    shift,
    turns: [turn, turn + alternateTurn],
    outlines: [odd, even],
  }
}
