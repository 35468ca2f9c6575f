/**
 * Where to start: a few arrangements of one motif that look different from each other and hold, the best first,
 * each with the counts that come nearest to a target size and with a way of joining by which it holds.
 */
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, MotifAccount, Plan } from '../../shared-types/plan'
import type { JoinRule, Project } from '../../shared-types/project'
import { gapesMostly } from '../joins/checks'
import { holds } from '../joins/holding'
import { blanketOf } from '../plans/layouts'
import { outlineToward } from '../ways/outline'
import type { Planner } from '../plans/planner'
import type { Tryout } from './trials'
import { byHolding, fitOf, layoutOf, missOf, nearest, waysOf } from './fit'
import type { Candidate, Wish } from './fit'
import type { BlanketCounts } from './blanket'
import { periodOf } from './trials'
import type { Depth, Kind, Trial } from './trials'

export interface Proposal {
  readonly fit: FitArrangement
  readonly rule: JoinRule
  /** Join points. */
  readonly points: number
  /** Diameter of the largest opening between motifs in mm; 0 where they close. */
  readonly opening: number
  /** The project in this arrangement, and all that follows from it. */
  readonly project: Project
  readonly plan: Plan
  /** What is in the picture: a few motifs of it, or the whole of what is cut out. */
  readonly piece: { readonly project: Project; readonly plan: Plan }
}

export interface Proposals {
  /** The best first; where none holds, those that come nearest to it. */
  readonly proposals: readonly Proposal[]
  /** The ways of joining under which none of the rotations tried holds. */
  readonly failed: readonly JoinRule[]
  readonly findings: readonly Finding[]
}

/** How many are offered, and how many where there are enough. */
const OFFERED = 4
const LEAST_OFFERED = 3

/** The piece in the picture. */
const PIECE = { columns: 6, rows: 5, rings: 2 } as const

/**
 * Of two arrangements that hold, the one that is usual for the shape goes first, unless the other has this many
 * times its joins, of those that close by themselves.
 */
const USUAL_WEIGHT = 1.15

/** Rings come as near to a size as they may and still be worth a picture: |Δw|/W + |Δh|/H. */
const RINGS_MISS = 0.35

/** Ways of joining that suit a shape, the usual first (common practice: straight sides are joined all along). */
const RULES_OF_SHAPE: Readonly<Record<MotifAccount['shape'], readonly JoinRule[]>> = {
  petals: ['tips', 'edges'],
  round: ['tips'],
  straight: ['edges'],
  leaf: ['edges', 'tips'],
}

/** Motifs with four or eight sides or petals lie side by side; everything else nestles in offset rows. */
const isSquarish = ({ shape, petals }: MotifAccount): boolean =>
  (shape === 'straight' || shape === 'petals') && (petals === 4 || petals === 8)

/** Whether rings close evenly: every neighbour in the six directions sees the same of the motif. */
const isSixfold = ({ shape, petals }: MotifAccount): boolean =>
  shape === 'round' || ((shape === 'straight' || shape === 'petals') && petals % 6 === 0)

/** One arrangement in one rotation, with the counts that come nearest. */
interface Look {
  readonly kind: Kind
  readonly rule: JoinRule
  readonly trial: Trial
  readonly candidate: Candidate
  readonly weight: number
}

/**
 * Three or four arrangements of the project's motif that hold, nearest `wish` (mm), or the first `most` of them.
 * `rules` are tried in turn until one holds; left out, those that suit the shape.
 */
export function proposeArrangements(
  project: Project,
  wish: Wish,
  planner: Planner,
  rules?: readonly JoinRule[],
  most = OFFERED,
): Proposals {
  const first = waysOf(project, wish, planner)
  if (!first.layout) return { proposals: [], failed: [], findings: first.findings }
  const asked = rules ?? RULES_OF_SHAPE[first.tryout.trials.ground.account.shape]
  const within = (depth: Depth) =>
    asked.map((rule) =>
      looksUnder({ ...project, joining: { ...project.joining, rule } }, rule, wish, planner, depth),
    )
  let byRule = within('usual')
  const anyHolds = () => byRule.some((looks) => looks.some(({ candidate }) => candidate.holds))
  if (!anyHolds()) byRule = within('fine')
  const failed = asked.filter((_, i) => !byRule[i]!.some(({ candidate }) => candidate.holds))
  const chosen = anyHolds() ? choose(byRule).slice(0, most) : (byRule[0] ?? []).slice(0, 1)
  const proposals = chosen.map((look) => propose(project, look, planner, wish))
  // What is cut out misses a size by as much as its arrangement does, whichever is usual.
  if (blanketOf(project)?.outlineShape)
    proposals.sort(
      (a, b) =>
        Number(isNear(b, wish)) - Number(isNear(a, wish)) ||
        crookedSteps(a) - crookedSteps(b) ||
        missOf(a.fit.size, wish) - missOf(b.fit.size, wish),
    )
  // A patch judges; the plan itself decides.
  const held = proposals.filter(({ fit }) => holds(fit))
  return { proposals: held.length > 0 ? held : proposals, failed, findings: first.findings }
}

