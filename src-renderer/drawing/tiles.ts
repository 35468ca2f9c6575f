/**
 * The map as tiles: pieces of the picture painted once at one scale and then only copied, so that panning costs
 * a few copies, and painting a motif touches its own corner of a tile. A level is all tiles of one scale. Where
 * a tile is still missing, what is known from the level before, or from the level that shows the whole,
 * stands in until it is there.
 */
import type { Box } from '../../src-core/geometry/points'
import { paintMap } from './map-painter'
import type { Pen } from './canvas'
import type { Placing } from './pen'
import type { Difference, Picture } from './picture'

/** Side of a tile in device pixels. */
export const TILE = 512
/** Tiles kept at most over all levels: 1 MB each. */
const MOST_TILES = 96
/** Changed motifs up to which a tile is mended instead of painted anew. */
const MOST_PATCHES = 48
/** Device pixels round a changed motif that are mended with it: contours and join marks reach over its edge. */
const PATCH_MARGIN = 6

export interface Surface {
  readonly image: CanvasImageSource
  readonly pen: Pen
}

interface Tile {
  readonly surface: Surface
  /** Needs painting anew. */
  stale: boolean
  /** Boxes in mm that need mending. */
  patches: Box[]
  used: number
}

interface Level {
  readonly scale: number
  readonly tiles: Map<string, Tile>
}

/** The visible part of the canvas: its size in device pixels. */
interface Window {
  readonly width: number
  readonly height: number
}

/** Copies pieces onto the screen's canvas. */
export type Copy = (
  image: CanvasImageSource,
  left: number,
  top: number,
  width: number,
  height: number,
) => void

export interface Screen {
  readonly copy: Copy
  /** Clears a rectangle in device pixels. */
  readonly clear: (left: number, top: number, width: number, height: number) => void
  /** Runs `draw` with everything outside the rectangles cut off. */
  readonly within: (
    rectangles: readonly (readonly [number, number, number, number])[],
    draw: () => void,
  ) => void
}

export class TileStore {
  readonly #makeSurface: () => Surface
  readonly #spare: Surface[] = []
  #picture: Picture | null = null
  #levels: Level[] = []
  #clock = 0

  constructor(makeSurface: () => Surface) {
    this.#makeSurface = makeSurface
  }

  /** Takes a new picture and marks what of the tiles is no longer right. */
  update(picture: Picture, difference: Difference): void {
    this.#picture = picture
    if (difference === 'nothing') return
    const boxes = difference === 'everything' ? null : difference
    for (const level of this.#levels)
      for (const [key, tile] of level.tiles) {
        if (tile.stale) continue
        const met = boxes?.filter((box) => meets(box, boxOfTile(key, level.scale, PATCH_MARGIN)))
        if (!met || tile.patches.length + met.length > MOST_PATCHES) tile.stale = true
        else tile.patches.push(...met)
      }
  }

  /**
   * Shows the picture through `screen`. Tiles are painted while `goOn()` allows it (one at least); answers
   * whether all that is visible is painted.
   */
  show(screen: Screen, window: Window, placing: Placing, goOn: () => boolean): boolean {
    const picture = this.#picture
    if (!picture) return true
    this.#clock++
    const level = this.#level(placing.scale)
    const missing: (readonly [number, number])[] = []
    let painted = 0
    for (const [column, row] of tilesIn(window, placing)) {
      const tile = this.#tile(level, column, row)
      const right = tile && !tile.stale && tile.patches.length === 0
      if (!right && (painted === 0 || goOn())) {
        this.#paint(level, column, row, placing.ratio)
        painted++
      } else if (!right) {
        missing.push([column, row])
        if (!tile || tile.stale) continue
      }
      const done = this.#tile(level, column, row)!
      screen.copy(done.surface.image, column * TILE + placing.x, row * TILE + placing.y, TILE, TILE)
    }
    const holes = missing.filter(([column, row]) => this.#tile(level, column, row)?.stale !== false)
    if (holes.length > 0)
      this.#standIn(
        screen,
        placing,
        holes.map(
          ([column, row]) => [column * TILE + placing.x, row * TILE + placing.y, TILE, TILE] as const,
        ),
        level,
      )
    this.#tidy(level)
    return missing.length === 0
  }

  /** Shows what is painted at other scales, stretched to this one, for the length of a zoom. */
  showStretched(screen: Screen, window: Window, placing: Placing): void {
    this.#clock++
    this.#standIn(screen, placing, [[0, 0, window.width, window.height]], null)
  }

  /** Paints one missing tile of the level that shows the whole; answers whether there was one. */
  prepareWhole(scale: number, ratio: number): boolean {
    const picture = this.#picture
    if (!picture || picture.motifs.length === 0) return false
    const { width, height } = picture.plan.size
    const across = Math.ceil((width * scale) / TILE)
    const down = Math.ceil((height * scale) / TILE)
    if (across * down > MOST_TILES / 3) return false
    const level = this.#level(scale)
    for (let row = 0; row < down; row++)
      for (let column = 0; column < across; column++) {
        const tile = this.#tile(level, column, row)
        if (tile && !tile.stale && tile.patches.length === 0) continue
        this.#paint(level, column, row, ratio)
        return true
      }
    return false
  }

  /** Forgets every tile, as when the screen's resolution changes. */
  clear(): void {
    for (const level of this.#levels) for (const tile of level.tiles.values()) this.#spare.push(tile.surface)
    this.#levels = []
  }

  /** How many tiles are kept. */
  get count(): number {
    return this.#levels.reduce((sum, level) => sum + level.tiles.size, 0)
  }

  #level(scale: number): Level {
    const known = this.#levels.find((level) => level.scale === scale)
    if (known) return known
    const level = { scale, tiles: new Map<string, Tile>() }
    this.#levels.push(level)
    return level
  }

  #tile(level: Level, column: number, row: number): Tile | undefined {
    const tile = level.tiles.get(`${column},${row}`)
    if (tile) tile.used = this.#clock
    return tile
  }

