/**
 * Where every stitch of a round lies (M5–M13): on the ring, on plain and cornered rounds, along loops, in petals.
 * A round stands on the seats that earlier rounds left; each stitch begins at its own seat, so that rounds
 * worked behind petals, into free loops or over an older round start where they are carried.
 */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedPlace, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { archAt, archBetween, archOfRise, archRise, veeRise } from './arch'
import type { Arch } from './arch'
import {
  LOOP_ENDS,
  LOOPS_APART,
  OVERFULL_FROM,
  OVERFULL_MOST,
  OVERFULL_SHARE,
  PICOT,
  PRESSED,
  RING_GIVES,
  TIP_CHAIN,
  TIP_LOOP,
  WIDEST_FAN,
} from './constants'
import { locateAsides } from './asides'
import { cornersOf, locateCornered } from './cornered'
import { angleOf, at, heightOf, radiusOf, topWidth, unwrap } from './ground'
import type { LocatedElement, LocatedRound, Petal, Seat } from './ground'
import { betweenEnds, pressed, pressedShare } from './sector'
import type { Sector } from './sector'

/** Standing elements between two others that go into one place. */
interface Group extends Sector {
  readonly members: readonly WorkedElement[]
  readonly seat: Seat | null
}

/** A round's elements with base, top and direction, still without its chains. */
interface Stood {
  readonly element: WorkedElement
  readonly base: Point
  top: Point
  readonly petal: number
  /** Chains of the loop that its petal stands in. */
  readonly loop?: number
}

const TURN = 2 * Math.PI

const standing = (element: WorkedElement): boolean =>
  element.role === 'stitch' ||
  element.role === 'closing' ||
  (element.role === 'beginning' && element.standing)

/** Locates one round on those before it. `ringChains`: chains of the ring it begins on, 0 for an adjustable one. */
export function locateRound(
  round: WorkedRound,
  before: readonly LocatedRound[],
  gauge: ResolvedGauge,
  ringChains: number,
): LocatedRound {
  const stood = round.elements.some((e) => standing(e) && e.into.some((place) => seatOf(place, before)))
    ? standOnSeats(round, before, gauge)
    : standOnRing(round, gauge, ringChains)
  const corners = cornersOf(
    round,
    stood.map((entry) => entry.element),
    before,
  )
  const onto = before.find((entry) => entry.round.index === round.onto) ?? before[before.length - 1]
  const located =
    corners && onto
      ? locateCornered(round, corners, onto, gauge, stood)
      : finish(round, stood, onto ?? null, gauge)
  const asides = locateAsides(located, before, gauge)
  return { ...located, elements: located.elements.map((entry) => withFeet(entry, before)), asides }
}

/** The legs of a decrease begin in their own places. */
function withFeet(entry: LocatedElement, before: readonly LocatedRound[]): LocatedElement {
  if (entry.element.into.length < 2) return entry
  const feet = entry.element.into.flatMap((place) => seatOf(place, before)?.point ?? [])
  return feet.length > 1 ? { ...entry, feet } : entry
}

/** The seat that a place names, or null for a ring or a round that is only known by its counts. */
export function seatOf(place: WorkedPlace | undefined, before: readonly LocatedRound[]): Seat | null {
  if (!place || place.round < 0) return null
  const round = before.find((entry) => entry.round.index === place.round)
  return round?.seats[place.index] ?? null
}

/** M5: everything goes into the ring; tops stand evenly, by their widths. */
function standOnRing(round: WorkedRound, gauge: ResolvedGauge, ringChains: number): Stood[] {
  const widths = round.elements.map((element) => topWidth(element, gauge))
  const total = widths.reduce((sum, width) => sum + width, 0)
  const upright = round.elements.filter(standing)
  const height = mean(upright.map((element) => heightOf(element, gauge)))
  const ring = (ringChains * gauge.width) / TURN
  const inner = Math.min((1 + RING_GIVES) * ring, Math.max(ring, total / TURN - height))
  const extra = overfull(total, inner, height)
  let walked = -(widths[round.elements.indexOf(upright[0]!)] ?? 0) / 2
  return round.elements.flatMap((element, i) => {
    const angle = ((walked + widths[i]! / 2) / Math.max(total, 1e-9)) * TURN
    walked += widths[i]!
    if (!standing(element)) return []
    const top = inner + heightOf(element, gauge) + extra
    return [{ element, base: at(inner, angle), top: at(top, angle), petal: -1 }]
  })
}