/** Whether a size is met to half a motif: an even edge is worth no more than that. */
const isNear = ({ fit, plan }: Proposal, wish: Wish): boolean => {
  const half = (plan.motif?.overTips ?? 0) / 2
  return Math.abs(fit.size.width - wish.width) <= half && Math.abs(fit.size.height - wish.height) <= half
}

/** How many motifs the rows of a plan have, from the top. */
export function rowLengths({ motifs }: Pick<Plan, 'motifs'>): readonly number[] {
  const rows = new Map<number, number>()
  for (const { row } of motifs) rows.set(row, (rows.get(row) ?? 0) + 1)
  return [...rows].sort(([a], [b]) => a - b).map(([, count]) => count)
}

/**
 * Of a triangle the steps from row to row that are others than most: 0 where its edges run evenly, 1 where they do not.
 * The row at the point may be a motif longer or shorter.
 */
export function crookedSteps({ project, plan }: Pick<Proposal, 'project' | 'plan'>): 0 | 1 {
  const outline = blanketOf(project)?.outlineShape
  if (outline?.kind !== 'triangle') return 0
  const lengths = rowLengths(plan)
  const steps = lengths.slice(1).map((count, i) => Math.abs(count - lengths[i]!))
  const inner = outline.points === 'up' ? steps.slice(1) : steps.slice(0, -1)
  return new Set(inner).size > 1 ? 1 : 0
}

/** Those that hold, under the first way of joining; others only where they add an arrangement that it lacks. */
function choose(byRule: readonly (readonly Look[])[]): Look[] {
  const [first = [], ...others] = byRule.map((looks) => looks.filter(({ candidate }) => candidate.holds))
  const chosen = first.slice(0, OFFERED)
  for (const look of others.flat()) {
    const isThere = chosen.some(({ kind }) => kind.arrangement === look.kind.arrangement)
    if (chosen.length < OFFERED && (!isThere || chosen.length < LEAST_OFFERED)) chosen.push(look)
  }
  return chosen
}

function looksUnder(project: Project, rule: JoinRule, wish: Wish, planner: Planner, depth: Depth): Look[] {
  const ways = waysOf(project, wish, planner)
  const { layout } = ways
  if (!layout) return []
  const { inTheRound = false, outlineShape } = layout
  return looksOf(ways.tryout, rule, wish, depth, { inTheRound, isCutOut: outlineShape !== undefined })
}

/** Share of the wished size, both sides added, by which other rows must come nearer to be proposed (our own choice). */
const CLEARLY_NEARER = 0.02

