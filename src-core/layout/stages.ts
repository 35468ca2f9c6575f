/** The stages of a blanket's plan, each a pure function of the fields that it reads: what does not change is not run again. */
import { knownSize } from '../motif/ruler'
import type { Finding } from '../../shared-types/finding'
import type { Anchor, HoleKind, Holds, MotifAccount, PlacedFiller, PlanSize } from '../../shared-types/plan'
import type { EdgingEnds, BlanketLayout, Hand } from '../../shared-types/project'
import type { SettledJoining } from '../../shared-types/settled'
import { finding } from '../findings/finding'
import { scaleOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { checkNodes } from '../joins/checks'
import { holdingFindings, holdingOf } from '../joins/holding'
import { findNodes } from '../joins/nodes'
import type { Node, NodeWays } from '../joins/nodes'
import { joinReach, pairWay, stretchLimit } from '../joins/rule'
import { NO_SIDES, seamsBetween, seamWork, wholeSides } from '../joins/sides'
import type { SeamGround, Sides } from '../joins/sides'
import { singlePairs } from '../joins/single-pairs'
import type { SinglePairs } from '../joins/single-pairs'
import type { Rule, Rules } from '../joins/rule'
import type { Bridges } from '../materials/input'
import { usualEdgingStyle } from '../materials/edging'
import { sharedSideAnchors } from '../motif/anchors'
import { withContacts } from '../motif/contacts'
import type { ResolvedGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import { blanketSize, layBlanket } from './blanket'
import type { BlanketCounts, Laid, OutlineTest } from './blanket'
import { ownPairs } from './cells'
import type { Cells } from './cells'
import { countPlaces, placesOf } from './places'
import { addressWords, halfId } from './addresses'
import type { Halved } from './halves'
import { SENSITIVITY_STEP } from './constants'
import type { EdgeInput } from './edge'
import { holeKinds, openingsOf } from './holes'
import type { Opening } from './holes'
import { latticeOf } from './lattice'
import type { Lattice, Mixture } from './lattice'
import type { Pattern } from './pattern'

/** The gap between motifs of every two kinds. */
export type GapOf = (one: number, other: number) => Millimetres

/** The gaps that rules leave between `kinds` kinds of motifs, one kind after the other. */
export const gapsUnder = (rules: Rules, kinds: number): Millimetres[] =>
  Array.from({ length: kinds * kinds }, (_, i) => rules.of(Math.floor(i / kinds), i % kinds).gap)

const among =
  (gaps: readonly Millimetres[], kinds: number): GapOf =>
  (one, other) =>
    gaps[one * kinds + other]!

/** The lattice of a blanket's motifs, of which some stand where the pattern does not want them. */
export const lattice = (
  outlines: readonly Outline[],
  cells: Cells,
  counts: BlanketCounts,
  gaps: readonly Millimetres[],
): Lattice =>
  latticeFor(outlines, cells.pattern, counts, among(gaps, outlines.length), (halves, rows) =>
    ownPairs(cells, counts, halves, rows),
  )

/** The lattice of motifs that stand as their pattern wants them, however many there are. */
export const endlessLattice = (
  outlines: readonly Outline[],
  arrangement: BlanketCounts['arrangement'],
  count: number,
  by: Pattern['by'],
  rings: number,
  turn: number,
  alternateTurn: number,
  gaps: readonly Millimetres[],
): Lattice =>
  latticeFor(
    outlines,
    { arrangement, count, by, rings },
    { arrangement, turn, alternateTurn },
    among(gaps, outlines.length),
  )

/** A lattice for outlines by kind; `own` finds the pairs that the pattern does not have. */
export function latticeFor(
  outlines: readonly Outline[],
  pattern: Pattern,
  counts: Pick<BlanketCounts, 'arrangement' | 'turn' | 'alternateTurn'>,
  gapOf: GapOf,
  own: Mixture['ownPairs'] = () => [],
): Lattice {
  const { arrangement, turn, alternateTurn } = counts
  const isMixed = outlines.length > 1
  return latticeOf(
    outlines,
    arrangement !== 'straight-rows',
    turn,
    alternateTurn,
    gapOf(0, 0),
    isMixed ? { pattern, gapOf, ownPairs: own } : undefined,
  )
}

export interface Arranged extends Laid {
  /** Change of the size when every motif grows by SENSITIVITY_STEP mm in the measure that it is known by. */
  readonly sensitivity: PlanSize['sensitivity']
}

/** Places every motif and says how sensitive the size is (M26). */
export function arrange(
  accounts: readonly MotifAccount[],
  cells: Cells,
  grid: Lattice,
  counts: BlanketCounts,
  rules: Rules,
  outline: OutlineTest | undefined,
): Arranged {
  const laid = layBlanket(grid, counts, cells, outline)
  const grown = accounts.map((account) =>
    scaleOutline(account.outline, 1 + SENSITIVITY_STEP / knownSize(account)),
  )
  const wider = lattice(grown, cells, counts, gapsUnder(rules, grown.length))
  const kept = new Set(outline ? laid.placements.map(({ id }) => id) : [])
  // An outline keeps the motifs that it has: the same ones, larger, are what grows.
  const larger = outline
    ? layBlanket(wider, counts, keeping(cells, counts, kept))
    : blanketSize(wider, counts, cells)
  return {
    ...laid,
    sensitivity: {
      step: SENSITIVITY_STEP,
      width: laid.round > 0 ? larger.round - laid.round : larger.width - laid.width,
      height: larger.height - laid.height,
    },
  }
}

/** The cells with everything left out that an outline leaves out. */
function keeping(cells: Cells, counts: BlanketCounts, kept: ReadonlySet<string>): Cells {
  const own = new Map(cells.own)
  for (const { id } of placesOf(counts)) if (!kept.has(id)) own.set(id, null)
  return { ...cells, own }
}

export interface Joined {
  readonly nodes: readonly Node[]
  /** The anchors that may be joined, by kind of motif. */
  readonly anchors: readonly (readonly Anchor[])[]
  readonly reach: Millimetres
  /** Which anchors of which kinds are joined; left out where every two are. */
  readonly ways: NodeWays
  /** Gap at a join from which it is over-stretched. */
  readonly stretchLimit: Millimetres
  /** The widest gap between members of a node. */
  readonly spread: Millimetres
  /** Slip stitches into a neighbour. */
  readonly operations: number
  /** Of these, those that are worked with joining chains, by how many chains. */
  readonly bridges: readonly Bridges[]
  /** Joining chains between two motifs that have a rule of their own, by their index; null where none have. */
  readonly chainsOf: ((one: number, other: number) => number) | null
  readonly seams: { readonly length: Millimetres; readonly count: number }
  /** Width of a stitch. */
  readonly stitch: Millimetres
  /** What the last round of a motif counts along its sides. */
  readonly sideOf: NonNullable<SeamGround['sideOf']>
  /** What is sewn along whole sides. */
  readonly sides: Sides
  readonly findings: readonly Finding[]
}

/** The accounts of the motifs as the layout uses them: a round one has its places where neighbours touch. */
export const placedAccounts = (
  accounts: readonly MotifAccount[],
  grid: Lattice,
  hand: Hand,
  cells?: Pick<Cells, 'blocks' | 'own'>,
): readonly MotifAccount[] => {
  const sizes = cells ? blockSizes(cells) : NO_SIZES
  return accounts.map((account, kind) => placedAccount(account, grid, hand, sizes.get(kind)))
}

const NO_SIZES: ReadonlyMap<number, number> = new Map()

/** How many places each way motifs take that take more than one, by kind. */
function blockSizes({ blocks, own }: Pick<Cells, 'blocks' | 'own'>): Map<number, number> {
  const sizes = new Map<number, number>()
  for (const [address, size] of blocks) {
    const kind = own.get(address)
    if (kind != null) sizes.set(kind, Math.max(size, sizes.get(kind) ?? 0))
  }
  return sizes
}

export function placedAccount(account: MotifAccount, grid: Lattice, hand: Hand, size = 1): MotifAccount {
  if (account.shape === 'round') return withContacts(account, grid, hand)
  const corners = account.anchors.filter(({ kind }) => kind === 'corner')
  if (size === 1 || account.shape !== 'straight' || corners.length !== 4) return account
  return { ...account, anchors: sharedSideAnchors(corners, size) }
}

/** Join points, seams and what is to be said about them; of placed accounts. */
export function join(
  accounts: readonly MotifAccount[],
  gauge: ResolvedGauge,
  rules: Rules,
  joining: SettledJoining,
  laid: Laid,
  counts: BlanketCounts,
): Joined {
  const single = singlePairs(joining, accounts, rules, gauge, laid)
  const { anchors } = single
  // Places that only a rule of a single pair joins are not joined by all.
  const isPlain = accounts.length === 1 && !single.wayOf
  const way = pairWay(joining, accounts, rules, gauge)
  const kinds = accounts.map((_, kind) => kind)
  const reaches = kinds.flatMap((kind) => kinds.map((other) => way(kind, other).reach))
  const { findings: reachFindings } = joinReach(joining, rules.main, accounts[0]!, gauge)
  const reach = Math.max(...reaches)
  const farthest = reach + single.widest - rules.widest
  const ways: NodeWays = { round: laid.round, pair: isPlain ? undefined : way }
  const motifs = laid.placements.map(({ x, y, turn, kind }) => ({
    x,
    y,
    turn,
    kind,
    anchors: anchors[kind]!,
  }))
  const nodes = findNodes(motifs, farthest, { ...ways, single: single.wayOf })
  const spread = nodes.reduce((most, node) => Math.max(most, node.spread), 0)
  const smallest = accounts.reduce((least, each) => (each.overTips < least.overTips ? each : least))
  const limit = stretchLimit({ gap: single.widest }, smallest, gauge)
  const sideOf = (motif: number) => accounts[laid.placements[motif]?.kind ?? 0]?.side
  const ground = { placements: laid.placements, round: laid.round, sideOf }
  const isJoined = rules.main.rule !== 'apart'
  const checked = isJoined
    ? checkNodes({
        ids: laid.placements.map((p) => p.id),
        nodes,
        shape: (accounts.find(({ shape }) => shape === 'petals') ?? accounts[0])?.shape ?? 'petals',
        petals: Math.max(...accounts.map(({ petals }) => petals)),
        stretchLimit: limit,
        isSewn: rules.main.rule === 'seam',
        isAtCorners:
          accounts.every(({ shape }) => shape === 'straight') &&
          nodes.every(({ members }) =>
            members.every(
              ({ motif, anchor: at }) => anchors[laid.placements[motif]?.kind ?? 0]?.[at]?.kind === 'corner',
            ),
          ),
      })
    : []
  return {
    nodes,
    anchors,
    reach,
    ways,
    stretchLimit: limit,
    spread,
    operations: nodes.reduce((sum, node) => sum + node.members.length - 1, 0),
    bridges: bridgesOf(nodes, laid, rules, single),
    chainsOf: single.wayOf ? (one, other) => chainsOf(single.ruleOf(one, other)) : null,
    seams:
      rules.main.rule === 'seam'
        ? seamsOf(nodes, laid, ground, gauge.width, counts)
        : { length: 0, count: 0 },
    stitch: gauge.width,
    sideOf: ground.sideOf,
    sides: rules.main.rule === 'seam' ? wholeSides(nodes, gauge.width, ground) : NO_SIDES,
    findings: [
      ...single.findings,
      ...single.check(nodes),
      ...reachFindings,
      ...checked,
      ...(isJoined ? looseFindings(nodes, laid, accounts) : []),
    ],
  }
}

const chainsOf = (rule: Rule | undefined): number => (rule?.rule === 'bridge' ? rule.chains : 0)

/** How many joins are worked with joining chains: of each later motif to the first at its join point. */
function bridgesOf(
  nodes: readonly Node[],
  { placements }: Laid,
  rules: Rules,
  { ruleOf }: SinglePairs,
): Bridges[] {
  const counts = new Map<number, number>()
  for (const { members } of nodes)
    for (let i = 1; i < members.length; i++) {
      const first = members[0]!.motif
      const { motif } = members[i]!
      const rule = ruleOf(first, motif) ?? rules.of(placements[first]!.kind, placements[motif]!.kind)
      if (rule.rule === 'bridge') counts.set(rule.chains, (counts.get(rule.chains) ?? 0) + 1)
    }
  return [...counts].map(([chains, operations]) => ({ chains, operations }))
}

/** Of several motifs, one that is smaller than its cell may be joined to nothing. */
function looseFindings(
  nodes: readonly Node[],
  { placements }: Laid,
  accounts: readonly MotifAccount[],
): Finding[] {
  if (accounts.length === 1 || placements.length < 2) return []
  const met = new Uint8Array(placements.length)
  for (const { members } of nodes) for (const { motif } of members) met[motif] = 1
  const loose = placements.filter((_, i) => met[i] === 0).map(({ id }) => id)
  if (loose.length === 0) return []
  const values = {
    count: loose.length,
    cells: addressWords(
      loose,
      placements.map(({ id }) => id),
    ),
  }
  return [finding('layout/loose-kind', 'layout.cells', values, { cells: loose })]
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

/** All seams together, as long as they are counted; sewn in long lines, each with its own yarn. */
function seamsOf(
  nodes: readonly Node[],
  laid: Laid,
  ground: SeamGround,
  width: Millimetres,
  counts: BlanketCounts,
): Joined['seams'] {
  const length = seamsBetween(nodes, ground).reduce(
    (sum, seam) => sum + seamWork(seam, width, ground).worked,
    0,
  )
  const rows = laid.placements[laid.placements.length - 1]?.row ?? 1
  // Straight rows are sewn in lines across and down; offset ones across, and each short seam down by itself.
  const across = rows - 1
  // In the round the last motif of each row is sewn to the first as well.
  const closing = laid.round > 0
  const down =
    counts.arrangement === 'straight-rows'
      ? counts.columns - (closing ? 0 : 1)
      : laid.placements.length - (closing ? 0 : rows)
  return { length, count: length > 0 ? across + down : 0 }
}

/** What the line along which an edging runs is told from. */
export function edgeInput(
  accounts: readonly MotifAccount[],
  cells: Cells,
  laid: Laid,
  counts: BlanketCounts,
  style: NonNullable<BlanketLayout['edging']>['style'],
  { reach, ways }: Pick<Joined, 'reach' | 'ways'>,
  halves: boolean,
  ends: EdgingEnds,
): EdgeInput {
  const tips = accounts.map(({ anchors, shape }) =>
    anchors.filter((anchor) => shape === 'round' || anchor.kind === 'tip' || anchor.kind === 'corner'),
  )
  const isWhole = laid.placements.length === countPlaces(counts) && cells.own.size === 0
  return {
    ...{ lattice: laid.lattice, counts, tips, reach, ways, halves, ends },
    style: style ?? usualEdgingStyle(accounts[0]?.shape),
    whole: isWhole ? null : laid,
  }
}
