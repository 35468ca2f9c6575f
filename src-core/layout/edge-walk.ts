/**
 * M35, walked as it is: the contours round motifs and half motifs, and the line that an edging takes along them in its
 * style. What a large blanket's line is told from stands in edge.ts, what was cut out of one in edge-cut.ts.
 */
import { polygonHull } from 'd3-polygon'
import type { Anchor, Point } from '../../shared-types/plan'
import type { EdgingEnds, EdgingStyle } from '../../shared-types/project'
import { indexEdges } from '../geometry/edges'
import { halfOutline } from '../geometry/half'
import {
  distance,
  distanceToEdge,
  moveOutline,
  nearestShare,
  perimeter,
  signedArea,
  turnPoint,
} from '../geometry/points'
import type { Outline } from '../geometry/points'
import { clockwise, COARSE, grow, union } from '../geometry/polygons'
import { findNodes } from '../joins/nodes'
import type { NodeWays } from '../joins/nodes'
import { radians } from '../units/quantity'
import { remembered } from '../memo'
import type { Millimetres } from '../units/quantity'
import type { BlanketCounts, Laid } from './blanket'
import { joinableHalves, keptSide } from './halves'
import type { HalfPlace } from './halves'
import { outlineAt } from './lattice'
import type { Lattice } from './lattice'

export interface EdgeLine {
  /** Length in mm. */
  readonly length: Millimetres
  /** Free tips on it. */
  readonly tips: number
  /** Outward corners of the whole, where an edging works three stitches in one place. */
  readonly corners: number
  /** Where they point. */
  readonly outward: readonly Point[]
  /** Whole turns that its lines make: one round a blanket, one less for each hole in it, none round open ends. */
  readonly turns: number
}

export interface EdgeInput {
  readonly lattice: Lattice
  readonly counts: BlanketCounts
  readonly style: EdgingStyle
  /** Anchors at tips or corners (places of the clock for a round motif), by kind of motif, before the turn. */
  readonly tips: readonly (readonly Anchor[])[]
  readonly reach: Millimetres
  readonly ways: NodeWays
  /** What is laid, where its edge does not follow from that of a small one; null where it does. */
  readonly whole: Laid | null
  /** Rows that are short by half a motif end with half motifs. */
  readonly halves: boolean
  /** Which open ends of a round have the edging. */
  readonly ends: EdgingEnds
}

/** What a line comes to. */
export type Told = Pick<EdgeLine, 'length' | 'tips'>

export const plus = (a: Told, b: Told, times: number): Told => ({
  length: a.length + times * b.length,
  tips: a.tips + times * b.tips,
})

export const sumOf = (lines: readonly Line[]): Told => ({
  length: lines.reduce((sum, { line }) => sum + perimeter(line), 0),
  tips: lines.reduce((sum, { tips }) => sum + tips, 0),
})

/** One closed line of an edging, and the free tips that it spans. */
export interface Line {
  readonly line: Outline
  readonly tips: number
  /** Runs round what was left out within the blanket: its line runs the other way. */
  readonly isHole?: boolean
}

/** The lines round motifs and half motifs: one where they hang together. */
export function edgeLines(input: EdgeInput, laid: Laid, halves: readonly HalfPlace[]): Line[] {
  return inStyle(input, ringsRound(input, laid, halves), laid, halves)
}

/** The outer contours round motifs and half motifs, with joins that are bridged closed. */
export const ringsRound = (input: EdgeInput, laid: Laid, halves: readonly HalfPlace[]): Outline[] =>
  contoursRound(input, laid, halves)
    .filter((contour) => signedArea(contour) > 0)
    .map((contour) => grow([contour], -input.reach / 2, COARSE)[0] ?? contour)

/** The outline of a motif grown by half of what joins bridge. */
const grownBy = remembered((outline: Outline, by: Millimetres): Outline => grow([outline], by, COARSE)[0]!)

/** All contours of motifs and half motifs that are grown until joins are closed; those of openings run backwards. */
export function contoursRound(input: EdgeInput, laid: Laid, halves: readonly HalfPlace[]): Outline[] {
  const { lattice } = input
  const shapes = lattice.shapes.map(
    (shape) => shape.map((outline) => grownBy(outline, input.reach / 2)) as [Outline, Outline],
  )
  const wholes = laid.placements.map((p) => moveOutline(outlineAt({ shapes }, p), p.x, p.y))
  const cut = halves.map((half) => {
    const outline = halfOutline(outlineAt(lattice, half), keptSide(half.side))
    return moveOutline(grow([outline], input.reach / 2, COARSE)[0]!, half.x, half.y)
  })
  return union([...wholes, ...cut])
}

