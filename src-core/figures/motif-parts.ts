/** A motif as paths, for paper, the map and the motif in the hand: its layers, lines between petals, its rounds. */
import type { MotifAccount, PlacedHalf, Point } from '../../shared-types/plan'
import { halfOutline } from '../geometry/half'
import { simplify } from '../geometry/simplify'
import type { Outline } from '../geometry/points'
import { TOLERANCE } from './detail'
import type { Path, PathSegment } from './figure'
import { linePath, polygonPath, turnAndScale } from './path'

/** Factors across and down the whole work. */
export interface Stretch {
  readonly x: number
  readonly y: number
}

/** The half of a motif that lies left or right of the vertical through its centre. */
export type Half = 'left' | 'right'

/** The part that a half motif is: the one away from the edge at which it stands. */
export const keptHalf = ({ side }: Pick<PlacedHalf, 'side'>): Half => (side === 'left' ? 'right' : 'left')

/** How a motif lies: mirrored where its wrong side is up, turned clockwise by degrees, drawn at a scale. */
export interface Lay {
  readonly turn: number
  readonly flipped?: boolean | undefined
  readonly scale: number
  /** How blocking stretches the whole work; 1 where it does not. */
  readonly stretch?: Stretch | undefined
  /** Which half of the motif is drawn, as it lies; both where it is left out. */
  readonly half?: Half | undefined
}

/** Points as they lie about the centre of their motif. */
function laid(points: Outline, { turn, flipped, scale, stretch }: Lay): Point[] {
  const up = flipped ? points.map(({ x, y }) => ({ x: -x, y })) : points
  const turned = turnAndScale(up, turn, scale)
  if (!stretch || (stretch.x === 1 && stretch.y === 1)) return turned
  return turned.map((p) => ({ x: p.x * stretch.x, y: p.y * stretch.y }))
}

/** An outline as it lies, without points that change it by less than a tolerance (in mm of the motif). */
export function laidOutline(outline: Outline, lay: Lay, tolerance = 0): Outline {
  const whole = laid(simplify(outline, tolerance), lay)
  return lay.half ? halfOutline(whole, lay.half) : whole
}

/** An outline at its printed size, with no more corners than print can show. */
export const printedOutline = (outline: Outline, lay: Lay): Outline =>
  laidOutline(outline, lay, TOLERANCE.print / lay.scale)

interface MotifParts {
  /** A closed path for each layer, the outermost first. */
  readonly layers: readonly Path[]
  /** Lines on the outermost layer (between petals), and on the innermost (rounds); empty without any. */
  readonly petals: Path
  readonly rounds: Path
}

const AS_IT_IS: Lay = { turn: 0, scale: 1 }

/** All of a motif; simplified by a tolerance, or smooth, for looking closely. */
export function motifParts(account: MotifAccount, lay = AS_IT_IS, detail: number | 'smooth' = 0): MotifParts {
  const tolerance = detail === 'smooth' ? 0 : detail
  const closed = (outline: Outline): Path => polygonPath(laidOutline(outline, lay, tolerance))
  const kept = ({ x }: Point): boolean =>
    !lay.half || (lay.half === 'right' ? x >= -ON_CUT * lay.scale : x <= ON_CUT * lay.scale)
  return {
    layers: account.layers.map(({ outline }) =>
      detail === 'smooth' ? smoothPath(laidOutline(outline, lay)) : closed(outline),
    ),
    petals: petalLines(account).flatMap((line) => {
      const [a, b] = laid(line, lay) as [Point, Point]
      return kept(a) && kept(b) ? linePath(a.x, a.y, b.x, b.y) : []
    }),
    rounds: centreRings(account).flatMap(closed),
  }
}

/** How far beyond the cut of a half motif a line may end and still be on it, in mm. */
const ON_CUT = 0.01

/** The parts for a scale in device pixels per mm, with no more points than can be seen there. */
export const partsAtLevel = (account: MotifAccount, level: number, lay?: Lay): MotifParts =>
  motifParts(account, lay, level === 0 ? 'smooth' : TOLERANCE.finest * 2 ** level)

type Line = readonly [Point, Point]

/** Lines between petals: from each valley inwards, as far as the next layer or a third of the way. */
function petalLines(account: MotifAccount): Line[] {
  if (account.shape !== 'petals') return []
  const inner = account.layers[1] ? meanRadius(account.layers[1].outline) : account.overValleys * 0.16
  return account.anchors
    .filter((anchor) => anchor.kind === 'valley')
    .flatMap((anchor): Line[] => {
      const radius = Math.hypot(anchor.x, anchor.y)
      if (radius <= inner * 1.05) return []
      const share = inner / radius
      return [
        [
          { x: anchor.x, y: anchor.y },
          { x: anchor.x * share, y: anchor.y * share },
        ],
      ]
    })
}

/** Contours of the rounds inside a motif, where they are known, and one in the heart of a centre. */
function centreRings(account: MotifAccount): (readonly Point[])[] {
  const tip = account.overTips / 2
  const known = account.rounds
    .map((round) => round.outerRadius)
    .filter(
      (radius) => radius > 0 && radius < (account.shape === 'petals' ? account.overValleys / 2 : tip) * 0.97,
    )
  const last = account.layers[account.layers.length - 1]
  if (known.length === 0)
    return last && account.layers.length > 1
      ? [last.outline.map(({ x, y }) => ({ x: x * 0.5, y: y * 0.5 }))]
      : []
  if (account.shape === 'straight' || account.shape === 'leaf')
    return known.map((radius) =>
      account.layers[0]!.outline.map(({ x, y }) => ({ x: (x * radius) / tip, y: (y * radius) / tip })),
    )
  return known.map((radius) =>
    Array.from({ length: 48 }, (_, i) => ({
      x: radius * Math.sin((i * Math.PI) / 24),
      y: -radius * Math.cos((i * Math.PI) / 24),
    })),
  )
}

const meanRadius = (outline: readonly Point[]): number =>
  outline.reduce((sum, { x, y }) => sum + Math.hypot(x, y), 0) / Math.max(1, outline.length)

/** Under this bend in degrees a point of an outline lies on a curve; over it, it is a corner. */
const CORNER = 25

/** A closed path with curves where the outline bends gently, and corners where it has corners. */
function smoothPath(points: Outline): Path {
  const at = (i: number) => points[(i + points.length) % points.length]!
  const half = (i: number) => ({ x: (at(i).x + at(i + 1).x) / 2, y: (at(i).y + at(i + 1).y) / 2 })
  let from = half(-1)
  const path: PathSegment[] = [['M', from.x, from.y]]
  points.forEach((point, i) => {
    const before = at(i - 1)
    const after = at(i + 1)
    const next = half(i)
    const first = Math.atan2(point.y - before.y, point.x - before.x)
    const second = Math.atan2(after.y - point.y, after.x - point.x)
    const bend = Math.abs(Math.atan2(Math.sin(second - first), Math.cos(second - first)))
    if (bend * (180 / Math.PI) <= CORNER) path.push(curve(from, point, next))
    else path.push(['L', point.x, point.y], ['L', next.x, next.y])
    from = next
  })
  path.push(['Z'])
  return path
}

/** The quadratic curve with one control point, as the cubic that it is. */
const curve = (from: Point, by: Point, to: Point): PathSegment => [
  'C',
  from.x + (2 / 3) * (by.x - from.x),
  from.y + (2 / 3) * (by.y - from.y),
  to.x + (2 / 3) * (by.x - to.x),
  to.y + (2 / 3) * (by.y - to.y),
  to.x,
  to.y,
]
