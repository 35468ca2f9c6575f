/** Places for the round numbers: near where each round begins, clear of every symbol. */
import type { Point } from '../../../shared-types/plan'
import { distance } from './symbols'

/** Radius that a number needs, in mm: a figure of 8 pt. */
const NEEDS = 1.4
const DIRECTIONS = 24
const STEP = 0.55

interface PlacedNumber extends Point {
  /** The round's beginning, where the number stands so far from it that a line leads there. */
  readonly from: Point | null
}

/** Points of the ink in small cells, so that only near ones are asked, and in a dense chart hardly any. */
export class Clearance {
  private readonly cells = new Map<number, Point[]>()

  add(points: readonly Point[]): void {
    for (const point of points) {
      const key = keyOf(Math.floor(point.x / CELL), Math.floor(point.y / CELL))
      const cell = this.cells.get(key)
      if (cell) cell.push(point)
      else this.cells.set(key, [point])
    }
  }

  /** Whether nothing lies nearer than `radius`. */
  free(at: Point, radius: number): boolean {
    const x = Math.floor(at.x / CELL)
    const y = Math.floor(at.y / CELL)
    const reach = Math.ceil(radius / CELL)
    const asked: Point[][] = []
    for (let i = x - reach; i <= x + reach; i++)
      for (let j = y - reach; j <= y + reach; j++) {
        const cell = this.cells.get(keyOf(i, j))
        if (!cell) continue
        if (farthestOf(at, i, j) < radius) return false
        asked.push(cell)
      }
    return asked.every((cell) => cell.every((point) => distance(point, at) >= radius))
  }
}

/** mm. Well below the room that a number needs, so that most cells lie within it or outside of it altogether. */
const CELL = 0.5
/** One number for both indices of a cell: a page has far fewer cells in a row. */
const keyOf = (x: number, y: number): number => x * 65_536 + y

/** Distance of the farthest corner of a cell. */
const farthestOf = ({ x, y }: Point, i: number, j: number): number =>
  Math.hypot(Math.max(x - i * CELL, (i + 1) * CELL - x), Math.max(y - j * CELL, (j + 1) * CELL - y))

/** The free place nearest to a round's beginning; outward of it and before it are looked at first. */
export function placeNumber(start: Point, centre: Point, ink: Clearance, farthest: number): PlacedNumber {
  const outward = Math.atan2(start.x - centre.x, centre.y - start.y)
  for (let r = NEEDS + 0.2; r < farthest; r += STEP) {
    for (let k = 0; k < DIRECTIONS; k++) {
      // 0, +1, −1, +2, −2 … steps away from outward.
      const turn = (Math.ceil(k / 2) * (k % 2 === 0 ? -1 : 1) * 2 * Math.PI) / DIRECTIONS
      const angle = outward + turn
      const at = { x: start.x + r * Math.sin(angle), y: start.y - r * Math.cos(angle) }
      if (ink.free(at, NEEDS)) return { ...at, from: r > 3 * NEEDS ? start : null }
    }
  }
  const angle = outward
  return {
    x: centre.x + farthest * Math.sin(angle),
    y: centre.y - farthest * Math.cos(angle),
    from: start,
  }
}
