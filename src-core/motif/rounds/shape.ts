/** The shape that located rounds make, and the measure of a finished motif that rules it (M11, M15, M16, M18). */
import { ruling } from '../ruling'
import type { Circle } from '../ruling'
import type { Anchor, MotifAccount } from '../../../shared-types/plan'
import type { Hand, RoundShape, RoundsMotif } from '../../../shared-types/project'
import { ROUND_SHAPES } from '../../../shared-types/project'
import { finding } from '../../findings/finding'
import type { Outline } from '../../geometry/points'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { StitchKey } from '../../stitches/table'
import { formatNumber } from '../../units/format'
import type { Millimetres, Radians } from '../../units/quantity'
import { againstRounds, comparedSizes } from '../against-rounds'
import { CLOCK_DIRECTIONS, petalAnchors, roundAnchors, sidedAnchors } from '../anchors'
import { OUTLINE_POINTS, PETALS } from '../constants'
import { areStated, statedFindings } from '../stated'
import { roundedOutline, roundOutline, sidedOutline } from '../outlines'
import { CORNERS, OUTER_LOOPS } from './constants'
import { angleOf, mean, radiusOf } from './ground'
import type { LocatedRound } from './ground'
import { envelope, lobedOutline, lobeExtremes, lobesOf } from './profile'
import type { Lobes } from './profile'
import { outlinedPetals } from './outlined'
import { edgedRound, edgedSides } from './scallops'
import type { EdgedSides } from './scallops'
import { unevenOf, unevenShape } from './uneven'

/** What the outermost rounds make. */
export interface Shape {
  readonly shape: MotifAccount['shape']
  readonly petals: number
  readonly overTips: Millimetres
  readonly overValleys: Millimetres
  readonly outline: Outline
  readonly anchors: readonly Anchor[]
  readonly turn: Radians
  /** Straight sides between round corners. */
  readonly isRounded?: true
  /** Of a heart: the direction of its cleft. */
  readonly cleft?: Radians
}

/** Petals, corners or a round: what the outermost rounds make, or what the motif is `said` to be. */
export function shapeOf(
  located: readonly LocatedRound[],
  gauge: ResolvedGauge,
  hand: Hand,
  said?: RoundShape,
): Shape {
  const last = located[located.length - 1]!
  const cornered = [...located].reverse().find((entry) => entry.corners > 0)
  const petalled = [...located].reverse().find((entry) => entry.petals.length >= 3)
  const rank = (entry: LocatedRound | undefined) => (entry ? located.indexOf(entry) : -1)
  const sided = cornered !== undefined && rank(cornered) > rank(petalled)
  const free = !sided && petalled !== undefined && rank(petalled) >= located.length - 2
  const outer = (free ? OUTER_LOOPS.petals : OUTER_LOOPS.round) * gauge.width
  const radii = envelope(located).map((radius) => radius + outer)
  const edged = sided || said === 'petals' ? null : edgedSides(located, radii, gauge.width)
  if (said === 'round') return roundShape(sided || edged ? mean([...radii]) : Math.max(...radii), hand)
  if (sided) {
    const lobes = lobesOf(radii, cornered.corners)
    return said !== 'straight' && isStar(lobes) ? petalShape(lobes, hand) : sidedShape(lobes, hand)
  }
  if (edged) return straightShape(edged, hand)
  const scalloped = said ? null : edgedRound(located, radii)
  if (scalloped !== null) return roundShape(scalloped, hand)
  const asked = petalled && (petalled === last || said) ? petalled.petals.length : null
  if (said === 'straight') return sidedShape(lobesOf(radii, asked), hand)
  const uneven = unevenOf(radii, asked)
  if (uneven) {
    const { tip, valley, cleft, ...made } = unevenShape(uneven, hand)
    const petals = uneven.tips.length
    const sizes = { overTips: 2 * tip, overValleys: 2 * valley }
    return { shape: 'petals', petals, ...sizes, ...made, ...(cleft !== null && { cleft }) }
  }
  const lobes = lobesOf(radii, asked)
  const along = lobes.count === 0 && !said ? outlinedPetals(located) : null
  const outlined =
    along &&
    lobesOf(
      along.map((radius) => radius + outer),
      petalled?.petals.length ?? null,
    )
  if (outlined && outlined.count > 0) return petalShape(outlined, hand)
  return lobes.count === 0 ? roundShape(Math.max(...lobes.profile), hand) : petalShape(lobes, hand)
}

