/** SVG as PNG. Text must be outlines already: no face is at hand here. */
import { initWasm, Resvg } from '@resvg/resvg-wasm'
import { packageFile } from '../package-file'

const READY = Symbol.for('petalyard.resvg')

// Kept with the process and not with this module: a second copy of this module must not begin it again.
const inProcess = globalThis as typeof globalThis & { [READY]?: Promise<void> }

/** The picture of an SVG, so many pixels across; what it leaves free stays transparent. */
export async function svgToPng(svg: string, width: number): Promise<Uint8Array> {
  // It may be done but once in a process.
  inProcess[READY] ??= initWasm(packageFile('paper', 'index_bg.wasm'))
  await inProcess[READY]
  const drawing = new Resvg(svg, { fitTo: { mode: 'width', value: width } })
  try {
    const image = drawing.render()
    // A copy: what it gives lies in memory that is freed with it.
    const bytes = image.asPng().slice()
    image.free()
    drawing.free()
    return bytes
  } catch (error) {
    // What fell over while it drew cannot be freed any more: that would hide why.
    throw new Error('it cannot be drawn', { cause: error })
  }
}
