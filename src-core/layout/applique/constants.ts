/** Rules of thumb of an appliqué (the bounds of its fields: fields/applique.ts). */
import { MATERIAL_CONSTANTS } from '../../materials/constants'

export const APPLIQUE = {
  /** mm. Under a hundredth of a millimetre nothing is too near: yarn gives way more. */
  judged: 0.01,
  /** mm². Two outlines that share less than a pinhead touch. */
  touching: 0.05,
  /** Pairs that are looked at and told; beyond them a composition is a heap. */
  mostPairs: 1000,
  toldPairs: 20,
  /** mm. Largest distance of a drawn circle or ellipse from its polygon. */
  roundness: 0.005,
  /** Sewing thread over the outline that it sews down (from memory: small whip stitches). */
  threadPerOutline: 2.5,
  /** Tails of thread for each item: one where it starts, one where it ends. */
  threadTails: 2,
  /** min per mm of outline: a stitch every 4 mm in 3 s (from memory). */
  stitchMinutes: 0.0125,
  timeSpread: MATERIAL_CONSTANTS.timeSpread,
} as const
