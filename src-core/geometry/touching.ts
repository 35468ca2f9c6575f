/**
 * M20, the touching distance: how far two outlines stand from centre to centre when one, sliding in from far
 * away along a direction, first touches the other. Exact for any simple polygons, O(n log n).
 *
 * Along the direction u an outline has a far profile over the cross coordinate s: the upper envelope of its
 * edges. Edges of a simple polygon never cross, so between two neighbouring vertices (in s) one single edge is
 * on top: runs of edges that follow each other are sorted as they stand, and are merged two by two, keeping
 * what is on top. The distance of first touch is the
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
  readonly pieces: readonly number[]
  readonly count: number
}

/** The outline's points in the order in which edges of its far side run towards growing s. */
interface Walk {
  readonly s: readonly number[]
  readonly value: readonly number[]
}

/** Visible stretches by growing s, three numbers each: from s, to s, and the edge, which is its first point's index. */
type Chain = number[]

/** Far profile of a simple outline along the unit vector `along`; s runs along (−along.y, along.x). */
export function farProfile(outline: Outline, along: Point): Profile {
  const walk = walkAlong(outline, along)
  // Short ones first, so that long ones are walked seldom.
  const chains = farChains(walk).sort((one, other) => one.length - other.length)
  for (let i = 0; i + 1 < chains.length; i += 2) chains.push(upperOf(walk, chains[i]!, chains[i + 1]!))
  return profileOf(walk, chains[chains.length - 1] ?? [])
}

/** On the far side of an outline that runs clockwise on paper, edges run towards growing s. The first point closes it. */
function walkAlong(outline: Outline, along: Point): Walk {
  const size = outline.length
  const clockwise = signedArea(outline) > 0
  const s = new Array<number>(size + 1)
  const value = new Array<number>(size + 1)
  for (let i = 0; i < size; i++) {
    const point = outline[i]!
    const at = clockwise ? i + 1 : size - i
    s[at] = point.y * along.x - point.x * along.y
    value[at] = point.x * along.x + point.y * along.y
  }
  s[0] = s[size]!
  value[0] = value[size]!
  return { s, value }
}

/** Runs of edges that follow each other on the far side; each one is sorted, as it is monotone in s. */
function farChains({ s }: Walk): Chain[] {
  const chains: Chain[] = []
  let chain: Chain | null = null
  for (let edge = 0; edge + 1 < s.length; edge++) {
    const from = s[edge]!
    const to = s[edge + 1]!
    if (!(to > from)) chain = null
    else if (chain) chain.push(from, to, edge)
    else chains.push((chain = [from, to, edge]))
  }
  return chains
}

/** Value of an edge's line at `at`. */
function valueAt({ s, value }: Walk, edge: number, at: number): number {
  const low = s[edge]!
  const atLow = value[edge]!
  return atLow + ((value[edge + 1]! - atLow) / (s[edge + 1]! - low)) * (at - low)
}

/** Adds a stretch; one that goes on along the same edge lengthens the last. */
function extend(chain: Chain, from: number, to: number, edge: number): void {
  const last = chain.length - 3
  if (last >= 0 && chain[last + 2] === edge && chain[last + 1] === from) chain[last + 1] = to
  else chain.push(from, to, edge)
}

/** What is on top of two chains. Edges do not cross: whichever is on top halfway of a stretch is so all along it. */
function upperOf(walk: Walk, a: Chain, b: Chain): Chain {
  const upper: Chain = []
  let i = 0
  let j = 0
  let here = -Infinity
  while (i < a.length && j < b.length) {
    const aFrom = a[i]! > here ? a[i]! : here
    const bFrom = b[j]! > here ? b[j]! : here
    const aTo = a[i + 1]!
    const bTo = b[j + 1]!
    const aEdge = a[i + 2]!
    const bEdge = b[j + 2]!
    if (aFrom < bFrom) {
      here = aTo < bFrom ? aTo : bFrom
      extend(upper, aFrom, here, aEdge)
    } else if (bFrom < aFrom) {
      here = bTo < aFrom ? bTo : aFrom
      extend(upper, bFrom, here, bEdge)
    } else {
      here = aTo < bTo ? aTo : bTo
      const middle = (aFrom + here) / 2
      const edge = valueAt(walk, aEdge, middle) >= valueAt(walk, bEdge, middle) ? aEdge : bEdge
      extend(upper, aFrom, here, edge)
    }
    if (here === aTo) i += 3
    if (here === bTo) j += 3
  }
  for (; i < a.length; i += 3) extend(upper, a[i]! > here ? a[i]! : here, a[i + 1]!, a[i + 2]!)
  for (; j < b.length; j += 3) extend(upper, b[j]! > here ? b[j]! : here, b[j + 1]!, b[j + 2]!)
  return upper
}

function profileOf(walk: Walk, chain: Chain): Profile {
  const { s, value } = walk
  const count = chain.length / 3
  const pieces = new Array<number>(count * 4)
  for (let i = 0; i < count; i++) {
    const from = chain[i * 3]!
    const to = chain[i * 3 + 1]!
    const edge = chain[i * 3 + 2]!
    pieces[i * 4] = from
    pieces[i * 4 + 1] = to
    pieces[i * 4 + 2] = from === s[edge] ? value[edge]! : valueAt(walk, edge, from)
    pieces[i * 4 + 3] = to === s[edge + 1] ? value[edge + 1]! : valueAt(walk, edge, to)
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
