/** A motif in written rounds (M4–M17) → its account: radii, outline, anchors, stitches, yarn, how it lies. */
import type { Finding } from '../../../shared-types/finding'
import type { Anchor, MeasuredRound, MotifAccount, MotifLayer, Point } from '../../../shared-types/plan'
import type { Hand, RoundsMotif, StitchGauge, Terms } from '../../../shared-types/project'
import { finding } from '../../findings/finding'
import type { Outline } from '../../geometry/points'
import type { WorkedRound } from '../../notation/worked'
import { resolveGauge, scaleGauge, sizeSpread } from '../../stitches/gauge'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { StitchKey } from '../../stitches/table'
import { formatNumber } from '../../units/format'
import type { Millimetres, Radians } from '../../units/quantity'
import { CLOCK_DIRECTIONS, leafAnchors, petalAnchors, roundAnchors, sidedAnchors } from '../anchors'
import { MEASURED_SPREAD, OUTLINE_POINTS } from '../constants'
import { leafOutline, leafWidest, roundOutline, sidedOutline } from '../outlines'
import { CORNERS, OUTER_LOOPS } from './constants'
import { checkRounds, flatnessOf, lieOf } from './checks'
import { at, radiusOf } from './ground'
import type { LocatedElement, LocatedRound } from './ground'
import { locateLeaf, stemPoints } from './leaf'
import { locateRound } from './locate'
import { envelope, lobedOutline, lobeExtremes, lobesOf } from './profile'
import type { Lobes } from './profile'
import { readMotif } from './read-motif'
import type { ReadMotif } from './read-motif'
import { slotWork } from './stitch-counts'

export interface RoundsContext {
  readonly hand: Hand
  readonly terms: Terms
  /** Gauge of the project, for motifs without their own. */
  readonly gauge: StitchGauge | undefined
  readonly growth: number
}

export interface RoundsAccount {
  readonly account: MotifAccount | null
  readonly findings: readonly Finding[]
  /** The gauge as the motif's own measures calibrate it. */
  readonly gauge?: ResolvedGauge
  /** Where every stitch lies, for the chart; empty where nothing could be located. */
  readonly located: readonly LocatedRound[]
  /** What the located rounds stand on; null where nothing could be located. */
  readonly beginning: Beginning | null
}

/** What a motif begins with, as the chart draws it. */
export interface Beginning {
  /** w of the located rounds, in mm. */
  readonly stitchWidth: Millimetres
  /** Chains of the ring; 0 for an adjustable one. */
  readonly ringChains: number
  /** Middles of the chains of a foundation chain, in the order made; none of a ring. */
  readonly stem: readonly Point[]
  /** What the located rounds are turned by, clockwise, to lie as the outline does: a tip or corner 1 in its place. */
  readonly turn: Radians
}

/** The account of a motif in written rounds; null with findings where the rounds give no outline. */
export function roundsAccount(motif: RoundsMotif, context: RoundsContext): RoundsAccount {
  const read = readMotif(motif, context.terms)
  const where = `motif ${motif.id}`
  if (read.worked.length === 0) {
    const none = finding('motif/no-rounds', where, {}, { motif: motif.id })
    return { account: null, findings: [...read.findings, none], located: [], beginning: null }
  }
  const gauge = calibrated(motif, context, read)
  if (read.stemChains > 0) return leafAccount(motif, context, read, gauge)
  const located = locateAll(read, gauge, motif)
  const shape = shapeOf(located, gauge, context.hand)
  const scaled = calibrateSize(motif, shape, context.growth)
  const spread = scaled.ratio === null ? sizeSpread(gauge, tallest(read.worked)) : MEASURED_SPREAD
  const own = scaled.ratio === null ? gauge : scaleGauge(gauge, scaled.ratio)
  const work = slotWork(read.worked, (round) => slotOf(motif, read, round), own, read.ringChains)
  const rounds = measuredRounds(located, scaled.ratio ?? 1)
  const findings = [
    ...read.findings,
    ...checkRounds(motif, read, located, gauge),
    ...scaled.findings.map((entry) => ({ ...entry, where, target: { motif: motif.id } })),
  ]
  const account: MotifAccount = {
    id: motif.id,
    name: motif.name ?? motif.id,
    shape: scaled.shape.shape,
    petals: scaled.shape.petals,
    overTips: scaled.shape.overTips,
    overValleys: scaled.shape.overValleys,
    range: { low: scaled.shape.overTips * (1 - spread), high: scaled.shape.overTips * (1 + spread) },
    provenance: scaled.ratio === null ? gauge.provenance : 'measured',
    rounds,
    ...work,
    outline: scaled.shape.outline,
    anchors: scaled.shape.anchors,
    layers: layersOf(motif, read, located, scaled.shape, context.hand),
    findings,
  }
  const beginning = { stitchWidth: gauge.width, ringChains: read.ringChains, stem: [], turn: shape.turn }
  return { account, findings, gauge: own, located, beginning }
}

