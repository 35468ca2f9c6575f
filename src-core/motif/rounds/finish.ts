/** What completes a located round: its chains and picots, the seats that it leaves, its edge and petals. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { archAt, archBetween, archOfRise, archRise, pressedArch } from './arch'
import type { Arch } from './arch'
import { drawnChains, isDrawing } from './drawing'
import { LONG_LOOP, LOOP_ENDS, LOOPS_APART, LOOPS_LIE, PICOT, TIP_CHAIN, TIP_LOOP } from './constants'
import {
  angleOf,
  at,
  carriersOf,
  gather,
  heightOf,
  isSlip,
  isUpright,
  mean,
  middleOf,
  radiusOf,
  samePlace,
  topWidth,
  unwrap,
} from './ground'
import { fanEdge } from './fan-edge'
import type { LocatedElement, LocatedRound, Petal, Seat } from './ground'
import { edgeOfPetal } from './petal-edge'
import { petalSides } from './petal-sides'
import { alongFrom, picotChain, picotLean } from './picots'
import { edgeFromRing, isRingSlip, ringPoint } from './ring'
import { betweenEnds } from './sector'
import type { Stem } from './spokes'
import { loopOf } from './stand'
import type { Stood } from './stand'

const TURN = 2 * Math.PI
/** A loop that is drawn around what it spans keeps so far outside, in stitch widths (by eye). */
const AROUND = 0.25
/** Slip stitches of a petal lie at this share of its loop, so many stitch widths above it, and from the next loop (by eye). */
const LOOP_SLIPS = { share: 0.06, above: 0.4, apart: 0.25 } as const

/** Slip stitches in a stitch with others lie beside those, and a little above, in stitch widths (by eye). */
const BESIDE_FOOT = 0.36
const BESIDE_FOOT_UP = 0.1

/** Chains of a corner are drawn straight up to so many times the way that they span (by eye). */
const STRAIGHT = 1.25

/** What shapes a round beside its standing elements. */
interface Shaping {
  readonly cornered?: {
    readonly radius: Millimetres
    readonly angles: readonly Radians[]
    readonly around: number
  }
  /** Chains that are worked back along. */
  readonly stems?: ReadonlyMap<WorkedElement, Stem>
}
/** A loop of chains; of the tip of a group, whose. */
interface Loop {
  readonly arch: Arch
  readonly tip: number | null
  readonly apex: Point
}

const NO_STEMS: ReadonlyMap<WorkedElement, Stem> = new Map()

