/** A type face as its file has it, parsed once, and the words that were shaped with it, whatever they are set in. */
import { create } from 'fontkit'
import type { Font, Glyph } from 'fontkit'
import { legible } from './legible'

export interface ShapedGlyph {
  readonly id: number
  /** What it stands for. */
  readonly codePoints: readonly number[]
  /** In units of the face. */
  readonly advance: number
}

export interface Word {
  readonly glyphs: readonly ShapedGlyph[]
  /** How much nearer than its own width each glyph's successor stands, in thousandths of the type size. */
  readonly kerns: readonly number[]
  /** Width in thousandths of the type size. */
  readonly width: number
  /** Its glyphs as one path, in thousandths of the type size, y up; made when the word is first drawn. */
  readonly outline: () => string
}

/** Far more than the words of a large map; what comes after them begins anew, so that they never fill the memory. */
const MOST_WORDS = 20_000

/** Numbers of more than two figures. */
const NUMBER = /^[0-9]{3,}$/

function open(bytes: Uint8Array): Font {
  const font = create(bytes as Buffer)
  if ('fonts' in font) throw new Error('a font collection cannot be embedded')
  return font
}

export class Letters {
  /** For subsets. Writing one touches glyphs outside of any word, which shaping must not meet. */
  readonly font: Font
  private readonly shaping: Font
  private readonly words = new Map<string, Word>()
  readonly perMille: number

  /** Reads a TrueType file. */
  constructor(bytes: Uint8Array) {
    this.font = open(bytes)
    this.shaping = open(bytes)
    this.perMille = 1000 / this.font.unitsPerEm
  }

  /** Shaped words are kept: tables repeat the same few hundred words thousands of times, and so do other files. */
  word(text: string): Word {
    const known = this.words.get(text)
    if (known) return known
    const word = (NUMBER.test(text) ? this.number(text) : null) ?? this.shape(legible(text))
    if (this.words.size >= MOST_WORDS) this.words.clear()
    this.words.set(text, word)
    return word
  }

  /**
   * A number from its figures, and from how each two of them stand beside each other: a large map has thousands of
   * numbers, none of them twice. Null where two figures are set as something else.
   */
  private number(text: string): Word | null {
    const figures = [...text].map((figure) => this.word(figure))
    const pairs = figures.slice(1).map((_, i) => this.word(text.slice(i, i + 2)))
    const isPlain = pairs.every(
      ({ glyphs }, i) =>
        glyphs.length === 2 &&
        glyphs[0]!.id === figures[i]!.glyphs[0]!.id &&
        glyphs[1]!.id === figures[i + 1]!.glyphs[0]!.id,
    )
    if (!isPlain || figures.some(({ glyphs }) => glyphs.length !== 1)) return null
    const last = figures.at(-1)!
    return {
      glyphs: figures.flatMap(({ glyphs }) => glyphs),
      kerns: [...pairs.map(({ kerns }) => kerns[0]!), ...last.kerns],
      width: pairs.reduce((sum, pair, i) => sum + pair.width - figures[i + 1]!.width, last.width),
      outline: () => this.shape(text).outline(),
    }
  }

  private shape(text: string): Word {
    const { glyphs, positions } = this.shaping.layout(text)
    const characters = [...text]
    let width = 0
    const kerns = glyphs.map((glyph, i) => {
      const advance = positions[i]?.xAdvance ?? glyph.advanceWidth
      width += advance * this.perMille
      return Math.round((glyph.advanceWidth - advance) * this.perMille)
    })
    // A glyph remembers the character that it was first made for, in whichever file: what stands here counts.
    const codePoints = (glyph: Glyph, i: number) =>
      characters.length === glyphs.length ? [characters[i]!.codePointAt(0)!] : glyph.codePoints
    let outline: string | null = null
    return {
      glyphs: glyphs.map((glyph, i) => ({
        id: glyph.id,
        codePoints: codePoints(glyph, i),
        advance: glyph.advanceWidth,
      })),
      kerns,
      width,
      outline: () => (outline ??= this.outline(glyphs, kerns)),
    }
  }

  private outline(glyphs: readonly Glyph[], kerns: readonly number[]): string {
    let data = ''
    let x = 0
    glyphs.forEach((glyph, i) => {
      data += glyph.path.scale(this.perMille, this.perMille).translate(x, 0).toSVG()
      x += glyph.advanceWidth * this.perMille - kerns[i]!
    })
    return data
  }
}