/** M3: "rounds 1–2 measure 63.5 mm" scales a rule-of-thumb gauge until those rounds come out right. */
function calibrated(motif: RoundsMotif, context: RoundsContext, read: ReadMotif): ResolvedGauge {
  const plain = resolveGauge(motif.gauge ?? context.gauge, context.terms)
  const known = plain.roundsMeasure
  if (!known) return plain
  let gauge = scaleGauge(plain, 1)
  // Ring and loops do not grow in step with the stitches: a few rounds of scaling settle it.
  for (let i = 0; i < 6; i++) {
    const located = locateAll(read, gauge, null)
    const last = located.filter((entry) => entry.round.number <= known.rounds)
    const radii = envelope(last.length > 0 ? last : located)
    const across = 2 * Math.max(...radii)
    if (!(across > 0)) return gauge
    gauge = scaleGauge(gauge, known.across / across)
  }
  return gauge
}

function locateAll(read: ReadMotif, gauge: ResolvedGauge, motif: RoundsMotif | null): LocatedRound[] {
  const located: LocatedRound[] = []
  let own = gauge
  read.worked.forEach((round, i) => {
    located.push(locateRound(round, located, own, read.ringChains))
    const across = motif?.rounds?.[read.entries[i]!]?.across
    const lastOfEntry = read.entries[i + 1] !== read.entries[i]
    if (across && across > 0 && lastOfEntry) {
      const reach = Math.max(...envelope(located))
      if (reach > 0) {
        const factor = across / 2 / reach
        located.forEach((entry, k) => (located[k] = scaleRound(entry, factor)))
        own = scaleGauge(own, factor)
      }
    }
  })
  return located
}

/** M15: a measured round rules from there on. */
function scaleRound(round: LocatedRound, factor: number): LocatedRound {
  const scale = <P extends { x: number; y: number }>(p: P): P => ({ ...p, x: p.x * factor, y: p.y * factor })
  const moved = (entry: LocatedElement): LocatedElement => ({
    ...entry,
    base: scale(entry.base),
    top: scale(entry.top),
    chain: entry.chain.map(scale),
    ...(entry.feet && { feet: entry.feet.map(scale) }),
    ...(entry.end && { end: scale(entry.end) }),
  })
  return {
    ...round,
    seats: round.seats.map((seat) => ({
      ...seat,
      point: scale(seat.point),
      foot: scale(seat.foot),
      arch: seat.arch && {
        ...seat.arch,
        from: scale(seat.arch.from),
        to: scale(seat.arch.to),
        length: seat.arch.length * factor,
        chord: seat.arch.chord * factor,
      },
    })),
    elements: round.elements.map(moved),
    asides: round.asides.map(moved),
    edge: round.edge.map(scale),
    radius: round.radius * factor,
    length: round.length * factor,
    extra: round.extra * factor,
    petals: round.petals.map((petal) => ({ ...petal, edge: petal.edge * factor })),
  }
}

interface Shape {
  readonly shape: MotifAccount['shape']
  readonly petals: number
  readonly overTips: Millimetres
  readonly overValleys: Millimetres
  readonly outline: Outline
  readonly anchors: readonly Anchor[]
  readonly turn: Radians
}

/** Petals, corners or a round: what the outermost rounds make. */
function shapeOf(located: readonly LocatedRound[], gauge: ResolvedGauge, hand: Hand): Shape {
  const radii = envelope(located)
  const outer = OUTER_LOOPS * gauge.width
  for (let i = 0; i < radii.length; i++) radii[i]! += outer
  const last = located[located.length - 1]!
  const cornered = [...located].reverse().find((entry) => entry.corners > 0)
  const petalled = [...located].reverse().find((entry) => entry.petals.length >= 3)
  const rank = (entry: LocatedRound | undefined) => (entry ? located.indexOf(entry) : -1)
  if (cornered && rank(cornered) > rank(petalled)) {
    const lobes = lobesOf(radii, cornered.corners)
    return sidedShape(lobes, hand)
  }
  const asked = petalled && petalled === last ? petalled.petals.length : null
  const lobes = lobesOf(radii, asked)
  return lobes.count === 0 ? roundShape(Math.max(...lobes.profile), hand) : petalShape(lobes, hand)
}

function roundShape(radius: Millimetres, hand: Hand): Shape {
  return {
    shape: 'round',
    petals: 0,
    overTips: 2 * radius,
    overValleys: 2 * radius,
    outline: roundOutline(radius),
    anchors: roundAnchors(radius, CLOCK_DIRECTIONS, hand),
    turn: 0,
  }
}

