/** The assembly map: every motif in its place, with its working number, its letter and its meeting points. */
import type { MotifAccount, Plan, PlacedMotif, Point } from '../../shared-types/plan'
import type { Project, SheetStyle } from '../../shared-types/project'
import { blockingFactors } from '../layout/blanket'
import { joinPoints, placedPieces } from '../layout/placed'
import type { PlacedPiece } from '../layout/placed'
import { edgingLine } from './edging-line'
import type { Bounds, Figure, FigureItem, FigureSymbol } from './figure'
import { drawPath, drawText, INK, MM_PER_POINT, QUIET_INK, useAt } from './figure'
import { JOIN_MARK_SIZES, joinMarkOf } from './join-marks'
import type { JoinMark } from './join-marks'
import { joinMarkItems } from './join-mark-items'
import type { MotifLabel } from './lettering'
import { CAPITAL_HEIGHT, fitLabel, numberedScale } from './lettering'
import type { ColourwayMark } from './marks'
import { colourwayMarks, fillerMarks } from './marks'
import type { Stretch } from './motif-symbol'
import { keptHalf, MotifSymbols } from './motif-symbol'
import { arrowPath, circlePath, innerRadius, linePath, outerRadius, polygonPath, rectanglePath } from './path'
import type { MapRow } from './rows'
import { mapRows, placeColumns, workedByRows } from './rows'

/** Room round the map for row and place numbers and for arrows, in printed mm. */
const ROW_NUMBERS = 9
const PLACE_NUMBERS = 7
const ARROWS = 8.5
const EDGE_TYPE = 8.5
/** Motifs are printed no larger than this across: a small project does not fill the sheet with one flower. */
const LARGEST_MOTIF = 26
/** Length of a working direction arrow in mm. */
const ARROW = 4.2

/** What every map of a plan needs, worked out once. */
export interface MapGround {
  readonly plan: Plan
  readonly style: SheetStyle
  readonly rows: readonly MapRow[]
  readonly places: readonly { readonly place: number; readonly x: number }[]
  readonly byRows: boolean
  readonly marks: readonly ColourwayMark[]
  readonly fillerMarks: readonly ColourwayMark[]
  /** Radius about a motif's centre in which its label may stand. */
  readonly inner: number
  readonly tip: number
  readonly digits: number
  readonly edge: readonly Point[]
  readonly stretch: Stretch
}

/** Deep petals run on beyond a disc of this share of the tip radius, and are told apart by what they show there. */
const DEEP_PETALS = 0.45

/** The radius about the centre in which a label may stand: inside the valleys, or across the roots of deep petals. */
function labelRadius(motif: MotifAccount | null): number {
  if (!motif) return 0
  const inner = innerRadius(motif.outline)
  return motif.shape === 'petals' ? Math.max(inner, DEEP_PETALS * outerRadius(motif.outline)) : inner
}

/** Prepares a plan for its maps. */
export function mapGround(project: Project, plan: Plan, style: SheetStyle): MapGround {
  const rows = mapRows(plan)
  const outline = plan.motif?.outline ?? []
  // As the plan takes them: a factor that was refused stretches nothing.
  const blocking = project.layout?.kind === 'blanket' ? blockingFactors(project.layout) : null
  const stretch = { x: blocking?.width ?? 1, y: blocking?.height ?? 1 }
  const marks = colourwayMarks(project, plan)
  return {
    plan,
    style,
    rows,
    places: placeColumns(plan, rows),
    byRows: workedByRows(rows),
    marks,
    fillerMarks: fillerMarks(project, plan, marks),
    inner: labelRadius(plan.motif) * Math.min(stretch.x, stretch.y),
    tip: outerRadius(outline) * Math.max(stretch.x, stretch.y),
    digits: String(plan.motifs.length).length,
    edge: edgingLine(plan, rows, stretch),
    stretch,
  }
}

/** Letters of the longest colourway code; 0 where there are none. */
const lettersOf = (ground: MapGround): number =>
  ground.marks.reduce((most, mark) => Math.max(most, [...mark.code].length), 0)

/** The smallest scale, in printed mm per plan mm, at which the motifs can carry their numbers at 7 pt. */
export const smallestNumberedScale = (ground: MapGround): number =>
  numberedScale(ground.inner, ground.tip, ground.digits, lettersOf(ground))

/** Every entry of the key: the colourways of the motifs, then those of the fillers. */
export const keyMarks = ({ marks, fillerMarks }: MapGround): readonly ColourwayMark[] =>
  fillerMarks.length > 0 ? [...marks, ...fillerMarks] : marks

const fillerTip = ({ plan, stretch }: MapGround): number =>
  outerRadius(plan.fillerMotif?.outline ?? []) * Math.max(stretch.x, stretch.y)

