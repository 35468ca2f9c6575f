/**
 * M35, the line that an edging runs along. *Follow* takes the outer contour of the whole, *bridge* runs from
 * free tip to free tip along it, *level* takes the straight hull. Lengths of lattices grow by the same step
 * with every column and every two rows (where several motifs alternate, with as many as they repeat after), so a
 * large blanket is told from small ones, exactly. One with motifs left out or put in by hand is walked as it is, round
 * what was cut out of it too; one that is joined in the round has its two open ends.
 */
import type { MotifAccount, Point } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import type { BorderEdge } from '../edging/border'
import { edgeAsWorked } from '../edging/direction'
import { isSameOutline, moveOutline, perimeter } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { remembered } from '../memo'
import type { Millimetres } from '../units/quantity'
import { layBlanket } from './blanket'
import type { BlanketCounts, Laid, Placement } from './blanket'
import { cornersOf, cutLines, endsOf, openEnds, roundEdge } from './edge-cut'
import { openCorners } from './edge-open'
import { REPEATING, repeatEdge } from './edge-repeat'
import { edgeLines, inStyle, plus, ringsRound, straightSides, sumOf } from './edge-walk'
import type { EdgeInput, EdgeLine, Line, Told } from './edge-walk'
import { inFrame } from './frame'
import type { EdgingRoom } from './frame'
import { halfPlaces } from './halves'
import type { Lattice } from './lattice'
import { rowPeriod } from './pattern'

export type { EdgeInput } from './edge-walk'

/** Columns, rows and rings from which lengths grow evenly. */
const SMALL = { columns: 3, rows: 4, rings: 2 } as const

/** Where the corners of full rows point, and those of rings. */
const DIAGONALS: readonly Point[] = [
  { x: -1, y: -1 },
  { x: 1, y: -1 },
  { x: 1, y: 1 },
  { x: -1, y: 1 },
]
const SIXTHS: readonly Point[] = Array.from({ length: 6 }, (_, i) => ({
  x: Math.cos((i * Math.PI) / 3),
  y: Math.sin((i * Math.PI) / 3),
}))

/** The line an edging runs along round the whole blanket. */
export function edgeLine(input: EdgeInput): EdgeLine {
  const { counts, whole, lattice } = input
  if (counts.inTheRound) {
    const told = atEnds(input, whole ? roundEdge(input, whole) : evenRound(input))
    return { length: told.length, tips: Math.round(told.tips), corners: 0, outward: [], turns: 0 }
  }
  const isEndless = counts.arrangement !== 'rings' || lattice.pattern.count === 1
  if (whole || !isEndless) {
    const laid = whole ?? layBlanket(lattice, counts)
    const lines = cutLines(input, laid)
    const turns = lines.reduce((sum, { isHole }) => sum + (isHole ? -1 : 1), 0)
    const outward = cornersOf(laid)
    return { ...sumOf(lines), corners: outward.length, outward, turns }
  }
  const outward = counts.arrangement === 'rings' ? SIXTHS : DIAGONALS
  const told = counts.arrangement === 'rings' ? ringsEdge(input) : rowsEdge(input)
  return { length: told.length, tips: Math.round(told.tips), corners: outward.length, outward, turns: 1 }
}

/** What both open ends come to without the one that has no edging. */
function atEnds(input: EdgeInput, both: Told): Told {
  if (input.ends === 'both') return both
  const laid = input.whole ?? layBlanket(input.lattice, input.counts)
  const [mouth, bottom] = bothEnds({ ...input, ends: 'both' }, laid)
  const line = input.ends === 'mouth' ? bottom : mouth
  if (!line) return { length: both.length / 2, tips: both.tips / 2 }
  const length = line
    .slice(1)
    .reduce((sum, to, i) => sum + Math.hypot(to.x - line[i]!.x, to.y - line[i]!.y), 0)
  // A straight line from tip to tip has a tip for each of its parts.
  return {
    length: both.length - length,
    tips: Math.max(0, both.tips - (input.style === 'bridge' ? line.length - 1 : both.tips / 2)),
  }
}

