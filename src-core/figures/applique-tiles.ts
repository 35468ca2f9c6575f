/** An appliqué at full size, cut into sheets that overlap, with ticks and marks to lay them together by. */
import { edgesCross } from '../geometry/edges'
import { contains } from '../geometry/points'
import type { Point } from '../../shared-types/plan'
import type { Outline } from '../geometry/points'
import type { TemplateGround } from './applique-ground'
import { templateItems } from './applique-marks'
import type { Bounds, Figure, FigureItem, MeasureText } from './figure'
import { drawPath, INK, QUIET_INK } from './figure'
import { panelItems } from './panel'
import type { PanelLook } from './panel'
import { boundsOf, crossPath, diamondPath, linePath, rectanglePath } from './path'
import { cropTicks, sheetKey } from './sheet-marks'

/** Printed mm that two neighbouring sheets both show (trade practice: 5 to 10 mm). */
const TEMPLATE_OVERLAP = 10
/** Room round the window of a sheet for the crop ticks. */
const TICKS = 5
const CROP = { paint: { stroke: INK, width: 0.25 }, from: 0.5, to: TICKS - 0.5 } as const
/** Beyond the panel's edge, so that its line prints whole. */
const RIM = 3
/** Strips of paper are no narrower than this many mm. */
const LEAST_WINDOW = 40
/** Lengths that differ by less, in mm, are alike. */
const EXACT = 1e-6

export interface TemplateTile {
  /** Both from 1, from the top left. */
  readonly row: number
  readonly column: number
  /** What it shows, in mm of the panel. */
  readonly view: Bounds
}

/** A window on a sheet of paper: where the corner of its figure lies in the room of the sheet. */
export interface PlacedTile {
  readonly tile: TemplateTile
  readonly x: number
  readonly y: number
}

export interface TemplateTiling {
  readonly columns: number
  readonly rows: number
  readonly overlap: number
  /** Windows with anything in them. */
  readonly tiles: readonly TemplateTile[]
  /** Every place of a window, those with nothing in them too. */
  readonly places: readonly TemplateTile[]
  /** The windows that are printed together on one sheet of paper, sheet by sheet. */
  readonly sheets: readonly (readonly PlacedTile[])[]
}

interface Span {
  readonly from: number
  readonly length: number
}

/** Windows of `room` mm at most, overlapping, that cover a length: of one size, or each as large as it can be. */
function split(length: number, room: number, filled: boolean): Span[] {
  const total = length + 2 * RIM
  if (total <= room) return [{ from: -RIM, length: total }]
  const count = Math.ceil((total - TEMPLATE_OVERLAP) / (room - TEMPLATE_OVERLAP) - 1e-9)
  const each = filled ? room : (total - TEMPLATE_OVERLAP) / count + TEMPLATE_OVERLAP
  return Array.from({ length: count }, (_, i) => {
    const from = i * (each - TEMPLATE_OVERLAP)
    return { from: from - RIM, length: Math.min(each, total - from) }
  })
}

/**
 * Cuts the panel for a room on each sheet in mm: into windows of one size, or where that takes fewer sheets, into full
 * ones and what is left over, several of which are printed on one sheet. Empty ones are left out, and sides beyond
 * which nothing is printed end where their window has nothing more to show.
 */
export function tileTemplate(ground: TemplateGround, width: number, height: number): TemplateTiling {
  const room = { width, height }
  const even = tilingBy(ground, room, [false, false])
  const others = [
    [true, false],
    [false, true],
    [true, true],
  ].map((filled) => packed(ground, tilingBy(ground, room, filled as [boolean, boolean]), room))
  const fewest = (best: TemplateTiling, next: TemplateTiling): TemplateTiling =>
    next.sheets.length < best.sheets.length ? next : best
  return [packed(ground, even, room), ...others].reduce(fewest, even)
}