/**
 * What a motif can be said to be: an edge over petals keeps them or pulls them straight, as tension will have it; what
 * has many corners or shallow petals may be blocked into a circle. What the rounds say by themselves comes first.
 */
export function shapesFor(located: readonly LocatedRound[], { shape, petals }: Shape): RoundShape[] {
  if (shape === 'leaf') return []
  const lobes = located.findLast((entry) => entry.petals.length >= PETALS.least)?.petals.length ?? 0
  const arePetals = lobes > 0 && lobes <= PETALS.most
  const isEdged = arePetals && located.at(-1)!.petals.length === 0
  const areScallops = arePetals && !isEdged
  const canBe: Readonly<Record<RoundShape, boolean>> = {
    petals: areScallops || (isEdged && (shape === 'round' || lobes === petals)),
    straight:
      (isEdged && lobes <= CORNERS.most && (shape === 'round' || lobes === petals)) ||
      (shape === 'petals' && located.at(-1)?.corners === petals),
    round: shape === 'petals' || petals >= ROUNDABLE,
  }
  return [shape, ...ROUND_SHAPES.filter((each) => each !== shape && canBe[each])]
}

/** Corners from which on a motif can be blocked into a circle (ours). */
const ROUNDABLE = 5

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

/** Sides that lie nowhere farther out than this share of straight ones between the corners make a star (by eye). */
const STAR = 0.86

/** Whether corners stand out as points, with dips between them: a snowflake with picots at its corners. */
function isStar({ count, profile }: Lobes): boolean {
  const { tip, valley } = lobeExtremes({ count, phase: 0, profile })
  return count > 4 && valley < STAR * tip * Math.cos(Math.PI / count)
}

function sidedShape(lobes: Lobes, hand: Hand): Shape {
  const sides = Math.min(CORNERS.most, Math.max(CORNERS.least, lobes.count))
  const corner = lobes.profile[0]!
  const middle = Math.round((lobes.profile.length - 1) / 2)
  // Scallops along a side: what neighbours meet is the outermost of the middle third.
  const sixth = Math.round(middle / 3)
  const apothem = Math.max(...lobes.profile.slice(middle - sixth, middle + sixth + 1))
  return straightShape({ sides, apothem: Math.min(apothem, corner * 0.999), phase: lobes.phase }, hand)
}

/** An edge makes corners round that reach less than this share of a sharp one: less is nothing to see (ours). */
const ROUND_FROM = 0.995

/**
 * Sides as far out as they are met: neighbours meet along them, so that no corner stands out beyond what they leave it.
 * Its loop of chains lies in line with them; under a shell, which is told by how far it reaches, a corner is round.
 */
function straightShape(
  {
    sides,
    apothem: half,
    phase,
    corner: reaches = Infinity,
  }: Omit<EdgedSides, 'corner'> & Partial<EdgedSides>,
  hand: Hand,
): Shape {
  const first = firstCorner(sides)
  const sharp = half / Math.cos(Math.PI / sides)
  const isRounded = reaches < ROUND_FROM * sharp
  const corner = isRounded ? Math.max(half, reaches) : sharp
  const sized = { overTips: 2 * corner, overValleys: 2 * half }
  const made = straightOutline(sides, half, corner, hand, isRounded)
  return {
    ...{ shape: 'straight', petals: sides, ...sized, ...made, turn: first - phase },
    ...(isRounded && { isRounded }),
  }
}

/** A hexagon has a corner at 12 o'clock, what has other sides stands on one of them. */
const firstCorner = (sides: number): Radians => (sides === 6 ? 0 : Math.PI / sides)

