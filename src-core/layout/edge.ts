/**
 * M35, the line that an edging runs along. *Follow* takes the outer contour of the whole, *bridge* runs from
 * free tip to free tip along it, *level* takes the straight hull. Lengths of lattices grow by the same step
 * with every column and every two rows, so a large blanket is told from small ones, exactly.
 */
import { polygonHull } from 'd3-polygon'
import type { Anchor, Point } from '../../shared-types/plan'
import type { EdgingStyle } from '../../shared-types/project'
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
import { indexEdges } from '../geometry/edges'
import { findNodes } from '../joins/nodes'
import { radians } from '../units/quantity'
import type { Millimetres } from '../units/quantity'
import { halfOutline } from '../geometry/half'
import { layBlanket } from './blanket'
import type { BlanketCounts, Laid, Placement } from './blanket'
import { REPEATING, repeatEdge } from './edge-repeat'
import { inFrame } from './frame'
import { halfPlaces, joinableHalves, keptSide } from './halves'
import type { HalfPlace } from './halves'
import type { Lattice } from './lattice'

interface EdgeLine {
  /** Length in mm. */
  readonly length: Millimetres
  /** Free tips on it. */
  readonly tips: number
  /** Outward corners of the whole, where an edging works three stitches in one place. */
  readonly corners: number
}

export interface EdgeInput {
  readonly lattice: Lattice
  readonly counts: BlanketCounts
  readonly style: EdgingStyle
  /** Anchors at tips or corners (places of the clock for a round motif), before the turn. */
  readonly tips: readonly Anchor[]
  readonly reach: Millimetres
  /** Rows that are short by half a motif end with half motifs. */
  readonly halves: boolean
}

/** Columns, rows and rings from which lengths grow evenly. */
const SMALL = { columns: 3, rows: 4, rings: 2 } as const

/** The line an edging runs along round the whole blanket. */
export function edgeLine(input: EdgeInput): EdgeLine {
  const { counts } = input
  const corners = counts.arrangement === 'rings' ? 6 : 4
  const told = counts.arrangement === 'rings' ? ringsEdge(input) : rowsEdge(input)
  return { length: told.length, tips: Math.round(told.tips), corners }
}

type Told = Pick<EdgeLine, 'length' | 'tips'>

const plus = (a: Told, b: Told, times: number): Told => ({
  length: a.length + times * b.length,
  tips: a.tips + times * b.tips,
})

function ringsEdge(input: EdgeInput): Told {
  const at = (rings: number) => smallEdge(input, { ...input.counts, rings })
  const { rings } = input.counts
  if (isSmall(input.counts)) return at(rings)
  const base = at(SMALL.rings)
  const step = plus(at(SMALL.rings + 1), base, -1)
  return plus(base, step, rings - SMALL.rings)
}

function rowsEdge(input: EdgeInput): Told {
  const { columns, rows } = input.counts
  const at = (c: number, r: number) => smallEdge(input, { ...input.counts, columns: c, rows: r })
  // Even and odd numbers of rows end differently; both start from a small blanket of their own kind.
  const smallRows = rows <= SMALL.rows + 2 ? rows : SMALL.rows + (rows % 2)
  const smallColumns = columns <= SMALL.columns + 1 ? columns : SMALL.columns
  let told: Told = at(smallColumns, smallRows)
  const base = told
  if (columns > smallColumns)
    told = plus(told, plus(at(smallColumns + 1, smallRows), base, -1), columns - smallColumns)
  if (rows > smallRows)
    told = plus(told, plus(at(smallColumns, smallRows + 2), base, -1), (rows - smallRows) / 2)
  return told
}

interface SmallEdge extends Told {
  readonly lines: readonly Outline[]
}

/** Edges of small blankets told so far: they depend on the lattice and its tips, not on the large blanket. */
const told = new WeakMap<
  Lattice,
  { readonly tips: readonly Anchor[]; readonly edges: Map<string, SmallEdge> }
>()

function smallEdge(input: EdgeInput, counts: BlanketCounts): SmallEdge {
  let known = told.get(input.lattice)
  if (!known || !sameAnchors(known.tips, input.tips))
    told.set(input.lattice, (known = { tips: input.tips, edges: new Map<string, SmallEdge>() }))
  const { columns, rows, rings, alternateRows } = counts
  const key = [input.style, input.reach, input.halves, columns, rows, rings, alternateRows].join(' ')
  let edge = known.edges.get(key)
  if (!edge) known.edges.set(key, (edge = walkEdge(input, counts)))
  return edge
}

const sameAnchors = (a: readonly Anchor[], b: readonly Anchor[]): boolean =>
  a.length === b.length && a.every((anchor, i) => anchor === b[i])

/** Whether an edge is walked as it is, and not told from smaller ones. */
const isSmall = ({ arrangement, columns, rows, rings }: BlanketCounts): boolean =>
  arrangement === 'rings' ? rings <= SMALL.rings + 1 : columns <= SMALL.columns + 1 && rows <= SMALL.rows + 2

function walkEdge(input: EdgeInput, counts: BlanketCounts): SmallEdge {
  const laid = layBlanket(input.lattice, counts)
  const lines = edgeLines(input, laid, input.halves ? halfPlaces(laid, counts) : [])
  return {
    length: lines.reduce((sum, { line }) => sum + perimeter(line), 0),
    tips: lines.reduce((sum, { tips }) => sum + tips, 0),
    lines: lines.map(({ line }) => line),
  }
}

/** One closed line of an edging, and the free tips that it spans. */
interface Line {
  readonly line: Outline
  readonly tips: number
}

