/**
 * The planner: project → plan. Each kind of layout has a module of its own in plans/ that tells its plan; what every
 * plan has, whatever its kind, is added here.
 */
import type { Finding } from '../shared-types/finding'
import type { CodePointRanges } from '../shared-types/fonts'
import type { FitArrangement, Plan } from '../shared-types/plan'
import type { JoinRule, Layout, Project } from '../shared-types/project'
import type { Settled, SettledLayout } from '../shared-types/settled'
import type { WishedSize } from '../shared-types/ways'
import { accountOf } from './accounts'
import { checkBounds } from './checks/bounds'
import { checkPhotos } from './checks/photos'
import { checkReferences } from './checks/references'
import { tooLarge } from './checks/too-large'
import { bySeverity, finding, toldTo } from './findings/finding'
import { fitArrangements } from './layout/fit'
import type { Asked } from './layout/fit'
import { fitHave } from './layout/fit-have'
import type { Have } from './layout/fit-have'
import { proposeArrangements } from './layout/proposals'
import type { Proposals } from './layout/proposals'
import { bestRotation } from './layout/rotation'
import { createLetterFindings } from './letters/findings'
import { withKit } from './materials/kit/kit'
import { isMissing } from './materials/no-more'
import { dyeLots } from './materials/yarn-findings'
import { memoised } from './memo'
import { APPLIQUE_PLANNER } from './plans/applique'
import { createBlanketPlanner } from './plans/blanket'
import { EMPTY } from './plans/empty'
import { GARLAND_PLANNER } from './plans/garland'
import type { KindPlanner } from './plans/kind'
import type { Planner } from './plans/planner'
import { settled } from './settled'
import { withFields } from './telling'
import { waysToSize } from './ways/ways'
import type { WaysToSize } from './ways/ways'

export { EMPTY } from './plans/empty'
export type { Planner } from './plans/planner'

/** A planner with a memory of its last project: make one for each window. */
export function createPlanner(): Planner {
  const kinds: Readonly<Record<Layout['kind'], KindPlanner>> = {
    blanket: createBlanketPlanner(),
    garland: GARLAND_PLANNER,
    applique: APPLIQUE_PLANNER,
  }
  const references = memoised((project: Project) => {
    const named = ask(settled(project), (kind, layout) => kind.names(layout)) ?? []
    return [...checkReferences(project, named), ...checkBounds(project), ...checkPhotos(project)]
  })
  const letters = createLetterFindings()
  /** By the settled project, too: each stage asks for itself. */
  const oversize = memoised(tooLarge, 4)
  /** Asks the module of a project's layout; null where there is no layout, or it has no answer to this. */
  const ask = <Answer>(
    project: Settled,
    question: (kind: KindPlanner, layout: SettledLayout, project: Settled) => Answer | null | undefined,
  ): Answer | null =>
    oversize(project).length === 0 && project.layout
      ? (question(kinds[project.layout.kind], project.layout, project) ?? null)
      : null

  const planLayout = (project: Settled): Plan =>
    ask(project, (kind, layout) => kind.plan(project, layout)) ?? {
      ...EMPTY,
      findings: [finding('layout/none', 'layout')],
    }
  const tryout: Planner['tryout'] = (project) =>
    ask(settled(project), (kind, layout, made) => kind.tryout?.(made, layout))

  return {
    tryout,
    size: (project) => ask(settled(project), (kind, layout, made) => kind.size?.(made, layout)),
    numbers: (project) => ask(settled(project), (kind, layout, made) => kind.numbers?.(made, layout)),
    stash: (project) => ask(settled(project), (kind, layout, made) => kind.stash?.(made, layout)) ?? [],
    rotation(project) {
      const ways = tryout(project)
      return ways && bestRotation(ways.trials, ways.counts)
    },
    plan(project, fonts = NO_FONTS) {
      const made = settled(project)
      const beyond = oversize(made)
      if (beyond.length > 0) return { ...EMPTY, settled: made, findings: beyond }
      const laid = planLayout(made)
      const putIn = ask(made, (kind, layout) => kind.putIn?.(made, layout, laid)) ?? undefined
      const plan = withKit(made.layout?.kit, made, laid, putIn)
      const found = [...references(project), ...made.refused, ...heardOnce(plan), ...letters(project, fonts)]
      const covered = fonts.length > 0 ? { covered: fonts } : {}
      return withFields(plan, covered, { settled: made, findings: toldTo(made, bySeverity(found)) })
    },
    unplaced(project, plan) {
      const made = settled(project)
      if (oversize(made).length > 0) return []
      const placed = new Set(ask(made, (kind, layout) => kind.placedMotifs(layout, plan)))
      for (const { motif } of plan.beside ?? []) placed.add(motif)
      const others = made.motifs.filter((motif) => !placed.has(motif.id))
      return others.flatMap((motif) => accountOf(made, motif).findings)
    },
  }
}

/**
 * A yarn that was weighed again is told of by its forecast, and one of which nothing is to be bought is not short: what
 * was counted before says otherwise.
 */
function heardOnce({ findings, progress, yarns, kit }: Plan): readonly Finding[] {
  const isSettled = (id: string | undefined): boolean =>
    progress.forecast.some(({ yarn }) => yarn === id) ||
    yarns.some((need) => need.id === id && need.toBuy === 0 && !isMissing(need))
  const heard = findings.filter(({ code, target }) => !STASH.has(code) || !isSettled(target?.yarn))
  // What is to be bought was counted anew where a yarn was weighed, or motifs were made before.
  const isLots = ({ code }: Finding) => code === 'yarn/dye-lot'
  return heard.some(isLots) || progress.forecast.length > 0 || kit
    ? [...heard.filter((each) => !isLots(each)), ...dyeLots(yarns, kit)]
    : heard
}
const STASH: ReadonlySet<string> = new Set(['yarn/stash-short', 'yarn/stash-tight'])

const NO_FONTS: readonly CodePointRanges[] = []

/** The plan of a project, once. */
export const planProject = (project: Project, fonts?: readonly CodePointRanges[]): Plan =>
  createPlanner().plan(project, fonts)

/** Every finding on a project: its references, all its motifs (placed or not) and its plan, errors first. */
export function checkProject(project: Project): Finding[] {
  const planner = createPlanner()
  const plan = planner.plan(project)
  return bySeverity([...plan.findings, ...planner.unplaced(project, plan)])
}

/** The arrangements nearest a wished size in mm, best first; findings say why there are none. */
export function fitProject(
  project: Project,
  target: { width: number; height: number },
  asked?: Asked,
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  return fitArrangements(project, target, createPlanner(), asked)
}

/** The best arrangements from what there is: so many motifs made already, or the yarn on hand. */
export const fitFromHave = (
  project: Project,
  have: Have,
): { arrangements: FitArrangement[]; findings: readonly Finding[] } => fitHave(project, have, createPlanner())

/** What to change so that a project comes out at a size in mm, the nearest first; a side may be left open. */
export const waysForProject = (project: Project, wish: WishedSize): WaysToSize =>
  waysToSize(project, wish, createPlanner())

/** A few arrangements of a project's motif that hold, nearest a size in mm, the best first. */
export const proposeProject = (
  project: Project,
  target: { width: number; height: number },
  rules?: readonly JoinRule[],
  most?: number,
): Proposals => proposeArrangements(project, target, createPlanner(), rules, most)
