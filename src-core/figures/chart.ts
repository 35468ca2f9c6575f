/**
 * The symbol chart of a motif: every stitch of the written rounds as its symbol, where the model puts it. Rounds
 * worked behind petals have a drawing of their own, with what carries them in a lighter ink.
 */
import type { Point } from '../../shared-types/plan'
import type { Hand, SheetStyle } from '../../shared-types/project'
import type { Beginning } from '../motif/rounds/account'
import { at as pointAt } from '../motif/rounds/ground'
import type { LocatedRound } from '../motif/rounds/ground'
import { beginningInk, ringCount, ringRadius } from './chart/beginning'
import { elementsInOrder, roundMarks, toPage } from './chart/marks'
import type { ChartMark, ChartView } from './chart/marks'
import { Clearance, placeNumber } from './chart/numbers'
import { chartParts } from './chart/parts'
import type { ChartPart } from './chart/parts'
import { segmentOf } from './chart/segment'
import type { ChartSegment } from './chart/segment'
import type { Ink } from './chart/symbols'
import { flattenPath } from './chart/flatten'
import { KEY_SYMBOL } from './chart/key'
import type { ChartKeyEntry } from './chart/key'
import type { Figure, FigureItem, MeasureText, Path } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, translation } from './figure'
import { capitalDrop } from './lettering'
import { breakLines } from './lines'
import { listed } from './words'
import { arcPath, arrowHead, boundsOf, linePath } from './path'

export { chartKey } from './chart/key'
export { chartParts } from './chart/parts'
export type { ChartMark } from './chart/marks'

/** What carries a round that is worked behind. */
export const LIGHTER_INK = '#a3a3a3'
/** What every other round is drawn in, so that one is told from the next: a blue, without colour a grey (ours). */
export const SECOND_INK = { colour: '#1f5f99', ink: '#6e6e6e' } as const satisfies Record<SheetStyle, string>

interface ChartOptions {
  readonly hand: Hand
  readonly style: SheetStyle
  /** Room in mm. */
  readonly width: number
  readonly height: number
}

export interface ChartFigure extends Figure {
  /** Printed width of a stitch in mm. */
  readonly unit: number
  /** Numbers of the rounds that it shows. */
  readonly rounds: readonly number[]
  readonly marks: readonly ChartMark[]
  readonly carriers: readonly ChartMark[]
}

/** A stitch is printed no wider than this, in mm: symbols as large as those of printed patterns. */
const WIDEST = 6.2
/** Under so many mm a chart can hardly be worked from: bars of stitches run together in print (by eye). */
export const READABLE = 2.2
/** Room around the symbols for numbers and the arrow. */
const BORDER = 6.5
const NUMBER_TYPE = 8

/** Line width in mm for a stitch width in mm. */
const lineWidth = (unit: number): number => Math.min(0.4, Math.max(0.2, unit * 0.075))

/** The drawings of a motif, one for most, in the order worked. */
export function chartFigures(
  located: readonly LocatedRound[],
  beginning: Beginning,
  options: ChartOptions,
): ChartFigure[] {
  const parts = chartParts(located)
  const { scale, boxes } = fit(parts, located, beginning, options)
  return parts.map((part, i) => partFigure(part, located, beginning, options, scale, boxes[i]!))
}

/** A stretch of the chart that stands for the whole way around. */
export interface SegmentFigure extends ChartFigure {
  /** How often the marked repeat is worked in a round. */
  readonly repeats: number
}

/** A segment is worth its room where its stitches are printed so many times as wide as those of the whole (ours). */
const WORTH = 1.25

/**
 * One repeat of each drawing of a motif, with what begins its rounds, as large as the room allows. Drawings whose rounds
 * do not repeat, or that would hardly be larger so, have none.
 */
