/**
 * Shaping by HarfBuzz: which glyphs stand for a run of text in one font, and where. Its WebAssembly is called as it is:
 * the wrapper that comes with it waits for itself while it is loaded, which CommonJS cannot.
 */
import { packageFile } from '../../../package-file'

interface HarfBuzz {
  readonly memory: WebAssembly.Memory
  __wasm_call_ctors(): void
  malloc(bytes: number): number
  free(pointer: number): void
  hb_blob_create(data: number, length: number, mode: number, user: number, destroy: number): number
  hb_face_create(blob: number, index: number): number
  hb_font_create(face: number): number
  hb_buffer_create(): number
  hb_buffer_destroy(buffer: number): void
  hb_buffer_add_utf16(buffer: number, text: number, length: number, from: number, count: number): void
  hb_buffer_set_direction(buffer: number, direction: number): void
  hb_buffer_set_cluster_level(buffer: number, level: number): void
  hb_buffer_guess_segment_properties(buffer: number): void
  hb_shape(font: number, buffer: number, features: number, count: number): void
  hb_buffer_get_length(buffer: number): number
  hb_buffer_get_glyph_infos(buffer: number, length: number): number
  hb_buffer_get_glyph_positions(buffer: number, length: number): number
}

/** Of HarfBuzz's hb-common.h and hb-buffer.h. */
const READONLY = 1
const DIRECTION = { ltr: 4, rtl: 5 } as const
/** Every glyph knows its own character, marks too. */
const BY_CHARACTER = 2
/** Both hb_glyph_info_t and hb_glyph_position_t are five words of four bytes. */
const RECORD = 20
const PAGE = 65_536

export interface Placed {
  readonly id: number
  /** Index of the first UTF-16 unit that it stands for. */
  readonly cluster: number
  /** In units of the font. */
  readonly advance: number
  readonly dx: number
  readonly dy: number
}

let compiled: WebAssembly.Module | null = null

function start(): HarfBuzz {
  compiled ??= new WebAssembly.Module(packageFile('paper', 'harfbuzz.wasm'))
  let memory: WebAssembly.Memory | null = null
  const fail = (): never => {
    throw new Error('the shaping of text failed')
  }
  const grow = (size: number): number => {
    const wanted = Math.ceil(((size >>> 0) - memory!.buffer.byteLength) / PAGE)
    try {
      if (wanted > 0) memory!.grow(wanted)
      return 1
    } catch {
      return 0
    }
  }
  const { exports } = new WebAssembly.Instance(compiled, {
    wasi_snapshot_preview1: { proc_exit: fail },
    env: {
      _emscripten_runtime_keepalive_clear: () => undefined,
      _abort_js: fail,
      _setitimer_js: () => 0,
      emscripten_resize_heap: grow,
    },
  })
  const harfbuzz = exports as unknown as HarfBuzz
  memory = harfbuzz.memory
  harfbuzz.__wasm_call_ctors()
  return harfbuzz
}

/** One face of a font, ready to shape. It has a memory of its own, which goes with it. */
export class Shaper {
  private readonly harfbuzz = start()
  private readonly font: number

  /** `face` from 0. */
  constructor(bytes: Uint8Array, face: number) {
    const { harfbuzz } = this
    const data = harfbuzz.malloc(bytes.length)
    if (data === 0) throw new Error('there is no memory for the font')
    new Uint8Array(harfbuzz.memory.buffer).set(bytes, data)
    const blob = harfbuzz.hb_blob_create(data, bytes.length, READONLY, 0, 0)
    this.font = harfbuzz.hb_font_create(harfbuzz.hb_face_create(blob, face))
  }

  /** The glyphs of one script and direction, from left to right. */
  shape(text: string, direction: 'ltr' | 'rtl'): Placed[] {
    const { harfbuzz } = this
    const units = harfbuzz.malloc(Math.max(2, text.length * 2))
    const words = new Uint16Array(harfbuzz.memory.buffer, units, text.length)
    for (let i = 0; i < text.length; i++) words[i] = text.charCodeAt(i)
    const buffer = harfbuzz.hb_buffer_create()
    try {
      harfbuzz.hb_buffer_add_utf16(buffer, units, text.length, 0, text.length)
      harfbuzz.hb_buffer_set_direction(buffer, DIRECTION[direction])
      harfbuzz.hb_buffer_set_cluster_level(buffer, BY_CHARACTER)
      harfbuzz.hb_buffer_guess_segment_properties(buffer)
      harfbuzz.hb_shape(this.font, buffer, 0, 0)
      return this.read(buffer)
    } finally {
      harfbuzz.hb_buffer_destroy(buffer)
      harfbuzz.free(units)
    }
  }

  private read(buffer: number): Placed[] {
    const { harfbuzz } = this
    const length = harfbuzz.hb_buffer_get_length(buffer)
    const infos = harfbuzz.hb_buffer_get_glyph_infos(buffer, 0)
    const positions = harfbuzz.hb_buffer_get_glyph_positions(buffer, 0)
    // Only now: the memory may have grown, and moved.
    const view = new DataView(harfbuzz.memory.buffer)
    return Array.from({ length }, (_, i) => {
      const info = infos + i * RECORD
      const position = positions + i * RECORD
      return {
        id: view.getUint32(info, true),
        cluster: view.getUint32(info + 8, true),
        advance: view.getInt32(position, true),
        dx: view.getInt32(position + 8, true),
        dy: view.getInt32(position + 12, true),
      }
    })
  }
}
