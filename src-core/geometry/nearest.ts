/** Where two outlines come nearest to each other: the same distances as in `edges.ts`, with their two ends. */
import type { Point } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'
import { boxDistance, edgesCross } from './edges'
import type { Edges } from './edges'
import { contains, distance, nearestShare } from './points'

/** A straight way between two outlines, or from one to itself where they meet. */
export interface Gap {
  readonly distance: Millimetres
  readonly from: Point
  readonly to: Point
}

const onEdge = (point: Point, a: Point, b: Point): Point => {
  const share = nearestShare(point, a, b)
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
}

/** Where the edges a–b and c–d come nearest; where they cross, some point of theirs and no distance. */
function edgeGap(a: Point, b: Point, c: Point, d: Point): Gap {
  if (edgesCross(a, b, c, d)) {
    const cross = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)
    const share = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / cross
    const at = { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }
    return { distance: 0, from: at, to: at }
  }
  const ways: readonly (readonly [Point, Point])[] = [
    [a, onEdge(a, c, d)],
    [b, onEdge(b, c, d)],
    [onEdge(c, a, b), c],
    [onEdge(d, a, b), d],
  ]
  let best: Gap | null = null
  for (const [from, to] of ways) {
    const far = distance(from, to)
    if (!best || far < best.distance) best = { distance: far, from, to }
  }
  return best!
}

/**
 * The shortest way from the line of `a` to the line of `b`, whichever lies inside the other; null where it is
 * not below `limit`.
 */
export function lineGap(a: Edges, b: Edges, limit: Millimetres = Infinity): Gap | null {
  let best: Gap | null = null
  let least = limit
  const [start, end] = [a.outline[0]!, b.outline[0]!]
  if (distance(start, end) < least) {
    best = { distance: distance(start, end), from: start, to: end }
    least = best.distance
  }
  a.outline.forEach((p, i) => {
    const q = a.outline[(i + 1) % a.outline.length]!
    const box = {
      left: Math.min(p.x, q.x),
      top: Math.min(p.y, q.y),
      right: Math.max(p.x, q.x),
      bottom: Math.max(p.y, q.y),
    }
    if (boxDistance(box, b.box) > least) return
    for (const k of b.tree.search(box.left - least, box.top - least, box.right + least, box.bottom + least)) {
      const found = edgeGap(p, q, b.outline[k]!, b.outline[(k + 1) % b.outline.length]!)
      if (found.distance >= least) continue
      best = found
      least = found.distance
    }
  })
  return best
}

/** The shortest way between two areas; no distance where they overlap. null where it is not below `limit`. */
export function areaGap(a: Edges, b: Edges, limit: Millimetres = Infinity): Gap | null {
  if (boxDistance(a.box, b.box) >= limit) return null
  const held = contains(b.outline, a.outline[0]!)
    ? a.outline[0]!
    : contains(a.outline, b.outline[0]!)
      ? b.outline[0]!
      : null
  return held ? { distance: 0, from: held, to: held } : lineGap(a, b, limit)
}

/**
 * From the outline of what lies in `outer` to the line of `outer`: the shortest way while it lies inside, else
 * from its corner that sticks out farthest, with a distance below zero.
 */
export function insideGap(inner: Edges, outer: Edges): Gap {
  let worst: Gap | null = null
  for (const corner of inner.outline) {
    if (contains(outer.outline, corner)) continue
    const to = nearestOn(corner, outer)
    const out = -distance(corner, to)
    if (!worst || out < worst.distance) worst = { distance: out, from: corner, to }
  }
  return worst ?? lineGap(inner, outer)!
}

/** The place on the line of an outline that is nearest to a point. */
function nearestOn(point: Point, { outline }: Edges): Point {
  let best = outline[0]!
  let least = Infinity
  outline.forEach((a, i) => {
    const at = onEdge(point, a, outline[(i + 1) % outline.length]!)
    const far = distance(point, at)
    if (far < least) [best, least] = [at, far]
  })
  return best
}
