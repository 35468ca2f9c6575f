/**
 * M28: half motifs at the ends of offset rows that are short by half a motif. They are cut along the vertical
 * through their centre (point to point, for a hexagon with a corner at 12 o'clock) and worked in turned rows.
 */
import type { Finding } from '../../shared-types/finding'
import type { Anchor, MotifAccount, PlacedHalf, Plan, Point } from '../../shared-types/plan'
import type { BlanketLayout, JoinRule } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { roughValue } from '../findings/quantities'
import { halfOutline } from '../geometry/half'
import { turnPoint } from '../geometry/points'
import { NO_SIDES, seamsBetween, seamWork, stitchesAlong, wholeSides } from '../joins/sides'
import type { Sides } from '../joins/sides'
import { findNodes } from '../joins/nodes'
import type { Joinable, Node } from '../joins/nodes'
import { countOf } from '../motif/numbering'
import { formatNumber } from '../units/format'
import { radians } from '../units/quantity'
import type { Degrees, Millimetres } from '../units/quantity'
import type { BlanketCounts, Laid, Placement } from './blanket'
import { halfId } from './addresses'
import { inFrame } from './frame'
import type { EdgingRoom } from './frame'
import { kindAt } from './pattern'
import { rowSpans } from './places'
import type { Joined } from './stages'

/** Colourways by address, of what is painted by hand and known. */
export type Painted = Readonly<Record<string, string>>

export interface HalfPlace extends Point {
  readonly row: number
  readonly halves: number
  readonly side: 'left' | 'right'
  readonly turn: Degrees
  readonly even: boolean
  /** The number of its motif. */
  readonly kind: number
  /** Index of the motif that ends the row. */
  readonly beside: number
}

/** Which part of a whole motif a half is: the one away from the edge. */
export const keptSide = (side: HalfPlace['side']): 'left' | 'right' => (side === 'left' ? 'right' : 'left')

/** Places of half motifs, row by row; none unless rows are shifted against each other. */
export function halfPlaces(laid: Laid, counts: BlanketCounts): HalfPlace[] {
  // In the round rows have no ends.
  if (counts.arrangement !== 'offset-rows' || counts.inTheRound) return []
  const { placements, lattice, width } = laid
  const spans = rowSpans(counts)
  const first = Math.min(...spans.map(({ start }) => start))
  const last = Math.max(...spans.map(({ start, count }) => start + 2 * (count - 1)))
  const kind = (row: number, halves: number) => kindAt(lattice.pattern, row, halves)
  return rowEnds(placements).flatMap(([start, end]): HalfPlace[] => {
    const from = placements[start]!
    const to = placements[end]!
    const found: HalfPlace[] = []
    const { row, turn, even } = from
    // A gap between motifs would push the cut edge out: it stands flush with the side instead. Beside a motif that
    // is left out there is nothing to join a half to.
    if (from.column === 1 && from.halves - 1 === first) {
      const x = Math.max(0, from.x - lattice.column)
      found.push({
        x,
        y: from.y,
        row,
        turn,
        even,
        halves: from.halves - 2,
        side: 'left',
        beside: start,
        kind: kind(row, from.halves - 2),
      })
    }
    if (to.halves + 1 === last) {
      const x = Math.min(width, to.x + lattice.column)
      found.push({
        x,
        y: to.y,
        row,
        turn,
        even,
        halves: to.halves + 2,
        side: 'right',
        beside: end,
        kind: kind(row, to.halves + 2),
      })
    }
    return found
  })
}

/** First and last index of each row. */
function rowEnds(placements: readonly Placement[]): [number, number][] {
  const ends: [number, number][] = []
  placements.forEach(({ row }, i) => {
    if (i > 0 && placements[i - 1]!.row === row) ends[ends.length - 1]![1] = i
    else ends.push([i, i])
  })
  return ends
}

/** How far beyond the cut a place may lie and still be on the half, in mm. */
const ON_CUT: Millimetres = 0.01

/** Half motifs as what can be joined, with the places that the cut leaves them. */
export function joinableHalves(
  places: readonly HalfPlace[],
  anchors: readonly (readonly Anchor[])[],
): Joinable[] {
  const kept = new Map<string, readonly Anchor[]>()
  return places.map(({ x, y, turn, side, kind }) => {
    const key = `${turn} ${side} ${kind}`
    let own = kept.get(key)
    if (!own) {
      const sign = keptSide(side) === 'right' ? 1 : -1
      own = anchors[kind]!.filter((anchor) => sign * turnPoint(anchor, radians(turn)).x >= -ON_CUT)
      kept.set(key, own)
    }
    return { x, y, turn, kind, anchors: own }
  })
}