/** The open lines at the mouth and at the bottom, then those of holes; an end without an edging has no points. */
function bothEnds(input: EdgeInput, laid: Laid): readonly Outline[] {
  const lines = input.whole ? openEnds(input, laid) : evenEnds(input, laid)
  if (input.ends === 'both' || lines.length < 2) return lines
  return lines.map((line, i) =>
    (i === 0 && input.ends === 'bottom') || (i === 1 && input.ends === 'mouth') ? [] : line,
  )
}

/** Both open ends of a full round: what every column, or every repeat of columns, adds to a flat blanket. */
function evenRound(input: EdgeInput): Told {
  const { columns, rows } = input.counts
  const repeat = repeatOf(input.lattice).columns
  const small = SMALL.columns
  const at = (c: number) =>
    rowsEdge({ ...input, counts: { ...input.counts, columns: c, rows, inTheRound: false } })
  const step = plus(at(small + repeat), at(small), -1)
  return { length: (step.length * columns) / repeat, tips: (step.tips * columns) / repeat }
}

/** After how many columns and rows a lattice repeats. */
const repeatOf = ({ pattern }: Lattice) => ({
  columns: pattern.by === 'cell' ? pattern.count : 1,
  rows: rowPeriod(pattern),
})

function ringsEdge(input: EdgeInput): Told {
  const at = (rings: number) => smallEdge(input, { ...input.counts, rings })
  const { rings } = input.counts
  if (isSmall(input)) return at(rings)
  const base = at(SMALL.rings)
  const step = plus(at(SMALL.rings + 1), base, -1)
  return plus(base, step, rings - SMALL.rings)
}

function rowsEdge(input: EdgeInput): Told {
  const { columns, rows } = input.counts
  const { columns: across, rows: down } = repeatOf(input.lattice)
  const at = (c: number, r: number) => smallEdge(input, { ...input.counts, columns: c, rows: r })
  // Even and odd numbers of rows end differently; both start from a small blanket of their own kind.
  const smallRows = rows <= SMALL.rows + down ? rows : SMALL.rows + ((rows - SMALL.rows) % down)
  const smallColumns =
    columns <= SMALL.columns + across ? columns : SMALL.columns + ((columns - SMALL.columns) % across)
  let told: Told = at(smallColumns, smallRows)
  const base = told
  if (columns > smallColumns)
    told = plus(told, plus(at(smallColumns + across, smallRows), base, -1), (columns - smallColumns) / across)
  if (rows > smallRows)
    told = plus(told, plus(at(smallColumns, smallRows + down), base, -1), (rows - smallRows) / down)
  return told
}

interface SmallEdge extends Told {
  readonly lines: readonly Outline[]
}

/** Edges of small blankets told so far: they depend on the lattice and its tips, not on the large blanket. */
const told = new WeakMap<
  Lattice,
  {
    readonly tips: EdgeInput['tips']
    readonly edges: Map<string, SmallEdge>
    /** The contours, which are the same in every style: a line that levels follows them for its dips as well. */
    readonly rings: Map<string, readonly Outline[]>
  }
>()

function smallEdge(input: EdgeInput, counts: BlanketCounts): SmallEdge {
  let known = told.get(input.lattice)
  if (!known || !sameAnchors(known.tips, input.tips))
    told.set(input.lattice, (known = { tips: input.tips, edges: new Map(), rings: new Map() }))
  const { columns, rows, rings, alternateRows } = counts
  const shape = [input.reach, input.halves, columns, rows, rings, alternateRows].join(' ')
  const key = [shape, input.style, ...allowed(input)].join(' ')
  const edge = known.edges.get(key)
  if (edge) return edge
  const laid = layBlanket(input.lattice, counts)
  const halves = input.halves ? halfPlaces(laid, counts) : []
  const contours = known.rings.get(shape) ?? ringsRound(input, laid, halves)
  known.rings.set(shape, contours)
  const lines = inStyle(input, contours, laid, halves)
  const walked = { ...sumOf(lines), lines: lines.map(({ line }) => line) }
  known.edges.set(key, walked)
  return walked
}

