/** The canvas as a back-end of figures, beside PDF and SVG: draw lists on a 2D context. */
import type { Point } from '../../shared-types/plan'
import { LINE_WIDTH, MM_PER_POINT } from '../../src-core/figures/figure'
import type { FigureItem, Paint, Path } from '../../src-core/figures/figure'
import type { Palette } from './palette'

/** What of a canvas is drawn with. */
export type Pen = Pick<
  CanvasRenderingContext2D,
  | 'setTransform'
  | 'transform'
  | 'fill'
  | 'stroke'
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'bezierCurveTo'
  | 'closePath'
  | 'arc'
  | 'rect'
  | 'clip'
  | 'save'
  | 'restore'
  | 'clearRect'
  | 'fillRect'
  | 'strokeRect'
  | 'fillText'
  | 'strokeText'
  | 'fillStyle'
  | 'strokeStyle'
  | 'lineWidth'
  | 'lineJoin'
  | 'lineCap'
  | 'font'
  | 'textAlign'
  | 'textBaseline'
  | 'globalAlpha'
  | 'setLineDash'
>

/** Adds a path to what a pen, or a path that is kept, traces. */
export function trace(pen: Pick<Pen, 'moveTo' | 'lineTo' | 'bezierCurveTo' | 'closePath'>, path: Path): void {
  for (const segment of path)
    if (segment[0] === 'M') pen.moveTo(segment[1], segment[2])
    else if (segment[0] === 'L') pen.lineTo(segment[1], segment[2])
    else if (segment[0] === 'Z') pen.closePath()
    else pen.bezierCurveTo(segment[1], segment[2], segment[3], segment[4], segment[5], segment[6])
}

/** So short that it shows as its round ends alone: a canvas draws no line without length. */
const NO_LENGTH = 1e-3

/** Lines without length are dots, as in PDF and SVG. */
const dotted = (path: Path): Path =>
  path.map((segment, i) => {
    const before = path[i - 1]
    const isDot =
      segment[0] === 'L' && before?.[0] === 'M' && before[1] === segment[1] && before[2] === segment[2]
    return isDot ? ['L', segment[1] + NO_LENGTH, segment[2]] : segment
  })

/** Fills and strokes a path. */
function paintPath(
  pen: Pen,
  path: Path,
  { fill, stroke, width = LINE_WIDTH, dash, cap = 'butt' }: Paint,
): void {
  pen.beginPath()
  trace(pen, cap === 'round' ? dotted(path) : path)
  if (fill) {
    pen.fillStyle = fill
    pen.fill()
  }
  // A canvas takes no width of 0 and would keep the one before.
  if (!stroke || width <= 0) return
  pen.strokeStyle = stroke
  pen.lineWidth = width
  pen.lineJoin = 'round'
  pen.lineCap = cap
  if (dash) pen.setLineDash([...dash])
  pen.stroke()
  if (dash) pen.setLineDash([])
}

/** The type of items on a canvas: its face, and the hem that keeps it readable on whatever it stands. */
export interface ScreenType extends Pick<Lettering, 'hem' | 'hemWidth'> {
  readonly face: string
}

/** The window's type, with a hem of paper: so many pixels. */
export const typeIn = ({ face, paper }: Palette, hemWidth = 3): ScreenType => ({ face, hem: paper, hemWidth })

/** Paints a draw list as the pen stands: one unit of the list is one of the pen's. */
export function paintItems(pen: Pen, items: readonly FigureItem[], type: ScreenType): void {
  for (const item of items)
    if (item.kind === 'path') paintPath(pen, item.path, item.paint)
    else if (item.kind === 'text') {
      const font = `${item.weight === 'bold' ? 600 : 400} ${item.size * MM_PER_POINT}px ${type.face}`
      const align = item.anchor === 'middle' ? 'center' : item.anchor
      write(pen, item.text, item, { ...type, font, colour: item.colour, align, baseline: 'alphabetic' })
    } else if (item.kind !== 'image') {
      pen.save()
      if (item.matrix) pen.transform(...item.matrix)
      if (item.kind === 'group' && item.clip) {
        pen.beginPath()
        trace(pen, item.clip)
        pen.clip()
      }
      paintItems(pen, item.kind === 'use' ? item.symbol.items : item.items, type)
      pen.restore()
    }
}

/** Words as they are written on a canvas: a hem in a colour of its own keeps them readable on whatever they stand. */
export interface Lettering {
  readonly font: string
  readonly colour: string
  readonly hem: string
  readonly hemWidth: number
  readonly align?: CanvasTextAlign
  readonly baseline?: CanvasTextBaseline
}

/** Writes words at a place, in the middle unless told otherwise. */
export function write(pen: Pen, words: string, { x, y }: Point, lettering: Lettering): void {
  const { font, colour, hem, hemWidth, align = 'center', baseline = 'middle' } = lettering
  pen.font = font
  pen.textAlign = align
  pen.textBaseline = baseline
  pen.lineJoin = 'round'
  pen.strokeStyle = hem
  pen.lineWidth = hemWidth
  pen.strokeText(words, x, y)
  pen.fillStyle = colour
  pen.fillText(words, x, y)
}