/** Outline and places of straight sides; where corners and sides do not fit each other, the sides bow. */
function straightOutline(
  sides: number,
  half: Millimetres,
  corner: Millimetres,
  hand: Hand,
  isRounded = false,
): Pick<Shape, 'outline' | 'anchors'> {
  const first = firstCorner(sides)
  const isBlunt = isRounded && corner * Math.cos(Math.PI / sides) < half
  const outline = (isBlunt ? roundedOutline : sidedOutline)(sides, half, corner, first)
  const perSide = outline.length / sides
  const corners = Array.from({ length: sides }, (_, k) => outline[k * perSide]!)
  const inOrder = hand === 'left' || sides === 6 ? corners : [corners[sides - 1]!, ...corners.slice(0, -1)]
  const anchors = sidedAnchors(inOrder, hand).map((anchor) => onOutline(anchor, outline, sides, first))
  return { outline, anchors }
}

/** A place of a side as far out as the outline is there, which begins at `first`: sides between long corners bow in. */
function onOutline(anchor: Anchor, outline: Outline, sides: number, first: Radians): Anchor {
  // Straight sides are told by their corners and middles alone.
  if (anchor.kind !== 'side' || outline.length === 2 * sides) return anchor
  const count = outline.length
  const step = ((angleOf(anchor) - first) / (2 * Math.PI)) * count
  const low = Math.floor(step)
  const [from, to] = [low, low + 1].map((i) => radiusOf(outline[((i % count) + count) % count]!))
  const scale = (from! + (to! - from!) * (step - low)) / radiusOf(anchor)
  return { ...anchor, x: anchor.x * scale, y: anchor.y * scale }
}

/**
 * M15, M18: a measure of the finished motif rules; the ratio to what the gauge says is told. Without a gauge there
 * is nothing but a rule of thumb to differ from.
 */
export function calibrateSize(
  motif: RoundsMotif,
  shape: Shape,
  growth: number,
  gauge: ResolvedGauge,
  tallest: StitchKey,
  hand: Hand,
) {
  const measured = motif.measured
  const grown = measured?.blocked === false ? 1 + growth : 1
  const rules = (circle: Circle) => measured && ruling(measured, shape.shape, circle)
  const by = [rules('tips'), rules('dips')] as const
  const [tips, valleys] = by.map((name) => (name ? measured![name]! : 0) * grown) as [number, number]
  if (!(tips > 0 || valleys > 0)) return { shape, ratio: null, isStated: false, findings: [] }
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
  // A radial scale would bend straight sides between what was measured of them.
  const drawn =
    shape.shape === 'straight'
      ? straightOutline(shape.petals, to[0], to[1], hand, shape.isRounded)
      : { outline: shape.outline.map(scale), anchors: shape.anchors.map(scale) }
  const percent = (outerFactor - 1) * 100
  const isStated = areStated(
    motif,
    measured ?? {},
    by.flatMap((name) => name ?? []),
  )
  const hasGauge = gauge.provenance !== 'rule-of-thumb'
  const [known, expected] = tips > 0 ? [tips, shape.overTips] : [valleys, shape.overValleys]
  const own = { ...shape, overTips: 2 * to[1], overValleys: 2 * to[0] }
  const raw = ({ overTips, overValleys }: Shape): Shape => ({
    ...shape,
    overTips: overTips / grown,
    overValleys: overValleys / grown,
  })
  const against = isStated
    ? null
    : againstRounds(comparedSizes(measured ?? {}, raw(own), raw(shape)), gauge, tallest)
  const findings = isStated
    ? statedFindings(known, expected, gauge, tallest)
    : against
      ? [against]
      : !hasGauge || Math.abs(percent) < 1
        ? []
        : [
            finding('motif/other-than-gauge', '', {
              percent: formatNumber(Math.abs(percent), 0),
              direction: percent > 0 ? 'larger' : 'smaller',
            }),
          ]
  return {
    shape: { ...own, ...drawn },
    ratio: outerFactor,
    isStated,
    findings,
  }
}
