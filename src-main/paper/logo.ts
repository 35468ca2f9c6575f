/** The logo of a house style as it is printed: in black ink alone it is grey. */
import { decode, encode } from 'fast-png'
import { HOUSE_LIMITS, LOGO_PIXELS } from '../../shared-types/house'
import type { House } from '../../shared-types/house'
import type { SheetStyle } from '../../shared-types/project'
import { drawingTrouble } from '../../src-core/geometry/drawing-cost'
import type { DrawingTrouble } from '../../src-core/geometry/drawing-cost'
import { bareboned } from '../../src-core/photo/picture-file'
import { svgToPng } from './png'

export interface Logo {
  /** A PNG, as base64. */
  readonly png: string
  /** Pixels. */
  readonly width: number
  readonly height: number
}

/** Pixels of the largest logo; one of 400,000 characters could unpack to far more (our own choice). */
const PIXELS_AT_MOST = 4_000_000
const PREFIX = 'data:image/png;base64,'

/** Weights of red, green and blue in how light a colour is (ITU-R BT.709). */
const LIGHT = [0.2126, 0.7152, 0.0722] as const

/** Pixels of a PNG by its header (W3C PNG, 11.2.2), which stands in the first 24 bytes. */
function sizeOf(bytes: Buffer): { width: number; height: number } | null {
  if (bytes.length < 24 || bytes.toString('latin1', 12, 16) !== 'IHDR') return null
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) }
}

/** The picture of a house style; null without one, and where it cannot be read. */
export function logoOf({ logo }: Pick<House, 'logo'>, style: SheetStyle): Logo | null {
  if (!logo.startsWith(PREFIX)) return null
  const bytes = Buffer.from(logo.slice(PREFIX.length), 'base64')
  const size = sizeOf(bytes)
  if (!size || !(size.width * size.height > 0) || size.width * size.height > PIXELS_AT_MOST) return null
  try {
    const picture = decode(bareboned(bytes))
    // Logos are taken in with eight bits for each channel (`normalLogo`, and the window's canvas).
    if (picture.depth !== 8 || picture.palette) return null
    const printed = style === 'colour' ? bytes : Buffer.from(encode(greyOf(picture)))
    return { png: printed.toString('base64'), ...size }
  } catch {
    return null
  }
}

/** Greys with as much cover as the colours had. */
function greyOf({ width, height, channels, data }: ReturnType<typeof decode>) {
  const grey = new Uint8Array(width * height * 2)
  const isColour = channels >= 3
  const covers = channels % 2 === 0
  for (let i = 0; i < width * height; i++) {
    const at = i * channels
    grey[2 * i] = isColour
      ? Math.round(LIGHT[0] * data[at]! + LIGHT[1] * data[at + 1]! + LIGHT[2] * data[at + 2]!)
      : data[at]!
    grey[2 * i + 1] = covers ? data[at + channels - 1]! : 255
  }
  return { width, height, channels: 2, depth: 8 as const, data: grey }
}

/**
 * A logo file as the house style keeps it: PNG or SVG drawn anew, so that nothing of the file but its looks is kept.
 * Nothing that it names is fetched; letters in an SVG have to be outlines. Throws where it is neither.
 */
export async function normalLogo(bytes: Uint8Array): Promise<string> {
  const size = sizeOf(Buffer.from(bytes))
  if (size && size.width * size.height > PIXELS_AT_MOST) throw new Error('it has too many pixels')
  const svg = size ? framed(bytes, size) : new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  if (!/<svg[\s>]/.test(svg)) throw new Error('it is neither a PNG nor an SVG')
  const trouble = size ? null : drawingTrouble(svg)
  if (trouble) throw new Error(TROUBLES[trouble])
  const png = await svgToPng(svg, size ? Math.min(size.width, LOGO_PIXELS) : LOGO_PIXELS)
  const drawn = sizeOf(Buffer.from(png))
  if (!drawn || drawn.width * drawn.height > PIXELS_AT_MOST) throw new Error('it is far higher than wide')
  const logo = PREFIX + Buffer.from(png).toString('base64')
  if (logo.length > HOUSE_LIMITS.logo) throw new Error('its picture takes more than 300 kB')
  return logo
}

/** Why a drawing is not drawn, for people. */
const TROUBLES: Readonly<Record<DrawingTrouble, string>> = {
  'no-xml': 'it cannot be read to its end',
  entities: 'it declares entities, which are not read',
  attributes: 'an element of it has too many attributes',
  'web-page': 'it has a web page in it',
  'drawing-within': 'it has a drawing in it as a picture',
  'too-deep': 'its groups are too deep in each other',
  effect:
    'it has an effect that takes too long to draw (feTurbulence, feMorphology or feConvolveMatrix); save it as a PNG',
  'too-much': 'it has too many parts, or too many effects, to be drawn',
}

const framed = (bytes: Uint8Array, { width, height }: { width: number; height: number }): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" href="${PREFIX}${Buffer.from(bytes).toString('base64')}"/></svg>`
