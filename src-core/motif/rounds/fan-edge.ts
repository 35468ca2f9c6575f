/** The top edge that a shell in one place has room for, where its stitches fan out (M12). */
import type { Point } from '../../../shared-types/plan'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { heightOf } from './ground'
import type { Stood } from './stand'

const apart = (a: Point, b: Point): Millimetres => Math.hypot(a.x - b.x, a.y - b.y)

/**
 * Half the circumference of an ellipse as wide as the room between a group's neighbours and twice as high as its tallest
 * stitch, in mm (Ramanujan's first approximation): along that edge a group in one place can fan out.
 */
export function fanEdge(
  members: readonly Stood[],
  order: readonly Stood[],
  gauge: ResolvedGauge,
): Millimetres {
  const [first, last] = [members[0]!, members.at(-1)!]
  const room = (from: Stood, neighbour: Stood): Millimetres => {
    const far = apart(from.base, neighbour.base)
    // Beside another group each has half of what lies between; a low stitch takes half a width.
    return neighbour.petal >= 0 ? far / 2 : Math.max(far / 2, far - gauge.width / 2)
  }
  const count = order.length
  const before = order[(order.indexOf(first) - 1 + count) % count]!
  const after = order[(order.indexOf(last) + 1) % count]!
  const a = (apart(first.base, last.base) + room(first, before) + room(last, after)) / 2
  const b = Math.max(...members.map(({ element }) => heightOf(element, gauge)))
  return (Math.PI * (3 * (a + b) - Math.sqrt((3 * a + b) * (a + 3 * b)))) / 2
}
