/** Pictures as cameras and scanners keep them → pixels, upright. What cannot be read is refused in one line. */
import { inflateSync } from 'node:zlib'
import { decode as decodePng } from 'fast-png'
import type { Picture } from '../../src-core/photo/picture'
import { decodeWith } from './codecs'
import { orientationOf, uprightOf } from './orientation'

/** Bytes of a file, pixels of a picture: phones make up to some 50 million; memory is bounded by it. */
export const LARGEST_PICTURE = 60_000_000
const MOST_PIXELS = 50_000_000

/** Why a picture cannot be read, to stand behind its name: "is a WebP picture: …". */
export class PictureError extends Error {}

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to))

const DAMAGED = 'is damaged or cut off'
const SAVE_AS = 'save it as PNG or JPEG first'

/** What the first bytes say; throws where it is none of the kinds that are read. */
function kindOf(bytes: Uint8Array): 'png' | 'jpeg' | 'webp' {
  if (bytes.length >= 8 && bytes[0] === 0x89 && ascii(bytes, 1, 4) === 'PNG') return 'png'
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpeg'
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return 'webp'
  if (ascii(bytes, 0, 3) === 'GIF') throw new PictureError(`is a GIF picture: ${SAVE_AS}`)
  if (ascii(bytes, 4, 8) === 'ftyp') throw new PictureError(`is a HEIC, AVIF or video file: ${SAVE_AS}`)
  if (/^\s*(<\?xml|<svg|<!--)/.test(ascii(bytes, 0, 200)))
    throw new PictureError('is a drawing (SVG), not a photo')
  throw new PictureError('is no PNG, JPEG or WebP picture')
}

function demandSize(width: number, height: number): void {
  if (width < 1 || height < 1) throw new PictureError('says that it has no pixels')
  if (width * height > MOST_PIXELS)
    throw new PictureError(
      `has ${width} × ${height} pixels; at most ${MOST_PIXELS / 1_000_000} million are read`,
    )
}

/** Decodes a picture. Throws a `PictureError` where it is damaged, too large, or of another kind. */
export async function decodePicture(bytes: Uint8Array): Promise<Picture> {
  try {
    const kind = kindOf(bytes)
    if (kind === 'png') return pngPicture(bytes)
    const { width, height, orientation } = kind === 'jpeg' ? jpegHeader(bytes) : webpHeader(bytes)
    demandSize(width, height)
    const picture = await decodeWith(kind, bytes)
    if (!picture || picture.width * picture.height > MOST_PIXELS) throw new PictureError(DAMAGED)
    return uprightOf(kind === 'webp' ? onWhite(picture) : picture, orientation)
  } catch (error) {
    throw error instanceof PictureError ? error : new PictureError(DAMAGED)
  }
}

/** What shines through lies on white. */
function onWhite({ width, height, data }: Picture): Picture {
  const solid = new Uint8Array(data.length)
  for (let at = 0; at < data.length; at += 4) {
    const alpha = data[at + 3]!
    for (let c = 0; c < 3; c++)
      solid[at + c] = Math.round((data[at + c]! * alpha + 255 * (255 - alpha)) / 255)
    solid[at + 3] = 255
  }
  return { width, height, data: solid }
}

