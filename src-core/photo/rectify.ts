/** The sheet seen straight from above, in millimetres. */
import { homography, mapped, sheetCorners, smaller } from './homography'
import type { Corners } from './homography'
import { LIGHT_OF_BYTE } from './picture'
import type { Picture, Reduced } from './picture'
import type { SheetSize } from './sheet-sizes'

/** Light on the plane of the sheet: place (x, y) of the grid is (left + x / scale, top + y / scale) in mm. */
export interface Plane {
  readonly width: number
  readonly height: number
  /** Places per millimetre. */
  readonly scale: number
  readonly left: number
  readonly top: number
  /** Three values for each place. */
  readonly light: Float32Array
  /** 1 where the ground of the motif may be seen: on the sheet, or in the picture but off the card. */
  readonly ground: Uint8Array
  /** Pixels of the picture for a millimetre, on average. */
  readonly density: number
}

/** A piece of the plane, in mm about the top left of the sheet. */
export interface Area {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Places per millimetre at most, and places in all at most. */
const FINEST = 6
const MOST_PLACES = { finding: 400_000, measuring: 600_000 }
/** What is left off along the edges of a sheet, and kept clear round a card, in mm. */
export const MARGIN = 1.5
const CARD_MARGIN = 4
/** How far from the middle of a card a motif is looked for, in mm. */
const BESIDE = 260

/** Where a motif may lie: on the sheet, or beside the card. */
function groundOf(picture: Picture, corners: Corners, sheet: SheetSize): Area {
  if (!sheet.beside)
    return { left: MARGIN, top: MARGIN, right: sheet.width - MARGIN, bottom: sheet.height - MARGIN }
  const toSheet = homography(corners, sheetCorners(sheet))
  const seen = [
    { x: 0, y: 0 },
    { x: picture.width - 1, y: 0 },
    { x: picture.width - 1, y: picture.height - 1 },
    { x: 0, y: picture.height - 1 },
  ].map((corner) => mapped(toSheet, corner))
  return {
    left: Math.max(sheet.width / 2 - BESIDE, Math.min(...seen.map(({ x }) => x))),
    right: Math.min(sheet.width / 2 + BESIDE, Math.max(...seen.map(({ x }) => x))),
    top: Math.max(sheet.height / 2 - BESIDE, Math.min(...seen.map(({ y }) => y))),
    bottom: Math.min(sheet.height / 2 + BESIDE, Math.max(...seen.map(({ y }) => y))),
  }
}

/** Pixels of the picture for a millimetre, on average over the sheet's edges. */
function densityOf(corners: Corners, sheet: SheetSize): number {
  const around = corners.map(({ x, y }, at) =>
    Math.hypot(x - corners[(at + 1) % 4]!.x, y - corners[(at + 1) % 4]!.y),
  )
  return around.reduce((sum, each) => sum + each, 0) / (2 * (sheet.width + sheet.height))
}

/** Places for a millimetre. */
const scaleOf = (density: number, { left, top, right, bottom }: Area, most: number): number =>
  Math.min(FINEST, density * 1.25, Math.sqrt(most / ((right - left) * (bottom - top))))

/** Pixels of a smaller picture to a place from which on it shows a part as finely as it is measured. */
const AS_FINE = 0.95

/** Rectifies a part of the sheet from the picture, or from the same at half the size where that has pixels enough. */
export function rectifyPart(
  picture: Picture,
  half: Reduced | null,
  corners: Corners,
  sheet: SheetSize,
  part: Area,
): Plane {
  const density = densityOf(corners, sheet)
  if (!half || density / half.step < AS_FINE * scaleOf(density, part, MOST_PLACES.measuring))
    return rectify(picture, corners, sheet, part)
  return { ...rectify(half, smaller(corners, half), sheet, part), density }
}

/**
 * Rectifies what surrounds the motif: the sheet itself or the ground beside a card, coarsely, to find the motif in; or
 * a part of it, finely, to measure.
 */
export function rectify(picture: Picture, corners: Corners, sheet: SheetSize, part?: Area): Plane {
  const matrix = homography(sheetCorners(sheet), corners)
  const area = part ?? groundOf(picture, corners, sheet)
  const density = densityOf(corners, sheet)
  const wide = area.right - area.left
  const tall = area.bottom - area.top
  const scale = scaleOf(density, area, part ? MOST_PLACES.measuring : MOST_PLACES.finding)
  const width = Math.floor(wide * scale)
  const height = Math.floor(tall * scale)
  const light = new Float32Array(3 * width * height)
  const ground = new Uint8Array(width * height)
  const { data } = picture
  const [right, bottom] = [picture.width - 1.001, picture.height - 1.001]
  const next = picture.width > 1 ? 4 : 0
  const below = picture.height > 1 ? 4 * picture.width : 0
  // Where a place is wider than a pixel, several pixels make it.
  const parts = Math.max(1, Math.min(4, Math.round(density / scale)))
  const share = 1 / (parts * parts)
  const [a, b, c, d, e, f, g, h, i] = matrix
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = row * width + column
      const x = area.left + column / scale
      const y = area.top + row / scale
      const w = g! * x + h! * y + i!
      const px = (a! * x + b! * y + c!) / w
      const py = (d! * x + e! * y + f!) / w
      const inside = px >= 0 && py >= 0 && px <= picture.width - 1 && py <= picture.height - 1
      const onCard =
        sheet.beside &&
        x > -CARD_MARGIN &&
        y > -CARD_MARGIN &&
        x < sheet.width + CARD_MARGIN &&
        y < sheet.height + CARD_MARGIN
      ground[at] = inside && !onCard ? 1 : 0
      let red = 0
      let green = 0
      let blue = 0
      for (let u = 0; u < parts; u++)
        for (let v = 0; v < parts; v++) {
          const mx = x + ((u + 0.5) / parts - 0.5) / scale
          const my = y + ((v + 0.5) / parts - 0.5) / scale
          const by = 1 / (g! * mx + h! * my + i!)
          // Bilinear, outside the nearest counts; with nothing handed to and fro: this is done millions of times.
          const left = Math.min(right, Math.max(0, (a! * mx + b! * my + c!) * by))
          const top = Math.min(bottom, Math.max(0, (d! * mx + e! * my + f!) * by))
          const from = left | 0
          const over = top | 0
          const s = left - from
          const t = top - over
          const p = 4 * (over * picture.width + from)
          const q = p + below
          const w0 = (1 - s) * (1 - t)
          const w1 = s * (1 - t)
          const w2 = (1 - s) * t
          const w3 = s * t
          red +=
            LIGHT_OF_BYTE[data[p]!]! * w0 +
            LIGHT_OF_BYTE[data[p + next]!]! * w1 +
            LIGHT_OF_BYTE[data[q]!]! * w2 +
            LIGHT_OF_BYTE[data[q + next]!]! * w3
          green +=
            LIGHT_OF_BYTE[data[p + 1]!]! * w0 +
            LIGHT_OF_BYTE[data[p + next + 1]!]! * w1 +
            LIGHT_OF_BYTE[data[q + 1]!]! * w2 +
            LIGHT_OF_BYTE[data[q + next + 1]!]! * w3
          blue +=
            LIGHT_OF_BYTE[data[p + 2]!]! * w0 +
            LIGHT_OF_BYTE[data[p + next + 2]!]! * w1 +
            LIGHT_OF_BYTE[data[q + 2]!]! * w2 +
            LIGHT_OF_BYTE[data[q + next + 2]!]! * w3
        }
      light[3 * at] = red * share
      light[3 * at + 1] = green * share
      light[3 * at + 2] = blue * share
    }
  return { width, height, scale, left: area.left, top: area.top, light, ground, density }
}

/** The same plane whose ground lies within four corners in mm, and `inside` of their lines by so many mm. */
export function within(plane: Plane, corners: Corners, inside: number): Plane {
  const { width, scale, left, top } = plane
  // Corners go round clockwise or not: inside is where the middle is.
  const middle = { x: 0, y: 0 }
  for (const { x, y } of corners) {
    middle.x += x / 4
    middle.y += y / 4
  }
  const sides = corners.map((from, at) => {
    const to = corners[(at + 1) % 4]!
    const length = Math.hypot(to.x - from.x, to.y - from.y)
    const off = (x: number, y: number) =>
      ((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / length
    const sign = Math.sign(off(middle.x, middle.y))
    return (x: number, y: number) => sign * off(x, y) > inside
  })
  const ground = plane.ground.map((seen, at) => {
    const [x, y] = [left + (at % width) / scale, top + Math.floor(at / width) / scale]
    return seen && sides.every((isIn) => isIn(x, y)) ? 1 : 0
  })
  return { ...plane, ground }
}
