/** The picture that a motif was measured from, as a project keeps it where that was wished: a small JPEG, as text. */
import { PHOTO_CHARACTERS } from '../../shared-types/project'
import type { KeptPhoto, Motif } from '../../shared-types/project'
import { demandReadable, jpegHeader } from './picture-file'

/** Pixels along its longer side, from the first that is tried on: until it is small enough. Enough to see stitches by. */
export const KEPT_PIXELS = [1600, 1280, 960, 720, 480] as const
/** How much of the picture its JPEG keeps, of 100. */
export const KEPT_QUALITY = 82

const PREFIX = 'data:image/jpeg;base64,'
const BASE64 = /^[A-Za-z0-9+/]+={0,2}$/

export interface KeptPicture {
  /** A data URL. */
  readonly address: string
  readonly width: number
  readonly height: number
}

/** Looked at once: the same project is asked again with every key. */
const read = new WeakMap<KeptPhoto, KeptPicture | null>()

/** The picture that is kept with a motif; null where none is, or it is none that is shown. */
export function keptPicture({ photo }: Pick<Motif, 'photo'>): KeptPicture | null {
  if (!photo) return null
  const known = read.get(photo)
  if (known !== undefined) return known
  const kept = readPicture(photo.picture)
  read.set(photo, kept)
  return kept
}

function readPicture(address: string | undefined): KeptPicture | null {
  if (!address || address.length > PHOTO_CHARACTERS || !address.startsWith(PREFIX)) return null
  const coded = address.slice(PREFIX.length)
  if (!BASE64.test(coded) || coded.length % 4 !== 0) return null
  try {
    const bytes = Uint8Array.from(atob(coded), (letter) => letter.charCodeAt(0))
    demandReadable(bytes)
    const { width, height, exif } = jpegHeader(bytes)
    // Whatever else calls itself one was not kept by this program: neither its size nor what it says besides is known.
    return exif || Math.max(width, height) > KEPT_PIXELS[0] ? null : { address, width, height }
  } catch {
    return null
  }
}

/** A JPEG of so few bytes as a project keeps it; null where it has too many. */
export function photoOf(jpeg: Uint8Array, sheet: string): KeptPhoto | null {
  let letters = ''
  for (let at = 0; at < jpeg.length; at += 8192)
    letters += String.fromCharCode(...jpeg.subarray(at, at + 8192))
  const picture = PREFIX + btoa(letters)
  return picture.length > PHOTO_CHARACTERS ? null : { picture, sheet }
}

/** The bytes of a picture that is kept. */
export const bytesOf = ({ address }: KeptPicture): Uint8Array =>
  Uint8Array.from(atob(address.slice(PREFIX.length)), (letter) => letter.charCodeAt(0))