  #paint(level: Level, column: number, row: number, ratio: number): void {
    const picture = this.#picture!
    const key = `${column},${row}`
    let tile = level.tiles.get(key)
    if (!tile) {
      tile = {
        surface: this.#spare.pop() ?? this.#makeSurface(),
        stale: true,
        patches: [],
        used: this.#clock,
      }
      level.tiles.set(key, tile)
    }
    const { pen } = tile.surface
    const placing = { scale: level.scale, x: -column * TILE, y: -row * TILE, ratio }
    pen.setTransform(1, 0, 0, 1, 0, 0)
    if (tile.stale) {
      pen.clearRect(0, 0, TILE, TILE)
      paintMap(pen, picture, placing, boxOfTile(key, level.scale, PATCH_MARGIN))
    } else for (const box of tile.patches) mend(pen, picture, placing, box)
    tile.stale = false
    tile.patches = []
  }

  /** Draws what other levels know inside the rectangles: the whole first, then the finest that is there. */
  #standIn(
    screen: Screen,
    placing: Placing,
    rectangles: readonly (readonly [number, number, number, number])[],
    but: Level | null,
  ): void {
    const others = this.#levels.filter((level) => level !== but).sort((a, b) => a.scale - b.scale)
    if (others.length === 0) return
    screen.within(rectangles, () => {
      for (const level of others) {
        const factor = placing.scale / level.scale
        const edge = (index: number, origin: number) => Math.round(index * TILE * factor + origin)
        for (const [key, tile] of level.tiles) {
          if (tile.stale) continue
          const [column, row] = parseKey(key)
          const left = edge(column, placing.x)
          const top = edge(row, placing.y)
          const width = edge(column + 1, placing.x) - left
          const height = edge(row + 1, placing.y) - top
          if (
            !rectangles.some(
              ([x, y, w, h]) => left < x + w && left + width > x && top < y + h && top + height > y,
            )
          )
            continue
          tile.used = this.#clock
          screen.clear(left, top, width, height)
          screen.copy(tile.surface.image, left, top, width, height)
        }
      }
    })
  }

  /** Lets the tiles go that were not seen for longest, once there are too many. */
  #tidy(current: Level): void {
    const over = this.count - MOST_TILES
    if (over > 0) {
      const all = this.#levels.flatMap((level) =>
        [...level.tiles].map(([key, tile]) => ({ level, key, tile })),
      )
      all.sort((a, b) => a.tile.used - b.tile.used)
      for (const { level, key, tile } of all.slice(0, over)) {
        level.tiles.delete(key)
        this.#spare.push(tile.surface)
      }
    }
    this.#levels = this.#levels.filter((level) => level === current || level.tiles.size > 0)
    this.#spare.length = Math.min(this.#spare.length, 8)
  }
}

/** Repaints one box of a tile in place, on whole pixels so that no seam shows. */
function mend(pen: Pen, picture: Picture, placing: Placing, box: Box): void {
  const left = Math.floor(box.left * placing.scale + placing.x) - PATCH_MARGIN
  const top = Math.floor(box.top * placing.scale + placing.y) - PATCH_MARGIN
  const right = Math.ceil(box.right * placing.scale + placing.x) + PATCH_MARGIN
  const bottom = Math.ceil(box.bottom * placing.scale + placing.y) + PATCH_MARGIN
  pen.save()
  pen.setTransform(1, 0, 0, 1, 0, 0)
  pen.beginPath()
  pen.rect(left, top, right - left, bottom - top)
  pen.clip()
  pen.clearRect(left, top, right - left, bottom - top)
  paintMap(pen, picture, placing, {
    left: (left - PATCH_MARGIN - placing.x) / placing.scale,
    top: (top - PATCH_MARGIN - placing.y) / placing.scale,
    right: (right + PATCH_MARGIN - placing.x) / placing.scale,
    bottom: (bottom + PATCH_MARGIN - placing.y) / placing.scale,
  })
  pen.restore()
}

/** Columns and rows of the tiles that a window shows. */
export function tilesIn(window: Window, placing: Placing): (readonly [number, number])[] {
  const tiles: (readonly [number, number])[] = []
  const firstColumn = Math.floor(-placing.x / TILE)
  const lastColumn = Math.floor((window.width - 1 - placing.x) / TILE)
  const firstRow = Math.floor(-placing.y / TILE)
  const lastRow = Math.floor((window.height - 1 - placing.y) / TILE)
  for (let row = firstRow; row <= lastRow; row++)
    for (let column = firstColumn; column <= lastColumn; column++) tiles.push([column, row])
  return tiles
}

function parseKey(key: string): [number, number] {
  const comma = key.indexOf(',')
  return [Number(key.slice(0, comma)), Number(key.slice(comma + 1))]
}

/** The part of the plan in mm that a tile shows, `margin` device pixels wider. */
function boxOfTile(key: string, scale: number, margin: number): Box {
  const [column, row] = parseKey(key)
  return {
    left: (column * TILE - margin) / scale,
    top: (row * TILE - margin) / scale,
    right: ((column + 1) * TILE + margin) / scale,
    bottom: ((row + 1) * TILE + margin) / scale,
  }
}

const meets = (a: Box, b: Box): boolean =>
  a.left <= b.right && a.right >= b.left && a.top <= b.bottom && a.bottom >= b.top
