/** The overlay: dimension lines with their handles, the frame before a change, what a gesture draws and measures. */
import type { Point } from '../../shared-types/plan'
import { TICK } from './dimension-frame'
import type { DimensionFrame, DimensionLine, HandleKind } from './dimension-frame'
import type { Viewport } from './camera'
import type { Palette } from './palette'
import type { ScreenBox } from './scene'

export type OverlayPen = Pick<
  CanvasRenderingContext2D,
  | 'beginPath'
  | 'moveTo'
  | 'lineTo'
  | 'arc'
  | 'rect'
  | 'stroke'
  | 'fill'
  | 'fillRect'
  | 'strokeRect'
  | 'setLineDash'
  | 'strokeStyle'
  | 'fillStyle'
  | 'lineWidth'
  | 'globalAlpha'
  | 'strokeText'
  | 'fillText'
  | 'font'
  | 'textAlign'
  | 'textBaseline'
  | 'lineJoin'
>

export interface Overlay {
  readonly dimensions: DimensionFrame | null
  /** The frame before the change that is being tried out. */
  readonly previous: ScreenBox | null
  /** The size that a drag asks for. */
  readonly wished: ScreenBox | null
  readonly band: ScreenBox | null
  readonly hot: HandleKind | null
  /** A line drawn by hand. */
  readonly line: readonly Point[] | null
  /** Distances that are kept while something is moved. */
  readonly gaps: readonly GapLine[]
  /** What things turn about, and how far they are turned. */
  readonly pivot: { readonly at: Point; readonly words: string } | null
}

/** A distance between two places on screen, in words; in the warning tone where it is too short. */
export interface GapLine {
  readonly from: Point
  readonly to: Point
  readonly words: string
  readonly isShort: boolean
}

/** Half the side of a handle. */
const KNOB = 4.5
/** Width of the strip under a line that stands over the map. */
const STRIP = 44

/** Draws in CSS pixels; lines lie on half pixels so that hairlines stay sharp. */
export function paintOverlay(pen: OverlayPen, overlay: Overlay, viewport: Viewport, palette: Palette): void {
  const { dimensions, previous, wished, band } = overlay
  pen.lineWidth = 1
  if (previous) dashed(pen, previous, palette.quiet)
  if (wished) dashed(pen, wished, palette.accent)
  if (dimensions) {
    strips(pen, dimensions, viewport, palette)
    pen.strokeStyle = palette.quiet
    lineAcross(pen, dimensions.width, dimensions.widthNumber)
    lineDown(pen, dimensions.height, dimensions.heightNumber)
    for (const { kind, at } of dimensions.handles)
      knob(pen, at.x, at.y, overlay.hot === kind ? palette.accent : palette.paper, palette.accent)
  }
  if (overlay.line) handLine(pen, overlay.line, palette)
  for (const gap of overlay.gaps) gapLine(pen, gap, palette)
  if (overlay.pivot) pivotMark(pen, overlay.pivot, palette)
  if (band) {
    pen.fillStyle = palette.accent
    pen.globalAlpha = 0.1
    pen.fillRect(band.left, band.top, band.width, band.height)
    pen.globalAlpha = 1
    pen.strokeStyle = palette.accent
    pen.strokeRect(half(band.left), half(band.top), Math.round(band.width), Math.round(band.height))
  }
}

const half = (value: number): number => Math.round(value) + 0.5

function dashed(pen: OverlayPen, box: ScreenBox, colour: string): void {
  pen.setLineDash([5, 4])
  pen.strokeStyle = colour
  pen.strokeRect(half(box.left), half(box.top), Math.round(box.width), Math.round(box.height))
  pen.setLineDash([])
}

/** Paper and a hairline under the lines where the map has moved beneath them. */
function strips(pen: OverlayPen, { overMap }: DimensionFrame, viewport: Viewport, palette: Palette): void {
  pen.fillStyle = palette.paper
  if (overMap.top) pen.fillRect(0, 0, viewport.width, STRIP)
  if (overMap.left) pen.fillRect(0, 0, STRIP, viewport.height)
  pen.strokeStyle = palette.hairline
  pen.beginPath()
  if (overMap.top) {
    pen.moveTo(overMap.left ? STRIP : 0, STRIP + 0.5)
    pen.lineTo(viewport.width, STRIP + 0.5)
  }
  if (overMap.left) {
    pen.moveTo(STRIP + 0.5, overMap.top ? STRIP : 0)
    pen.lineTo(STRIP + 0.5, viewport.height)
  }
  pen.stroke()
}

function lineAcross(pen: OverlayPen, line: DimensionLine, number: ScreenBox): void {
  const y = half(line.from.y)
  pen.beginPath()
  if (number.left > line.from.x) {
    pen.moveTo(line.from.x, y)
    pen.lineTo(number.left, y)
  }
  if (number.left + number.width < line.to.x) {
    pen.moveTo(number.left + number.width, y)
    pen.lineTo(line.to.x, y)
  }
  for (const [is, x] of [
    [line.startsHere, line.from.x],
    [line.endsHere, line.to.x],
  ] as const)
    if (is) {
      pen.moveTo(half(x), y - TICK)
      pen.lineTo(half(x), y + TICK)
    }
  pen.stroke()
}