/** The mark of a join point; a plain dot has the diameter in mm. */
function joinSymbol(mark: JoinMark, dot: number): FigureSymbol {
  const size = dot * JOIN_MARK_SIZES[mark]
  return {
    id: `meeting-point-${mark}`,
    bounds: { x: -size / 2, y: -size / 2, width: size, height: size },
    items: joinMarkItems(mark, 0, 0, dot),
  }
}

/** Draws motifs at one scale; symbols are shared by all sheets of that scale. */
export class MapPainter {
  readonly label: MotifLabel | null
  private readonly halfLabel: MotifLabel | null
  private readonly fillerLabel: MotifLabel | null
  private readonly symbols: MotifSymbols | null
  /** The same without a disc, for motifs whose number stands on another sheet. */
  private readonly bare: MotifSymbols | null
  private readonly fillerSymbols: MotifSymbols | null
  private readonly letters: ReadonlyMap<string, string>
  private readonly drawnEdge: readonly Point[]
  private readonly joinSymbols: Readonly<Record<JoinMark, FigureSymbol>>

  constructor(
    readonly ground: MapGround,
    readonly scale: number,
  ) {
    const { plan, marks, inner, tip, digits } = ground
    this.label = fitLabel(inner * scale, tip * scale, digits, lettersOf(ground))
    this.letters = new Map(keyMarks(ground).map((mark) => [mark.id, mark.code]))
    const most = String(plan.motifs.length + plan.halves.length + plan.fillers.length).length
    this.halfLabel = fitLabel((inner / 2) * scale, inner * scale, most, lettersOf(ground))
    const filler = labelRadius(plan.fillerMotif) * Math.min(ground.stretch.x, ground.stretch.y)
    this.fillerLabel = fitLabel(filler * scale, fillerTip(ground) * scale, most, lettersOf(ground))
    const { motif } = plan
    const symbols = (disc: number): MotifSymbols | null =>
      motif &&
      new MotifSymbols(motif, new Map(marks.map((mark) => [mark.id, mark])), {
        scale,
        look: ground.style,
        disc,
        stretch: ground.stretch,
      })
    this.symbols = symbols(this.label?.disc ?? 0)
    this.bare = symbols(0)
    this.fillerSymbols =
      plan.fillerMotif && ground.fillerMarks.length > 0
        ? new MotifSymbols(plan.fillerMotif, new Map(ground.fillerMarks.map((mark) => [mark.id, mark])), {
            ...{ scale, look: ground.style, disc: 0, stretch: ground.stretch },
          })
        : null
    const dot = Math.min(1, Math.max(0.3, this.across * 0.07))
    this.joinSymbols = {
      two: joinSymbol('two', dot),
      several: joinSymbol('several', dot),
      stretched: joinSymbol('stretched', dot),
    }
    this.drawnEdge = ground.edge.map((p) => ({ x: p.x * scale, y: p.y * scale }))
  }

  /** Printed diameter of a motif over its tips. */
  get across(): number {
    return 2 * this.ground.tip * this.scale
  }

  /** The symbol of a colourway, turned by so many degrees. */
  symbol(colourway: string, turn: number): FigureSymbol | null {
    return this.symbols?.get(colourway, turn) ?? null
  }

  /** Motifs, meeting points, edging and labels within a window (plan mm); the window's top left is (0, 0). */
  window(view: Bounds, labelled = true): FigureItem[] {
    const { scale } = this
    const grow = this.ground.tip
    const seen = (x: number, y: number): boolean =>
      x > view.x - grow &&
      x < view.x + view.width + grow &&
      y > view.y - grow &&
      y < view.y + view.height + grow
    const items: FigureItem[] = []
    if (this.drawnEdge.length > 0) {
      const moved = this.drawnEdge.map((p) => ({ x: p.x - view.x * scale, y: p.y - view.y * scale }))
      items.push(drawPath(polygonPath(moved), { stroke: INK, width: 0.35 }))
    }
    const motifs = this.ground.plan.motifs.filter((motif) => seen(motif.x, motif.y))
    for (const motif of motifs) {
      const symbols = labelled && this.hasLabel(motif, view) ? this.symbols : this.bare
      const symbol = symbols?.get(motif.colourway, motif.turn)
      if (symbol) items.push(useAt(symbol, (motif.x - view.x) * scale, (motif.y - view.y) * scale))
    }
    items.push(...this.additions(view, seen))
    for (const node of joinPoints(this.ground.plan)) {
      if (seen(node.x, node.y)) {
        items.push(
          useAt(this.joinSymbols[joinMarkOf(node)], (node.x - view.x) * scale, (node.y - view.y) * scale),
        )
      }
    }
    if (this.label && labelled) for (const motif of motifs) this.writeLabel(items, motif, view, this.label)
    for (const piece of labelled ? placedPieces(this.ground.plan) : [])
      if (piece.kind !== 'motif' && seen(piece.x, piece.y)) this.labelAddition(items, piece, view)
    return items
  }