function tilingBy(
  ground: TemplateGround,
  room: { readonly width: number; readonly height: number },
  [acrossFilled, downFilled]: readonly [boolean, boolean],
): TemplateTiling {
  const across = split(ground.width, room.width - 2 * TICKS, acrossFilled)
  const down = split(ground.height, room.height - 2 * TICKS, downFilled)
  const places = down.flatMap((y, j) =>
    across.map((x, i): TemplateTile => ({
      row: j + 1,
      column: i + 1,
      view: { x: x.from, y: y.from, width: x.length, height: y.length },
    })),
  )
  const lines = linesOf(ground)
  const tiles = places.filter(
    ({ view }) =>
      lines.some((line) => shows(view, line)) ||
      ground.items.some(({ centre }) => contains(cornersOf(view), centre)),
  )
  return {
    ...{ columns: across.length, rows: down.length, overlap: TEMPLATE_OVERLAP, tiles, places },
    sheets: tiles.map((tile) => [{ tile, x: (room.width - tile.view.width) / 2 - TICKS, y: 0 }]),
  }
}

const linesOf = ({ edge, inner, items }: TemplateGround): readonly Outline[] => [
  edge,
  ...inner,
  ...items.map(({ outline }) => outline),
]

/** Windows without what they show nothing in, and as many of them on a sheet as it has room for. */
function packed(
  ground: TemplateGround,
  tiling: TemplateTiling,
  room: { readonly width: number; readonly height: number },
): TemplateTiling {
  const trimmed = new Map(tiling.tiles.map((tile) => [tile, trimmedTile(ground, tiling, tile)]))
  const tiles = [...trimmed.values()]
  const places = tiling.places.map((place) => trimmed.get(place) ?? place)
  return { ...tiling, tiles, places, sheets: shelves(tiles, room) }
}

/** A window that ends where it has nothing more to show, on the sides on which no other is printed. */
function trimmedTile(ground: TemplateGround, tiling: TemplateTiling, tile: TemplateTile): TemplateTile {
  const { view } = tile
  const has = (row: number, column: number): boolean =>
    tiling.tiles.some((other) => other.row === row && other.column === column)
  const seen = shownIn(ground, view)
  const ends = (from: number, to: number, low: number, high: number, before: boolean, after: boolean) => {
    const start = before ? from : Math.max(from, low - RIM)
    const end = after ? to : Math.min(to, high + RIM)
    const missing = Math.max(0, LEAST_WINDOW - (end - start))
    // A strip that is too narrow to handle is wider on the side that is free.
    const later = after ? end : Math.min(to, end + missing)
    return [Math.max(from, Math.min(start, later - LEAST_WINDOW)), later]
  }
  const { row, column } = tile
  const [left, right] = ends(
    ...([view.x, view.x + view.width, seen.x, seen.x + seen.width] as const),
    has(row, column - 1),
    has(row, column + 1),
  ) as [number, number]
  const [top, bottom] = ends(
    ...([view.y, view.y + view.height, seen.y, seen.y + seen.height] as const),
    has(row - 1, column),
    has(row + 1, column),
  ) as [number, number]
  return { ...tile, view: { x: left, y: top, width: right - left, height: bottom - top } }
}

const cornersOf = ({ x, y, width, height }: Bounds): Outline => [
  { x, y },
  { x: x + width, y },
  { x: x + width, y: y + height },
  { x, y: y + height },
]

/** Everything that a view shows of lines and items, as the box round it; the view itself where that is nothing. */
function shownIn({ edge, inner, items }: TemplateGround, view: Bounds): Bounds {
  const [right, bottom] = [view.x + view.width, view.y + view.height]
  const within = ({ x, y }: Point): Point => ({
    x: Math.min(right, Math.max(view.x, x)),
    y: Math.min(bottom, Math.max(view.y, y)),
  })
  const lines = [edge, ...inner].flatMap((line) =>
    line.flatMap((a, i) => pieceWithin(a, line[(i + 1) % line.length]!, view)),
  )
  // An item is shown with what is written in it.
  const boxes = items
    .filter(({ outline }) => shows(view, outline) || contains(outline, { x: view.x, y: view.y }))
    .flatMap(({ outline }) => {
      const box = boundsOf(outline)
      return [box, { x: box.x + box.width, y: box.y + box.height }].map(within)
    })
  const points = [...lines, ...boxes]
  return points.length > 0 ? boundsOf(points) : view
}

