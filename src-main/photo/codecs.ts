/**
 * The codecs of JPEG (mozjpeg) and WebP (libwebp) as WebAssembly: several times as fast as in JavaScript, and what a
 * hostile picture does to them stays within their own memory.
 */
import type { Picture } from '../../src-core/photo/picture'
import { packageFile } from '../package-file'

const WASM = {
  jpeg: 'mozjpeg_dec.wasm',
  webp: 'webp_dec.wasm',
} as const

/** What begins them, each loaded only where a picture needs it. */
const BEGIN = {
  jpeg: async () => (await import('@jsquash/jpeg/codec/dec/mozjpeg_dec.js')).default,
  webp: async () => (await import('@jsquash/webp/codec/dec/webp_dec.js')).default,
}

interface Codec {
  decode(bytes: Uint8Array, turnUpright?: boolean): Picture | null
}

/** What the decoders make their answer with; browsers have it, Node does not. */
class Pixels implements Picture {
  constructor(
    readonly data: Uint8ClampedArray,
    readonly width: number,
    readonly height: number,
  ) {}
}

type Begin<Of> = (options: object) => Promise<Of>

/** How one of them begins: from its file beside the program, its complaints kept and not printed. */
function beginning(file: string, complaints: string[] = []): object {
  const module = new WebAssembly.Module(packageFile('photo', file))
  return {
    noInitialRun: true,
    instantiateWasm: (imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void) => {
      const instance = new WebAssembly.Instance(module, imports)
      done(instance)
      return instance.exports
    },
    print: () => undefined,
    printErr: (line: string) => complaints.push(line),
  }
}

interface Encoder {
  encode(data: Uint8Array, width: number, height: number, options: object): Uint8Array
}

/** A picture as JPEG, its quality of 100; of a camera it says nothing. */
export async function encodeJpeg({ width, height, data }: Picture, quality: number): Promise<Uint8Array> {
  const { default: initEncoder } = await import('@jsquash/jpeg/codec/enc/mozjpeg_enc.js')
  const { defaultOptions } = await import('@jsquash/jpeg/meta.js')
  const codec = await (initEncoder as unknown as Begin<Encoder>)(beginning('mozjpeg_enc.wasm'))
  // Its memory goes with it.
  return codec.encode(new Uint8Array(data), width, height, { ...defaultOptions, quality }).slice()
}

/**
 * Decodes with a decoder of its own for each picture: its memory goes with it. Null where it cannot be read, or where
 * the decoder complains of it: a picture that ends too early would come out half grey.
 */
export async function decodeWith(kind: keyof typeof WASM, bytes: Uint8Array): Promise<Picture | null> {
  const complaints: string[] = []
  const begin = (await BEGIN[kind]()) as Begin<Codec>
  const codec = await begin(beginning(WASM[kind], complaints))
  const before = Object.getOwnPropertyDescriptor(globalThis, 'ImageData')
  if (!before) Object.defineProperty(globalThis, 'ImageData', { value: Pixels, configurable: true })
  try {
    const picture = kind === 'jpeg' ? codec.decode(bytes, false) : codec.decode(bytes)
    if (!picture || complaints.length > 0) return null
    const { width, height, data } = picture
    return { width, height, data: new Uint8Array(data.buffer, data.byteOffset, data.byteLength) }
  } catch {
    return null
  } finally {
    if (!before) Reflect.deleteProperty(globalThis, 'ImageData')
  }
}
