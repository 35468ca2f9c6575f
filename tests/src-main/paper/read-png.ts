/** Reads a PNG of 8 bits a channel, not interlaced (PNG specification, third edition, 7 and 9). */
import { inflateSync } from 'node:zlib'

export interface Pixels {
  readonly width: number
  readonly height: number
  /** "#rrggbb", and how opaque it is (0 to 255). */
  at(x: number, y: number): { readonly colour: string; readonly alpha: number }
}

const CHANNELS: Readonly<Record<number, number>> = { 2: 3, 6: 4 }

function paeth(a: number, b: number, c: number): number {
  const [pa, pb, pc] = [Math.abs(b - c), Math.abs(a - c), Math.abs(a + b - 2 * c)]
  if (pa <= pb && pa <= pc) return a
  return pb <= pc ? b : c
}

export function readPng(bytes: Uint8Array): Pixels {
  const file = Buffer.from(bytes)
  if (file.toString('latin1', 0, 8) !== '\u0089PNG\r\n\u001a\n') throw new Error('no PNG')
  const parts: Buffer[] = []
  let [width, height, channels] = [0, 0, 0]
  for (let at = 8; at < file.length;) {
    const length = file.readUInt32BE(at)
    const kind = file.toString('latin1', at + 4, at + 8)
    const body = file.subarray(at + 8, at + 8 + length)
    if (kind === 'IHDR') {
      ;[width, height] = [body.readUInt32BE(0), body.readUInt32BE(4)]
      channels = CHANNELS[body[9]!] ?? 0
      if (body[8] !== 8 || channels === 0 || body[12] !== 0) throw new Error('another kind of PNG')
    }
    if (kind === 'IDAT') parts.push(body)
    at += length + 12
  }
  const raw = inflateSync(Buffer.concat(parts))
  const stride = width * channels
  const rows = Buffer.alloc(stride * height)
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)]!
    for (let i = 0; i < stride; i++) {
      const [left, up] = [
        i >= channels ? rows[y * stride + i - channels]! : 0,
        y > 0 ? rows[(y - 1) * stride + i]! : 0,
      ]
      const corner = y > 0 && i >= channels ? rows[(y - 1) * stride + i - channels]! : 0
      const guess = [0, left, up, (left + up) >> 1, paeth(left, up, corner)][filter]!
      rows[y * stride + i] = raw[y * (stride + 1) + 1 + i]! + guess
    }
  }
  return {
    width,
    height,
    at: (x, y) => {
      const from = (Math.round(y) * width + Math.round(x)) * channels
      const colour = `#${rows.toString('hex', from, from + 3)}`
      return { colour, alpha: channels === 4 ? rows[from + 3]! : 255 }
    },
  }
}
