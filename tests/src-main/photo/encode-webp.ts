/** A picture as WebP: Node has no encoder of its own. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import encodeWebp, { init as initWebp } from '@jsquash/webp/encode.js'

let begun: Promise<unknown> | undefined

export async function webpOf(width: number, height: number, pixels: Uint8Array): Promise<Uint8Array> {
  const wasm = createRequire(import.meta.url).resolve('@jsquash/webp/codec/enc/webp_enc.wasm')
  begun ??= initWebp(new WebAssembly.Module(readFileSync(wasm)))
  await begun
  const picture = { width, height, data: new Uint8ClampedArray(pixels) }
  return new Uint8Array(await encodeWebp(picture as ImageData, { quality: 95 }))
}
