/**
 * The plane of the sheet in the picture. The mapping of four points to four points in closed form by way of the unit
 * square (§heckbert).
 */
import type { Spot } from './picture'

/** Nine numbers, row by row: (x, y) goes to ((a x + b y + c) / w, (d x + e y + f) / w), w = g x + h y + i. */
export type Homography = readonly number[]

/** Corners in turn: top left, top right, bottom right, bottom left of some quadrilateral. */
export type Corners = readonly [Spot, Spot, Spot, Spot]

/** The unit square to a quadrilateral. */
function fromSquare([p0, p1, p2, p3]: Corners): Homography {
  const dx1 = p1.x - p2.x
  const dx2 = p3.x - p2.x
  const dy1 = p1.y - p2.y
  const dy2 = p3.y - p2.y
  const sx = p0.x - p1.x + p2.x - p3.x
  const sy = p0.y - p1.y + p2.y - p3.y
  const below = dx1 * dy2 - dx2 * dy1
  const g = (sx * dy2 - dx2 * sy) / below
  const h = (dx1 * sy - sx * dy1) / below
  return [
    p1.x - p0.x + g * p1.x,
    p3.x - p0.x + h * p3.x,
    p0.x,
    p1.y - p0.y + g * p1.y,
    p3.y - p0.y + h * p3.y,
    p0.y,
    g,
    h,
    1,
  ]
}

/** The inverse, but for its scale, which does not matter here: the adjugate matrix. */
export function inverse(matrix: Homography): Homography {
  const [a, b, c, d, e, f, g, h, i] = matrix as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  return [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ]
}

const times = (first: Homography, second: Homography): Homography =>
  Array.from({ length: 9 }, (_, at) => {
    const row = 3 * Math.floor(at / 3)
    const column = at % 3
    return (
      first[row]! * second[column]! +
      first[row + 1]! * second[column + 3]! +
      first[row + 2]! * second[column + 6]!
    )
  })

/** The mapping that takes each corner of `from` to that of `to`. */
export const homography = (from: Corners, to: Corners): Homography =>
  times(fromSquare(to), inverse(fromSquare(from)))

/** Where a point goes. */
export function mapped(matrix: Homography, { x, y }: Spot): Spot {
  const w = matrix[6]! * x + matrix[7]! * y + matrix[8]!
  return {
    x: (matrix[0]! * x + matrix[1]! * y + matrix[2]!) / w,
    y: (matrix[3]! * x + matrix[4]! * y + matrix[5]!) / w,
  }
}

/** The corners of a sheet in millimetres about its top left. */
export const sheetCorners = ({ width, height }: { width: number; height: number }): Corners => [
  { x: 0, y: 0 },
  { x: width, y: 0 },
  { x: width, y: height },
  { x: 0, y: height },
]

/** Corners as they lie in the same picture made smaller: `step` pixels to a side of one of its own. */
export const smaller = (corners: Corners, { step }: { readonly step: number }): Corners =>
  corners.map(({ x, y }) => ({ x: (x + 0.5) / step - 0.5, y: (y + 0.5) / step - 0.5 })) as unknown as Corners
