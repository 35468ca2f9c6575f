/**
 * M30, nodes: where anchors of neighbouring motifs meet. Pairs of anchors are taken by growing distance, ties
 * by index; a node grows only while all its members are pairwise within reach; one anchor per motif, each
 * anchor in one node.
 *
 * On a lattice almost every pair of neighbours is like another one, so the anchor pairs of two neighbours are
 * worked out once per kind of neighbourhood (offset and turns, to a nanometre) and then only looked up.
 */
import type { Anchor, Point } from '../../shared-types/plan'
import { PointGrid } from '../geometry/point-grid'
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
  /** Number of its kind, where motifs of several are placed. */
  readonly kind?: number
}

/** How two kinds of motif are joined. */
export interface PairWay {
  readonly reach: Millimetres
  /** Which of their anchors may be joined to which. */
  readonly allows: (one: Anchor, other: Anchor) => boolean
}

export interface NodeWays {
  /** Once round what is joined in the round, in mm; 0 where nothing is. */
  readonly round: Millimetres
  /** Left out: every two anchors within reach. */
  readonly pair: ((kind: number, other: number) => PairWay) | undefined
  /** Of two motifs by their index, where they have a way of their own. */
  readonly single?: ((one: number, other: number) => PairWay | undefined) | null
}

const PLAIN: NodeWays = { round: 0, pair: undefined }

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
  /** Joins the last place of a row to the first: it lies at the first, and again once round from there. */
  readonly wraps?: true
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
  /** Where pairs this far apart are collected. */
  readonly list: PairList
}

/** All nodes of the placed motifs, `reach` in mm; in order of their first member. */
export function findNodes(motifs: readonly Joinable[], reach: Millimetres, ways: NodeWays = PLAIN): Node[] {
  if (motifs.length < 2 || !(reach >= 0)) return []
  const turned = turnedAnchors(motifs)
  const radius = Math.max(...new Set(turned.map((entry) => entry.radius)))
  const field = fieldOf(motifs, turned)
  const groups = new Groups(field, reach, ways.round)
  for (const { entries } of collectPairs(motifs, turned, field, radius, reach, ways))
    for (let k = 0; k < entries.length; k += 2) groups.join(entries[k]!, entries[k + 1]!)
  return groups.describe()
}

/** The anchors of all motifs in one row, as columns: a blanket has tens of thousands of them. */
interface Field {
  /** Index of the first anchor of each motif. */
  readonly offsets: Int32Array
  /** Motif of each anchor. */
  readonly motif: Int32Array
  readonly x: Float64Array
  readonly y: Float64Array
}

