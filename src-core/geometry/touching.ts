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

/** Edges on the far side, as columns: from s, to s, values at both ends, and the slope between. */
interface Edges {
  readonly count: number
  /** Where runs of edges begin that follow each other along the outline, and the count at the end. */
  readonly runs: readonly number[]
  readonly low: Float64Array
  readonly high: Float64Array
  readonly atLow: Float64Array
  readonly atHigh: Float64Array
  readonly slope: Float64Array
}

/** Far profile of a simple outline along the unit vector `along`; s runs along (−along.y, along.x). */
export function farProfile(outline: Outline, along: Point): Profile {
  const edges = farEdges(outline, along)
  return sweep(edges, inOrder(edges.count, edges.runs, edges.high))
}

/** On the far side of an outline that runs clockwise on paper, edges run towards growing s. */
function farEdges(outline: Outline, along: Point): Edges {
  const size = outline.length
  // One buffer for five columns: on short outlines making typed arrays costs more than the sweep.
  const buffer = new ArrayBuffer(5 * 8 * size)
  const [low, high, atLow, atHigh, slope] = [0, 1, 2, 3, 4].map(
    (column) => new Float64Array(buffer, column * 8 * size, size),
  ) as [Float64Array, Float64Array, Float64Array, Float64Array, Float64Array]
  const runs: number[] = []
  const clockwise = signedArea(outline) > 0
  let count = 0
  let running = false
  let point = outline[clockwise ? size - 1 : 0]!
  let s = point.y * along.x - point.x * along.y
  let value = point.x * along.x + point.y * along.y
  for (let i = 0; i < size; i++) {
    point = outline[clockwise ? i : size - 1 - i]!
    const nextS = point.y * along.x - point.x * along.y
    const nextValue = point.x * along.x + point.y * along.y
    if (nextS > s) {
      if (!running) runs.push(count)
      low[count] = s
      high[count] = nextS
      atLow[count] = value
      atHigh[count] = nextValue
      slope[count] = (nextValue - value) / (nextS - s)
      count++
    }
    running = nextS > s
    s = nextS
    value = nextValue
  }
  runs.push(count)
  return { count, runs, low, high, atLow, atHigh, slope }
}

/** Edges by growing `key`: a merge sort that starts from the runs in which they come sorted already. */
function inOrder(count: number, runs: readonly number[], key: Float64Array): Int32Array {
  let from = new Int32Array(count)
  let to = new Int32Array(count)
  for (let i = 0; i < count; i++) from[i] = i
  for (let bounds = runs; bounds.length > 2;) {
    const merged: number[] = []
    for (let r = 0; r + 1 < bounds.length; r += 2) {
      merged.push(bounds[r]!)
      let a = bounds[r]!
      const aEnd = bounds[r + 1]!
      let b = aEnd
      const bEnd = bounds[r + 2] ?? aEnd
      for (let at = a; at < bEnd; at++)
        to[at] = b >= bEnd || (a < aEnd && key[from[a]!]! <= key[from[b]!]!) ? from[a++]! : from[b++]!
    }
    merged.push(count)
    bounds = merged
    ;[from, to] = [to, from]
  }
  return from
}

/**
 * Walks the elementary intervals from left to right. A heap holds the active edges, the top one on top; where
 * a run goes on, the next edge takes the place of the last one, and only run ends move anything in the heap.
 */
function sweep(edges: Edges, ends: Int32Array): Profile {
  const { count: total, runs, low, high, atLow, atHigh, slope } = edges
  const heads = runs.slice(0, -1).sort((a, b) => low[a]! - low[b]!)
  const tails = new Set(runs.map((start) => start - 1))
  const heap = new EdgeHeap(edges)
  const pieces = new Float64Array(total * 8)
  let count = 0
  let nextHead = 0
  let nextEnd = 0
  let middle = 0
  let previousTop = -1
  while (nextEnd < total) {
    const headAt = nextHead < heads.length ? low[heads[nextHead]!]! : Infinity
    const here = Math.min(headAt, high[ends[nextEnd]!]!)
    // Removal compares inside the interval just left, where every edge of the heap is still active.
    for (; nextEnd < total && high[ends[nextEnd]!]! === here; nextEnd++) {
      const edge = ends[nextEnd]!
      if (tails.has(edge)) heap.remove(edge, middle)
      else heap.replace(edge, edge + 1)
    }
    let pending = nextHead
    while (pending < heads.length && low[heads[pending]!]! === here) pending++
    const endAt = nextEnd < total ? high[ends[nextEnd]!]! : here
    const next = pending < heads.length ? Math.min(endAt, low[heads[pending]!]!) : endAt
    middle = (here + next) / 2
    for (; nextHead < pending; nextHead++) heap.add(heads[nextHead]!, middle)
    const top = heap.top
    if (top >= 0) {
      if (top !== previousTop) {
        pieces[count * 4] = here
        pieces[count * 4 + 2] =
          here === low[top] ? atLow[top]! : atLow[top]! + slope[top]! * (here - low[top]!)
        count++
      }
      pieces[count * 4 - 3] = next
      pieces[count * 4 - 1] =
        next === high[top] ? atHigh[top]! : atLow[top]! + slope[top]! * (next - low[top]!)
    }
    previousTop = top
  }
  return { pieces, count }
}

/** A binary heap of edges by their value at a given s, with removal from within. */
class EdgeHeap {
  readonly #edges: Edges
  readonly #heap: Int32Array
  readonly #place: Int32Array
  #size = 0

  constructor(edges: Edges) {
    this.#edges = edges
    this.#heap = new Int32Array(edges.runs.length)
    this.#place = new Int32Array(edges.count)
  }

  /** The edge with the largest value, or −1. */
  get top(): number {
    return this.#size > 0 ? this.#heap[0]! : -1
  }

  add(edge: number, at: number): void {
    this.#put(edge, this.#size++)
    this.#rise(edge, at)
  }

  remove(edge: number, at: number): void {
    const hole = this.#place[edge]!
    this.#size--
    if (hole === this.#size) return
    const moved = this.#heap[this.#size]!
    this.#put(moved, hole)
    this.#rise(moved, at)
    this.#sink(moved, at)
  }

  /** The next edge of a run takes the place of the last one: it begins where that one ends. */
  replace(edge: number, next: number): void {
    this.#put(next, this.#place[edge]!)
  }

  #value(edge: number, at: number): number {
    const { atLow, slope, low } = this.#edges
    return atLow[edge]! + slope[edge]! * (at - low[edge]!)
  }

  #put(edge: number, place: number): void {
    this.#heap[place] = edge
    this.#place[edge] = place
  }

  #rise(edge: number, at: number): void {
    const own = this.#value(edge, at)
    let place = this.#place[edge]!
    while (place > 0) {
      const parent = (place - 1) >> 1
      const above = this.#heap[parent]!
      if (own <= this.#value(above, at)) break
      this.#put(above, place)
      place = parent
    }
    this.#put(edge, place)
  }

  #sink(edge: number, at: number): void {
    const own = this.#value(edge, at)
    let place = this.#place[edge]!
    for (let child = 2 * place + 1; child < this.#size; child = 2 * place + 1) {
      const right = child + 1
      if (right < this.#size && this.#value(this.#heap[right]!, at) > this.#value(this.#heap[child]!, at))
        child = right
      const below = this.#heap[child]!
      if (this.#value(below, at) <= own) break
      this.#put(below, place)
      place = child
    }
    this.#put(edge, place)
  }
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
