/** The file of a picture before anything of it is decoded: its kind, its size, and whether it will be read at all. */

/** Bytes of a file, pixels of a picture: phones make up to some 50 million; memory is bounded by it. */
export const LARGEST_PICTURE = 60_000_000
export const MOST_PIXELS = 50_000_000

/**
 * Pixels of a side. Panoramas of phones have up to some 20,000; a strip of a million pixels, one high, keeps whoever
 * decodes and measures it busy for minutes.
 */
export const LONGEST_SIDE = 32_000
/** Passes of a progressive JPEG, over the whole picture each. Encoders make ten or so, and never more than some thirty. */
export const MOST_SCANS = 64

/** Why a picture cannot be read, to stand behind its name: "is a WebP picture: …". */
export class PictureError extends Error {}

const ascii = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode(...bytes.subarray(from, to))

const SAVE_AS = 'save it as PNG or JPEG first'

/** What is said of a picture that its decoder fell over. */
export const damaged = (): PictureError => new PictureError('is damaged or cut off')

/** What the first bytes say; throws where it is none of the kinds that are read. */
export function pictureKind(bytes: Uint8Array): 'png' | 'jpeg' | 'webp' {
  if (bytes.length >= 8 && bytes[0] === 0x89 && ascii(bytes, 1, 4) === 'PNG') return 'png'
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpeg'
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return 'webp'
  if (ascii(bytes, 0, 3) === 'GIF') throw new PictureError(`is a GIF picture: ${SAVE_AS}`)
  if (ascii(bytes, 4, 8) === 'ftyp') throw new PictureError(`is a HEIC, AVIF or video file: ${SAVE_AS}`)
  if (/^\s*(<\?xml|<svg|<!--)/.test(ascii(bytes, 0, 200)))
    throw new PictureError('is a drawing (SVG), not a photo')
  throw new PictureError('is no PNG, JPEG or WebP picture')
}

/** Throws where a picture of so many pixels is not read. */
export function demandSize(width: number, height: number): void {
  if (width < 1 || height < 1) throw new PictureError('says that it has no pixels')
  if (width * height > MOST_PIXELS)
    throw new PictureError(
      `has ${width} × ${height} pixels; at most ${MOST_PIXELS / 1_000_000} million are read`,
    )
  if (Math.max(width, height) > LONGEST_SIDE)
    throw new PictureError(`has ${width} × ${height} pixels; at most ${LONGEST_SIDE} along a side are read`)
}

/** What is known of a picture before it is decoded; `exif` is where in the file its camera speaks of it (TIFF). */
interface PictureHeader {
  readonly width: number
  readonly height: number
  readonly exif: { readonly from: number; readonly to: number } | null
  readonly inks?: boolean
}

/** Size and Exif from the chunks of a WebP (RFC 9649, sections 2.5 to 2.7). */
export function webpHeader(bytes: Uint8Array): PictureHeader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let size: { width: number; height: number } | null = null
  let exif: PictureHeader['exif'] = null
  if (view.getUint32(4, true) + 8 > bytes.length) throw damaged()
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
    } else if (name === 'EXIF')
      exif = { from: ascii(bytes, from, from + 4) === 'Exif' ? from + 6 : from, to: from + length }
    at = from + length + (length & 1)
  }
  if (!size) throw damaged()
  return { ...size, exif }
}

/** Size (ITU-T T.81, B.2.2) and Exif in the segments of a JPEG before the picture. */
export function jpegHeader(bytes: Uint8Array): PictureHeader {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let exif: PictureHeader['exif'] = null
  for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff;) {
    const marker = bytes[at + 1]!
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (isFrame) {
      // The inks of a print (cyan, magenta, yellow and black): only some programs can show them.
      const inks = bytes[at + 9] === 4
      return { width: view.getUint16(at + 7), height: view.getUint16(at + 5), exif, ...(inks && { inks }) }
    }
    const length = marker === 0xff ? 0 : view.getUint16(at + 2)
    if (marker === 0xe1 && ascii(bytes, at + 4, at + 8) === 'Exif')
      exif = { from: at + 10, to: at + 2 + length }
    at += marker === 0xff ? 1 : 2 + length
  }
  throw damaged()
}

/** Throws where a JPEG would be gone over so often that nobody waits for it (markers: T.81, B.1.1). */
export function demandFewScans(bytes: Uint8Array): void {
  let scans = 0
  for (let at = 2; at + 1 < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue
    const marker = bytes[at + 1]!
    if (marker === 0xd9) return
    if (marker === 0xda && ++scans > MOST_SCANS)
      throw new PictureError(`is a JPEG of more than ${MOST_SCANS} passes: save it anew first`)
    // Fill bytes, a byte of the picture itself, and markers without a segment of their own.
    const isAlone = marker === 0xff || marker <= 0x01 || (marker >= 0xd0 && marker <= 0xd8)
    if (!isAlone) at += 1 + ((bytes[at + 2] ?? 0) << 8) + (bytes[at + 3] ?? 0)
    else if (marker !== 0xff) at++
  }
}

/** What a PNG is decoded from. All else (profiles, texts, times) may be packed, and swell to any size. */
const NEEDED = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND'])

/** A PNG without what its pixels do not need, so that nothing else of it is unpacked. */
export function bareboned(bytes: Uint8Array): Uint8Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const bare = new Uint8Array(bytes.length)
  bare.set(bytes.subarray(0, 8))
  let end = 8
  for (let at = 8; at + 12 <= bytes.length;) {
    const next = at + 12 + view.getUint32(at)
    if (NEEDED.has(ascii(bytes, at + 4, at + 8))) {
      const chunk = bytes.subarray(at, next)
      bare.set(chunk, end)
      end += chunk.length
    }
    at = next
  }
  return bare.subarray(0, end)
}

/** Throws where a picture is not read: of another kind, too large, cut off before its end. Nothing is decoded. */
export function demandReadable(bytes: Uint8Array): void {
  try {
    demandWhole(bytes)
  } catch (error) {
    // A length that leads out of the file.
    throw error instanceof PictureError ? error : damaged()
  }
}

function demandWhole(bytes: Uint8Array): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const kind = pictureKind(bytes)
  if (kind === 'png') {
    demandSize(view.getUint32(16), view.getUint32(20))
    let last = ''
    for (let at = 8; at + 12 <= bytes.length && last !== 'IEND'; at += 12 + view.getUint32(at))
      last = ascii(bytes, at + 4, at + 8)
    if (last !== 'IEND') throw damaged()
    return
  }
  const { width, height } = kind === 'webp' ? webpHeader(bytes) : jpegHeader(bytes)
  demandSize(width, height)
  if (kind === 'webp') return
  demandFewScans(bytes)
  // The end of the picture (T.81, B.1.1.3); some cameras write a film or a second picture behind it.
  for (let at = bytes.length - 2; at > 2; at--) if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return
  throw damaged()
}
