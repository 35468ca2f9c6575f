/** The stages of a blanket's plan, each a pure function of the fields that it reads: what does not change is not run again. */
import type { Finding } from '../../shared-types/finding'
import type {
  Anchor,
  HoleKind,
  Holds,
  MotifAccount,
  OrderStep,
  PlacedFiller,
  PlanSize,
} from '../../shared-types/plan'
import type { BlanketLayout, Hand, Joining, Order } from '../../shared-types/project'
import { scaleOutline } from '../geometry/points'
import { checkNodes } from '../joins/checks'
import { POINT_SEAM } from '../joins/constants'
import { holdingFindings, holdingOf } from '../joins/holding'
import { findNodes } from '../joins/nodes'
import type { Node } from '../joins/nodes'
import { joinableAnchors, joinReach, stretchLimit } from '../joins/rule'
import type { Rule } from '../joins/rule'
import { sequenceWithAdditions, workSequence } from '../joins/sequence'
import { firstPetals, workSteps } from '../joins/steps'
import { usualEdgingStyle } from '../materials/edging'
import { contactAnchors } from '../motif/contacts'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import { blanketSize, layBlanket } from './blanket'
import type { BlanketCounts, Laid } from './blanket'
import { halfId } from './addresses'
import { fillerWorks, firstOfFiller } from './filler-works'
import type { Filling } from './fillers'
import type { Halved } from './halves'
import { SENSITIVITY_STEP } from './constants'
import type { EdgeInput } from './edge'
import { holeKinds, openingsOf } from './holes'
import type { Opening } from './holes'
import { latticeOf } from './lattice'
import type { Lattice } from './lattice'

/** Lattice of one motif under a rule. */
export const lattice = (
  account: MotifAccount,
  offset: boolean,
  turn: number,
  alternateTurn: number,
  rule: Rule,
) => latticeOf(account.outline, offset, turn, alternateTurn, rule.gap)

export interface Arranged extends Laid {
  /** Change of the size when every motif grows by SENSITIVITY_STEP mm tip to tip. */
  readonly sensitivity: PlanSize['sensitivity']
}

/** Places every motif and says how sensitive the size is (M26). */
export function arrange(account: MotifAccount, grid: Lattice, counts: BlanketCounts, rule: Rule): Arranged {
  const laid = layBlanket(grid, counts)
  const grown = scaleOutline(account.outline, 1 + SENSITIVITY_STEP / account.overTips)
  const larger = blanketSize(
    latticeOf(grown, counts.arrangement !== 'straight-rows', counts.turn, counts.alternateTurn, rule.gap),
    counts,
  )
  return {
    ...laid,
    sensitivity: {
      step: SENSITIVITY_STEP,
      width: larger.width - laid.width,
      height: larger.height - laid.height,
    },
  }
}

export interface Joined {
  readonly nodes: readonly Node[]
  readonly anchors: readonly Anchor[]
  readonly reach: Millimetres
  /** Gap at a join from which it is over-stretched. */
  readonly stretchLimit: Millimetres
  /** The widest gap between members of a node. */
  readonly spread: Millimetres
  /** Slip stitches into a neighbour. */
  readonly operations: number
  readonly seams: { readonly length: Millimetres; readonly count: number }
  readonly findings: readonly Finding[]
}

/** The account of the motif as the layout uses it: a round one has its places where neighbours touch. */
export const placedAccount = (account: MotifAccount, grid: Lattice, hand: Hand): MotifAccount =>
  account.shape === 'round' ? { ...account, anchors: contactAnchors(account, grid, hand) } : account