/** The lines that an edging takes round contours: `laid` and `halves` have the free tips along them. */
export function inStyle(
  input: EdgeInput,
  rings: readonly Outline[],
  laid: Laid,
  halves: readonly HalfPlace[],
): Line[] {
  const { style, reach } = input
  const tips = style === 'follow' ? [] : freeTips(laid, halves, input)
  const ends = style === 'bridge' ? straightSides(input.lattice, halves).flat() : []
  return rings.map((ring) => {
    const onRing = withEnds(alongRing([...ends, ...tips], ring, reach / 2), ends)
    // Fewer than three tips span no line: the edging then follows the edge.
    const spans = onRing.length > 2
    const spanned = spans ? onRing : ring
    return { line: style === 'level' ? hullOf(ring) : spanned, tips: spans ? onRing.length : 0 }
  })
}

/** The straight hull round a contour, clockwise on paper. */
export function hullOf(ring: readonly Point[]): Outline {
  const hull = polygonHull(ring.map((point): [number, number] => [point.x, point.y])) ?? []
  return clockwise(hull.map(([x, y]) => ({ x, y })))
}

/** mm. Places that are as near to each other are one. */
const SAME_PLACE: Millimetres = 0.5

/** The straight side of each half motif from one end to the other: it is worked along, as far as it is an edge. */
export function straightSides(
  lattice: Lattice,
  halves: readonly HalfPlace[],
): readonly (readonly [Point, Point])[] {
  return halves.map((half) => {
    const cut = halfOutline(outlineAt(lattice, half), keptSide(half.side)).filter(
      ({ x }) => Math.abs(x) < SAME_PLACE / 10,
    )
    const downs = cut.map(({ y }) => y)
    const at = (y: number): Point => ({ x: half.x, y: half.y + y })
    return [at(Math.min(...downs)), at(Math.max(...downs))]
  })
}

/** Without the tips that stand where a straight side ends: one stitch is worked there. */
const withEnds = (points: readonly Point[], ends: readonly Point[]): Point[] =>
  ends.length === 0
    ? [...points]
    : points.filter((point) => ends.includes(point) || ends.every((end) => distance(point, end) > SAME_PLACE))

/** Tips that are not joined to a neighbour, where they lie. */
function freeTips(
  laid: Laid,
  halves: readonly HalfPlace[],
  { tips: anchors, reach, ways }: EdgeInput,
): Point[] {
  const joined = new Set<string>()
  const wholes = laid.placements.map(({ x, y, turn, kind }) => ({
    x,
    y,
    turn,
    kind,
    anchors: anchors[kind]!,
  }))
  const motifs = [...wholes, ...joinableHalves(halves, anchors)]
  for (const { members } of findNodes(motifs, reach, { ...ways, round: 0 }))
    for (const { motif, anchor } of members) joined.add(`${motif} ${anchor}`)
  const free: Point[] = []
  motifs.forEach((p, motif) =>
    p.anchors.forEach((anchor, i) => {
      if (joined.has(`${motif} ${i}`)) return
      const at = turnPoint(anchor, radians(p.turn))
      free.push({ x: at.x + p.x, y: at.y + p.y })
    }),
  )
  return free
}

/** The points that lie on a ring (within `tolerance`), in the order in which they lie on it. */
function alongRing(points: readonly Point[], ring: Outline, tolerance: Millimetres): Point[] {
  if (points.length === 0) return []
  const { tree } = indexEdges(ring)
  const walked: Millimetres[] = [0]
  ring.forEach((a, i) => walked.push(walked[i]! + distance(a, ring[(i + 1) % ring.length]!)))
  const placed: { point: Point; along: number }[] = []
  for (const point of points) {
    let nearest = Infinity
    let along = 0
    const { x, y } = point
    for (const i of tree.search(x - tolerance, y - tolerance, x + tolerance, y + tolerance)) {
      const a = ring[i]!
      const b = ring[(i + 1) % ring.length]!
      const off = distanceToEdge(point, a, b)
      // Of two that are equally near, the first on the ring.
      if (off > nearest || (off === nearest && walked[i]! > along)) continue
      nearest = off
      along = walked[i]! + nearestShare(point, a, b) * distance(a, b)
    }
    if (nearest <= tolerance) placed.push({ point, along })
  }
  return placed.sort((a, b) => a.along - b.along).map((entry) => entry.point)
}
