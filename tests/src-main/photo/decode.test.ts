/** Pictures become pixels, upright, or are refused in one line; a picture that swells takes no memory. */
import { crc32, deflateSync } from 'node:zlib'
import fc from 'fast-check'
import { encode as encodePng } from 'fast-png'
import { encode as encodeJpeg } from 'jpeg-js'
import { beforeAll, describe, expect, it } from 'vitest'
import { bareboned, demandReadable, LONGEST_SIDE, MOST_SCANS } from '../../../src-core/photo/picture-file'
import { decodePicture, PictureError } from '../../../src-main/photo/decode'
import { webpOf } from './encode-webp'
import { runs } from '../../runs'

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
let webp: Uint8Array

/** Which quarters a picture shows, from the top left. */
async function shown(bytes: Uint8Array): Promise<string> {
  const { width, height, data } = await decodePicture(bytes)
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

const why = async (bytes: Uint8Array): Promise<string> => {
  try {
    await decodePicture(bytes)
    return 'read'
  } catch (error) {
    if (!(error instanceof PictureError)) throw error
    return error.message
  }
}

/** The WebP in the extended form, with an orientation (RFC 9649, section 2.7). */
function webpTurned(simple: Uint8Array, orientation: number): Uint8Array {
  const chunk = (name: string, body: Uint8Array) => {
    const head = new Uint8Array(8)
    head.set(new TextEncoder().encode(name))
    new DataView(head.buffer).setUint32(4, body.length, true)
    return [...head, ...body, ...(body.length & 1 ? [0] : [])]
  }
  const tiff = [
    0x49,
    0x49,
    42,
    0,
    8,
    0,
    0,
    0,
    1,
    0,
    0x12,
    1,
    3,
    0,
    1,
    0,
    0,
    0,
    orientation,
    0,
    0,
    0,
    0,
    0,
    0,
    0,
  ]
  const canvas = Uint8Array.from([8, 0, 0, 0, WIDTH - 1, 0, 0, HEIGHT - 1, 0, 0])
  // What the encoder put in the extended form has its own VP8X of eighteen bytes.
  const start = new TextDecoder().decode(simple.subarray(12, 16)) === 'VP8X' ? 30 : 12
  const body = [
    ...new TextEncoder().encode('WEBP'),
    ...chunk('VP8X', canvas),
    ...simple.subarray(start),
    ...chunk('EXIF', Uint8Array.from(tiff)),
  ]
  return Uint8Array.from(chunk('RIFF', Uint8Array.from(body)))
}

beforeAll(async () => {
  webp = await webpOf(WIDTH, HEIGHT, pixels)
})

describe('A picture', () => {
  it('is read as PNG, JPEG and WebP', async () => {
    expect(await shown(png)).toBe('32×16 red green blue white')
    expect(await shown(jpeg)).toBe('32×16 red green blue white')
    expect(await shown(webp)).toBe('32×16 red green blue white')
    expect(await shown(webpTurned(webp, 6))).toBe('16×32 blue red white green')
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
  ])(
    'stands upright however the camera was held: orientation %i (Exif 2.3)',
    async (orientation, upright) => {
      expect(await shown(turned(orientation, true))).toBe(upright)
      expect(await shown(turned(orientation, false))).toBe(upright)
    },
  )

  it('of another kind is named and refused', async () => {
    const text = (words: string) => new TextEncoder().encode(words)
    expect(await why(text('RIFF....WEBPVP8 '))).toBe('is damaged or cut off')
    expect(await why(text('....ftypheic'))).toMatch(/HEIC/)
    expect(await why(text('GIF89a'))).toMatch(/GIF/)
    expect(await why(text('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toMatch(/SVG/)
    expect(await why(text('hello'))).toMatch(/no PNG, JPEG or WebP/)
    // A frame of four components (ITU-T T.81, B.2.2), as files for print have it.
    const inks = Buffer.from('ffd8ffc0001408006400640401110002110103110104110100ffd9', 'hex')
    expect(await why(inks)).toMatch(/printing inks \(CMYK\): save it in RGB/)
    expect(await why(new Uint8Array())).toMatch(/no PNG, JPEG or WebP/)
  })

  it('that says it is huge, or swells when it is unpacked, is refused before it is', async () => {
    const huge = png.slice()
    new DataView(huge.buffer, huge.byteOffset).setUint32(16, 60_000)
    new DataView(huge.buffer, huge.byteOffset).setUint32(20, 60_000)
    expect(await why(huge)).toMatch(/60000 × 60000 pixels; at most 50 million/)
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
    const large = webpTurned(webp, 1)
    // The size of its canvas, three bytes each way.
    large.set([0xff, 0xff, 0, 0xff, 0xff, 0], 24)
    expect(await why(large)).toMatch(/65536 × 65536 pixels; at most 50 million/)
    expect(await why(bomb)).toBe('is damaged or cut off')
  })

  it('keeps nobody waiting by what its pixels do not need', async () => {
    const chunk = (name: string, body: Uint8Array) => {
      const head = new DataView(new ArrayBuffer(4))
      head.setUint32(0, body.length)
      const named = Buffer.concat([Buffer.from(name), body])
      const sum = new DataView(new ArrayBuffer(4))
      sum.setUint32(0, crc32(named))
      return Buffer.concat([new Uint8Array(head.buffer), named, new Uint8Array(sum.buffer)])
    }
    const packed = deflateSync(new Uint8Array(1_000_000))
    const extras: Record<string, Buffer> = {
      iCCP: Buffer.concat([Buffer.from('x\0\0'), packed]),
      zTXt: Buffer.concat([Buffer.from('x\0\0'), packed]),
      iTXt: Buffer.concat([Buffer.from('x\0\u0001\0\0\0'), packed]),
    }
    for (const [name, body] of Object.entries(extras)) {
      const dressed = Buffer.concat([png.subarray(0, 33), chunk(name, body), png.subarray(33)])
      // What is not there is not unpacked.
      expect(Buffer.from(bareboned(dressed)).includes(name), name).toBe(false)
      expect(await shown(dressed)).toBe('32×16 red green blue white')
      // The same where it is damaged: nobody looks.
      const wrong = chunk(name, new Uint8Array(50))
      expect(await shown(Buffer.concat([png.subarray(0, 33), wrong, png.subarray(33)]))).toBe(
        '32×16 red green blue white',
      )
    }
    expect(bareboned(png)).toEqual(png)
  })

  it.each([
    [LONGEST_SIDE + 1, 1],
    [1, LONGEST_SIDE + 1],
    [200_000, 1],
    [1, 4_000_000],
  ])('of %i × %i pixels is refused before it is decoded', async (width, height) => {
    const strip = png.slice()
    new DataView(strip.buffer, strip.byteOffset).setUint32(16, width)
    new DataView(strip.buffer, strip.byteOffset).setUint32(20, height)
    expect(await why(strip)).toBe(
      `has ${width} × ${height} pixels; at most ${LONGEST_SIDE} along a side are read`,
    )
    expect(() => demandReadable(strip)).toThrow(`at most ${LONGEST_SIDE} along a side`)
  })

  it('that is gone over more often than any encoder does is refused before it is decoded', async () => {
    const at = jpeg.findIndex((byte, i) => byte === 0xff && jpeg[i + 1] === 0xda)
    const scan = jpeg.subarray(at, -2)
    const times = (count: number) =>
      Uint8Array.from([
        ...jpeg.subarray(0, at),
        ...Array.from({ length: count }, () => [...scan]).flat(),
        0xff,
        0xd9,
      ])
    const many = `is a JPEG of more than ${MOST_SCANS} passes: save it anew first`
    expect(await why(times(MOST_SCANS + 1))).toBe(many)
    expect(() => demandReadable(times(MOST_SCANS + 1))).toThrow(many)
    expect(() => demandReadable(times(MOST_SCANS))).not.toThrow()
    expect(await why(times(MOST_SCANS))).not.toBe(many)
    // A picture within what a camera says counts for itself, and so does one behind the first.
    const [segment, behind] = [Uint8Array.from([0xff, 0xe2, 0, scan.length + 2, ...scan]), times(40)]
    const dressed = Uint8Array.from([
      ...jpeg.subarray(0, 2),
      ...Array.from({ length: 70 }, () => [...segment]).flat(),
      ...jpeg.subarray(2),
      ...behind,
      ...behind,
    ])
    expect(scan.length).toBeLessThan(254)
    expect(await shown(dressed)).toBe('32×16 red green blue white')
  })

  it('that is cut off or scrambled is refused, or read; nothing else is thrown', async () => {
    const whole = { png, jpeg, webp, turned: turned(6, true), turnedWebp: webpTurned(webp, 6) }
    // One line each, to stand behind the picture's name.
    const told = async (bytes: Uint8Array) => expect(await why(bytes)).toMatch(/^[^\n]{4,120}$/)
    for (const each of Object.values(whole))
      for (let end = 0; end < each.length; end += 7) await told(each.subarray(0, end))
    const spoilt = fc.tuple(
      fc.constantFrom<keyof typeof whole>('png', 'jpeg', 'webp', 'turned', 'turnedWebp'),
      fc.array(fc.tuple(fc.nat(2000), fc.nat(255)), { maxLength: 20 }),
    )
    await fc.assert(
      fc.asyncProperty(spoilt, async ([kind, changes]) => {
        const bytes = whole[kind].slice()
        for (const [at, value] of changes) bytes[(2 + at) % bytes.length] = value
        await told(bytes)
      }),
      { numRuns: runs(300) },
    )
  })
})
