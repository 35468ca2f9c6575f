/**
 * M26: the arrangements nearest a wished size: first those that hold (one piece, no motif on a single join point),
 * each of them by |Δw|/W + |Δh|/H. Straight and offset rows are tried with the project's own rotation and with the
 * best one, rings where the project already has them.
 */
import { isAssumed } from '../figures/yarn-words'
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, PlanNumbers } from '../../shared-types/plan'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { BLANKET } from '../fields/blanket'
import { finding } from '../findings/finding'
import { gapesMostly } from '../joins/checks'
import { holds } from '../joins/holding'
import { formatSize } from '../units/format'
import type { Degrees } from '../units/quantity'
import { withOutlineTaken } from '../progress/outline-stays'
import { KIND_WORDS } from '../figures/kind-words'
import { blanketOf, layoutKindOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import type { Tryout } from './trials'
import type { BlanketCounts } from './blanket'
import { LEAST_ROUND, MOST_MOTIFS } from './constants'
import { countPlaces } from './places'
import type { Depth, Kind } from './trials'
import { settled } from '../settled'

export interface Wish {
  readonly width: number
  readonly height: number
}

/** How many arrangements are offered. */
const OFFERED = 8

/** How the motifs of an arrangement are rotated. */
export interface Rotation {
  readonly turn: Degrees
  readonly alternateTurn: Degrees
}

export interface Candidate {
  readonly counts: BlanketCounts
  /** One motif by itself does hold, but is nothing to put before others. */
  readonly holds: boolean
  readonly miss: number
  /** Most of its join points gape. */
  readonly gapes: boolean
}

/** What the arrangements of a project are compared by, or the findings that say why there are none. */
type Ways =
  | { readonly layout: BlanketLayout; readonly tryout: Tryout; readonly findings: readonly Finding[] }
  | { readonly layout: null; readonly findings: readonly Finding[] }

export function waysOf(project: Project, wish: Wish, planner: Planner): Ways {
  const layout = blanketOf(project)
  if (!layout) {
    const kind = KIND_WORDS[layoutKindOf(project)].one
    return { layout: null, findings: [finding('layout/fit-kind', 'layout.kind', { kind })] }
  }
  if (!(wish.width > 0 && wish.height > 0 && Number.isFinite(wish.width + wish.height))) {
    const { units } = settled(project)
    const received = formatSize(wish.width || 0, wish.height || 0, units)
    return { layout: null, findings: [finding('layout/target', 'target', { received })] }
  }
  const one: Project = {
    ...project,
    // What was put in or left out by hand, and an outline, stay out of it: they belong to the counts that there are.
    layout: {
      ...{ ...layout, target: undefined, outlineShape: undefined, inTheRound: false },
      cells: layout.cells && { ...layout.cells, motifs: undefined },
      ...{ arrangement: 'straight-rows', columns: 1, rows: 1 },
    },
  }
  const { findings, motifs } = planner.plan(one)
  const tryout = motifs.length > 0 ? planner.tryout(one) : null
  if (!tryout) return { layout: null, findings }
  return { layout, tryout, findings: findings.filter((entry) => entry.severity === 'error') }
}

/** The arrangements nearest `wish` (mm), those that hold first. */
export function fitArrangements(
  project: Project,
  wish: Wish,
  planner: Planner,
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  const ways = waysOf(project, wish, planner)
  if (!ways.layout) return { arrangements: [], findings: ways.findings }
  const { layout, tryout, findings } = ways
  const offered = bestOf(layout, tryout, (kind, rotation) => nearest(tryout, kind, rotation, wish))
  return {
    arrangements: offered
      .map(({ counts }) => describeFit(counts, project, layout, planner, wish))
      .map((fit) => ({ fit, ...judged(fit), miss: missOf(fit.size, wish) }))
      .sort(byHolding)
      .map(({ fit }) => fit),
    findings,
  }
}

/** The best of all candidates: of every kind of arrangement worth trying, in its own rotation and in firmer ones. */
export function bestOf<Found extends Candidate>(
  { arrangement, inTheRound = false, outlineShape }: BlanketLayout,
  tryout: Tryout,
  candidatesOf: (kind: Kind, rotation: Rotation) => readonly Found[],
): Found[] {
  // As the planner took them, with every default.
  const { alternateRows: shifted, turn, alternateTurn } = tryout.counts
  const kinds: Kind[] = [
    { arrangement: 'straight-rows', alternateRows: 'same', inTheRound },
    // Of rows that lie half a place aside nothing is cut out that is alike left and right.
    ...(outlineShape && !(arrangement === 'offset-rows' && shifted === 'same')
      ? []
      : [{ arrangement: 'offset-rows' as const, alternateRows: 'same' as const, inTheRound }]),
    // Rows of other lengths do not close.
    ...(inTheRound ? [] : unevenRows(shifted)),
    ...(arrangement === 'rings' && !inTheRound
      ? [{ arrangement: 'rings' as const, alternateRows: 'same' as const }]
      : []),
  ]
  const own = { turn, alternateTurn }
  const within = (depth: Depth) => {
    const worth = kinds.map((kind) => rotationsWorth(tryout, kind, own, depth))
    // What is worth it for one kind may be for another: else the answer would hang on how it is rotated now.
    const all = [own, UPRIGHT, ...worth.flat()]
    return kinds.flatMap((kind, i) =>
      differing([...worth[i]!, ...all.filter((rotation) => holdsSo(tryout, kind, rotation))]).flatMap(
        (rotation) => candidatesOf(kind, rotation),
      ),
    )
  }
  const usual = within('usual')
  const isJoined = tryout.trials.ground.rule.rule !== 'apart'
  const candidates = isJoined && !usual.some((each) => each.holds) ? within('fine') : usual
  return unlike(candidates.sort(byHolding)).slice(0, OFFERED)
}

/** Shifted rows that end within the others come half a pitch nearer to a width; longer ones are for who has them. */
const unevenRows = (shifted: Kind['alternateRows']): Kind[] =>
  (shifted === 'oneMore' ? (['oneFewer', 'oneMore'] as const) : (['oneFewer'] as const)).map(
    (alternateRows) => ({
      arrangement: 'offset-rows',
      alternateRows,
    }),
  )

/** What holds comes first, whatever its size; then what closes without a gap at most joins; then what comes nearer. */
export const byHolding = (a: Omit<Candidate, 'counts'>, b: Omit<Candidate, 'counts'>): number =>
  Number(b.holds) - Number(a.holds) || Number(a.gapes) - Number(b.gapes) || a.miss - b.miss

/** How a planned fit is joined: a patch judged, the plan itself decides. */
export const judged = (fit: FitArrangement): Pick<Candidate, 'holds' | 'gapes'> => ({
  holds: fit.motifs > 1 && holds(fit),
  gapes: gapesMostly(fit.wide),
})

/** The same of counts, by their patch. */
export function judgedByPatch({ trials }: Tryout, counts: BlanketCounts): Pick<Candidate, 'holds' | 'gapes'> {
  const trial = trials.of(counts)
  return { holds: countPlaces(counts) > 1 && holds(trial), gapes: gapesMostly(trial.wide) }
}

export const missOf = (size: Wish, wish: Wish): number =>
  Math.abs(size.width - wish.width) / wish.width + Math.abs(size.height - wish.height) / wish.height

const UPRIGHT: Rotation = { turn: 0, alternateTurn: 0 }

/** Each rotation once. */
const differing = (rotations: readonly Rotation[]): Rotation[] => [
  ...new Map(rotations.map((rotation) => [`${rotation.turn},${rotation.alternateTurn}`, rotation])).values(),
]

/** Whether a kind holds in a rotation, with every kind of edge that it has. */
const holdsSo = ({ trials }: Tryout, kind: Kind, rotation: Rotation): boolean =>
  JUDGED_ROWS.every((rows) => holds(trials.of({ inTheRound: false, ...kind, ...JUDGED, rows, ...rotation })))

/** Counts by which a kind of arrangement is judged: enough of each that every kind of edge occurs. */
const JUDGED = { columns: 5, rings: 2 } as const
const JUDGED_ROWS = [5, 6] as const

/** The project's own rotation, and the best ones where they are firmer. */
function rotationsWorth({ trials }: Tryout, kind: Kind, own: Rotation, depth: Depth): Rotation[] {
  const found: Rotation[] = [own]
  for (const rows of JUDGED_ROWS) {
    const counts = { inTheRound: false, ...kind, ...JUDGED, rows, ...own }
    const present = trials.of(counts)
    const best = trials.best(counts, depth)
    const isFirmer = holds(best) && (!holds(present) || best.joins > present.joins)
    const isKnown = found.some((r) => r.turn === best.turn && r.alternateTurn === best.alternateTurn)
    if (isFirmer && !isKnown) found.push({ turn: best.turn, alternateTurn: best.alternateTurn })
  }
  return found
}

/** The counts of one kind of arrangement in one rotation that come nearest to `wish`, in no order. */
export function nearest(tryout: Tryout, kind: Kind, rotation: Rotation, wish: Wish): Candidate[] {
  const { arrangement, alternateRows } = kind
  const bare = { inTheRound: false, ...kind, ...rotation, columns: 0, rows: 0, rings: 0 }
  const candidate = (counts: BlanketCounts): Candidate => ({
    counts,
    ...judgedByPatch(tryout, counts),
    miss: missOf(tryout.size(counts), wish),
  })
  if (arrangement === 'rings') {
    const at = (rings: number) => ({ ...bare, alternateTurn: 0, rings })
    return ringCounts((rings) => tryout.size(at(rings)), wish).map((rings) => candidate(at(rings)))
  }
  const at = (columns: number, rows: number) => ({ ...bare, columns, rows })
  const shortest = alternateRows === 'oneFewer' && arrangement === 'offset-rows' ? 2 : 1
  const least = kind.inTheRound ? LEAST_ROUND : shortest
  const size = (columns: number, rows: number) => tryout.size(at(columns, rows))
  const small = size(least, 3)
  const across = size(least + 1, 3).width - small.width
  const down = (size(least, 5).height - small.height) / 2
  const found: Candidate[] = []
  for (const columns of near(small.width - (least - 1) * across, across, wish.width, least))
    for (const rows of near(small.height - 2 * down, down, wish.height, 1)) {
      const counts = at(columns, rows)
      if (countPlaces(counts) <= MOST_MOTIFS) found.push(candidate(counts))
    }
  return found
}

/** The counts round the one that fits best, `first` being the size with one and `step` what each more adds. */
function near(first: number, step: number, wish: number, least: number): number[] {
  const best = step > 0 ? Math.floor(1 + (wish - first) / step) : least
  return [...new Set([-1, 0, 1, 2].map((d) => Math.min(BLANKET.rows.most, Math.max(least, best + d))))]
}

/** The numbers of rings round the one that fits best. */
function ringCounts(size: (rings: number) => Wish, wish: Wish): number[] {
  const one = size(1)
  const two = size(2)
  const reach = (wished: number, a: number, b: number) => 1 + (wished - a) / (b - a)
  const best = (reach(wish.width, one.width, two.width) + reach(wish.height, one.height, two.height)) / 2
  return [
    ...new Set([-1, 0, 1, 2].map((d) => Math.min(BLANKET.rings.most, Math.max(0, Math.floor(best) + d)))),
  ]
}

/** Without arrangements that came twice. */
function unlike<Found extends Candidate>(candidates: readonly Found[]): Found[] {
  const seen = new Set<string>()
  return candidates.filter(({ counts }) => {
    const { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn } = counts
    const rowKind = arrangement === 'offset-rows' ? alternateRows : ''
    const key = [arrangement, columns, rows, rings, rowKind, turn, alternateTurn].join()
    return !seen.has(key) && seen.add(key)
  })
}

/** The fields of a blanket that an arrangement with its counts and rotation fills. */
export const layoutOf = ({
  arrangement,
  alternateRows,
  turn,
  alternateTurn,
  ...counts
}: Omit<BlanketCounts, 'inTheRound'>) => ({
  arrangement,
  alternateRows,
  turn,
  ...(arrangement === 'rings'
    ? { rings: counts.rings }
    : { columns: counts.columns, rows: counts.rows, alternateTurn }),
})

/** "straight rows", "offset rows", "rings". */
export const layoutName = ({ arrangement = 'straight-rows' }: Pick<BlanketLayout, 'arrangement'>): string =>
  arrangement.replace('-', ' ')

/** An arrangement with all that follows from it. */
function describeFit(
  counts: BlanketCounts,
  project: Project,
  layout: BlanketLayout,
  planner: Planner,
  wish: Wish,
): FitArrangement {
  const made = { ...project, layout: { ...layout, target: undefined, ...layoutOf(counts) } }
  return fitOf(counts, countedOf(withOutlineTaken(project, made), planner), wish)
}

/** What counts of a project; all of its plan where its numbers alone do not tell. */
export const countedOf = (project: Project, planner: Planner): PlanNumbers =>
  planner.numbers(project) ?? planner.plan(project)

export function fitOf(counts: BlanketCounts, plan: PlanNumbers, wish: Wish): FitArrangement {
  const { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn } = counts
  const size = { width: plan.size.width, height: plan.size.height }
  return {
    ...{ arrangement, columns, rows, rings, alternateRows, turn, alternateTurn },
    pieces: plan.pieces,
    single: plan.single,
    size,
    error: { width: size.width - wish.width, height: size.height - wish.height },
    motifs: plan.counts.motifs,
    ...(plan.counts.wide && { wide: plan.counts.wide }),
    yarns: plan.yarns.map((need) => ({
      id: need.id,
      grams: need.grams.expected,
      ...(isAssumed(need, 'grams') ? { assumed: true as const } : {}),
    })),
  }
}