function petalShape(lobes: Lobes, hand: Hand): Shape {
  const { tip, valley } = lobeExtremes(lobes)
  const outline = lobedOutline(lobes, OUTLINE_POINTS)
  const flank = outline[Math.round(outline.length / lobes.count / 4)]!
  return {
    shape: 'petals',
    petals: lobes.count,
    overTips: 2 * tip,
    overValleys: 2 * valley,
    outline,
    anchors: petalAnchors(lobes.count, tip, valley, radiusOf(flank), hand),
    turn: -lobes.phase,
  }
}

function sidedShape(lobes: Lobes, hand: Hand): Shape {
  const sides = Math.min(CORNERS.most, Math.max(CORNERS.least, lobes.count))
  const corner = lobes.profile[0]!
  const middle = Math.round((lobes.profile.length - 1) / 2)
  // Scallops along a side: what neighbours meet is the outermost of the middle third.
  const sixth = Math.round(middle / 3)
  const apothem = Math.max(...lobes.profile.slice(middle - sixth, middle + sixth + 1))
  const half = Math.min(apothem, corner * 0.999)
  const first = sides === 6 ? 0 : Math.PI / sides
  const outline = sidedOutline(sides, half, Math.max(corner, half / Math.cos(Math.PI / sides) - 1e-9), first)
  const perSide = outline.length / sides
  const corners = Array.from({ length: sides }, (_, k) => outline[k * perSide]!)
  const inOrder = hand === 'left' || sides === 6 ? corners : [corners[sides - 1]!, ...corners.slice(0, -1)]
  return {
    shape: 'straight',
    petals: sides,
    overTips: 2 * radiusOf(corners[0]!),
    overValleys: 2 * half,
    outline,
    anchors: sidedAnchors(inOrder, hand),
    turn: first - lobes.phase,
  }
}

/** M15, M18: a measure of the finished motif rules; the ratio to what the gauge says is told. */
function calibrateSize(motif: RoundsMotif, shape: Shape, growth: number) {
  const measured = motif.measured
  const grown = measured?.blocked === false ? 1 + growth : 1
  const tips =
    (measured?.overTips ??
      measured?.pointToPoint ??
      (shape.shape === 'round' ? measured?.across : undefined) ??
      0) * grown
  const valleys = (measured?.overValleys ?? measured?.sideToSide ?? 0) * grown
  if (!(tips > 0 || valleys > 0)) return { shape, ratio: null, findings: [] }
  const outerFactor = tips > 0 ? tips / shape.overTips : valleys / shape.overValleys
  const innerFactor = valleys > 0 ? valleys / shape.overValleys : outerFactor
  const inner = Math.min(shape.overValleys * innerFactor, shape.overTips * outerFactor)
  const from = [shape.overValleys / 2, shape.overTips / 2] as const
  const to = [inner / 2, (shape.overTips * outerFactor) / 2] as const
  // Radially, piecewise between valley and tip.
  const scale = <P extends { x: number; y: number }>(p: P): P => {
    const radius = radiusOf(p)
    if (radius === 0) return p
    const share = from[1] > from[0] ? (radius - from[0]) / (from[1] - from[0]) : 1
    const target = share <= 0 ? (radius * to[0]) / from[0] : to[0] + share * (to[1] - to[0])
    return { ...p, x: (p.x * target) / radius, y: (p.y * target) / radius }
  }
  const percent = (outerFactor - 1) * 100
  const findings =
    Math.abs(percent) < 1
      ? []
      : [
          finding('motif/other-than-gauge', '', {
            percent: formatNumber(Math.abs(percent), 0),
            direction: percent > 0 ? 'larger' : 'smaller',
          }),
        ]
  return {
    shape: {
      ...shape,
      overTips: 2 * to[1],
      overValleys: 2 * to[0],
      outline: shape.outline.map(scale),
      anchors: shape.anchors.map(scale),
    },
    ratio: outerFactor,
    findings,
  }
}

function measuredRounds(located: readonly LocatedRound[], ratio: number): MeasuredRound[] {
  return located.map((entry) => ({
    number: entry.round.number,
    outerRadius: Math.max(...envelope([entry]), 0) * ratio,
    stitches: entry.round.stitches,
    flatness: flatnessOf(entry),
    lies: lieOf(entry),
  }))
}

const slotOf = (motif: RoundsMotif, read: ReadMotif, round: WorkedRound): string =>
  motif.rounds?.[read.entries[read.worked.indexOf(round)]!]?.slot ?? ''

/** The tallest stitch that is common: a tenth of the standing stitches and more. */
function tallest(worked: readonly WorkedRound[]): StitchKey {
  const counts = new Map<StitchKey, number>()
  let total = 0
  for (const round of worked)
    for (const element of round.elements)
      if (element.role === 'stitch') {
        counts.set(element.stitch, (counts.get(element.stitch) ?? 0) + 1)
        total++
      }
  const common = (['dtr', 'tr', 'dc', 'hdc', 'sc'] as const).find(
    (stitch) => (counts.get(stitch) ?? 0) >= total / 10,
  )
  return common ?? 'sc'
}

