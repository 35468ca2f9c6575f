/** The overlay: dimension lines with their handles, the frame before a change, what a gesture draws and measures. */
import type { Point } from '../../shared-types/plan'
import { dimensionPath, tickEnd } from '../../src-core/figures/dimension-line'
import type { Path } from '../../src-core/figures/figure'
import { linePath, polygonPath } from '../../src-core/figures/path'
import type { Viewport } from './camera'
import { strokePath, write } from './canvas'
import type { Lettering, Line, Pen } from './canvas'
import type { DimensionFrame, DimensionLine, HandleKind } from './dimension-frame'
import type { Palette } from './palette'
import type { ScreenBox } from './scene'

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
export function paintOverlay(pen: Pen, overlay: Overlay, viewport: Viewport, palette: Palette): void {
  const { dimensions, previous, wished, band } = overlay
  pen.lineWidth = 1
  if (previous) dashed(pen, previous, palette.quiet)
  if (wished) dashed(pen, wished, palette.accent)
  if (dimensions) {
    strips(pen, dimensions, viewport, palette)
    const { width, widthNumber, height, heightNumber } = dimensions
    const line = { colour: palette.quiet, width: 1 }
    const across = [widthNumber.left, widthNumber.left + widthNumber.width] as const
    const down = [heightNumber.top, heightNumber.top + heightNumber.height] as const
    strokePath(
      pen,
      dimensionLine(
        width,
        across.map((x) => x - width.from.x),
      ),
      line,
    )
    strokePath(
      pen,
      dimensionLine(
        height,
        down.map((y) => y - height.from.y),
      ),
      line,
    )
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
    pen.lineWidth = 1
    pen.strokeStyle = palette.accent
    pen.strokeRect(half(band.left), half(band.top), Math.round(band.width), Math.round(band.height))
  }
}

const half = (value: number): number => Math.round(value) + 0.5

function dashed(pen: Pen, box: ScreenBox, colour: string): void {
  pen.setLineDash([5, 4])
  pen.strokeStyle = colour
  pen.strokeRect(half(box.left), half(box.top), Math.round(box.width), Math.round(box.height))
  pen.setLineDash([])
}

/** Paper and a hairline under the lines where the map has moved beneath them. */
function strips(pen: Pen, { overMap }: DimensionFrame, viewport: Viewport, palette: Palette): void {
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

const TICK = tickEnd(7)

/** A dimension line, on whole pixels, with the clear space for its number. */
function dimensionLine({ from, to, startsHere, endsHere }: DimensionLine, gap: readonly number[]): Path {
  const sharp = ({ x, y }: Point): Point => ({ x: half(x), y: half(y) })
  const ends = [startsHere, endsHere] as const
  return dimensionPath(sharp(from), sharp(to), { end: TICK, gap: [gap[0]!, gap[1]!], ends })
}

function knob(pen: Pen, x: number, y: number, fill: string, line: string): void {
  pen.beginPath()
  pen.rect(half(x) - KNOB, half(y) - KNOB, 2 * KNOB, 2 * KNOB)
  pen.fillStyle = fill
  pen.fill()
  pen.strokeStyle = line
  pen.lineWidth = 1.5
  pen.stroke()
}

/** CSS pixels: type of a distance, its hem, half of the bars at a distance's ends, its way off its line. */
const GAP = { type: 13, hem: 4, bar: tickEnd(4), off: 12 } as const

/** How what is shown of a gesture is drawn: on a hem of paper. */
const shownLine = (colour: string, { paper }: Palette): Line => ({ colour, width: 1.5, hem: paper })
const shownWords = (colour: string, { paper, face }: Palette): Lettering => ({
  ...{ colour, hem: paper, hemWidth: GAP.hem, font: `600 ${GAP.type}px ${face}` },
})

/** A hairline with a bar at each end and its number beside it. */
function gapLine(pen: Pen, { from, to, words, isShort }: GapLine, palette: Palette): void {
  const colour = isShort ? palette.warning : palette.accent
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const length = Math.hypot(dx, dy)
  // Across the line: the side that is above it, or right of one that stands upright.
  const [ux, uy] = length > 0 ? [-dy / length, dx / length] : [0, -1]
  const off = (uy > 1e-6 || (Math.abs(uy) <= 1e-6 && ux < 0) ? -1 : 1) * GAP.off
  strokePath(pen, dimensionPath(from, to, { end: GAP.bar }), shownLine(colour, palette))
  const at = { x: (from.x + to.x) / 2 + ux * off, y: (from.y + to.y) / 2 + uy * off }
  const align = Math.abs(ux) > 0.7 ? (ux * off > 0 ? 'left' : 'right') : 'center'
  write(pen, words, at, { ...shownWords(colour, palette), align })
}

/** CSS pixels: half of the cross that things turn about, and the way from it to its words. */
const PIVOT = { cross: 6, off: 12 } as const

function pivotMark(pen: Pen, { at, words }: NonNullable<Overlay['pivot']>, palette: Palette): void {
  const { x, y } = at
  const cross = [
    ...linePath(x - PIVOT.cross, y, x + PIVOT.cross, y),
    ...linePath(x, y - PIVOT.cross, x, y + PIVOT.cross),
  ]
  strokePath(pen, cross, shownLine(palette.accent, palette))
  const beside = { x: x + PIVOT.off, y: y - PIVOT.off }
  write(pen, words, beside, { ...shownWords(palette.accent, palette), align: 'left' })
}

function handLine(pen: Pen, line: readonly Point[], palette: Palette): void {
  if (line.length < 2) return
  pen.lineJoin = 'round'
  strokePath(pen, polygonPath(line, false), { ...shownLine(palette.accent, palette), width: 2 })
}
