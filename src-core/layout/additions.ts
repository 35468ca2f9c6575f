/** M27, M28: what stands between and beside the motifs of a blanket (fillers and half motifs), from places to yarn. */
import { byName } from '../by-name'
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, Plan } from '../../shared-types/plan'
import type { BlanketLayout, Hand, Motif, Project } from '../../shared-types/project'
import type { Settled } from '../../shared-types/settled'
import { POINT_SEAM } from '../joins/constants'
import type { Rule } from '../joins/rule'
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
import { ownPoints } from './placed'
import type { Filling } from './fillers'
import type { Opening } from './holes'
import type { Arranged, Joined } from './stages'
import type { Worked } from './works'
import { DEFAULTS } from '../settled'

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
  readonly placed: Pick<Plan, 'fillers' | 'halves' | 'fillerMotif'>
  /** What they take in yarn and time, and how they are joined. */
  readonly pieces: readonly Piece[]
  /** How many places they are joined at. */
  readonly joinPoints: number
  readonly fillerJoins: number
  readonly joinOperations: number
  readonly seams: Joined['seams']
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
  readonly fillerMotif: Motif | undefined
  /** Account of the filler; null where there is none. */
  readonly filler: MotifAccount | null
  readonly filling: Filling
  readonly halved: Halved
  readonly findings: readonly Finding[]
}

/** These stages with a memory of their own: one for each planner. */
export function createAdditions(accountOf: AccountOf) {
  const gaugeOf = memoised(resolveGauge)
  const fill = memoised(fillOpenings)
  const placeFillers = memoised(finishFillers)
  const stepsOf = memoised(fillerSteps)
  const halvesOf = memoised(halve)
  const placeHalves = memoised(finishHalves)
  const halfWays = memoised(halfColourways)
  const paintedOf = memoised(pickPainted)

  /** Finds the openings to be filled and the places of half motifs. */
  function lay({ project, layout, accounts, rule, counts, arranged, joined, open }: GapsInput): Gaps {
    const terms = project.terms
    const asked = layout.fillers?.motif
    const fillerMotif = asked ? project.motifs.find(({ id }) => id === asked) : undefined
    const told = fillerMotif ? accountOf(fillerMotif, project) : null
    const filler = told?.account ?? null
    const gauge = told?.gauge ?? gaugeOf((fillerMotif ?? project).gauge, terms)
    // Looked for only where something hangs on them: numbers of a blanket without fillers need not wait for it.
    const openings = filler || project.forChild ? open() : NO_OPENINGS
    const filling = fill(...([openings, arranged.lattice, filler, gauge, terms] as const), project.units)
    const halved = halvesOf(
      layout.halves ?? DEFAULTS.blanket.halves,
      accounts,
      joined,
      rule.rule,
      arranged,
      counts,
    )
    return { fillerMotif, filler, filling, halved, findings: told?.findings ?? NO_FINDINGS }
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
    const { fillerMotif, filler, filling, halved } = gaps
    const units = project.units
    const { fillers: asked } = layout
    const way = asked?.colourway ?? project.colourways.find((each) => each.motif === asked?.motif)?.id ?? ''
    const { cells } = layout
    const painted = paintedOf(cells?.painted, heldColours(cells?.held, project.made), project.colourways)
    const sewn = rule.rule === 'seam'
    const fillers = placeFillers(
      ...([arranged, filling, worked.additions.fillers, worked.additions.firsts, way, painted] as const),
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
    if (fillerMotif && fillers.length > 0) {
      const made = {
        motifs: fillers.length,
        byColourway: tally(fillers.map(({ colourway }) => colourway)),
      }
      pieces.push({ motif: fillerMotif, account: filler, counts: made })
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
        fillerMotif: filler,
      },
      pieces,
      joinPoints: ownPoints([...fillers, ...halves]),
      // A filler is hung in by slip stitches, or sewn in at as many points with a piece of yarn of its own.
      fillerJoins: sewn ? 0 : filling.joins,
      joinOperations: joined.operations + halved.operations,
      seams: {
        length: joined.seams.length + halved.seams.length + (sewn ? filling.joins * POINT_SEAM : 0),
        count: joined.seams.count + halved.seams.count + (sewn ? fillers.length : 0),
      },
      findings: [
        ...gaps.findings,
        ...filling.findings,
        ...halved.findings,
        ...(fillers.length + halves.length > 0 ? unknownPlaces(layout.cells?.painted, there) : NO_FINDINGS),
        ...(project.forChild ? childOpenings(filling.open, units) : NO_FINDINGS),
      ],
    }
  }

  /** Tells how each filler is joined to the motifs round it. */
  function tell(
    { filler, filling }: Gaps,
    arranged: Arranged,
    rule: Rule,
    labels: readonly number[],
    hand: Hand,
  ) {
    return filler
      ? stepsOf(arranged, filling, filler, labels, hand, rule.rule === 'seam' ? rule.verb : null)
      : NO_STEPS
  }

  return { lay, finish, tell }
}

/** Ids of the motifs; the same list as long as the motifs are. */
const idsOf = remembered((motifs: readonly Motif[]): readonly string[] => motifs.map(({ id }) => id))

const NO_OPENINGS: readonly Opening[] = []

const NO_STEPS: Plan['fillerSteps'] = []

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
