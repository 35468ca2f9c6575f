/**
 * Which placed motif lies under a point, in a rectangle, under a stroke. A static R-tree (flatbush) over the
 * boxes, then the outlines themselves, so that a press between two petals meets neither.
 */
import Flatbush from 'flatbush'
import type { Point } from '../../shared-types/plan'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { boxOf, contains, turnPoint } from './points'
import type { Box, Outline } from './points'

export interface HitMotif {
  readonly id: string
  /** Centre in mm. */
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
}

export interface HitInput {
  readonly motifs: readonly HitMotif[]
  /** Closed outline about the centre, before the turn. */
  readonly outline: Outline
  /** Factors by which blocking stretches every motif after its turn. */
  readonly stretch: { readonly width: number; readonly height: number }
}

export interface HitMap {
  /** The motif at a point: the one that holds it, else the nearest whose outline is within `slack` mm, else null. */
  at(point: Point, slack?: Millimetres): string | null
  /** Motifs whose centre lies in a rectangle, in the order of the plan. */
  within(box: Box): string[]
  /** Indices of the motifs whose boxes meet a rectangle, in the order of the plan. */
  meeting(box: Box): number[]
  /** Motifs under the straight stroke from `from` to `to`, in the order in which the stroke meets them. */
  along(from: Point, to: Point): string[]
  /** Box round one motif. */
  boxOf(index: number): Box
}

/** Builds the index once for a plan; every question after that takes microseconds. */
export function createHitMap({ motifs, outline, stretch }: HitInput): HitMap {
  const boxes = boxesByTurn(motifs, outline, stretch)
  const tree = motifs.length > 0 ? new Flatbush(motifs.length) : null
  const boxAt = (index: number): Box => {
    const motif = motifs[index]!
    const own = boxes.get(motif.turn)!
    return {
      left: motif.x + own.left,
      top: motif.y + own.top,
      right: motif.x + own.right,
      bottom: motif.y + own.bottom,
    }
  }
  motifs.forEach((_, index) => {
    const box = boxAt(index)
    tree?.add(box.left, box.top, box.right, box.bottom)
  })
  tree?.finish()

  /** A point of the plan, about the motif's centre, without its turn and stretch. */
  const local = (motif: HitMotif, point: Point): Point =>
    turnPoint(
      { x: (point.x - motif.x) / stretch.width, y: (point.y - motif.y) / stretch.height },
      -radians(motif.turn),
    )
  const search = (box: Box): number[] =>
    tree ? tree.search(box.left, box.top, box.right, box.bottom).sort((a, b) => a - b) : []

  const indexAt = (point: Point, slack: Millimetres): number => {
    const near = search({
      left: point.x - slack,
      top: point.y - slack,
      right: point.x + slack,
      bottom: point.y + slack,
    })
    let best = -1
    let least = slack
    for (const index of near) {
      const inside = local(motifs[index]!, point)
      if (contains(outline, inside)) return index
      if (slack === 0) continue
      const off = distanceTo(outline, inside)
      if (off <= least) {
        least = off
        best = index
      }
    }
    return best
  }

  return {
    at(point, slack = 0) {
      const index = indexAt(point, slack)
      return index < 0 ? null : motifs[index]!.id
    },
    within(box) {
      return search(box)
        .filter((index) => {
          const { x, y } = motifs[index]!
          return x >= box.left && x <= box.right && y >= box.top && y <= box.bottom
        })
        .map((index) => motifs[index]!.id)
    },
    meeting: search,
    along(from, to) {
      const met: { readonly id: string; readonly share: number }[] = []
      const near = search({
        left: Math.min(from.x, to.x),
        top: Math.min(from.y, to.y),
        right: Math.max(from.x, to.x),
        bottom: Math.max(from.y, to.y),
      })
      for (const index of near) {
        if (!meetsLine(boxAt(index), from, to)) continue
        const motif = motifs[index]!
        const share = entry(outline, local(motif, from), local(motif, to))
        if (share !== null) met.push({ id: motif.id, share })
      }
      return met.sort((a, b) => a.share - b.share).map(({ id }) => id)
    },
    boxOf: boxAt,
  }
}

/** Box round the turned and stretched outline for each turn that occurs. */
function boxesByTurn(
  motifs: readonly HitMotif[],
  outline: Outline,
  stretch: HitInput['stretch'],
): Map<Degrees, Box> {
  const boxes = new Map<Degrees, Box>()
  for (const { turn } of motifs) {
    if (boxes.has(turn)) continue
    const turned = outline.map((point) => {
      const at = turnPoint(point, radians(turn))
      return { x: at.x * stretch.width, y: at.y * stretch.height }
    })
    boxes.set(turn, boxOf(turned))
  }
  return boxes
}

/** Distance in mm from a point to the edge of an outline. */
function distanceTo(outline: Outline, point: Point): Millimetres {
  let least = Infinity
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[j]!
    const b = outline[i]!
    const dx = b.x - a.x
    const dy = b.y - a.y
    const size = dx * dx + dy * dy
    const share =
      size === 0 ? 0 : Math.min(1, Math.max(0, ((point.x - a.x) * dx + (point.y - a.y) * dy) / size))
    least = Math.min(least, Math.hypot(a.x + dx * share - point.x, a.y + dy * share - point.y))
  }
  return least
}

/** Whether the whole line through two points comes through a box: sorts out what lies far off a slanting stroke. */
function meetsLine(box: Box, from: Point, to: Point): boolean {
  const dx = to.x - from.x
  const dy = to.y - from.y
  const side = (x: number, y: number) => dx * (y - from.y) - dy * (x - from.x)
  const corners = [
    side(box.left, box.top),
    side(box.right, box.top),
    side(box.left, box.bottom),
    side(box.right, box.bottom),
  ]
  return Math.min(...corners) <= 0 && Math.max(...corners) >= 0
}

/** Where a straight stroke first is inside an outline, as a share of its length; null when it never is. */
function entry(outline: Outline, from: Point, to: Point): number | null {
  if (contains(outline, from)) return 0
  const dx = to.x - from.x
  const dy = to.y - from.y
  let first: number | null = null
  for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
    const a = outline[j]!
    const b = outline[i]!
    const ex = b.x - a.x
    const ey = b.y - a.y
    const cross = dx * ey - dy * ex
    if (cross === 0) continue
    const share = ((a.x - from.x) * ey - (a.y - from.y) * ex) / cross
    const along = ((a.x - from.x) * dy - (a.y - from.y) * dx) / cross
    if (share >= 0 && share <= 1 && along >= 0 && along <= 1 && (first === null || share < first))
      first = share
  }
  return first
}
