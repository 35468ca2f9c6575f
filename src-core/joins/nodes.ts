/**
 * M30, nodes: where anchors of neighbouring motifs meet. Pairs of anchors are taken by growing distance, ties
 * by index; a node grows only while all its members are pairwise within reach; one anchor per motif, each
 * anchor in one node.
 *
 * On a lattice almost every pair of neighbours is like another one, so the anchor pairs of two neighbours are
 * worked out once per kind of neighbourhood (offset and turns, to a nanometre) and then only looked up.
 */
import Flatbush from 'flatbush'
import type { Anchor, Point } from '../../shared-types/plan'
import { turnPoint } from '../geometry/points'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { TIE } from './constants'

/** A placed motif with the anchors that may be joined. */
export interface Joinable {
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
  readonly anchors: readonly Anchor[]
}

export interface NodeMember {
  /** Index of the motif in the input. */
  readonly motif: number
  /** Index of the anchor in the motif's anchors. */
  readonly anchor: number
}

export interface Node {
  readonly x: Millimetres
  readonly y: Millimetres
  readonly spread: Millimetres
  /** By index of motif. */
  readonly members: readonly NodeMember[]
}

/** Anchors of one kind of motif in one turn, as coordinates about the centre. */
interface TurnedAnchors {
  readonly id: number
  readonly points: readonly Point[]
  readonly radius: Millimetres
}

interface AnchorPair {
  readonly a: number
  readonly b: number
  readonly distance: Millimetres
}

/** All nodes of the placed motifs, `reach` in mm; in order of their first member. */
export function findNodes(motifs: readonly Joinable[], reach: Millimetres): Node[] {
  if (motifs.length < 2 || !(reach >= 0)) return []
  const turned = turnedAnchors(motifs)
  const radius = Math.max(...new Set(turned.map((entry) => entry.radius)))
  const pairsByDistance = collectPairs(motifs, turned, 2 * radius + reach, reach)
  const offsets = new Int32Array(motifs.length + 1)
  motifs.forEach((motif, i) => (offsets[i + 1] = offsets[i]! + motif.anchors.length))
  const at = (anchor: number, motif: number): Point => {
    const point = turned[motif]!.points[anchor - offsets[motif]!]!
    return { x: motifs[motif]!.x + point.x, y: motifs[motif]!.y + point.y }
  }
  const groups = joinPairs(pairsByDistance, offsets, at, reach)
  return groups.map((group) => describe(group, offsets, at))
}

/** Turned anchor coordinates, shared by all motifs with the same anchors and turn. */
function turnedAnchors(motifs: readonly Joinable[]): TurnedAnchors[] {
  const known = new Map<readonly Anchor[], Map<number, TurnedAnchors>>()
  let count = 0
  return motifs.map(({ anchors, turn }) => {
    const byTurn = known.get(anchors) ?? new Map<number, TurnedAnchors>()
    known.set(anchors, byTurn)
    let entry = byTurn.get(turn)
    if (!entry) {
      const points = anchors.map((anchor) => turnPoint(anchor, radians(turn)))
      entry = { id: count++, points, radius: Math.max(0, ...points.map((p) => Math.hypot(p.x, p.y))) }
      byTurn.set(turn, entry)
    }
    return entry
  })
}

/** Anchor pairs of neighbours as flat triples (anchor, anchor, motif pair), grouped by tied distance. */
interface PairList {
  readonly distance: number
  readonly entries: number[]
}

function collectPairs(
  motifs: readonly Joinable[],
  turned: readonly TurnedAnchors[],
  range: Millimetres,
  reach: Millimetres,
): PairList[] {
  const index = new Flatbush(motifs.length)
  for (const { x, y } of motifs) index.add(x, y, x, y)
  index.finish()
  const kinds = new KnownPairs()
  const byDistance = new Map<number, PairList>()
  for (let i = 0; i < motifs.length; i++) {
    const { x, y } = motifs[i]!
    const near = index.search(x - range, y - range, x + range, y + range, (j) => j > i).sort((a, b) => a - b)
    for (const j of near) {
      const dx = motifs[j]!.x - x
      const dy = motifs[j]!.y - y
      const known = kinds.of(turned[i]!.id, turned[j]!.id, dx)
      const down = Math.round(dy / TIE)
      let pairs = known.get(down)
      if (!pairs) {
        pairs = anchorPairs(turned[i]!.points, turned[j]!.points, dx, dy, reach)
        known.set(down, pairs)
      }
      for (const pair of pairs) {
        const tied = Math.round(pair.distance / TIE)
        let list = byDistance.get(tied)
        if (!list) byDistance.set(tied, (list = { distance: tied, entries: [] }))
        list.entries.push(i, pair.a, j, pair.b)
      }
    }
  }
  return [...byDistance.values()].sort((a, b) => a.distance - b.distance)
}

