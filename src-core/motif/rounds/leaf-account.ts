/** The account of a leaf, an oval or a piece in rows: rounds on a foundation chain, along both sides or back and forth. */
import type { FigureForm, Point } from '../../../shared-types/plan'
import type { Hand, RoundsMotif } from '../../../shared-types/project'
import type { WorkedRound } from '../../notation/worked'
import type { Outline } from '../../geometry/points'
import type { ResolvedGauge } from '../../stitches/gauge'
import type { Millimetres } from '../../units/quantity'
import { OUTLINE_POINTS } from '../constants'
import { leafOutline } from '../outlines'
import type { RoundsAccount, RoundsContext } from './account'
import { figureAccount } from './figure-account'
import type { FigureSize } from './figure-account'
import { formOfRows } from './forms-of-rows'
import type { Humps } from './forms-of-rows'
import { at } from './ground'
import type { LocatedRound } from './ground'
import { locateLeaf } from './leaf'
import { envelope } from './profile'
import type { ReadMotif } from './read-motif'

/** How high the stitches of a round are at most on both sides of a chain, and the lowest of them. */
function heightsOf({ elements }: WorkedRound, gauge: ResolvedGauge) {
  const heights = { near: 0, far: 0, end: 0 }
  for (const element of elements) {
    if (!element.standing) continue
    const height = gauge.height(element.countsAs ?? element.stitch)
    const side = element.into[0]?.opposite ? 'far' : 'near'
    heights[side] = Math.max(heights[side], height)
    heights.end = heights.end === 0 ? height : Math.min(heights.end, height)
  }
  return heights
}

type Heights = ReturnType<typeof heightsOf>

/** Whether the first round goes around both ends of its chain: several stitches stand in the last one of either side. */
function goesAroundBothEnds({ elements }: WorkedRound): boolean {
  const cells = elements.flatMap(({ standing, into: [place] }) =>
    standing && place?.kind === 'chain' ? [place.cell] : [],
  )
  const among = (end: number): number => cells.filter((cell) => cell === end).length
  return among(Math.min(...cells)) > 2 && among(Math.max(...cells)) > 2
}

/**
 * By round: how long a figure along both sides of a chain has become. The chains that the hook skips stand for one end
 * of the first round; one that goes around both has another.
 */
const lengthsAlong = (heights: readonly Heights[], chain: Millimetres, both: boolean): number[] => {
  let length = chain
  return heights.map(({ end }, i) => (length += (i === 0 ? Number(both) : 2) * end))
}

/** By row: how high a piece has become. A row stands on the one that it is worked into; a border goes all round. */
function lengthsUp(worked: readonly WorkedRound[], heights: readonly Heights[], rows: number): number[] {
  const levels: number[] = []
  let high = 0
  return heights.map(({ near, far }, i) => {
    if (i < rows) {
      const below = worked.findIndex(({ index }) => index === worked[i]!.onto)
      const foot = i === 0 ? 0 : (levels[below >= 0 && below < i ? below : i - 1] ?? 0)
      levels.push(foot + Math.max(near, far))
      high = Math.max(high, levels[i]!)
    } else high += near + (far || near)
    return high
  })
}

/** Stitches of a last row that differ by so many times make a scalloped edge (by eye). */
const SCALLOPED = 1.5

/** Stitches of a shell at least; more than two shells are an edging. */
const SHELL = 4

function humpsOf(rows: readonly WorkedRound[], gauge: ResolvedGauge): Humps {
  const goesBack = rows.some(
    ({ onto }, i) => i > 1 && rows.some(({ index }, k) => index === onto && k < i - 1),
  )
  if (goesBack) return 'two'
  const elements = rows.at(-1)?.elements ?? []
  const heights = elements.flatMap(({ standing, stitch, countsAs }) =>
    standing ? [gauge.height(countsAs ?? stitch)] : [],
  )
  const isScalloped = Math.max(...heights) > SCALLOPED * Math.min(...heights)
  const sizes = new Map<number, number>()
  for (const { group, standing } of elements)
    if (standing && group >= 0) sizes.set(group, (sizes.get(group) ?? 0) + 1)
  const shells = [...sizes.values()].filter((size) => size >= SHELL).length
  const mayBe = shells <= 2 && (isScalloped || elements.some(({ role }) => role === 'slip'))
  return mayBe ? 'may-be' : 'none'
}

