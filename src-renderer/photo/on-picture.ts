/** From millimetres on the sheet to pixels of the picture, and what is drawn there. */
import { homography, mapped, sheetCorners } from '../../src-core/photo/homography'
import type { Corners } from '../../src-core/photo/homography'
import type { PhotoMeasures } from '../../src-core/photo/photo'
import type { Spot } from '../../src-core/photo/picture'
import type { PictureSize, SheetSize } from '../../src-core/photo/sheet-sizes'

const ROUND = 72

const closed = (points: readonly Spot[]): string =>
  `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`

/** A sheet of known size and where its corners are in the picture. */
export interface Laid {
  readonly size: SheetSize
  readonly corners: Corners
}

/** Where something stands in the picture that is told in mm about the middle of the motif. */
function placing({ size, corners }: Laid, { middle }: Pick<PhotoMeasures, 'middle'>) {
  const toPicture = homography(sheetCorners(size), corners)
  return (x: number, y: number): Spot => mapped(toPicture, { x: middle.x + x, y: middle.y + y })
}

/** The outline that was found, and the circles through tips and dips, as paths in pixels of the picture. */
export function drawnOn(
  laid: Laid,
  measures: Pick<PhotoMeasures, 'middle' | 'outline'>,
  circles: readonly number[],
): { readonly outline: string; readonly circles: readonly string[] } {
  const at = placing(laid, measures)
  return {
    outline: closed(measures.outline.map(([x, y]) => at(x, y))),
    circles: circles.map((across) =>
      closed(
        Array.from({ length: ROUND }, (_, k) => {
          const angle = (2 * Math.PI * k) / ROUND
          return at((across / 2) * Math.sin(angle), (-across / 2) * Math.cos(angle))
        }),
      ),
    ),
  }
}

/** The sheet's edges as a path. */
export const sheetPath = (corners: Corners): string => closed(corners)

/** Corners to begin with where no sheet was found: well inside the picture, the sheet as the picture stands. */
export function firstCorners(width: number, height: number): Corners {
  const [left, right, top, bottom] = [0.15 * width, 0.85 * width, 0.15 * height, 0.85 * height]
  const upright: Corners = [
    { x: left, y: top },
    { x: right, y: top },
    { x: right, y: bottom },
    { x: left, y: bottom },
  ]
  const [first, second, third, fourth] = upright
  return width > height ? [second, third, fourth, first] : upright
}

/** Points on a ruler to begin with: apart, low in the picture, to be moved onto its marks. */
export const firstPoints = (width: number, height: number): readonly [Spot, Spot] => [
  { x: 0.25 * width, y: 0.85 * height },
  { x: 0.75 * width, y: 0.85 * height },
]

/** Places with one of them moved, kept inside the picture. */
export function withSpot<Spots extends readonly Spot[]>(
  spots: Spots,
  index: number,
  { x, y }: Spot,
  { width, height }: PictureSize,
): Spots {
  const held = { x: Math.min(width - 1, Math.max(0, x)), y: Math.min(height - 1, Math.max(0, y)) }
  return spots.map((spot, i) => (i === index ? held : spot)) as unknown as Spots
}

/** The line between two points. */
export const rulerPath = ([from, to]: readonly [Spot, Spot]): string =>
  `M${from.x.toFixed(1)} ${from.y.toFixed(1)}L${to.x.toFixed(1)} ${to.y.toFixed(1)}`

/** Where each corner is in the picture, in words: "top left". */
export function cornerWords(corners: Corners): readonly string[] {
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x / 4, 0),
    y: corners.reduce((sum, { y }) => sum + y / 4, 0),
  }
  const words = corners.map(
    ({ x, y }) => `${y < middle.y ? 'top' : 'bottom'} ${x < middle.x ? 'left' : 'right'}`,
  )
  // A sheet that stands on its corner has them at the sides; then they are counted.
  return new Set(words).size === 4 ? words : corners.map((_, i) => `${i + 1} of 4`)
}
