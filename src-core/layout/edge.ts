/**
 * M35, the line that an edging runs along. *Follow* takes the outer contour of the whole, *bridge* runs from
 * free tip to free tip along it, *level* takes the straight hull. Lengths of lattices grow by the same step
 * with every column and every two rows, so a large blanket is told from small ones, exactly.
 */
import { polygonHull, polygonLength } from 'd3-polygon'
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
import { COARSE, grow, union } from '../geometry/polygons'
import { findNodes } from '../joins/nodes'
import { radians } from '../units/quantity'
import type { Millimetres } from '../units/quantity'
import { halfOutline } from '../geometry/half'
import { layBlanket } from './blanket'
import type { BlanketCounts, Laid } from './blanket'
import { halfPlaces, joinableHalves, keptSide } from './halves'
import type { HalfPlace } from './halves'
import type { Lattice } from './lattice'

export interface EdgeLine {
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
  if (rings <= SMALL.rings + 1) return at(rings)
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
  let told = at(smallColumns, smallRows)
  const base = told
  if (columns > smallColumns)
    told = plus(told, plus(at(smallColumns + 1, smallRows), base, -1), columns - smallColumns)
  if (rows > smallRows)
    told = plus(told, plus(at(smallColumns, smallRows + 2), base, -1), (rows - smallRows) / 2)
  return told
}

/** Edges of small blankets told so far: they depend on the lattice and its tips, not on the large blanket. */
const told = new WeakMap<Lattice, { readonly tips: readonly Anchor[]; readonly edges: Map<string, Told> }>()

function smallEdge(input: EdgeInput, counts: BlanketCounts): Told {
  let known = told.get(input.lattice)
  if (!known || !sameAnchors(known.tips, input.tips))
    told.set(input.lattice, (known = { tips: input.tips, edges: new Map<string, Told>() }))
  const { columns, rows, rings, alternateRows } = counts
  const key = [input.style, input.reach, input.halves, columns, rows, rings, alternateRows].join(' ')
  let edge = known.edges.get(key)
  if (!edge) known.edges.set(key, (edge = walkEdge(input, counts)))
  return edge
}

const sameAnchors = (a: readonly Anchor[], b: readonly Anchor[]): boolean =>
  a.length === b.length && a.every((anchor, i) => anchor === b[i])

function walkEdge(input: EdgeInput, counts: BlanketCounts): Told {
  const laid = layBlanket(input.lattice, counts)
  const copies = (two: readonly Outline[]) =>
    laid.placements.map((p) => moveOutline(two[p.even ? 1 : 0]!, p.x, p.y))
  const grown = input.lattice.outlines.map((outline) => grow([outline], input.reach / 2, COARSE)[0]!)
  const halves = input.halves ? halfPlaces(laid, counts) : []
  const cut = halves.map((half) => {
    const outline = halfOutline(input.lattice.outlines[half.even ? 1 : 0], keptSide(half.side))
    return moveOutline(grow([outline], input.reach / 2, COARSE)[0]!, half.x, half.y)
  })
  const contours = union([...copies(grown), ...cut]).filter((contour) => signedArea(contour) > 0)
  const tips = freeTips(laid, halves, input.tips, input.reach)
  let length = 0
  let count = 0
  for (const contour of contours) {
    const ring = grow([contour], -input.reach / 2, COARSE)[0] ?? contour
    const onRing = input.style === 'follow' ? [] : alongRing(tips, ring, input.reach / 2)
    // Fewer than three tips span no line: the edging then follows the edge.
    const spans = onRing.length > 2
    if (input.style === 'level') length += hullLength(ring)
    else length += perimeter(spans ? onRing : ring)
    count += spans ? onRing.length : 0
  }
  return { length, tips: count }
}

/** Length of the straight hull round a contour. */
function hullLength(ring: Outline): Millimetres {
  const hull = polygonHull(ring.map((point): [number, number] => [point.x, point.y]))
  return hull ? polygonLength(hull) : 0
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
  const placed: { point: Point; along: number }[] = []
  for (const point of points) {
    let nearest = Infinity
    let along = 0
    let walked = 0
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!
      const b = ring[(i + 1) % ring.length]!
      const size = distance(a, b)
      const share = nearestShare(point, a, b)
      const off = distanceToEdge(point, a, b)
      if (off < nearest) {
        nearest = off
        along = walked + share * size
      }
      walked += size
    }
    if (nearest <= tolerance) placed.push({ point, along })
  }
  return placed.sort((a, b) => a.along - b.along).map((entry) => entry.point)
}