/** The looks of one motif, the best first. */
function looksOf(
  tryout: Tryout,
  rule: JoinRule,
  wish: Wish,
  depth: Depth,
  { inTheRound, isCutOut }: { readonly inTheRound: boolean; readonly isCutOut: boolean },
): Look[] {
  const { account } = tryout.trials.ground
  const straight: Kind = { arrangement: 'straight-rows', alternateRows: 'same', inTheRound }
  // Rows that all have the same number lie half a place aside: what is cut out of them is not alike left and right.
  const offset: Kind = {
    ...{ arrangement: 'offset-rows', inTheRound },
    alternateRows: isCutOut ? 'oneFewer' : 'same',
  }
  const uneven: Kind = { arrangement: 'offset-rows', alternateRows: 'oneFewer' }
  const usual = isSquarish(account) ? straight : offset
  const look = (kind: Kind, trial: Trial): Look => {
    const candidate = nearest(tryout, kind, trial, wish).reduce((best, each) =>
      byHolding(each, best) < 0 ? each : best,
    )
    return { kind, rule, trial, candidate, weight: trial.closing * (kind === usual ? USUAL_WEIGHT : 1) }
  }
  const firsts: Look[] = []
  const seconds: Look[] = []
  for (const kind of [straight, offset]) {
    const [best, ...others] = closingFirst(tryout.trials.rotations(kind, depth))
    if (!best) continue
    firsts.push(
      kind === offset && !inTheRound ? nearerOf(look(kind, best), look(uneven, best)) : look(kind, best),
    )
    const other = others.find(
      (trial) => holds(trial) && isPlain(trial, account) && isUnlike(trial, best, account),
    )
    if (other) seconds.push(look(kind, other))
  }
  // Rows that end evenly hold where none that end unevenly do; joined in the round, none end.
  if (!inTheRound && !firsts.some(({ candidate }) => candidate.holds)) {
    const [best] = tryout.trials.rotations(uneven, depth)
    if (best) firsts.push(look(uneven, best))
  }
  const rings: Kind = { arrangement: 'rings', alternateRows: 'same' }
  const anyHolds = firsts.some(({ candidate }) => candidate.holds)
  if (!inTheRound && (isSixfold(account) || !anyHolds)) {
    const [best] = tryout.trials.rotations(rings, depth)
    const round = best && look(rings, best)
    if (round && (round.candidate.miss <= RINGS_MISS || !anyHolds)) seconds.unshift(round)
  }
  const better = (a: Look, b: Look) =>
    Number(b.candidate.holds) - Number(a.candidate.holds) ||
    a.trial.pieces - b.trial.pieces ||
    a.trial.single - b.trial.single ||
    Number(a.candidate.gapes) - Number(b.candidate.gapes) ||
    b.weight - a.weight
  // The usual one of squares goes first whatever the count of joins: that is how squares are laid.
  const sorted = firsts.sort(better)
  const isSquare = account.shape === 'straight' && isSquarish(account)
  const leading = isSquare
    ? sorted.findIndex(({ kind, candidate }) => kind === usual && candidate.holds && !candidate.gapes)
    : -1
  if (leading > 0) sorted.unshift(...sorted.splice(leading, 1))
  return [...sorted, ...seconds].sort(
    (a, b) =>
      Number(b.candidate.holds) - Number(a.candidate.holds) ||
      Number(a.candidate.gapes) - Number(b.candidate.gapes),
  )
}

/** Of rotations that hold, one that closes at most of its join points goes before those that do not. */
function closingFirst(trials: readonly Trial[]): readonly Trial[] {
  if (!gapesMostly(trials[0]?.wide)) return trials
  const better = trials.find((trial) => holds(trial) && !gapesMostly(trial.wide))
  return better ? [better, ...trials.filter((trial) => trial !== better)] : trials
}

/** Rows that are shifted end evenly, unless shorter ones hold as well and come clearly nearer to the size. */
const nearerOf = (even: Look, uneven: Look): Look =>
  uneven.candidate.holds && uneven.candidate.miss + CLEARLY_NEARER < even.candidate.miss ? uneven : even

/** Straight up or between two petals, every row alike or by half a petal: what an eye tells apart. */
function isPlain({ turn, alternateTurn }: Trial, account: MotifAccount): boolean {
  const half = periodOf(account) / 2
  const isOf = (degrees: number) =>
    Math.abs(degrees % half) < 1e-6 || Math.abs((degrees % half) - half) < 1e-6
  return isOf(turn) && isOf(alternateTurn)
}

/** Two rotations look alike where their rows are the same two, whichever comes first. */
function isUnlike(a: Trial, b: Trial, account: MotifAccount): boolean {
  const period = account.shape === 'leaf' ? 180 : periodOf(account)
  const rows = ({ turn, alternateTurn }: Trial) =>
    [turn, turn + alternateTurn]
      .map((degrees) => Math.round((degrees % period) * 1000))
      .sort((one, other) => one - other)
      .join()
  return rows(a) !== rows(b)
}

function propose(project: Project, { candidate, rule }: Look, planner: Planner, wish: Wish): Proposal {
  const { counts } = candidate
  const layout = blanketOf(project) ?? { motif: project.motifs?.[0]?.id }
  const laidWith = (many: BlanketCounts): Project => ({
    ...project,
    layout: {
      ...layout,
      kind: 'blanket',
      target: { width: wish.width, height: wish.height },
      ...layoutOf(many),
    },
    joining: { ...project.joining, rule },
  })
  // What is cut out comes as near to the size as whole motifs do.
  const laid = outlineToward(laidWith(counts), wish, planner)
  const plan = planner.plan(laid)
  // What is cut out shows its shape; else a few motifs, in which an eye can see how they meet.
  const few = laidWith({
    ...counts,
    columns: Math.min(counts.columns, PIECE.columns),
    rows: Math.min(counts.rows, PIECE.rows),
    rings: Math.min(counts.rings, PIECE.rings),
  })
  return {
    fit: fitOf(counts, plan, wish),
    rule,
    points: plan.joins.length,
    opening: 2 * (plan.holes[0]?.radius ?? 0),
    project: laid,
    plan,
    piece: blanketOf(project)?.outlineShape
      ? { project: laid, plan }
      : { project: few, plan: planner.plan(few) },
  }
}
