/** One embedded type face: measures and prints words, and writes the subset of the glyphs that were printed. */
import { deflateSync } from 'node:zlib'
import { PDFHexString, PDFName, PDFString } from 'pdf-lib'
import type { PDFContext, PDFRef } from 'pdf-lib'
import type { Letters, ShapedGlyph, Word } from './letters'

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
  private readonly subset
  /** Glyph id in the subset → glyph, in the order of first use. */
  private readonly printed = new Map<number, ShapedGlyph>()
  /** The insides of TJ arrays by the words that they print. */
  private readonly codes = new Map<Word, string>()

  constructor(
    private readonly letters: Letters,
    /** Name of the face among a page's resources. */
    readonly resource: string,
  ) {
    this.subset = letters.font.createSubset()
  }

  private *pieces(text: string): Generator<Word> {
    for (const piece of piecesOf(text)) yield this.letters.word(piece)
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
      const word = this.letters.word(piece)
      const outline = word.outline()
      if (outline !== '') yield { text: piece, x, outline }
      x += word.width
    }
  }

  private encode(word: Word): string {
    let code = '<'
    word.glyphs.forEach((glyph, i) => {
      // The types say boolean; the library answers with the glyph's id in the subset.
      const id = this.subset.includeGlyph(this.letters.font.getGlyph(glyph.id)) as unknown as number
      if (!this.printed.has(id)) this.printed.set(id, glyph)
      const kern = word.kerns[i]!
      code += hex(id) + (kern !== 0 ? `>${kern}<` : '')
    })
    return (code + '>').replace(/<>/g, '')
  }

  /** The inside of a TJ array that prints the text; its glyphs join the subset. */
  print(text: string): string {
    let code = ''
    for (const word of this.pieces(text)) {
      const known = this.codes.get(word) ?? this.encode(word)
      this.codes.set(word, known)
      code += known
    }
    return code.replace(/></g, '')
  }

  get used(): boolean {
    return this.printed.size > 0
  }

  /** Writes the face into a file: a composite font with glyph ids as codes (ISO 32000-1, 9.7). */
  embed(context: PDFContext): PDFRef {
    const { font, perMille } = this.letters
    const scaled = (value: number): number => Math.round(value * perMille)
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
        W: codes.flatMap(([id, glyph]) => [id, [scaled(glyph.advance)]]),
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
function toUnicode(codes: readonly (readonly [number, ShapedGlyph])[]): string {
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
