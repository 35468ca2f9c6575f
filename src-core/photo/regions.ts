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

/** A grid cut into runs of places that are alike, row by row, and which of them hang together. */
interface Runs {
  readonly count: number
  /** First place of each run, and the one behind its last. */
  readonly from: Int32Array
  readonly to: Int32Array
  /** The first run of the piece that it belongs to. */
  readonly piece: Int32Array
}

/** The runs of places that have a value, those hanging together by sides as one piece. */
function runsOf({ width, height, on }: Mask, value: 0 | 1): Runs {
  let room = 1024
  let [from, to, piece] = [new Int32Array(room), new Int32Array(room), new Int32Array(room)]
  let count = 0
  let before = 0
  for (let y = 0; y < height; y++) {
    const first = count
    const end = (y + 1) * width
    let above = before
    for (let at = y * width; at < end;) {
      if (on[at] !== value) {
        at++
        continue
      }
      const start = at
      while (at < end && on[at] === value) at++
      if (count === room) {
        room *= 2
        ;[from, to, piece] = [from, to, piece].map((each) => {
          const more = new Int32Array(room)
          more.set(each)
          return more
        }) as [Int32Array<ArrayBuffer>, Int32Array<ArrayBuffer>, Int32Array<ArrayBuffer>]
      }
      from[count] = start
      to[count] = at
      let own = count
      piece[own] = own
      // Those of the row above that it lies under; the last of them may reach over the next one too.
      while (above < first && to[above]! + width <= start) above++
      for (let each = above; each < first && from[each]! + width < at; each++) {
        let root = each
        while (piece[root] !== root) root = piece[root] = piece[piece[root]!]!
        if (root < own) {
          piece[own] = root
          own = root
        } else piece[root] = own
      }
      count++
    }
    before = first
  }
  for (let at = 0; at < count; at++) piece[at] = piece[piece[at]!]!
  return { count, from, to, piece }
}

/** The pieces of a mask that hang together by sides, of at least `least` places. */
export function regions(mask: Mask, least: number): Region[] {
  const { width, height } = mask
  const { count, from, to, piece } = runsOf(mask, 1)
  const [sizes, onRims] = [new Int32Array(count), new Int32Array(count)]
  for (let run = 0; run < count; run++) {
    const [start, end] = [from[run]!, to[run]!]
    const row = (start / width) | 0
    sizes[piece[run]!]! += end - start
    onRims[piece[run]!]! +=
      row === 0 || row === height - 1
        ? end - start
        : (start === row * width ? 1 : 0) + (end === (row + 1) * width && width > 1 ? 1 : 0)
  }
  const found: Region[] = []
  const placeOf = new Int32Array(count).fill(-1)
  const written: number[] = []
  for (let run = 0; run < count; run++) {
    const root = piece[run]!
    if (sizes[root]! < least) continue
    if (root === run) {
      placeOf[root] = found.length
      written.push(0)
      found.push({ places: new Int32Array(sizes[root]!), onRim: onRims[root]! })
    }
    const into = placeOf[root]!
    const { places } = found[into]!
    let next = written[into]!
    for (let at = from[run]!; at < to[run]!; at++) places[next++] = at
    written[into] = next
  }
  return found
}

/** A region by itself, with its holes filled. */
export function filled({ places }: Region, width: number, height: number): Mask {
  const on = new Uint8Array(width * height)
  for (let at = 0; at < places.length; at++) on[places[at]!] = 1
  // Whatever does not hang together with the rim lies within.
  const { count, from, to, piece } = runsOf({ width, height, on }, 0)
  const isOut = new Uint8Array(count)
  for (let run = 0; run < count; run++) {
    const row = (from[run]! / width) | 0
    if (row === 0 || row === height - 1 || from[run] === row * width || to[run] === (row + 1) * width)
      isOut[piece[run]!] = 1
  }
  for (let run = 0; run < count; run++) if (!isOut[piece[run]!]) on.fill(1, from[run], to[run])
  return { width, height, on }
}

/** The convex hull of a mask's places, as corners of those places. */
export function hullOf({ width, height, on }: Mask): Spot[] {
  const points: [number, number][] = []
  for (let y = 0; y < height; y++) {
    let first = 0
    while (first < width && !on[y * width + first]) first++
    let last = width - 1
    while (last > first && !on[y * width + last]) last--
    if (first < width) points.push([first, y], [last + 1, y], [first, y + 1], [last + 1, y + 1])
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