  /** Half motifs and fillers. */
  private additions(view: Bounds, seen: (x: number, y: number) => boolean): FigureItem[] {
    const { plan } = this.ground
    const items: FigureItem[] = []
    const put = (symbol: FigureSymbol | undefined, at: Point): void => {
      if (symbol) items.push(useAt(symbol, (at.x - view.x) * this.scale, (at.y - view.y) * this.scale))
    }
    for (const half of plan.halves)
      if (seen(half.x, half.y)) put(this.symbols?.get(half.colourway, half.turn, keptHalf(half)), half)
    for (const filler of plan.fillers)
      if (seen(filler.x, filler.y)) put(this.fillerSymbols?.get(filler.colourway, filler.turn), filler)
    return items
  }

  /** A half motif carries its number in the middle of what is there, a filler in its own, where they have room. */
  private labelAddition(items: FigureItem[], piece: PlacedPiece, view: Bounds): void {
    const label = piece.kind === 'half' ? this.halfLabel : this.fillerLabel
    if (!label) return
    const side = piece.side && keptHalf({ side: piece.side })
    const aside = side ? ((side === 'right' ? 1 : -1) * this.ground.inner) / 2 : 0
    const at = { ...piece, x: piece.x + aside }
    const disc = circlePath((at.x - view.x) * this.scale, (at.y - view.y) * this.scale, label.disc)
    const before = items.length
    items.push(drawPath(disc, { fill: '#ffffff', stroke: INK, width: 0.15 }))
    this.writeLabel(items, at, view, label)
    // Without its number an empty disc would say nothing.
    if (items.length === before + 1) items.pop()
  }

  /** Whether a motif's number stands whole inside a window: else it is printed on the sheet beside it. */
  private hasLabel(motif: Point, view: Bounds, label = this.label): boolean {
    if (!label) return false
    const room = label.disc / this.scale
    const { x, y, width, height } = view
    return (
      motif.x >= x + room &&
      motif.x <= x + width - room &&
      motif.y >= y + room &&
      motif.y <= y + height - room
    )
  }

  private writeLabel(items: FigureItem[], motif: PlacedMotif, view: Bounds, label: MotifLabel): void {
    if (!this.hasLabel(motif, view, label)) return
    const x = (motif.x - view.x) * this.scale
    const y = (motif.y - view.y) * this.scale
    const letter = this.letters.get(motif.colourway) ?? ''
    const lift = letter === '' && lettersOf(this.ground) > 0 ? this.centring(label) : 0
    items.push(
      drawText(motif.label, x, y + label.numberBaseline + lift, label.number, {
        anchor: 'middle',
        weight: 'bold',
      }),
    )
    if (letter !== '')
      items.push(drawText(letter, x, y + label.letterBaseline, label.letter, { anchor: 'middle' }))
  }

  /** A number without a letter below it stands in the middle of its disc. */
  private centring(label: MotifLabel): number {
    return (label.number * CAPITAL_HEIGHT * MM_PER_POINT) / 2 - label.numberBaseline
  }
}

/** Which of n labels are printed when they would stand `pitch` mm apart and want `room` mm: every 1st, 2nd, 5th… */
export function labelStep(pitch: number, room: number): number {
  return [1, 2, 5, 10, 20, 50, 100].find((step) => pitch * step >= room) ?? 200
}

const shown = (number: number, step: number): boolean => step === 1 || number === 1 || number % step === 0

/** Row numbers left of a window, at x = 0 to the right-aligned `edge`. */
export function rowNumbers(rows: readonly MapRow[], y: (row: MapRow) => number, edge: number): FigureItem[] {
  const pitch = rows.length > 1 ? Math.abs(y(rows[1]!) - y(rows[0]!)) : Infinity
  const step = labelStep(pitch, 3.6)
  const drop = (EDGE_TYPE * CAPITAL_HEIGHT * MM_PER_POINT) / 2
  return rows
    .filter((row) => shown(row.row, step))
    .map((row) => drawText(String(row.row), edge, y(row) + drop, EDGE_TYPE, { anchor: 'end' }))
}

