/**
 * Corners of an edging with written rounds, numbered as its words count them, and how many stitches lead from one to
 * the next: on the map in the window and on paper, and on the edging's own page.
 */
import { counted } from './words'
import type { EdgingLoop, Plan, Point } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import { workedLine } from '../edging/direction'
import { alongOf, pointAlong } from '../edging/line-places'
import { OPEN_ENDS } from '../edging/open-ends'
import { firstRoundOf } from '../edging/pick-up'
import { mapSize } from '../layout/placed'
import { remembered } from '../memo'
import type { Colour, FigureItem, GroupItem } from './figure'
import { drawPath, drawText, MM_PER_POINT } from './figure'
import { capitalDrop, FIGURE_WIDTH } from './lettering'
import { rectanglePath } from './path'

/** Where a corner is, in plan mm on the outer border of the edging. */
export interface EdgeCorner extends Point {
  /** The way out of the work there, as long as 1. */
  readonly out: Point
  /** From 1, on through all lines. */
  readonly number: number
}

/** From a corner to the next. */
export interface EdgeStretch extends Point {
  readonly from: number
  readonly to: number
  readonly out: Point
  /** Stitches that are picked up. */
  readonly stitches: number
  /** The way it runs there, in radians from the x axis, so that words along it are never upside down. */
  readonly angle: number
  /** mm, from corner to corner. */
  readonly length: number
  readonly line: number
}

/** Where a stretch of a flat piece lies, as the map is seen. */
export type EdgeSide = 'top' | 'right side' | 'bottom' | 'left side'

export interface EdgeCorners {
  readonly corners: readonly EdgeCorner[]
  readonly stretches: readonly EdgeStretch[]
}

const NONE: EdgeCorners = { corners: [], stretches: [] }

/** Share of a motif before and after a place by which the way of an edge is told there (by eye). */
const ABOUT = 0.75

/** The corners of a plan's edging; none where its words count none. */
export const edgingCorners = remembered((plan: Plan): EdgeCorners =>
  plan.edging?.loops ? cornersAlong(plan, plan.edging.loops) : NONE,
)

function cornersAlong(plan: Plan, loops: readonly EdgingLoop[]): EdgeCorners {
  const { edging, edgingLines, pitch, settled } = plan
  if (!edging) return NONE
  const corners: EdgeCorner[] = []
  const stretches: EdgeStretch[] = []
  for (const { line, marks, stretches: counts } of loops.map(firstRoundOf)) {
    if (marks.length === 0 || marks.some(({ kind }) => kind !== 'corner')) continue
    const isOpen = plan.round !== undefined && line < OPEN_ENDS
    const about = ABOUT * Math.max(1, pitch.column)
    const way = workedLine(edgingLines, line, plan.round !== undefined, settled.hand)
    const walk = walkAlong(way, about, isOpen, settled.hand)
    if (!walk) continue
    const first = corners.length + 1
    marks.forEach(({ along }, i) => {
      const next = marks[(i + 1) % marks.length]!
      const share = marks.length === 1 ? 1 : (next.along - along + 1) % 1
      corners.push({ number: first + i, ...walk.outside(along * walk.length, edging.height) })
      const middle = ((along + share / 2) % 1) * walk.length
      stretches.push({
        ...{ from: first + i, to: first + ((i + 1) % marks.length), stitches: counts[i] ?? 0 },
        ...walk.outside(middle, edging.height),
        angle: readable(walk.angle(middle)),
        length: share * walk.length,
        line,
      })
    })
  }
  return { corners, stretches }
}

/** The sides in turn, with the way to each from the middle. */
const SIDES: readonly (readonly [EdgeSide, Point])[] = [
  ['top', { x: 0, y: -1 }],
  ['right side', { x: 1, y: 0 }],
  ['bottom', { x: 0, y: 1 }],
  ['left side', { x: -1, y: 0 }],
]

/**
 * On which sides of the map the stretches of a line with four corners lie, from its first corner on, wherever that
 * stands: as they come in turn, by where each lies from the middle of the corners. Null where there are no sides.
 */
