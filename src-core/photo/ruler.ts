/** The scale from two points on a ruler beside the motif, where no sheet of known size lies under it. */
import type { Millimetres } from '../units/quantity'
import type { Corners } from './homography'
import type { Spot } from './picture'
import type { PictureSize, SheetSize } from './sheet-sizes'

/** Two points on a ruler in the picture, and how far apart they are on it. */
export interface Ruler {
  readonly from: Spot
  readonly to: Spot
  readonly length: Millimetres
}

/** The least distance of the points in pixels: a pixel more or less is then two percent. */
const LEAST_PIXELS = 50
/** How far apart they may be on the ruler, in mm. */
export const RULER_LENGTH = { least: 10, most: 1000 } as const

/** Why two points give no scale, to stand after a colon; null where they do. */
export function rulerFault({ from, to, length }: Ruler, { width, height }: PictureSize): string | null {
  const isIn = ({ x, y }: Spot) => x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1
  if (!isIn(from) || !isIn(to)) return `the picture has ${width} × ${height} pixels, and one lies outside`
  if (!(Math.hypot(to.x - from.x, to.y - from.y) >= LEAST_PIXELS))
    return `they are less than ${LEAST_PIXELS} pixels apart`
  if (!(length >= RULER_LENGTH.least && length <= RULER_LENGTH.most))
    return `from ${RULER_LENGTH.least} to ${RULER_LENGTH.most} mm can lie between them`
  return null
}

/** The whole picture as the sheet, as if it was seen from straight above, in the millimetres of the ruler. */
export function sheetByRuler(
  { from, to, length }: Ruler,
  { width, height }: PictureSize,
): { size: SheetSize; corners: Corners } {
  const [right, bottom] = [width - 1, height - 1]
  const each = length / Math.hypot(to.x - from.x, to.y - from.y)
  return {
    size: { width: right * each, height: bottom * each, whole: true },
    corners: [
      { x: 0, y: 0 },
      { x: right, y: 0 },
      { x: right, y: bottom },
      { x: 0, y: bottom },
    ],
  }
}

/** Whether a place in mm about the top left lies on the line between the points of a ruler, or a few mm beside it. */
export function onRuler({ from, to, length }: Ruler): (x: number, y: number) => boolean {
  const each = length / Math.hypot(to.x - from.x, to.y - from.y)
  const [ux, uy] = [((to.x - from.x) * each) / length, ((to.y - from.y) * each) / length]
  return (x, y) => {
    const [dx, dy] = [x - from.x * each, y - from.y * each]
    const along = dx * ux + dy * uy
    return along >= 0 && along <= length && Math.abs(dy * ux - dx * uy) <= BESIDE_LINE
  }
}

/** Points are set on the marks or at their ends: the ruler's body lies this near, in mm. */
const BESIDE_LINE = 3