/** Which tips of which kinds may be joined from how far: rules differ in that where the lattice is the same. */
const allowed = ({ ways: { pair }, tips }: EdgeInput): readonly (string | number)[] =>
  pair
    ? tips.flatMap((own, kind) =>
        tips.flatMap((others, other) => {
          const { reach, allows } = pair(kind, other)
          const bits = own.flatMap((one) => others.map((two) => (allows(one, two) ? '1' : '0')))
          return [reach, bits.join('')]
        }),
      )
    : []

const sameAnchors = (a: EdgeInput['tips'], b: EdgeInput['tips']): boolean =>
  a.length === b.length && a.every((own, kind) => isSameOutline(own, b[kind]!))

/** Whether an edge is walked as it is, and not told from smaller ones. */
function isSmall({ counts, lattice }: EdgeInput): boolean {
  const { columns: across, rows: down } = repeatOf(lattice)
  const { arrangement, columns, rows, rings } = counts
  if (arrangement === 'rings') return rings <= SMALL.rings + 1
  return columns <= SMALL.columns + across && rows <= SMALL.rows + down
}

/** How many rows and columns from the border inwards a line round it may need to know, least first. */
const BORDERS = [1, 2] as const

/** How far lines may differ together from the length told, in mm. */
const SAME: Millimetres = 0.5

/**
 * The closed lines themselves, in the frame of the motifs' places (mm, before blocking), as long together as
 * `length`. Those of a small blanket were walked to tell how long they are. A large blanket repeats the edge of a small one; else they are taken from the motifs at the border
 * where these hang together, and from all where not.
 */
export const edgingLines = remembered(walkLines)

function walkLines(input: EdgeInput, laid: Laid, length: Millimetres): readonly Outline[] {
  if (input.counts.inTheRound) return bothEnds(input, laid)
  if (input.whole || (input.counts.arrangement === 'rings' && input.lattice.pattern.count > 1))
    return cutLines(input, laid).map(({ line }) => line)
  if (isSmall(input)) return smallEdge(input, input.counts).lines
  const halves = input.halves ? halfPlaces(laid, input.counts) : []
  const fits = (lines: readonly Line[]) =>
    Math.abs(lines.reduce((sum, { line }) => sum + perimeter(line), 0) - length) < SAME
  const ring = repeatedRing(input)
  const repeated = ring && inStyle(input, [ring], borderOf(laid, BORDERS[0]), halves)
  if (repeated && fits(repeated)) return repeated.map(({ line }) => line)
  for (const border of BORDERS) {
    const outer = borderOf(laid, border)
    if (outer.placements.length === laid.placements.length) break
    const lines = edgeLines(input, outer, halves)
    if (fits(lines)) return lines.map(({ line }) => line)
  }
  return edgeLines(input, laid, halves).map(({ line }) => line)
}

/** What the rounds of an edging are worked along, the way they are worked. */
export const borderEdge = (
  input: EdgeInput,
  laid: Laid,
  { length, outward, tips }: EdgeLine,
  accounts: readonly MotifAccount[],
  hand: Hand,
): BorderEdge => {
  const edge = {
    lines: edgingLines(input, laid, length),
    isRound: input.counts.inTheRound,
    outward,
    ends: input.counts.inTheRound ? openCorners(laid) : [],
    across: accounts.reduce((sum, { overTips }) => sum + overTips, 0) / Math.max(1, accounts.length),
    bridges: input.style === 'bridge' && tips > 0,
  }
  const straight = edge.bridges && input.halves ? straightOf(input, laid, edge.lines) : null
  return edgeAsWorked(straight ? { ...edge, straight } : edge, hand)
}