/** Colour sections for drawing, the outermost first: the envelope of all rounds up to the last of each colour. */
function layersOf(
  motif: RoundsMotif,
  read: ReadMotif,
  located: readonly LocatedRound[],
  shape: Shape,
  hand: Hand,
): MotifLayer[] {
  const slots = located.map((entry) => slotOf(motif, read, entry.round))
  const layers: MotifLayer[] = []
  const full = Math.max(...envelope(located), 1e-9)
  slots.forEach((slot, i) => {
    if (i === located.length - 1) layers.unshift({ slot, outline: shape.outline })
    else if (slots[i + 1] !== slot) {
      const radii = envelope(located.slice(0, i + 1))
      const own = located[i]!
      const lobes = lobesOf(radii, own.petals.length >= 3 ? own.petals.length : own.corners || null)
      const factor = shape.overTips / 2 / full
      const outline =
        lobes.count === 0 ? roundOutline(Math.max(...lobes.profile)) : lobedOutline(lobes, OUTLINE_POINTS)
      const turned =
        lobes.count > 0 && shape.shape === 'straight' && lobes.count !== 6 ? Math.PI / lobes.count : 0
      const sign = hand === 'left' ? 1 : -1
      layers.unshift({
        slot,
        outline: outline.map((p) => {
          const r = radiusOf(p) * factor
          return at(r, Math.atan2(p.x, -p.y) + sign * turned)
        }),
      })
    }
  })
  return layers
}

/** A leaf: a chain worked along on both sides. Length from the chain, width from the stitches of both sides. */
function leafAccount(
  motif: RoundsMotif,
  context: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
): RoundsAccount {
  const sides = read.worked.map((round) => {
    const heights = { near: 0, far: 0, end: 0 }
    for (const element of round.elements) {
      if (!element.standing) continue
      const height = gauge.height(element.countsAs ?? element.stitch)
      const side = element.into[0]?.opposite ? 'far' : 'near'
      heights[side] = Math.max(heights[side], height)
      heights.end = heights.end === 0 ? height : Math.min(heights.end, height)
    }
    return heights
  })
  const width = sides.reduce((sum, { near, far }) => sum + near + (far || near), 0)
  const length = read.stemChains * gauge.width + sides.slice(1).reduce((sum, { end }) => sum + 2 * end, 0)
  const shape: Shape = {
    shape: 'leaf',
    petals: 2,
    overTips: length,
    overValleys: width,
    outline: leafOutline(length, width),
    anchors: leafAnchors(length, width, leafWidest(length), context.hand),
    turn: 0,
  }
  const measured = motif.measured
  const grown = measured?.blocked === false ? 1 + context.growth : 1
  const own = {
    length: (measured?.length ?? measured?.overTips ?? 0) * grown || length,
    width: (measured?.width ?? measured?.overValleys ?? 0) * grown || width,
  }
  const ruled = own.length !== length || own.width !== width
  const spread = ruled ? MEASURED_SPREAD : sizeSpread(gauge, tallest(read.worked))
  const work = slotWork(read.worked, (round) => slotOf(motif, read, round), gauge)
  const outline = ruled ? leafOutline(own.length, own.width) : shape.outline
  const slots = [...new Set(read.worked.map((round) => slotOf(motif, read, round)))].reverse()
  const account: MotifAccount = {
    id: motif.id,
    name: motif.name ?? motif.id,
    shape: shape.shape,
    petals: shape.petals,
    overTips: own.length,
    overValleys: own.width,
    outline,
    anchors: ruled ? leafAnchors(own.length, own.width, leafWidest(own.length), context.hand) : shape.anchors,
    range: { low: own.length * (1 - spread), high: own.length * (1 + spread) },
    provenance: ruled ? 'measured' : gauge.provenance,
    rounds: read.worked.map((round) => ({
      number: round.number,
      outerRadius: own.length / 2,
      stitches: round.stitches,
      flatness: 1,
      lies: null,
    })),
    ...work,
    layers: slots.map((slot, i) => ({
      slot,
      outline: outline.map(({ x, y }) => ({
        x: (x * (slots.length - i)) / slots.length,
        y: (y * (slots.length - i)) / slots.length,
      })),
    })),
    findings: read.findings,
  }
  const located = locateLeaf(read.worked, read.stemChains, gauge)
  const beginning = {
    stitchWidth: gauge.width,
    ringChains: 0,
    stem: stemPoints(read.stemChains, gauge.width),
    turn: 0,
  }
  return { account, findings: read.findings, located, beginning }
}