export function segmentFigures(
  located: readonly LocatedRound[],
  beginning: Beginning,
  options: ChartOptions,
): SegmentFigure[] {
  if (beginning.stem.length > 0) return []
  const parts = chartParts(located)
  const whole = fit(parts, located, beginning, options).scale
  return parts.flatMap((part) => {
    const segment = segmentOf(part, beginning.stitchWidth)
    if (!segment) return []
    // Its middle stands on top.
    const turned = { ...beginning, turn: -segment.middle }
    const { scale, boxes } = fit([segment.part], located, turned, options, segment)
    if (scale < WORTH * whole) return []
    const figure = partFigure(segment.part, located, turned, options, scale, boxes[0]!, segment)
    return [{ ...figure, repeats: segment.repeats }]
  })
}

/** "Round 3 is not drawn: its stitches do not work out yet.": what stands under a chart; empty where it has every round. */
export const leftOutWords = (left: readonly number[]): string =>
  left.length === 0
    ? ''
    : left.length === 1
      ? `Round ${left[0]} is not drawn: its stitches do not work out yet.`
      : `Rounds ${listed(left.map(String))} are not drawn: their stitches do not work out yet.`

/** Charts that can be worked from: what is printed too small to be read is followed by its repeats, larger. */
export function readableFigures(
  located: readonly LocatedRound[],
  beginning: Beginning,
  options: ChartOptions,
): (ChartFigure | SegmentFigure)[] {
  const whole = chartFigures(located, beginning, options)
  const isSmall = whole.some(({ unit }) => unit < READABLE)
  return isSmall ? [...whole, ...segmentFigures(located, beginning, options)] : whole
}

/** Marks of one part, in units of the page; the view says where the page lies. */
function marksOf(part: ChartPart, view: ChartView): { marks: ChartMark[]; carriers: ChartMark[] } {
  const { only } = part
  const marks = part.rounds
    .flatMap((round) => roundMarks(round, view))
    .filter((mark) => only?.has(mark.element) ?? true)
  const carriers = [...part.carriers].flatMap(([round, elements]) =>
    roundMarks(round, view).filter((mark) => elements.has(mark.element)),
  )
  return { marks, carriers }
}

const inkPoints = (inks: readonly Ink[]): Point[] =>
  inks.flatMap((ink) => [...flattenPath(ink.strokes), ...flattenPath(ink.fills)].flat())

/** One scale for all parts, and the box that each takes at it, about the motif's centre. */
function fit(
  parts: readonly ChartPart[],
  located: readonly LocatedRound[],
  beginning: Beginning,
  options: ChartOptions,
  segment: ChartSegment | null = null,
) {
  const plain = viewOf(1, { x: 0, y: 0 }, beginning, located[0], options.hand)
  const raw = parts.map((part) => {
    const { marks, carriers } = marksOf(part, plain)
    const begun = part.rounds.includes(located[0]!) ? [beginningInk(beginning, plain)] : []
    const ink = inkPoints([...begun, ...[...marks, ...carriers].map((mark) => mark.ink)])
    return boundsOf(segment ? [...ink, ...bracketPoints(segment, segment.radius, plain)] : ink)
  })
  const scale = Math.min(
    WIDEST / beginning.stitchWidth,
    ...raw.map((box) => (options.width - 2 * BORDER) / Math.max(1, box.width)),
    ...raw.map((box) => (options.height - 2 * BORDER) / Math.max(1, box.height)),
  )
  return { scale, boxes: raw }
}

function viewOf(
  scale: number,
  centre: Point,
  beginning: Beginning,
  first: LocatedRound | undefined,
  hand: Hand,
): ChartView {
  const unit = scale * beginning.stitchWidth
  const ring = scale * ringRadius(beginning, first)
  const into = first?.elements.filter((entry) => entry.element.into[0]?.kind === 'ring').length ?? 0
  // Posts that run together in the middle start where they have come apart.
  const ringFoot = ring === 0 ? 0 : Math.max(ring + 0.1 * unit, (into * 0.28 * unit) / (2 * Math.PI))
  return { scale, mirrored: hand === 'right', centre, unit, ring, ringFoot, turn: beginning.turn }
}

