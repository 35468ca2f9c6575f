/** What goes into the ring that a motif begins on (M5): stitches around it, petals and loops between slip stitches. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement, WorkedRound } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres, Radians } from '../../units/quantity'
import { OVERFULL_FROM, OVERFULL_MOST, OVERFULL_SHARE, RING_GIVES } from './constants'
import { isDrawing } from './drawing'
import { angleOf, at, heightOf, isUpright, mean, radiusOf, topWidth, unwrap } from './ground'
import type { LocatedElement, LocatedRound } from './ground'
import type { Stem } from './spokes'
import type { Stood } from './stand'

const TURN = 2 * Math.PI
/** Slip stitches into a ring keep so far from each other, in stitch widths (by eye). */
const SLIP_ROOM = 0.45
/** Chains at a petal's edge begin outside of the ring where they have come apart, in stitch widths (by eye). */
const EDGE_FOOT = { least: 0.45, apart: 0.2 } as const

/** M7: an over-full round stands out a little more; one that holds no more than a flat disc does is not over-full. */
export function overfull(length: Millimetres, radius: Millimetres, height: Millimetres): Millimetres {
  const strained = length / TURN / OVERFULL_FROM - radius - height
  return Math.min(OVERFULL_MOST * height, Math.max(0, strained * OVERFULL_SHARE))
}

/** The ring that a motif begins on. */
export interface Ring {
  /** 0 for an adjustable one. */
  readonly chains: number
  /** Of a bought one, which keeps its size: how wide it is. */
  readonly across: Millimetres | null
}

interface InRing {
  readonly stood: readonly Stood[]
  /** Chains that stand up from the ring at the edges of petals. */
  readonly edges: ReadonlyMap<WorkedElement, Stem>
}

/** M5: everything goes into the ring; tops stand evenly, by their widths. */
export function standOnRing(round: WorkedRound, gauge: ResolvedGauge, { chains, across }: Ring): InRing {
  const beginsInChain = round.foundation?.kind === 'chain'
  const inRing = (element: WorkedElement): boolean =>
    (isUpright(element) || element.role === 'slip') &&
    // The chain that was made before the round is its ring; one of its own is a spoke.
    (beginsInChain || element.into[0]?.kind !== 'chain' || element.into[0].round < 0)
  const isSlip = (element: WorkedElement | undefined): boolean => element?.role === 'slip' && inRing(element)
  const { elements } = round
  const beside = (i: number) => [elements[i - 1] ?? elements[elements.length - 1], elements[i + 1]] as const
  /** "ch 3, 3 dc, ch 3, sl st": chains between a slip stitch and a stitch are the edge of a petal. */
  const isEdge = (element: WorkedElement, i: number): boolean => {
    const [before, after] = beside(i)
    const hangs = element.role === 'space' || (element.role === 'beginning' && !element.standing)
    return hangs && isSlip(before) !== isSlip(after)
  }
  const isLoop = (element: WorkedElement, i: number): boolean => {
    const [before, after] = beside(i)
    return element.role === 'space' && isSlip(before) && isSlip(after)
  }
  const widths = elements.map((element, i): Millimetres => {
    if (isSlip(element) || isEdge(element, i)) return gauge.width
    if (isLoop(element, i) || (!inRing(element) && element.role !== 'space')) return 0
    return topWidth(element, gauge)
  })
  const total = widths.reduce((sum, width) => sum + width, 0)
  const upright = elements.filter((element) => isUpright(element) && inRing(element))
  const slips = elements.filter(isSlip).length
  const height = mean(upright.map((element) => heightOf(element, gauge)))
  const ring = across === null ? (chains * gauge.width) / TURN : across / 2
  const needed = Math.max(ring, total / TURN - height)
  const inner = isDrawing(gauge)
    ? Math.max(needed, gauge.reach(round) - height)
    : Math.min((across === null ? 1 + RING_GIVES : 1) * ring, needed)
  const extra = upright.length > 0 ? overfull(total, inner, height) : 0
  const slipRadius = Math.max(inner, (slips * SLIP_ROOM * gauge.width) / TURN) + gauge.height('sl st')
  const first = elements.findIndex(inRing)
  const stood: Stood[] = []
  const edges = new Map<WorkedElement, Stem>()
  let walked = -(widths[first] ?? 0) / 2
  let petal = slips > 0 ? 0 : -1
  elements.forEach((element, i) => {
    const angle = ((walked + widths[i]! / 2) / Math.max(total, 1e-9)) * TURN
    walked += widths[i]!
    if (isEdge(element, i)) {
      const foot = inner + Math.max(EDGE_FOOT.least * gauge.width, (EDGE_FOOT.apart * total) / TURN)
      edges.set(element, edgeAt(angle, element.count, foot, Math.max(inner + height + extra, foot)))
    }
    if (!inRing(element)) return
    const base = at(inner, angle)
    if (element.role === 'slip') {
      petal += petal >= 0 ? 1 : 0
      stood.push({ element, base, top: at(slipRadius, angle), petal: -1 })
      return
    }
    stood.push({ element, base, top: at(inner + heightOf(element, gauge) + extra, angle), petal })
  })
  return { stood, edges }
}

/** Whether a slip stitch goes into the ring. */
export const isRingSlip = (element: WorkedElement): boolean =>
  element.role === 'slip' && element.into[0]?.kind === 'ring'

/** Slip stitches into the ring out of later rounds lie so far outside of those before, in stitch widths (by eye). */
const NEXT_SLIP = 0.5

/** Where a slip stitch of a later round lies in the ring: half way between the stitches on both sides of it. */
export function ringPoint(
  { elements }: LocatedRound,
  [before, behind]: readonly [Point, Point],
  { width }: ResolvedGauge,
): Point {
  const from = angleOf(before)
  const way = unwrap(angleOf(behind), from + Math.PI) - from
  const slips = elements.filter(({ element }) => isRingSlip(element)).map(({ top }) => radiusOf(top))
  const bases = elements.filter(({ element }) => element.into[0]?.kind === 'ring')
  const inner = slips.length > 0 ? Math.max(...slips) : Math.min(...bases.map(({ base }) => radiusOf(base)))
  return at((Number.isFinite(inner) ? inner : 0) + NEXT_SLIP * width, from + way / 2)
}

/** Chains of a later round from a slip stitch in the ring up to its stitch beside them, or down from that. */
export function edgeFromRing(
  element: WorkedElement,
  slip: Point,
  stitch: Point,
  up: boolean,
  { width }: ResolvedGauge,
): LocatedElement {
  const own = angleOf(stitch)
  const free = unwrap(angleOf(slip), own) - own
  const aside = Math.sign(free) * Math.min(width / Math.max(radiusOf(stitch), width), Math.abs(free) / 2)
  const tip = at(radiusOf(stitch), own + aside)
  const chain = Array.from({ length: element.count }, (_, k) => {
    const share = (k + 1) / (element.count + 0.5)
    return { x: slip.x + (tip.x - slip.x) * share, y: slip.y + (tip.y - slip.y) * share }
  })
  const ordered = up ? chain : chain.reverse()
  return { element, base: up ? slip : tip, top: tip, chain: ordered, end: up ? tip : slip }
}

/** Chains that go straight up beside the stitches of a petal. */
function edgeAt(angle: Radians, count: number, foot: Millimetres, top: Millimetres): Stem {
  const step = (top - foot) / Math.max(1, count)
  const chain = Array.from({ length: count }, (_, k) => at(foot + (k + 0.5) * step, angle))
  return { from: at(foot, angle), tip: at(top, angle), chain }
}
