/** A figure as a picture of so many pixels: with air round it, on a ground or on none. */
import type { Colour, Figure } from './figure'
import { drawPath, placeFigure } from './figure'
import { rectanglePath } from './path'

/** Air round a picture as a share of its longer side: on a ground, and with nothing behind it (for its outlines). */
const AIR = { ground: 0.04, none: 0.005 } as const

/** A figure whose sides are as those of its pixels. */
export interface PictureFrame {
  readonly figure: Figure
  /** Pixels. */
  readonly width: number
  readonly height: number
}

/** The figure in the middle of a picture `width` pixels across. */
export function framedPicture(figure: Figure, width: number, ground: Colour | null): PictureFrame {
  const air = Math.max(figure.width, figure.height) * (ground ? AIR.ground : AIR.none)
  const across = figure.width + 2 * air
  const height = Math.max(1, Math.round((width * (figure.height + 2 * air)) / across))
  const down = (across * height) / width
  const behind = ground ? [drawPath(rectanglePath(0, 0, across, down), { fill: ground })] : []
  const drawn = placeFigure(figure, air, (down - figure.height) / 2)
  return { figure: { width: across, height: down, items: [...behind, drawn] }, width, height }
}