function partFigure(
  part: ChartPart,
  located: readonly LocatedRound[],
  beginning: Beginning,
  options: ChartOptions,
  scale: number,
  box: { x: number; y: number; width: number; height: number },
  segment: ChartSegment | null = null,
): ChartFigure {
  const centre = { x: BORDER - box.x * scale, y: BORDER - box.y * scale }
  const view = viewOf(scale, centre, beginning, located[0], options.hand)
  const { marks, carriers } = marksOf(part, view)
  const width = lineWidth(view.unit)
  const items: FigureItem[] = []
  const ink = new Clearance()
  const draw = (inks: readonly Ink[], colour: string): void => {
    const strokes = inks.flatMap((entry) => entry.strokes)
    const fills = inks.flatMap((entry) => entry.fills)
    if (strokes.length > 0) items.push(drawPath(strokes, { stroke: colour, width, cap: 'round' }))
    if (fills.length > 0) items.push(drawPath(fills, { fill: colour }))
    ink.add(inkPoints(inks))
  }
  draw(
    carriers.map((mark) => mark.ink),
    LIGHTER_INK,
  )
  if (part.rounds.includes(located[0]!)) {
    draw([beginningInk(beginning, view)], INK)
    items.push(...ringCount(beginning, view))
  }
  const inkOf = (round: LocatedRound): string =>
    located.indexOf(round) % 2 === 0 ? INK : SECOND_INK[options.style]
  for (const mark of marks) draw([mark.ink], inkOf(mark.round))
  const farthest = Math.max(
    ...marks.map((mark) => Math.hypot(mark.top.x - centre.x, mark.top.y - centre.y)),
    view.unit,
  )
  if (segment) items.push(...bracketItems(segment, view, ink))
  for (const round of part.rounds)
    items.push(...numberItems(round, view, ink, farthest, centre, inkOf(round)))
  const figure = { width: box.width * scale + 2 * BORDER, height: box.height * scale + 2 * BORDER }
  items.push(...arrowItems(part, view, ink, options.hand))
  return {
    ...figure,
    items,
    unit: view.unit,
    rounds: part.rounds.map((entry) => entry.round.number),
    marks,
    carriers,
  }
}

/** The bracket of a repeat stands so far outside of it, in mm. */
const BRACKET = 2.4
const BRACKET_END = 1.4

/** Along the outside of a repeat, `radius` in mm of the motif. */
function bracketPoints({ from, to }: ChartSegment, radius: number, view: ChartView): Point[] {
  return Array.from({ length: 25 }, (_, i) => toPage(pointAt(radius, from + ((to - from) * i) / 24), view))
}

/** Where one repeat begins and ends, and how often it is worked. */
function bracketItems(segment: ChartSegment, view: ChartView, ink: Clearance): FigureItem[] {
  const out = segment.radius + BRACKET / view.scale
  const line = bracketPoints(segment, out, view)
  const inner = bracketPoints(segment, out - BRACKET_END / view.scale, view)
  const strokes = [line, [line[0]!, inner[0]!], [line.at(-1)!, inner.at(-1)!]].flatMap((points) =>
    points.map((point, i): Path[number] => [i === 0 ? 'M' : 'L', point.x, point.y]),
  )
  ink.add(line)
  const middle = bracketPoints(segment, out + 2.6 / view.scale, view)[12]!
  ink.add(ringAbout(middle, 2))
  return [
    drawPath(strokes, { stroke: INK, width: 0.25, cap: 'round' }),
    drawText(`× ${segment.repeats}`, middle.x, middle.y + capitalDrop(NUMBER_TYPE), NUMBER_TYPE, {
      anchor: 'middle',
      weight: 'bold',
    }),
  ]
}

