/**
 * M19, M35: the line of an edging where it is not that of a full blanket: round what motifs left out leave of it, round
 * the holes in it, and along the open ends of what is joined in the round.
 */
import type { Point } from '../../shared-types/plan'
import type { EdgingStyle } from '../../shared-types/project'
import { boxOf, contains, directionOf, moveOutline, signedArea } from '../geometry/points'
import type { Box, Outline } from '../geometry/points'
import { clockwise, COARSE, grow } from '../geometry/polygons'
import { remembered } from '../memo'
import { degrees } from '../units/quantity'
import type { Millimetres } from '../units/quantity'
import { layBlanket } from './blanket'
import type { Laid, Placement } from './blanket'
import { sideOf } from './edge-repeat'
import { contoursRound, hullOf, inStyle, plus, sumOf } from './edge-walk'
import type { EdgeInput, Line, Told } from './edge-walk'
import { halfPlaces } from './halves'

/** From so many degrees on the hull of the motifs’ middles turns a corner. */
const CORNER = 25

/** Where the outward corners of what is laid point: those of the hull round its middles. */
export function cornersOf({ placements }: Laid): Point[] {
  const hull = hullOf(placements)
  return hull.flatMap((at, i) => {
    const before = hull[(i + hull.length - 1) % hull.length]!
    const after = hull[(i + 1) % hull.length]!
    const [to, from] = [
      { x: after.x - at.x, y: after.y - at.y },
      { x: at.x - before.x, y: at.y - before.y },
    ]
    const turn = directionOf(to) - directionOf(from)
    if (Math.abs(degrees(Math.atan2(Math.sin(turn), Math.cos(turn)))) <= CORNER) return []
    const [long, short] = [Math.hypot(to.x, to.y), Math.hypot(from.x, from.y)]
    return [{ x: from.x / short - to.x / long, y: from.y / short - to.y / long }]
  })
}

/** A contour with the box round it, which tells most of what does not lie in it. */
interface Boxed {
  readonly contour: Outline
  readonly box: Box
}

const boxed = (contour: Outline): Boxed => ({ contour, box: boxOf(contour) })

const holds = ({ contour, box }: Boxed, { x, y }: Point): boolean =>
  x >= box.left && x <= box.right && y >= box.top && y <= box.bottom && contains(contour, { x, y })

/**
 * The lines round what is laid, with motifs left out of it: its edges, and those of the holes in it. Their length and
 * they themselves are asked for apart: they are walked once.
 */
export const cutLines = remembered(walkCut)

function walkCut(input: EdgeInput, laid: Laid): readonly Line[] {
  const halves = input.halves ? halfPlaces(laid, input.counts) : []
  const { border, rim } = borderOf(laid)
  const contours = contoursRound(input, { ...laid, placements: border }, halves)
  const positive = contours.filter((contour) => signedArea(contour) > 0).map(boxed)
  const negative = contours.filter((contour) => signedArea(contour) < 0).map((each) => boxed(clockwise(each)))
  // What the border alone encloses is filled by the motifs within it.
  const isFilled = (hole: Boxed): boolean => {
    const within = positive.filter(({ contour }) => holds(hole, contour[0]!))
    return rim.some((middle) => holds(hole, middle) && !within.some((piece) => holds(piece, middle)))
  }
  const filled = negative.filter(isFilled)
  const depth = (at: Point, among: readonly Boxed[]): number => among.filter((each) => holds(each, at)).length
  const left = leftOut(input, laid)
  const holes = negative.filter(
    (hole) => !filled.includes(hole) && left.some((middle) => holds(hole, middle)),
  )
  // The border of a hole within is an edge of nothing else.
  const outer = positive.filter(({ contour }) => {
    const at = contour[0]!
    const inFilled = filled.filter((hole) => holds(hole, at))
    return inFilled.every(
      (hole) =>
        depth(
          at,
          negative.filter((other) => other !== hole && nests(hole, other)),
        ) > 0,
    )
  })
  const resized = (by: Millimetres) => (each: Boxed) => grow([each.contour], by, COARSE)[0] ?? each.contour
  // A straight line across a hole would close it: it is followed.
  const inner: EdgeInput = input.style === 'level' ? { ...input, style: 'follow' } : input
  return [
    ...inReadingOrder(inStyle(input, outer.map(resized(-input.reach / 2)), laid, halves)),
    ...(holes.length > 0
      ? inReadingOrder(inStyle(inner, holes.map(resized(input.reach / 2)), laid, halves)).map(
          ({ line, tips }) => ({ line: [...line].reverse(), tips, isHole: true }),
        )
      : []),
  ]
}