/** Size and orientation from the chunks of a WebP (RFC 9649, sections 2.5 to 2.7). */
function webpHeader(bytes: Uint8Array): { width: number; height: number; orientation: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let size: { width: number; height: number } | null = null
  let orientation = 1
  if (view.getUint32(4, true) + 8 > bytes.length) throw new PictureError(DAMAGED)
  for (let at = 12; at + 8 <= bytes.length;) {
    const name = ascii(bytes, at, at + 4)
    const length = view.getUint32(at + 4, true)
    const from = at + 8
    const three = (offset: number) => view.getUint16(offset, true) + (view.getUint8(offset + 2) << 16)
    if (name === 'VP8X') {
      if (view.getUint8(from) & 2) throw new PictureError(`is a WebP picture that moves: ${SAVE_AS}`)
      size = { width: 1 + three(from + 4), height: 1 + three(from + 7) }
    } else if (name === 'VP8 ')
      size ??= {
        width: view.getUint16(from + 6, true) & 0x3fff,
        height: view.getUint16(from + 8, true) & 0x3fff,
      }
    else if (name === 'VP8L') {
      const bits = view.getUint32(from + 1, true)
      size ??= { width: 1 + (bits & 0x3fff), height: 1 + ((bits >>> 14) & 0x3fff) }
    } else if (name === 'EXIF') {
      const block = bytes.subarray(from, from + length)
      orientation = orientationOf(ascii(block, 0, 4) === 'Exif' ? block.subarray(6) : block)
    }
    at = from + length + (length & 1)
  }
  if (!size) throw new PictureError(DAMAGED)
  return { ...size, orientation }
}

/** Size (ITU-T T.81, B.2.2) and orientation in the segments before the picture, before anything is decoded. */
function jpegHeader(bytes: Uint8Array): { width: number; height: number; orientation: number } {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let orientation = 1
  for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff;) {
    const marker = bytes[at + 1]!
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (isFrame) return { width: view.getUint16(at + 7), height: view.getUint16(at + 5), orientation }
    const length = marker === 0xff ? 0 : view.getUint16(at + 2)
    if (marker === 0xe1 && ascii(bytes, at + 4, at + 8) === 'Exif')
      orientation = orientationOf(bytes.subarray(at + 10, at + 2 + length))
    at += marker === 0xff ? 1 : 2 + length
  }
  throw new PictureError(DAMAGED)
}

function pngPicture(bytes: Uint8Array): Picture {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const [width, height] = [view.getUint32(16), view.getUint32(20)]
  demandSize(width, height)
  demandInflated(bytes, view, width, height)
  const { data, channels, depth, palette } = decodePng(bytes)
  const most = 2 ** depth - 1
  const rgba = new Uint8Array(4 * width * height)
  if (depth === 8 && channels === 3 && !palette) {
    for (let at = 0, from = 0; at < rgba.length; at += 4, from += 3) {
      rgba[at] = data[from]!
      rgba[at + 1] = data[from + 1]!
      rgba[at + 2] = data[from + 2]!
      rgba[at + 3] = 255
    }
    return { width, height, data: rgba }
  }
  if (depth === 8 && channels === 4) return onWhite({ width, height, data: data as Uint8Array })
  for (let at = 0; at < width * height; at++) {
    const from = at * channels
    const byte = (channel: number) => Math.round((255 * (data[from + channel] ?? 0)) / most)
    const listed = palette?.[data[from]!]
    const [red, green, blue, alpha] = listed
      ? [listed[0]!, listed[1]!, listed[2]!, listed[3] ?? 255]
      : channels > 2
        ? [byte(0), byte(1), byte(2), channels > 3 ? byte(3) : 255]
        : [byte(0), byte(0), byte(0), channels > 1 ? byte(1) : 255]
    // What shines through lies on white.
    const over = (value: number) => Math.round((value * alpha + 255 * (255 - alpha)) / 255)
    rgba.set([over(red), over(green), over(blue), 255], 4 * at)
  }
  return { width, height, data: rgba }
}

/** A PNG holds no more than its size says: what would swell beyond is never unpacked. */
function demandInflated(bytes: Uint8Array, view: DataView, width: number, height: number): void {
  const packed: Uint8Array[] = []
  for (let at = 8; at + 8 <= bytes.length; at += 12 + view.getUint32(at))
    if (ascii(bytes, at + 4, at + 8) === 'IDAT')
      packed.push(bytes.subarray(at + 8, at + 8 + view.getUint32(at)))
  // Eight bytes a pixel at most; interlaced rows have a few more bytes of their own.
  const maxOutputLength = 8 * width * height + 16 * (height + width) + 1024
  try {
    inflateSync(Buffer.concat(packed), { maxOutputLength })
  } catch {
    throw new PictureError(DAMAGED)
  }
}