/** M7: an over-full round stands out a little more; one that holds no more than a flat disc does is not over-full. */
export function overfull(length: Millimetres, radius: Millimetres, height: Millimetres): Millimetres {
  const strained = length / TURN / OVERFULL_FROM - radius - height
  return Math.min(OVERFULL_MOST * height, Math.max(0, strained * OVERFULL_SHARE))
}

function standOnSeats(round: WorkedRound, before: readonly LocatedRound[], gauge: ResolvedGauge): Stood[] {
  const groups = groupsOf(round, before)
  const stood: Stood[] = []
  groups.forEach((group, index) => {
    const many = group.members.filter(standing).length
    const loop = loopOf(group.seat)
    if (loop && many > 1) stood.push(...petalOnLoop(group, loop, index, gauge))
    else if (many > 2 && !loop && (group.seat?.kind !== 'space' || group.seat.tip))
      stood.push(...fan(group, index, gauge))
    else stood.push(...plain(group, gauge))
  })
  const petals = new Set(stood.filter((entry) => entry.petal >= 0).map((entry) => entry.petal))
  if (petals.size === 0) return evenOut(round, stood, gauge)
  return stood
}

/** The loop that a seat is: chains between stitches, or the chains of a tip where they are long enough to be one. */
const loopOf = (seat: Seat | null): Arch | null =>
  seat?.arch && (!seat.tip || seat.chains >= TIP_LOOP) ? seat.arch : null

/** Elements in runs that go into the same place, in the order worked. */
function groupsOf(round: WorkedRound, before: readonly LocatedRound[]): Group[] {
  const runs: { members: WorkedElement[]; key: string; seat: Seat | null }[] = []
  for (const element of round.elements) {
    if (!standing(element)) continue
    const place = element.into[0]
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

const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })

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

/** A plain round's tops spread evenly, and stand out a little when there are too many of them (M7). */
function evenOut(round: WorkedRound, stood: Stood[], gauge: ResolvedGauge): Stood[] {
  const widths = round.elements.map((element) => topWidth(element, gauge))
  const total = widths.reduce((sum, width) => sum + width, 0)
  const base = mean(stood.map((entry) => radiusOf(entry.base)))
  const height = mean(stood.map((entry) => heightOf(entry.element, gauge)))
  const level = stood.every((entry) => Math.abs(radiusOf(entry.base) - base) < 0.05 * base)
  if (!level) return stood
  const extra = overfull(total, base, height)
  const spaces = round.elements.some((element) => element.role === 'space')
  let walked = 0
  const start = angleOf(stood[0]?.top ?? { x: 0, y: -1 })
  const angles = new Map<WorkedElement, Radians>()
  let origin: number | null = null
  round.elements.forEach((element, i) => {
    const middle = walked + widths[i]! / 2
    walked += widths[i]!
    if (!standing(element)) return
    origin ??= middle
    angles.set(element, start + ((middle - origin) / Math.max(total, 1e-9)) * TURN)
  })
  return stood.map((entry) => {
    const radius = radiusOf(entry.top) + extra
    const angle = spaces ? angleOf(entry.top) : angles.get(entry.element)!
    return { ...entry, top: at(radius, angle) }
  })
}

