/** A type face in one file: measures, prints and draws words; what it lacks is set in fonts that a person chose. */
import type { Font } from 'fontkit'
import { isPlain } from '../../../src-core/letters/printable'
import type { ChosenFont, SetRun } from './fonts/chosen'
import { mirrored, setLine } from './fonts/typeset'
import { EmbeddedFont, NOTHING } from './embedded'
import type { Letters, Word } from './letters'

/** A word as it is drawn. */
interface DrawnWord {
  /** The same for the same outline. */
  readonly key: string
  /** Where it begins, in thousandths of the type size from the begin of its text. */
  readonly x: number
  /** Path data in thousandths of the type size, y up; empty where nothing is inked. */
  readonly outline: string
}

/** Glyphs on one height, as they are printed. */
interface Shown {
  /** Above the baseline, in thousandths of the type size. */
  readonly rise: number
  /** The inside of a TJ array. */
  readonly code: string
}

/** What is printed at once. */
export interface PrintedRun {
  readonly resource: string
  /** Where it begins, in thousandths of the type size from the begin of its text. */
  readonly x: number
  readonly shown: readonly Shown[]
}

/** Runs with the text that a reader is told in the place of their glyphs; null where these say it by themselves. */
export interface PrintedSpan {
  readonly text: string | null
  readonly runs: readonly PrintedRun[]
}

/** A piece of a line with its place. */
interface SetPiece {
  readonly text: string
  readonly isRightToLeft: boolean
  /** What is printed with the face of paper; the run of a chosen font otherwise. */
  readonly set: { readonly text: string } | { readonly font: ChosenFont; readonly run: SetRun }
  readonly x: number
}

interface SetLine {
  readonly pieces: readonly SetPiece[]
  readonly width: number
}

/** Far more than the lines of a large map that hold other scripts. */
const MOST_LINES = 20_000

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

/** The chosen fonts of one file: each is embedded once, whatever weight it stands in for. */
export class OtherFonts {
  private readonly embedded: ReadonlyMap<ChosenFont, EmbeddedFont>

  constructor(readonly chosen: readonly ChosenFont[]) {
    this.embedded = new Map(chosen.map((font, i) => [font, new EmbeddedFont(font.font, `F${i}`)]))
  }

  get all(): readonly EmbeddedFont[] {
    return [...this.embedded.values()]
  }

  of(font: ChosenFont): EmbeddedFont {
    return this.embedded.get(font)!
  }
}

export class Face {
  readonly embedded: EmbeddedFont
  /** The insides of TJ arrays by the words that they print. */
  private readonly codes = new Map<Word, string>()
  private readonly lines = new Map<string, SetLine>()

  constructor(
    private readonly letters: Letters,
    resource: string,
    private readonly isBold: boolean,
    private readonly others: OtherFonts,
  ) {
    this.embedded = new EmbeddedFont(letters.font, resource)
  }

  private *pieces(text: string): Generator<Word> {
    for (const piece of piecesOf(text)) yield this.letters.word(piece)
  }

  /** Whether the face of paper sets it alone, one word after the other. */
  private isOwn(text: string): boolean {
    return this.others.chosen.length === 0 || isPlain(text)
  }

  private ownWidth(text: string): number {
    let width = 0
    for (const word of this.pieces(text)) width += word.width
    return width
  }

  /** Width of a text in thousandths of the type size. */
  measure(text: string): number {
    return this.isOwn(text) ? this.ownWidth(text) : this.line(text).width
  }

  /** Sets a line that takes more than the face of paper. Lines are kept. */
  private line(text: string): SetLine {
    const known = this.lines.get(text)
    if (known) return known
    const { pieces, order } = setLine(text, this.others.chosen, this.isBold)
    const set = pieces.map(({ text: read, font, isRightToLeft }): SetPiece['set'] => {
      if (font) return { font, run: font.run(read, isRightToLeft ? 'rtl' : 'ltr') }
      return { text: isRightToLeft ? mirrored(read) : read }
    })
    const places: number[] = []
    let width = 0
    for (const i of order) {
      const piece = set[i]!
      places[i] = width
      width += 'run' in piece ? piece.run.width : this.ownWidth(piece.text)
    }
    const line = {
      width,
      pieces: pieces.map(({ text: read, isRightToLeft }, i) => ({
        text: read,
        isRightToLeft,
        set: set[i]!,
        x: places[i]!,
      })),
    }
    if (this.lines.size >= MOST_LINES) this.lines.clear()
    this.lines.set(text, line)
    return line
  }

