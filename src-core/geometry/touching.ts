/**
 * M20, the touching distance: how far two outlines stand from centre to centre when one, sliding in from far
 * away along a direction, first touches the other. Exact for any simple polygons, O(n log n).
 *
 * Along the direction u an outline has a far profile over the cross coordinate s: the upper envelope of its
 * edges. Edges of a simple polygon never cross, so between two neighbouring vertices (in s) one single edge is
 * on top, and a sweep that keeps the active edges in a heap finds it. The distance of first touch is the
 * largest sum of A's far profile along u and B's far profile along −u; both are piecewise linear, so it is
 * attained at an end of a piece. One-sided values at a jump come by themselves, since pieces are open
 * intervals: outlines that only graze each other sideways do not touch.
 */
import type { Point } from '../../shared-types/plan'
import type { Millimetres } from '../units/quantity'
import { signedArea } from './points'
import type { Outline } from './points'

/** A far profile: consecutive pieces, four numbers each: from s, to s, value at the start, value at the end. */
export interface Profile {
  readonly pieces: Float64Array
  readonly count: number
}

/** Far profile of a simple outline along the unit vector `along`; s runs along (−along.y, along.x). */
export function farProfile(outline: Outline, along: Point): Profile {
  const count = outline.length
  const s = new Float64Array(count)
  const v = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    const point = outline[i]!
    s[i] = point.y * along.x - point.x * along.y
    v[i] = point.x * along.x + point.y * along.y
  }
  // On the far side of an outline that runs clockwise on paper, edges run towards growing s.
  const forward = signedArea(outline) > 0 ? -1 : 1
  const starts: number[] = []
  const from = new Int32Array(count)
  const to = new Int32Array(count)
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1
    const step = (s[j]! - s[i]!) * forward
    if (step < 0) {
      const left = s[i]! < s[j]! ? i : j
      from[i] = left
      to[i] = left === i ? j : i
      starts.push(i)
    }
  }
  starts.sort((a, b) => s[from[a]!]! - s[from[b]!]!)
  const ends = starts.slice().sort((a, b) => s[to[a]!]! - s[to[b]!]!)
  return sweep(s, v, from, to, starts, ends)
}

/** Walks the elementary intervals from left to right; a heap holds the active edges, the top one on top. */
function sweep(
  s: Float64Array,
  v: Float64Array,
  from: Int32Array,
  to: Int32Array,
  starts: readonly number[],
  ends: readonly number[],
): Profile {
  const edges = starts.length
  const heap = new Int32Array(edges)
  const place = new Int32Array(from.length)
  let size = 0
  let middle = 0

  const valueAt = (edge: number, at: number): number => {
    const a = from[edge]!
    const b = to[edge]!
    return v[a]! + ((v[b]! - v[a]!) * (at - s[a]!)) / (s[b]! - s[a]!)
  }
  const above = (a: number, b: number): boolean => valueAt(a, middle) > valueAt(b, middle)
  const put = (edge: number, at: number): void => {
    heap[at] = edge
    place[edge] = at
  }
  const rise = (start: number): void => {
    let at = start
    const edge = heap[at]!
    while (at > 0) {
      const parent = (at - 1) >> 1
      if (!above(edge, heap[parent]!)) break
      put(heap[parent]!, at)
      at = parent
    }
    put(edge, at)
  }
  const sink = (start: number): void => {
    let at = start
    const edge = heap[at]!
    for (;;) {
      let child = 2 * at + 1
      if (child >= size) break
      if (child + 1 < size && above(heap[child + 1]!, heap[child]!)) child++
      if (!above(heap[child]!, edge)) break
      put(heap[child]!, at)
      at = child
    }
    put(edge, at)
  }
  const remove = (edge: number): void => {
    const at = place[edge]!
    size--
    if (at === size) return
    put(heap[size]!, at)
    rise(at)
    sink(place[heap[at]!]!)
  }

  const pieces = new Float64Array(edges * 8)
  let count = 0
  let nextStart = 0
  let nextEnd = 0
  let previousTop = -1
  while (nextEnd < edges) {
    const startAt = nextStart < edges ? s[from[starts[nextStart]!]!]! : Infinity
    const here = Math.min(startAt, s[to[ends[nextEnd]!]!]!)
    // Removal compares inside the interval just left, where every edge of the heap is still active.
    while (nextEnd < edges && s[to[ends[nextEnd]!]!]! === here) remove(ends[nextEnd++]!)
    let next = nextEnd < edges ? s[to[ends[nextEnd]!]!]! : here
    let pending = nextStart
    while (pending < edges && s[from[starts[pending]!]!]! === here) {
      next = Math.min(next, s[to[starts[pending]!]!]!)
      pending++
    }
    if (pending < edges) next = Math.min(next, s[from[starts[pending]!]!]!)
    middle = (here + next) / 2
    for (; nextStart < pending; nextStart++) {
      put(starts[nextStart]!, size++)
      rise(size - 1)
    }
    if (size === 0) {
      previousTop = -1
      continue
    }
    const top = heap[0]!
    const at = count * 4
    if (top === previousTop) {
      pieces[at - 3] = next
      pieces[at - 1] = valueAt(top, next)
    } else {
      pieces[at] = here
      pieces[at + 1] = next
      pieces[at + 2] = valueAt(top, here)
      pieces[at + 3] = valueAt(top, next)
      count++
    }
    previousTop = top
  }
  return { pieces, count }
}

/**
 * Distance of first touch from two profiles: A's far profile along u, B's far profile along −u, with B set
 * off sideways by `lateral` along (−u.y, u.x). Null when they pass each other without touching.
 */
export function profileDistance(a: Profile, b: Profile, lateral: Millimetres): Millimetres | null {
  const pa = a.pieces
  const pb = b.pieces
  let most = -Infinity
  let i = 0
  // B's profile was taken along −u, so its s runs backwards: it is read from its end.
  let j = b.count - 1
  const span = a.count && b.count ? pa[(a.count - 1) * 4 + 1]! - pa[0]! : 0
  const graze = span * 1e-9
  while (i < a.count && j >= 0) {
    const ai = i * 4
    const bj = j * 4
    const aFrom = pa[ai]!
    const aTo = pa[ai + 1]!
    const bFrom = lateral - pb[bj + 1]!
    const bTo = lateral - pb[bj]!
    const from = aFrom > bFrom ? aFrom : bFrom
    const to = aTo < bTo ? aTo : bTo
    if (to - from > graze) {
      const aSlope = (pa[ai + 3]! - pa[ai + 2]!) / (aTo - aFrom)
      const bSlope = (pb[bj + 2]! - pb[bj + 3]!) / (bTo - bFrom)
      const atFrom = pa[ai + 2]! + aSlope * (from - aFrom) + pb[bj + 3]! + bSlope * (from - bFrom)
      const atTo = pa[ai + 2]! + aSlope * (to - aFrom) + pb[bj + 3]! + bSlope * (to - bFrom)
      if (atFrom > most) most = atFrom
      if (atTo > most) most = atTo
    }
    if (aTo < bTo) i++
    else j--
  }
  return most === -Infinity ? null : most
}

/**
 * Touching distance of outline `b` sliding in from far away along `along` (unit vector) against outline `a`,
 * `b` set off sideways by `lateral` mm along (−along.y, along.x). Both outlines simple, about their own
 * centres. Null when they never touch.
 */
export function touchingDistance(
  a: Outline,
  b: Outline,
  along: Point,
  lateral: Millimetres = 0,
): Millimetres | null {
  const back = { x: -along.x, y: -along.y }
  return profileDistance(farProfile(a, along), farProfile(b, back), lateral)
}
