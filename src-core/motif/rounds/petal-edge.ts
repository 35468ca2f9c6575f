/** Chains that stand up beside the stitches of a petal in a loop. */
import type { Point } from '../../../shared-types/plan'
import type { WorkedElement } from '../../notation/worked'
import type { ResolvedGauge } from '../../stitches/gauge'
import { BESIDE_PETAL } from './constants'
import type { LocatedElement } from './ground'

/** Chains beside the stitches of a petal go up from its slip stitch as far as the petal's edge. */
export function edgeOfPetal(
  element: WorkedElement,
  from: Point,
  to: Point,
  up: boolean,
  foot: Point | undefined,
  gauge: ResolvedGauge,
): LocatedElement {
  const [slip, top] = up ? [from, to] : [to, from]
  const base = foot ?? slip
  const away = Math.hypot(slip.x - base.x, slip.y - base.y) || 1
  const aside = (BESIDE_PETAL * gauge.width) / away
  const end = { x: top.x + (slip.x - base.x) * aside, y: top.y + (slip.y - base.y) * aside }
  const chain = Array.from({ length: element.count }, (_, k) => {
    // As far from the slip stitch on both sides.
    const along = ((up ? k : element.count - 1 - k) + 1) / (element.count + 0.5)
    return { x: slip.x + (end.x - slip.x) * along, y: slip.y + (end.y - slip.y) * along }
  })
  return { element, base: from, top: end, chain, end: up ? end : to }
}
