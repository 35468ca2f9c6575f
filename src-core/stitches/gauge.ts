/**
 * Gauge (M2, M3): from what a person measured on a swatch to the width and heights of stitches worked in
 * the round. Without a gauge everything is a rule of thumb and says so.
 */
import type { InUnits } from '../../shared-types/finding'
import type { Provenance } from '../../shared-types/plan'
import type { StitchGauge, Terms } from '../../shared-types/project'
import { boundValues } from '../findings/quantities'
import type { Millimetres } from '../units/quantity'
import { isUsable } from '../units/usable'
import { MOTIF_SIZE } from '../motif/constants'
import { STITCHES, YARN_PER_LOOP, relativeHeight } from './table'
import type { StitchKey } from './table'
import { canonicalStitch } from './terms'

export const GAUGE_CONSTANTS = {
  /** mm. Length a gauge is counted over when it does not say: 10 cm (§yarn-weights: 4 in / 10 cm). */
  over: 100,
  /**
   * Stitch width over hook diameter. From §yarn-weights: the middle of the stitch widths
   * that the sc gauges of the classes super fine to bulky imply is 1.37 to 1.45 times the middle of their hooks.
   */
  widthPerHook: 1.4,
  /** mm. Hook taken when nothing is known (common practice for flowers in light yarn). */
  hook: 4,
  /** Relative half width of the range, where only a rule of thumb is known (M2). */
  ruleOfThumbSpread: 0.25,
  /** Relative half width of sizes from rounds in yarn (M4; common practice, no source). */
  yarnSpread: 0.1,
  /** The same in thread, or with a gauge in another stitch than the tallest common one (M4). */
  threadSpread: 0.15,
  /** mm. Hooks under this are steel ones for thread (§yarn-weights: regular hooks from B-1, 2.25 mm). */
  threadHook: 2.25,
  /** mm. Without a hook, stitches narrower than this are thread (the same table: lace to 42 dc in 10 cm, about 2.4 mm). */
  threadWidth: 2.5,
  /**
   * mm. Stitches narrower or wider, lower or higher than this are a slip of the finger: the finest thread is worked
   * at about half a millimetre, whole arms at about 10 cm (ours, with room on both sides).
   */
  stitch: { least: 0.1, most: 300 },
  /** mm. Hooks: from the finest steel ones to those of the thickness of an arm (ours, with room on both sides). */
  hooks: { least: 0.1, most: 100 },
  /** Rounds that are measured together (ours). */
  rounds: { least: 1, most: 500 },
} as const

export interface GaugeProblem {
  readonly field: string
  readonly received: string
  readonly expected: string | InUnits
}

export interface ResolvedGauge {
  /** Stitch width w in mm. */
  readonly width: Millimetres
  /** Height of a stitch worked in the round, in mm; for a chain its length. */
  readonly height: (stitch: StitchKey) => Millimetres
  readonly provenance: Exclude<Provenance, 'measured' | 'other-hook' | 'stated' | 'aimed'>
  /** Relative half width of a size that follows from this gauge: 0.1 means ±10 % (M4). */
  readonly spread: number
  /** The stitch that was counted. */
  readonly stitch: StitchKey
  /** mm, or null when it is not said. */
  readonly hook: Millimetres | null
  /** Worked in thread: heights vary more. */
  readonly thread: boolean
  /** Heights that were measured, in mm: they are not scaled by anything. */
  readonly measuredHeights: Readonly<Partial<Record<StitchKey, Millimetres>>>
  /** "Rounds 1–2 measure 63.5 mm" (M3): a rule of thumb until the motif's own rounds scale it (`scaleGauge`). */
  readonly roundsMeasure: { readonly rounds: number; readonly across: Millimetres } | null
  /** Values that could not be used; the rest is as if they had not been given. */
  readonly problems: readonly GaugeProblem[]
}

interface Basis extends Omit<ResolvedGauge, 'height'> {
  /** √(q/0.955): rounds against the flat-disc heights. */
  readonly squatness: number
}

const withHeights = (basis: Basis): ResolvedGauge => {
  const { squatness, ...rest } = basis
  const height = (stitch: StitchKey): Millimetres => {
    const measured = rest.measuredHeights[stitch]
    if (measured !== undefined) return measured
    return rest.width * relativeHeight(stitch) * (stitch === 'ch' ? 1 : squatness)
  }
  return { ...rest, height }
}

const gaugeSpread = (thread: boolean): number =>
  thread ? GAUGE_CONSTANTS.threadSpread : GAUGE_CONSTANTS.yarnSpread

/** The value if it can be used; otherwise undefined, with a problem if something was given. */
const positive = (value: number | undefined, field: string, problems: GaugeProblem[]): number | undefined => {
  if (value === undefined) return undefined
  if (isUsable(value)) return value
  problems.push({ field, received: String(value), expected: 'a number above 0' })
  return undefined
}

interface Bounds {
  readonly least: number
  readonly most: number
}

const within = (value: number, { least, most }: Bounds): boolean => value >= least && value <= most

/** A length in mm within bounds; otherwise undefined, with a problem if something was given. */
const lengthWithin = (
  value: number | undefined,
  bounds: Bounds,
  field: string,
  problems: GaugeProblem[],
): number | undefined => {
  const length = positive(value, field, problems)
  if (length === undefined || within(length, bounds)) return length
  problems.push({ field, received: String(value), expected: boundsWords('a length', bounds) })
  return undefined
}

/** "a length from 0.1 mm to 300 mm". */
const boundsWords = (what: string, bounds: Bounds): InUnits => {
  const { least, most } = boundValues(bounds)
  const told = (units: keyof InUnits) => `${what} from ${least[units]} to ${most[units]}`
  return { metric: told('metric'), imperial: told('imperial') }
}

