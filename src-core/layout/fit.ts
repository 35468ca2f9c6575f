/**
 * M26: the arrangements nearest a wished size: first those that hold (one piece, no motif on a single join point),
 * each of them by |Δw|/W + |Δh|/H. Straight and offset rows are tried with the project's own rotation and with the
 * best one, rings where the project already has them. Whatever the start offers under the same way of joining is
 * among them.
 */
import { isAssumed } from '../figures/yarn-words'
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, PlanNumbers } from '../../shared-types/plan'
import type { BlanketLayout, OutlineShape, Project } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { closedForChild } from '../joins/for-child'
import { holds } from '../joins/holding'
import { formatNumber, formatSize } from '../units/format'
import { withOutlineTaken } from '../progress/outline-stays'
import { KIND_WORDS } from '../figures/kind-words'
import { blanketOf, layoutKindOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { isBegun } from '../progress/progress'
import { outlinesToward } from '../ways/outline'
import type { BlanketCounts } from './blanket'
import { byHolding, countsNear, layoutOf, nearest } from './candidates'
import type { Candidate, Rotation, Wish } from './candidates'
import { MOST_MOTIFS } from './constants'
import { looksWorth } from './looks'
import { closingOnesFirst } from './closing'
import { differentOf, isSameBlanket, isSameTurn, isWithinHalf, ranked } from './nearness'
import { countPlaces } from './places'
import { countsOf, rowsStanding } from './standing'
import type { Depth, Kind, Tryout } from './trials'
import { settled } from '../settled'
import type { Millimetres } from '../units/quantity'

/** How many arrangements are offered. */
const OFFERED = 8

/** Of what is cut out: kinds and rotations beside those of the start, and outlines for each of all. */
const BESIDES = 3
const RECUT_EACH = 2

/** What the arrangements of a project are compared by, or the findings that say why there are none. */
type Ways = WaysThere | { readonly layout: null; readonly findings: readonly Finding[] }

export interface WaysThere {
  readonly layout: BlanketLayout
  readonly tryout: Tryout
  /** How wide across the openings of counts are, where that is compared: for a child, and nothing fills them. */
  readonly openingOf?: ((counts: BlanketCounts) => Millimetres) | undefined
  /** The same of motifs with straight sides, for whomever it is: in some rows they close, in others they do not. */
  readonly leavesOf?: LeavesOf | undefined
  readonly findings: readonly Finding[]
}

export type LeavesOf = (counts: Omit<BlanketCounts, 'inTheRound'>) => Millimetres

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
  const plain = {
    arrangement: 'straight-rows',
    alternateRows: 'same',
    inTheRound: layout.inTheRound,
  } as const
  const many = Math.min(...countsNear(tryout, plain, UPRIGHT, wish).map(countPlaces))
  if (many > MOST_MOTIFS) {
    const values = { received: formatNumber(many), most: formatNumber(MOST_MOTIFS) }
    return { layout: null, findings: [finding('layout/too-many', 'layout.target', values)] }
  }
  const isOpen = project.forChild === true && layout.fillers === undefined
  const openingOf = isOpen ? (counts: BlanketCounts) => 2 * tryout.trials.of(counts).opening() : undefined
  const { account, rule } = tryout.trials.ground
  const isCloseable = account.shape === 'straight' && rule.rule !== 'apart' && layout.fillers === undefined
  const inTheRound = layout.inTheRound ?? false
  const leavesOf: LeavesOf = (counts) => 2 * tryout.trials.of({ ...counts, inTheRound }).opening()
  const errors = findings.filter((entry) => entry.severity === 'error')
  return { layout, tryout, openingOf, leavesOf: isCloseable ? leavesOf : undefined, findings: errors }
}

/** Which of the arrangements are asked for. */
export interface Asked {
  /** How many, if those that are there in any case are not more. */
  readonly most?: number
  /** Whether the arrangement as it is now is among them, however near it comes. */
  readonly withPresent?: boolean
}

