/**
 * Icons in every size and form that a system asks for, out of the drawings: PNG, ICO for Windows, ICNS for Macs.
 * Up to 32 pixels the plain flower of the window's tab stands for the detailed one, whose stitches would blur.
 */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { join } from 'node:path'
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import { root } from './fresh-build.mjs'

export const SIZES = [16, 24, 32, 48, 64, 128, 256, 512, 1024]
const SMALL = 32
const DRAWINGS = {
  app: { large: 'packing/icons/petalyard.svg', small: 'src-renderer/icon.svg' },
  project: { large: 'packing/icons/project.svg', small: 'packing/icons/project.svg' },
}
/** Sizes in one ICO: the largest that the format can tell is 256. */
const ICO_SIZES = [16, 24, 32, 48, 64, 128, 256]
/** Kinds of picture in an ICNS that hold a PNG, with their sizes in pixels (the twofold ones are for dense screens). */
const ICNS_KINDS = [
  ...[
    ['icp4', 16],
    ['icp5', 32],
    ['icp6', 64],
    ['ic07', 128],
    ['ic08', 256],
    ['ic09', 512],
    ['ic10', 1024],
  ],
  ...[
    ['ic11', 32],
    ['ic12', 64],
    ['ic13', 256],
    ['ic14', 512],
  ],
]

/** The drawing module can be begun once in a process only: the mark is that of src-main/paper/png.ts. */
const READY = Symbol.for('petalyard.resvg')
const prepare = () =>
  (globalThis[READY] ??= initWasm(
    readFileSync(createRequire(import.meta.url).resolve('@resvg/resvg-wasm/index_bg.wasm')),
  ))

/** The icon of the `app` or of a `project` file as PNGs by their size in pixels. */
export async function iconPictures(of) {
  await prepare()
  return new Map(
    SIZES.map((size) => {
      const drawing = readFileSync(join(root, DRAWINGS[of][size <= SMALL ? 'small' : 'large']), 'utf8')
      return [
        size,
        Buffer.from(new Resvg(drawing, { fitTo: { mode: 'width', value: size } }).render().asPng()),
      ]
    }),
  )
}

/** One ICO: a header, an entry of 16 bytes for each picture, the pictures as PNG (read since Windows Vista). */
export function icoOf(pictures) {
  const chosen = ICO_SIZES.map((size) => [size, pictures.get(size)])
  const head = Buffer.alloc(6 + 16 * chosen.length)
  head.writeUInt16LE(1, 2)
  head.writeUInt16LE(chosen.length, 4)
  let offset = head.length
  chosen.forEach(([size, png], index) => {
    const at = 6 + 16 * index
    // 0 stands for 256.
    head.writeUInt8(size % 256, at)
    head.writeUInt8(size % 256, at + 1)
    head.writeUInt16LE(1, at + 4)
    head.writeUInt16LE(32, at + 6)
    head.writeUInt32LE(png.length, at + 8)
    head.writeUInt32LE(offset, at + 12)
    offset += png.length
  })
  return Buffer.concat([head, ...chosen.map(([, png]) => png)])
}

/** One ICNS: its whole length, then each picture behind its kind and length. */
export function icnsOf(pictures) {
  const chunk = (kind, body) => {
    const head = Buffer.alloc(8)
    head.write(kind, 0, 'ascii')
    head.writeUInt32BE(8 + body.length, 4)
    return Buffer.concat([head, body])
  }
  return chunk('icns', Buffer.concat(ICNS_KINDS.map(([kind, size]) => chunk(kind, pictures.get(size)))))
}