export interface Halved {
  readonly places: readonly HalfPlace[]
  /** How many places of each half are joined. */
  readonly joins: readonly number[]
  /** Slip stitches into neighbours, of all halves together. */
  readonly operations: number
  /** Where halves are joined, to motifs and to each other. Members by index: all motifs, then the halves. */
  readonly nodes: readonly Node[]
  /** The places that the cut leaves each of them. */
  readonly anchors: readonly (readonly Anchor[])[]
  /** The petal (corner, place) that the hand works first on each: the one next to its cut. */
  readonly firsts: readonly number[]
  readonly seams: { readonly length: Millimetres; readonly count: number }
  /** Of these, those along whole sides. */
  readonly sides: Sides
  readonly findings: readonly Finding[]
}

const NONE: Halved = {
  places: [],
  joins: [],
  operations: 0,
  nodes: [],
  anchors: [],
  firsts: [],
  seams: { length: 0, count: 0 },
  sides: NO_SIDES,
  findings: [],
}

/** The half motifs of a blanket and their joins, where the project asks for them. */
export function halve(
  asked: boolean,
  accounts: readonly MotifAccount[],
  { anchors, reach, ways, stitch, sideOf }: Pick<Joined, 'anchors' | 'reach' | 'ways' | 'stitch' | 'sideOf'>,
  rule: JoinRule,
  laid: Laid,
  counts: BlanketCounts,
): Halved {
  if (!asked) return NONE
  const places = halfPlaces(laid, counts)
  if (places.length === 0) {
    // Rows that are shifted already end as they do by the outline that they are cut to, or go round.
    const isShifted = counts.arrangement === 'offset-rows' && counts.rows > 1
    const code = isShifted ? 'layout/halves-no-end' : 'layout/halves-nothing'
    return { ...NONE, findings: [finding(code, 'layout.halves')] }
  }
  const findings: Finding[] = []
  for (const account of accounts.filter((_, kind) => places.some((place) => place.kind === kind))) {
    if (account.petals % 2 === 0 || account.shape === 'leaf') continue
    const less = (account.petals - 1) / 2
    const values = {
      petals: formatNumber(account.petals),
      places: account.shape === 'straight' ? 'corners' : 'petals',
      less: formatNumber(less),
      more: formatNumber(less + 1),
    }
    findings.push(finding('layout/halves-odd', 'layout.halves', values, { motif: account.id }))
  }
  findings.push(...undesigned(places, accounts, stitch))
  // Halves meet what stands within two columns of the sides; wholes keep their own meeting points.
  const near = laid.placements.flatMap(({ x }, i) =>
    x < 2.5 * laid.lattice.column || x > laid.width - 2.5 * laid.lattice.column ? [i] : [],
  )
  const wholes = near.map((i): Joinable => {
    const { x, y, turn, kind } = laid.placements[i]!
    return { x, y, turn, kind, anchors: anchors[kind]! }
  })
  const cut = joinableHalves(places, anchors)
  const joinable = [...wholes, ...cut]
  const found = findNodes(joinable, reach, ways)
  const pieceOf = (member: number): number => near[member] ?? laid.placements.length + member - near.length
  const nodes: Node[] = []
  const joins = places.map(() => 0)
  let operations = 0
  for (const { members, x, y, spread } of found) {
    const halves = members.filter(({ motif }) => motif >= wholes.length)
    if (halves.length === 0) continue
    nodes.push({
      ...{ x, y, spread },
      members: members.map(({ motif, anchor }) => ({ motif: pieceOf(motif), anchor })),
    })
    const others = members.length - halves.length
    operations += others > 0 ? halves.length : halves.length - 1
    for (const { motif } of halves) joins[motif - wholes.length]!++
  }
  const isWhole = (motif: number): boolean => motif < laid.placements.length
  const ground = {
    placements: laid.placements,
    round: laid.round,
    sideOf: (motif: number) =>
      isWhole(motif) ? sideOf(motif) : accounts[places[motif - laid.placements.length]?.kind ?? 0]?.side,
  }
  const length = seamsBetween(nodes, ground)
    .filter(({ motifs }) => !motifs.every(isWhole))
    .reduce((sum, seam) => sum + seamWork(seam, stitch, ground).worked, 0)
  const sewn = rule === 'seam' && length > 0
  // Each half is sewn in with a piece of yarn of its own.
  const seams = sewn ? { length, count: places.length } : NONE.seams
  return {
    ...{ places, joins, operations, nodes, seams, findings },
    sides: sewn ? wholeSides(nodes, stitch, ground, isWhole) : NO_SIDES,
    anchors: cut.map((half) => half.anchors),
    firsts: cut.map((half) => firstAtCut(half.anchors, countOf(anchors[half.kind ?? 0]!))),
  }
}

