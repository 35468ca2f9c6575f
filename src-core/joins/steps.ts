/**
 * M33, second half: for each motif what is worked free and what is joined where, in words that a hand can
 * follow. On the motif in hand petals are counted from the one that it is begun with (`firstPetals`); on a joined
 * one the place is named by what can be seen there.
 */
import type { Anchor, JoinMember, MotifAccount, OrderJoin, OrderStep } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import type { Placement } from '../layout/blanket'
import { countedFrom, countOf, placeName } from '../motif/numbering'
import type { Node, NodeMember } from './nodes'
import { joinPhrase, listOf, seamWords, spacePhrase, stepWords } from './words'
import type { SeamVerb, ToldPlace } from './words'

/** What is joined in which order. */
export interface Joining {
  readonly placements: readonly Placement[]
  /** The anchors that may be joined, by placement; in any order. */
  readonly anchors: readonly (readonly Anchor[])[]
  readonly nodes: readonly Node[]
  readonly sequence: readonly number[]
}

export interface StepsInput extends Joining {
  /** Which petal of its own each placement is begun with. */
  readonly firsts: readonly number[]
  readonly account: Pick<MotifAccount, 'petals' | 'shape'>
  readonly hand: Hand
  /** How finished motifs are put together, or null where they are joined in their last round. */
  readonly seam: SeamVerb | null
}

/** A join of a motif that is already there: which of its places, and with whom. */
interface Made {
  readonly group: number
  readonly label: number
}

interface Meeting {
  readonly anchor: Anchor
  readonly node: Node
}

/** Working number by placement. */
function labelsOf({ placements, sequence }: Joining): Int32Array {
  const label = new Int32Array(placements.length)
  sequence.forEach((motif, i) => (label[motif] = i + 1))
  return label
}

/**
 * The petal (corner, place) that the hand works first on each motif, by placement: the first of the longest run
 * that is not joined when the motif is worked, so that free petals come first and joined ones last.
 */
export function firstPetals(input: Joining): number[] {
  const { placements, anchors, nodes } = input
  const label = labelsOf(input)
  const taken = placements.map(() => new Set<number>())
  for (const { members } of nodes) {
    const host = members.reduce((first, { motif }) => Math.min(first, label[motif]!), Infinity)
    for (const { motif, anchor } of members)
      if (label[motif]! > host) taken[motif]!.add(anchors[motif]![anchor]!.petal)
  }
  return placements.map((_, motif) => firstOfLongestRun(countOf(anchors[motif]!), taken[motif]!))
}

/** One step for each motif, in working order. */
export function workSteps(input: StepsInput): OrderStep[] {
  const { placements, anchors, nodes, sequence } = input
  const label = labelsOf(input)
  const meetings: Meeting[][] = placements.map(() => [])
  for (const node of nodes)
    for (const member of node.members)
      meetings[member.motif]!.push({ anchor: anchors[member.motif]![member.anchor]!, node })
  const made: Made[][] = placements.map(() => [])
  return sequence.map((motif) => step(input, motif, label, meetings, made))
}

