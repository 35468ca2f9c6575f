/** Where numbers, letters and ticks stand in a motif: within its outline, and off the lines that are drawn there. */
import polylabel from 'polylabel'
import type { MotifAccount, Point } from '../../shared-types/plan'
import { contains, distanceToEdge } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { memoised } from '../memo'
import { keptHalf, laidOutline } from './motif-parts'
import type { Lay } from './motif-parts'

/** A place about the centre of a motif with how far the nearest line is from it, in mm. */
export interface Seat extends Point {
  readonly room: number
}

/** mm: how near a middle is found to the true one. */
const PRECISION = 0.05

/** The place in an outline that lies farthest from its edge. */
export function middleOf(outline: Outline): Seat {
  if (outline.length < 3) return { x: 0, y: 0, room: 0 }
  const pole = polylabel([outline.map(({ x, y }): [number, number] => [x, y])], PRECISION)
  return { x: pole[0]!, y: pole[1]!, room: pole.distance }
}

const edgeRoom = (at: Point, outline: Outline): number =>
  outline.reduce(
    (least, point, i) =>
      Math.min(least, distanceToEdge(at, outline[(i + outline.length - 1) % outline.length]!, point)),
    Infinity,
  )

/** Places that are tried along a way. */
const TRIED = 24

/** A half motif as it lies, with the middle of what is there of it. */
export interface HalfSeats {
  readonly outline: Outline
  readonly middle: Seat
}

/** Share of the most room for which a middle stands nearer to the height of the whole motif's. */
const LEVEL = 0.92

/** The middle of a half, as near to the height of the whole one's as has about as much room. */
function levelMiddle(half: Outline): Seat {
  const most = middleOf(half)
  for (let i = 0; i < TRIED; i++) {
    const at = { x: most.x, y: (most.y * i) / TRIED }
    if (!contains(half, at)) continue
    const room = edgeRoom(at, half)
    if (room >= LEVEL * most.room) return { ...at, room }
  }
  return most
}

const STRAIGHT = { x: 1, y: 1 }

/** Many halves lie alike: of each of these the seats are found once. */
const halfSeatsAt = memoised(
  (outline: Outline, turn: number, side: 'left' | 'right', x: number, y: number): HalfSeats => {
    const lay: Lay = { turn, scale: 1, stretch: { x, y }, half: keptHalf({ side }) }
    const half = laidOutline(outline, lay)
    return { outline: half, middle: levelMiddle(half) }
  },
  16,
)

/** Of a half motif at a side of the work, its motif stretched as the whole is by blocking. */
export const halfSeats = (
  { outline }: Pick<MotifAccount, 'outline'>,
  { turn, side }: { readonly turn: number; readonly side: 'left' | 'right' },
  { x, y }: { readonly x: number; readonly y: number } = STRAIGHT,
): HalfSeats => halfSeatsAt(outline, turn, side, x, y)

/**
 * A place straight above (−1) or below (1) the middle of a half, `off` mm from it where its outline leaves a mark of
 * that radius room there, else as far as it does.
 */
export function seatBeside({ outline, middle }: HalfSeats, off: number, radius: number, way: 1 | -1): Point {
  for (let i = TRIED; i > 0; i--) {
    const at = { x: middle.x, y: middle.y + (way * off * i) / TRIED }
    if (contains(outline, at) && edgeRoom(at, outline) >= radius) return at
  }
  return middle
}

/** Directions that are tried about a middle. */
const AROUND = 16

/** The place so far from the middle of a half that lies farthest within its outline; below it where none does. */
export function seatAround({ outline, middle }: HalfSeats, off: number): Point {
  const at = (i: number): Point => {
    const angle = (2 * Math.PI * i) / AROUND
    return { x: middle.x + off * Math.sin(angle), y: middle.y + off * Math.cos(angle) }
  }
  let best = { at: at(0), room: 0 }
  for (let i = 0; i < AROUND; i++) {
    const room = contains(outline, at(i)) ? edgeRoom(at(i), outline) : 0
    if (room > best.room + 1e-6) best = { at: at(i), room }
  }
  return best.at
}

/** How far a letter must keep from the edge of its motif, and from lines in it, as shares of the motif. */
const LETTER = { seam: 0.085, line: 0.07 } as const

/**
 * Where a letter stands between a place near the centre and one on the edge: off the edge first, where another motif
 * begins, then off the lines of the layers. `from` is as far as the number in the middle reaches.
 */
export function seatTowards(layers: readonly Outline[], edge: Point, from: number, across: number): Point {
  const length = Math.hypot(edge.x, edge.y)
  const [outline, ...inner] = layers
  if (!outline || length <= from) return edge
  let best = { x: 0, y: from, worth: -Infinity }
  for (let i = 0; i <= TRIED; i++) {
    const share = (from + ((length - from) * i) / TRIED) / length
    const at = { x: edge.x * share, y: edge.y * share }
    if (!contains(outline, at)) continue
    const seam = Math.min(1, edgeRoom(at, outline) / (LETTER.seam * across))
    const line = Math.min(1, ...inner.map((each) => edgeRoom(at, each) / (LETTER.line * across)))
    const worth = 2 * seam + line
    if (worth > best.worth + 1e-9) best = { ...at, worth }
  }
  return best
}
