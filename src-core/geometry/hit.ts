/**
 * Which placed motif lies under a point, in a rectangle, under a stroke. A static R-tree (flatbush) over the
 * boxes, then the outlines themselves, so that a press between two petals meets neither.
 */
import Flatbush from 'flatbush'
import type { Point } from '../../shared-types/plan'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import { placePoint } from './place'
import { boxOf, contains, turnPoint } from './points'
import type { Box, Outline } from './points'

export interface HitMotif {
  readonly id: string
  /** Centre in mm. */
  readonly x: Millimetres
  readonly y: Millimetres
  readonly turn: Degrees
  /** Mirrored left to right before it is turned. */
  readonly flipped?: boolean
}

interface HitInput {
  readonly motifs: readonly HitMotif[]
  /** Closed outline about the centre, before the turn: one for all motifs, or that of each by its index. */
  readonly outline: Outline | readonly Outline[]
  /** Factors by which blocking stretches every motif after its turn. */
  readonly stretch: { readonly width: number; readonly height: number }
  /** Where motifs lie on each other: the place of each in the pile. Without it the first one is met first. */
  readonly ranks?: readonly number[]
}

export interface HitMap {
  /** The (topmost) motif that holds a point, else the nearest whose outline is within `slack` mm, else null. */
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
export function createHitMap({ motifs, outline, stretch, ranks }: HitInput): HitMap {
  const outlineAt = isOne(outline) ? () => outline : (index: number) => outline[index]!
  const boxes = motifs.map((motif, index) => boxAbout(motif, outlineAt(index), stretch))
  const tree = motifs.length > 0 ? new Flatbush(motifs.length) : null
  for (const box of boxes) tree?.add(box.left, box.top, box.right, box.bottom)
  tree?.finish()

  /** A point of the plan, about the motif's centre, as its outline is before it is laid there. */
  const local = (motif: HitMotif, point: Point): Point => {
    const { x, y } = turnPoint(
      { x: (point.x - motif.x) / stretch.width, y: (point.y - motif.y) / stretch.height },
      -radians(motif.turn),
    )
    return motif.flipped ? { x: -x, y } : { x, y }
  }
  const search = (box: Box): number[] =>
    tree ? tree.search(box.left, box.top, box.right, box.bottom).sort((a, b) => a - b) : []

  const indexAt = (point: Point, slack: Millimetres): number => {
    const near = search({
      left: point.x - slack,
      top: point.y - slack,
      right: point.x + slack,
      bottom: point.y + slack,
    })
    if (ranks) near.sort((a, b) => ranks[b]! - ranks[a]!)
    let best = -1
    let least = slack
    for (const index of near) {
      const own = outlineAt(index)
      const inside = local(motifs[index]!, point)
      if (contains(own, inside)) return index
      if (slack === 0) continue
      const off = distanceTo(own, inside)
      if (off < least || (off === least && best < 0)) {
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
        if (!meetsLine(boxes[index]!, from, to)) continue
        const motif = motifs[index]!
        const share = entry(outlineAt(index), local(motif, from), local(motif, to))
        if (share !== null) met.push({ id: motif.id, share })
      }
      return met.sort((a, b) => a.share - b.share).map(({ id }) => id)
    },
    boxOf: (index) => boxes[index]!,
  }
}

const isOne = (outline: HitInput['outline']): outline is Outline =>
  outline.length === 0 || !Array.isArray(outline[0])

/** Boxes about the centre by outline and turn: on a blanket few are different, and a drag changes few. */
const boxMemory = new WeakMap<Outline, Map<string, Box>>()
/** Turns of one outline that are remembered; beyond them it starts anew. */
const MOST_BOXES = 1000

/** Box round an outline where it lies. */
function boxAbout(motif: HitMotif, outline: Outline, { width, height }: HitInput['stretch']): Box {
  const { x, y, turn, flipped = false } = motif
  let known = boxMemory.get(outline)
  if (!known) boxMemory.set(outline, (known = new Map()))
  const key = `${turn} ${flipped ? 'flipped' : ''} ${width} ${height}`
  let own = known.get(key)
  if (!own) {
    if (known.size >= MOST_BOXES) known.clear()
    const lie = { x: 0, y: 0, turn, flipped }
    own = boxOf(
      outline.map((point) => {
        const at = placePoint(point, lie)
        return { x: at.x * width, y: at.y * height }
      }),
    )
    known.set(key, own)
  }
  return { left: x + own.left, top: y + own.top, right: x + own.right, bottom: y + own.bottom }
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