  /** The words of a text as outlines, each where `print` puts it. */
  *draw(text: string): Generator<DrawnWord> {
    if (this.isOwn(text)) yield* this.drawOwn(text, 0)
    else
      for (const { set, text: read, isRightToLeft, x } of this.line(text).pieces) {
        if ('text' in set) yield* this.drawOwn(set.text, x)
        else {
          const outline = set.run.outline()
          const font = this.others.of(set.font).resource
          if (outline !== '') yield { key: `${font} ${isRightToLeft ? '<' : '>'} ${read}`, x, outline }
        }
      }
  }

  private *drawOwn(text: string, from: number): Generator<DrawnWord> {
    let x = from
    for (const piece of piecesOf(text)) {
      const word = this.letters.word(piece)
      const outline = word.outline()
      if (outline !== '') yield { key: piece, x, outline }
      x += word.width
    }
  }

  private encode(word: Word): string {
    let code = '<'
    word.glyphs.forEach((glyph, i) => {
      const text = String.fromCodePoint(...glyph.codePoints)
      code += this.embedded.include(glyph.id, text, glyph.advance).code
      const kern = word.kerns[i]!
      if (kern !== 0) code += `>${kern}<`
    })
    return (code + '>').replace(/<>/g, '')
  }

  private printOwn(text: string): string {
    let code = ''
    for (const word of this.pieces(text)) {
      const known = this.codes.get(word) ?? this.encode(word)
      this.codes.set(word, known)
      code += known
    }
    return code.replace(/></g, '')
  }

  /** What prints the text, in the order in which it is read; its glyphs join the subsets. */
  print(text: string): readonly PrintedSpan[] {
    const own = (printed: string, x: number): PrintedRun => ({
      resource: this.embedded.resource,
      x,
      shown: [{ rise: 0, code: this.printOwn(printed) }],
    })
    if (this.isOwn(text)) return [{ text: null, runs: [own(text, 0)] }]
    const spans: { text: string | null; runs: PrintedRun[]; isRightToLeft: boolean }[] = []
    for (const { text: read, isRightToLeft, set, x } of this.line(text).pieces) {
      const printed = 'text' in set ? { run: own(set.text, x), text: set.text } : this.printRun(set, x)
      const last = spans.at(-1)
      if (isRightToLeft && last?.isRightToLeft) {
        last.text = `${last.text ?? ''}${read}`
        last.runs.push(printed.run)
      } else {
        const told = isRightToLeft || printed.text !== read ? read : null
        spans.push({ text: told, runs: [printed.run], isRightToLeft })
      }
    }
    return spans
  }

  /** The glyphs of a chosen font; `text` is what their codes stand for, in their order. */
  private printRun(
    { font, run }: { readonly font: ChosenFont; readonly run: SetRun },
    x: number,
  ): { readonly run: PrintedRun; readonly text: string } {
    const embedded = this.others.of(font)
    const shown: Shown[] = []
    let told = ''
    let code = ''
    let pen = 0
    let rise = 0
    const finish = (): void => {
      if (code !== '') shown.push({ rise, code: code.replace(/></g, '') })
      code = ''
    }
    for (const glyph of run.glyphs) {
      const height = Math.round(glyph.y)
      if (height !== rise) finish()
      rise = height
      // Places count from the begin of the run, so that nothing adds up.
      const back = Math.round(pen - glyph.x)
      const advance = advanceOf(font.font, glyph.id)
      const taken = embedded.include(glyph.id, glyph.text, advance)
      told += taken.text || NOTHING
      code += `${back !== 0 ? back : ''}<${taken.code}>`
      pen += embedded.widthOf(advance) - back
    }
    finish()
    return { run: { resource: embedded.resource, x, shown }, text: told }
  }
}

const advanceOf = (font: Font, id: number): number => font.getGlyph(id).advanceWidth
