/**
 * Where to start: a few arrangements of one motif that look different from each other and hold, the best first,
 * each with the counts that come nearest to a target size and with a way of joining by which it holds.
 */
import type { Finding } from '../../shared-types/finding'
import type { FitArrangement, MotifAccount, Plan } from '../../shared-types/plan'
import type { JoinRule, Project } from '../../shared-types/project'
import { closedForChild } from '../joins/for-child'
import { holds } from '../joins/holding'
import { blanketOf } from '../plans/layouts'
import { outlineToward } from '../ways/outline'
import type { Planner } from '../plans/planner'
import { layoutOf } from './candidates'
import { closingOnesFirst } from './closing'
import type { Wish } from './candidates'
import type { BlanketCounts } from './blanket'
import { besides, fitOf, waysOf } from './fit'
import type { WaysThere } from './fit'
import { looksOf } from './looks'
import type { Look } from './looks'
import { closedFirst, ranked, toCloseOf } from './nearness'
import { countsOf } from './standing'
import type { Depth } from './trials'

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

/** Ways of joining that suit a shape, the usual first (common practice: straight sides are joined all along). */
const RULES_OF_SHAPE: Readonly<Record<MotifAccount['shape'], readonly JoinRule[]>> = {
  petals: ['tips', 'edges'],
  round: ['tips'],
  straight: ['edges'],
  leaf: ['edges', 'tips'],
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
    asked.map((rule) => looksUnder(withRule(project, rule), rule, wish, planner, depth))
  let byRule = within('usual')
  const anyHolds = () => byRule.some((looks) => looks.some(({ candidate }) => candidate.holds))
  if (!anyHolds()) byRule = within('fine')
  const failed = asked.filter((_, i) => !byRule[i]!.some(({ candidate }) => candidate.holds))
  const outline = blanketOf(project)?.outlineShape
  const chosen: Chosen[] = anyHolds() ? choose(byRule).slice(0, most) : (byRule[0] ?? []).slice(0, 1)
  const put = (one: Chosen) => propose(project, one, planner, wish)
  const planned = chosen.map(put)
  // A patch judges; the plan itself decides.
  const held = planned.filter(({ fit }) => holds(fit))
  const rule = held[0]?.rule
  // Of what is cut out the rotation tells how near it comes, too: the nearest of all are shown.
  if (outline && rule) {
    const others = othersUnder(withRule(project, rule), rule, wish, planner, chosen)
    held.push(...others.map(put).filter(({ fit }) => holds(fit)))
  }
  const proposals = held.length > 0 ? held : planned
  const motif = first.tryout.trials.ground.account
  // What is cut out misses a size by as much as its arrangement does, whichever is usual.
  const order = outline
    ? ranked(
        proposals.map(({ fit }) => fit),
        { wish, outline, motif, isTold: false },
      )
    : []
  const sorted = outline
    ? [...proposals].sort((a, b) => order.indexOf(a.fit) - order.indexOf(b.fit))
    : closingFirst(
        closedFirst(proposals, ({ fit }) => fit, wish),
        first,
      )
  const offered = project.forChild
    ? closedForChild(sorted, ({ fit, opening }) => ({ holds: holds(fit), opening }))
    : sorted
  return { proposals: offered.slice(0, most), failed, findings: first.findings }
}

/** Of motifs with straight sides those that close begin. */
const closingFirst = (
  proposals: readonly Proposal[],
  { leavesOf, tryout }: WaysThere,
): readonly Proposal[] => {
  const { overTips } = tryout.trials.ground.account
  return leavesOf
    ? closingOnesFirst(proposals, ({ fit, opening }) => toCloseOf(fit, overTips, opening))
    : proposals
}

/** What is proposed: counts in a rotation, under a way of joining. */
type Chosen = Pick<Look, 'candidate' | 'rule'>

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

const withRule = (project: Project, rule: JoinRule): Project => ({
  ...project,
  joining: { ...project.joining, rule },
})

/** What fits best besides, under one way of joining. */
function othersUnder(
  project: Project,
  rule: JoinRule,
  wish: Wish,
  planner: Planner,
  chosen: readonly Chosen[],
): Chosen[] {
  const ways = waysOf(project, wish, planner)
  if (!ways.layout) return []
  const known = chosen.filter((look) => look.rule === rule).map(({ candidate }) => candidate)
  return besides(ways, wish, known).map((candidate) => ({ candidate, rule }))
}

function looksUnder(project: Project, rule: JoinRule, wish: Wish, planner: Planner, depth: Depth): Look[] {
  const ways = waysOf(project, wish, planner)
  return ways.layout ? looksOf(ways.tryout, rule, wish, depth, ways.layout) : []
}

function propose(project: Project, { candidate, rule }: Chosen, planner: Planner, wish: Wish): Proposal {
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
    fit: fitOf(countsOf(laid) ?? counts, laid, plan, wish, undefined),
    rule,
    points: plan.joins.length,
    opening: (plan.fillers.length > 0 ? plan.opening : undefined) ?? 2 * (plan.holes[0]?.radius ?? 0),
    project: laid,
    plan,
    piece: blanketOf(project)?.outlineShape
      ? { project: laid, plan }
      : { project: few, plan: planner.plan(few) },
  }
}
