/**
 * The line on which an edging starts, for drawing: it walks round the border motifs and takes their outward
 * tips (bridge), their outward outline (follow) or the hull of both (level). The yarn is counted by the engine.
 */
import { polygonHull } from 'd3-polygon'
import type { MotifAccount, PlacedMotif, Point } from '../../shared-types/plan'
import { directionOf, turnPoint } from '../../src-core/geometry/points'
import { radians } from '../../src-core/units/quantity'
import { simplify } from './simplify'

const FULL = 2 * Math.PI
/** Share of a turn by which a tip may stand beside the neighbour's direction and still count as outward. */
const LEEWAY = 0.02
/** Largest distance in mm by which the drawn band may leave the outline. */
const TOLERANCE = 0.3

/** Motifs along the border, clockwise: first row, right ends, last row backwards, left ends. */
export function borderWalk(motifs: readonly PlacedMotif[]): PlacedMotif[] {
  const rows = new Map<number, PlacedMotif[]>()
  for (const motif of motifs) rows.set(motif.row, [...(rows.get(motif.row) ?? []), motif])
  const ordered = [...rows.entries()]
    .sort((a, b) => a[0] - b[0])
    .map(([, row]) => row.sort((a, b) => a.x - b.x))
  const top = ordered[0]
  const bottom = ordered[ordered.length - 1]
  if (!top || !bottom) return []
  const middle = ordered.slice(1, -1)
  const walk = [
    ...top,
    ...middle.map((row) => row[row.length - 1]!),
    ...(ordered.length > 1 ? bottom.toReversed() : top.slice(1, -1).toReversed()),
    ...middle.toReversed().map((row) => row[0]!),
  ]
  return walk.filter((motif, i) => i === 0 || motif !== walk[i - 1])
}

/** The closed line in mm from the top left of the finished size. */
export function edgingBand(
  motifs: readonly PlacedMotif[],
  account: MotifAccount,
  style: string,
  stretch: { readonly width: number; readonly height: number },
): readonly Point[] {
  const walk = borderWalk(motifs)
  const outline = simplify(account.outline, TOLERANCE)
  const tips = account.anchors.filter(({ kind }) => kind === 'tip' || kind === 'corner')
  const byTips = style === 'bridge' && tips.length > 1
  const points = walk.flatMap((motif, i) => {
    const before = walk[(i + walk.length - 1) % walk.length]!
    const after = walk[(i + 1) % walk.length]!
    const placed = (byTips ? tips : outline).map((point) => {
      const at = turnPoint(point, radians(motif.turn))
      return { x: at.x * stretch.width, y: at.y * stretch.height }
    })
    const outward =
      walk.length < 2 ? sortedFrom(placed, 0, FULL) : outwardPoints(placed, motif, before, after)
    return outward.map(({ x, y }) => ({ x: x + motif.x, y: y + motif.y }))
  })
  if (style !== 'level') return points
  const hull = polygonHull(points.map(({ x, y }): [number, number] => [x, y])) ?? []
  return hull.map(([x, y]) => ({ x, y }))
}

/** Points of a motif that look out, clockwise from the neighbour before it to the one after it. */
function outwardPoints(
  points: readonly Point[],
  motif: PlacedMotif,
  before: PlacedMotif,
  after: PlacedMotif,
): Point[] {
  const from = directionOf({ x: before.x - motif.x, y: before.y - motif.y })
  const to = directionOf({ x: after.x - motif.x, y: after.y - motif.y })
  return sortedFrom(points, from, positive(to - from) || FULL)
}

function sortedFrom(points: readonly Point[], from: number, sweep: number): Point[] {
  return points
    .map((point) => ({ point, along: positive(directionOf(point) - from) }))
    .filter(({ along }) => along > LEEWAY * FULL && along < sweep - LEEWAY * FULL)
    .sort((a, b) => a.along - b.along)
    .map(({ point }) => point)
}

const positive = (angle: number): number => ((angle % FULL) + FULL) % FULL