/** Chains, picots, seats and edge of a round whose standing elements are in place. */
export function finish(
  round: WorkedRound,
  stood: readonly Stood[],
  onto: LocatedRound | null,
  gauge: ResolvedGauge,
  { cornered, stems = NO_STEMS }: Shaping = {},
): LocatedRound {
  const byElement = new Map(stood.map((entry) => [entry.element, entry]))
  const elements: LocatedElement[] = []
  const arches = new Map<number, Loop>()
  const loops = round.elements.filter(({ role, count }) => role === 'space' && count >= LONG_LOOP).length
  let tight = 0
  const sizes = new Map<number, number>()
  for (const { group } of byElement.keys()) sizes.set(group, (sizes.get(group) ?? 0) + 1)
  const { before, behind } = carriersOf(round, onto?.round)
  const slipAt = (element: WorkedElement): Point => {
    const i = round.elements.indexOf(element)
    const beside = [before[i], behind[i]].map((each) => (each ? byElement.get(each)?.top : undefined))
    const [one, other] = beside
    if (onto && one && other && isRingSlip(element)) return ringPoint(onto, [one, other], gauge)
    return slipPoint(element, onto, gauge, round)
  }
  const pointOf = (element: WorkedElement): Point => byElement.get(element)?.top ?? slipAt(element)
  /** Where a round ends that began in a place, which it may have come back to. */
  const endsAt = (begun: WorkedElement): WorkedElement | undefined =>
    round.elements.findLast((each) => (byElement.has(each) || isSlip(each)) && !samePlace(each, begun))
  /** What a loop may spread over: from its ends, or half the way to the next ones where no other loop ends there. */
  const sectorOf = (previous: WorkedElement, next: WorkedElement): [Radians, Radians] => {
    const { length } = round.elements
    const [from, to] = [previous, next].map((each) => round.elements.indexOf(each)) as [number, number]
    const start = angleOf(pointOf(previous))
    const end = angleOf(pointOf(next))
    const [beyond, further] = [from < 0 ? endsAt(previous) : before[from], behind[to]]
    const hasLoop = (index: number): boolean => round.elements[(index + length) % length]?.role === 'space'
    const half = (own: Radians, other: WorkedElement | null | undefined): Radians =>
      other ? (own + unwrap(angleOf(pointOf(other)), own)) / 2 : own
    return [
      hasLoop(from - 1) ? start : half(start, beyond),
      to < 0 || hasLoop(to + 1) ? end : half(end, further),
    ]
  }
  const sides = petalSides(round, onto?.round)
  round.elements.forEach((element, i) => {
    const entry = byElement.get(element)
    const stem = stems.get(element)
    if (entry) elements.push({ element, base: entry.base, top: entry.top, chain: [] })
    else if (stem)
      elements.push({ element, base: stem.from, top: stem.tip, chain: stem.chain, end: stem.tip })
    else if (isSlip(element)) {
      const point = slipAt(element)
      elements.push({ element, base: point, top: point, chain: [] })
    } else if (element.role === 'space') {
      const previous = before[i]
      const next = behind[i]
      if (!previous || !next) return
      const from = pointOf(previous)
      const to = pointOf(next)
      if (onto && isRingSlip(previous) !== isRingSlip(next)) {
        const up = isRingSlip(previous)
        const [slip, stitch] = up ? [from, to] : [to, from]
        elements.push(edgeFromRing(element, slip, stitch, up, gauge))
        return
      }
      // Where the hook stands when a round begins is a slip stitch of no group: the first petal rises as the others do.
      const begins = previous.index < 0 && samePlace(previous, next)
      const within = begins || inOneGroup(previous, next)
      const isSide = sides.has(element)
      if ((within || isSide) && isSlip(previous) !== isSlip(next)) {
        const foot = byElement.get(isSlip(previous) ? next : previous)?.base
        elements.push(edgeOfPetal(element, { from, to, foot, up: isSlip(previous), isSide }, gauge))
        return
      }
      const tip = within && !isSlip(previous)
      const chains = tip ? element.count : drawnChains(gauge, round, element)
      const closing = round.elements[i + 1]?.role === 'closing' ? round.elements[i + 1]! : null
      const closed = closing ? heightOf(closing, gauge) : 0
      const hanging = clearOf(archBetween(from, to, chains * gauge.width + closed), gauge)
      const room = (TURN * (radiusOf(middleOf(from, to)) + hanging.length / 4)) / Math.max(1, loops)
      const arch = pressedArch(hanging, room)
      // Short spaces lie between stitches that stand apart anyway; a loop has to span what it spans.
      if (!tip && !cornered && element.count >= 3) tight = Math.max(tight, arch.chord - arch.length)
      const outward = at(1, angleOf(middleOf(from, to)))
      const wide = isDrawing(gauge) && element.count >= TIP_LOOP
      const raised = tip && (wide || (sizes.get(previous.group) ?? 0) > 2)
      const rise = raised
        ? TIP_CHAIN * element.count * gauge.width
        : tip
          ? tipRise(arch, element.count, gauge)
          : archRise(arch)
      const middle = middleOf(from, to)
      const ends = [radiusOf(from), radiusOf(to)]
      // Where a drawing has symbols beside each other, none begins below the top of its neighbour.
      const level = isDrawing(gauge) ? Math.max(...ends) : mean(ends)
      const far = (tip ? level : radiusOf(middle)) + rise
      const apex = at(far, angleOf(middle))
      const drawn = tip ? archOfRise(from, to, rise) : arch
      const loop: Loop = { arch: tip ? drawn : arch, tip: tip ? previous.group : null, apex }
      arches.set(element.index, loop)
      const [start, end] = sectorOf(previous, next)
      const pointAt = (share: number): Point => {
        const { point } = archAt(drawn, share, outward)
        return tip ? point : betweenEnds(point, start, end, LOOPS_APART * gauge.width)
      }
      // A stitch that closes the loop stands for the last part of it.
      const part = closing ? chains / (chains + closed / gauge.width) : 1
      const chain = Array.from({ length: element.count }, (_, k) => {
        // Drawn together a little, so that loops that end at one stitch leave its top free.
        const share = 0.5 + ((k + 0.5) / element.count - 0.5) * (1 - LOOP_ENDS / element.count)
        return pointAt(share * part)
      })
      elements.push({ element, base: from, top: apex, chain, end: closing ? pointAt(part) : to })
      if (!closing) return
      arches.set(closing.index, loop)
      elements.push({ element: closing, base: to, top: pointAt(part), chain: [] })
    } else if (element.role === 'picot') {
      const previous = before[i]
      if (!previous) return
      const foot = pointOf(previous)
      const size = PICOT * element.count * gauge.width
      const { lean, clear } = picotLean(element, previous, round, before, gauge)
      const base = alongFrom(foot, clear, lean)
      const top = alongFrom(foot, clear + size, lean)
      elements.push({ element, base, top, chain: picotChain(base, top, element.count) })
    }
  })
  const seats = seatsOf(round, elements, arches)
  const edge = edgeOf(elements, arches)
  const length = round.elements.reduce((sum, element) => sum + topWidth(element, gauge), 0)
  const radius =
    cornered?.radius ?? mean(elements.filter((e) => e.chain.length === 0).map((e) => radiusOf(e.top)))
  const upright = stood.filter((entry) => isUpright(entry.element))
  const stretched = mean(upright.map((e) => radiusOf(e.top) - radiusOf(e.base) - heightOf(e.element, gauge)))
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
    around: cornered?.around ?? TURN,
    stacked: 0,
    stackedAt: [],
    petals: petalsOf(stood, arches, elements, gauge),
    length,
    tight,
  }
}