/** Place numbers above a window. */
export function placeNumbers(
  places: readonly { readonly place: number; readonly x: number }[],
  x: (planX: number) => number,
  baseline: number,
): FigureItem[] {
  const pitch = places.length > 1 ? Math.abs(x(places[1]!.x) - x(places[0]!.x)) : Infinity
  const digits = String(places.length).length
  const step = labelStep(pitch, digits * EDGE_TYPE * 0.5 * MM_PER_POINT + 1.2)
  return places
    .filter(({ place }) => shown(place, step))
    .map((place) => drawText(String(place.place), x(place.x), baseline, EDGE_TYPE, { anchor: 'middle' }))
}

/** Arrows of the working direction, their tails at x (for rows worked to the right). */
export function directionArrows(
  rows: readonly MapRow[],
  y: (row: MapRow) => number,
  x: number,
): FigureItem[] {
  const pitch = rows.length > 1 ? Math.abs(y(rows[1]!) - y(rows[0]!)) : Infinity
  const step = labelStep(pitch, 2)
  const segments = rows
    .filter((row) => row.direction !== null && (step === 1 || shown(row.row, step)))
    .flatMap((row) =>
      row.direction === 'right'
        ? arrowPath(x, y(row), x + ARROW, y(row), 1.4)
        : arrowPath(x + ARROW, y(row), x, y(row), 1.4),
    )
  return segments.length > 0 ? [drawPath(segments, { stroke: INK, width: 0.3, cap: 'round' })] : []
}

export interface OverviewMap {
  readonly figure: Figure
  readonly scale: number
  /** Whether the motifs carry their working numbers. */
  readonly numbered: boolean
  readonly painter: MapPainter
}

const edgeRoom = (ground: MapGround) => ({
  left: ROW_NUMBERS,
  right: ground.byRows ? ARROWS : 0,
  top: ground.places.length > 0 ? PLACE_NUMBERS : 1,
})

/** The scale at which the whole plan fits a box of printed mm, numbers along the edges included. */
export function overviewScale(ground: MapGround, width: number, height: number): number {
  const { left, right, top } = edgeRoom(ground)
  const { size } = ground.plan
  return Math.max(
    1e-4,
    Math.min(
      (width - left - right) / Math.max(size.width, 1),
      (height - top) / Math.max(size.height, 1),
      LARGEST_MOTIF / Math.max(2 * ground.tip, 1),
    ),
  )
}

/**
 * The whole map within a box. `frames` are areas of the plan (mm) that are printed on sheets of their own, drawn
 * over the motifs, which then carry no numbers.
 */
export function overviewMap(
  ground: MapGround,
  width: number,
  height: number,
  frames: readonly { readonly area: Bounds; readonly name: string }[] = [],
): OverviewMap {
  const scale = overviewScale(ground, width, height)
  const painter = new MapPainter(ground, scale)
  const { left, right, top } = edgeRoom(ground)
  const { size } = ground.plan
  const drawn = { width: size.width * scale, height: size.height * scale }
  const x0 = left + Math.max(0, (width - left - right - drawn.width) / 2)
  const y = (row: MapRow): number => top + row.y * scale
  const items: FigureItem[] = [
    ...placeNumbers(ground.places, (x) => x0 + x * scale, top - 3),
    ...rowNumbers(ground.rows, y, x0 - 3.4),
    ...(ground.byRows ? directionArrows(ground.rows, y, x0 + drawn.width + 3.2) : []),
    {
      kind: 'group',
      matrix: [1, 0, 0, 1, x0, top],
      // Frames would run through the numbers, which stand on the sheets.
      items: painter.window({ x: 0, y: 0, width: size.width, height: size.height }, frames.length === 0),
    },
  ]
  for (const { area, name } of frames) {
    const box = {
      x: x0 + area.x * scale,
      y: top + area.y * scale,
      width: area.width * scale,
      height: area.height * scale,
    }
    items.push(
      drawPath(rectanglePath(box.x, box.y, box.width, box.height), { stroke: INK, width: 0.5 }),
      ...sheetPlate(name, box.x + box.width / 2, box.y + box.height / 2),
    )
  }
  return {
    figure: { width, height: top + drawn.height + 0.5, items },
    scale,
    numbered: painter.label !== null,
    painter,
  }
}

/** The number of a sheet on a white plate, readable over any texture. */
function sheetPlate(name: string, x: number, y: number): FigureItem[] {
  const width = 3.2 + name.length * 2.6
  return [
    drawPath(rectanglePath(x - width / 2, y - 3.2, width, 6.4), {
      fill: '#ffffff',
      stroke: INK,
      width: 0.25,
    }),
    drawText(name, x, y + 1.6, 13, { anchor: 'middle', weight: 'bold' }),
  ]
}

/** A short line in quiet ink, for crop ticks and leaders. */
export const tick = (x1: number, y1: number, x2: number, y2: number): FigureItem =>
  drawPath(linePath(x1, y1, x2, y2), { stroke: QUIET_INK, width: 0.2 })
