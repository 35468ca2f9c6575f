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
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const [u, v] = orientation > 4 ? [y, x] : [x, y]
      const left = orientation === 2 || orientation === 3 || orientation === 7 || orientation === 8
      const top = orientation === 3 || orientation === 4 || orientation === 6 || orientation === 7
      const column = left ? width - 1 - u : u
      const row = top ? height - 1 - v : v
      upright[y * columns + x] = from[row * width + column]!
    }
  return { width: columns, height: rows, data: new Uint8Array(upright.buffer) }
}