/** A loop that would be drawn across what it spans is drawn around it. */
function clearOf(arch: Arch, gauge: ResolvedGauge): Arch {
  if (!isDrawing(gauge)) return arch
  const { from, to } = arch
  const sag = mean([radiusOf(from), radiusOf(to)]) - radiusOf(middleOf(from, to))
  const least = sag + AROUND * gauge.width
  return sag > AROUND * gauge.width && archRise(arch) < least ? archOfRise(from, to, least) : arch
}

/** The chains of a corner between two stitches lie straight; drawn, they stand out where they are too long for that. */
const tipRise = (arch: Arch, chains: number, gauge: ResolvedGauge): Millimetres => {
  if (arch.length <= STRAIGHT * arch.chord) return 0
  return isDrawing(gauge) ? archRise(arch) : chains >= LONG_LOOP ? LOOPS_LIE * archRise(arch) : 0
}

/** Slip stitches of a petal lie at the ends of its loop. */
function slipOnLoop(
  element: WorkedElement,
  arch: Arch,
  round: WorkedRound,
  gauge: ResolvedGauge,
): Point | null {
  const own = round.elements.filter((each) => each.group === element.group && isUpright(each))
  if (own.length === 0) return null
  const share = element.index < own[0]!.index ? LOOP_SLIPS.share : 1 - LOOP_SLIPS.share
  const { point, normal } = archAt(arch, share, at(1, angleOf(middleOf(arch.from, arch.to))))
  const up = LOOP_SLIPS.above * gauge.width
  const above = { x: point.x + normal.x * up, y: point.y + normal.y * up }
  return betweenEnds(above, angleOf(arch.from), angleOf(arch.to), LOOP_SLIPS.apart * gauge.width)
}

/** A slip stitch lies in its place, a little higher. */
export function slipPoint(
  element: WorkedElement,
  onto: LocatedRound | null,
  gauge: ResolvedGauge,
  round?: WorkedRound,
): Point {
  const place = element.into[0]
  const seat = place && onto && place.round === onto.round.index ? onto.seats[place.index] : null
  const loop = loopOf(seat ?? null)
  const onLoop = loop && round ? slipOnLoop(element, loop, round, gauge) : null
  if (onLoop) return onLoop
  const point = seat?.point ?? { x: 0, y: -1 }
  const side = round && seat?.kind === 'stitch' && isDrawing(gauge) ? sideOf(element, round, onto?.round) : 0
  if (side !== 0) {
    const turn = (side * BESIDE_FOOT * gauge.width) / Math.max(radiusOf(point), gauge.width)
    return at(radiusOf(point) + BESIDE_FOOT_UP * gauge.width, angleOf(point) + turn)
  }
  return at(radiusOf(point) + gauge.height('sl st'), angleOf(point))
}

