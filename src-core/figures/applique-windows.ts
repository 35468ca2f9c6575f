/** The windows of a template: an appliqué at full size, cut into parts that overlap and fill sheets of paper. */
import { edgesCross } from '../geometry/edges'
import { contains } from '../geometry/points'
import type { Point } from '../../shared-types/plan'
import type { Outline } from '../geometry/points'
import type { TemplateGround } from './applique-ground'
import type { Bounds } from './figure'
import { boundsOf } from './path'

/** Printed mm that two neighbouring sheets both show, and what is enough where that saves a sheet (trade practice: 5 to 10 mm). */
const TEMPLATE_OVERLAPS = [10, 6] as const
/** Room round the window of a sheet for the crop ticks. */
export const TICKS = 5
/** Beyond the panel's edge, so that its line prints whole. */
export const RIM = 3
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

export interface Span {
  readonly from: number
  readonly length: number
}

/** Windows of `room` mm at most, overlapping, that cover a length: of one size, or each as large as it can be. */
function split(length: number, room: number, overlap: number, filled: boolean): Span[] {
  const total = length + 2 * RIM
  if (total <= room) return [{ from: -RIM, length: total }]
  const count = Math.ceil((total - overlap) / (room - overlap) - 1e-9)
  const each = filled ? room : (total - overlap) / count + overlap
  return Array.from({ length: count }, (_, i) => {
    const from = i * (each - overlap)
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
  const even = TEMPLATE_OVERLAPS.map((overlap) => tilingBy(ground, room, overlap, [false, false]))
  const others = [
    [false, false],
    [true, false],
    [false, true],
    [true, true],
  ].flatMap((filled) =>
    TEMPLATE_OVERLAPS.map((overlap) =>
      packed(ground, tilingBy(ground, room, overlap, filled as [boolean, boolean]), room),
    ),
  )
  const fewest = (best: TemplateTiling, next: TemplateTiling): TemplateTiling =>
    next.sheets.length < best.sheets.length ? next : best
  return [...even, ...others].reduce(fewest)
}

function tilingBy(
  ground: TemplateGround,
  room: { readonly width: number; readonly height: number },
  overlap: number,
  [acrossFilled, downFilled]: readonly [boolean, boolean],
): TemplateTiling {
  const across = split(ground.width, room.width - 2 * TICKS, overlap, acrossFilled)
  const down = split(ground.height, room.height - 2 * TICKS, overlap, downFilled)
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
    ...{ columns: across.length, rows: down.length, overlap, tiles, places },
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
