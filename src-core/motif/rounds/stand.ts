/** Elements of a round that stand: in one place a petal or a fan, else side by side (M9, M10). */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { archAt, veeRise } from './arch'
import type { Arch } from './arch'
import { PRESSED, TIP_LOOP, WIDEST_FAN } from './constants'
import { at, heightOf, isUpright, mean, middleOf, radiusOf, seatOf, topWidth, unwrap } from './ground'
import type { LocatedRound, Seat } from './ground'
import { pressed, pressedShare } from './sector'
import type { Sector } from './sector'

const TURN = 2 * Math.PI

/** Standing elements between two others that go into one place. */
interface Group extends Sector {
  readonly members: readonly WorkedElement[]
  readonly seat: Seat | null
}

/** A round's elements with base, top and direction, still without its chains. */
export interface Stood {
  readonly element: WorkedElement
  readonly base: Point
  top: Point
  readonly petal: number
  /** Chains of the loop that its petal stands in. */
  readonly loop?: number
  /** Of a stitch worked along a straight chain: its share of that. */
  readonly along?: Millimetres
}

/** Elements in the places that earlier rounds left. */
export function standInGroups(
  round: WorkedRound,
  before: readonly LocatedRound[],
  gauge: ResolvedGauge,
): Stood[] {
  const groups = groupsOf(round, before)
  const stood: Stood[] = []
  groups.forEach((group, index) => {
    const many = group.members.filter(isUpright).length
    const loop = loopOf(group.seat)
    if (loop && many > 1) stood.push(...petalOnLoop(group, loop, index, gauge))
    else if (many > 2 && !loop && (group.seat?.kind !== 'space' || group.seat.tip))
      stood.push(...fan(group, index, gauge))
    else stood.push(...plain(group, gauge))
  })
  return stood
}

/** The loop that a seat is: chains between stitches, or the chains of a tip where they are long enough to be one. */
const loopOf = (seat: Seat | null): Arch | null =>
  seat?.arch && (!seat.tip || seat.chains >= TIP_LOOP) ? seat.arch : null

/** Elements in runs that go into the same place, in the order worked. */
function groupsOf(round: WorkedRound, before: readonly LocatedRound[]): Group[] {
  const runs: { members: WorkedElement[]; key: string; seat: Seat | null }[] = []
  for (const element of round.elements) {
    const place = element.into[0]
    if (!isUpright(element) || place?.kind === 'chain') continue
    const key =
      element.into.length === 1 && place ? `${place.round} ${place.index} ${place.kind}` : `e${element.index}`
    const last = runs[runs.length - 1]
    if (last && last.key === key) last.members.push(element)
    else runs.push({ members: [element], key, seat: meanSeat(element, before) })
  }
  // The first stitches and the last ones may share a place: a round that begins in the middle of a corner.
  const first = runs[0]
  const last = runs[runs.length - 1]
  if (first && last && first !== last && first.key === last.key) {
    first.members.unshift(...last.members)
    runs.pop()
  }
  const angles: Radians[] = []
  runs.forEach(({ seat }, i) => {
    const near = i === 0 ? (seat?.angle ?? 0) : angles[i - 1]!
    const own = seat?.angle ?? near
    // Working goes on: the next place lies further round.
    let angle = unwrap(own, near)
    while (i > 0 && angle < near - 1e-9) angle += TURN
    angles.push(angle)
  })
  return runs.map(({ members, seat }, i) => {
    const previous = i > 0 ? angles[i - 1]! : (angles[angles.length - 1] ?? 0) - TURN
    const next = i + 1 < angles.length ? angles[i + 1]! : (angles[0] ?? 0) + TURN
    const own = angles[i]!
    return { members, seat, angle: own, half: Math.max(1e-6, Math.min(own - previous, next - own) / 2) }
  })
}

/** The seat of an element: of a decrease over several places their middle. */
function meanSeat(element: WorkedElement, before: readonly LocatedRound[]): Seat | null {
  const seats = element.into.flatMap((place) => seatOf(place, before) ?? [])
  const first = seats[0]
  if (!first) return null
  if (element.into[0]?.post) return { ...first, point: middleOf(first.foot, first.point), arch: null }
  if (seats.length === 1) return first
  const angle = mean(seats.map((seat) => unwrap(seat.angle, first.angle)))
  const point = at(mean(seats.map((seat) => radiusOf(seat.point))), angle)
  return { ...first, angle, point, arch: null }
}

/** One or two stitches in a place, or more in a space that is no loop: side by side, straight outward. */
function plain(group: Group, gauge: ResolvedGauge): Stood[] {
  const { seat } = group
  const count = group.members.length
  const loop = seat?.arch && !seat.tip ? seat.arch : null
  const radius = seat ? radiusOf(seat.point) + (loop && count === 1 ? veeOver(loop) : 0) : 0
  const spacing = radius > 0 ? Math.min(gauge.width / radius, (2 * group.half) / count) : 0
  return group.members.map((element, i) => {
    const angle = group.angle + (i - (count - 1) / 2) * spacing
    // Stitches in one stitch share its top; in a space they stand beside each other.
    const base = at(radius, seat?.kind === 'stitch' ? group.angle : angle)
    return { element, base, top: at(radius + heightOf(element, gauge), angle), petal: -1 }
  })
}

/** M9: how far one stitch in the middle pulls a loop out beyond its chord. */
const veeOver = (loop: Arch): Millimetres => veeRise(loop)

/** M10: several stitches in a loop stand evenly along its arch, along its normals. */
function petalOnLoop(group: Group, loop: Arch, petal: number, gauge: ResolvedGauge): Stood[] {
  const outward = at(1, group.angle)
  const free = PRESSED * gauge.width
  const weights = group.members.map((element) => topWidth(element, gauge))
  const total = weights.reduce((sum, weight) => sum + weight, 0)
  const raised = group.members.length > 2 ? petal : -1
  const skipped = pressedShare(loop, outward, group, free)
  let walked = 0
  return group.members.map((element, i) => {
    const share = skipped + (1 - 2 * skipped) * ((walked + weights[i]! / 2) / total)
    walked += weights[i]!
    const { point: base, normal } = archAt(loop, share, outward)
    const height = heightOf(element, gauge)
    const top = { x: base.x + normal.x * height, y: base.y + normal.y * height }
    return {
      element,
      base,
      top: pressed(base, top, group, free),
      petal: raised,
      loop: group.seat?.chains ?? 0,
    }
  })
}

/** M10: several stitches in one stitch fan out. */
function fan(group: Group, petal: number, gauge: ResolvedGauge): Stood[] {
  const { seat, members } = group
  const base = seat?.point ?? { x: 0, y: 0 }
  const heights = members.map((element) => heightOf(element, gauge))
  const length = members.reduce((sum, element) => sum + topWidth(element, gauge), 0)
  const spread = Math.min(WIDEST_FAN, length / (2 * Math.max(1e-9, mean(heights))))
  return members.map((element, i) => {
    const share = members.length === 1 ? 0 : (2 * i) / (members.length - 1) - 1
    const angle = group.angle + spread * share
    const height = heights[i]!
    const top = { x: base.x + height * Math.sin(angle), y: base.y - height * Math.cos(angle) }
    return { element, base, top: pressed(base, top, group, PRESSED * gauge.width), petal }
  })
}
