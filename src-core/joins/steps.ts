/**
 * M33, second half: for each motif what is worked free and what is joined where, in words that a hand can
 * follow. On the motif in hand petals are counted from the one that it is begun with (`firstPetals`); on a joined
 * one the place is named by what can be seen there.
 */
import { counted } from '../figures/words'
import type { Anchor, JoinMember, MotifAccount, OrderJoin, OrderStep } from '../../shared-types/plan'
import type { Hand } from '../../shared-types/project'
import type { Placement } from '../layout/blanket'
import { countedFrom, countOf, placeName } from '../motif/numbering'
import { spaceAt, spaceWords } from '../motif/spaces'
import { radians } from '../units/quantity'
import type { Radians } from '../units/quantity'
import { MadeJoins } from './made'
import type { Node, NodeMember } from './nodes'
import {
  alongPhrase,
  clockPhrase,
  joinPhrase,
  seamPhrase,
  seamWords,
  isBetweenSpaces,
  spacePhrase,
  spacePlacePhrase,
  stepWords,
  wordsOf,
} from './words'
import type { SeamVerb, ToldPlace } from './words'

/** What is joined in which order. */
interface Joining {
  readonly placements: readonly Pick<Placement, 'id' | 'turn'>[]
  /** The anchors that may be joined, by placement; in any order. */
  readonly anchors: readonly (readonly Anchor[])[]
  readonly nodes: readonly Node[]
  readonly sequence: readonly number[]
}

/**
 * Everything that is worked, by index: the whole motifs, then the half motifs (both among the placements), then
 * the fillers.
 */
interface StepsInput extends Joining {
  /** How many of the placements are whole motifs. */
  readonly wholes: number
  /** Where half motifs are joined. */
  readonly halfNodes: readonly Node[]
  readonly fillers: readonly FillerWork[]
  /** Working number by piece. */
  readonly labels: readonly number[]
  /** Which petal of its own each placement is begun with. */
  readonly firsts: readonly number[]
  /** Of the motif (of half motifs: the whole one), by placement. */
  readonly accounts: readonly Pick<MotifAccount, 'anchors' | 'petals' | 'shape' | 'spaces'>[]
  /** How many petals (corners, places) a whole one has, by placement. */
  readonly counts: readonly number[]
  readonly hand: Hand
  /** Joining chains between two motifs that have a rule of their own, by index; null where none have. */
  readonly chainsOf: ((one: number, other: number) => number) | null
  /** How finished motifs are put together, or null where they are joined in their last round. */
  readonly seam: SeamVerb | null
}

/** A filler as the hand works it. */
export interface FillerWork {
  readonly id: string
  readonly shape: MotifAccount['shape']
  /** Its places in working direction. */
  readonly places: readonly FillerPlace[]
}

