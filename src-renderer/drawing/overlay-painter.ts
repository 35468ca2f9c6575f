/** The overlay: dimension lines with their handles, the frame before a change, what a gesture draws. */
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
>

export interface Overlay {
  readonly dimensions: DimensionFrame | null
  /** The frame before the change that is being tried out. */
  readonly previous: ScreenBox | null
  /** The size that a drag asks for. */
  readonly wished: ScreenBox | null
  readonly band: ScreenBox | null
  readonly hot: HandleKind | null
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
    pen.lineTo(x, number.top)
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