function lineDown(pen: OverlayPen, line: DimensionLine, number: ScreenBox): void {
  const x = half(line.from.x)
  pen.beginPath()
  if (number.top > line.from.y) {
    pen.moveTo(x, line.from.y)
    pen.lineTo(x, Math.min(number.top, line.to.y))
  }
  if (number.top + number.height < line.to.y) {
    pen.moveTo(x, number.top + number.height)
    pen.lineTo(x, line.to.y)
  }
  for (const [is, y] of [
    [line.startsHere, line.from.y],
    [line.endsHere, line.to.y],
  ] as const)
    if (is) {
      pen.moveTo(x - TICK, half(y))
      pen.lineTo(x + TICK, half(y))
    }
  pen.stroke()
}

function knob(pen: OverlayPen, x: number, y: number, fill: string, line: string): void {
  pen.beginPath()
  pen.rect(half(x) - KNOB, half(y) - KNOB, 2 * KNOB, 2 * KNOB)
  pen.fillStyle = fill
  pen.fill()
  pen.strokeStyle = line
  pen.lineWidth = 1.5
  pen.stroke()
  pen.lineWidth = 1
}

/** CSS pixels: type of a distance, its hem, half of the bars at a distance's ends, its way off its line. */
const GAP = { type: 13, hem: 4, bar: 4, off: 12 } as const

/** A hairline with a bar at each end and its number beside it. */
function gapLine(pen: OverlayPen, { from, to, words, isShort }: GapLine, palette: Palette): void {
  const colour = isShort ? palette.warning : palette.accent
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const length = Math.hypot(dx, dy)
  // Across the line: the side that is above it, or right of one that stands upright.
  const [ux, uy] = length > 0 ? [-dy / length, dx / length] : [0, -1]
  const up = uy > 1e-6 || (Math.abs(uy) <= 1e-6 && ux < 0) ? -1 : 1
  const strokes = () => {
    pen.beginPath()
    pen.moveTo(from.x, from.y)
    pen.lineTo(to.x, to.y)
    for (const end of [from, to]) {
      pen.moveTo(end.x - ux * GAP.bar, end.y - uy * GAP.bar)
      pen.lineTo(end.x + ux * GAP.bar, end.y + uy * GAP.bar)
    }
    pen.stroke()
  }
  pen.strokeStyle = palette.paper
  pen.lineWidth = 4
  strokes()
  pen.strokeStyle = colour
  pen.lineWidth = 1.5
  strokes()
  const at = {
    x: (from.x + to.x) / 2 + ux * up * GAP.off,
    y: (from.y + to.y) / 2 + uy * up * GAP.off,
  }
  const align = Math.abs(ux) > 0.7 ? (ux * up > 0 ? 'left' : 'right') : 'center'
  write(pen, words, at, align, colour, palette)
}

/** Words with a hem of paper. */
function write(
  pen: OverlayPen,
  words: string,
  at: Point,
  align: CanvasTextAlign,
  colour: string,
  palette: Palette,
): void {
  pen.font = `600 ${GAP.type}px ${palette.face}`
  pen.textAlign = align
  pen.textBaseline = 'middle'
  pen.lineJoin = 'round'
  pen.strokeStyle = palette.paper
  pen.lineWidth = GAP.hem
  pen.strokeText(words, at.x, at.y)
  pen.fillStyle = colour
  pen.fillText(words, at.x, at.y)
  pen.lineWidth = 1
}

/** CSS pixels: half of the cross that things turn about, and the way from it to its words. */
const PIVOT = { cross: 6, off: 12 } as const

function pivotMark(pen: OverlayPen, { at, words }: NonNullable<Overlay['pivot']>, palette: Palette): void {
  const strokes = () => {
    pen.beginPath()
    pen.moveTo(at.x - PIVOT.cross, at.y)
    pen.lineTo(at.x + PIVOT.cross, at.y)
    pen.moveTo(at.x, at.y - PIVOT.cross)
    pen.lineTo(at.x, at.y + PIVOT.cross)
    pen.stroke()
  }
  pen.strokeStyle = palette.paper
  pen.lineWidth = 4
  strokes()
  pen.strokeStyle = palette.accent
  pen.lineWidth = 1.5
  strokes()
  write(pen, words, { x: at.x + PIVOT.off, y: at.y - PIVOT.off }, 'left', palette.accent, palette)
}

function handLine(pen: OverlayPen, line: readonly Point[], palette: Palette): void {
  if (line.length < 2) return
  const trace = () => {
    pen.beginPath()
    line.forEach(({ x, y }, i) => (i === 0 ? pen.moveTo(x, y) : pen.lineTo(x, y)))
    pen.stroke()
  }
  pen.lineJoin = 'round'
  pen.strokeStyle = palette.paper
  pen.lineWidth = 5
  trace()
  pen.strokeStyle = palette.accent
  pen.lineWidth = 2
  trace()
  pen.lineWidth = 1
}
