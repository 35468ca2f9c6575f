/** A big map in sheets: equal cuts of the plan, each printed with an overlap, crop ticks and a small key map. */
import type { Bounds, Figure, FigureItem } from './figure'
import { drawPath, drawText, INK, PAPER } from './figure'
import type { MapGround, MapPainter } from './map'
import { directionArrows, placeNumbers, rowNumbers, tick } from './map-edges'
import { rectanglePath } from './path'
import type { MapRow } from './rows'

/** Room round the window of a sheet, in printed mm: row numbers, arrows and crop ticks stand in it. */
const LEFT = 10
const RIGHT = 9
const TOP = 8
const BOTTOM = 4
const TICK = 3
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
  const { size } = ground.plan
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
        places: span(own.map((motif) => motif.column)),
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
  const items: FigureItem[] = [
    ...placeNumbers(places, x, TOP - 3.6),
    ...rowNumbers(rows, y, LEFT - 3.6),
    ...(ground.byRows ? directionArrows(rows, y, LEFT + width + 3.6) : []),
    {
      kind: 'group',
      matrix: [1, 0, 0, 1, LEFT, TOP],
      items: [{ kind: 'group', clip: rectanglePath(0, 0, width, height), items: painter.window(view) }],
    },
    ...cropTicks(tile, tiling, width, height),
  ]
  return { width: LEFT + width + RIGHT, height: TOP + height + BOTTOM, items }
}

/** Ticks outside of the window that show where to cut; sides at the edge of the map need none. */
function cropTicks({ area, view }: MapTile, { scale }: Tiling, width: number, height: number): FigureItem[] {
  const items: FigureItem[] = []
  const xs = [
    area.x > view.x + 1e-6 ? LEFT + (area.x - view.x) * scale : null,
    area.x + area.width < view.x + view.width - 1e-6 ? LEFT + (area.x + area.width - view.x) * scale : null,
  ]
  const ys = [
    area.y > view.y + 1e-6 ? TOP + (area.y - view.y) * scale : null,
    area.y + area.height < view.y + view.height - 1e-6 ? TOP + (area.y + area.height - view.y) * scale : null,
  ]
  for (const x of xs) {
    if (x === null) continue
    items.push(tick(x, TOP - TICK, x, TOP - 0.4), tick(x, TOP + height + 0.4, x, TOP + height + TICK))
  }
  for (const y of ys) {
    if (y === null) continue
    items.push(tick(LEFT - TICK, y, LEFT - 0.4, y), tick(LEFT + width + 0.4, y, LEFT + width + TICK, y))
  }
  return items
}

/** All sheets in small, the current one filled. */
export function keyMap(
  tiling: Tiling,
  ground: MapGround,
  current: number,
  width: number,
  height: number,
): Figure {
  const { size } = ground.plan
  const scale = Math.min(width / size.width, height / size.height)
  const items: FigureItem[] = []
  for (const { area, number } of tiling.tiles) {
    const box = [area.x * scale, area.y * scale, area.width * scale, area.height * scale] as const
    const here = number === current
    items.push(drawPath(rectanglePath(...box), { fill: here ? INK : PAPER, stroke: INK, width: 0.2 }))
    if (box[2] > 4 && box[3] > 3.4) {
      items.push(
        drawText(String(number), box[0] + box[2] / 2, box[1] + box[3] / 2 + 0.85, 7, {
          anchor: 'middle',
          weight: here ? 'bold' : 'regular',
          colour: here ? PAPER : INK,
        }),
      )
    }
  }
  return { width: size.width * scale, height: size.height * scale, items }
}
