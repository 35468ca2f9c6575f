/** The sheet seen straight from above, in millimetres. */
import { homography, inverse, mapped, sheetCorners } from './homography'
import type { Corners } from './homography'
import { lightAt } from './picture'
import type { Picture } from './picture'
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

/** Places per millimetre at most, and places in all at most. */
const FINEST = 6
const MOST_PLACES = 1_500_000
/** What is left off along the edges of a sheet, and kept clear round a card, in mm. */
const MARGIN = 1.5
const CARD_MARGIN = 4
/** How far from the middle of a card a motif is looked for, in mm. */
const BESIDE = 260

/** Rectifies what surrounds the motif: the sheet itself, or the ground beside a card. */
export function rectify(picture: Picture, corners: Corners, sheet: SheetSize): Plane {
  const toPicture = homography(sheetCorners(sheet), corners)
  const toSheet = inverse(toPicture)
  const area = { left: MARGIN, top: MARGIN, right: sheet.width - MARGIN, bottom: sheet.height - MARGIN }
  if (sheet.beside) {
    const seen = [
      { x: 0, y: 0 },
      { x: picture.width - 1, y: 0 },
      { x: picture.width - 1, y: picture.height - 1 },
      { x: 0, y: picture.height - 1 },
    ].map((corner) => mapped(toSheet, corner))
    area.left = Math.max(sheet.width / 2 - BESIDE, Math.min(...seen.map(({ x }) => x)))
    area.right = Math.min(sheet.width / 2 + BESIDE, Math.max(...seen.map(({ x }) => x)))
    area.top = Math.max(sheet.height / 2 - BESIDE, Math.min(...seen.map(({ y }) => y)))
    area.bottom = Math.min(sheet.height / 2 + BESIDE, Math.max(...seen.map(({ y }) => y)))
  }
  const around = corners.map(({ x, y }, at) =>
    Math.hypot(x - corners[(at + 1) % 4]!.x, y - corners[(at + 1) % 4]!.y),
  )
  const density = around.reduce((sum, each) => sum + each, 0) / (2 * (sheet.width + sheet.height))
  const wide = area.right - area.left
  const tall = area.bottom - area.top
  const scale = Math.min(FINEST, density * 1.25, Math.sqrt(MOST_PLACES / (wide * tall)))
  const width = Math.floor(wide * scale)
  const height = Math.floor(tall * scale)
  const light = new Float32Array(3 * width * height)
  const ground = new Uint8Array(width * height)
  const one = new Float64Array(3)
  // Where a place is wider than a pixel, several pixels make it.
  const parts = Math.max(1, Math.min(4, Math.round(density / scale)))
  const share = 1 / (parts * parts)
  for (let row = 0; row < height; row++)
    for (let column = 0; column < width; column++) {
      const at = row * width + column
      const x = area.left + column / scale
      const y = area.top + row / scale
      const middle = mapped(toPicture, { x, y })
      const inside =
        middle.x >= 0 && middle.y >= 0 && middle.x <= picture.width - 1 && middle.y <= picture.height - 1
      const onCard =
        sheet.beside &&
        x > -CARD_MARGIN &&
        y > -CARD_MARGIN &&
        x < sheet.width + CARD_MARGIN &&
        y < sheet.height + CARD_MARGIN
      ground[at] = inside && !onCard ? 1 : 0
      for (let i = 0; i < parts; i++)
        for (let j = 0; j < parts; j++) {
          const part = mapped(toPicture, {
            x: x + ((i + 0.5) / parts - 0.5) / scale,
            y: y + ((j + 0.5) / parts - 0.5) / scale,
          })
          lightAt(picture, part.x, part.y, one)
          for (let c = 0; c < 3; c++) light[3 * at + c]! += one[c]! * share
        }
    }
  return { width, height, scale, left: area.left, top: area.top, light, ground, density }
}