export function edgeSides(plan: Plan, line: number): readonly EdgeSide[] | null {
  const { loops, plain = [] } = plan.edging ?? {}
  const { corners, stretches } = loops ? edgingCorners(plan) : cornersAlong(plan, plain)
  const own = stretches.filter((stretch) => stretch.line === line)
  if ((plan.round !== undefined && line < OPEN_ENDS) || own.length !== SIDES.length) return null
  const ends = own.map(({ from, to }) => [corners[from - 1]!, corners[to - 1]!] as const)
  const middle = (axis: 'x' | 'y') => ends.reduce((sum, [corner]) => sum + corner[axis] / ends.length, 0)
  const [x, y] = [middle('x'), middle('y')]
  const ways = ends.map(([a, b]) => ({ x: (a.x + b.x) / 2 - x, y: (a.y + b.y) / 2 - y }))
  const orders = SIDES.flatMap((_, first) =>
    [1, -1].map((step) => SIDES.map((__, i) => SIDES[(first + step * i + 2 * SIDES.length) % SIDES.length]!)),
  )
  const fits = (order: typeof SIDES): number =>
    order.reduce((sum, [, out], i) => sum + ways[i]!.x * out.x + ways[i]!.y * out.y, 0)
  return orders.reduce((best, order) => (fits(order) > fits(best) ? order : best)).map(([side]) => side)
}

/** "top right": where the corners of such a line are, from its first on; null where there are no sides. */
export function cornerNames(plan: Plan, line: number): readonly string[] | null {
  const sides = edgeSides(plan, line)
  return (
    sides &&
    sides.map((side, i) => {
      const both = [side, sides.at(i - 1)!]
      const across = both.find((each) => each.endsWith(' side')) ?? ''
      return `${both.find((each) => !each.endsWith(' side')) ?? ''} ${across.replace(' side', '')}`.trim()
    })
  )
}

const readable = (angle: number): number => {
  const level = Math.atan2(Math.sin(angle), Math.cos(angle))
  // A side that runs straight up is read from below.
  return level > Math.PI / 2 - 1e-6 ? level - Math.PI : level < -Math.PI / 2 - 1e-6 ? level + Math.PI : level
}

/**
 * A line the way it is worked, an open one beginning anew where it ends, walked by mm from its first point; `about` mm
 * tell its way at a place.
 */
function walkAlong(line: readonly Point[], about: number, isOpen: boolean, hand: Hand) {
  if (line.length < 3) return null
  const along = alongOf(line)
  const length = along[isOpen ? line.length - 1 : line.length]!
  const around = isOpen ? line.at(-1)!.x - line[0]!.x : 0
  const at = (mm: number): Point => {
    const { x, y } = pointAlong(line, along, ((mm % length) + length) % length, isOpen)
    return { x: x + Math.floor(mm / length) * around, y }
  }
  const angle = (mm: number): number => {
    const [a, b] = [at(mm - about), at(mm + about)]
    return Math.atan2(b.y - a.y, b.x - a.x)
  }
  /** So much outside of the line's own reach near a place: in a dip no mark stands between the tips. */
  const outside = (mm: number, height: number): Point & { readonly out: Point } => {
    const way = angle(mm)
    // Right-handers have the work to their left.
    const side = hand === 'right' ? -1 : 1
    const out = { x: side * Math.sin(way), y: -side * Math.cos(way) }
    const here = at(mm)
    const reach = Array.from({ length: 2 * NEAR + 1 }, (_, i) => {
      const near = at(mm + ((i - NEAR) / NEAR) * about)
      return (near.x - here.x) * out.x + (near.y - here.y) * out.y
    })
    const far = Math.max(...reach) + height
    return { x: here.x + out.x * far, y: here.y + out.y * far, out }
  }
  return { length, angle, outside }
}
/** Places looked at before and after one (by eye). */
const NEAR = 12

/** How plates are drawn: `scale` units for each plan mm, the type in points of those units, the plan's top left. */
export interface PlateLook {
  readonly scale: number
  readonly type: number
  readonly ink: Colour
  readonly paper: Colour
  /** Width of the lines of a square. */
  readonly line: number
  /** Beside the border, where there is room all round; left out: corners alone, on it and within the map. */
  readonly isBeside?: boolean
  readonly left: number
  readonly top: number
}

/** Room round the type of a plate, as a share of its height (by eye). */
const PAD = 0.55
/** Mean width of small letters per em, for "sts" (by eye; the plate has room to spare). */
const LETTER_WIDTH = 0.48

/**
 * A square with its number at each corner; beside the border, along each stretch that has room, how many stitches it
 * takes: on the border they would cover it.
 */