/** From the top down, then from the left: how they are numbered. Tops that differ by less than 1 mm are alike. */
const inReadingOrder = (lines: readonly Line[]): Line[] => {
  const boxes = new Map(lines.map((each) => [each, boxOf(each.line)]))
  const top = (each: Line): number => Math.round(boxes.get(each)!.top)
  return [...lines].sort((a, b) => top(a) - top(b) || boxes.get(a)!.left - boxes.get(b)!.left)
}

/** Whether one contour lies within another. */
const nests = (outer: Boxed, inner: Boxed): boolean => holds(outer, inner.contour[0]!)

/** How many rows and columns from where something is missing the edge may depend on what stands there. */
const BORDER = 2

/**
 * The motifs near which something is missing, and the middles of those that come next: large blankets are not walked
 * whole for the sake of their edges.
 */
function borderOf(laid: Laid): { readonly border: readonly Placement[]; readonly rim: readonly Point[] } {
  const offset = laid.lattice.shift > 0
  const steps: [number, number][] = []
  for (let down = -BORDER; down <= BORDER; down++)
    for (let across = -2 * BORDER; across <= 2 * BORDER; across++) {
      const isPlace = Math.abs(across) % 2 === (offset ? Math.abs(down) % 2 : 0)
      if (isPlace && (down !== 0 || across !== 0)) steps.push([down, across])
    }
  const key = (row: number, halves: number) => row * 1_000_000 + halves
  const there = new Set(laid.placements.map(({ row, halves }) => key(row, halves)))
  const border: Placement[] = []
  const rest: Placement[] = []
  for (const placement of laid.placements) {
    const { row, halves } = placement
    const isInner = steps.every(([down, across]) => there.has(key(row + down, halves + across)))
    ;(isInner ? rest : border).push(placement)
  }
  const near = new Set(border.map(({ row, halves }) => key(row, halves)))
  const rim = rest.filter(({ row, halves }) =>
    steps.some(([down, across]) => near.has(key(row + down, halves + across))),
  )
  return { border, rim }
}

/** The middles of the places at which nothing stands, in the frame of what is laid. */
function leftOut({ lattice, counts }: EdgeInput, laid: Laid): Point[] {
  const full = layBlanket(lattice, counts).placements
  const there = new Map(laid.placements.map((placement) => [placement.id, placement]))
  // A motif in a block of places stands where no place is.
  const fixed = full.find(({ id }) => there.has(id) && there.get(id)!.size === undefined)
  if (!fixed) return []
  const first = laid.placements.find(({ id }) => id === fixed.id)!
  const times = Math.max(1, Math.round(laid.placements.length / Math.max(1, there.size)))
  const missing = full.filter(({ id }) => !there.has(id))
  const round = counts.columns * lattice.column
  return Array.from({ length: times }, (_, again) =>
    missing.map(({ x, y }) => ({ x: x - fixed.x + first.x + again * round, y: y - fixed.y + first.y })),
  ).flat()
}

/** Both open ends of a round with motifs left out: what one more time round adds to two of them side by side. */
export function roundEdge(input: EdgeInput, laid: Laid): Told {
  const at = (times: number) => sumOf(cutLines(input, sideBySide(input, laid, times)))
  return plus(at(3), at(2), -1)
}

/** A round opened out, several times over. */
const sideBySide = ({ counts }: EdgeInput, laid: Laid, times: number): Laid => ({
  ...laid,
  placements: Array.from({ length: times }, (_, again) =>
    laid.placements.map((placement) => ({
      ...placement,
      x: placement.x + again * laid.round,
      halves: placement.halves + 2 * again * counts.columns,
    })),
  ).flat(),
  round: 0,
})

/** Where a line begins anew, and how often. */
interface Repeat {
  readonly x: Millimetres
  readonly times: number
  /** Motifs of a row in one of them. */
  readonly columns: number
}

/**
 * The open lines along the top and the bottom of a flat piece, of one repeat in its middle, so many times over from
 * where its first motif stands; none where it does not repeat.
 */