function fieldOf(motifs: readonly Joinable[], turned: readonly TurnedAnchors[]): Field {
  const offsets = new Int32Array(motifs.length + 1)
  motifs.forEach((motif, i) => (offsets[i + 1] = offsets[i]! + motif.anchors.length))
  const total = offsets[motifs.length]!
  const field = {
    offsets,
    motif: new Int32Array(total),
    x: new Float64Array(total),
    y: new Float64Array(total),
  }
  for (let i = 0; i < motifs.length; i++) {
    const { x, y } = motifs[i]!
    const { points } = turned[i]!
    for (let k = 0, at = offsets[i]!; k < points.length; k++, at++) {
      field.motif[at] = i
      field.x[at] = x + points[k]!.x
      field.y[at] = y + points[k]!.y
    }
  }
  return field
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

/** Pairs of anchors that are equally far apart: two indices into the field each. */
interface PairList {
  readonly distance: number
  readonly entries: number[]
}

function collectPairs(
  motifs: readonly Joinable[],
  turned: readonly TurnedAnchors[],
  { offsets }: Field,
  radius: Millimetres,
  reach: Millimetres,
  { round, pair, single = null }: NodeWays,
): PairList[] {
  // Where the round closes, what stands at the left end stands beside the right end once more.
  const left = motifs.reduce((least, { x }) => Math.min(least, x), Infinity) + 2 * radius + reach
  const again = round > 0 ? motifs.flatMap(({ x }, i) => (x <= left ? [i] : [])) : []
  const total = motifs.length + again.length
  const [xs, ys] = [new Float64Array(total), new Float64Array(total)]
  for (let k = 0; k < total; k++) {
    const { x, y } = motifs[again[k - motifs.length] ?? k]!
    xs[k] = k < motifs.length ? x : x + round
    ys[k] = y
  }
  // Two that lie just as far apart as they may are to be found whatever the last digit says.
  const index = new PointGrid(xs, ys, 2 * radius + reach + 2 * TIE)
  const known = new KnownPairs()
  const byDistance = new Map<number, PairList>()
  const listOf = (distance: Millimetres): PairList => {
    const tied = Math.round(distance / TIE)
    let list = byDistance.get(tied)
    if (!list) byDistance.set(tied, (list = { distance: tied, entries: [] }))
    return list
  }
  const allowed = (
    i: number,
    j: number,
    dx: Millimetres,
    dy: Millimetres,
    way: PairWay | undefined,
  ): readonly AnchorPair[] => {
    const all = anchorPairs(turned[i]!.points, turned[j]!.points, dx, dy, way?.reach ?? reach, listOf)
    if (!way) return all
    const [own, others] = [motifs[i]!.anchors, motifs[j]!.anchors]
    return all.filter(({ a, b }) => way.allows(own[a]!, others[b]!))
  }
  for (let i = 0; i < motifs.length; i++) {
    const { x, y, kind = 0 } = motifs[i]!
    const count = index.look(x, y, turned[i]!.radius + radius + reach + 2 * TIE, i)
    for (let k = 0; k < count; k++) {
      const found = index.found[k]!
      const j = again[found - motifs.length] ?? found
      if (j === i) continue
      const dx = motifs[j]!.x + (j === found ? 0 : round) - x
      const dy = motifs[j]!.y - y
      const alone = single?.(i, j)
      const kindOfPair = turned[i]!.id * 65_536 + turned[j]!.id
      const pairs = alone
        ? allowed(i, j, dx, dy, alone)
        : (known.find(k, kindOfPair, dx, dy) ??
          known.keep(kindOfPair, dx, dy, allowed(i, j, dx, dy, pair?.(kind, motifs[j]!.kind ?? 0))))
      for (const { a, b, list } of pairs) list.entries.push(offsets[i]! + a, offsets[j]! + b)
    }
  }
  return [...byDistance.values()].sort((a, b) => a.distance - b.distance)
}

interface KnownPair {
  readonly kind: number
  readonly across: number
  readonly down: number
  readonly pairs: readonly AnchorPair[]
}

/** Anchor pairs by kind of neighbourhood: who, whom, how far across, how far down (numbers make quick keys). */
class KnownPairs {
  readonly #byKind = new Map<number, Map<number, Map<number, KnownPair>>>()
  /** The last pair of each motif's first, second … neighbour: that of the motif beside it is nearly always like it. */
  readonly #latest: KnownPair[] = []

  /** The pairs of a kind at so many mm across and down, the `nth` neighbour of its motif; undefined before `keep`. */
  find(nth: number, kind: number, dx: Millimetres, dy: Millimetres): readonly AnchorPair[] | undefined {
    const across = Math.round(dx / TIE)
    const down = Math.round(dy / TIE)
    const latest = this.#latest[nth]
    if (latest && latest.kind === kind && latest.across === across && latest.down === down)
      return latest.pairs
    const known = this.#byKind.get(kind)?.get(across)?.get(down)
    if (known) this.#latest[nth] = known
    return known?.pairs
  }

  keep(kind: number, dx: Millimetres, dy: Millimetres, pairs: readonly AnchorPair[]): readonly AnchorPair[] {
    const across = Math.round(dx / TIE)
    const down = Math.round(dy / TIE)
    let byAcross = this.#byKind.get(kind)
    if (!byAcross) this.#byKind.set(kind, (byAcross = new Map()))
    let byDown = byAcross.get(across)
    if (!byDown) byAcross.set(across, (byDown = new Map()))
    byDown.set(down, { kind, across, down, pairs })
    return pairs
  }
}

/** Pairs of anchors of two motifs within reach, the second motif set off by (dx, dy). */
function anchorPairs(
  first: readonly Point[],
  second: readonly Point[],
  dx: Millimetres,
  dy: Millimetres,
  reach: Millimetres,
  listOf: (distance: Millimetres) => PairList,
): AnchorPair[] {
  const pairs: AnchorPair[] = []
  first.forEach((p, a) =>
    second.forEach((q, b) => {
      const between = Math.hypot(q.x + dx - p.x, q.y + dy - p.y)
      if (between <= reach + TIE) pairs.push({ a, b, list: listOf(between) })
    }),
  )
  return pairs
}

/** Nodes as they grow, from the nearest pair outward: chains of anchors through the field. */
class Groups {
  readonly #field: Field
  readonly #limit: Millimetres
  /** First anchor of an anchor's chain, or −1 while it has none. */
  readonly #first: Int32Array
  /** The next anchor of the chain, or −1. */
  readonly #next: Int32Array
  /** By first anchor of a chain: its last one. */
  readonly #last: Int32Array

  readonly #round: Millimetres

  constructor(field: Field, reach: Millimetres, round: Millimetres) {
    this.#field = field
    this.#limit = reach + TIE
    this.#round = round
    this.#first = new Int32Array(field.x.length).fill(-1)
    this.#next = new Int32Array(field.x.length).fill(-1)
    this.#last = new Int32Array(field.x.length)
  }

  /** Makes one node of those of two anchors, where all its members stay within reach. */
  join(a: number, b: number): void {
    const one = this.#first[a]! < 0 ? a : this.#first[a]!
    const other = this.#first[b]! < 0 ? b : this.#first[b]!
    if (one === other || !this.#fit(one, other)) return
    const last = this.#first[a]! < 0 ? a : this.#last[one]!
    const end = this.#first[b]! < 0 ? b : this.#last[other]!
    this.#first[one] = one
    this.#next[last] = other
    for (let anchor = other; anchor >= 0; anchor = this.#next[anchor]!) this.#first[anchor] = one
    this.#last[one] = end
  }

  /** How far to the right one anchor lies of another, the short way round. */
  #across(p: number, q: number): Millimetres {
    const across = this.#field.x[p]! - this.#field.x[q]!
    return this.#round > 0 ? across - this.#round * Math.round(across / this.#round) : across
  }

  /** One anchor per motif, and every two of them within reach. */
  #fit(one: number, other: number): boolean {
    const { motif, y } = this.#field
    for (let p = one; p >= 0; p = this.#next[p]!)
      for (let q = other; q >= 0; q = this.#next[q]!) {
        if (motif[p] === motif[q]) return false
        const across = this.#across(p, q)
        const down = y[p]! - y[q]!
        if (across * across + down * down > this.#limit * this.#limit) return false
      }
    return true
  }

  /** The nodes in order of their first member. */
  describe(): Node[] {
    const nodes: Node[] = []
    const isTold = new Uint8Array(this.#first.length)
    for (let anchor = 0; anchor < this.#first.length; anchor++) {
      const first = this.#first[anchor]!
      if (first < 0 || isTold[first]) continue
      isTold[first] = 1
      nodes.push(this.#node(first))
    }
    return nodes
  }

  #node(first: number): Node {
    const { motif, x, y, offsets } = this.#field
    const members: NodeMember[] = []
    let sumX = 0
    let sumY = 0
    let spread = 0
    let [leftmost, rightmost] = [first, first]
    for (let p = first; p >= 0; p = this.#next[p]!) {
      if (x[p]! < x[leftmost]!) leftmost = p
      if (x[p]! > x[rightmost]!) rightmost = p
    }
    const wraps = this.#round > 0 && x[rightmost]! - x[leftmost]! > this.#round / 2
    for (let p = first; p >= 0; p = this.#next[p]!) {
      sumX += wraps ? x[leftmost]! + this.#across(p, leftmost) : x[p]!
      sumY += y[p]!
      const member = { motif: motif[p]!, anchor: p - offsets[motif[p]!]! }
      // They come nearly in order, and they are few.
      let place = members.push(member) - 1
      for (; place > 0 && members[place - 1]!.motif > member.motif; place--)
        members[place] = members[place - 1]!
      members[place] = member
      for (let q = first; q !== p; q = this.#next[q]!)
        spread = Math.max(spread, Math.hypot(this.#across(p, q), y[p]! - y[q]!))
    }
    const node = { x: sumX / members.length, y: sumY / members.length, spread, members }
    return wraps ? { ...node, wraps } : node
  }
}
