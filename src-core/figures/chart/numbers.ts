/** Places for the round numbers: near where each round begins, clear of every symbol. */
import type { Point } from '../../../shared-types/plan'
import { distance } from './symbols'

/** Radius that a number needs, in mm: a figure of 8 pt. */
const NEEDS = 1.4
const DIRECTIONS = 24
const STEP = 0.55

export interface PlacedNumber extends Point {
  /** The round's beginning, where the number stands so far from it that a line leads there. */
  readonly from: Point | null
}

/** Points of the ink in cells, so that only near ones are asked. */
export class Clearance {
  private readonly cells = new Map<string, Point[]>()

  add(points: readonly Point[]): void {
    for (const point of points) {
      const key = keyOf(Math.floor(point.x / CELL), Math.floor(point.y / CELL))
      const cell = this.cells.get(key)
      if (cell) cell.push(point)
      else this.cells.set(key, [point])
    }
  }

  /** Whether nothing lies nearer than `radius` (at most a cell). */
  free(at: Point, radius: number): boolean {
    const x = Math.floor(at.x / CELL)
    const y = Math.floor(at.y / CELL)
    for (let i = x - 1; i <= x + 1; i++)
      for (let j = y - 1; j <= y + 1; j++)
        for (const point of this.cells.get(keyOf(i, j)) ?? []) if (distance(point, at) < radius) return false
    return true
  }
}

const CELL = 3
const keyOf = (x: number, y: number): string => `${x} ${y}`

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