/** On which side of what stands in the same stitch a slip stitch lies: -1 before it, 1 behind it, 0 for none. */
function sideOf(element: WorkedElement, round: WorkedRound, onto: WorkedRound | undefined): -1 | 0 | 1 {
  const { before, behind } = carriersOf(round, onto)
  const i = round.elements.indexOf(element)
  // Where a round begins, before its first chains.
  if (i < 0) return round.elements.some((each) => isSlip(each) && samePlace(element, each)) ? -1 : 0
  if (behind[i] && samePlace(element, behind[i])) return -1
  return before[i] && samePlace(element, before[i]) ? 1 : 0
}

/**
 * Chains between stitches in one place: the open tip of a petal or a corner, however the text says it. All that goes into
 * a ring goes into one place too, which is no group by that.
 */
const inOneGroup = (previous: WorkedElement, next: WorkedElement): boolean =>
  previous.group >= 0 && previous.group === next.group && previous.into[0]?.kind !== 'ring'

function seatsOf(
  round: WorkedRound,
  elements: readonly LocatedElement[],
  arches: ReadonlyMap<number, Loop>,
): Seat[] {
  const byIndex = new Map(elements.map((entry) => [entry.element.index, entry]))
  return round.places.map((place) => {
    const located = byIndex.get(place.element)
    const loop = arches.get(place.element)
    if (place.kind === 'space' && loop) {
      const middle = middleOf(loop.arch.from, loop.arch.to)
      // Seen from the centre the chord's middle is where the loop hangs; a tip chain is raised already.
      const point = loop.tip === null ? middle : loop.apex
      return {
        kind: 'space',
        angle: angleOf(middle),
        point,
        arch: loop.arch,
        chains: place.chains,
        foot: middle,
        tip: loop.tip !== null,
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

const between = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
})

/** The outer edge in working order: tops, along loops, over picots. */
function edgeOf(elements: readonly LocatedElement[], arches: ReadonlyMap<number, Loop>): Point[] {
  const edge: Point[] = []
  for (const [i, { element, base, top }] of elements.entries()) {
    const loop = arches.get(element.index)
    const before = elements[i - 1]
    // Chains at the side of a petal stand up from its foot, wherever the slip stitch before them lies.
    if (!loop && element.role === 'space' && (!before || isSlip(before.element))) edge.push(base)
    if (!loop) edge.push(top)
    else if (loop.tip !== null) edge.push(loop.apex)
    else {
      const outward = at(1, angleOf(middleOf(loop.arch.from, loop.arch.to)))
      for (const share of [0.15, 0.3, 0.5, 0.7, 0.85]) {
        const { from, to } = loop.arch
        const { point } = archAt(loop.arch, share, outward)
        const foot = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }
        edge.push(loop.arch.narrow ? point : between(foot, point, LOOPS_LIE))
      }
    }
  }
  return edge
}

function petalsOf(
  stood: readonly Stood[],
  arches: ReadonlyMap<number, Loop>,
  elements: readonly LocatedElement[],
  gauge: ResolvedGauge,
): Petal[] {
  const order = [...stood].sort((one, other) => one.element.index - other.element.index)
  const found = new Map<number, Stood[]>()
  for (const entry of stood) if (entry.petal >= 0) gather(found, entry.petal, entry)
  const tipsOf = new Map<number, LocatedElement[]>()
  for (const entry of elements) {
    const tip = arches.get(entry.element.index)?.tip ?? null
    if (tip !== null) gather(tipsOf, tip, entry)
  }
  return [...found.values()].map((members) => {
    const tips = tipsOf.get(members[0]!.element.group) ?? []
    const line = [...members.map((entry) => entry.top), ...tips.map((tip) => tip.top)]
    line.sort((a, b) => unwrap(angleOf(a), angleOf(line[0]!)) - unwrap(angleOf(b), angleOf(line[0]!)))
    let edge = 0
    for (let i = 1; i < line.length; i++)
      edge += Math.hypot(line[i]!.x - line[i - 1]!.x, line[i]!.y - line[i - 1]!.y)
    // Between N tops lie N − 1 steps; the outer halves of the first and the last stitch make up the N-th.
    edge *= line.length / Math.max(1, line.length - 1)
    const along = members.reduce((sum, entry) => sum + (entry.along ?? 0), 0)
    // Laid out in its sector a shell may be pressed; fanned out it has the room that its neighbours leave.
    const fanned = along ? 0 : fanEdge(members, order, gauge)
    return {
      stitches: members.length,
      edge: along || Math.max(edge, fanned),
      chains: members[0]!.loop ?? 0,
    }
  })
}
