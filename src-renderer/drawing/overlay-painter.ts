/** The overlay: dimension lines with their handles, the frame before a change, what a gesture draws and measures. */
import type { Point } from '../../shared-types/plan'
import { dimensionPath, tickEnd } from '../../src-core/figures/dimension-line'
import { drawPath, drawText, hemmedLine, MM_PER_POINT } from '../../src-core/figures/figure'
import type { FigureItem, Path, TextAnchor } from '../../src-core/figures/figure'
import { capitalDrop } from '../../src-core/figures/lettering'
import { crossPath, linePath, polygonPath, rectanglePath } from '../../src-core/figures/path'
import type { Viewport } from './camera'
import { paintItems, typeIn } from './canvas'
import type { Pen } from './canvas'
import type { DimensionFrame, DimensionLine, HandleKind } from './dimension-frame'
import { faint } from './palette'
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
  const items = [
    ...(previous ? dashed(previous, palette.quiet) : []),
    ...(wished ? dashed(wished, palette.accent) : []),
    ...(dimensions ? dimensionItems(dimensions, overlay.hot, viewport, palette) : []),
    ...(overlay.line ? handLine(overlay.line, palette) : []),
    ...overlay.gaps.flatMap((gap) => gapLine(gap, palette)),
    ...(overlay.pivot ? pivotMark(overlay.pivot, palette) : []),
    ...(band
      ? [drawPath(sharpBox(band), { fill: faint(palette.accent, BAND), stroke: palette.accent, width: 1 })]
      : []),
  ]
  paintItems(pen, items, typeIn(palette, GAP.hem))
}

/** Share of the accent in the rectangle that the hand spans. */
const BAND = 0.1

const half = (value: number): number => Math.round(value) + 0.5

const sharpBox = ({ left, top, width, height }: ScreenBox): Path =>
  rectanglePath(half(left), half(top), Math.round(width), Math.round(height))

const dashed = (box: ScreenBox, stroke: string): FigureItem[] => [
  drawPath(sharpBox(box), { stroke, width: 1, dash: [5, 4] }),
]

function dimensionItems(
  dimensions: DimensionFrame,
  hot: HandleKind | null,
  viewport: Viewport,
  palette: Palette,
): FigureItem[] {
  const { width, widthNumber, height, heightNumber, handles } = dimensions
  const across = [widthNumber.left, widthNumber.left + widthNumber.width]
  const down = [heightNumber.top, heightNumber.top + heightNumber.height]
  const gapIn = (ends: readonly number[], start: number) => ends.map((end) => end - start)
  return [
    ...strips(dimensions, viewport, palette),
    ...[
      dimensionLine(width, gapIn(across, width.from.x)),
      dimensionLine(height, gapIn(down, height.from.y)),
    ].map((path) => drawPath(path, { stroke: palette.quiet, width: 1 })),
    ...handles.map(({ kind, at }) =>
      drawPath(rectanglePath(half(at.x) - KNOB, half(at.y) - KNOB, 2 * KNOB, 2 * KNOB), {
        ...{ fill: hot === kind ? palette.accent : palette.paper, stroke: palette.accent, width: 1.5 },
      }),
    ),
  ]
}

/** Paper and a hairline under the lines where the map has moved beneath them. */
function strips({ overMap }: DimensionFrame, viewport: Viewport, { paper, hairline }: Palette): FigureItem[] {
  const { width, height } = viewport
  const line = { stroke: hairline, width: 1 }
  const [x, y] = [overMap.left ? STRIP : 0, overMap.top ? STRIP : 0]
  return [
    ...(overMap.top ? [drawPath(rectanglePath(0, 0, width, STRIP), { fill: paper })] : []),
    ...(overMap.left ? [drawPath(rectanglePath(0, 0, STRIP, height), { fill: paper })] : []),
    ...(overMap.top ? [drawPath(linePath(x, STRIP + 0.5, width, STRIP + 0.5), line)] : []),
    ...(overMap.left ? [drawPath(linePath(STRIP + 0.5, y, STRIP + 0.5, height), line)] : []),
  ]
}

const TICK = tickEnd(7)

/** A dimension line, on whole pixels, with the clear space for its number. */
function dimensionLine({ from, to, startsHere, endsHere }: DimensionLine, gap: readonly number[]): Path {
  const sharp = ({ x, y }: Point): Point => ({ x: half(x), y: half(y) })
  const ends = [startsHere, endsHere] as const
  return dimensionPath(sharp(from), sharp(to), { end: TICK, gap: [gap[0]!, gap[1]!], ends })
}

/** CSS pixels: type of a distance, its hem, half of the bars at a distance's ends, its way off its line. */
const GAP = { type: 13, hem: 4, bar: tickEnd(4), off: 12 } as const
/** CSS pixels by which the hem of a line is wider than the line. */
const HEM = 2.5

/** What is shown of a gesture: a line on a hem of paper, and words beside it. */
const shownLine = (path: Path, stroke: string, { paper }: Palette, width = 1.5): FigureItem[] =>
  hemmedLine(path, { stroke, width }, paper, HEM)

function shownWords(words: string, { x, y }: Point, colour: string, anchor: TextAnchor): FigureItem {
  const size = GAP.type / MM_PER_POINT
  return drawText(words, x, y + capitalDrop(size), size, { anchor, weight: 'bold', colour })
}

/** A hairline with a bar at each end and its number beside it. */
function gapLine({ from, to, words, isShort }: GapLine, palette: Palette): FigureItem[] {
  const colour = isShort ? palette.warning : palette.accent
  const [dx, dy] = [to.x - from.x, to.y - from.y]
  const length = Math.hypot(dx, dy)
  // Across the line: the side that is above it, or right of one that stands upright.
  const [ux, uy] = length > 0 ? [-dy / length, dx / length] : [0, -1]
  const off = (uy > 1e-6 || (Math.abs(uy) <= 1e-6 && ux < 0) ? -1 : 1) * GAP.off
  const at = { x: (from.x + to.x) / 2 + ux * off, y: (from.y + to.y) / 2 + uy * off }
  const anchor = Math.abs(ux) > 0.7 ? (ux * off > 0 ? 'start' : 'end') : 'middle'
  return [
    ...shownLine(dimensionPath(from, to, { end: GAP.bar }), colour, palette),
    shownWords(words, at, colour, anchor),
  ]
}

/** CSS pixels: half of the cross that things turn about, and the way from it to its words. */
const PIVOT = { cross: 6, off: 12 } as const

function pivotMark({ at, words }: NonNullable<Overlay['pivot']>, palette: Palette): FigureItem[] {
  const beside = { x: at.x + PIVOT.off, y: at.y - PIVOT.off }
  return [
    ...shownLine(crossPath(at.x, at.y, PIVOT.cross), palette.accent, palette),
    shownWords(words, beside, palette.accent, 'start'),
  ]
}

const handLine = (line: readonly Point[], palette: Palette): FigureItem[] =>
  line.length < 2 ? [] : shownLine(polygonPath(line, false), palette.accent, palette, 2)
