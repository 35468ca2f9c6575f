/** A font as one file embeds it: the glyphs that were printed, and the text that each stands for. */
import { deflateSync } from 'node:zlib'
import type { Font } from 'fontkit'
import { PDFHexString, PDFName, PDFString } from 'pdf-lib'
import type { PDFContext, PDFRef } from 'pdf-lib'

interface Printed {
  /** In the font. */
  readonly id: number
  readonly text: string
  /** In units of the font. */
  readonly advance: number
}

export const hex = (value: number): string => value.toString(16).padStart(4, '0').toUpperCase()

/** Six capitals that stand for the set of glyphs (ISO 32000-1, 9.6.4), by the FNV-1a hash. */
function subsetTag(glyphs: Iterable<number>): string {
  let hash = 2166136261
  for (const id of glyphs) hash = Math.imul(hash ^ id, 16777619) >>> 0
  let tag = ''
  for (let i = 0; i < 6; i++) {
    tag += String.fromCharCode(65 + (hash % 26))
    hash = Math.floor(hash / 26) + 7919 * (i + 1)
  }
  return tag
}

/** Stands for a glyph whose text another one says: a code without any text is not allowed (ISO 14289-1, 7.21.7). */
export const NOTHING = '\u200b'

export class EmbeddedFont {
  private readonly subset
  /** Glyph id in the subset → glyph, in the order of first use. */
  private readonly printed = new Map<number, Printed>()
  private readonly perMille: number

  constructor(
    private readonly font: Font,
    /** Name of the face among a page's resources. */
    readonly resource: string,
  ) {
    this.subset = font.createSubset()
    this.perMille = 1000 / font.unitsPerEm
  }

  /** Takes a glyph in: its code, and the text that the code stands for, which is that of its first use. */
  include(id: number, text: string, advance: number): { readonly code: string; readonly text: string } {
    // The types say boolean; the library answers with the glyph's id in the subset.
    const code = this.subset.includeGlyph(this.font.getGlyph(id)) as unknown as number
    const known = this.printed.get(code)
    if (!known) this.printed.set(code, { id, text, advance })
    return { code: hex(code), text: known?.text ?? text }
  }

  get used(): boolean {
    return this.printed.size > 0
  }

  /** Width of a glyph as the file says it, in thousandths of the type size. */
  widthOf(advance: number): number {
    return Math.round(advance * this.perMille)
  }

  /** Writes the font into a file: a composite font with glyph ids as codes (ISO 32000-1, 9.7). */
  embed(context: PDFContext): PDFRef {
    const { font } = this
    const scaled = (value: number): number => this.widthOf(value)
    const name = `${subsetTag(this.printed.keys())}${subsetTag([...this.printed.values()].map((g) => g.id))}`
    const base = PDFName.of(`${name.slice(0, 6)}+${nameInFile(font)}`)
    const program = this.subset.encode()
    const isCompact = 'CFF ' in (font as unknown as { directory: { tables: object } }).directory.tables
    const file = context.register(
      context.stream(
        deflateSync(program),
        isCompact
          ? { Filter: 'FlateDecode', Subtype: 'CIDFontType0C' }
          : { Filter: 'FlateDecode', Length1: program.length },
      ),
    )
    const descriptor = context.register(
      context.obj({
        Type: 'FontDescriptor',
        FontName: base,
        Flags: 4,
        FontBBox: [font.bbox.minX, font.bbox.minY, font.bbox.maxX, font.bbox.maxY].map(scaled),
        ItalicAngle: 0,
        Ascent: scaled(font.ascent),
        Descent: scaled(font.descent),
        CapHeight: scaled(font.capHeight),
        StemV: 80,
        [isCompact ? 'FontFile3' : 'FontFile2']: file,
      }),
    )
    const codes = [...this.printed].sort(([a], [b]) => a - b)
    const descendant = context.register(
      context.obj({
        Type: 'Font',
        Subtype: isCompact ? 'CIDFontType0' : 'CIDFontType2',
        BaseFont: base,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        FontDescriptor: descriptor,
        DW: 500,
        W: codes.flatMap(([id, glyph]) => [id, [scaled(glyph.advance)]]),
        ...(isCompact ? {} : { CIDToGIDMap: 'Identity' }),
      }),
    )
    const unicode = context.register(
      context.stream(deflateSync(Buffer.from(toUnicode(codes), 'latin1')), { Filter: 'FlateDecode' }),
    )
    return context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'Type0',
        BaseFont: base,
        Encoding: 'Identity-H',
        DescendantFonts: [descendant],
        ToUnicode: unicode,
      }),
    )
  }
}

/** Names of fonts are ASCII without signs that a PDF reads (OpenType, name 6); some fonts have none, or another. */
function nameInFile({ postscriptName }: Font): string {
  const name = typeof postscriptName === 'string' ? postscriptName.replace(/[^A-Za-z0-9._-]/g, '') : ''
  return name.slice(0, 63) || 'Font'
}

/** The map from codes back to text, so that the sheet can be searched and read aloud (ISO 32000-1, 9.10.3). */
function toUnicode(codes: readonly (readonly [number, Printed])[]): string {
  const lines = codes.map(([id, { text }]) => {
    return `<${hex(id)}> ${PDFHexString.fromText(text || NOTHING)
      .toString()
      .replace('FEFF', '')}`
  })
  const blocks: string[] = []
  for (let i = 0; i < lines.length; i += 100) {
    const block = lines.slice(i, i + 100)
    blocks.push(`${block.length} beginbfchar\n${block.join('\n')}\nendbfchar`)
  }
  return [
    '/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap',
    '/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def',
    '/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def',
    '1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange',
    ...blocks,
    'endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend',
  ].join('\n')
}
