/** A big map in sheets: equal cuts of the plan, each printed with an overlap, crop ticks and a small key map. */
import { mapSize, placeInRow } from '../layout/placed'
import type { Bounds, Figure, FigureItem } from './figure'
import { QUIET_INK } from './figure'
import type { MapPainter } from './map'
import type { MapGround } from './map-ground'
import { directionArrows, placeNumbers, rowNumbers } from './map-edges'
import { rectanglePath } from './path'
import type { MapRow } from './rows'
import { cropTicks, sheetKey } from './sheet-marks'

/** Room round the window of a sheet, in printed mm: row numbers, arrows and crop ticks stand in it. */
const LEFT = 10
const RIGHT = 9
const TOP = 8
const BOTTOM = 4
/** Ticks that show where to cut. */
const CROP = { paint: { stroke: QUIET_INK, width: 0.2 }, from: 0.4, to: 3 } as const
/** Enough for laying one sheet on the other (from memory: 5 to 10 mm are usual). */
const LEAST_OVERLAP = 8

export interface MapTile {
  /** From 1, row of sheets by row of sheets. */
  readonly number: number
  /** What this sheet owns, in plan mm: the crop ticks stand at its corners. */
  readonly area: Bounds
  /** What it shows, the overlap included. */
  readonly view: Bounds
  /** Rows and places whose centres it owns. */
  readonly rows: readonly [number, number] | null
  readonly places: readonly [number, number] | null
  readonly motifs: number
}

export interface Tiling {
  readonly scale: number
  /** Overlap on each inner side, in printed mm. */
  readonly overlap: number
  readonly columns: number
  readonly rows: number
  readonly tiles: readonly MapTile[]
}

/** Cuts lie between motifs where they can: the middle between two neighbouring centres nearest to an even cut. */
function cuts(total: number, count: number, centres: readonly number[]): number[] {
  const sorted = [...new Set(centres.map((c) => Math.round(c * 10) / 10))].sort((a, b) => a - b)
  const gaps = sorted.slice(1).map((c, i) => (c + sorted[i]!) / 2)
  const result = [0]
  for (let i = 1; i < count; i++) {
    const even = (total * i) / count
    const near = gaps.reduce((best, gap) => (Math.abs(gap - even) < Math.abs(best - even) ? gap : best), even)
    result.push(Math.abs(near - even) < total / count / 6 ? near : even)
  }
  return [...result, total]
}

const span = (values: readonly number[]): [number, number] | null =>
  values.length === 0
    ? null
    : [values.reduce((a, b) => Math.min(a, b)), values.reduce((a, b) => Math.max(a, b))]

/** How a box of printed mm holds the plan in sheets at a scale; a motif that a sheet owns is whole on it, if half a sheet can hold it. */
export function tileMap(ground: MapGround, scale: number, width: number, height: number): Tiling {
  const size = mapSize(ground.plan)
  const roomX = width - LEFT - RIGHT
  const roomY = height - TOP - BOTTOM
  // A motif that is larger than half a sheet is cut like the rest; its number still stands whole on its own sheet.
  const overlap = Math.min(Math.max(LEAST_OVERLAP, ground.tip * scale + 1), roomX / 4, roomY / 4)
  const count = (length: number, room: number): number =>
    length * scale <= room ? 1 : Math.max(2, Math.ceil((length * scale) / (room - 2 * overlap) - 1e-9))
  const columns = count(size.width, roomX)
  const rows = count(size.height, roomY)
  const longest = ground.rows.reduce<MapRow | undefined>(
    (best, row) => (row.motifs.length > (best?.motifs.length ?? 0) ? row : best),
    undefined,
  )
  const xs = cuts(size.width, columns, longest?.motifs.map((motif) => motif.x) ?? [])
  const ys = cuts(
    size.height,
    rows,
    ground.rows.map((row) => row.y),
  )
  const pad = overlap / scale
  const owned = sortMotifs(ground, xs, ys)
  const tiles: MapTile[] = []
  for (let j = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++) {
      const area = between(xs[i]!, ys[j]!, xs[i + 1]!, ys[j + 1]!)
      const view = between(
        Math.max(0, xs[i]! - (i > 0 ? pad : 0)),
        Math.max(0, ys[j]! - (j > 0 ? pad : 0)),
        Math.min(size.width, xs[i + 1]! + (i < columns - 1 ? pad : 0)),
        Math.min(size.height, ys[j + 1]! + (j < rows - 1 ? pad : 0)),
      )
      const own = owned[j * columns + i]!
      if (own.length === 0) continue
      tiles.push({
        number: tiles.length + 1,
        area,
        view,
        rows: span(own.map((motif) => motif.row)),
        places: span(own.map((motif) => placeInRow(ground.plan, motif))),
        motifs: own.length,
      })
    }
  }
  return { scale, overlap, columns, rows, tiles }
}

