/** One embedded type face: shapes words, measures them, and writes the subset of the glyphs that were printed. */
import { deflateSync } from 'node:zlib'
import { create } from 'fontkit'
import type { Font, Glyph } from 'fontkit'
import { PDFHexString, PDFName, PDFString } from 'pdf-lib'
import type { PDFContext, PDFRef } from 'pdf-lib'
import { legible } from './legible'

interface Word {
  readonly glyphs: readonly Glyph[]
  /** How much nearer than its own width each glyph's successor stands, in thousandths of the type size. */
  readonly kerns: readonly number[]
  /** Width in thousandths of the type size. */
  readonly width: number
  /** Inside of a TJ array, made when the word is first printed. */
  code: string | null
  /** Its glyphs as one path, made when the word is first drawn. */
  outline: string | null
}

/** A word as it is drawn. */
interface DrawnWord {
  readonly text: string
  /** Where it begins, in thousandths of the type size from the begin of its text. */
  readonly x: number
  /** Path data in thousandths of the type size, y up; empty where nothing is inked. */
  readonly outline: string
}

/** Words and the spaces between them. */
function* piecesOf(text: string): Generator<string> {
  let from = 0
  for (let at = text.indexOf(' '); at >= 0; at = text.indexOf(' ', from)) {
    if (at > from) yield text.slice(from, at)
    yield ' '
    from = at + 1
  }
  if (from < text.length) yield text.slice(from)
}

const hex = (value: number): string => value.toString(16).padStart(4, '0').toUpperCase()

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

export class Face {
  private readonly words = new Map<string, Word>()
  private readonly subset
  /** Glyph id in the subset → glyph, in the order of first use. */
  private readonly printed = new Map<number, Glyph>()
  private readonly perMille: number

  constructor(
    private readonly font: Font,
    /** Name of the face among a page's resources. */
    readonly resource: string,
  ) {
    this.subset = font.createSubset()
    this.perMille = 1000 / font.unitsPerEm
  }

  /** Reads a TrueType file. */
  static read(bytes: Uint8Array, resource: string): Face {
    const font = create(bytes as Buffer)
    if ('fonts' in font) throw new Error('a font collection cannot be embedded')
    return new Face(font, resource)
  }

  private shape(text: string): Word {
    const shaped = this.font.layout(legible(text))
    let width = 0
    const kerns = shaped.glyphs.map((glyph, i) => {
      const advance = shaped.positions[i]?.xAdvance ?? glyph.advanceWidth
      width += advance * this.perMille
      return Math.round((glyph.advanceWidth - advance) * this.perMille)
    })
    return { glyphs: shaped.glyphs, kerns, width, code: null, outline: null }
  }

  /** Shaped words are kept: tables repeat the same few hundred words thousands of times. */
  private word(text: string): Word {
    const known = this.words.get(text)
    if (known) return known
    const word = this.shape(text)
    this.words.set(text, word)
    return word
  }

  private *pieces(text: string): Generator<Word> {
    for (const piece of piecesOf(text)) yield this.word(piece)
  }

  /** Width of a text in thousandths of the type size. */
  measure(text: string): number {
    let width = 0
    for (const word of this.pieces(text)) width += word.width
    return width
  }

  /** The words of a text as outlines, each where `print` puts it. */
  *draw(text: string): Generator<DrawnWord> {
    let x = 0
    for (const piece of piecesOf(text)) {
      const word = this.word(piece)
      const outline = (word.outline ??= this.outline(word))
      if (outline !== '') yield { text: piece, x, outline }
      x += word.width
    }
  }

  private outline(word: Word): string {
    let data = ''
    let x = 0
    word.glyphs.forEach((glyph, i) => {
      data += glyph.path.scale(this.perMille, this.perMille).translate(x, 0).toSVG()
      x += glyph.advanceWidth * this.perMille - word.kerns[i]!
    })
    return data
  }

  private encode(word: Word): string {
    let code = '<'
    word.glyphs.forEach((glyph, i) => {
      // The types say boolean; the library answers with the glyph's id in the subset.
      const id = this.subset.includeGlyph(glyph) as unknown as number
      if (!this.printed.has(id)) this.printed.set(id, glyph)
      const kern = word.kerns[i]!
      code += hex(id) + (kern !== 0 ? `>${kern}<` : '')
    })
    return (code + '>').replace(/<>/g, '')
  }

  /** The inside of a TJ array that prints the text; its glyphs join the subset. */
  print(text: string): string {
    let code = ''
    for (const word of this.pieces(text)) code += word.code ?? (word.code = this.encode(word))
    return code.replace(/></g, '')
  }

  get used(): boolean {
    return this.printed.size > 0
  }

  /** Writes the face into a file: a composite font with glyph ids as codes (ISO 32000-1, 9.7). */
  embed(context: PDFContext): PDFRef {
    const { font } = this
    const scaled = (value: number): number => Math.round(value * this.perMille)
    const name = `${subsetTag(this.printed.keys())}${subsetTag([...this.printed.values()].map((g) => g.id))}`
    const base = PDFName.of(`${name.slice(0, 6)}+${font.postscriptName}`)
    const program = this.subset.encode()
    const file = context.register(
      context.stream(deflateSync(program), { Filter: 'FlateDecode', Length1: program.length }),
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
        FontFile2: file,
      }),
    )
    const codes = [...this.printed].sort(([a], [b]) => a - b)
    const descendant = context.register(
      context.obj({
        Type: 'Font',
        Subtype: 'CIDFontType2',
        BaseFont: base,
        CIDSystemInfo: { Registry: PDFString.of('Adobe'), Ordering: PDFString.of('Identity'), Supplement: 0 },
        FontDescriptor: descriptor,
        DW: 500,
        W: codes.flatMap(([id, glyph]) => [id, [scaled(glyph.advanceWidth)]]),
        CIDToGIDMap: 'Identity',
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

/** The map from codes back to text, so that the sheet can be searched and read aloud (ISO 32000-1, 9.10.3). */
function toUnicode(codes: readonly (readonly [number, Glyph])[]): string {
  const lines = codes.map(([id, glyph]) => {
    const text = String.fromCodePoint(...glyph.codePoints)
    return `<${hex(id)}> ${PDFHexString.fromText(text).toString().replace('FEFF', '')}`
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
