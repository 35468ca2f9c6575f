/**
 * M33, second half: for each motif what is worked free and what is joined where, in words that a hand can
 * follow. On the motif in hand petals are counted from its own start, chosen so that the longest run of free
 * petals comes first; on a joined one the place is named by what can be seen there.
 */
import type { Anchor, JoinMember, OrderJoin, OrderStep } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import type { Placement } from '../layout/blanket'
import type { Node, NodeMember } from './nodes'
import { joinPhrase, listOf, seamWords, spacePhrase, stationName, stepWords } from './words'
import type { SeamVerb, Station, ToldPlace } from './words'

export interface StepsInput {
  readonly placements: readonly Placement[]
  /** The anchors that may be joined, by placement; in any order. */
  readonly anchors: readonly (readonly Anchor[])[]
  readonly nodes: readonly Node[]
  readonly sequence: readonly number[]
  readonly hand: Hand
  /** How the motif's places are counted: as petals, corners or by the clock. */
  readonly naming: Naming
  /** How finished motifs are put together, or null where they are joined in their last round. */
  readonly seam: SeamVerb | null
}

export type Naming = 'petals' | 'corners' | 'clock' | 'address'

/** A join of a motif that is already there: which of its places, and with whom. */
interface Made {
  readonly group: number
  readonly label: number
}

interface Meeting {
  readonly anchor: Anchor
  readonly node: Node
}

/** One step for each motif, in working order. */
export function workSteps(input: StepsInput): OrderStep[] {
  const { placements, anchors, nodes, sequence } = input
  const label = new Int32Array(placements.length)
  sequence.forEach((motif, i) => (label[motif] = i + 1))
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
  const { placements, anchors, naming } = input
  const own = label[motif]!
  const joined = new Map<Anchor, { readonly earlier: readonly NodeMember[] }>()
  for (const { anchor, node } of meetings[motif]!) {
    const earlier = node.members.filter((member) => label[member.motif]! < own)
    if (earlier.length > 1) earlier.sort((a, b) => label[a.motif]! - label[b.motif]!)
    if (earlier.length > 0) joined.set(anchor, { earlier })
  }
  const stations = inOrder(anchors[motif]!, joined, naming)
  const joins: OrderJoin[] = []
  const free: string[] = []
  const told: ToldPlace[] = []
  for (const station of stations) {
    const meeting = joined.get(station.anchor)
    if (!meeting) {
      free.push(station.anchor.id)
      told.push({ station, phrase: null, partner: 0, partners: [] })
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
            naming,
            host: hostLabel,
            anchor: hostAnchor,
            turn: placements[host.motif]!.turn,
            ...nearestJoin(anchors[host.motif]!, hostAnchor, made[host.motif]!, input.hand),
            own,
          })
    const members: JoinMember[] = meeting.earlier.map((member) => ({
      motif: placements[member.motif]!.id,
      anchor: anchors[member.motif]![member.anchor]!.id,
    }))
    const turn = placements[motif]!.turn
    const partners = meeting.earlier.map((member) => label[member.motif]!)
    const words = input.seam
      ? `${input.seam} ${stationName(station, naming, turn)} to ${listOf(partners)}`
      : `${stationName(station, naming, turn)} ${phrase}`
    joins.push({ anchor: station.anchor.id, with: members, words })
    told.push({ station, phrase, partner: hostLabel, partners })
    made[motif]!.push({ group: station.anchor.petal, label: hostLabel })
    for (const member of meeting.earlier)
      made[member.motif]!.push({ group: anchors[member.motif]![member.anchor]!.petal, label: own })
  }
  return {
    motif: placements[motif]!.id,
    free,
    joins,
    words: input.seam
      ? seamWords(told, naming, placements[motif]!.turn, input.seam)
      : stepWords(told, naming, placements[motif]!.turn),
  }
}

/** The places of the motif in hand in working direction, counted from its own start. */
function inOrder(
  anchors: readonly Anchor[],
  joined: ReadonlyMap<Anchor, unknown>,
  naming: Naming,
): Station[] {
  const groups = Math.max(1, ...anchors.map((anchor) => anchor.petal))
  const taken = new Set<number>()
  for (const anchor of joined.keys()) taken.add(anchor.petal)
  const start = naming === 'petals' || naming === 'corners' ? longestFreeRun(groups, taken) : 1
  const number = (anchor: Anchor) => ((anchor.petal - start + groups) % groups) + 1
  // Anchors come with the motif in working order within each petal; a stable sort keeps that.
  return anchors
    .map((anchor) => ({ anchor, number: number(anchor) }))
    .sort((a, b) => a.number - b.number || rank(a.anchor) - rank(b.anchor))
}

/** Order of the places within one petal: before its tip, the tip, after it; a corner before its side. */
function rank(anchor: Anchor): number {
  if (anchor.kind === 'shoulder') return anchor.id.endsWith('-1') ? 0 : 2
  return anchor.kind === 'tip' || anchor.kind === 'corner' ? 1 : 3
}

/** First petal of the longest run that is not joined now; 1 when all or none are. */
function longestFreeRun(groups: number, taken: ReadonlySet<number>): number {
  let best = 1
  let longest = 0
  for (let start = 1; start <= groups; start++) {
    const before = start === 1 ? groups : start - 1
    if (taken.has(start) || !taken.has(before)) continue
    let run = 0
    while (run < groups && !taken.has(((start - 1 + run) % groups) + 1)) run++
    if (run > longest) {
      longest = run
      best = start
    }
  }
  return best
}

/** The join on the host nearest to a place, and how many places away it lies; left is counter-clockwise. */
function nearestJoin(anchors: readonly Anchor[], target: Anchor, made: readonly Made[], hand: Hand) {
  const groups = Math.max(1, ...anchors.map((anchor) => anchor.petal))
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