/** The arrangements nearest `wish` (mm), those that hold first. */
export function fitArrangements(
  project: Project,
  wish: Wish,
  planner: Planner,
  { most = OFFERED, withPresent = false }: Asked = {},
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  const ways = waysOf(project, wish, planner)
  if (!ways.layout) return { arrangements: [], findings: ways.findings }
  const { layout, tryout, leavesOf, findings } = ways
  const motif = tryout.trials.ground.account
  const sort = (fits: readonly FitArrangement[]) =>
    ranked(fits, { wish, outline: layout.outlineShape, motif, isTold: leavesOf !== undefined })
  const describe = (laid: Project) => fitOf(countsOf(laid)!, laid, countedOf(laid, planner), wish, leavesOf)
  const looks = looksWorth(tryout, settled(project).joining.rule, wish, layout)
  // What is cut out may be cut out larger or smaller, as long as nothing of it is made.
  const isRecut = layout.outlineShape !== undefined && !isBegun(project)
  const recut = ({ counts }: Candidate) =>
    outlinesToward(laidIn(project, counts), wish, planner, RECUT_EACH).map(describe)
  const candidates = looks.map(({ candidate }) => candidate)
  const started = isRecut
    ? [...candidates, ...besides(ways, wish, candidates)].map(recut)
    : candidates.map(({ counts }) => [describe(laidIn(project, counts))])
  const pool = poolOf(ways, (kind, rotation) => nearest(tryout, kind, rotation, wish), wish)
  const others = isRecut ? [] : pool.slice(0, most).map(({ counts }) => describe(laidIn(project, counts)))
  const found = differentOf(sort([...started.flat(), ...others]))
  const present = withPresent ? presentFit(project, wish, planner, leavesOf) : null
  const isThere = (fits: readonly FitArrangement[], fit: FitArrangement) =>
    fits.some((each) => isSameBlanket(each, fit))
  const sure = [...(present ? [present] : []), ...started.flatMap((fits) => fits.slice(0, 1))]
  const kept = found.filter((fit) => isThere(sure, fit))
  for (const fit of found) if (kept.length < most && !kept.includes(fit)) kept.push(fit)
  const shown = present ? [...kept.filter((fit) => !isSameBlanket(fit, present)), present] : kept
  return { arrangements: sort(shown), findings }
}

/**
 * What is cut out in other rotations than `known` ones, the best first: how near it comes hangs on them, too. The same
 * for every project of these motifs, however it is laid out now.
 */
export function besides(
  { layout, tryout, openingOf, leavesOf }: WaysThere,
  wish: Wish,
  known: readonly Candidate[],
): Candidate[] {
  const { outlineShape, inTheRound } = layout
  const neutral = { ...tryout, counts: { ...tryout.counts, ...UPRIGHT, alternateRows: 'oneFewer' as const } }
  const bare = { kind: 'blanket', outlineShape, inTheRound } as const
  const pool = poolOf({ layout: bare, tryout: neutral, openingOf, leavesOf }, (kind, rotation) =>
    nearest(tryout, kind, rotation, wish),
  )
  return oneOfEach(pool, known)
    .filter((candidate) => candidate.holds && !candidate.gapes)
    .slice(0, BESIDES)
}

/** A project in other counts, rotation and all; an outline lies in the middle of them, or over what is made. */
export const laidIn = (project: Project, counts: BlanketCounts): Project =>
  withOutlineTaken(project, {
    ...project,
    layout: { ...blanketOf(project)!, target: undefined, ...layoutOf(counts) },
  })

/** The arrangement as it is; null where nothing of it stands. */
function presentFit(
  project: Project,
  wish: Wish,
  planner: Planner,
  leavesOf: LeavesOf | undefined,
): FitArrangement | null {
  const counts = countsOf(project)
  const numbers = counts && countedOf(project, planner)
  return numbers && numbers.motifs.length > 0 ? fitOf(counts, project, numbers, wish, leavesOf) : null
}

/** Of each kind in each rotation the best, without those of `known`. */
function oneOfEach(candidates: readonly Candidate[], known: readonly Candidate[]): Candidate[] {
  const nameOf = ({ counts: { arrangement, alternateRows, turn, alternateTurn } }: Candidate) =>
    [arrangement, alternateRows, turn, alternateTurn].join()
  const seen = new Set(known.map(nameOf))
  return candidates.filter((candidate) => !seen.has(nameOf(candidate)) && seen.add(nameOf(candidate)))
}

/** The best of all candidates. */
export const bestOf = <Found extends Candidate>(
  ways: Compared,
  candidatesOf: (kind: Kind, rotation: Rotation) => readonly Found[],
): Found[] => poolOf(ways, candidatesOf).slice(0, OFFERED)