export interface FillerPlace {
  readonly anchor: Anchor
  readonly number: number
  /** "petal 4", "side 2", "at 9 o'clock". */
  readonly name: string
  /** The motif that it is joined to there; null where it stays free. */
  readonly meets: {
    readonly host: number
    /** Id of the nearest place of that motif. */
    readonly near: string
    /** The tip or corner of it that is met, or null between them: told by the clock. */
    readonly at: Anchor | null
    readonly clock: string
    /** The way that lies from the middle of that motif, on the map. */
    readonly towards: Radians
    /** A side that is joined all along, to a side of the motif. */
    readonly along?: true
  } | null
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

/** One step for each piece, in working order, each told when it is asked for. */
export function* workSteps(input: StepsInput): Generator<OrderStep, void, void> {
  const { placements, anchors, nodes, sequence, wholes } = input
  const pieces = placements.length + input.fillers.length
  const rank = new Int32Array(pieces)
  sequence.forEach((piece, i) => (rank[piece] = i))
  const meetings: Meeting[][] = placements.map(() => [])
  const meet = (node: Node, isHere: (piece: number) => boolean): void => {
    for (const { motif, anchor } of node.members)
      if (isHere(motif)) meetings[motif]!.push({ anchor: anchors[motif]![anchor]!, node })
  }
  for (const node of nodes) meet(node, () => true)
  // Motifs meet each other at their own join points; halves come to them.
  for (const node of input.halfNodes) meet(node, (piece) => piece >= wholes)
  const state: State = { input, rank, meetings, made: new MadeJoins(pieces, input.hand) }
  for (const piece of sequence)
    yield piece < placements.length ? step(state, piece) : fillerStep(state, piece - placements.length)
}

interface State {
  readonly input: StepsInput
  /** Place in the working order, by piece. */
  readonly rank: Int32Array
  readonly meetings: readonly (readonly Meeting[])[]
  readonly made: MadeJoins
}

/** What is said of one place of the piece in hand: how it is joined to a place of another one. */
function phraseTo(
  { input, made }: State,
  host: number,
  anchor: Anchor,
  own: number,
  isBetween = false,
): string {
  const { accounts, counts, firsts, labels, wholes } = input
  const label = labels[host]!
  const others = made.at(host, anchor)
  const counted = { count: counts[host]!, first: firsts[host]!, isHalf: host >= wholes }
  if (others.length > 0) {
    const sorted = [...new Set(others)].sort((a, b) => a - b)
    return spacePhrase(label, sorted, made.besides(host, anchor, counted))
  }
  const name = nameOn(input, host, anchor)
  // Where neither names a space the motif there is round like any other.
  if (accounts[host]!.spaces) return spacePlacePhrase(label, name, isBetween || isBetweenSpaces(name))
  return joinPhrase({
    shape: accounts[host]!.shape,
    host: label,
    anchor,
    name,
    ...made.nearest(host, anchor, counted),
    own,
  })
}

const nameOn = ({ accounts, placements, firsts }: StepsInput, piece: number, anchor: Anchor): string =>
  placeName(accounts[piece]!, anchor, { turn: placements[piece]!.turn, firstPetal: firsts[piece]! })

/** A whole step as a pattern, and in words. */
function toldAs(
  told: readonly ToldPlace[],
  shape: MotifAccount['shape'],
  seam: SeamVerb | null,
  isWhole = true,
): Pick<OrderStep, 'pattern' | 'words'> {
  const pattern = seam ? seamWords(told, shape, seam) : stepWords(told, shape, isWhole)
  return { pattern, words: wordsOf(pattern) }
}

/** A motif or a half motif. */
function step(state: State, piece: number): OrderStep {
  const { input, rank, meetings, made } = state
  const { placements, anchors, accounts, counts, firsts, labels } = input
  const { shape, spaces } = accounts[piece]!
  const own = labels[piece]!
  const joined = new Map<Anchor, { readonly earlier: readonly NodeMember[] }>()
  for (const { anchor, node } of meetings[piece]!) {
    const earlier = node.members.filter(({ motif }) => rank[motif]! < rank[piece]!)
    if (earlier.length > 1) earlier.sort((a, b) => rank[a.motif]! - rank[b.motif]!)
    if (earlier.length > 0) joined.set(anchor, { earlier })
  }
  const joins: OrderJoin[] = []
  const free: string[] = []
  const told: ToldPlace[] = []
  for (const { anchor, number } of inOrder(anchors[piece]!, firsts[piece]!, counts[piece]!)) {
    const place = nameOn(input, piece, anchor)
    const name = shape === 'round' && !spaces ? `at ${place}` : place
    const meeting = joined.get(anchor)
    if (!meeting) {
      free.push(anchor.id)
      told.push({ anchor, number, name, phrase: null, partner: 0, partners: [] })
      continue
    }
    const host = meeting.earlier[0]!
    const chains = input.chainsOf?.(host.motif, piece) ?? 0
    const across = chains > 0 ? ` across ${counted(chains, 'chain')}` : ''
    const there = anchors[host.motif]![host.anchor]!
    const phrase =
      phraseTo(state, host.motif, there, own, spaces !== undefined && isBetweenSpaces(name)) + across
    const members: JoinMember[] = meeting.earlier.map((member) => ({
      motif: placements[member.motif]!.id,
      anchor: anchors[member.motif]![member.anchor]!.id,
    }))
    const partners = meeting.earlier.map((member) => labels[member.motif]!)
    const words = input.seam ? seamPhrase(input.seam, name, partners) : `${name}: ${phrase}`
    joins.push({ anchor: anchor.id, with: members, words: wordsOf(words), ...(chains > 0 && { chains }) })
    told.push({ anchor, number, name, phrase, partner: labels[host.motif]!, partners })
    made.add(piece, anchor, labels[host.motif]!)
    for (const member of meeting.earlier) made.add(member.motif, anchors[member.motif]![member.anchor]!, own)
  }
  const kind = piece < input.wholes ? 'motif' : 'half'
  const words = toldAs(told, shape, input.seam, kind === 'motif')
  return { kind, motif: placements[piece]!.id, free, joins, ...words }
}

/** What is said of a place of a filler at which its motif has no tip: told by a space of that, or by the clock. */
function besidePhrase(
  { accounts, firsts, labels, placements }: StepsInput,
  { host, towards, clock }: NonNullable<FillerPlace['meets']>,
): string {
  const space = spaceAt(accounts[host]!, towards - radians(placements[host]!.turn), firsts[host]!)
  // Marks lie towards motifs: what stands between these meets a circle anywhere between two of them.
  return space && !(space.marks && space.next !== null)
    ? spacePlacePhrase(labels[host]!, spaceWords(space), space.next !== null)
    : clockPhrase(labels[host]!, clock)
}

/** A filler, joined to every motif round it. */
function fillerStep(state: State, index: number): OrderStep {
  const { input, made } = state
  const { placements, labels } = input
  const { id, shape, places } = input.fillers[index]!
  const own = labels[placements.length + index]!
  const joins: OrderJoin[] = []
  const told: ToldPlace[] = []
  for (const { anchor, number, name, meets } of places) {
    if (!meets) {
      told.push({ anchor, number, name, phrase: null, partner: 0, partners: [] })
      continue
    }
    const { host, near, at, along } = meets
    const label = labels[host]!
    const other = at ? phraseTo(state, host, at, own) : besidePhrase(input, meets)
    const phrase = along ? alongPhrase(label) : other
    const words = input.seam ? seamPhrase(input.seam, name, [label]) : `${name}: ${phrase}`
    joins.push({
      anchor: anchor.id,
      with: [{ motif: placements[host]!.id, anchor: near }],
      words: wordsOf(words),
      ...(along && { along }),
    })
    told.push({ anchor, number, name, phrase, partner: label, partners: [label], ...(along && { along }) })
    if (at) made.add(host, at, own)
  }
  const free = told.filter(({ phrase }) => phrase === null).map(({ anchor }) => anchor.id)
  return { kind: 'filler', motif: id, free, joins, ...toldAs(told, shape, input.seam) }
}

/** The places of the motif in hand in working direction, counted from its own start. */
function inOrder(
  anchors: readonly Anchor[],
  first: number,
  count: number,
): { anchor: Anchor; number: number }[] {
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
