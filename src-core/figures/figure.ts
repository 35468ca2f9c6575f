/**
 * Draw lists: what the window, the PDF and the SVG draw from. Pure data, lengths in mm, y down; text sizes in
 * points at the printed size. A symbol is drawn once and used many times.
 */
import type { Furniture, Part } from './part'

export type Colour = string

export type PathSegment =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z']

export type Path = readonly PathSegment[]

/** [a, b, c, d, e, f]: x′ = a·x + c·y + e, y′ = b·x + d·y + f. */
export type Matrix = readonly [number, number, number, number, number, number]

export interface Paint {
  readonly fill?: Colour
  readonly stroke?: Colour
  /** Line width in mm; LINE_WIDTH unless told otherwise. */
  readonly width?: number
  /** Lengths of dash and gap in mm. */
  readonly dash?: readonly number[]
  readonly cap?: 'butt' | 'round'
}

export type TextAnchor = 'start' | 'middle' | 'end'
export type TextWeight = 'regular' | 'bold'

/** Where an item of a page belongs in what is told; what has no part is only seen: rules, grounds, marks. */
interface Told {
  readonly part?: Part | Furniture
}

export interface PathItem extends Told {
  readonly kind: 'path'
  readonly path: Path
  readonly paint: Paint
}

export interface TextItem extends Told {
  readonly kind: 'text'
  readonly text: string
  /** Where the baseline starts, has its middle or ends. */
  readonly x: number
  readonly y: number
  /** Points. */
  readonly size: number
  readonly anchor: TextAnchor
  readonly weight: TextWeight
  readonly colour: Colour
}

export interface UseItem extends Told {
  readonly kind: 'use'
  readonly symbol: FigureSymbol
  readonly matrix: Matrix
}

/** Where a group has a part, it is all of that part. */
export interface GroupItem extends Told {
  readonly kind: 'group'
  readonly matrix?: Matrix
  readonly clip?: Path
  readonly items: readonly FigureItem[]
}

/** A picture of pixels, only ever on paper: a logo. */
export interface ImageItem extends Told {
  readonly kind: 'image'
  /** A PNG, as base64. */
  readonly png: string
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

export type FigureItem = PathItem | TextItem | UseItem | GroupItem | ImageItem

export interface Bounds {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/** Something drawn once and placed many times, in coordinates of its own. Equal symbols are one object. */
export interface FigureSymbol {
  readonly id: string
  /** Everything that the items ink, half the line widths included. */
  readonly bounds: Bounds
  readonly items: readonly FigureItem[]
}

export interface Figure {
  readonly width: number
  readonly height: number
  readonly items: readonly FigureItem[]
}

/** A plan as a figure: `scale` printed mm for each mm, its top left at (`left`, `top`). */
export interface DrawnPlan extends Figure {
  readonly scale: number
  readonly left: number
  readonly top: number
}

/** 1 pt = 1/72 in (ISO 32000-1, 8.3.2.3). */
export const MM_PER_POINT = 25.4 / 72

/** Of lines without a width of their own, in mm. */
export const LINE_WIDTH = 0.25

/** Printed ink and paper: grey values print with black ink alone. */
export const INK = '#000000'
export const PAPER = '#ffffff'
export const QUIET_INK = '#555555'

/** Width of a text in mm; the renderer that sets the type knows it. */
export interface MeasureText {
  (text: string, size: number, weight: TextWeight): number
  /** Set in fonts for scripts that are written without spaces, or from right to left. */
  readonly manyScripts?: true
}

/** Every symbol that a figure uses, each once, in the order of first use. */
export function figureSymbols(figure: Pick<Figure, 'items'>): FigureSymbol[] {
  const found = new Set<FigureSymbol>()
  const visit = (items: readonly FigureItem[]): void => {
    for (const item of items) {
      if (item.kind === 'group') visit(item.items)
      if (item.kind === 'use' && !found.has(item.symbol)) {
        visit(item.symbol.items)
        found.add(item.symbol)
      }
    }
  }
  visit(figure.items)
  return [...found]
}

export const translation = (x: number, y: number): Matrix => [1, 0, 0, 1, x, y]

/** A path item. */
export const drawPath = (path: Path, paint: Paint): PathItem => ({ kind: 'path', path, paint })

/** A line over a wider one that keeps it apart from what lies under it. */
export const hemmedLine = (
  path: Path,
  paint: Paint & { width: number },
  colour: Colour,
  more: number,
): PathItem[] => [
  drawPath(path, { ...paint, stroke: colour, width: paint.width + more }),
  drawPath(path, paint),
]

/** A use of a symbol, moved to (x, y). */
export const useAt = (symbol: FigureSymbol, x: number, y: number): UseItem => ({
  kind: 'use',
  symbol,
  matrix: translation(x, y),
})

/** Which share of a text stands before the place that it is anchored at. */
export const SHARE_BEFORE: Readonly<Record<TextAnchor, number>> = { start: 0, middle: 0.5, end: 1 }

/** A line of text; regular, from its start and in ink unless said otherwise. */
export function drawText(
  text: string,
  x: number,
  y: number,
  size: number,
  style: { anchor?: TextAnchor; weight?: TextWeight; colour?: Colour } = {},
): TextItem {
  const { anchor = 'start', weight = 'regular', colour = INK } = style
  return { kind: 'text', text, x, y, size, anchor, weight, colour }
}

/** A figure inside another figure, its top left at (x, y). */
export const placeFigure = (figure: Figure, x: number, y: number): GroupItem => ({
  kind: 'group',
  matrix: translation(x, y),
  items: figure.items,
})