/** Join points, seams and what is to be said about them; of a placed account. */
export function join(
  account: MotifAccount,
  gauge: ResolvedGauge,
  rule: Rule,
  joining: Joining | undefined,
  laid: Laid,
  counts: BlanketCounts,
): Joined {
  const anchors = joinableAnchors(account.anchors, rule.rule, account.shape === 'round')
  const { reach, findings: reachFindings } = joinReach(joining, rule, account, gauge)
  const motifs = laid.placements.map(({ x, y, turn }) => ({ x, y, turn, anchors }))
  const nodes = findNodes(motifs, reach)
  const spread = nodes.reduce((most, node) => Math.max(most, node.spread), 0)
  const limit = stretchLimit(rule, account, gauge)
  const checked =
    rule.rule === 'apart'
      ? []
      : checkNodes({
          ids: laid.placements.map((p) => p.id),
          nodes,
          petals: account.petals,
          stretchLimit: limit,
        })
  return {
    nodes,
    anchors,
    reach,
    stretchLimit: limit,
    spread,
    operations: nodes.reduce((sum, node) => sum + node.members.length - 1, 0),
    seams: rule.rule === 'seam' ? seamsOf(nodes, laid, counts) : { length: 0, count: 0 },
    findings: [...reachFindings, ...checked],
  }
}

/** The openings between joined motifs, and their kinds: what no size, yarn or time follows from unless it is filled. */
export function open(
  laid: Laid,
  { spread, reach }: Pick<Joined, 'spread' | 'reach'>,
  counts: BlanketCounts,
): { readonly openings: readonly Opening[]; readonly holes: readonly HoleKind[] } {
  const openings = openingsOf(laid.lattice, counts, laid.placements, Math.min(spread, reach))
  return { openings, holes: holeKinds(openings) }
}

/** How motifs and half motifs hang together, by their join points and by the fillers between them. */
export function hold(
  laid: Laid,
  joined: Pick<Joined, 'nodes'>,
  fillers: readonly PlacedFiller[],
  halved: Pick<Halved, 'places' | 'nodes'>,
): Holds & { readonly findings: readonly Finding[] } {
  const wholes = laid.placements.length
  const ids = [
    ...laid.placements.map(({ id }) => id),
    ...halved.places.map(({ row, side }) => halfId(row, side)),
  ]
  const index = new Map(fillers.length > 0 ? ids.map((id, i) => [id, i]) : [])
  const between = fillers.map(({ motifs }) => ({ members: motifs.map((id) => ({ motif: index.get(id)! })) }))
  // Where a half comes to two motifs that meet, these have counted their join point already.
  const cut = halved.nodes.map(({ members }) => {
    const own = members.filter(({ motif }) => motif >= wholes)
    return members.length - own.length > 1 ? { members: own, of: members[0]!.motif } : { members }
  })
  const holding = holdingOf(ids.length, joined.nodes, between, cut)
  return {
    pieces: holding.pieces,
    single: holding.single.length,
    findings: holdingFindings(ids, holding),
  }
}

/** A seam between two motifs, by index. */
export interface Seam {
  readonly motifs: readonly [number, number]
  readonly length: Millimetres
}

/** Seams run between the outermost places that two neighbours share. */
export function seamsBetween(nodes: readonly Node[]): Seam[] {
  const shared = new Map<string, { motifs: [number, number]; meeting: Node[] }>()
  for (const node of nodes)
    node.members.forEach(({ motif }, i) =>
      node.members.slice(i + 1).forEach((other) => {
        const key = `${motif} ${other.motif}`
        const known = shared.get(key)
        if (known) known.meeting.push(node)
        else shared.set(key, { motifs: [motif, other.motif], meeting: [node] })
      }),
    )
  return [...shared.values()].map(({ motifs, meeting }) => {
    let length = POINT_SEAM
    for (const a of meeting)
      for (const b of meeting) length = Math.max(length, Math.hypot(a.x - b.x, a.y - b.y))
    return { motifs, length }
  })
}

/** All seams together; sewn in long lines, each with its own yarn. */
function seamsOf(nodes: readonly Node[], laid: Laid, counts: BlanketCounts): Joined['seams'] {
  const length = seamsBetween(nodes).reduce((sum, seam) => sum + seam.length, 0)
  const rows = laid.placements[laid.placements.length - 1]?.row ?? 1
  // Straight rows are sewn in lines across and down; offset ones across, and each short seam down by itself.
  const across = rows - 1
  const down = counts.arrangement === 'straight-rows' ? counts.columns - 1 : laid.placements.length - rows
  return { length, count: length > 0 ? across + down : 0 }
}