const readHeights = (
  heights: Readonly<Record<string, number>> | undefined,
  terms: Terms,
  problems: GaugeProblem[],
): Partial<Record<StitchKey, Millimetres>> => {
  const measured: Partial<Record<StitchKey, Millimetres>> = {}
  for (const [name, value] of Object.entries(heights ?? {})) {
    const stitch = canonicalStitch(name, terms)
    if (!stitch) problems.push({ field: `heights.${name}`, received: name, expected: `a stitch (${terms})` })
    else {
      const height = lengthWithin(value, GAUGE_CONSTANTS.stitch, `heights.${name}`, problems)
      if (height !== undefined) measured[stitch] = height
    }
  }
  return measured
}

const readRounds = (value: number | undefined, problems: GaugeProblem[]): number | undefined => {
  const { least, most } = GAUGE_CONSTANTS.rounds
  const rounds = positive(value, 'rounds', problems)
  if (rounds === undefined || within(rounds, GAUGE_CONSTANTS.rounds)) return rounds
  problems.push({ field: 'rounds', received: String(value), expected: `a number from ${least} to ${most}` })
  return undefined
}

/**
 * Width and heights in mm from a gauge in the project's terms (M2): w = over / stitches; with
 * q = (row height / relative height × 0.955) / w a stitch worked in the round has h = w · rel · √(q/0.955).
 * Measured heights override. Without stitches, w is 1.4 × hook, or 5.6 mm, as a rule of thumb (±25 %).
 */
export function resolveGauge(gauge: StitchGauge | undefined, terms: Terms): ResolvedGauge {
  const problems: GaugeProblem[] = []
  const over = positive(gauge?.over, 'over', problems) ?? GAUGE_CONSTANTS.over
  const counted = (field: 'stitches' | 'rows'): number | undefined => {
    const count = positive(gauge?.[field], field, problems)
    if (count === undefined || within(over / count, GAUGE_CONSTANTS.stitch)) return count
    const expected = boundsWords('a number that makes each', GAUGE_CONSTANTS.stitch)
    problems.push({ field, received: String(count), expected })
    return undefined
  }
  const stitches = counted('stitches')
  const rows = counted('rows')
  const hook = lengthWithin(gauge?.hook, GAUGE_CONSTANTS.hooks, 'hook', problems) ?? null
  const rounds = readRounds(gauge?.rounds, problems)
  const across = lengthWithin(gauge?.across, MOTIF_SIZE, 'across', problems)
  const measuredHeights = readHeights(gauge?.heights, terms, problems)

  const named = gauge?.stitch === undefined ? 'sc' : canonicalStitch(gauge.stitch, terms)
  if (!named || named === 'ch' || named === 'sl st') {
    problems.push({
      field: 'stitch',
      received: gauge?.stitch ?? '',
      expected: `a stitch that a swatch is worked in (${terms})`,
    })
  }
  const stitch = named && named !== 'ch' && named !== 'sl st' ? named : 'sc'
  const usable = stitches !== undefined && stitch === named

  const width = usable ? over / stitches : GAUGE_CONSTANTS.widthPerHook * (hook ?? GAUGE_CONSTANTS.hook)
  // q / 0.955 = row height / (relative height · w): the gauge stitch against its own flat-disc height.
  const squatness =
    usable && rows !== undefined ? Math.sqrt(over / rows / (relativeHeight(stitch) * width)) : 1
  const thread =
    hook !== null ? hook < GAUGE_CONSTANTS.threadHook : usable && width < GAUGE_CONSTANTS.threadWidth
  const roundsMeasure = rounds !== undefined && across !== undefined ? { rounds, across } : null

  return withHeights({
    width,
    squatness,
    provenance: usable ? 'gauge' : 'rule-of-thumb',
    spread: usable ? gaugeSpread(thread) : GAUGE_CONSTANTS.ruleOfThumbSpread,
    stitch,
    hook,
    thread,
    measuredHeights,
    roundsMeasure,
    problems,
  })
}

/**
 * The gauge with w and every height but the measured ones times `factor` (M3, calibration by a measured
 * motif); it is no rule of thumb any more. `factor` must be positive and finite; anything else is a bug of
 * the caller and throws.
 */
export function scaleGauge(gauge: ResolvedGauge, factor: number): ResolvedGauge {
  if (!(factor > 0 && Number.isFinite(factor))) throw new Error(`gauge cannot be scaled by ${factor}`)
  const { height, measuredHeights } = gauge
  return {
    ...gauge,
    width: gauge.width * factor,
    provenance: 'gauge',
    spread: gaugeSpread(gauge.thread),
    height: (stitch) => measuredHeights[stitch] ?? height(stitch) * factor,
  }
}

/**
 * Relative half width of a size from rounds (M4), given the tallest stitch that is common in them: a gauge
 * in another stitch is worth as little as one in thread.
 */
export function sizeSpread(gauge: ResolvedGauge, tallest: StitchKey): number {
  if (gauge.provenance === 'rule-of-thumb') return gauge.spread
  const another = gauge.roundsMeasure === null && gauge.stitch !== tallest
  return another ? Math.max(gauge.spread, GAUGE_CONSTANTS.threadSpread) : gauge.spread
}

/**
 * Yarn in one stitch, in mm (M40): 5.2·w·(1 + (loops − 1)·h/h_default), with h_default = w · rel.
 * `height` is the stitch's real height where it is drawn up; left out, it is the gauge's.
 */
export function stitchYarn(
  stitch: StitchKey,
  gauge: ResolvedGauge,
  height: Millimetres = gauge.height(stitch),
): Millimetres {
  const tall = height / (gauge.width * relativeHeight(stitch))
  return YARN_PER_LOOP * gauge.width * (1 + (STITCHES[stitch].loops - 1) * tall)
}