/** Chains, picots, seats and edge of a round whose standing elements are in place. */
export function finish(
  round: WorkedRound,
  stood: readonly Stood[],
  onto: LocatedRound | null,
  gauge: ResolvedGauge,
  cornered?: { readonly radius: Millimetres; readonly angles: readonly Radians[] },
): LocatedRound {
  const byElement = new Map(stood.map((entry) => [entry.element, entry]))
  const elements: LocatedElement[] = []
  const arches = new Map<number, { arch: Arch; tip: boolean; apex: Point }>()
  let tight = 0
  const uprights = round.elements.filter((element) => byElement.has(element) || isSlip(element))
  const pointOf = (element: WorkedElement): Point =>
    byElement.get(element)?.top ?? slipPoint(element, onto, gauge)
  round.elements.forEach((element, i) => {
    const entry = byElement.get(element)
    if (entry) elements.push({ element, base: entry.base, top: entry.top, chain: [] })
    else if (isSlip(element)) {
      const point = slipPoint(element, onto, gauge)
      elements.push({ element, base: point, top: point, chain: [] })
    } else if (element.role === 'space') {
      const previous = lastOf(round.elements, i, uprights)
      const next = nextOf(round.elements, i, uprights)
      if (!previous || !next) return
      const from = pointOf(previous)
      const to = pointOf(next)
      const arch = archBetween(from, to, element.count * gauge.width)
      const tip = element.group >= 0 && inOneGroup(element, previous, next)
      // Short spaces lie between stitches that stand apart anyway; a loop has to span what it spans.
      if (!tip && !cornered && element.count >= 3) tight = Math.max(tight, arch.chord - arch.length)
      const outward = at(1, angleOf(middleOf(from, to)))
      const rise = tip ? TIP_CHAIN * element.count * gauge.width : archRise(arch)
      const middle = middleOf(from, to)
      const far = tip ? Math.max(radiusOf(from), radiusOf(to)) + rise : radiusOf(middle) + rise
      const apex = at(far, angleOf(middle))
      const drawn = tip ? archOfRise(from, to, rise) : arch
      arches.set(element.index, { arch: tip ? drawn : arch, tip, apex })
      const chain = Array.from({ length: element.count }, (_, k) => {
        // Drawn together a little, so that loops that end at one stitch leave its top free.
        const share = 0.5 + ((k + 0.5) / element.count - 0.5) * (1 - LOOP_ENDS / element.count)
        const { point } = archAt(drawn, share, outward)
        return tip ? point : betweenEnds(point, from, to, LOOPS_APART * gauge.width)
      })
      elements.push({ element, base: from, top: apex, chain, end: to })
    } else if (element.role === 'picot') {
      const previous = lastOf(round.elements, i, uprights)
      if (!previous) return
      const foot = pointOf(previous)
      const size = PICOT * element.count * gauge.width
      const top = at(radiusOf(foot) + size, angleOf(foot))
      elements.push({ element, base: foot, top, chain: picotChain(foot, size, element.count) })
    }
  })
  const seats = seatsOf(round, elements, arches)
  const edge = edgeOf(elements, arches)
  const length = round.elements.reduce((sum, element) => sum + topWidth(element, gauge), 0)
  const radius =
    cornered?.radius ?? mean(elements.filter((e) => e.chain.length === 0).map((e) => radiusOf(e.top)))
  const stretched = mean(stood.map((e) => radiusOf(e.top) - radiusOf(e.base) - heightOf(e.element, gauge)))
  return {
    round,
    seats,
    elements,
    asides: [],
    edge,
    radius,
    extra: cornered || stood.some((e) => e.petal >= 0) ? 0 : Math.max(0, stretched),
    corners: cornered?.angles.length ?? 0,
    cornerAngles: cornered?.angles ?? [],
    petals: petalsOf(stood, arches, elements),
    length,
    tight,
  }
}

const isSlip = (element: WorkedElement): boolean => element.role === 'slip'

/** A slip stitch lies in its place, a little higher. */
function slipPoint(element: WorkedElement, onto: LocatedRound | null, gauge: ResolvedGauge): Point {
  const place = element.into[0]
  const seat = place && onto && place.round === onto.round.index ? onto.seats[place.index] : null
  const point = seat?.point ?? { x: 0, y: -1 }
  return at(radiusOf(point) + gauge.height('sl st'), angleOf(point))
}

function lastOf(all: readonly WorkedElement[], i: number, uprights: readonly WorkedElement[]) {
  for (let k = 1; k <= all.length; k++) {
    const element = all[(i - k + all.length) % all.length]!
    if (uprights.includes(element)) return element
  }
  return null
}

