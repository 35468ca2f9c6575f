/** Regions of a grid: pieces that hang together, holes, and the hull round them as four sides. */
import { polygonArea, polygonHull } from 'd3-polygon'
import type { Corners } from './homography'
import type { Spot } from './picture'

/** A grid of yes (1) and no (0). */
export interface Mask {
  readonly width: number
  readonly height: number
  readonly on: Uint8Array
}

/** How many places of it are on. */
export function countOf({ on }: Mask): number {
  let count = 0
  for (let at = 0; at < on.length; at++) count += on[at]!
  return count
}

export interface Region {
  /** Indices of its places. */
  readonly places: Int32Array
  /** How many of its places lie on the rim of the grid. */
  readonly onRim: number
}

/** The pieces of a mask that hang together by sides, of at least `least` places. */
export function regions({ width, height, on }: Mask, least: number): Region[] {
  const seen = new Uint8Array(on.length)
  const stack = new Int32Array(on.length)
  const found: Region[] = []
  for (let start = 0; start < on.length; start++) {
    if (!on[start] || seen[start]) continue
    let read = 0
    let filled = 0
    let onRim = 0
    stack[filled++] = start
    seen[start] = 1
    while (read < filled) {
      const at = stack[read++]!
      const y = (at / width) | 0
      const x = at - y * width
      if (x === 0 || y === 0 || x === width - 1 || y === height - 1) onRim++
      if (x > 0 && on[at - 1] && !seen[at - 1]) {
        seen[at - 1] = 1
        stack[filled++] = at - 1
      }
      if (x < width - 1 && on[at + 1] && !seen[at + 1]) {
        seen[at + 1] = 1
        stack[filled++] = at + 1
      }
      if (y > 0 && on[at - width] && !seen[at - width]) {
        seen[at - width] = 1
        stack[filled++] = at - width
      }
      if (y < height - 1 && on[at + width] && !seen[at + width]) {
        seen[at + width] = 1
        stack[filled++] = at + width
      }
    }
    if (filled >= least) found.push({ places: stack.slice(0, filled), onRim })
  }
  return found
}

/** A region by itself, with its holes filled. */
export function filled(region: Region, width: number, height: number): Mask {
  const { places } = region
  const count = width * height
  // 2 where it is; whatever can be reached from the rim without it lies outside.
  const on = new Uint8Array(count).fill(1)
  for (let at = 0; at < places.length; at++) on[places[at]!] = 2
  const stack = new Int32Array(count)
  let left = 0
  const add = (at: number) => {
    if (on[at] !== 1) return
    on[at] = 0
    stack[left++] = at
  }
  for (let x = 0; x < width; x++) {
    add(x)
    add(count - width + x)
  }
  for (let at = 0; at < count; at += width) {
    add(at)
    add(at + width - 1)
  }
  while (left > 0) {
    const at = stack[--left]!
    const x = at % width
    if (x > 0) add(at - 1)
    if (x < width - 1) add(at + 1)
    if (at >= width) add(at - width)
    if (at < count - width) add(at + width)
  }
  for (let at = 0; at < count; at++) if (on[at] === 2) on[at] = 1
  return { width, height, on }
}

/** The convex hull of a mask's places, as corners of those places. */
export function hullOf({ width, height, on }: Mask): Spot[] {
  const points: [number, number][] = []
  for (let y = 0; y < height; y++) {
    let first = -1
    let last = -1
    for (let x = 0; x < width; x++)
      if (on[y * width + x]) {
        if (first < 0) first = x
        last = x
      }
    if (first >= 0) points.push([first, y], [last + 1, y], [first, y + 1], [last + 1, y + 1])
  }
  return (polygonHull(points) ?? []).map(([x, y]) => ({ x, y }))
}

export const areaOf = (points: readonly Spot[]): number =>
  Math.abs(polygonArea(points.map(({ x, y }) => [x, y])))

/** Where the lines through two pairs of points meet; null where they are parallel. */
export function crossing(a: Spot, b: Spot, c: Spot, d: Spot): Spot | null {
  const ux = b.x - a.x
  const uy = b.y - a.y
  const vx = d.x - c.x
  const vy = d.y - c.y
  const across = ux * vy - uy * vx
  if (Math.abs(across) < 1e-9 * Math.hypot(ux, uy) * Math.hypot(vx, vy)) return null
  const t = ((c.x - a.x) * vy - (c.y - a.y) * vx) / across
  return { x: a.x + t * ux, y: a.y + t * uy }
}

/**
 * A convex polygon reduced to four sides, each time by leaving out the side that adds least when its neighbours are
 * drawn out until they meet.
 */
export function fourSides(hull: readonly Spot[]): Corners | null {
  let points = [...hull]
  while (points.length > 4) {
    let best: { at: number; meet: Spot; added: number } | null = null
    for (let at = 0; at < points.length; at++) {
      const n = points.length
      const [before, from, to, after] = [-1, 0, 1, 2].map((by) => points[(at + by + n) % n]!) as [
        Spot,
        Spot,
        Spot,
        Spot,
      ]
      const meet = crossing(before, from, after, to)
      if (!meet) continue
      // Neighbours that part outwards never meet there.
      const outwards = (meet.x - from.x) * (from.x - before.x) + (meet.y - from.y) * (from.y - before.y)
      if (outwards < 0) continue
      const added = areaOf([from, meet, to])
      if (!best || added < best.added) best = { at, meet, added }
    }
    if (!best) return null
    const after = (best.at + 1) % points.length
    points[best.at] = best.meet
    points = points.filter((_, index) => index !== after)
  }
  return points.length === 4 ? (points as unknown as Corners) : null
}
