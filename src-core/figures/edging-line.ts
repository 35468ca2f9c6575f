/** The outer border of a blanket's edging, for its maps: the plan's own lines grown by the height of its rounds. */
import type { Plan, Point } from '../../shared-types/plan'
import { signedArea } from '../geometry/points'
import { grow } from '../geometry/polygons'
import { simplify } from '../geometry/simplify'

/**
 * The closed outer lines of the edging in plan mm, clockwise, without points that change it by less than `detail`
 * mm. Empty when the plan has no edging.
 */
export function edgingBorder({ edging, edgingLines }: Plan, detail: number): Point[][] {
  if (!edging || edging.height <= 0) return []
  return grow(edgingLines, edging.height, detail / 2)
    .filter((border) => signedArea(border) > 0)
    .map((border) => simplify(border, detail / 2))
}
