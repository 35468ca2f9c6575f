/** M27, M28: what stands between and beside the motifs of a blanket (fillers and half motifs), from places to yarn. */
import { byName } from '../by-name'
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { BlanketLayout, Colourway, Hand, Motif, Project } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { POINT_SEAM } from '../joins/constants'
import type { Rule } from '../joins/rule'
import { sumOfSides } from '../joins/sides'
import type { Sides } from '../joins/sides'
import type { Piece } from '../materials/input'
import { memoised, remembered } from '../memo'
import { resolveGauge } from '../stitches/gauge'
import type { ResolvedGauge } from '../stitches/gauge'
import type { EdgingRoom } from './frame'
import type { BlanketCounts } from './blanket'
import { HALF_SHARE } from './constants'
import { finding } from '../findings/finding'
import { heldColours } from '../progress/held'
import { isAddition, tidyAddress } from './addresses'
import { fillerSteps, finishFillers } from './filler-steps'
import { childOpenings, fillOpenings } from './fillers'
import { finishHalves, halfColourways, halve } from './halves'
import type { Halved, Painted } from './halves'
import { halfFindings } from '../half-motif/findings'
import { ownPoints } from './placed'
import type { Asked, Filled, Filler, Filling } from './fillers'
import type { Opening, OpeningKind } from './holes'
import { entriesOf, groupOpenings, openingsTold } from './opening-kinds'
import type { OpeningGroup } from './opening-kinds'
import type { Arranged, Joined } from './stages'
import type { Worked } from './works'
import { DEFAULTS } from '../settled'
import type { Millimetres } from '../units/quantity'

interface GapsInput {
  readonly project: Settled
  readonly layout: BlanketLayout
  /** Of the blanket's motifs, by kind. */
  readonly accounts: readonly MotifAccount[]
  readonly rule: Rule
  readonly counts: BlanketCounts
  readonly arranged: Arranged
  readonly joined: Joined
  /** The openings between the motifs. */
  readonly open: () => readonly Opening[]
}

interface AdditionsInput extends Omit<GapsInput, 'counts' | 'open'> {
  readonly motifs: readonly Motif[]
  readonly gaps: Gaps
  /** Working numbers. */
  readonly worked: Worked
  /** Colourway by placement. */
  readonly colourways: readonly string[]
  readonly edging: EdgingRoom
  readonly blocking: { readonly width: number; readonly height: number }
}

interface Additions {
  /** The fields of the plan that tell of them. */
  readonly placed: Pick<Plan, 'fillers' | 'halves' | 'fillerMotifs'>
  /** What they take in yarn and time, and how they are joined. */
  readonly pieces: readonly Piece[]
  /** How many places they are joined at. */
  readonly joinPoints: number
  readonly fillerJoins: number
  readonly joinOperations: number
  /** Of these, those beyond the first at their join point; what is sewn goes by its sides. */
  readonly joinsAgain: number
  readonly seams: Joined['seams']
  /** What of the motifs and half motifs is sewn, and of the fillers joined, along whole sides. */
  readonly sides: { readonly seams: Sides; readonly along: Sides }
  readonly findings: readonly Finding[]
}

/** The account of one motif of a project with its findings, remembered while the motif stays the same. */
type AccountOf = (
  motif: Motif,
  project: Settled,
) => {
  readonly account: MotifAccount | null
  readonly findings: readonly Finding[]
  readonly gauge?: ResolvedGauge
}

const NO_FINDINGS: readonly Finding[] = []

/** What stands between and beside the motifs, before anything is worked. */
interface Gaps {
  readonly filling: Filling
  readonly halved: Halved
  readonly findings: readonly Finding[]
}

/** What a file says of fillers: of all together first, then of a kind of openings. */
interface Named {
  readonly motif?: string | null | undefined
  readonly colourway?: string | undefined
}

/** How many gauges of fillers are remembered. */
const GAUGES_KEPT = 8

