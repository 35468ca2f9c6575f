/** Distances between outlines, exact for polygons. An R-tree (flatbush) over the edges keeps them quick. */
import Flatbush from 'flatbush'
import type { Point } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'
import { boxOf, contains, distance, distanceToEdge } from './points'
import type { Box, Outline } from './points'

/** An outline whose edges can be asked for by place. */
export interface Edges {
  readonly outline: Outline
  readonly box: Box
  readonly tree: Flatbush
}

/** Indexes a closed outline of at least one point. */
export function indexEdges(outline: Outline): Edges {
  const tree = new Flatbush(outline.length, 8)
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!
    tree.add(Math.min(a.x, b.x), Math.min(a.y, b.y), Math.max(a.x, b.x), Math.max(a.y, b.y))
  })
  tree.finish()
  return { outline, box: boxOf(outline), tree }
}

/** Smallest distance between two boxes, 0 where they meet. */
export function boxDistance(a: Box, b: Box): Millimetres {
  const across = Math.max(0, a.left - b.right, b.left - a.right)
  const down = Math.max(0, a.top - b.bottom, b.top - a.bottom)
  return Math.hypot(across, down)
}

/** Twice the signed area of the triangle a, b, c: above zero where it runs clockwise on paper. */
const side = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

/** Whether the edges a–b and c–d cross in a point that is an end of neither. */
export function edgesCross(a: Point, b: Point, c: Point, d: Point): boolean {
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0
}

/** Distance between the edges a–b and c–d; 0 where they cross. */
export function edgeDistance(a: Point, b: Point, c: Point, d: Point): Millimetres {
  if (edgesCross(a, b, c, d)) return 0
  return Math.min(
    distanceToEdge(a, c, d),
    distanceToEdge(b, c, d),
    distanceToEdge(c, a, b),
    distanceToEdge(d, a, b),
  )
}

/** By squares: roots of thousands of corners would take most of the time of a distance. */
function nearestCorner(outline: Outline, { x, y }: Point): Point {
  let best = outline[0]!
  let least = Infinity
  for (const corner of outline) {
    const square = (corner.x - x) ** 2 + (corner.y - y) ** 2
    if (square >= least) continue
    least = square
    best = corner
  }
  return best
}

/**
 * Smallest distance between the lines of two outlines, whichever of them lies inside the other; 0 where they
 * cross. What is not below `limit` may be told as `limit`.
 */
export function lineDistance(a: Edges, b: Edges, limit: Millimetres = Infinity): Millimetres {
  // Two corners near each other: hardly anything needs to be looked at beyond their distance.
  const middle = { x: (a.box.left + a.box.right) / 2, y: (a.box.top + a.box.bottom) / 2 }
  const there = nearestCorner(b.outline, middle)
  const here = nearestCorner(a.outline, there)
  let best = Math.min(limit, distance(here, nearestCorner(b.outline, here)))
  const { outline } = a
  for (let i = 0; i < outline.length && best > 0; i++) {
    const p = outline[i]!
    const q = outline[(i + 1) % outline.length]!
    const left = Math.min(p.x, q.x)
    const top = Math.min(p.y, q.y)
    const right = Math.max(p.x, q.x)
    const bottom = Math.max(p.y, q.y)
    if (boxDistance({ left, top, right, bottom }, b.box) > best) continue
    for (const k of b.tree.search(left - best, top - best, right + best, bottom + best)) {
      const found = edgeDistance(p, q, b.outline[k]!, b.outline[(k + 1) % b.outline.length]!)
      if (found < best) best = found
    }
  }
  return best
}

/** Distance between two areas: 0 where they overlap or one holds the other. Same `limit` as above. */
export function areaDistance(a: Edges, b: Edges, limit: Millimetres = Infinity): Millimetres {
  if (boxDistance(a.box, b.box) >= limit) return limit
  if (contains(a.outline, b.outline[0]!) || contains(b.outline, a.outline[0]!)) return 0
  return lineDistance(a, b, limit)
}

/** Distance from a point to the line of an outline. */
export function pointDistance(point: Point, edges: Edges): Millimetres {
  const { outline, tree } = edges
  let best = distance(point, nearestCorner(outline, point))
  for (const k of tree.search(point.x - best, point.y - best, point.x + best, point.y + best))
    best = Math.min(best, distanceToEdge(point, outline[k]!, outline[(k + 1) % outline.length]!))
  return best
}

/**
 * How far `inner` keeps from the line of `outer` while it lies inside; below zero, how far the farthest of its
 * corners sticks out of `outer` (or a corner of `outer` into it).
 */
export function insideDistance(inner: Edges, outer: Edges): Millimetres {
  let depth = 0
  let outside = false
  const look = (corners: Outline, area: Edges, isOut: boolean): void => {
    for (const corner of corners) {
      if (contains(area.outline, corner) === isOut) continue
      outside = true
      depth = Math.max(depth, pointDistance(corner, area))
    }
  }
  look(inner.outline, outer, true)
  const { left, top, right, bottom } = inner.box
  const near = outer.tree.search(left, top, right, bottom).map((k) => outer.outline[k]!)
  look(near, inner, false)
  return outside ? -depth : lineDistance(inner, outer)
}

/** The first two edges of a closed outline that cross or touch though they are no neighbours, or null. */
export function selfCrossing(edges: Edges): Point | null {
  const { outline, tree } = edges
  const count = outline.length
  for (let i = 0; i < count; i++) {
    const a = outline[i]!
    const b = outline[(i + 1) % count]!
    const found = tree.search(
      Math.min(a.x, b.x),
      Math.min(a.y, b.y),
      Math.max(a.x, b.x),
      Math.max(a.y, b.y),
      (k) => {
        if (k <= i) return false
        const c = outline[k]!
        const d = outline[(k + 1) % count]!
        if (k === i + 1) return foldsBack(a, b, d)
        if (i === 0 && k === count - 1) return foldsBack(c, a, b)
        return edgeDistance(a, b, c, d) === 0
      },
    )
    if (found.length > 0) return a
  }
  return null
}

/** Whether an edge from b to c runs back along the one from a to b. */
const foldsBack = (a: Point, b: Point, c: Point): boolean =>
  side(a, b, c) === 0 && (b.x - a.x) * (c.x - b.x) + (b.y - a.y) * (c.y - b.y) < 0
