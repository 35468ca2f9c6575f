/**
 * What makes a blanket hold that falls apart: another rotation; where none holds, another arrangement; where none of
 * those does, another way of joining. The first that holds, with what it gains in numbers of the whole.
 */
import type { Holds } from '../../shared-types/plan'
import type { BlanketLayout, Joining, Project } from '../../shared-types/project'
import { holds } from '../joins/holding'
import { blanketOf } from '../plans/layouts'
import type { Planner } from '../plans/planner'
import { layoutOf, missOf } from './candidates'
import { fitArrangements } from './fit'
import { bestRotation } from './rotation'

/** How a whole blanket holds. */
export interface State extends Holds {
  readonly points: number
  readonly width: number
  readonly height: number
}

export interface Remedy {
  readonly now: State
  /** Null where nothing was found. */
  readonly fix: Fix | null
}

export interface Fix {
  readonly by: 'rotation' | 'arrangement' | 'joining'
  /** What it puts over the project's own. */
  readonly layout: Partial<BlanketLayout>
  readonly joining: Partial<Joining>
  readonly then: State
}

/** Ways of joining that are tried where the present one holds nowhere, in this order. */
const OTHER_WAYS: readonly Joining[] = [
  { rule: 'edges', reach: undefined },
  { rule: 'bridge', bridgeChains: 3, reach: undefined },
]

/** Another arrangement is a remedy only where it comes this near to the size: |Δw|/W + |Δh|/H. */
const MOST_MISS = 0.25

/** The remedy for a blanket; null where nothing is laid, or motifs lie apart on purpose. */
export function remedyOf(project: Project, planner: Planner): Remedy | null {
  const layout = blanketOf(project)
  if (!layout || project.joining?.rule === 'apart') return null
  const now = stateOf(project, planner)
  if (!now) return null
  const fix = fixOf(project, layout, now, planner)
  return { now, fix }
}

function stateOf(project: Project, planner: Planner): State | null {
  const plan = planner.plan(project)
  if (plan.motifs.length === 0) return null
  const { pieces, single, joins, size } = plan
  return { pieces, single, points: joins.length, width: size.width, height: size.height }
}

function fixOf(project: Project, layout: BlanketLayout, now: State, planner: Planner): Fix | null {
  const turned = rotate(project, layout, planner)
  if (turned) return turned
  const wish = {
    width: layout.target?.width || now.width,
    height: layout.target?.height || now.height,
  }
  const [fit] = fitArrangements(project, wish, planner).arrangements
  if (fit && fit.motifs > 1 && holds(fit) && missOf(fit.size, wish) <= MOST_MISS)
    return tried(project, 'arrangement', layoutOf(fit), {}, planner)
  for (const way of OTHER_WAYS) {
    if (way.rule === project.joining?.rule) continue
    const joined = tried(project, 'joining', {}, way, planner)
    if (joined) return joined
    const other = { ...project, joining: { ...project.joining, ...way } }
    const both = rotate(other, layout, planner)
    if (both) return { ...both, by: 'joining', joining: way }
  }
  return null
}

/** The best rotation, where it holds. */
function rotate(project: Project, layout: BlanketLayout, planner: Planner): Fix | null {
  const tryout = planner.tryout(project)
  if (!tryout) return null
  const { best } = bestRotation(tryout.trials, tryout.counts)
  const { turn, alternateTurn } = best
  const rotation = layout.arrangement === 'rings' ? { turn } : { turn, alternateTurn }
  return tried(project, 'rotation', rotation, {}, planner)
}

/** A change, where the blanket holds with it: by its plan, not by a patch. */
function tried(
  project: Project,
  by: Fix['by'],
  layout: Partial<BlanketLayout>,
  joining: Partial<Joining>,
  planner: Planner,
): Fix | null {
  const then = stateOf(withFix(project, { layout, joining }), planner)
  return then && holds(then) ? { by, layout, joining, then } : null
}

/** The project with a fix. */
export function withFix(project: Project, { layout, joining }: Pick<Fix, 'layout' | 'joining'>): Project {
  const blanket = blanketOf(project)
  if (!blanket) return project
  const changed = { ...project, layout: { ...blanket, ...layout } }
  return Object.keys(joining).length > 0
    ? { ...changed, joining: { ...project.joining, ...joining } }
    : changed
}
