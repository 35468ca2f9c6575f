/** The stage of working order: the number of each piece, and how it is worked and joined, in words. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, OrderStep } from '../../shared-types/plan'
import type { Hand, Order } from '../../shared-types/project'
import type { Rule } from '../joins/rule'
import { sequenceWithAdditions, workSequence } from '../joins/sequence'
import { firstPetals, workSteps } from '../joins/steps'
import { countOf } from '../motif/numbering'
import { telling } from '../telling'
import type { Telling } from '../telling'
import { halfId } from './addresses'
import type { Laid } from './blanket'
import { fillerWorks, firstOfFiller } from './filler-works'
import type { Filling } from './fillers'
import type { Halved } from './halves'
import type { Joined } from './stages'

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
  seamed: boolean,
  halved: Halved,
  filling: Filling,
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
  const anchors = placements.map(({ kind }) => joined.anchors[kind]!)
  // Finished motifs are sewn: nobody works free petals first, and all are counted from the same corner.
  const firsts = seamed
    ? placements.map(() => 1)
    : firstPetals({ placements, anchors, nodes: joined.nodes, sequence })
  const wholes = placements.length
  // A half that nothing is joined to comes after the motif beside it.
  const waitsFor = halved.places.map(({ beside }, i) => [
    beside,
    ...halved.nodes
      .filter(({ members }) => members.some(({ motif }) => motif === wholes + i))
      .flatMap(({ members }) => members.map(({ motif }) => motif).filter((motif) => motif < wholes)),
  ])
  const round = filling.filled.map(({ motifs }) => motifs)
  const all = sequenceWithAdditions(sequence, placements, waitsFor, round)
  let next = wholes
  for (const piece of all) if (piece >= wholes) labels[piece] = ++next
  const additions = {
    halves: labels.slice(wholes, wholes + halved.places.length),
    fillers: labels.slice(wholes + halved.places.length),
    firsts: filling.filled.map((filled) => firstOfFiller(filled, hand)),
  }
  return { sequence, labels: labels.slice(0, wholes), firsts, additions, all, findings }
}

/** Each step of the working order, in words: long to tell of a large blanket, and nothing is counted from it. */
export const tellWork = (
  accounts: readonly MotifAccount[],
  { placements }: Laid,
  joined: Joined,
  rule: Rule,
  hand: Hand,
  { labels, firsts, additions, all }: Worked,
  halved: Halved,
  filling: Filling,
): Telling<OrderStep> =>
  telling(() => {
    const pieces = [...placements, ...halved.places]
    const petals = joined.anchors.map(countOf)
    return workSteps({
      placements: [
        ...placements,
        ...halved.places.map(({ row, side, turn }) => ({ id: halfId(row, side), turn })),
      ],
      anchors: [...placements.map(({ kind }) => joined.anchors[kind]!), ...halved.anchors],
      nodes: joined.nodes,
      chainsOf: joined.chainsOf,
      sequence: all,
      wholes: placements.length,
      halfNodes: halved.nodes,
      fillers: fillerWorks(filling, accounts, placements, hand),
      labels: [...labels, ...additions.halves, ...additions.fillers],
      firsts: [...firsts, ...halved.firsts],
      accounts: pieces.map(({ kind }) => accounts[kind]!),
      counts: pieces.map(({ kind }) => petals[kind]!),
      hand,
      seam: rule.rule === 'seam' ? rule.verb : null,
    })
  })
