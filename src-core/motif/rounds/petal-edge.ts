/** Chains that stand up beside the stitches of a petal. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import { BESIDE_PETAL } from './constants'
import type { LocatedElement } from './ground'

interface Ends {
  readonly from: Point
  readonly to: Point
  /** Where the stitch begins that they stand beside. */
  readonly foot: Point | undefined
  /** From the slip stitch up to the petal's edge, or down from that. */
  readonly up: boolean
  /** Beside stitches in one stitch, not in a loop. */
  readonly isSide: boolean
}

/** Chains beside the stitches of a petal go up from its slip stitch as far as the petal's edge. */
export function edgeOfPetal(
  element: WorkedElement,
  { from, to, foot, up, isSide }: Ends,
  gauge: ResolvedGauge,
): LocatedElement {
  const [slip, top] = up ? [from, to] : [to, from]
  const base = foot ?? slip
  // Stitches in one stitch fan out of it: their chains stand straight beside them, on the side of the slip stitch.
  const [x, y] = isSide
    ? [up ? top.y - base.y : base.y - top.y, up ? base.x - top.x : top.x - base.x]
    : [slip.x - base.x, slip.y - base.y]
  const aside = (BESIDE_PETAL * gauge.width) / (Math.hypot(x, y) || 1)
  const end = { x: top.x + x * aside, y: top.y + y * aside }
  const chain = Array.from({ length: element.count }, (_, k) => {
    // As far from the slip stitch on both sides.
    const along = ((up ? k : element.count - 1 - k) + 1) / (element.count + 0.5)
    return { x: slip.x + (end.x - slip.x) * along, y: slip.y + (end.y - slip.y) * along }
  })
  return { element, base: isSide && up ? base : from, top: end, chain, end: up ? end : to }
}