/** What the line along which an edging runs is told from. */
export function edgeInput(
  account: MotifAccount,
  grid: Lattice,
  counts: BlanketCounts,
  style: NonNullable<BlanketLayout['edging']>['style'],
  reach: Millimetres,
  halves: boolean,
): EdgeInput {
  const tips = account.anchors.filter((anchor) =>
    account.shape === 'round' ? true : anchor.kind === 'tip' || anchor.kind === 'corner',
  )
  return { lattice: grid, counts, style: style ?? usualEdgingStyle(account.shape), tips, reach, halves }
}

export interface Worked {
  /** Index of the placement by working order. */
  readonly sequence: readonly number[]
  /** Working number by placement. */
  readonly labels: readonly number[]
  /** Petal that is worked first, by placement. */
  readonly firsts: readonly number[]
  /** Working numbers of half motifs and fillers: after those of the motifs, in the order in which they are made. */
  readonly additions: {
    readonly halves: readonly number[]
    readonly fillers: readonly number[]
    /** The petal (side) that is joined first, by filler. */
    readonly firsts: readonly number[]
  }
  /** Every piece by working order: placements, then half motifs, then fillers. */
  readonly all: readonly number[]
  readonly findings: readonly Finding[]
}

/** Working order, and the number of each piece in it. */
export function work(
  laid: Laid,
  joined: Joined,
  order: Order,
  hand: Hand,
  colourways: readonly string[],
  colourwayOrder: string,
  offset: boolean,
  halved: Halved,
  filling: Filling,
  filler: MotifAccount | null,
): Worked {
  const { placements } = laid
  const { sequence, findings } = workSequence({
    placements,
    order,
    hand,
    colourways,
    colourwayOrder: colourwayOrder.split(' '),
    offset,
  })
  const labels: number[] = []
  sequence.forEach((motif, i) => (labels[motif] = i + 1))
  const anchors = placements.map(() => joined.anchors)
  const firsts = firstPetals({ placements, anchors, nodes: joined.nodes, sequence })
  const wholes = placements.length
  // A half that nothing is joined to comes after the motif beside it.
  const waitsFor = halved.places.map(({ beside }, i) => [
    beside,
    ...halved.nodes
      .filter(({ members }) => members.some(({ motif }) => motif === wholes + i))
      .flatMap(({ members }) => members.map(({ motif }) => motif).filter((motif) => motif < wholes)),
  ])
  const round = filler ? filling.filled.map(({ opening }) => opening.motifs) : []
  const all = sequenceWithAdditions(sequence, placements, waitsFor, round)
  let next = wholes
  for (const piece of all) if (piece >= wholes) labels[piece] = ++next
  const additions = {
    halves: labels.slice(wholes, wholes + halved.places.length),
    fillers: labels.slice(wholes + halved.places.length),
    firsts: filling.filled.map((filled) => firstOfFiller(filled, labels, hand)),
  }
  return { sequence, labels: labels.slice(0, wholes), firsts, additions, all, findings }
}

/** Each step of the working order, in words: long to tell of a large blanket, and nothing is counted from it. */
export function tellWork(
  account: MotifAccount,
  laid: Laid,
  joined: Joined,
  rule: Rule,
  hand: Hand,
  worked: Worked,
  halved: Halved,
  filling: Filling,
  filler: MotifAccount | null,
): OrderStep[] {
  const { placements } = laid
  const { labels, additions } = worked
  return workSteps({
    placements: [
      ...placements,
      ...halved.places.map(({ row, side, turn }) => ({ id: halfId(row, side), turn })),
    ],
    anchors: [...placements.map(() => joined.anchors), ...halved.anchors],
    nodes: joined.nodes,
    sequence: worked.all,
    wholes: placements.length,
    halfNodes: halved.nodes,
    fillers: filler ? fillerWorks(filling, filler, account, placements, labels, hand) : [],
    labels: [...labels, ...additions.halves, ...additions.fillers],
    firsts: [...worked.firsts, ...halved.firsts],
    account,
    hand,
    seam: rule.rule === 'seam' ? rule.verb : null,
  })
}
