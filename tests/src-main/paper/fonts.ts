/** Fonts for the tests of other scripts (SIL Open Font License), and what is done to their files. */
import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { drawText } from '../../../src-core/figures/figure'
import type { Figure, FigureItem } from '../../../src-core/figures/figure'
import { partOf } from '../../../src-core/figures/part'
import { ChosenFont } from '../../../src-main/paper/pdf/fonts/chosen'
import { readFaces } from '../../../src-main/paper/pdf/faces'
import { writePdf } from '../../../src-main/paper/pdf/file'
import { DATE } from './projects'

const FILES = {
  hebrew: 'noto-sans-hebrew/400Regular/NotoSansHebrew_400Regular.ttf',
  hebrewBold: 'noto-sans-hebrew/700Bold/NotoSansHebrew_700Bold.ttf',
  arabic: 'noto-naskh-arabic/400Regular/NotoNaskhArabic_400Regular.ttf',
  thai: 'noto-sans-thai/400Regular/NotoSansThai_400Regular.ttf',
  devanagari: 'noto-sans-devanagari/400Regular/NotoSansDevanagari_400Regular.ttf',
  japanese: 'yomogi/400Regular/Yomogi_400Regular.ttf',
} as const

export type FontName = keyof typeof FILES
export const FONT_NAMES = Object.keys(FILES) as FontName[]

const require = createRequire(import.meta.url)
export const fontFile = (name: FontName): string => require.resolve(`@expo-google-fonts/${FILES[name]}`)
export const fontBytes = (name: FontName): Buffer => readFileSync(fontFile(name))

const chosen = new Map<FontName, ChosenFont>()

/** The fonts, each read once. */
export const fontsOf = (...names: readonly FontName[]): ChosenFont[] =>
  names.map((name) => {
    const font = chosen.get(name) ?? ChosenFont.read(fontBytes(name))
    chosen.set(name, font)
    return font
  })

/** Where a table of a font begins in its file, and where its record does (OpenType, table directory). */
function tableOf(bytes: Buffer, tag: string): { readonly record: number; readonly begin: number } {
  const count = bytes.readUInt16BE(4)
  for (let i = 0; i < count; i++) {
    const record = 12 + 16 * i
    if (bytes.toString('latin1', record, record + 4) === tag)
      return { record, begin: bytes.readUInt32BE(record + 8) }
  }
  throw new Error(`no table ${tag}`)
}

/** A copy of a font with other licence bits (OS/2 fsType). */
export function licensed(bytes: Buffer, bits: number): Buffer {
  const copy = Buffer.from(bytes)
  copy.writeUInt16BE(bits, tableOf(copy, 'OS/2').begin + 8)
  return copy
}

/** A copy with a table called something else, so that it is missing. */
export function without(bytes: Buffer, tag: string): Buffer {
  const copy = Buffer.from(bytes)
  copy.write('xxxx', tableOf(copy, tag).record, 'latin1')
  return copy
}

/** A copy with another table in place of one: it stands behind all others. */
export function replaced(bytes: Buffer, tag: string, table: Buffer): Buffer {
  const copy = Buffer.concat([bytes, Buffer.alloc((4 - (bytes.length % 4)) % 4), table])
  const { record } = tableOf(copy, tag)
  copy.writeUInt32BE(copy.length - table.length, record + 8)
  copy.writeUInt32BE(table.length, record + 12)
  return copy
}

/** A collection of fonts (OpenType, font collections). */
export function collection(fonts: readonly Buffer[]): Buffer {
  const header = Buffer.alloc(12 + 4 * fonts.length)
  header.write('ttcf', 0, 'latin1')
  header.writeUInt32BE(0x00010000, 4)
  header.writeUInt32BE(fonts.length, 8)
  const parts: Buffer[] = [header]
  let offset = header.length
  fonts.forEach((font, i) => {
    const copy = Buffer.concat([font, Buffer.alloc((4 - (font.length % 4)) % 4)])
    header.writeUInt32BE(offset, 12 + 4 * i)
    for (let table = 0; table < copy.readUInt16BE(4); table++) {
      const at = 12 + 16 * table + 8
      copy.writeUInt32BE(copy.readUInt32BE(at) + offset, at)
    }
    parts.push(copy)
    offset += copy.length
  })
  return Buffer.concat(parts)
}

/** Lines of text below each other, 12 mm apart, from 20 mm left and 20 mm down, in 20 points. */
export function pageOf(lines: readonly string[]): Figure {
  const part = partOf('P')
  const items = lines.map((line, i): FigureItem => ({ ...drawText(line, 20, 20 + 12 * i, 20), part }))
  return { width: 210, height: 20 + 12 * lines.length, items }
}

/** The page as a PDF, with these fonts. */
export const pdfOf = (lines: readonly string[], fonts: readonly ChosenFont[]): Promise<Uint8Array> =>
  writePdf(
    [{ figure: pageOf(lines), label: '1', bookmarks: [] }],
    { title: 't', author: '', subject: '', language: 'en', date: DATE, producer: 'p' },
    { faces: readFaces(fonts) },
  )
