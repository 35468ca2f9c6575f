/** What closing the ends of a round takes (M34, M43): a seam along each, worked once all else is done. */
import type { ClosedEnd, OpenEnd } from '../../shared-types/plan'
import { stitchesAlong } from '../joins/sides'
import { DEFAULTS } from '../settled'
import type { Millimetres } from '../units/quantity'
import { MATERIAL_CONSTANTS, SEAM_YARN } from './constants'
import type { MaterialsInput } from './input'

/** An end that is to be closed. */
export interface Closing {
  readonly end: OpenEnd
  /** Of the seam. */
  readonly length: Millimetres
  /** How far the edge goes in and out. */
  readonly depth: Millimetres
  /** The last round of an edging is sewn, not the motifs themselves. */
  readonly edged: boolean
}

/**
 * The seams at closed ends: sewn as the motifs are, else with whip stitch, in the yarn of the edging where there is one
 * and else in that of the joins.
 */
export function closedEnds(
  { closings = [], joining, gauge, basis }: MaterialsInput,
  ofJoins: string | undefined,
  ofEdging: string | undefined,
): ClosedEnd[] {
  const seam = joining?.rule === 'seam' ? (joining.seam ?? DEFAULTS.joining.seam) : DEFAULTS.joining.seam
  const tails = MATERIAL_CONSTANTS.tailsPerSection * basis.allowance.tail
  return closings.map(({ end, length, depth, edged }) => ({
    ...{ end, length, depth, seam },
    stitches: stitchesAlong(length, gauge.width),
    yarn: (edged && ofEdging) || ofJoins || '',
    metres: (SEAM_YARN[seam] * length + tails) / 1000,
  }))
}

/** Their time, in minutes. */
export const closingMinutes = (closed: readonly ClosedEnd[]): number =>
  closed.reduce((sum, { stitches }) => sum + stitches * MATERIAL_CONSTANTS.seamStitchMinutes, 0)