function step(
  input: StepsInput,
  motif: number,
  label: Int32Array,
  meetings: readonly Meeting[][],
  made: readonly Made[][],
): OrderStep {
  const { placements, anchors, account, firsts } = input
  const { shape } = account
  const own = label[motif]!
  const joined = new Map<Anchor, { readonly earlier: readonly NodeMember[] }>()
  for (const { anchor, node } of meetings[motif]!) {
    const earlier = node.members.filter((member) => label[member.motif]! < own)
    if (earlier.length > 1) earlier.sort((a, b) => label[a.motif]! - label[b.motif]!)
    if (earlier.length > 0) joined.set(anchor, { earlier })
  }
  const nameOn = (placement: number, anchor: Anchor): string =>
    placeName(account, anchor, { turn: placements[placement]!.turn, firstPetal: firsts[placement]! })
  const joins: OrderJoin[] = []
  const free: string[] = []
  const told: ToldPlace[] = []
  for (const { anchor, number } of inOrder(anchors[motif]!, firsts[motif]!)) {
    const name = shape === 'round' ? `at ${nameOn(motif, anchor)}` : nameOn(motif, anchor)
    const meeting = joined.get(anchor)
    if (!meeting) {
      free.push(anchor.id)
      told.push({ anchor, number, name, phrase: null, partner: 0, partners: [] })
      continue
    }
    const host = meeting.earlier[0]!
    const hostAnchor = anchors[host.motif]![host.anchor]!
    const others = meeting.earlier.slice(1).map((member) => label[member.motif]!)
    const hostLabel = label[host.motif]!
    const phrase =
      others.length > 0
        ? spacePhrase(hostLabel, others)
        : joinPhrase({
            shape,
            host: hostLabel,
            anchor: hostAnchor,
            name: nameOn(host.motif, hostAnchor),
            ...nearestJoin(anchors[host.motif]!, hostAnchor, made[host.motif]!, input.hand),
            own,
          })
    const members: JoinMember[] = meeting.earlier.map((member) => ({
      motif: placements[member.motif]!.id,
      anchor: anchors[member.motif]![member.anchor]!.id,
    }))
    const partners = meeting.earlier.map((member) => label[member.motif]!)
    const words = input.seam ? `${input.seam} ${name} to ${listOf(partners)}` : `${name}: ${phrase}`
    joins.push({ anchor: anchor.id, with: members, words })
    told.push({ anchor, number, name, phrase, partner: hostLabel, partners })
    made[motif]!.push({ group: anchor.petal, label: hostLabel })
    for (const member of meeting.earlier)
      made[member.motif]!.push({ group: anchors[member.motif]![member.anchor]!.petal, label: own })
  }
  const words = input.seam ? seamWords(told, shape, input.seam) : stepWords(told, shape)
  return { motif: placements[motif]!.id, free, joins, words }
}

/** The places of the motif in hand in working direction, counted from its own start. */
function inOrder(anchors: readonly Anchor[], first: number): { anchor: Anchor; number: number }[] {
  const count = countOf(anchors)
  // Anchors come with the motif in working order within each petal; a stable sort keeps that.
  return anchors
    .map((anchor) => ({ anchor, number: countedFrom(anchor.petal, first, count) }))
    .sort((a, b) => a.number - b.number || rank(a.anchor) - rank(b.anchor))
}

/** Order of the places within one petal: before its tip, the tip, after it; a corner before its side. */
function rank(anchor: Anchor): number {
  if (anchor.kind === 'shoulder') return anchor.id.endsWith('-1') ? 0 : 2
  return anchor.kind === 'tip' || anchor.kind === 'corner' ? 1 : 3
}

/** First petal of the longest run that is not joined now; 1 when all or none are. */
function firstOfLongestRun(count: number, taken: ReadonlySet<number>): number {
  let best = 1
  let longest = 0
  for (let start = 1; start <= count; start++) {
    const before = start === 1 ? count : start - 1
    if (taken.has(start) || !taken.has(before)) continue
    let run = 0
    while (run < count && !taken.has(((start - 1 + run) % count) + 1)) run++
    if (run > longest) {
      longest = run
      best = start
    }
  }
  return best
}

/** The join on the host nearest to a place, and how many places away it lies; left is counter-clockwise. */
function nearestJoin(anchors: readonly Anchor[], target: Anchor, made: readonly Made[], hand: Hand) {
  const groups = countOf(anchors)
  let steps = 0
  let reference = 0
  for (const { group, label } of made) {
    if (group === target.petal) continue
    const onward = (target.petal - group + groups) % groups
    const signed = onward <= groups / 2 ? onward : onward - groups
    if (
      steps === 0 ||
      Math.abs(signed) < Math.abs(steps) ||
      (Math.abs(signed) === Math.abs(steps) && label > reference)
    ) {
      steps = signed
      reference = label
    }
  }
  // Petals are counted counter-clockwise by right-handers, clockwise by left-handers.
  return { reference, leftward: hand === 'left' ? -steps : steps }
}