/** Blunt at both ends: what stands there is hardly lower than what stands along the sides. */
const BLUNT = 0.69

const isOval = (worked: readonly WorkedRound[], heights: readonly Heights[]): boolean =>
  goesAroundBothEnds(worked[0]!) &&
  heights.slice(0, 1).every(({ near, far, end }) => end >= BLUNT * Math.max(near, far))

/** Length from the chain, width from the stitches of both sides. */
export function leafAccount(
  motif: RoundsMotif,
  context: RoundsContext,
  read: ReadMotif,
  gauge: ResolvedGauge,
): RoundsAccount {
  const heights = read.worked.map((round) => heightsOf(round, gauge))
  const { located, stem, rows } = locateLeaf(read.worked, read.stemChains, gauge)
  const around = heights.slice(rows)
  const over = around.reduce((sum, { near, far }) => sum + near + (far || near), 0)
  const stitches = Math.max(0, ...read.worked.slice(0, rows).map((round) => round.stitches))
  const ends = around.reduce((sum, { end }) => sum + 2 * end, 0)
  const lengths =
    rows > 0
      ? lengthsUp(read.worked, heights, rows)
      : lengthsAlong(heights, read.stemChains * gauge.width, goesAroundBothEnds(read.worked[0]!))
  // Rows are seen as they grow, from the chain up: across lies their chain.
  const size = {
    length: lengths.at(-1)!,
    width: rows > 0 ? Math.max(chainsUsed(located), stitches) * gauge.width + ends : over,
  }
  const isBlunt = rows === 0 && isOval(read.worked, heights)
  const outlineAt = (own: FigureSize): Outline =>
    rows > 0 ? rowsOutline(located, own, context.hand) : workedOutline(located, own, isBlunt, gauge)
  const form: FigureForm | null =
    rows > 0
      ? formOfRows(outlineAt(size), humpsOf(read.worked.slice(0, rows), gauge))
      : isBlunt
        ? 'oval'
        : null
  const { account, findings } = figureAccount(motif, context, read, gauge, {
    ...{ form, size, outlineAt, lengths, findings: [] },
  })
  const beginning = {
    stitchWidth: gauge.width,
    ringChains: 0,
    stem,
    // Rows are drawn as they grow, from the chain up.
    turn: rows > 0 ? Math.PI / 2 : 0,
  }
  return { account, findings, located, drawing: () => ({ located, beginning, left: [] }), beginning, read }
}

/** A running mean over so many of the outline's points to both sides takes the corners off single stitches. */
const SMOOTHED = { leaf: 5, rows: 1 } as const

/** The points of an outline with a radius for each, smoothed. */
function smoothed(radii: readonly Millimetres[], reach: number): Point[] {
  return radii.map((_, i) => {
    let sum = 0
    for (let k = -reach; k <= reach; k++) sum += radii[(i + k + OUTLINE_POINTS) % OUTLINE_POINTS]!
    return at(sum / (2 * reach + 1), (i / OUTLINE_POINTS) * 2 * Math.PI)
  })
}

const cross = (a: Point, b: Point): number => a.x * b.y - a.y * b.x
const from = (a: Point, b: Point): Point => ({ x: b.x - a.x, y: b.y - a.y })

