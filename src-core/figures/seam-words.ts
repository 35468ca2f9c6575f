/** What is joined along whole sides, in words: seams where motifs are sewn, sides where they are joined stitch for stitch. */
import type { JoinedSides, PlanNumbers } from '../../shared-types/plan'
import type { UnitSystem } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { formatYarnLength } from '../units/format'
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

/** "34.1 m in all, about 7,600 stitches". */
export function sideLengths(sides: JoinedSides, units: UnitSystem): string {
  const { stitches } = sides
  const told = stitches < IN_TENS ? stitches : Math.round(stitches / 10) * 10
  return `${sidesLength(sides, units)} in all, about ${counted(told, 'stitch', 'stitches')}`
}

/** "262 seams, 34.1 m in all, about 7,600 stitches"; empty where nothing is joined along whole sides. */
export function sidesJoined(
  { sides }: PlanNumbers['counts'],
  { joining, units }: Pick<Settled, 'joining' | 'units'>,
): string {
  return sides ? `${counted(sides.count, sideNoun(joining))}, ${sideLengths(sides, units)}` : ''
}

/** Join points that lie on no whole side. */
export const pointsAlone = ({ joins = 0, sides }: PlanNumbers['counts']): number =>
  joins - (sides?.points ?? 0)