const between = (left: number, top: number, right: number, bottom: number): Bounds => ({
  x: left,
  y: top,
  width: right - left,
  height: bottom - top,
})

function sortMotifs(ground: MapGround, xs: readonly number[], ys: readonly number[]) {
  const index = (cutsAt: readonly number[], value: number): number => {
    let i = 0
    while (i < cutsAt.length - 2 && value >= cutsAt[i + 1]!) i++
    return i
  }
  const columns = xs.length - 1
  const owned: MapGround['plan']['motifs'][number][][] = Array.from(
    { length: columns * (ys.length - 1) },
    () => [],
  )
  for (const motif of ground.plan.motifs)
    owned[index(ys, motif.y) * columns + index(xs, motif.x)]!.push(motif)
  return owned
}

/** One sheet of the map, as large as its window and the room round it. */
export function tileFigure(painter: MapPainter, tiling: Tiling, tile: MapTile): Figure {
  const { scale } = tiling
  const { view } = tile
  const { ground } = painter
  const width = view.width * scale
  const height = view.height * scale
  const y = (row: MapRow): number => TOP + (row.y - view.y) * scale
  const x = (planX: number): number => LEFT + (planX - view.x) * scale
  // The overlap has its numbers too: shifted rows own places whose number stands above the row before.
  const rows = ground.rows.filter((row) => row.y >= view.y && row.y <= view.y + view.height)
  const places = ground.places.filter((place) => place.x >= view.x && place.x <= view.x + view.width)
  const inner = cutsIn(tile)
  const items: FigureItem[] = [
    ...placeNumbers(places, x, TOP - 3.6),
    ...rowNumbers(rows, y, LEFT - 3.6),
    ...(ground.byRows ? directionArrows(rows, y, LEFT + width + 3.6) : []),
    {
      kind: 'group',
      matrix: [1, 0, 0, 1, LEFT, TOP],
      items: [{ kind: 'group', clip: rectanglePath(0, 0, width, height), items: painter.window(view) }],
    },
    ...cropTicks(
      { x: LEFT, y: TOP, width, height },
      { xs: inner.xs.map((mm) => LEFT + mm * scale), ys: inner.ys.map((mm) => TOP + mm * scale) },
      CROP,
    ),
  ]
  return { width: LEFT + width + RIGHT, height: TOP + height + BOTTOM, items }
}

/** Where a window is cut, in mm from its top left; sides at the edge of the map are not. */
function cutsIn({ area, view }: MapTile): { xs: number[]; ys: number[] } {
  const inner = (start: number, length: number, from: number, all: number): number[] =>
    [start - from, start + length - from].filter((cut) => cut > 1e-6 && cut < all - 1e-6)
  return {
    xs: inner(area.x, area.width, view.x, view.width),
    ys: inner(area.y, area.height, view.y, view.height),
  }
}

/** All sheets in small, the current one filled. */
export const keyMap = (
  { tiles }: Tiling,
  { plan }: MapGround,
  current: number,
  width: number,
  height: number,
): Figure =>
  sheetKey(
    tiles.map(({ area, number }) => ({ area, name: String(number), isHere: number === current })),
    mapSize(plan),
    { width, height },
  )
