/**
 * The drawing of the page as SVG, its long rows of equal things as numbers: the script puts them back. A thousand
 * motifs are a third as large this way.
 */
import type { Figure, FigureItem, FigureSymbol, Path, TextItem, UseItem } from '../../src-core/figures/figure'
import { MM_PER_POINT } from '../../src-core/figures/figure'
import { SvgWriter, symbolNames, writeParts } from '../paper/svg'

/** A symbol by its number, or a text in one of the styles, at a place in mm. */
type Placed =
  | readonly [symbol: number, x: number, y: number]
  | readonly [style: number, x: number, y: number, text: string]

export interface Runs {
  /** Attributes of texts. */
  readonly styles: readonly Readonly<Record<string, string | number>>[]
  /** What stands in the place of `<g data-run="i">`. */
  readonly runs: readonly (readonly Placed[])[]
}

/** Decimals of mm: at the most that a phone zooms to it shows no more. */
const PLACES = 1

/** So many things in a row are worth it. */
const LONG = 8

const hundredth = (value: number): number => Math.round(value * 100) / 100

type Repeated = UseItem | TextItem

/** Whether it is a text, or a symbol that is moved only. */
function isRepeated(item: FigureItem): item is Repeated {
  if (item.kind === 'text') return true
  if (item.kind !== 'use') return false
  const [a, b, c, d] = item.matrix
  return a === 1 && b === 0 && c === 0 && d === 1
}

class RunWriter extends SvgWriter {
  readonly runs: Placed[][] = []
  readonly styles: Record<string, string | number>[] = []
  private readonly numbers: ReadonlyMap<FigureSymbol, number>
  private readonly styleNumbers = new Map<string, number>()

  constructor(names: ReadonlyMap<FigureSymbol, string>) {
    super(names, null)
    this.numbers = new Map([...names.keys()].map((symbol, i) => [symbol, i + 1]))
  }

  protected override places(path: Path): number {
    return Math.min(super.places(path), PLACES)
  }

  override items(items: readonly FigureItem[]): string {
    const lines: string[] = []
    let from = 0
    while (from < items.length) {
      let to = from
      while (to < items.length && isRepeated(items[to]!)) to++
      const run = items.slice(from, to).filter(isRepeated)
      if (run.length >= LONG) {
        lines.push(`<g data-run="${this.runs.length}"></g>`)
        this.runs.push(run.map((item) => this.placed(item)))
      } else lines.push(...run.map((item) => this.item(item)))
      if (to < items.length) lines.push(this.item(items[to]!))
      from = to + 1
    }
    return lines.join('\n')
  }

  private placed(item: Repeated): Placed {
    if (item.kind === 'text') return [this.style(item), hundredth(item.x), hundredth(item.y), item.text]
    return [this.numbers.get(item.symbol)!, hundredth(item.matrix[4]), hundredth(item.matrix[5])]
  }

  private style(item: TextItem): number {
    const style = {
      'font-size': hundredth(item.size * MM_PER_POINT),
      'text-anchor': item.anchor,
      fill: item.colour,
      ...(item.weight === 'bold' && { 'font-weight': 600 }),
    }
    const key = JSON.stringify(style)
    const known = this.styleNumbers.get(key) ?? this.styles.push(style) - 1
    this.styleNumbers.set(key, known)
    return known
  }
}

/** The drawing in parts. */
export function writeDrawing(figure: Figure): {
  readonly definitions: readonly string[]
  readonly items: string
  readonly runs: Runs
} {
  const names = symbolNames(figure)
  const writer = new RunWriter(names)
  const { definitions, items } = writeParts(figure, names, writer)
  return { definitions, items, runs: { runs: writer.runs, styles: writer.styles } }
}