/** The lines round motifs and half motifs: one where they hang together. */
function edgeLines(input: EdgeInput, laid: Laid, halves: readonly HalfPlace[]): Line[] {
  return inStyle(input, ringsRound(input, laid, halves), laid, halves)
}

/** The outer contours round motifs and half motifs, with joins that are bridged closed. */
function ringsRound(input: EdgeInput, laid: Laid, halves: readonly HalfPlace[]): Outline[] {
  const { outlines } = input.lattice
  const grown = outlines.map((outline) => grow([outline], input.reach / 2, COARSE)[0]!)
  const wholes = laid.placements.map((p) => moveOutline(grown[p.even ? 1 : 0]!, p.x, p.y))
  const cut = halves.map((half) => {
    const outline = halfOutline(outlines[half.even ? 1 : 0], keptSide(half.side))
    return moveOutline(grow([outline], input.reach / 2, COARSE)[0]!, half.x, half.y)
  })
  return union([...wholes, ...cut])
    .filter((contour) => signedArea(contour) > 0)
    .map((contour) => grow([contour], -input.reach / 2, COARSE)[0] ?? contour)
}

/** The lines that an edging takes round contours: `laid` and `halves` have the free tips along them. */
function inStyle(
  { style, tips: anchors, reach }: EdgeInput,
  rings: readonly Outline[],
  laid: Laid,
  halves: readonly HalfPlace[],
): Line[] {
  const tips = style === 'follow' ? [] : freeTips(laid, halves, anchors, reach)
  return rings.map((ring) => {
    const onRing = alongRing(tips, ring, reach / 2)
    // Fewer than three tips span no line: the edging then follows the edge.
    const spans = onRing.length > 2
    const spanned = spans ? onRing : ring
    return { line: style === 'level' ? hullOf(ring) : spanned, tips: spans ? onRing.length : 0 }
  })
}

/** The straight hull round a contour, clockwise on paper. */
function hullOf(ring: Outline): Outline {
  const hull = polygonHull(ring.map((point): [number, number] => [point.x, point.y])) ?? []
  return clockwise(hull.map(([x, y]) => ({ x, y })))
}

/** How many rows and columns from the border inwards a line round it may need to know, least first. */
const BORDERS = [1, 2] as const

/** How far lines may differ together from the length told, in mm. */
const SAME: Millimetres = 0.5

/**
 * The closed lines themselves, in the frame of the motifs' places (mm, before blocking), as long together as
 * `length`. Those of a small blanket were walked to tell how long they are. A large blanket repeats the edge of a small one; else they are taken from the motifs at the border
 * where these hang together, and from all where not.
 */
function edgingLines(input: EdgeInput, laid: Laid, length: Millimetres): readonly Outline[] {
  if (isSmall(input.counts)) return smallEdge(input, input.counts).lines
  const halves = input.halves ? halfPlaces(laid, input.counts) : []
  const fits = (lines: readonly Line[]) =>
    Math.abs(lines.reduce((sum, { line }) => sum + perimeter(line), 0) - length) < SAME
  const ring = repeatedRing(input)
  const repeated = ring && inStyle(input, [ring], borderOf(laid, BORDERS[0]), halves)
  if (repeated && fits(repeated)) return repeated.map(({ line }) => line)
  for (const border of BORDERS) {
    const outer = borderOf(laid, border)
    if (outer.placements.length === laid.placements.length) break
    const lines = edgeLines(input, outer, halves)
    if (fits(lines)) return lines.map(({ line }) => line)
  }
  return edgeLines(input, laid, halves).map(({ line }) => line)
}

/** The closed lines themselves, in mm from the top left of the finished size. */
export function finishEdge(
  asked: EdgeInput,
  laid: Laid,
  { length }: EdgeLine,
  edging: Millimetres,
  blockWidth: number,
  blockHeight: number,
): Point[][] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return edgingLines(asked, laid, length).map((line) =>
    line.map((point) => ({ x: x(point.x), y: y(point.y) })),
  )
}

/** The contour of a large blanket, from that of a small one of its kind; null where it does not repeat. */
function repeatedRing(input: EdgeInput): Outline | null {
  const { arrangement, columns, rows } = input.counts
  const doubleRows = Math.floor((rows - REPEATING.rows) / 2)
  if (arrangement === 'rings' || columns <= REPEATING.columns || doubleRows <= 0) return null
  const counts = { ...input.counts, columns: REPEATING.columns, rows: rows - 2 * doubleRows }
  const small = layBlanket(input.lattice, counts)
  const rings = ringsRound(input, small, input.halves ? halfPlaces(small, counts) : [])
  return rings.length === 1 ? repeatEdge(rings[0]!, small, columns - counts.columns, doubleRows) : null
}

/** The first and last rows, and the ends of all others. */
function borderOf(laid: Laid, border: number): Laid {
  const rows = new Map<number, Placement[]>()
  for (const motif of laid.placements) rows.set(motif.row, [...(rows.get(motif.row) ?? []), motif])
  const last = Math.max(...rows.keys())
  const placements = [...rows].flatMap(([row, motifs]) =>
    row <= border || row > last - border || motifs.length <= 2 * border
      ? motifs
      : [...motifs.slice(0, border), ...motifs.slice(-border)],
  )
  return { ...laid, placements }
}

/** Tips that are not joined to a neighbour, where they lie. */
function freeTips(
  laid: Laid,
  halves: readonly HalfPlace[],
  anchors: readonly Anchor[],
  reach: Millimetres,
): Point[] {
  const joined = new Set<string>()
  const wholes = laid.placements.map(({ x, y, turn }) => ({ x, y, turn, anchors }))
  const motifs = [...wholes, ...joinableHalves(halves, anchors)]
  for (const { members } of findNodes(motifs, reach))
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