type Compared = Pick<WaysThere, 'layout' | 'tryout' | 'openingOf' | 'leavesOf'>

/** All candidates, the best first, those that close before open ones where both come near `wish`: of every kind of arrangement worth trying, in its own rotation and in firmer ones. */
function poolOf<Found extends Candidate>(
  { layout, tryout, openingOf, leavesOf }: Compared,
  candidatesOf: (kind: Kind, rotation: Rotation) => readonly Found[],
  wish?: Wish,
): Found[] {
  const { arrangement, inTheRound = false, outlineShape } = layout
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
  const best = unlike(candidates.sort(byHolding))
  const { overTips } = tryout.trials.ground.account
  const sorted = leavesOf
    ? closingOnesFirst(best, ({ counts, holds }) => ({
        holds,
        gapes: tryout.trials.of(counts).wide !== null,
        leaves: leavesOf(counts),
        isNear: wish !== undefined && isWithinHalf(errorOf(tryout.size(counts), wish), overTips),
      }))
    : best
  return openingOf
    ? closedForChild(sorted, (one) => ({ holds: one.holds, opening: openingOf(one.counts) }))
    : sorted
}

/** Shifted rows that end within the others come half a pitch nearer to a width; longer ones are for who has them. */
const unevenRows = (shifted: Kind['alternateRows']): Kind[] =>
  (shifted === 'oneMore' ? (['oneFewer', 'oneMore'] as const) : (['oneFewer'] as const)).map(
    (alternateRows) => ({
      arrangement: 'offset-rows',
      alternateRows,
    }),
  )

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

/** Without arrangements that came twice. */
function unlike<Found extends Candidate>(candidates: readonly Found[]): Found[] {
  const seen = new Map<string, Rotation[]>()
  return candidates.filter(({ counts }) => {
    const { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn } = counts
    const rowKind = arrangement === 'offset-rows' ? alternateRows : ''
    const key = [arrangement, columns, rows, rings, rowKind].join()
    const known = seen.get(key) ?? []
    if (known.some((each) => isSameTurn(each.turn, turn) && isSameTurn(each.alternateTurn, alternateTurn)))
      return false
    seen.set(key, [...known, { turn, alternateTurn }])
    return true
  })
}

/** "straight rows", "offset rows", "rings". */
export const layoutName = ({ arrangement = 'straight-rows' }: Pick<BlanketLayout, 'arrangement'>): string =>
  arrangement.replace('-', ' ')

/** What counts of a project; all of its plan where its numbers alone do not tell. */
export const countedOf = (project: Project, planner: Planner): PlanNumbers =>
  planner.numbers(project) ?? planner.plan(project)

/** What a blanket that is laid out in these counts comes to, against a wish. */
export function fitOf(
  counts: BlanketCounts,
  laid: Project,
  plan: PlanNumbers,
  wish: Wish,
  leavesOf: LeavesOf | undefined,
): FitArrangement {
  const leaves = leavesOf?.(counts) ?? 0
  const { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn } = counts
  const size = { width: plan.size.width, height: plan.size.height }
  const outline = blanketOf(laid)?.outlineShape
  return {
    ...{ arrangement, columns, rows, rings, alternateRows, turn, alternateTurn },
    ...(outline && { outline: outlineSize(outline), lengths: rowsStanding(laid) }),
    pieces: plan.pieces,
    single: plan.single,
    size,
    error: errorOf(size, wish),
    motifs: plan.counts.motifs,
    ...(plan.counts.joins !== undefined && { joins: plan.counts.joins }),
    ...(plan.counts.wide && { wide: plan.counts.wide }),
    ...(plan.counts.between && { between: plan.counts.between }),
    ...(plan.opening !== undefined && { opening: plan.opening }),
    ...(leaves > 0 && { leaves }),
    yarns: plan.yarns.map((need) => ({
      id: need.id,
      grams: need.grams.expected,
      ...(isAssumed(need, 'grams') ? { assumed: true as const } : {}),
    })),
  }
}

const errorOf = (size: Wish, wish: Wish): FitArrangement['error'] => ({
  width: size.width - wish.width,
  height: size.height - wish.height,
})

const outlineSize = ({ size, height }: OutlineShape): NonNullable<FitArrangement['outline']> => ({
  ...(size !== undefined && { size }),
  ...(height !== undefined && { height }),
})
