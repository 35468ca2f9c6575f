/** The number of a half motif that has no room for a disc: along its straight side, read from below. */
import type { Point } from '../../shared-types/plan'
import type { Bounds, FigureItem } from './figure'
import { drawPath, drawText, MM_PER_POINT, PAPER } from './figure'
import { capitalDrop, FIGURE_WIDTH, SMALLEST_TYPE } from './lettering'
import { rectanglePath } from './path'

/** Room round the type of its plate, as a share of the height of a figure (by eye). */
const PAD = 0.3

/** The number about the middle of a half, in a window of the map; nothing where it would not stand whole in it. */
export function turnedNumber(label: string, at: Point, view: Bounds, scale: number): FigureItem[] {
  const type = SMALLEST_TYPE
  const high = 2 * capitalDrop(type)
  const [long, thick] = [
    label.length * FIGURE_WIDTH * type * MM_PER_POINT + 2 * PAD * high,
    high * (1 + 2 * PAD),
  ]
  const [x, y] = [(at.x - view.x) * scale, (at.y - view.y) * scale]
  const isWhole =
    x >= thick / 2 &&
    x <= view.width * scale - thick / 2 &&
    y >= long / 2 &&
    y <= view.height * scale - long / 2
  if (!isWhole) return []
  return [
    {
      kind: 'group',
      matrix: [0, -1, 1, 0, x, y],
      items: [
        drawPath(rectanglePath(-long / 2, -thick / 2, long, thick), { fill: PAPER }),
        drawText(label, 0, capitalDrop(type), type, { anchor: 'middle', weight: 'bold' }),
      ],
    },
  ]
}