/** These stages with a memory of their own: one for each planner. */
export function createAdditions(accountOf: AccountOf) {
  const gaugeOf = memoised(resolveGauge, GAUGES_KEPT)
  const ask = memoised(askFor)
  const fill = memoised(fillOpenings)
  const waysOf = memoised(fillerWays)
  const placeFillers = memoised(finishFillers)
  const stepsOf = memoised(fillerSteps)
  const halvesOf = memoised(halve)
  const placeHalves = memoised(finishHalves)
  const halfWays = memoised(halfColourways)
  const paintedOf = memoised(pickPainted)

  /** Finds the openings to be filled and the places of half motifs. */
  function lay({ project, layout, accounts, rule, counts, arranged, joined, open }: GapsInput): Gaps {
    const terms = project.terms
    const told = namedBy(layout.fillers).map(({ motif: id }) => {
      const motif = id ? project.motifs.find((each) => each.id === id) : undefined
      if (!motif) return null
      const { account, findings, gauge } = accountOf(motif, project)
      return { account, findings, gauge: gauge ?? gaugeOf(motif.gauge, terms) }
    })
    const isFilled = told.some((each) => each?.account)
    // Looked for only where something hangs on them: numbers of a blanket without fillers need not wait for it.
    const openings = isFilled || project.forChild ? open() : NO_OPENINGS
    const groups = groupOpenings(openings, idsOf(accounts))
    const asked = ask(
      ...([layout.fillers, groups] as const),
      ...told.flatMap((each) => [each?.account ?? null, each?.gauge ?? null]),
    )
    const filling = fill(openings, arranged.lattice, asked, joined.reach, terms, project.units)
    const halved = halvesOf(
      layout.halves ?? DEFAULTS.blanket.halves,
      accounts,
      joined,
      rule.rule,
      arranged,
      counts,
    )
    const findings = new Set(told.flatMap((each) => each?.findings ?? NO_FINDINGS))
    return { filling, halved, findings: [...findings] }
  }

  /** Places, colours and counts them. */
  function finish({
    project,
    layout,
    arranged,
    joined,
    rule,
    worked,
    colourways,
    ...rest
  }: AdditionsInput): Additions {
    const { edging, blocking, motifs, accounts, gaps } = rest
    const { filling, halved } = gaps
    const units = project.units
    const wayOf = waysOf(layout.fillers, project.colourways, filling)
    const { cells } = layout
    const painted = paintedOf(cells?.painted, heldColours(cells?.held, project.made), project.colourways)
    const sewn = rule.rule === 'seam'
    const fillers = placeFillers(
      ...([arranged, filling, worked.additions.fillers, worked.additions.firsts, wayOf, painted] as const),
      ...([edging, blocking.width, blocking.height] as const),
    )
    const ways = halfWays(halved.places, arranged.placements, colourways, layout.cells?.fill, painted)
    const halves = placeHalves(
      halved,
      arranged.placements.length,
      worked.additions.halves,
      ways,
      idsOf(motifs),
      edging,
      blocking.width,
      blocking.height,
    )
    const there = new Set([...fillers, ...halves].map(({ id }) => id))
    const pieces: Piece[] = []
    const joinOperations = joined.operations + halved.operations
    const used = [...new Set(fillers.map(({ motif }) => motif))]
    for (const id of used) {
      const motif = project.motifs.find((each) => each.id === id)
      const own = fillers.filter((each) => each.motif === id)
      const counts = { motifs: own.length, byColourway: tally(own.map(({ colourway }) => colourway)) }
      if (motif) pieces.push({ motif, account: accountIn(filling, id), counts })
    }
    motifs.forEach((motif, kind) => {
      const own = ways.filter((_, i) => halved.places[i]!.kind === kind)
      const counts = { motifs: own.length, byColourway: tally(own) }
      if (own.length > 0) pieces.push({ motif, account: accounts[kind]!, counts, share: HALF_SHARE })
    })
    return {
      placed: {
        fillers,
        halves,
        fillerMotifs: accountsIn(filling),
      },
      pieces,
      joinPoints: ownPoints([...fillers, ...halves]),
      // A filler is hung in by slip stitches, or sewn in at as many points with a piece of yarn of its own.
      fillerJoins: filling.joins,
      joinOperations,
      joinsAgain: sewn ? 0 : joinOperations - joined.nodes.length - ownPoints(halves),
      seams: {
        length: joined.seams.length + halved.seams.length + (sewn ? seamOf(filling) : 0),
        count: joined.seams.count + halved.seams.count + (sewn ? fillers.length : 0),
      },
      sides: { seams: sumOfSides([joined.sides, halved.sides]), along: filling.along },
      findings: [
        ...gaps.findings,
        ...filling.findings,
        ...halfFindings(halved.findings, project, accounts, halves),
        ...(fillers.length + halves.length > 0 ? unknownPlaces(layout.cells?.painted, there) : NO_FINDINGS),
        ...(project.forChild ? childOpenings(filling.open, units) : NO_FINDINGS),
      ],
    }
  }

  /** Tells how each filler is joined to the motifs round it. */
  const tell = ({ filling }: Gaps, arranged: Arranged, rule: Rule, labels: readonly number[], hand: Hand) =>
    stepsOf(arranged, filling, labels, hand, rule.rule === 'seam' ? rule.verb : null)

  return { lay, finish, tell }
}

/** How long the seams of fillers are: along whole sides as long as these. */
const seamOf = ({ joins, along }: Filling): Millimetres => (joins - along.joins) * POINT_SEAM + along.worked

/** Ids of motifs or of their accounts; the same list as long as these are. */
const idsOf = remembered((motifs: readonly { readonly id: string }[]): readonly string[] =>
  motifs.map(({ id }) => id),
)

type FillersOf = BlanketLayout['fillers']

