/** A draw list as SVG, in millimetres, with the same symbols placed many times. */
import type {
  Figure,
  FigureItem,
  FigureSymbol,
  Matrix,
  Paint,
  Path,
  TextItem,
} from '../../src-core/figures/figure'
import { figureSymbols, LINE_WIDTH, MM_PER_POINT, SHARE_BEFORE } from '../../src-core/figures/figure'
import { pathData } from '../../src-core/figures/path'
import { unmarked } from '../../src-core/letters/one-line'
import type { Faces } from './pdf/faces'

const number = (value: number): string => String(Math.round(value * 1000) / 1000 || 0)
const fine = (value: number): string => String(Math.round(value * 1e6) / 1e6 || 0)

/** Segments from which on a line is told to hundredths: more makes the edge of a large blanket heavy, and no clearer. */
const LONG = 500
const placesOf = (path: Path): number => (path.length > LONG ? 2 : 3)

/**
 * Characters that XML 1.0 does not allow, lone surrogates included, or discourages (controls), and directional overrides
 * and isolates, which could disguise a name.
 */
// eslint-disable-next-line no-control-regex
const FORBIDDEN = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|\p{Cs}/gu

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Text as it may stand in XML and HTML, also inside an attribute. */
export const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"]/g, (character) => ESCAPES[character]!)

const matrixData = (matrix: Matrix): string =>
  `matrix(${matrix.map((value, i) => (i < 4 ? fine(value) : number(value))).join(' ')})`

function paintData(paint: Paint): string {
  const parts = [`fill="${paint.fill ?? 'none'}"`]
  if (paint.stroke) {
    parts.push(`stroke="${paint.stroke}"`, `stroke-width="${number(paint.width ?? LINE_WIDTH)}"`)
    if (paint.dash?.length) parts.push(`stroke-dasharray="${paint.dash.map(number).join(' ')}"`)
    if (paint.cap === 'round') parts.push('stroke-linecap="round"')
  }
  return parts.join(' ')
}

/** Writes the items of figures, one line each. */
export class SvgWriter {
  private clips = 0
  /** Words that were drawn, each once: weight and text → path data. */
  private readonly words = new Map<string, { readonly name: string; readonly outline: string }>()

  constructor(
    protected readonly names: ReadonlyMap<FigureSymbol, string>,
    private readonly faces: Faces | null,
  ) {}

  /** The outlines of all words that were drawn so far. */
  wordDefinitions(): string[] {
    return [...this.words.values()].map(({ name, outline }) => `<path id="${name}" d="${outline}"/>`)
  }

  private text(item: TextItem): string {
    if (this.faces) return this.drawnText(item, this.faces)
    const weight = item.weight === 'bold' ? ' font-weight="600"' : ''
    const anchor = item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`
    const size = fine(item.size * MM_PER_POINT)
    return `<text x="${number(item.x)}" y="${number(item.y)}" font-size="${size}"${weight}${anchor} fill="${item.colour}">${escaped(item.text)}</text>`
  }

  /** Text as the outlines of its letters: an SVG that is shown as a picture has no other faces than the system's. */
  private drawnText(item: TextItem, faces: Faces): string {
    const face = faces[item.weight]
    const scale = (item.size * MM_PER_POINT) / 1000
    const back = SHARE_BEFORE[item.anchor] * face.measure(item.text) * scale
    const words = [...face.draw(item.text)].map(({ key: word, x, outline }) => {
      const key = `${item.weight} ${word}`
      const known = this.words.get(key) ?? { name: `word-${this.words.size + 1}`, outline }
      this.words.set(key, known)
      return `<use href="#${known.name}"${x === 0 ? '' : ` x="${number(x)}"`}/>`
    })
    const transform = `matrix(${fine(scale)} 0 0 ${fine(-scale)} ${number(item.x - back)} ${number(item.y)})`
    return words.length === 0 ? '' : `<g transform="${transform}" fill="${item.colour}">${words.join('')}</g>`
  }

  items(items: readonly FigureItem[]): string {
    return items.map((item) => this.item(item)).join('\n')
  }

  /** Decimals of the mm of a path. */
  protected places(path: Path): number {
    return placesOf(path)
  }

  protected item(item: FigureItem): string {
    switch (item.kind) {
      case 'path':
        return `<path d="${pathData(item.path, this.places(item.path))}" ${paintData(item.paint)}/>`
      case 'text':
        return this.text(item)
      case 'use':
        return `<use href="#${this.names.get(item.symbol)!}" transform="${matrixData(item.matrix)}"/>`
      case 'image': {
        const box = `x="${number(item.x)}" y="${number(item.y)}" width="${number(item.width)}" height="${number(item.height)}"`
        return `<image ${box} href="data:image/png;base64,${item.png}"/>`
      }
      case 'group': {
        const transform = item.matrix ? ` transform="${matrixData(item.matrix)}"` : ''
        if (!item.clip) return `<g${transform}>\n${this.items(item.items)}\n</g>`
        const id = `clip-${++this.clips}`
        return `<clipPath id="${id}"><path d="${pathData(item.clip)}"/></clipPath>\n<g${transform}><g clip-path="url(#${id})">\n${this.items(item.items)}\n</g></g>`
      }
    }
  }
}

/** The face by its name: where Source Sans 3 is missing the next sans serif stands in for it. */
const NAMED_FACE = " font-family=\"'Source Sans 3', 'Source Sans Pro', sans-serif\""

/** What is drawn many times in a figure, by the names that uses call it by. */
export const symbolNames = (figure: Figure): ReadonlyMap<FigureSymbol, string> =>
  new Map(figureSymbols(figure).map((symbol, i) => [symbol, `symbol-${i + 1}`]))

/** The parts of a figure as SVG: what is drawn many times, and the drawing itself. */
export function writeParts(
  figure: Figure,
  names: ReadonlyMap<FigureSymbol, string>,
  writer: SvgWriter,
): { readonly definitions: readonly string[]; readonly items: string } {
  const symbols = [...names].map(([symbol, name]) => `<g id="${name}">\n${writer.items(symbol.items)}\n</g>`)
  const items = writer.items(figure.items)
  return { definitions: [...writer.wordDefinitions(), ...symbols], items }
}

/**
 * The figure as an SVG document. Without `faces` text is text, for other programs, and the face is named, not
 * embedded; with them its letters are drawn as they are printed. `title` is read aloud in the place of the
 * drawing, `description` behind it. `pixels` is its size on a screen, where it is not as large as in print.
 */
export function figureToSvg(
  figure: Figure,
  title = '',
  faces: Faces | null = null,
  description = '',
  pixels: { readonly width: number; readonly height: number } | null = null,
): string {
  const told = (text: string): string => escaped(faces && faces.others.length > 0 ? unmarked(text) : text)
  const names = symbolNames(figure)
  const { definitions, items } = writeParts(figure, names, new SvgWriter(names, faces))
  const size = pixels
    ? `width="${pixels.width}" height="${pixels.height}"`
    : `width="${number(figure.width)}mm" height="${number(figure.height)}mm"`
  const box = `viewBox="0 0 ${number(figure.width)} ${number(figure.height)}"`
  const look = `${faces ? '' : NAMED_FACE} stroke-linejoin="round"`
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${box}${look}>`,
    ...(title === '' ? [] : [`<title>${told(title)}</title>`]),
    ...(description === '' ? [] : [`<desc>${told(description)}</desc>`]),
    ...(definitions.length > 0 ? [`<defs>\n${definitions.join('\n')}\n</defs>`] : []),
    items,
    '</svg>\n',
  ].join('\n')
}
