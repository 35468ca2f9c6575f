/** The lines that written rounds of an edging stand on: where each stitch of the set-up round is, and which way is out. */
import type { EdgingLoop, Plan, Point } from '../../shared-types/plan'
import type { Hand, Terms } from '../../shared-types/project'
import { workedLine } from '../edging/direction'
import { alongOf, pointAlong } from '../edging/line-places'
import { OPEN_ENDS } from '../edging/open-ends'
import { distance, signedArea } from '../geometry/points'
import { clockwise, grow } from '../geometry/polygons'

/** mm. Detail of the line that rounds stand on (ours: less than a line is wide). */
const BASE = 0.2

/** Where stitches stand along a line. */
export interface Track {
  /** The place of a stitch of the set-up round, so many mm above it. */
  readonly at: (stitch: number, height: number) => Point
  /** The way out there. */
  readonly out: (stitch: number) => Point
  readonly isOpen: boolean
  /** Open, and worked from the right end of the map. */
  readonly isLeftward: boolean
  readonly base: readonly Point[]
}

/** What written rounds are drawn along. */
export interface Way extends Pick<Plan, 'edgingLines'> {
  /** Its first two lines are open ends. */
  readonly isRound: boolean
  readonly terms: Terms
  /** Whose way it is. */
  readonly hand: Hand
  /** Stitches of the words' own. */
  readonly special?: string
}

/** The way along a loop of the set-up round; null where it is closed by the rounds below. */
export function trackOf({ edgingLines, isRound, hand }: Way, loop: EdgingLoop, height: number): Track | null {
  const line = workedLine(edgingLines, loop.line, isRound, hand)
  if (line.length < 2) return null
  // Right-handers have the work to their left.
  const side = hand === 'right' ? 1 : -1
  if (isRound && loop.line < OPEN_ENDS) {
    const down = loop.line === 0 ? -1 : 1
    const moved = line.map(({ x, y }) => ({ x, y: y + down * height }))
    return { ...trackAlong(moved, loop, line, true, side), base: band(line, moved) }
  }
  const isHole = signedArea(edgingLines[loop.line]!) < 0
  const [base] = grow([clockwise(line)], isHole ? -height : height, BASE)
  if (!base) return null
  const way = signedArea(line) < 0 ? base.toReversed() : base
  return { ...trackAlong(way, loop, line, false, side), base: way }
}

/** The ground between two lines. */
export const band = (line: readonly Point[], other: readonly Point[]): Point[] => [
  ...line,
  ...[...other].reverse(),
]

function trackAlong(
  base: readonly Point[],
  loop: EdgingLoop,
  line: readonly Point[],
  isOpen: boolean,
  side: 1 | -1,
): Omit<Track, 'base'> {
  const along = alongOf(base)
  const length = isOpen ? along[base.length - 1]! : along[base.length]!
  const pointAt = (mm: number): Point => {
    // With corners, an open end begins at the first of them and goes on where the map begins.
    const isWithin = isOpen && (loop.marks.length === 0 || (mm >= 0 && mm <= length))
    const at = isWithin ? Math.min(length, Math.max(0, mm)) : ((mm % length) + length) % length
    return pointAlong(base, along, at, isOpen)
  }
  const stops = stopsOf(base, along, loop, line, length, isOpen)
  const mmOf = (stitch: number): number => {
    const turn = isOpen ? 0 : Math.floor(stitch / loop.stitches)
    const at = stitch - turn * loop.stitches
    let i = stops.length - 2
    while (i > 0 && stops[i]!.at > at) i--
    const [a, b] = [stops[i]!, stops[i + 1]!]
    return a.mm + ((b.mm - a.mm) * (at - a.at)) / (b.at - a.at || 1) + turn * length
  }
  const isLeftward = isOpen && base[0]!.x > base.at(-1)!.x
  const step = length / Math.max(1, loop.stitches)
  const out = (stitch: number): Point => {
    const mm = mmOf(stitch)
    const [a, b] = [pointAt(mm - step), pointAt(mm + step)]
    const long = distance(a, b) || 1
    return isOpen
      ? { x: 0, y: isLeftward ? -side : side }
      : { x: (-side * (b.y - a.y)) / long, y: (side * (b.x - a.x)) / long }
  }
  const at = (stitch: number, height: number): Point => {
    const [foot, way] = [pointAt(mmOf(stitch)), out(stitch)]
    return { x: foot.x + way.x * height, y: foot.y + way.y * height }
  }
  return { at, out, isOpen, isLeftward }
}

/** Stitches of known places, in mm along the base: corners, tips and dips where they are on the line. */
function stopsOf(
  base: readonly Point[],
  along: readonly number[],
  { marks, stitches }: EdgingLoop,
  line: readonly Point[],
  length: number,
  isOpen: boolean,
): { at: number; mm: number }[] {
  if (marks.length === 0)
    return [
      { at: 0, mm: 0 },
      { at: stitches, mm: length },
    ]
  if (isOpen) {
    // The base is the line itself, moved.
    const first = marks[0]!.along
    const ahead = marks.map(({ at, along: share }) => ({
      at,
      mm: length * (first + ((share - first + 1) % 1)),
    }))
    return [...ahead, { at: stitches, mm: length * (first + 1) }]
  }
  const onLine = alongOf(line)
  const whole = onLine[line.length]!
  const window = Math.ceil((8 * base.length) / marks.length)
  let best = -1
  const places = marks.map(({ at, along: share }) => {
    const mm = share * whole
    const i = Math.max(0, onLine.findIndex((each) => each > mm) - 1)
    const [a, b] = [line[i]!, line[(i + 1) % line.length]!]
    const part = (mm - onLine[i]!) / (onLine[i + 1]! - onLine[i]! || 1)
    const point = { x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part }
    // Both run the same way: the next one is not far from the last.
    const [from, count] = best < 0 ? [0, base.length] : [best, Math.min(base.length, window)]
    let nearest = from
    for (let k = 0; k < count; k++) {
      const index = (from + k) % base.length
      if (distance(base[index]!, point) < distance(base[nearest]!, point)) nearest = index
    }
    best = nearest
    return { at, mm: along[best]! }
  })
  const first = places[0]!.mm
  // On and on from the first one, whatever place the base begins at; dips may have closed.
  let last = -Infinity
  const stops = places.map(({ at, mm }) => {
    last = Math.max(last, first + ((mm - first + length) % length))
    return { at, mm: last }
  })
  return [...stops, { at: stitches, mm: first + length }]
}