/** Both ends of the part of an edge that lies in a view (Liang and Barsky's clipping, 1984); none where none does. */
function pieceWithin(a: Point, b: Point, view: Bounds): Point[] {
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  let [from, to] = [0, 1]
  for (const [p, q] of [
    [-dx, a.x - view.x],
    [dx, view.x + view.width - a.x],
    [-dy, a.y - view.y],
    [dy, view.y + view.height - a.y],
  ] as const) {
    if (p === 0) {
      if (q < 0) return []
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  if (from > to) return []
  return [from, to].map((t) => ({ x: a.x + t * dx, y: a.y + t * dy }))
}

/** Windows on as few sheets as they take, the highest first on shelves from the top left; one alone in the middle. */
function shelves(
  tiles: readonly TemplateTile[],
  room: { readonly width: number; readonly height: number },
): PlacedTile[][] {
  interface Shelf {
    readonly y: number
    readonly height: number
    x: number
  }
  const sheets: { shelves: Shelf[]; placed: PlacedTile[] }[] = []
  const size = ({ view }: TemplateTile) => ({ w: view.width + 2 * TICKS, h: view.height + 2 * TICKS })
  for (const tile of [...tiles].sort((a, b) => b.view.height - a.view.height)) {
    const { w, h } = size(tile)
    const place = (): void => {
      for (const sheet of sheets) {
        const shelf = sheet.shelves.find(
          ({ x, height }) => h <= height + EXACT && x + w <= room.width + EXACT,
        )
        const last = sheet.shelves.at(-1)!
        const y = last.y + last.height
        if (!shelf && y + h > room.height + EXACT) continue
        const on = shelf ?? { y, height: h, x: 0 }
        if (!shelf) sheet.shelves.push(on)
        sheet.placed.push({ tile, x: on.x, y: on.y })
        on.x += w
        return
      }
      sheets.push({ shelves: [{ y: 0, height: h, x: w }], placed: [{ tile, x: 0, y: 0 }] })
    }
    place()
  }
  const order = new Map(tiles.map((tile, i) => [tile, i]))
  const first = (placed: readonly PlacedTile[]): number =>
    Math.min(...placed.map(({ tile }) => order.get(tile)!))
  return sheets
    .map(({ placed }) =>
      placed.length > 1 ? placed : placed.map((one) => ({ ...one, x: (room.width - size(one.tile).w) / 2 })),
    )
    .sort((a, b) => first(a) - first(b))
}

/** Whether any of a closed line lies in a view. */
function shows(view: Bounds, line: Outline): boolean {
  const corners = cornersOf(view)
  return line.some((a, i) => {
    if (contains(corners, a)) return true
    const b = line[(i + 1) % line.length]!
    return corners.some((c, k) => edgesCross(a, b, c, corners[(k + 1) % 4]!))
  })
}

/** One sheet at full size: its window on the panel, and the ticks round it. */
export function templateTileFigure(
  ground: TemplateGround,
  tiling: TemplateTiling,
  tile: TemplateTile,
  measure: MeasureText,
): Figure {
  const { view } = tile
  const { width, height } = view
  const diamonds = markPlaces(tiling, tile)
  const taken = diamonds.map(({ x, y }): Bounds => ({
    x: view.x + x - DIAMOND,
    y: view.y + y - DIAMOND,
    width: 2 * DIAMOND,
    height: 2 * DIAMOND,
  }))
  const items: FigureItem[] = [
    {
      kind: 'group',
      matrix: [1, 0, 0, 1, TICKS - view.x, TICKS - view.y],
      items: [
        {
          kind: 'group',
          clip: rectanglePath(view.x, view.y, width, height),
          items: [...groundLines(ground), ...templateItems(ground, view, measure, taken)],
        },
      ],
    },
    ...joinMarks(tiling, tile),
  ]
  return { width: width + 2 * TICKS, height: height + 2 * TICKS, items }
}

/** The panel at full size. */
const PANEL: PanelLook = {
  edge: { stroke: INK, width: 0.4 },
  seam: { stroke: INK, width: 0.2, dash: [3, 1.5] },
}

/** The folds through the middle of the panel, its seam line and its edge. */
function groundLines(ground: TemplateGround): FigureItem[] {
  const { width, height } = ground
  const folds = [linePath(width / 2, 0, width / 2, height), linePath(0, height / 2, width, height / 2)]
  const paint = { stroke: QUIET_INK, width: 0.15, dash: [6, 1.5, 0.8, 1.5] }
  return [...folds.map((fold) => drawPath(fold, paint)), ...panelItems(ground, PANEL)]
}

/** The windows beside one that are printed. */
function neighbours({ tiles }: TemplateTiling, { row, column }: TemplateTile) {
  const at = (r: number, c: number): TemplateTile | undefined =>
    tiles.find((tile) => tile.row === r && tile.column === c)
  return {
    left: at(row, column - 1),
    right: at(row, column + 1),
    above: at(row - 1, column),
    below: at(row + 1, column),
  }
}

/** Where the middles of the overlaps lie in a window: upright ones and level ones, each with whom it is shared. */
function overlaps(tiling: TemplateTiling, tile: TemplateTile) {
  const half = tiling.overlap / 2
  const { left, right, above, below } = neighbours(tiling, tile)
  const { width, height } = tile.view
  return {
    upright: [
      ...(left ? [{ at: half, other: left }] : []),
      ...(right ? [{ at: width - half, other: right }] : []),
    ],
    level: [
      ...(above ? [{ at: half, other: above }] : []),
      ...(below ? [{ at: height - half, other: below }] : []),
    ],
  }
}

/** Where diamonds stand along what two windows share of a side; in the middle where that is short. */
const MARKS = [0.25, 0.75] as const
/** Half of a diamond, in mm. */
const DIAMOND = 3
/** mm of a shared side that two diamonds need. */
const TWO_MARKS = 40

/** Places of the diamonds along a side that two windows share, from the beginning of the first. */
function along(from: number, length: number, other: Span): number[] {
  const low = Math.max(from, other.from)
  const shared = Math.min(from + length, other.from + other.length) - low
  return (shared < TWO_MARKS ? [0.5] : MARKS).map((share) => low + shared * share - from)
}

/** The middles of the diamonds that a window shares with its neighbours, from its corner. */
function markPlaces(tiling: TemplateTiling, tile: TemplateTile): { x: number; y: number }[] {
  const { upright, level } = overlaps(tiling, tile)
  const { x, y, width, height } = tile.view
  return [
    ...upright.flatMap(({ at, other: { view } }) =>
      along(y, height, { from: view.y, length: view.height }).map((place) => ({ x: at, y: place })),
    ),
    ...level.flatMap(({ at, other: { view } }) =>
      along(x, width, { from: view.x, length: view.width }).map((place) => ({ x: place, y: at })),
    ),
  ]
}

/** Crop ticks in the middle of each overlap, and a diamond on it that the two sheets share. */
function joinMarks(tiling: TemplateTiling, tile: TemplateTile): FigureItem[] {
  const { width, height } = tile.view
  const { upright, level } = overlaps(tiling, tile)
  return [
    ...cropTicks(
      { x: TICKS, y: TICKS, width, height },
      { xs: upright.map(({ at }) => TICKS + at), ys: level.map(({ at }) => TICKS + at) },
      CROP,
    ),
    ...markPlaces(tiling, tile).flatMap(({ x, y }) => diamond(TICKS + x, TICKS + y)),
  ]
}

const diamond = (x: number, y: number): FigureItem[] => [
  drawPath(diamondPath(x, y, DIAMOND), { stroke: INK, width: 0.25 }),
  drawPath(crossPath(x, y, DIAMOND), { stroke: INK, width: 0.12 }),
]

/** The whole panel in small with its windows, those of the current sheet filled. */
export function templateKey(
  ground: TemplateGround,
  tiling: TemplateTiling,
  current: readonly TemplateTile[],
  width: number,
  height: number,
): Figure {
  const printed = new Set(tiling.tiles)
  const here = new Set(current)
  const sheets = tiling.places.map((place) => {
    const box = cutBox(tiling, place)
    return {
      area: { ...box, x: box.x + RIM, y: box.y + RIM },
      name: printed.has(place) ? tileName(place) : '',
      isHere: here.has(place),
    }
  })
  const size = { width: ground.width + 2 * RIM, height: ground.height + 2 * RIM }
  return sheetKey(sheets, size, { width, height })
}

/** "2·3": row 2, column 3. */
export const tileName = ({ row, column }: TemplateTile): string => `${row}·${column}`

/** What is left of a window when every overlap is cut in its middle. */
export function cutBox(tiling: TemplateTiling, tile: TemplateTile): Bounds {
  const half = tiling.overlap / 2
  const { left, right, above, below } = neighbours(tiling, tile)
  const { x, y, width, height } = tile.view
  return {
    x: x + (left ? half : 0),
    y: y + (above ? half : 0),
    width: width - (left ? half : 0) - (right ? half : 0),
    height: height - (above ? half : 0) - (below ? half : 0),
  }
}