/** The filler of all openings, then those that kinds of them have. */
const namedBy = (fillers: FillersOf): readonly Named[] =>
  fillers ? [fillers, ...(fillers.openings ?? NO_NAMES)] : NO_NAMES

const NO_NAMES: readonly Named[] = []

/** Which filler goes where; `told`: account and gauge of each one that is named, one after the other. */
function askFor(
  fillers: FillersOf,
  groups: readonly OpeningGroup[],
  ...told: readonly (MotifAccount | ResolvedGauge | null)[]
): Asked {
  const fillerAt = (place: number, where: string): Filler | null => {
    const [account, gauge] = [told[2 * place], told[2 * place + 1]] as [MotifAccount | null, ResolvedGauge]
    return account ? { account, gauge, place, where } : null
  }
  const entries = fillers?.openings ?? NO_ENTRIES
  const own = new Map<OpeningGroup, Filler | null>()
  const places = entriesOf(entries, groups)
  for (const [group, place] of places)
    // What names no motif of its own leaves it to the filler of all.
    if (entries[place]!.motif !== undefined)
      own.set(group, fillerAt(place + 1, `layout.fillers.openings[${place}]`))
  const met = new Set(places.values())
  const findings = entries.flatMap(({ between = [], motif }, place) =>
    motif && groups.length > 0 && !met.has(place)
      ? [
          finding('layout/filler-kind-missing', `layout.fillers.openings[${place}]`, {
            count: between.length,
            motifs: between.join(', '),
          }),
        ]
      : [],
  )
  return { main: fillers?.motif ? fillerAt(0, 'layout.fillers') : null, own, findings }
}

const NO_ENTRIES: NonNullable<NonNullable<FillersOf>['openings']> = []

/** The colourway of each filler where it is not painted: the one chosen for it, else the first of its motif. */
function fillerWays(
  fillers: FillersOf,
  colourways: readonly Colourway[],
  { filled }: Filling,
): ReadonlyMap<Filler, string> {
  const ways = new Map<Filler, string>()
  for (const { filler } of filled) {
    if (ways.has(filler)) continue
    const named = filler.place === 0 ? fillers : fillers?.openings?.[filler.place - 1]
    const first = colourways.find(({ motif }) => motif === filler.account.id)
    ways.set(filler, named?.colourway ?? first?.id ?? '')
  }
  return ways
}

/** The openings of a blanket by kind, with what stands in them. */
export function openingsIn(
  openings: readonly Opening[],
  { lattice }: Pick<Arranged, 'lattice'>,
  accounts: readonly MotifAccount[],
  { filled }: Filling,
) {
  const fits = new Map<OpeningKind, Filled[]>()
  // Of each kind one opening shows them all.
  const shown = new Map(filled.map(({ opening }) => [opening.kind, opening]))
  for (const one of filled)
    if (shown.get(one.opening.kind) === one.opening)
      fits.set(one.opening.kind, [...(fits.get(one.opening.kind) ?? []), one])
  const ids = idsOf(accounts)
  return openingsTold(groupOpenings(openings, ids), lattice, ids, (kind) => fits.get(kind) ?? [])
}

/** The accounts of the motifs that stand in openings, each once. */
const accountsIn = remembered(({ filled }: Filling): readonly MotifAccount[] => [
  ...new Map(filled.map(({ filler: { account } }) => [account.id, account])).values(),
])

const accountIn = (filling: Filling, id: string): MotifAccount | null =>
  accountsIn(filling).find((account) => account.id === id) ?? null

const NO_OPENINGS: readonly Opening[] = []

const NOTHING: Painted = {}

/** What is painted and what is made of fillers and half motifs, with colourways that there are. */
function pickPainted(
  painted: Painted | undefined,
  held: Painted | undefined,
  colourways: Project['colourways'],
): Painted {
  const known = new Set(colourways?.map(({ id }) => id))
  const own = [...Object.entries(painted ?? {}), ...Object.entries(held ?? {})]
    .map(([key, id]): [string, string] => [tidyAddress(key), id])
    .filter(([key, id]) => isAddition(key) && known.has(id))
  return own.length > 0 ? Object.fromEntries(own) : NOTHING
}

/** Findings on painted addresses at which neither a filler nor a half motif stands. */
const unknownPlaces = (painted: Painted | undefined, there: ReadonlySet<string>): Finding[] =>
  Object.keys(painted ?? {})
    .filter((key) => isAddition(tidyAddress(key)) && !there.has(tidyAddress(key)))
    .map((id) => finding('file/unknown-cell', `layout.cells.painted["${id}"]`, { id }))

/** How often each colourway occurs. */
export function tally(colourways: readonly string[]): Record<string, number> {
  const counts = byName<number>()
  for (const id of colourways) if (id) counts[id] = (counts[id] ?? 0) + 1
  return counts
}
