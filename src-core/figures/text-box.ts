/** Where the ink of a text lies on paper, and paper under it that keeps lines off. */
import type { Bounds, FigureItem, MeasureText, TextItem } from './figure'
import { drawPath, MM_PER_POINT, PAPER, SHARE_BEFORE } from './figure'
import { capitalDrop } from './lettering'
import { rectanglePath } from './path'

/** How far letters reach below their line, in parts of the size (Source Sans 3: g and p). */
const DESCENT = 0.2

/** The box round the ink of a text, capitals high. */
export function inkBox(item: TextItem, measure: MeasureText): Bounds {
  const width = measure(item.text, item.size, item.weight)
  const high = 2 * capitalDrop(item.size)
  const deep = /[gjpqy]/.test(item.text) ? item.size * DESCENT * MM_PER_POINT : 0
  return { x: item.x - width * SHARE_BEFORE[item.anchor], y: item.y - high, width, height: high + deep }
}

/** White under a text, a little larger than its ink. */
export const paperUnder = ({ x, y, width, height }: Bounds, air = 0.35): FigureItem =>
  drawPath(rectanglePath(x - air, y - air, width + 2 * air, height + 2 * air), { fill: PAPER })
