/** What sheets that belong together carry: ticks to cut and lay them by, and all of them in small. */
import type { Bounds, Figure, FigureItem, Paint } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, PAPER } from './figure'
import { capitalDrop, FIGURE_WIDTH, SMALLEST_TYPE } from './lettering'
import { linePath, rectanglePath } from './path'

interface TickLook {
  readonly paint: Paint
  /** Printed mm from a window's edge at which a tick begins and ends. */
  readonly from: number
  readonly to: number
}

/** Ticks outside of a window, above and below it at `xs`, left and right of it at `ys`. */
export function cropTicks(
  { x, y, width, height }: Bounds,
  { xs, ys }: { readonly xs: readonly number[]; readonly ys: readonly number[] },
  { paint, from, to }: TickLook,
): FigureItem[] {
  const tick = (...ends: Parameters<typeof linePath>): FigureItem => drawPath(linePath(...ends), paint)
  const [right, bottom] = [x + width, y + height]
  return [
    ...xs.flatMap((at) => [tick(at, y - to, at, y - from), tick(at, bottom + from, at, bottom + to)]),
    ...ys.flatMap((at) => [tick(x - to, at, x - from, at), tick(right + from, at, right + to, at)]),
  ]
}

/** One of the sheets that a drawing is cut into. */
interface KeySheet {
  /** What is left of it when the overlaps are cut, in mm of the drawing. */
  readonly area: Bounds
  /** '' where nothing is printed on it. */
  readonly name: string
  /** The sheet that the key stands on. */
  readonly isHere: boolean
}

/** Printed mm that a name keeps from the edges of its sheet. */
const NAME_AIR = 0.6

/** All sheets of a drawing of `size` in a box of printed mm, the current one filled, with their names where all have room. */
export function sheetKey(
  sheets: readonly KeySheet[],
  size: { readonly width: number; readonly height: number },
  room: { readonly width: number; readonly height: number },
): Figure {
  const scale = Math.min(room.width / size.width, room.height / size.height)
  const high = 2 * capitalDrop(SMALLEST_TYPE)
  const isNamed = sheets.every(({ area, name }) => {
    const wide = name.length * SMALLEST_TYPE * FIGURE_WIDTH * MM_PER_POINT
    return area.width * scale >= wide + 2 * NAME_AIR && area.height * scale >= high + 2 * NAME_AIR
  })
  const items = sheets.flatMap(({ area, name, isHere }): FigureItem[] => {
    const [x, y, width, height] = [area.x * scale, area.y * scale, area.width * scale, area.height * scale]
    const [fill, colour] = isHere ? [INK, PAPER] : [PAPER, INK]
    const box = drawPath(rectanglePath(x, y, width, height), { fill, stroke: INK, width: 0.2 })
    if (!isNamed || name === '') return [box]
    const style = { anchor: 'middle', weight: isHere ? 'bold' : 'regular', colour } as const
    return [
      box,
      drawText(name, x + width / 2, y + height / 2 + capitalDrop(SMALLEST_TYPE), SMALLEST_TYPE, style),
    ]
  })
  return { width: size.width * scale, height: size.height * scale, items }
}
