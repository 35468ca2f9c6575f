/** A draw list as SVG, in millimetres, with the same symbols placed many times. */
import type { Figure, FigureItem, FigureSymbol, Matrix, Paint, Path } from '../../src-core/figures/figure'
import { figureSymbols, MM_PER_POINT } from '../../src-core/figures/figure'

const number = (value: number): string => String(Math.round(value * 1000) / 1000 || 0)
const fine = (value: number): string => String(Math.round(value * 1e6) / 1e6 || 0)

/** Characters that XML 1.0 does not allow, lone surrogates included. */
// eslint-disable-next-line no-control-regex
const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Cs}/gu

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** Text as it may stand in XML, also inside an attribute. */
const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '\ufffd').replace(/[&<>"]/g, (character) => ESCAPES[character]!)

const pathData = (path: Path): string =>
  path.map(([command, ...values]) => command + values.map(number).join(' ')).join('')

const matrixData = (matrix: Matrix): string =>
  `matrix(${matrix.map((value, i) => (i < 4 ? fine(value) : number(value))).join(' ')})`

function paintData(paint: Paint): string {
  const parts = [`fill="${paint.fill ?? 'none'}"`]
  if (paint.stroke) {
    parts.push(`stroke="${paint.stroke}"`, `stroke-width="${number(paint.width ?? 0.25)}"`)
    if (paint.dash?.length) parts.push(`stroke-dasharray="${paint.dash.map(number).join(' ')}"`)
    if (paint.cap === 'round') parts.push('stroke-linecap="round"')
  }
  return parts.join(' ')
}

class SvgWriter {
  private clips = 0

  constructor(private readonly names: ReadonlyMap<FigureSymbol, string>) {}

  items(items: readonly FigureItem[]): string {
    return items.map((item) => this.item(item)).join('\n')
  }

  private item(item: FigureItem): string {
    switch (item.kind) {
      case 'path':
        return `<path d="${pathData(item.path)}" ${paintData(item.paint)}/>`
      case 'text': {
        const weight = item.weight === 'bold' ? ' font-weight="600"' : ''
        const anchor = item.anchor === 'start' ? '' : ` text-anchor="${item.anchor}"`
        const size = fine(item.size * MM_PER_POINT)
        return `<text x="${number(item.x)}" y="${number(item.y)}" font-size="${size}"${weight}${anchor} fill="${item.colour}">${escaped(item.text)}</text>`
      }
      case 'use':
        return `<use href="#${this.names.get(item.symbol)!}" transform="${matrixData(item.matrix)}"/>`
      case 'group': {
        const transform = item.matrix ? ` transform="${matrixData(item.matrix)}"` : ''
        if (!item.clip) return `<g${transform}>\n${this.items(item.items)}\n</g>`
        const id = `clip-${++this.clips}`
        return `<clipPath id="${id}"><path d="${pathData(item.clip)}"/></clipPath>\n<g${transform}><g clip-path="url(#${id})">\n${this.items(item.items)}\n</g></g>`
      }
    }
  }
}

/**
 * The figure as an SVG document. The text face is named, not embedded: where Source Sans 3 is missing the next
 * sans serif stands in for it. `title` is read aloud in the place of the drawing.
 */
export function figureToSvg(figure: Figure, title = ''): string {
  const symbols = figureSymbols(figure)
  const names = new Map(symbols.map((symbol, i) => [symbol, `symbol-${i + 1}`]))
  const writer = new SvgWriter(names)
  const definitions = symbols.map(
    (symbol) => `<g id="${names.get(symbol)!}">\n${writer.items(symbol.items)}\n</g>`,
  )
  const size = `width="${number(figure.width)}mm" height="${number(figure.height)}mm"`
  const box = `viewBox="0 0 ${number(figure.width)} ${number(figure.height)}"`
  const face = 'font-family="\'Source Sans 3\', \'Source Sans Pro\', sans-serif" stroke-linejoin="round"'
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${box} ${face}>`,
    ...(title === '' ? [] : [`<title>${escaped(title)}</title>`]),
    ...(definitions.length > 0 ? [`<defs>\n${definitions.join('\n')}\n</defs>`] : []),
    writer.items(figure.items),
    '</svg>\n',
  ].join('\n')
}