/** The points of an outline about the origin, clockwise: those of hollows no deeper than `deep` lie on the hull of all. */
function withoutHollows(points: readonly Point[], deep = Infinity): Point[] {
  const reach = points.map(({ x, y }) => Math.hypot(x, y))
  const start = reach.indexOf(Math.max(...reach))
  const hull: Point[] = []
  for (const point of [...points.slice(start), ...points.slice(0, start + 1)]) {
    while (hull.length > 1 && cross(from(hull.at(-2)!, hull.at(-1)!), from(hull.at(-1)!, point)) <= 0)
      hull.pop()
    hull.push(point)
  }
  const lies = points.map((point) => {
    const end = hull.findIndex((b, i) => i > 0 && cross(hull[i - 1]!, point) >= 0 && cross(point, b) >= 0)
    if (end < 1) return { end, out: 1, under: 0 }
    const [a, b] = [hull[end - 1]!, hull[end]!]
    const side = from(a, b)
    const out = cross(a, side) / cross(point, side)
    return { end, out, under: cross(from(a, point), side) / -Math.hypot(side.x, side.y) }
  })
  const hollows = new Map<number, Millimetres>()
  for (const { end, under } of lies) hollows.set(end, Math.max(hollows.get(end) ?? 0, under))
  return points.map((point, i) => {
    const { end, out } = lies[i]!
    return out > 1 && hollows.get(end)! <= deep ? { x: point.x * out, y: point.y * out } : point
  })
}

/** Sides of a leaf that are less hollow than this, in stitch widths, are steps of its stitches; deeper is a lobe (by eye). */
const WAIST = 0.5

const extentOf = (values: readonly number[]): [number, number] => [Math.min(...values), Math.max(...values)]

/**
 * The outline of what is worked: pointed where low stitches stand at the ends, an oval where they are all as high. Both
 * sides alike, tip and stem end where they are measured. An oval is nowhere hollow, a leaf where it has lobes.
 */
function workedOutline(
  located: readonly LocatedRound[],
  { length, width }: FigureSize,
  isOval: boolean,
  gauge: ResolvedGauge,
): Outline {
  const radii = envelope(located)
  const step = radii.length / OUTLINE_POINTS
  const both = Array.from({ length: OUTLINE_POINTS }, (_, i) => {
    const own = radii[Math.round(i * step) % radii.length]!
    return (own + radii[Math.round((OUTLINE_POINTS - i) * step) % radii.length]!) / 2
  })
  const own = smoothed(both, SMOOTHED.leaf)
  const points = withoutHollows(own, isOval ? Infinity : WAIST * gauge.width)
  const top = points[0]!.y
  const end = points[OUTLINE_POINTS / 2]!.y
  const half = Math.max(...points.map(({ x }) => x))
  if (!(half > 0 && end > top)) return leafOutline(length, width)
  return points.map(({ x, y }) => ({
    x: (x / half) * (width / 2),
    y: Math.min(1 / 2, Math.max(-1 / 2, (y - top) / (end - top) - 1 / 2)) * length,
  }))
}

/** The outline of a piece in rows as it is, the chain below, as the hand sees it. */
function rowsOutline(located: readonly LocatedRound[], { length, width }: FigureSize, hand: Hand): Outline {
  const sign = hand === 'left' ? -1 : 1
  const upright = located.map((round) => ({
    ...round,
    edge: round.edge.map(({ x, y }) => ({ x: sign * y, y: x })),
  }))
  const radii = envelope(upright)
  const own = Array.from(
    { length: OUTLINE_POINTS },
    (_, i) => radii[Math.round((i * radii.length) / OUTLINE_POINTS) % radii.length]!,
  )
  const points = smoothed(own, SMOOTHED.rows)
  const [left, right] = extentOf(points.map(({ x }) => x))
  const [top, bottom] = extentOf(points.map(({ y }) => y))
  if (!(right > left && bottom > top)) return leafOutline(length, width)
  return points.map(({ x, y }) => ({
    x: ((x - left) / (right - left) - 1 / 2) * width,
    y: ((y - top) / (bottom - top) - 1 / 2) * length,
  }))
}

/** Chains of the foundation that the first row is worked into. */
function chainsUsed([first]: readonly LocatedRound[]): number {
  const cells = (first?.round.elements ?? []).flatMap(({ into }) =>
    into.flatMap(({ kind, cell }) => (kind === 'chain' ? [cell] : [])),
  )
  return 1 + Math.max(0, ...cells)
}