export function endsOf(style: EdgingStyle, ring: Outline, small: Laid, repeat: Repeat): Outline[] {
  const { x: width, times, columns } = repeat
  const first = small.placements[0]!.row
  const last = small.placements[small.placements.length - 1]!.row
  const at = (row: number) =>
    small.placements.filter((placement) => placement.row === row).sort((a, b) => a.x - b.x)
  // Where the map of the round begins, above its first motif and below that of its last row.
  const begins = [first, last].map((row) => (at(row)[0] ?? small.placements[0]!).x - width / columns / 2)
  const { top, bottom } = boxOf(ring)
  const straight = (end: number): Outline => {
    const y = end === 0 ? top : bottom
    return [
      { x: begins[end]!, y },
      { x: begins[end]! + width * times, y },
    ]
  }
  if (style === 'level') return [straight(0), straight(1)]
  // Of a row with motifs left out, the third that stands in the middle.
  const within = (row: number, thirds: 1 | 2) =>
    at(row)[Math.min(thirds * columns, Math.floor((thirds * at(row).length) / 3))]
  const sides = [
    sideOf(ring, within(first, 1), { x: 0, y: -1 }, { x: width, y: 0 }),
    sideOf(ring, within(last, 2), { x: 0, y: 1 }, { x: -width, y: 0 }),
  ]
  const along = ([from, to]: readonly [number, number]): Outline => {
    const count = (to - from + ring.length) % ring.length
    return Array.from({ length: count }, (_, i) => ring[(from + i) % ring.length]!)
  }
  return sides.map((side, end) => {
    // An edge without a corner that comes again is straight, as that of squares.
    if (!side) return straight(end)
    const once = end === 0 ? along(side) : [...along(side)].reverse()
    const opened = openedAt(begins[end]!, once, width)
    const line: Point[] = []
    for (let again = 0; again < Math.round(times); again++)
      for (const { x, y } of opened) line.push({ x: x + again * width, y })
    return [...line, { x: opened[0]!.x + width * times, y: opened[0]!.y }]
  })
}

/** One repeat of a line that comes again every `width` mm, begun anew where it passes `begin`. */
function openedAt(begin: Millimetres, once: readonly Point[], width: Millimetres): Outline {
  const closed = [...once, { x: once[0]!.x + width, y: once[0]!.y }]
  for (let i = 0; i < once.length; i++) {
    const [a, b] = [closed[i]!, closed[i + 1]!]
    // The first time that the stretch comes to where it does not lie before it.
    const times = Math.ceil((begin - b.x) / width - 1e-9)
    const share = b.x > a.x ? (begin - a.x - times * width) / (b.x - a.x) : -1
    if (share < -1e-9 || share > 1 + 1e-9) continue
    const moved =
      (k: number) =>
      (point: Point): Point => ({ x: point.x + k * width, y: point.y })
    const cut = { x: begin, y: a.y + Math.min(1, Math.max(0, share)) * (b.y - a.y) }
    const rest = [...once.slice(i + 1).map(moved(times)), ...once.slice(0, i + 1).map(moved(times + 1))]
    // Where it passes in a point of its own, that is not there twice.
    const own = rest.filter(({ x, y }) => {
      const [atBegin, atEnd] = [Math.hypot(x - cut.x, y - cut.y), Math.hypot(x - cut.x - width, y - cut.y)]
      return atBegin > 1e-6 && atEnd > 1e-6
    })
    return [cut, ...own]
  }
  return [...once]
}

/** The lines along both open ends of a round with motifs left out, and round the holes in it. */
export function openEnds(input: EdgeInput, laid: Laid): Outline[] {
  const lines = cutLines(input, sideBySide(input, laid, 3))
  const outer = lines.filter(({ isHole }) => !isHole)
  const ends =
    outer.length === 1
      ? endsOf(input.style, outer[0]!.line, sideBySide(input, laid, 3), {
          x: laid.round,
          times: 1,
          columns: input.counts.columns,
        })
      : []
  const holes = lines.filter(({ line, isHole }) => {
    const x = line.reduce((sum, point) => sum + point.x, 0) / Math.max(1, line.length)
    return isHole && x >= laid.round && x < 2 * laid.round
  })
  return [...ends, ...holes.map(({ line }) => moveOutline(line, -laid.round, 0))]
}
