/** Elements of a round that stand: in one place a petal or a fan, else side by side (M9, M10). */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { archAt, veeRise } from './arch'
import type { Arch } from './arch'
import { BESIDE_PETAL, PRESSED, TIP_LOOP, WIDEST_FAN } from './constants'
import { isDrawing } from './drawing'
import {
  angleOf,
  at,
  heightOf,
  isUpright,
  mean,
  middleOf,
  radiusOf,
  seatOf,
  topWidth,
  unwrap,
} from './ground'
import type { LocatedRound, Seat } from './ground'
import { petalSides } from './petal-sides'
import { pressed, pressedShare } from './sector'
import type { Stem } from './spokes'
import type { Sector } from './sector'

const TURN = 2 * Math.PI

/** Standing elements between two others that go into one place. */
interface Group extends Sector {
  readonly members: readonly WorkedElement[]
  readonly seat: Seat | null
  /** Chains of a drawing that stand up before and behind the members. */
  readonly edges: readonly [WorkedElement | null, WorkedElement | null]
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

interface InGroups {
  readonly stood: Stood[]
  /** Chains of a drawing that stand up at the edges of petals. */
  readonly edges: ReadonlyMap<WorkedElement, Stem>
}

/** Elements in the places that earlier rounds left. */
export function standInGroups(
  round: WorkedRound,
  before: readonly LocatedRound[],
  gauge: ResolvedGauge,
): InGroups {
  const groups = groupsOf(round, before, gauge)
  const stood: Stood[] = []
  const edges = new Map<WorkedElement, Stem>()
  groups.forEach((group, index) => {
    const many = group.members.filter(isUpright).length
    const loop = loopOf(group.seat)
    if (group.edges.some((edge) => edge !== null))
      stood.push(...petalOnStitch(group, index, round, gauge, edges))
    else if (isFan(group, gauge)) stood.push(...fan(group, index, round, gauge))
    else if (loop && many > 1) stood.push(...petalOnLoop(group, loop, index, round, gauge))
    else if (many > 2 && !loop && (group.seat?.kind !== 'space' || group.seat.tip))
      stood.push(...fan(group, index, round, gauge))
    else stood.push(...plain(group, gauge))
  })
  return { stood, edges }
}

/** Chains of a space that a drawing takes for one point, and stitches that then fan out of it, at least (by eye). */
const POINT_SPACE = 1
const SMALLEST_FAN = 5
/** Half the angle of such a fan at most, so that its ends stay clear of the stitches beside the space (by eye): 70°. */
const WIDEST_OVER_SPACE: Radians = (70 / 180) * Math.PI

/** "(sc, hdc, 3 dc, hdc, sc) in ch-1 sp": a whole petal out of one short space, which a chart fans out. */
const isFan = ({ members, seat }: Group, gauge: ResolvedGauge): boolean =>
  isDrawing(gauge) &&
  seat?.kind === 'space' &&
  seat.chains <= POINT_SPACE &&
  members.length >= SMALLEST_FAN &&
  members.at(-1)!.index - members[0]!.index === members.length - 1

/** The loop that a seat is: chains between stitches, or the chains of a tip where they are long enough to be one. */
export const loopOf = (seat: Seat | null): Arch | null =>
  seat?.arch && (!seat.tip || seat.chains >= TIP_LOOP) ? seat.arch : null

/** Elements in runs that go into the same place, in the order worked. */
function groupsOf(round: WorkedRound, before: readonly LocatedRound[], gauge: ResolvedGauge): Group[] {
  const runs: { members: WorkedElement[]; key: string; seat: Seat | null }[] = []
  for (const element of round.elements) {
    const place = element.into[0]
    // A stitch that closes the last loop hangs in it.
    if (!isUpright(element) || place?.kind === 'chain' || element.role === 'closing') continue
    const isTold = element.into.length === 1 && place !== undefined && !isUntold(element, round)
    const key = isTold ? `${place.round} ${place.index} ${place.kind}` : `e${element.index}`
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
  seatUntold(runs, round)
  const angles: Radians[] = []
  runs.forEach(({ seat }, i) => {
    const near = i === 0 ? (seat?.angle ?? 0) : angles[i - 1]!
    const own = seat?.angle ?? near
    // Working goes on: the next place lies further round.
    let angle = unwrap(own, near)
    while (i > 0 && angle < near - 1e-9) angle += TURN
    angles.push(angle)
  })
  const onto = before.find((entry) => entry.round.index === round.onto)
  const edges = isDrawing(gauge) ? [...petalSides(round, onto?.round)] : []
  const edgesOf = (members: readonly WorkedElement[]): Group['edges'] => {
    const own = edges.flatMap(([edge, beside]) => (members.includes(beside) ? [edge] : []))
    const behind = own.find(({ index }) => index > members[0]!.index) ?? null
    return [own.find((edge) => edge !== behind) ?? null, behind]
  }
  const grouped = runs.map(({ members, seat }) => ({ members, seat, edges: edgesOf(members) }))
  const widths = grouped.map(({ members, edges: own }) =>
    isDrawing(gauge)
      ? members.reduce((sum, element) => sum + topWidth(element, gauge), 0) +
        own.filter((edge) => edge !== null).length * gauge.width
      : 1,
  )
  // Neighbours share the way between them; in a drawing each has as much of it as it is wide. Loops part where they end.
  const awayTo = (i: number, beside: number, way: Radians): Radians => {
    const k = (beside + widths.length) % widths.length
    const [own, other] = [loopOf(grouped[i]!.seat), loopOf(grouped[k]!.seat)]
    if (own && other) return (halfAngle(own) + way - halfAngle(other)) / 2
    return (way * widths[i]!) / Math.max(1e-9, widths[i]! + widths[k]!)
  }
  return grouped.map((group, i) => {
    const previous = i > 0 ? angles[i - 1]! : (angles[angles.length - 1] ?? 0) - TURN
    const next = i + 1 < angles.length ? angles[i + 1]! : (angles[0] ?? 0) + TURN
    const own = angles[i]!
    const half = Math.min(awayTo(i, i - 1, own - previous), awayTo(i, i + 1, next - own))
    return { ...group, angle: own, half: Math.max(1e-6, half) }
  })
}

/** Half of what a loop spans, seen from the centre. */
const halfAngle = ({ from, to }: Arch): Radians =>
  Math.abs(unwrap(angleOf(to), angleOf(from)) - angleOf(from)) / 2

/** Nothing tells where it goes: the ends of rows, the free side of a point, a place that the round before has not. */
const isUntold = ({ into: [place] }: WorkedElement, { index }: WorkedRound): boolean =>
  place === undefined || place.kind === 'unknown' || place.round === -1 || place.round >= index

/** What nothing tells the place of stands evenly between what stands before it and behind it. */
function seatUntold(
  runs: { readonly members: readonly WorkedElement[]; seat: Seat | null }[],
  round: WorkedRound,
): void {
  const told = runs.flatMap(({ seat }, i) => (seat ? [{ i, seat }] : []))
  if (told.length < 2) return
  const { length } = runs
  told.forEach(({ i, seat }, k) => {
    const next = told[(k + 1) % told.length]!
    const end = next.i > i ? next.i : next.i + length
    let to = unwrap(next.seat.angle, seat.angle)
    if (to <= seat.angle) to += TURN
    for (let at = i + 1; at < end; at++) {
      const run = runs[at % length]!
      if (!isUntold(run.members[0]!, round)) continue
      const share = (at - i) / (end - i)
      const radius = radiusOf(seat.point) * (1 - share) + radiusOf(next.seat.point) * share
      run.seat = between(seat.angle + (to - seat.angle) * share, radius)
    }
  })
}

const between = (angle: Radians, radius: Millimetres): Seat => {
  const point = at(radius, angle)
  return { kind: 'stitch', angle, point, arch: null, chains: 0, foot: point, tip: false }
}

/** How much higher than its stitches a drawing has a petal, so that its tops have room. */
const liftOf = (
  round: WorkedRound,
  base: Point,
  heights: readonly Millimetres[],
  gauge: ResolvedGauge,
): Millimetres => (isDrawing(gauge) ? Math.max(0, gauge.reach(round) - radiusOf(base) - mean(heights)) : 0)

/** Chains at a petal's edge begin so far from its foot, in stitch widths (by eye). */
const EDGE_FOOT = 0.55

/** Stitches in one stitch between chains that stand up beside them, as a chart has them: all fanned out evenly. */
function petalOnStitch(
  group: Group,
  petal: number,
  round: WorkedRound,
  gauge: ResolvedGauge,
  edges: Map<WorkedElement, Stem>,
): Stood[] {
  const { members, seat } = group
  const base = seat?.point ?? { x: 0, y: 0 }
  const heights = members.map((element) => heightOf(element, gauge))
  const lift = liftOf(round, base, heights, gauge)
  const height = mean(heights) + lift
  const [before, behind] = group.edges
  const slots = members.length + (before ? 1 : 0) + (behind ? 1 : 0)
  const free = (2 * group.half * (radiusOf(base) + height)) / slots
  const step = Math.min(gauge.width, free, (2 * WIDEST_FAN * height) / slots) / height
  const lean = (slot: number): Radians => group.angle + (slot - (slots - 1) / 2) * step
  const from = (length: Millimetres, angle: Radians): Point => {
    const out = at(length, angle)
    return { x: base.x + out.x, y: base.y + out.y }
  }
  const edge = (element: WorkedElement | null, slot: number): void => {
    if (!element) return
    const foot = EDGE_FOOT * gauge.width
    const cell = (height - foot) / element.count
    const chain = Array.from({ length: element.count }, (_, k) => from(foot + (k + 0.5) * cell, lean(slot)))
    const tip = from(height, lean(slot))
    const up = slot === 0 && before !== null
    edges.set(element, { from: from(foot, lean(slot)), tip, chain: up ? chain : chain.reverse() })
  }
  edge(before, 0)
  edge(behind, slots - 1)
  const first = before ? 1 : 0
  return members.map((element, i) => ({
    element,
    base,
    top: from(heights[i]! + lift, lean(first + i)),
    petal,
  }))
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

/** Whether chains stand up beside a petal's stitches, from a slip stitch in the same loop: "(sl st, ch 2, 3 dc, ch 2, sl st)". */
function hasEdges({ members }: Group, { elements }: WorkedRound): boolean {
  const [first, last] = [members[0]!, members.at(-1)!]
  const inGroup = (each: WorkedElement | undefined): boolean =>
    each !== undefined && each.group >= 0 && each.group === first.group
  const isEdge = (edge: WorkedElement | undefined, beyond: WorkedElement | undefined): boolean =>
    edge?.role === 'space' && (inGroup(edge) || (beyond?.role === 'slip' && inGroup(beyond)))
  return (
    isEdge(elements[first.index - 1], elements[first.index - 2]) ||
    isEdge(elements[last.index + 1], elements[last.index + 2])
  )
}

/** M10: several stitches in a loop stand evenly along its arch, along its normals. */
function petalOnLoop(
  group: Group,
  loop: Arch,
  petal: number,
  round: WorkedRound,
  gauge: ResolvedGauge,
): Stood[] {
  const outward = at(1, group.angle)
  const free = (PRESSED + (hasEdges(group, round) ? BESIDE_PETAL : 0)) * gauge.width
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
function fan(group: Group, petal: number, round: WorkedRound, gauge: ResolvedGauge): Stood[] {
  const { seat, members } = group
  const base = seat?.point ?? { x: 0, y: 0 }
  const own = members.map((element) => heightOf(element, gauge))
  const lift = liftOf(round, base, own, gauge)
  const heights = own.map((height) => height + lift)
  const length = members.reduce((sum, element) => sum + topWidth(element, gauge), 0)
  const widest = isFan(group, gauge) ? WIDEST_OVER_SPACE : WIDEST_FAN
  const spread = Math.min(widest, length / (2 * Math.max(1e-9, mean(heights))))
  return members.map((element, i) => {
    const share = members.length === 1 ? 0 : (2 * i) / (members.length - 1) - 1
    const angle = group.angle + spread * share
    const height = heights[i]!
    const top = { x: base.x + height * Math.sin(angle), y: base.y - height * Math.cos(angle) }
    return { element, base, top: pressed(base, top, group, PRESSED * gauge.width), petal }
  })
}
