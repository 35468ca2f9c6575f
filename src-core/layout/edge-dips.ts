/** M35: the dips between the straight line of a levelling edging and the edge under it, from tip to tip. */
import type { Point } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { EDGING } from '../edging/constants'
import { isAgainst } from '../edging/direction'
import type { EdgeDip } from '../edging/level'
import { distance, signedArea } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { remembered } from '../memo'
import { OPEN_ENDS } from '../edging/open-ends'
import type { Millimetres } from '../units/quantity'
import type { Laid } from './blanket'
import { edgeLine, edgingLines } from './edge'
import { inFrame } from './frame'
import type { EdgingRoom } from './frame'
import { hullOf } from './edge-walk'
import type { EdgeInput } from './edge-walk'

/** A dip with the edge in it as it lies, in the frame of the motifs' places. */
interface LyingDip extends EdgeDip {
  readonly outline: Outline
  /** Of a round: where its line ends, and how far on it began; a dip that lies across is in two parts on the map. */
  readonly ends?: { readonly x: Millimetres; readonly round: Millimetres }
}

/** A point of the edge under the line. */
interface Place {
  readonly along: Millimetres
  readonly depth: Millimetres
  readonly at: Point
}

/** The dips under the line of an edging that levels: none round holes, which it follows. */
export const edgeDips = remembered(findDips)

function findDips(input: EdgeInput, laid: Laid, hand: Hand): readonly LyingDip[] {
  const edge: EdgeInput = { ...input, style: 'follow' }
  const isRound = input.counts.inTheRound
  const lines = edgingLines(edge, laid, edgeLine(edge).length)
  if (!isRound) {
    const dips = lines.filter((line) => signedArea(line) > 0).flatMap((line) => dipsUnderHull(line))
    return dips.map((dip) => asWorked(dip, isAgainst(OPEN_ENDS, isRound, hand)))
  }
  return lines
    .slice(0, OPEN_ENDS)
    .flatMap((line, i) =>
      line.length > 1 ? openDips(line, i === 0).map((dip) => asWorked(dip, isAgainst(i, isRound, hand))) : [],
    )
}

/** A dip from the tip that is met first. */
const asWorked = ({ width, profile, outline, ends }: LyingDip, against: boolean): LyingDip => ({
  ...(ends && { ends }),
  width,
  profile: against ? profile.map(({ along, depth }) => ({ along: width - along, depth })).reverse() : profile,
  outline,
})

const keyOf = ({ x, y }: Point): string => `${x} ${y}`

/** The dips of a closed edge under its straight hull. */
function dipsUnderHull(edge: Outline): LyingDip[] {
  const places = new Map(edge.map((point, i) => [keyOf(point), i]))
  const hull = hullOf(edge).flatMap((point) => places.get(keyOf(point)) ?? [])
  return hull.flatMap((from, k) => {
    const to = hull[(k + 1) % hull.length]!
    const count = (to - from + edge.length) % edge.length
    const way = Array.from({ length: count + 1 }, (_, i) => edge[(from + i) % edge.length]!)
    const [a, b] = [way[0]!, way[count]!]
    const long = distance(a, b)
    if (long === 0) return []
    const [dx, dy] = [(b.x - a.x) / long, (b.y - a.y) / long]
    return between(
      way.map(({ x, y }) => ({
        along: (x - a.x) * dx + (y - a.y) * dy,
        // The edge runs clockwise on paper: what lies to the right of the hull lies within.
        depth: Math.max(0, (y - a.y) * dx - (x - a.x) * dy),
        at: { x, y },
      })),
    )
  })
}

/** The dips of an open end, which begins anew where it ends, under a straight line along its tips. */
function openDips(line: Outline, isTop: boolean): LyingDip[] {
  const [first, last] = [line[0]!, line.at(-1)!]
  const once = line.slice(0, -1)
  const farthest = once.reduce((far, { y }) => (isTop ? Math.min(far, y) : Math.max(far, y)), first.y)
  const told = once.map(({ x, y }) => ({ along: x, depth: Math.abs(y - farthest), at: { x, y } }))
  const start = Math.max(
    0,
    told.findIndex(({ depth }) => depth < EDGING.onLine),
  )
  const round = last.x - first.x
  const dips = between([
    ...told.slice(start),
    ...told.slice(0, start + 1).map(({ along, depth, at }) => ({
      along: along + round,
      depth,
      at: { x: at.x + round, y: at.y },
    })),
  ])
  return dips.map((dip) => ({ ...dip, ends: { x: last.x, round } }))
}

/** A dip that lies across where a round closes, as the map has it: one part at its right, the other at its left. */
function atClosing(outline: Outline, { x, round }: NonNullable<LyingDip['ends']>): Outline[] {
  const part = (isLeft: boolean): Outline =>
    outline.flatMap((from, i): Point[] => {
      const to = outline[(i + 1) % outline.length]!
      const isIn = (point: Point): boolean => (isLeft ? point.x <= x : point.x >= x)
      const cut = { x, y: from.y + ((to.y - from.y) * (x - from.x)) / (to.x - from.x) }
      return [...(isIn(from) ? [from] : []), ...(isIn(from) !== isIn(to) ? [cut] : [])]
    })
  const beyond = part(false).map((point) => ({ x: point.x - round, y: point.y }))
  return [part(true), beyond].filter(({ length }) => length > 2)
}

/** The dips of a stretch, parted where it comes up to the line. */
function between(way: readonly Place[]): LyingDip[] {
  const dips: LyingDip[] = []
  let from = 0
  way.forEach(({ along, depth }, i) => {
    if (i === 0 || depth >= EDGING.onLine) return
    const begin = way[from]!.along
    const own = way.slice(from, i + 1)
    from = i
    if (own.every((point) => point.depth < EDGING.onLine) || !(along > begin)) return
    dips.push({
      width: along - begin,
      profile: own.map((point) => ({ along: point.along - begin, depth: point.depth })),
      outline: own.map(({ at }) => at),
    })
  })
  return dips
}

/** The dips as they lie, each from tip to tip, in mm from the top left of the finished size. */
export function finishDips(
  dips: readonly LyingDip[],
  edging: EdgingRoom,
  blockWidth: number,
  blockHeight: number,
): Point[][] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return dips
    .flatMap(({ outline, ends }) => (ends ? atClosing(outline, ends) : [outline]))
    .map((outline) => outline.map((point) => ({ x: x(point.x), y: y(point.y) })))
}
