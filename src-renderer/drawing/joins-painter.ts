/** Paints where motifs are joined: a mark for each kind of join point, and for pairs that are joined in their own way. */
import { wcagContrast } from 'culori'
import type { PlacedFiller, PlacedHalf } from '../../shared-types/plan-blanket'
import type { Plan, Point } from '../../shared-types/plan'
import type { Box } from '../../src-core/geometry/points'
import { DETAIL } from '../../src-core/figures/detail'
import { joinMarkPath } from '../../src-core/figures/join-mark-items'
import { JOIN_MARK_SIZES, JOIN_MARKS, joinMarkOf } from '../../src-core/figures/join-marks'
import { pairMarkItems, pairMarks } from '../../src-core/figures/pair-marks'
import { pieceAt } from '../../src-core/layout/placed'
import type { JoinPoint, PlacedPiece } from '../../src-core/layout/placed'
import { remembered } from '../../src-core/memo'
import { paintItems, trace, typeIn } from './canvas'
import type { Pen } from './canvas'
import { clamp } from './pen'
import type { Placing } from './pen'
import { kindOfPiece } from './picture'
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
  const { paper, warning } = picture.palette
  const tones = tonesOf(picture)
  for (const mark of JOIN_MARKS) {
    const marks = seen.filter((join) => joinMarkOf(join) === mark)
    if (marks.length === 0) continue
    const reach = radius * JOIN_MARK_SIZES[mark]
    const groups = byTone(marks, mark === 'stretched' ? () => ({ mark: warning, hem: paper }) : tones)
    const traced = (own: readonly JoinPoint[], reachOfEach: number, paint: () => void): void => {
      for (let from = 0; from < own.length; from += AT_ONCE) {
        pen.beginPath()
        for (const { x, y } of own.slice(from, from + AT_ONCE))
          trace(pen, joinMarkPath(mark, x * scale, y * scale, reachOfEach))
        paint()
      }
    }
    if (size >= DETAIL.petals)
      for (const [tone, own] of groups) {
        // A hem keeps a mark apart from yarn like itself beside it.
        pen.strokeStyle = tone.hem
        pen.lineWidth = 1.5 * ratio
        traced(own, reach, () => pen.stroke())
      }
    for (const [tone, own] of groups) {
      pen.fillStyle = tone.mark
      traced(own, reach, () => pen.fill())
      if (mark !== 'several' || reach < RING_FROM * ratio) continue
      pen.fillStyle = tone.hem
      traced(own, reach * RING_HOLE, () => pen.fill())
    }
  }
}

/** The colour of a mark, and of the hem round it and the hole in it. */
interface Tone {
  readonly mark: string
  readonly hem: string
}

function byTone(
  marks: readonly JoinPoint[],
  toneOf: (join: JoinPoint) => Tone,
): readonly (readonly [Tone, readonly JoinPoint[]])[] {
  const groups = new Map<string, [Tone, JoinPoint[]]>()
  for (const join of marks) {
    const tone = toneOf(join)
    const known = groups.get(tone.mark)
    if (known) known[1].push(join)
    else groups.set(tone.mark, [tone, [join]])
  }
  return [...groups.values()]
}

/** What half motifs and fillers are joined at of their own: whose each point is. */
const ownersOf = remembered(
  ({ halves, fillers }: Plan) =>
    new Map<Point, PlacedHalf | PlacedFiller>(
      [...halves, ...fillers].flatMap((piece) =>
        (piece.points ?? []).map((point) => [point, piece] as const),
      ),
    ),
)

/** From this contrast on (WCAG 2.2) ink stands out from a yarn: its hem does the rest (by eye). */
const STANDS_OUT = 2

/** Ink, or paper where that stands out better from the yarns under a mark, in a light window and in a dark one. */
function tonesOf(picture: Picture): (join: JoinPoint) => Tone {
  const { plan, palette } = picture
  const { ink, paper } = palette
  const known = new Map<string, Tone>()
  const yarnOf = (piece: PlacedPiece): string => {
    const inks = kindOfPiece(picture, piece)?.inks
    return (inks?.get(piece.colourway) ?? inks?.get(''))?.layers[0]?.fill ?? palette.bare
  }
  const least = (colour: string, yarns: readonly string[]): number =>
    Math.min(...yarns.map((yarn) => wcagContrast(colour, yarn)))
  return (join) => {
    const ids = join.members?.map(({ motif }) => motif) ?? [ownersOf(plan).get(join)?.id]
    const yarns = ids.flatMap((id) => pieceAt(plan, id) ?? []).map(yarnOf)
    const key = yarns.join(' ')
    let tone = known.get(key)
    if (!tone) {
      const own = yarns.length > 0 ? least(ink, yarns) : Infinity
      const isInk = own >= STANDS_OUT || own >= least(paper, yarns)
      known.set(key, (tone = isInk ? { mark: ink, hem: paper } : { mark: paper, hem: ink }))
    }
    return tone
  }
}

/** Marks of one path: where one is closed, a browser measures all that was traced before it (measured: 8 µs each of 500). */
const AT_ONCE = 32

/** Under this radius (CSS pixels) a ring is a larger dot; the hole of one is this share of it. */
const RING_FROM = 1.8
const RING_HOLE = 0.5