/** Which gaps of each line lie along the straight side of a half motif. */
function straightOf(
  input: EdgeInput,
  laid: Laid,
  lines: readonly Outline[],
): readonly (readonly boolean[])[] {
  const at = ({ x, y }: Point): string => `${x} ${y}`
  const sides = straightSides(input.lattice, halfPlaces(laid, input.counts))
  const others = new Map<string, Set<string>>()
  for (const [from, to] of sides)
    for (const [a, b] of [
      [at(from), at(to)],
      [at(to), at(from)],
    ] as const)
      others.set(a, (others.get(a) ?? new Set()).add(b))
  return lines.map((line) =>
    line.map((point, i) => others.get(at(point))?.has(at(line[(i + 1) % line.length]!)) ?? false),
  )
}

/** The closed lines themselves, in mm from the top left of the finished size. */
export function finishEdge(
  asked: EdgeInput,
  laid: Laid,
  { length }: EdgeLine,
  edging: EdgingRoom,
  blockWidth: number,
  blockHeight: number,
): Point[][] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return edgingLines(asked, laid, length).map((line) =>
    line.map((point) => ({ x: x(point.x), y: y(point.y) })),
  )
}

/** The contour of a large blanket, from that of a small one of its kind; null where it does not repeat. */
function repeatedRing(input: EdgeInput): Outline | null {
  const { arrangement, columns, rows } = input.counts
  const step = repeatOf(input.lattice)
  const more = {
    columns: Math.floor((columns - REPEATING.columns - step.columns + 1) / step.columns),
    rows: Math.floor((rows - REPEATING.rows - step.rows + 2) / step.rows),
  }
  if (arrangement === 'rings' || more.columns <= 0 || more.rows <= 0) return null
  const counts = {
    ...input.counts,
    columns: columns - step.columns * more.columns,
    rows: rows - step.rows * more.rows,
  }
  const small = layBlanket(input.lattice, counts)
  const rings = ringsRound(input, small, input.halves ? halfPlaces(small, counts) : [])
  return rings.length === 1 ? repeatEdge(rings[0]!, small, more.columns, more.rows, step) : null
}

/** The lines along both ends of a full round: one repeat of columns in a small flat blanket, over and over. */
function evenEnds(input: EdgeInput, laid: Laid): Outline[] {
  const { columns: repeat, rows: down } = repeatOf(input.lattice)
  const { rows } = input.counts
  const smallRows = rows <= SMALL.rows + down ? rows : SMALL.rows + ((rows - SMALL.rows) % down)
  const counts = { ...input.counts, columns: 3 * repeat + 2, rows: smallRows, inTheRound: false }
  const small = layBlanket(input.lattice, counts)
  const [line, ...others] = edgeLines({ ...input, halves: false }, small, [])
  if (!line || others.length > 0) return []
  const first = laid.placements[0]!
  const [last, smallLast] = [laid, small].map(({ placements }) => placements[placements.length - 1]!)
  const width = repeat * input.lattice.column
  const times = laid.round / width
  return endsOf(input.style, line.line, small, { x: width, times, columns: repeat }).map((end, i) =>
    moveOutline(end, first.x - small.placements[0]!.x, i === 0 ? 0 : last!.y - smallLast!.y),
  )
}

/** The first and last rows, and the ends of all others. */
function borderOf(laid: Laid, border: number): Laid {
  const rows = new Map<number, Placement[]>()
  for (const motif of laid.placements) rows.set(motif.row, [...(rows.get(motif.row) ?? []), motif])
  const last = Math.max(...rows.keys())
  const placements = [...rows].flatMap(([row, motifs]) =>
    row <= border || row > last - border || motifs.length <= 2 * border
      ? motifs
      : [...motifs.slice(0, border), ...motifs.slice(-border)],
  )
  return { ...laid, placements }
}