/** The number of a round where it begins. */
function numberItems(
  round: LocatedRound,
  view: ChartView,
  ink: Clearance,
  farthest: number,
  centre: Point,
  colour: string,
): FigureItem[] {
  const first = elementsInOrder(round).find((entry) => entry.element.role !== 'travel')
  if (!first) return []
  const base = toPage(first.base, view)
  const top = toPage(first.top, view)
  const start = { x: (base.x + top.x) / 2, y: (base.y + top.y) / 2 }
  const place = placeNumber(start, centre, ink, farthest + BORDER / 2)
  ink.add(ringAbout(place, 1))
  const drop = capitalDrop(NUMBER_TYPE)
  const items: FigureItem[] = []
  if (place.from) items.push(leader(place, place.from))
  items.push(
    drawText(String(round.round.number), place.x, place.y + drop, NUMBER_TYPE, {
      anchor: 'middle',
      weight: 'bold',
      colour,
    }),
  )
  return items
}

const ringAbout = ({ x, y }: Point, radius: number): Point[] =>
  Array.from({ length: 8 }, (_, k) => ({
    x: x + radius * Math.sin((k * Math.PI) / 4),
    y: y - radius * Math.cos((k * Math.PI) / 4),
  }))

/** A thin line from a number towards where its round begins, clear of both. */
function leader(from: Point, to: Point): FigureItem {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1
  const at = (distance: number): [number, number] => [
    from.x + ((to.x - from.x) * distance) / length,
    from.y + ((to.y - from.y) * distance) / length,
  ]
  return drawPath(linePath(...at(1.6), ...at(length - 0.8)), { stroke: LIGHTER_INK, width: 0.15 })
}

/** An arrow in the direction of work, outside of the last round near its beginning. */
function arrowItems(part: ChartPart, view: ChartView, ink: Clearance, hand: Hand): FigureItem[] {
  const last = part.rounds[part.rounds.length - 1]
  if (!last) return []
  const { centre } = view
  const first = last.elements[0]
  if (!first) return []
  const top = toPage(first.top, view)
  const own = Math.atan2(top.x - centre.x, centre.y - top.y)
  const way = hand === 'left' ? 1 : -1
  const reach = 7
  for (let radius = Math.hypot(top.x - centre.x, top.y - centre.y) + 2; ; radius += 0.5) {
    const from = own - (way * reach) / 2 / radius
    const to = own + (way * reach) / 2 / radius
    const points = Array.from({ length: 15 }, (_, i) => {
      const angle = from + ((to - from) * i) / 14
      return { x: centre.x + radius * Math.sin(angle), y: centre.y - radius * Math.cos(angle) }
    })
    if (radius < 1000 && !points.every((point) => ink.free(point, 2))) continue
    const tip = points[14]!
    const head = arrowHead(tip.x, tip.y, way * Math.cos(to), way * Math.sin(to), 1.6)
    return [
      drawPath([...arcPath(centre.x, centre.y, radius, from, to), ...head], {
        stroke: INK,
        width: 0.3,
        cap: 'round',
      }),
    ]
  }
}

/** The key as lines of symbol and words, within a width in mm; type in points. */
export function chartKeyFigure(
  entries: readonly ChartKeyEntry[],
  width: number,
  size: number,
  measure: MeasureText,
): Figure {
  const line = size * 1.36 * MM_PER_POINT
  const drop = capitalDrop(size)
  const indent = KEY_SYMBOL.width + 2
  const items: FigureItem[] = []
  let y = 0
  for (const { words, items: symbol } of entries) {
    const lines = breakLines(words, width - indent, measure, size)
    const height = Math.max(KEY_SYMBOL.height, lines.length * line + 1)
    const middle = y + height / 2
    items.push({ kind: 'group', matrix: translation(KEY_SYMBOL.width / 2, middle), items: symbol })
    lines.forEach((text, i) => {
      const centre = middle + (i - (lines.length - 1) / 2) * line
      items.push(drawText(text, indent, centre + drop, size))
    })
    y += height
  }
  return { width, height: y, items }
}
