/** How the camera was held: the orientation that a JPEG says of itself (Exif 2.3, tag 0x0112). */
import type { Picture } from '../../src-core/photo/picture'

const TAG = 0x0112

/** From the TIFF header on: 1 to 8; 1, upright, where nothing is said or what is said cannot be read. */
export function orientationOf(exif: Uint8Array): number {
  const view = new DataView(exif.buffer, exif.byteOffset, exif.byteLength)
  try {
    const little = view.getUint16(0) === 0x4949
    const first = view.getUint32(4, little)
    const entries = view.getUint16(first, little)
    for (let entry = 0; entry < entries; entry++) {
      const at = first + 2 + 12 * entry
      if (view.getUint16(at, little) !== TAG) continue
      const value = view.getUint16(at + 8, little)
      return value >= 1 && value <= 8 ? value : 1
    }
  } catch {
    // An offset that leads out of the block.
  }
  return 1
}

/** The same picture, upright. From 5 on, width and height change places. */
export function uprightOf(picture: Picture, orientation: number): Picture {
  if (orientation === 1) return picture
  const { width, height, data } = picture
  const [columns, rows] = orientation > 4 ? [height, width] : [width, height]
  const from = new Uint32Array(data.buffer, data.byteOffset, width * height)
  const upright = new Uint32Array(width * height)
  const isTurned = orientation > 4
  const left = orientation === 2 || orientation === 3 || orientation === 7 || orientation === 8
  const top = orientation === 3 || orientation === 4 || orientation === 6 || orientation === 7
  // How far apart, as it is kept, two places are that lie beside each other, and over each other, upright.
  const [along, down] = [left ? -1 : 1, top ? -width : width]
  const [right, below] = isTurned ? [down, along] : [along, down]
  const first = (left ? width - 1 : 0) + (top ? (height - 1) * width : 0)
  // In bands, so that a turned picture is read in pieces of rows that stay at hand.
  const BAND = 32
  for (let band = 0; band < columns; band += BAND) {
    const end = Math.min(columns, band + BAND)
    for (let y = 0; y < rows; y++)
      for (let x = band, at = first + x * right + y * below; x < end; x++, at += right)
        upright[y * columns + x] = from[at]!
  }
  return { width: columns, height: rows, data: new Uint8Array(upright.buffer) }
}