/** How long the straight edge of a half is that is turned so, and how far the half reaches from there. */
export function halfMeasures(
  { outline }: Pick<MotifAccount, 'outline'>,
  turn: Degrees,
): { readonly edge: Millimetres; readonly deep: Millimetres } {
  const half = halfOutline(
    outline.map((point) => turnPoint(point, radians(turn))),
    'right',
  )
  const cut = half.filter(({ x }) => x < ON_CUT).map(({ y }) => y)
  return { edge: Math.max(...cut) - Math.min(...cut), deep: Math.max(...half.map(({ x }) => x)) }
}

/** What a half of each motif has to be, where no words say how it is worked. */
function undesigned(
  places: readonly HalfPlace[],
  accounts: readonly MotifAccount[],
  stitch: Millimetres,
): Finding[] {
  return accounts.flatMap((account, kind) => {
    const place = places.find((each) => each.kind === kind)
    if (!place) return []
    const { edge: length } = halfMeasures(account, place.turn)
    if (!(length > 0)) return []
    const values = {
      motif: account.name || account.id,
      length: roughValue(length),
      stitches: stitchesAlong(length, stitch),
    }
    const last = account.rounds.at(-1)
    const where = ['layout.halves', { motif: account.id }] as const
    if (!last?.stitches) return [finding('layout/half-design', where[0], values, where[1])]
    const told = { ...values, rows: account.rounds.length, made: last.stitches }
    return [finding('layout/half-rows', where[0], told, where[1])]
  })
}

const UNDESIGNED: ReadonlySet<string> = new Set(['layout/half-design', 'layout/half-rows'])
export const isUndesigned = ({ code }: Pick<Finding, 'code'>): boolean => UNDESIGNED.has(code)

/** What a plan says of the halves of a motif that nobody designed. */
export const halfNotes = ({ findings }: Pick<Plan, 'findings'>, motif: string): string[] =>
  findings.filter((each) => isUndesigned(each) && each.target?.motif === motif).map(({ message }) => message)

/** The petal that has none before it in working direction: the cut took it away. */
function firstAtCut(anchors: readonly Anchor[], count: number): number {
  const kept = new Set(anchors.map(({ petal }) => petal))
  return [...kept].find((petal) => !kept.has(petal === 1 ? count : petal - 1)) ?? 1
}

/**
 * Colourways of the halves: what they are painted with, else that of the motif beside each in its row; where no
 * two alike may touch, the first of the fill's that none of its neighbours has.
 */
export function halfColourways(
  places: readonly HalfPlace[],
  placements: readonly Placement[],
  colourways: readonly string[],
  fill: NonNullable<BlanketLayout['cells']>['fill'],
  painted: Painted,
): string[] {
  if (places.length === 0) return []
  const at = new Map(placements.map((p, i) => [`${p.row} ${p.halves}`, colourways[i] ?? '']))
  const choices = fill?.pattern === 'no-two-alike' ? (fill.colourways ?? []) : []
  return places.map(({ row, halves, side, beside }) => {
    const byHand = painted[halfId(row, side)]
    if (byHand !== undefined) return byHand
    const inward = side === 'left' ? 1 : -1
    const round = [at.get(`${row} ${halves + 2 * inward}`)]
    for (const down of [-1, 1]) round.push(at.get(`${row + down} ${halves + inward}`))
    return choices.find((id) => !round.includes(id)) ?? colourways[beside] ?? ''
  })
}

/** Join points of one half where no two motifs meet: theirs are join points already, and two halves have one between them. */
const pointsOf = ({ nodes }: Halved, half: number, motifs: number): readonly Point[] =>
  nodes.filter(
    ({ members }) =>
      members.find(({ motif }) => motif >= motifs)?.motif === motifs + half &&
      members.filter(({ motif }) => motif < motifs).length < 2,
  )

/** The half motifs in plan coordinates. */
export function finishHalves(
  halved: Halved,
  motifs: number,
  labels: readonly number[],
  colourways: readonly string[],
  ids: readonly string[],
  edging: EdgingRoom,
  blockWidth: number,
  blockHeight: number,
): PlacedHalf[] {
  const { x, y } = inFrame({ edging, blockWidth, blockHeight })
  return halved.places.map((place, i) => ({
    id: halfId(place.row, place.side),
    firstPetal: halved.firsts[i]!,
    label: String(labels[i]),
    x: x(place.x),
    y: y(place.y),
    turn: place.turn,
    side: place.side,
    row: place.row,
    ...(ids.length > 1 ? { motif: ids[place.kind]! } : {}),
    joins: halved.joins[i]!,
    points: pointsOf(halved, i, motifs).map((node) => ({ x: x(node.x), y: y(node.y) })),
    colourway: colourways[i]!,
  }))
}
