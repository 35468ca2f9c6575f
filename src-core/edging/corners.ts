/** M35: how many stitches more than one a plain round of an edging has in each of its outward corners. */
import type { ResolvedGauge } from '../stitches/gauge'
import type { StitchKey } from '../stitches/table'
import { EDGING } from './constants'

/**
 * A corner that turns by θ is 2·tan(θ/2)·h longer at a height of h: two sc more, four dc more, at a right angle, which
 * are the three sc or five dc in one place that patterns work there (common practice). At sharp corners an even number,
 * so that the corner is a stitch. Null where a line has no corners that are worked so.
 */
export function cornerIncrease(
  corners: number,
  stitch: StitchKey,
  gauge: Pick<ResolvedGauge, 'width' | 'height'>,
): number | null {
  if (corners < EDGING.corners.least || corners > EDGING.corners.most) return null
  const turn = (2 * Math.PI) / corners
  const more = (2 * Math.tan(turn / 2) * gauge.height(stitch)) / gauge.width
  return turn >= EDGING.sharp ? 2 * Math.round(more / 2) : Math.round(more)
}
