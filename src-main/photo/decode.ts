/** Pictures as cameras and scanners keep them → pixels, upright. What cannot be read is refused in one line. */
import { inflateSync } from 'node:zlib'
import type { Picture } from '../../src-core/photo/picture'
import {
  bareboned,
  damaged,
  demandFewScans,
  demandSize,
  jpegHeader,
  LARGEST_PICTURE,
  MOST_PIXELS,
  pictureKind,
  PictureError,
  webpHeader,
} from '../../src-core/photo/picture-file'
import { decodeWith } from './codecs'
import { orientationOf, uprightOf } from './orientation'

export { LARGEST_PICTURE, PictureError }

/** Decodes a picture. Throws a `PictureError` where it is damaged, too large, or of another kind. */
export async function decodePicture(bytes: Uint8Array): Promise<Picture> {
  try {
    const kind = pictureKind(bytes)
    if (kind === 'png') return await pngPicture(bytes)
    const { width, height, exif, inks } = kind === 'jpeg' ? jpegHeader(bytes) : webpHeader(bytes)
    const orientation = exif ? orientationOf(bytes.subarray(exif.from, exif.to)) : 1
    demandSize(width, height)
    if (inks) throw new PictureError('is a JPEG in printing inks (CMYK): save it in RGB first')
    if (kind === 'jpeg') demandFewScans(bytes)
    const picture = await decodeWith(kind, bytes)
    if (!picture || picture.width * picture.height > MOST_PIXELS) throw damaged()
    return uprightOf(kind === 'webp' ? onWhite(picture) : picture, orientation)
  } catch (error) {
    throw error instanceof PictureError ? error : damaged()
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

async function pngPicture(bytes: Uint8Array): Promise<Picture> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const [width, height] = [view.getUint32(16), view.getUint32(20)]
  demandSize(width, height)
  demandInflated(bytes, view, width, height)
  const { decode } = await import('fast-png')
  const { data, channels, depth, palette } = decode(bareboned(bytes))
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
    throw damaged()
  }
}

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to))
