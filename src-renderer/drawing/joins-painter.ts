/** Paints where motifs are joined: a mark for each kind of join point, and for pairs that are joined in their own way. */
import type { Box } from '../../src-core/geometry/points'
import { DETAIL } from '../../src-core/figures/detail'
import { joinMarkPath } from '../../src-core/figures/join-mark-items'
import { JOIN_MARK_SIZES, JOIN_MARKS, joinMarkOf } from '../../src-core/figures/join-marks'
import { pairMarkItems, pairMarks } from '../../src-core/figures/pair-marks'
import { paintItems, trace, typeIn } from './canvas'
import type { Pen } from './canvas'
import { clamp } from './pen'
import type { Placing } from './pen'
import type { Picture } from './picture'

/** Join marks: radius as a share of the motif, within these CSS pixels. */
const JOIN_MARK = { share: 0.034, least: 0.9, most: 5 } as const

/** Of the marks between two motifs that are joined in a way of their own: reach and line beside a join point's radius. */
const PAIR = { reach: 2.6, line: 0.6, least: 4 } as const

/** Marks between two motifs that are joined in a way of their own. */
export function paintPairs(pen: Pen, { plan, palette }: Picture, placing: Placing, size: number): void {
  const marks = pairMarks(plan)
  if (marks.length === 0) return
  const { scale, ratio, x, y } = placing
  const radius = clamp(size * JOIN_MARK.share, JOIN_MARK.least, JOIN_MARK.most)
  const { ink, paper } = palette
  const look = {
    ...{ reach: Math.max(PAIR.least, PAIR.reach * radius) * ratio, ink, paper },
    line: Math.max(1, PAIR.line * radius) * ratio,
  }
  pen.setTransform(1, 0, 0, 1, x, y)
  const items = marks.flatMap((mark) => pairMarkItems(mark, { x: mark.x * scale, y: mark.y * scale }, look))
  paintItems(pen, items, typeIn(palette))
}

/** Each kind of join point in a shape of its own, all that are in `box`: tiles painted at different times fit. */
export function paintJoins(pen: Pen, picture: Picture, placing: Placing, box: Box, size: number): void {
  const { scale, ratio } = placing
  const radius = clamp(size * JOIN_MARK.share, JOIN_MARK.least, JOIN_MARK.most) * ratio
  const margin = (JOIN_MARK_SIZES.stretched * radius + ratio) / scale
  const seen = picture.joins.filter(
    ({ x, y }) =>
      x >= box.left - margin && x <= box.right + margin && y >= box.top - margin && y <= box.bottom + margin,
  )
  pen.setTransform(1, 0, 0, 1, placing.x, placing.y)
  const { ink, paper, warning } = picture.palette
  for (const mark of JOIN_MARKS) {
    const own = seen.filter((join) => joinMarkOf(join) === mark)
    if (own.length === 0) continue
    const reach = radius * JOIN_MARK_SIZES[mark]
    const traced = (reachOfEach: number, paint: () => void): void => {
      for (let from = 0; from < own.length; from += AT_ONCE) {
        pen.beginPath()
        for (const { x, y } of own.slice(from, from + AT_ONCE))
          trace(pen, joinMarkPath(mark, x * scale, y * scale, reachOfEach))
        paint()
      }
    }
    if (size >= DETAIL.petals) {
      // A hem of paper keeps ink apart from yarn as dark as itself.
      pen.strokeStyle = paper
      pen.lineWidth = 1.5 * ratio
      traced(reach, () => pen.stroke())
    }
    pen.fillStyle = mark === 'stretched' ? warning : ink
    traced(reach, () => pen.fill())
    if (mark !== 'several' || reach < RING_FROM * ratio) continue
    pen.fillStyle = paper
    traced(reach * RING_HOLE, () => pen.fill())
  }
}

/** Marks of one path: where one is closed, a browser measures all that was traced before it (measured: 8 µs each of 500). */
const AT_ONCE = 32

/** Under this radius (CSS pixels) a ring is a larger dot; the hole of one is this share of it. */
const RING_FROM = 1.8
const RING_HOLE = 0.5
