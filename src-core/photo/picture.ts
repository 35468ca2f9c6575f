/** Pictures as the finder reads them: pixels in, light out. */

/** A decoded picture, upright: four bytes (sRGB and opacity) for each pixel, row by row from the top left. */
export interface Picture {
  readonly width: number
  readonly height: number
  readonly data: Uint8Array | Uint8ClampedArray
}

export interface Spot {
  readonly x: number
  readonly y: number
}

/** Red, green and blue as amounts of light: 0 none, 1 the brightest that the picture can say. */
export type Light = readonly [number, number, number]

/** Light of the 256 values of a byte: the transfer function of IEC 61966-2-1 (sRGB). */
export const LIGHT_OF_BYTE = Float32Array.from({ length: 256 }, (_, byte) => {
  const value = byte / 255
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4
})

/** A value of light as a byte of sRGB; the inverse of the above. */
export const byteOfLight = (light: number): number => {
  const held = Math.min(1, Math.max(0, light))
  return Math.round(255 * (held <= 0.0031308 ? held * 12.92 : 1.055 * held ** (1 / 2.4) - 0.055))
}

/** Bytes of sRGB by light in steps of a 16,384th. */
const BYTE_OF_STEP = Uint8Array.from({ length: 16_385 }, (_, at) => byteOfLight(at / 16_384))
/** The same light in whole numbers, which add up faster: this many to each of those steps, so that a square of 180 fits. */
const STEPS_OF_LIGHT = 4
const STEPS_OF_BYTE = Int32Array.from(LIGHT_OF_BYTE, (light) => Math.round(STEPS_OF_LIGHT * 16_384 * light))

/** A picture made smaller: what is looked for is found in it, what is measured is measured in the whole one. */
export interface Reduced extends Picture {
  /** Pixels of the whole picture to a side of one of these. */
  readonly step: number
}

/** Pixels of the whole picture, each the mean light of a square of them, so that at most `most` are left. */
export function reduced(picture: Picture & { readonly step?: number }, most: number): Reduced {
  const { width, height, step = 1 } = picture
  const small = reducedBy(picture, Math.max(1, Math.ceil(Math.sqrt((width * height) / most))))
  return { ...small, step: step * small.step }
}

/** The picture at half its size, where that is still more than `most` pixels: so each of its own is read once. */
export const halved = (picture: Picture, most: number): Reduced | null =>
  picture.width * picture.height > 4 * most ? reducedBy(picture, 2) : null

/** The same by a number of pixels to a side. */
export function reducedBy(picture: Picture, step: number): Reduced {
  if (step === 1) return { ...picture, step }
  if (step === 2 && picture.width > 1 && picture.height > 1) return reducedByTwo(picture)
  const { width, data } = picture
  const columns = Math.max(1, Math.floor(width / step))
  const rows = Math.max(1, Math.floor(picture.height / step))
  const small = new Uint8Array(4 * columns * rows)
  const sums = new Int32Array(3 * columns)
  const by = 1 / (STEPS_OF_LIGHT * step * step)
  for (let row = 0; row < rows; row++) {
    sums.fill(0)
    for (let y = row * step; y < Math.min(picture.height, (row + 1) * step); y++) {
      let from = 4 * y * width
      for (let at = 0; at < sums.length; at += 3) {
        let red = 0
        let green = 0
        let blue = 0
        for (let x = 0; x < step; x++, from += 4) {
          red += STEPS_OF_BYTE[data[from]!]!
          green += STEPS_OF_BYTE[data[from + 1]!]!
          blue += STEPS_OF_BYTE[data[from + 2]!]!
        }
        sums[at]! += red
        sums[at + 1]! += green
        sums[at + 2]! += blue
      }
    }
    for (let column = 0, to = 4 * row * columns; column < columns; column++, to += 4) {
      small[to] = BYTE_OF_STEP[Math.round(sums[3 * column]! * by)]!
      small[to + 1] = BYTE_OF_STEP[Math.round(sums[3 * column + 1]! * by)]!
      small[to + 2] = BYTE_OF_STEP[Math.round(sums[3 * column + 2]! * by)]!
      small[to + 3] = 255
    }
  }
  return { width: columns, height: rows, data: small, step }
}

/** One row of half as many pixels, out of two: a function of its own, which is made fast after some rows. */
function halfRow(
  data: Picture['data'],
  from: number,
  next: number,
  into: Uint8Array,
  start: number,
  count: number,
): void {
  // Sums are of 4 × 4 steps.
  for (let at = from, to = start, column = 0; column < count; column++, at += 8, to += 4) {
    const below = at + next
    const red = STEPS_OF_BYTE[data[at]!]! + STEPS_OF_BYTE[data[at + 4]!]! + STEPS_OF_BYTE[data[below]!]! + STEPS_OF_BYTE[data[below + 4]!]! // prettier-ignore
    const green = STEPS_OF_BYTE[data[at + 1]!]! + STEPS_OF_BYTE[data[at + 5]!]! + STEPS_OF_BYTE[data[below + 1]!]! + STEPS_OF_BYTE[data[below + 5]!]! // prettier-ignore
    const blue = STEPS_OF_BYTE[data[at + 2]!]! + STEPS_OF_BYTE[data[at + 6]!]! + STEPS_OF_BYTE[data[below + 2]!]! + STEPS_OF_BYTE[data[below + 6]!]! // prettier-ignore
    into[to] = BYTE_OF_STEP[(red + 8) >> 4]!
    into[to + 1] = BYTE_OF_STEP[(green + 8) >> 4]!
    into[to + 2] = BYTE_OF_STEP[(blue + 8) >> 4]!
    into[to + 3] = 255
  }
}

/** The same by two: four pixels make one, and a picture of a phone has millions of them. */
function reducedByTwo({ width, height, data }: Picture): Reduced {
  const [columns, rows] = [width >> 1, height >> 1]
  const small = new Uint8Array(4 * columns * rows)
  for (let row = 0; row < rows; row++)
    halfRow(data, 8 * row * width, 4 * width, small, 4 * row * columns, columns)
  return { width: columns, height: rows, data: small, step: 2 }
}

/** Light of a picture, smaller: each value the mean of a square of `step` pixels. */
export interface SmallLight {
  readonly width: number
  readonly height: number
  readonly step: number
  /** Three values for each place. */
  readonly light: Float32Array
}

/** Shrinks a picture so that its longer side has at most `longest` places. */
export function shrink({ width, height, data }: Picture, longest: number): SmallLight {
  const step = Math.max(1, Math.ceil(Math.max(width, height) / longest))
  const columns = Math.max(1, Math.floor(width / step))
  const rows = Math.max(1, Math.floor(height / step))
  const light = new Float32Array(3 * columns * rows)
  for (let row = 0; row < rows; row++)
    for (let y = row * step; y < (row + 1) * step; y++)
      for (let column = 0; column < columns; column++) {
        const at = 3 * (row * columns + column)
        for (let x = column * step; x < (column + 1) * step; x++) {
          const from = 4 * (y * width + x)
          light[at]! += LIGHT_OF_BYTE[data[from]!]!
          light[at + 1]! += LIGHT_OF_BYTE[data[from + 1]!]!
          light[at + 2]! += LIGHT_OF_BYTE[data[from + 2]!]!
        }
      }
  for (let i = 0; i < light.length; i++) light[i]! /= step * step
  return { width: columns, height: rows, step, light }
}
