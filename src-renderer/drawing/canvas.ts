/** The canvas as a back-end of figures, beside PDF and SVG: their paths and items on a 2D context. */
import type { Point } from '../../shared-types/plan'
import type { Path } from '../../src-core/figures/figure'

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

/** A line's colour and width, and the colour of a hem that keeps it apart from what lies under it. */
export interface Line {
  readonly colour: string
  readonly width: number
  readonly hem?: string
}

/** How much wider than a line its hem is, in pixels. */
const HEM = 2.5

/** Strokes a path, over its hem where it has one. */
export function strokePath(pen: Pen, path: Path, { colour, width, hem }: Line): void {
  pen.beginPath()
  trace(pen, path)
  if (hem) {
    pen.strokeStyle = hem
    pen.lineWidth = width + HEM
    pen.stroke()
  }
  pen.strokeStyle = colour
  pen.lineWidth = width
  pen.stroke()
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
