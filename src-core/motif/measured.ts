/** M15, M16, M18: a finished motif, measured with a ruler → outline, anchors, layers for drawing. */
import type { Finding } from '../../shared-types/finding'
import type { Anchor, MotifAccount, MotifLayer } from '../../shared-types/plan'
import type { Hand, MeasuredMotif, Motif, Terms } from '../../shared-types/project'
import type { FindingCode } from '../findings/catalogue'
import { findingOf, said } from '../findings/finding'
import type { Said, Told } from '../findings/finding'
import { boundValues, lengthValue } from '../findings/quantities'
import { scaleOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { resolveGauge, scaleGauge } from '../stitches/gauge'
import { formatNumber } from '../units/format'
import type { Millimetres } from '../units/quantity'
import { CLOCK_DIRECTIONS, leafAnchors, petalAnchors, roundAnchors, sidedAnchors } from './anchors'
import {
  DEFAULT_LEAF_WIDTH_SHARE,
  DEFAULT_VALLEY_SHARE,
  LEAST_VALLEY_SHARE,
  MEASURED_SPREAD,
  MOTIF_SIZE,
  PETALS,
} from './constants'
import { isFromRounds } from './from-rounds'
import { areStated, statedSpread } from './stated'
import { isOdd, layingOf, rulerWords } from './ruler'
import { MEASURES } from './ruling'
import { otherHookOf, sizesOf } from './taken-with'
import { sizedOutline, tracedAnchors, tracedOutline } from './traced'
import { leafOutline, leafWidest, petalOutline, roundOutline, sidedOutline } from './outlines'

interface Shape {
  readonly shape: MotifAccount['shape']
  readonly petals: number
  readonly overTips: Millimetres
  readonly overValleys: Millimetres
  readonly outline: Outline
  readonly anchors: readonly Anchor[]
}

/** Whether sizes were measured as they are, with another hook, or worked out for another gauge since. */
export function measuredOrAimed(motif: Motif, terms: Terms): 'measured' | 'aimed' | 'other-hook' {
  const { asMeasured } = sizesOf(motif)
  return asMeasured ? 'aimed' : otherHookOf(motif, 'sizes', terms) ? 'other-hook' : 'measured'
}

interface MeasuredContext {
  readonly hand: Hand
  readonly terms: Terms
  /** Growth in blocking as a share, applied to motifs that were measured before it. */
  readonly growth: number
}

/** A leaf may be broader than it is long, but not by more than this. */
const BROADEST_LEAF = 1.5

const NO_TRACE = {}

const SIDES = { square: 4, hexagon: 6, octagon: 8 } as const

/**
 * The account of a measured motif. Sizes in mm, as diameters. Unusable measures give findings and `null`.
 */
export function measuredAccount(
  motif: MeasuredMotif,
  context: MeasuredContext,
): { account: MotifAccount | null; findings: Finding[] } {
  const findings: Finding[] = []
  const reader = new MeasureReader(motif, context, findings)
  const shape = reader.shape()
  if (!shape) return { account: null, findings }
  const { provenance, spread } = knownFrom(motif, context.terms)
  return {
    account: {
      id: motif.id,
      name: motif.name ?? motif.id,
      ...shape,
      ...(motif.ruler && { ruler: motif.ruler }),
      range: { low: shape.overTips * (1 - spread), high: shape.overTips * (1 + spread) },
      provenance,
      rounds: [],
      stitches: {},
      metres: {},
      layers: layersOf(motif, shape),
      findings,
    },
    findings,
  }
}

/** Where the size of a measured motif comes from, and how sure it is: what its rounds give is no measure. */
function knownFrom(
  motif: MeasuredMotif,
  terms: Terms,
): { readonly provenance: MotifAccount['provenance']; readonly spread: number } {
  const leads = [MEASURES[motif.outline][0]!]
  const isMeasured = !leads.some((name) => motif[name] !== undefined && isFromRounds(motif, name))
  if (areStated(motif, motif, leads))
    return { provenance: 'stated', spread: statedSpread(resolveGauge(motif.gauge, terms)) }
  if (isMeasured) return { provenance: measuredOrAimed(motif, terms), spread: MEASURED_SPREAD }
  const gauge = resolveGauge(motif.gauge, terms)
  if (!gauge.roundsMeasure) return gauge
  return { provenance: 'gauge', spread: scaleGauge(gauge, 1).spread }
}

/** Reads and checks the measures of one motif, collecting findings. */
class MeasureReader {
  readonly #motif: MeasuredMotif
  readonly #hand: Hand
  readonly #terms: Terms
  readonly #growth: number
  readonly #findings: Finding[]

  constructor(motif: MeasuredMotif, context: MeasuredContext, findings: Finding[]) {
    this.#motif = motif
    this.#hand = context.hand
    this.#terms = context.terms
    this.#growth = motif.blocked === false ? 1 + context.growth : 1
    this.#findings = findings
    if (this.#growth !== 1)
      this.#find('motif/grows-in-blocking', { percent: formatNumber(context.growth * 100, 1) })
  }

  shape(): Shape | null {
    switch (this.#motif.outline) {
      case 'petals':
        return this.#petals()
      case 'round':
        return this.#round()
      case 'leaf':
        return this.#leaf()
      case 'traced':
        return this.#traced()
      default:
        return this.#sided(SIDES[this.#motif.outline])
    }
  }

  #find<Code extends FindingCode>(code: Code, ...values: Told<Code>): void {
    this.#tell(said(code, ...values))
  }

  #tell(what: Said): void {
    const { id } = this.#motif
    this.#findings.push(findingOf(what, `motif ${id}`, { motif: id }))
  }

  /** A measure in mm after blocking; undefined when it is not given, null when it is unusable. */
  #measure(key: 'overTips' | 'overValleys' | 'across' | 'sideToSide' | 'pointToPoint' | 'length' | 'width') {
    const value = this.#motif[key]
    if (value === undefined || value === 0) return undefined
    if (value < MOTIF_SIZE.least || value > MOTIF_SIZE.most) {
      this.#find('motif/size-range', {
        what: WORDS[key],
        received: lengthValue(value),
        ...boundValues(MOTIF_SIZE),
      })
      return null
    }
    return value * this.#growth
  }

  #missing(what: string): null {
    this.#find('motif/missing-size', { what })
    return null
  }

  /** Checks that `small` lies under `large`, both in mm. */
  #ordered(
    small: Millimetres,
    large: Millimetres,
    inner: string,
    outer: string,
    least = LEAST_VALLEY_SHARE,
  ): boolean {
    if (small < large && small >= large * least) return true
    this.#find('motif/size-order', {
      inner,
      outer,
      small: lengthValue(small),
      large: lengthValue(large),
      least: formatNumber(least * 100),
    })
    return false
  }

  #assumed(what: string, value: Millimetres): Millimetres {
    this.#find('motif/assumed-size', { what, assumed: lengthValue(value) })
    return value
  }

  /** Checks tips and dips against each other, by the names of what the ruler showed. */
  #flowerOrdered(petals: number, tips: Millimetres, valleys: Millimetres): boolean {
    const laying = layingOf(petals, this.#motif.ruler)
    const { lead, second } = rulerWords(laying, this.#terms)
    if (laying === 'across') return this.#ordered(valleys, tips, second, lead)
    if (laying === 'centre') return this.#ordered(valleys / 2, tips / 2, second, lead)
    const least = (2 * LEAST_VALLEY_SHARE) / (1 + LEAST_VALLEY_SHARE)
    return this.#ordered(valleys / 2, (tips + valleys) / 4, second, `half of ${lead}`, least)
  }

  #petals(): Shape | null {
    const { petals = 0, ruler, overTips = 0, overValleys = 0 } = this.#motif
    if (!Number.isInteger(petals) || petals < PETALS.least || petals > PETALS.most) {
      this.#find('motif/petal-count', { received: formatNumber(petals, 2), ...PETALS })
      return null
    }
    // A ruler's two numbers may contradict each other so much that no circle through the tips is left.
    if (isOdd(petals) && overTips !== 0 && overValleys > overTips) {
      this.#flowerOrdered(petals, overTips, overValleys)
      return null
    }
    const tips = this.#measure('overTips')
    let valleys = this.#measure('overValleys')
    const laying = layingOf(petals, ruler)
    const words = rulerWords(laying, this.#terms)
    if (tips === null || valleys === null) return null
    if (tips === undefined) return this.#missing(words.lead)
    if (valleys === undefined) {
      valleys = tips * DEFAULT_VALLEY_SHARE
      this.#assumed(words.second, laying === 'across' ? valleys : valleys / 2)
    }
    if (!this.#flowerOrdered(petals, tips, valleys)) return null
    const outline = petalOutline(petals, tips / 2, valleys / 2)
    const flank = outline[Math.round(outline.length / petals / 4)]!
    return {
      shape: 'petals',
      petals,
      overTips: tips,
      overValleys: valleys,
      outline,
      anchors: petalAnchors(petals, tips / 2, valleys / 2, Math.hypot(flank.x, flank.y), this.#hand),
    }
  }

  /** A traced line at the size that was measured of it; where only one measure was taken, the shape is kept. */
  #traced(): Shape | null {
    const traced = tracedOutline(this.#motif.traced ?? NO_TRACE)
    if ('refused' in traced) {
      this.#tell(traced.refused)
      return null
    }
    const tips = this.#measure('overTips')
    const valleys = this.#measure('overValleys')
    if (tips === null || valleys === null) return null
    const share = traced.valley / traced.tip
    const tip =
      tips !== undefined ? tips / 2 : valleys !== undefined ? valleys / 2 / share : traced.tip * this.#growth
    const valley = valleys !== undefined ? valleys / 2 : tip === traced.tip ? traced.valley : tip * share
    const petals = traced.tips.length
    if (!this.#flowerOrdered(petals, 2 * tip, 2 * valley)) return null
    const outline = sizedOutline(traced, tip, valley)
    return {
      shape: 'petals',
      petals,
      overTips: 2 * tip,
      overValleys: 2 * valley,
      outline,
      anchors: tracedAnchors(traced, outline, this.#hand),
    }
  }

  #round(): Shape | null {
    const own = this.#measure('across')
    const across = own === undefined ? this.#measure('overTips') : own
    if (across === null) return null
    if (across === undefined) return this.#missing(WORDS.across)
    return {
      shape: 'round',
      petals: 0,
      overTips: across,
      overValleys: across,
      outline: roundOutline(across / 2),
      anchors: roundAnchors(across / 2, CLOCK_DIRECTIONS, this.#hand),
    }
  }

  #sided(sides: 4 | 6 | 8): Shape | null {
    const side = this.#measure('sideToSide')
    const point = this.#measure('pointToPoint')
    if (side === null || point === null) return null
    const shape = Math.cos(Math.PI / sides)
    const apothem = (side ?? (point ?? 0) * shape) / 2
    const corner = (point ?? (side ?? 0) / shape) / 2
    if (apothem === 0) return this.#missing(WORDS.sideToSide)
    if (side !== undefined && point !== undefined) {
      if (!this.#ordered(side, point, WORDS.sideToSide, WORDS.pointToPoint)) return null
      // Ten percent is far outside what blocking evens out; below it the bow is simply drawn.
      if (Math.abs((point * shape) / side - 1) > 0.1)
        this.#find('motif/not-regular', {
          side: lengthValue(side),
          point: lengthValue(point),
          regular: lengthValue(side / shape),
        })
    }
    // A square and an octagon stand on a flat side, a hexagon has a corner at 12 o'clock.
    const first = sides === 6 ? 0 : Math.PI / sides
    const outline = sidedOutline(sides, apothem, corner, first)
    const perSide = outline.length / sides
    const corners = Array.from({ length: sides }, (_, k) => outline[k * perSide]!)
    return {
      shape: 'straight',
      petals: sides,
      overTips: 2 * corner,
      overValleys: 2 * apothem,
      outline,
      anchors: sidedAnchors(this.#hand === 'left' || sides === 6 ? corners : rotateOnce(corners), this.#hand),
    }
  }

  #leaf(): Shape | null {
    const length = this.#measure('length')
    let width = this.#measure('width')
    if (length === null || width === null) return null
    if (length === undefined) return this.#missing(WORDS.length)
    width ??= this.#assumed(WORDS.width, length * DEFAULT_LEAF_WIDTH_SHARE)
    if (!this.#ordered(width, BROADEST_LEAF * length, WORDS.width, 'one and a half times the length'))
      return null
    return {
      shape: 'leaf',
      petals: 2,
      overTips: length,
      overValleys: width,
      outline: leafOutline(length, width),
      anchors: leafAnchors(length, width, leafWidest(length), this.#hand),
    }
  }
}

/** Corner 1 is the first one met from 12 o'clock in working direction: the upper left one for right-handers. */
function rotateOnce<T>(corners: readonly T[]): T[] {
  return [corners[corners.length - 1]!, ...corners.slice(0, -1)]
}

/** The measures' names, as on screen and paper. */
const WORDS = {
  overTips: 'the circle through its tips',
  overValleys: 'the circle through its dips',
  across: 'across',
  sideToSide: 'side to side',
  pointToPoint: 'point to point',
  length: 'the length',
  width: 'the width',
} as const

/** Colour sections for drawing, the outermost first, so that each one covers the middle of the one before. */
function layersOf(motif: MeasuredMotif, shape: Shape): MotifLayer[] {
  const slots = motif.slots?.map((entry) => entry.slot) ?? []
  const count = Math.max(1, slots.length)
  const layers: MotifLayer[] = [{ slot: slots[count - 1] ?? '', outline: shape.outline }]
  for (let i = count - 2; i >= 0; i--) {
    const share = (i + 1) / count
    layers.push({
      slot: slots[i]!,
      outline:
        shape.shape === 'petals' || shape.shape === 'round'
          ? roundOutline((shape.overValleys / 2) * share * (shape.shape === 'petals' ? 0.95 : 1))
          : scaleOutline(shape.outline, share),
    })
  }
  return layers
}