/** Anchor pairs by kind of neighbourhood: who, whom, how far across, how far down (numbers make quick keys). */
class KnownPairs {
  readonly #byKind = new Map<number, Map<number, Map<number, readonly AnchorPair[]>>>()

  /** The pairs of two kinds of motif at `dx` mm across, by ticks down. */
  of(one: number, other: number, dx: Millimetres): Map<number, readonly AnchorPair[]> {
    const kind = one * 65_536 + other
    let byAcross = this.#byKind.get(kind)
    if (!byAcross) this.#byKind.set(kind, (byAcross = new Map()))
    const across = Math.round(dx / TIE)
    let byDown = byAcross.get(across)
    if (!byDown) byAcross.set(across, (byDown = new Map()))
    return byDown
  }
}

/** Pairs of anchors of two motifs within reach, the second motif set off by (dx, dy). */
function anchorPairs(
  first: readonly Point[],
  second: readonly Point[],
  dx: Millimetres,
  dy: Millimetres,
  reach: Millimetres,
): AnchorPair[] {
  const pairs: AnchorPair[] = []
  first.forEach((p, a) =>
    second.forEach((q, b) => {
      const between = Math.hypot(q.x + dx - p.x, q.y + dy - p.y)
      if (between <= reach + TIE) pairs.push({ a, b, distance: between })
    }),
  )
  return pairs
}

interface Group {
  readonly motifs: number[]
  readonly anchors: number[]
}

/** Grows nodes from the nearest pair outward. */
function joinPairs(
  lists: readonly PairList[],
  offsets: Int32Array,
  at: (anchor: number, motif: number) => Point,
  reach: Millimetres,
): Group[] {
  const groupOf: (Group | undefined)[] = []
  const groups = new Set<Group>()
  const fits = (one: Group, other: Group): boolean => {
    for (let i = 0; i < one.motifs.length; i++) {
      const p = at(one.anchors[i]!, one.motifs[i]!)
      for (let j = 0; j < other.motifs.length; j++) {
        if (one.motifs[i] === other.motifs[j]) return false
        const q = at(other.anchors[j]!, other.motifs[j]!)
        if (Math.hypot(p.x - q.x, p.y - q.y) > reach + TIE) return false
      }
    }
    return true
  }
  const groupFor = (motif: number, anchor: number): Group =>
    groupOf[anchor] ?? { motifs: [motif], anchors: [anchor] }
  for (const { entries } of lists) {
    for (let k = 0; k < entries.length; k += 4) {
      const one = groupFor(entries[k]!, offsets[entries[k]!]! + entries[k + 1]!)
      const other = groupFor(entries[k + 2]!, offsets[entries[k + 2]!]! + entries[k + 3]!)
      if (one === other || !fits(one, other)) continue
      one.motifs.push(...other.motifs)
      one.anchors.push(...other.anchors)
      groups.delete(other)
      groups.add(one)
      for (const anchor of one.anchors) groupOf[anchor] = one
    }
  }
  return [...groups].sort((a, b) => Math.min(...a.anchors) - Math.min(...b.anchors))
}

function describe(group: Group, offsets: Int32Array, at: (anchor: number, motif: number) => Point): Node {
  const points = group.motifs.map((motif, i) => at(group.anchors[i]!, motif))
  let spread = 0
  for (let i = 0; i < points.length; i++)
    for (let j = 0; j < i; j++)
      spread = Math.max(spread, Math.hypot(points[i]!.x - points[j]!.x, points[i]!.y - points[j]!.y))
  const members = group.motifs
    .map((motif, i) => ({ motif, anchor: group.anchors[i]! - offsets[motif]! }))
    .sort((a, b) => a.motif - b.motif)
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
  return { x: mean(points.map((p) => p.x)), y: mean(points.map((p) => p.y)), spread, members }
}
