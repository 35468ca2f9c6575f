/** What is joined along whole sides, in words: seams where motifs are sewn, sides where they are joined stitch for stitch. */
import type { JoinedSides, PlanNumbers } from '../../shared-types/plan'
import type { UnitSystem } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { formatNumber, formatYarnLength } from '../units/format'
import { counted } from './words'

const MM_PER_M = 1000
/** From so many on, stitches are told in tens. */
const IN_TENS = 100

/** "seam", "side". */
export const sideNoun = (joining: Pick<Settled['joining'], 'rule'>): string =>
  joining.rule === 'seam' ? 'seam' : 'side'

/** "34.1 m". */
export const sidesLength = ({ length }: JoinedSides, units: UnitSystem): string =>
  formatYarnLength(length / MM_PER_M, units)

/**
 * "34.1 m and 3,406 stitches in all, 13 each by the last round", "34.1 m in all, about 7,600 stitches by length": which
 * it is told by, too.
 */
export function sideLengths(sides: JoinedSides, units: UnitSystem): string {
  const { stitches, count, counted: known, each } = sides
  const length = sidesLength(sides, units)
  if (known === count) {
    const alike = each !== null && count > 1 ? `, ${formatNumber(each)} each` : ''
    return `${length} and ${counted(stitches, 'stitch', 'stitches')} in all${alike} by the last round`
  }
  const told = stitches < IN_TENS ? stitches : Math.round(stitches / 10) * 10
  const by =
    known > 0 ? `those of ${formatNumber(known)} by the last round, the others by length` : 'by length'
  return `${length} in all, about ${counted(told, 'stitch', 'stitches')}${known > 0 ? `, ${by}` : ` ${by}`}`
}

/** "262 seams, 34.1 m in all, about 7,600 stitches by length"; empty where nothing is joined along whole sides. */
export function sidesJoined(
  { sides }: PlanNumbers['counts'],
  { joining, units }: Pick<Settled, 'joining' | 'units'>,
): string {
  return sides ? `${counted(sides.count, sideNoun(joining))}, ${sideLengths(sides, units)}` : ''
}

/** Join points that lie on no whole side. */
export const pointsAlone = ({ joins = 0, sides }: PlanNumbers['counts']): number =>
  joins - (sides?.points ?? 0)