function nextOf(all: readonly WorkedElement[], i: number, uprights: readonly WorkedElement[]) {
  for (let k = 1; k <= all.length; k++) {
    const element = all[(i + k) % all.length]!
    if (uprights.includes(element)) return element
  }
  return null
}

/** Chains inside a group in one place: the open tip of a petal or a corner. */
const inOneGroup = (element: WorkedElement, previous: WorkedElement, next: WorkedElement): boolean =>
  previous.group === element.group && next.group === element.group

/** A closed loop of chains on top of a stitch, drawn as a small circle. */
function picotChain(foot: Point, size: Millimetres, count: number): Point[] {
  const angle = angleOf(foot)
  const centre = at(radiusOf(foot) + size / 2, angle)
  return Array.from({ length: count }, (_, k) => {
    const around = angle + Math.PI + ((k + 1) / (count + 1)) * TURN
    return { x: centre.x + (size / 2) * Math.sin(around), y: centre.y - (size / 2) * Math.cos(around) }
  })
}

function seatsOf(
  round: WorkedRound,
  elements: readonly LocatedElement[],
  arches: ReadonlyMap<number, { arch: Arch; tip: boolean; apex: Point }>,
): Seat[] {
  const byIndex = new Map(elements.map((entry) => [entry.element.index, entry]))
  return round.places.map((place) => {
    const located = byIndex.get(place.element)
    const loop = arches.get(place.element)
    if (place.kind === 'space' && loop) {
      const middle = middleOf(loop.arch.from, loop.arch.to)
      // Seen from the centre the chord's middle is where the loop hangs; a tip chain is raised already.
      const point = loop.tip ? loop.apex : middle
      return {
        kind: 'space',
        angle: angleOf(middle),
        point,
        arch: loop.arch,
        chains: place.chains,
        foot: middle,
        tip: loop.tip,
      }
    }
    const top = located?.top ?? { x: 0, y: 0 }
    return {
      kind: place.kind,
      angle: angleOf(top),
      point: top,
      arch: null,
      chains: place.chains,
      foot: located?.base ?? top,
      tip: false,
    }
  })
}

/** The outer edge in working order: tops, along loops, over picots. */
function edgeOf(
  elements: readonly LocatedElement[],
  arches: ReadonlyMap<number, { arch: Arch; tip: boolean; apex: Point }>,
): Point[] {
  const edge: Point[] = []
  for (const { element, top } of elements) {
    const loop = arches.get(element.index)
    if (!loop) edge.push(top)
    else if (loop.tip) edge.push(loop.apex)
    else {
      const outward = at(1, angleOf(middleOf(loop.arch.from, loop.arch.to)))
      for (const share of [0.15, 0.3, 0.5, 0.7, 0.85]) edge.push(archAt(loop.arch, share, outward).point)
    }
  }
  return edge
}

function petalsOf(
  stood: readonly Stood[],
  arches: ReadonlyMap<number, { arch: Arch; tip: boolean; apex: Point }>,
  elements: readonly LocatedElement[],
): Petal[] {
  const found = new Map<number, Stood[]>()
  for (const entry of stood)
    if (entry.petal >= 0) found.set(entry.petal, [...(found.get(entry.petal) ?? []), entry])
  return [...found.values()].map((members) => {
    const tips = elements.filter(
      (e) => arches.get(e.element.index)?.tip && e.element.group === members[0]!.element.group,
    )
    const line = [...members.map((entry) => entry.top), ...tips.map((tip) => tip.top)]
    line.sort((a, b) => unwrap(angleOf(a), angleOf(line[0]!)) - unwrap(angleOf(b), angleOf(line[0]!)))
    let edge = 0
    for (let i = 1; i < line.length; i++)
      edge += Math.hypot(line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y)
    // Between N tops lie N − 1 steps; the outer halves of the first and the last stitch make up the N-th.
    edge *= line.length / Math.max(1, line.length - 1)
    return { stitches: members.length, edge, chains: members[0]!.loop ?? 0 }
  })
}

export const mean = (values: readonly number[]): number =>
  values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length
