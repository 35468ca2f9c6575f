/**
 * Every default of this room with its unit and where it comes from. A project can say otherwise wherever a
 * field exists for it (allowance, joining, weights, minutes).
 */
import type { Seam } from '../../shared-types/project'

export const MATERIAL_CONSTANTS = {
  /** g/m²: open work in fine mohair weighs some 90, dense relief in thick yarn some 2,000 (common practice, no source). */
  perSquareMetre: { least: 80, most: 4000 },
  /** %. Spare yarn on everything. Common practice 10–20 %, no standard found. */
  wastePercent: 10,
  /** mm. One tail, at each start and end of a colour section. §tails: 6 in, 15 cm. */
  tail: 150,
  /** Tails and ends per colour section: one where it starts, one where it ends. */
  tailsPerSection: 2,
  /** Relative half width of a weight when nothing is said about the scale (common practice, no source). */
  weighedSpread: 0.05,
  /** Relative half width of a length measured by unravelling a motif (from memory). */
  unravelledSpread: 0.05,
  /** Relative half width of a colour's part of one weight that nobody split over the colours (M41; from memory). */
  splitSpread: 0.25,
  /** Relative half width where yarn comes from the stitch model, uncalibrated (M42; from memory). */
  modelSpread: 0.15,
  /** The same once a weighed motif has calibrated the stitch model (M42; from memory). */
  calibratedSpread: 0.05,
  /**
   * Weighed over computed yarn beyond which a weighing does not calibrate the stitch model: by then a ball
   * band, the gauge or the weighing is more likely wrong than the model (from memory).
   */
  calibrationLimits: { low: 0.7, high: 1.4 },
  /** How far shares may be from adding up to 1 before it is said. */
  sharesTolerance: 0.01,
  /** A joining chain is worked out to the neighbor and back again, so many times its chains (M34; common practice). */
  bridgeWays: 2,
  /** Chains of the bridge over the chord between two tips, in stitch widths (M35; from memory). */
  bridgeSlack: 0.95,
  /** min. One join: a slip stitch into a neighbour, or a seam at a point (from memory). */
  joinMinutes: 1,
  /** min. One stitch of a seam, or of a join along a whole side: 5 s (common practice, no source). */
  seamStitchMinutes: 0.08,
  /** min. Weaving in one end (M43; from memory). */
  endMinutes: 1,
  /** min. One loop of yarn while edging: 3 s for a sc of two loops (from memory). */
  loopMinutes: 0.025,
  /** Relative half width of every time (from memory). */
  timeSpread: 0.15,
  /** Ends from which on it is worth a note (common practice: a long evening). */
  endsWorthANote: 100,
} as const

/**
 * Yarn of a seam over its length (M34). Sewn: from memory (common practice 2.5–3 ×). Crocheted: from §windchilde,
 * chain (about 5 × its length) and sc (10.6 ×); the flat braid from memory.
 */
export const SEAM_YARN: Readonly<Record<Seam, number>> = {
  whip: 3,
  mattress: 3,
  'slip-stitch': 5.5,
  sc: 10.5,
  'flat-braid': 10,
}

/** The seam taken when the project names none. */
export const DEFAULT_SEAM: Seam = 'whip'
