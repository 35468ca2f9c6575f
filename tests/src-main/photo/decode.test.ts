/** Pictures become pixels, upright, or are refused in one line; a picture that swells takes no memory. */
import { deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { encode as encodePng } from 'fast-png'
import { encode as encodeJpeg } from 'jpeg-js'
import { describe, expect, it } from 'vitest'
import { decodePicture, PictureError } from '../../../src-main/photo/decode'

/** Four quarters: red, green; blue, white. */
const WIDTH = 32
const HEIGHT = 16
const QUARTERS = ['red', 'green', 'blue', 'white'] as const
const PAINT = {
  red: [220, 20, 20],
  green: [20, 200, 20],
  blue: [20, 20, 220],
  white: [250, 250, 250],
} as const
const pixels = Uint8Array.from({ length: 4 * WIDTH * HEIGHT }, (_, at) => {
  const [pixel, channel] = [at >> 2, at & 3]
  const quarter = (pixel % WIDTH >= WIDTH / 2 ? 1 : 0) + (pixel >= (WIDTH * HEIGHT) / 2 ? 2 : 0)
  return channel === 3 ? 255 : PAINT[QUARTERS[quarter]!][channel]!
})
const jpeg = new Uint8Array(encodeJpeg({ data: Buffer.from(pixels), width: WIDTH, height: HEIGHT }, 95).data)
const png = encodePng({ width: WIDTH, height: HEIGHT, data: pixels, channels: 4, depth: 8 })

/** Which quarters a picture shows, from the top left. */
function shown(bytes: Uint8Array): string {
  const { width, height, data } = decodePicture(bytes)
  const spots = [0.25, 0.75].flatMap((y) => [0.25, 0.75].map((x) => [x, y] as const))
  const names = spots.map(([x, y]) => {
    const at = 4 * (Math.floor(y * height) * width + Math.floor(x * width))
    const far = (name: (typeof QUARTERS)[number]) =>
      PAINT[name].reduce((sum, value, c) => sum + Math.abs(value - data[at + c]!), 0)
    return [...QUARTERS].sort((a, b) => far(a) - far(b))[0]
  })
  return `${width}×${height} ${names.join(' ')}`
}

/** The JPEG with an orientation said of it, in either order of bytes. */
function turned(orientation: number, little: boolean): Uint8Array {
  const block = new DataView(new ArrayBuffer(26))
  block.setUint16(0, little ? 0x4949 : 0x4d4d)
  block.setUint16(2, 42, little)
  block.setUint32(4, 8, little)
  block.setUint16(8, 1, little)
  block.setUint16(10, 0x0112, little)
  block.setUint16(12, 3, little)
  block.setUint32(14, 1, little)
  block.setUint16(18, orientation, little)
  const exif = [0x45, 0x78, 0x69, 0x66, 0, 0, ...new Uint8Array(block.buffer)]
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, 0, exif.length + 2, ...exif, ...jpeg.subarray(2)])
}

const why = (bytes: Uint8Array): string => {
  try {
    decodePicture(bytes)
    return 'read'
  } catch (error) {
    if (!(error instanceof PictureError)) throw error
    return error.message
  }
}

describe('A picture', () => {
  it('is read as PNG and as JPEG', () => {
    expect(shown(png)).toBe('32×16 red green blue white')
    expect(shown(jpeg)).toBe('32×16 red green blue white')
  })

  it.each([
    [1, '32×16 red green blue white'],
    [2, '32×16 green red white blue'],
    [3, '32×16 white blue green red'],
    [4, '32×16 blue white red green'],
    [5, '16×32 red blue green white'],
    [6, '16×32 blue red white green'],
    [7, '16×32 white green blue red'],
    [8, '16×32 green white red blue'],
  ])('stands upright however the camera was held: orientation %i (Exif 2.3)', (orientation, upright) => {
    expect(shown(turned(orientation, true))).toBe(upright)
    expect(shown(turned(orientation, false))).toBe(upright)
  })

  it('of another kind is named and refused', () => {
    const text = (words: string) => new TextEncoder().encode(words)
    expect(why(text('RIFF....WEBPVP8 '))).toMatch(/WebP picture: save it as PNG or JPEG/)
    expect(why(text('....ftypheic'))).toMatch(/HEIC/)
    expect(why(text('GIF89a'))).toMatch(/GIF/)
    expect(why(text('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toMatch(/SVG/)
    expect(why(text('hello'))).toMatch(/no PNG or JPEG/)
    expect(why(new Uint8Array())).toMatch(/no PNG or JPEG/)
  })

  it('that says it is huge, or swells when it is unpacked, is refused before it is', () => {
    const huge = png.slice()
    new DataView(huge.buffer, huge.byteOffset).setUint32(16, 60_000)
    new DataView(huge.buffer, huge.byteOffset).setUint32(20, 60_000)
    expect(why(huge)).toMatch(/60000 × 60000 pixels; at most 50 million/)
    const swollen = deflateSync(new Uint8Array(200_000_000))
    const length = new DataView(new ArrayBuffer(4))
    length.setUint32(0, swollen.length)
    const bomb = Buffer.concat([
      png.subarray(0, 33),
      new Uint8Array(length.buffer),
      Buffer.from('IDAT'),
      swollen,
      new Uint8Array(4),
    ])
    expect(why(bomb)).toBe('is damaged or cut off')
  })

  it('that is cut off or scrambled is refused, or read; nothing else is thrown', () => {
    for (const whole of [png, jpeg])
      for (let end = 0; end < whole.length; end += 7) why(whole.subarray(0, end))
    const spoilt = fc.tuple(fc.boolean(), fc.array(fc.tuple(fc.nat(2000), fc.nat(255)), { maxLength: 20 }))
    fc.assert(
      fc.property(spoilt, ([asPng, changes]) => {
        const bytes = (asPng ? png : jpeg).slice()
        for (const [at, value] of changes) bytes[(2 + at) % bytes.length] = value
        why(bytes)
      }),
      { numRuns: 300 },
    )
  })
})