export function cornerPlates(plan: Plan, look: PlateLook): FigureItem[] {
  const { corners, stretches } = edgingCorners(plan)
  const { scale, type, ink, paper, line } = look
  const high = 2 * capitalDrop(type)
  const half = (high * (1 + 2 * PAD)) / 2
  const size = mapSize(plan)
  /** Within the map: beyond it there may be no paper, or numbers of rows. */
  const inside = ({ x, y }: Point, across: number, down: number): Point => ({
    x: look.left + within(x * scale, across, size.width * scale),
    y: look.top + within(y * scale, down, size.height * scale),
  })
  /** Beside the border: moved out by so much. */
  const beside = ({ x, y, out }: Point & { readonly out: Point }, by: number): Point => ({
    x: look.left + x * scale + out.x * by,
    y: look.top + y * scale + out.y * by,
  })
  const counts = (look.isBeside ? stretches : []).flatMap((stretch): GroupItem[] => {
    const text = stitchWords(stretch.stitches)
    const digits = String(stretch.stitches).length
    const wide = (digits * FIGURE_WIDTH + (text.length - digits) * LETTER_WIDTH) * type * MM_PER_POINT
    const across = wide / 2 + high * PAD
    if (stretch.length * scale < 2 * across + 4 * half) return []
    const [cos, sin] = [Math.cos(stretch.angle), Math.sin(stretch.angle)]
    const { x, y } = beside(stretch, half + 2 * line + scale * beyond(plan, stretch, across / scale))
    return [
      {
        kind: 'group',
        matrix: [cos, sin, -sin, cos, x, y],
        items: [
          drawPath(rectanglePath(-across, -half, 2 * across, 2 * half), { fill: paper }),
          drawText(text, 0, capitalDrop(type), type, { anchor: 'middle', colour: ink }),
        ],
      },
    ]
  })
  const squares = corners.flatMap((corner): FigureItem[] => {
    const room = half + line / 2
    const { x, y } = look.isBeside
      ? beside(corner, room * (Math.abs(corner.out.x) + Math.abs(corner.out.y)))
      : inside(corner, room, room)
    return [
      drawPath(rectanglePath(x - half, y - half, 2 * half, 2 * half), {
        ...{ fill: paper, stroke: ink, width: line },
      }),
      drawText(String(corner.number), x, y + capitalDrop(type), type, {
        ...{ anchor: 'middle', weight: 'bold', colour: ink },
      }),
    ]
  })
  return [...counts, ...squares]
}

/** Places looked at along each piece of a line (by eye). */
const PER_PIECE = 8

/**
 * mm. How far the border reaches out beyond the middle of a stretch within so many mm on both sides of it: as far on
 * stands what is said of the stretch, which would cover it.
 */
function beyond(plan: Plan, { x, y, out, line }: EdgeStretch, across: number): number {
  const points = plan.edgingLines[line] ?? []
  const height = plan.edging?.height ?? 0
  return points.reduce((most, a, i) => {
    const b = points[(i + 1) % points.length]!
    for (let k = 0; k < PER_PIECE; k++) {
      const share = k / PER_PIECE
      const [dx, dy] = [a.x + (b.x - a.x) * share - x, a.y + (b.y - a.y) * share - y]
      if (Math.abs(dy * out.x - dx * out.y) < across) most = Math.max(most, dx * out.x + dy * out.y + height)
    }
    return most
  }, 0)
}

const within = (at: number, reach: number, length: number): number =>
  length < 2 * reach ? length / 2 : Math.min(length - reach, Math.max(reach, at))

const stitchWords = (count: number): string => counted(count, 'st')

/** What the plates mean; empty where there are none. `withCounts`: what stands between them, beside the border. */
export function cornerWords(plan: Plan, edging: string, withCounts: boolean): string {
  const { corners } = edgingCorners(plan)
  if (corners.length === 0) return ''
  const counts = withCounts
    ? '; between two corners stands how many stitches are worked from one to the next'
    : ''
  return `A number in a square along the edge is a corner of the ${edging}${counts}.`
}

/** mm. How far plates of so large a type reach beyond the border. */
export const plateReach = (type: number, line: number): number => {
  const half = capitalDrop(type) * (1 + 2 * PAD)
  return 2 * (half + line) * Math.SQRT2
}

/** The same in few words, under the map. */
export const cornerLegend = (edging: string): string => `corner of the ${edging}, with the stitches between`
