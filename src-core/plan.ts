/**
 * The pipeline: project → plan. It reads as a table of contents; each stage is a pure function in its own room
 * and is not run again while what it reads stays the same (see memo.ts), so that a planner that lives as long
 * as a window answers a small change quickly.
 */
import type { Finding } from '../shared-types/finding'
import type { FitArrangement, MotifAccount, Plan } from '../shared-types/plan'
import type { BlanketLayout, Motif, Project } from '../shared-types/project'
import { checkReferences } from './checks/references'
import { givenColourways } from './colour/given'
import { bySeverity, finding } from './findings/finding'
import { joinRule } from './joins/rule'
import { blanketCounts, blockingFactors } from './layout/blanket'
import { fitArrangements } from './layout/fit'
import * as stages from './layout/stages'
import { memoised } from './memo'
import { motifAccount } from './motif/account'
import { blockingGrowth } from './motif/growth'
import { resolveGauge } from './stitches/gauge'
import { formatSize } from './units/format'

export interface Planner {
  /** The plan of a project; it shows what can be shown, also when there are errors. */
  plan(project: Project): Plan
}

const EMPTY: Plan = {
  size: {
    width: 0,
    height: 0,
    sensitivity: { step: 0, width: 0, height: 0 },
    range: { low: { width: 0, height: 0 }, high: { width: 0, height: 0 } },
  },
  counts: { motifs: 0, byColourway: {} },
  pitch: { column: 0, row: 0, rows: [0, 0] },
  arrangement: null,
  motifs: [],
  joins: [],
  order: [],
  holes: [],
  edging: null,
  yarns: [],
  ends: 0,
  minutes: null,
  findings: [],
  motif: null,
}

/** Account of one motif of a project, with its findings. */
function accountOf(project: Project, motif: Motif) {
  const growth = blockingGrowth(motif, project.colourways ?? [], project.yarns ?? [])
  return motifAccount(motif, { hand: project.hand ?? 'right', growth })
}

/** A planner with a memory of its last project: make one for each window. */
export function createPlanner(): Planner {
  const references = memoised(checkReferences)
  const gaugeOf = memoised(resolveGauge)
  const ruleOf = memoised(joinRule)
  const countsOf = memoised(blanketCounts)
  const account = memoised(motifAccount_)
  const lattice = memoised(stages.lattice)
  const arrange = memoised(stages.arrange)
  const join = memoised(stages.join)
  const colours = memoised(givenColourways)
  const work = memoised(stages.work)
  const edge = memoised(stages.edge)
  const finish = memoised(stages.finish)

  function planBlanket(project: Project, layout: BlanketLayout): Plan {
    const findings: Finding[] = [...references(project)]
    const hand = project.hand ?? 'right'
    const units = project.units ?? 'metric'
    const motif = project.motifs?.find((entry) => entry.id === layout.motif)
    if (!layout.motif) findings.push(finding('layout/no-motif', 'layout.motif'))
    const told = motif ? account(motif, project.colourways, project.yarns, hand) : null
    const read = countsOf(layout)
    const blocking = blockingFactors(layout)
    const gauge = gaugeOf(motif?.gauge ?? project.gauge, project.terms ?? 'US')
    const { rule, findings: ruleFindings } = ruleOf(project.joining, gauge)
    findings.push(...(told?.findings ?? []), ...read.findings, ...blocking.findings, ...ruleFindings)
    const measured = told?.account ?? null
    if (!motif || !measured || !read.counts)
      return { ...EMPTY, motif: measured, findings: bySeverity(findings) }

    const counts = read.counts
    const offset = counts.arrangement !== 'straight-rows'
    const grid = lattice(measured, offset, counts.turn, counts.alternateTurn, rule)
    const arranged = arrange(measured, grid, counts, rule)
    const joined = join(
      measured,
      gauge,
      rule,
      project.joining,
      arranged,
      counts,
      hand,
      units,
      project.forChild ?? false,
    )
    const coloured = colours(arranged.placements, layout.cells)
    const worked = work(
      measured,
      arranged,
      joined,
      project.order ?? 'there-and-back',
      hand,
      coloured.colourways,
      (project.colourways ?? []).map((way) => way.id).join(' '),
      offset,
    )
    const finished = finish(
      measured,
      arranged,
      joined,
      worked.labels,
      coloured.colourways,
      0,
      blocking.width,
      blocking.height,
    )
    findings.push(...joined.findings, ...coloured.findings, ...worked.findings)
    void edge
    findings.push(...offTarget(layout, finished.size, units))
    return {
      ...EMPTY,
      ...finished,
      counts: { motifs: finished.motifs.length, byColourway: tally(coloured.colourways) },
      pitch: {
        column: grid.column * blocking.width,
        row: ((grid.rows[0] + grid.rows[1]) / 2) * blocking.height,
        rows: [grid.rows[0] * blocking.height, grid.rows[1] * blocking.height],
      },
      arrangement: counts.arrangement,
      order: worked.steps,
      holes: joined.holes,
      motif: measured,
      findings: bySeverity(findings),
    }
  }

  return {
    plan(project) {
      const { layout } = project
      if (!layout)
        return { ...EMPTY, findings: bySeverity([...references(project), finding('layout/none', 'layout')]) }
      if (layout.kind === 'blanket') return planBlanket(project, layout)
      const kind = layout.kind === 'garland' ? 'garland' : 'composition'
      return {
        ...EMPTY,
        findings: bySeverity([...references(project), finding('layout/other-kind', 'layout.kind', { kind })]),
      }
    },
  }
}

/** The account of a motif from just the fields that it reads. */
function motifAccount_(
  motif: Motif,
  colourways: Project['colourways'],
  yarns: Project['yarns'],
  hand: 'left' | 'right',
) {
  return motifAccount(motif, { hand, growth: blockingGrowth(motif, colourways ?? [], yarns ?? []) })
}

/** How often each colourway occurs. */
function tally(colourways: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {}
  for (const id of colourways) if (id) counts[id] = (counts[id] ?? 0) + 1
  return counts
}

/** Share of the wish beyond which a size is worth a note. */
const OFF_TARGET = 0.02

function offTarget(layout: BlanketLayout, size: Plan['size'], units: 'metric' | 'imperial'): Finding[] {
  const { width, height } = layout.target ?? {}
  if (!width || !height) return []
  if (!(width > 0 && height > 0))
    return [finding('layout/target', 'layout.target', { received: formatSize(width, height, units) })]
  const off = Math.max(Math.abs(size.width / width - 1), Math.abs(size.height / height - 1))
  if (off <= OFF_TARGET) return []
  const values = { size: formatSize(size.width, size.height, units), wish: formatSize(width, height, units) }
  return [finding('layout/off-target', 'layout.target', values)]
}

/** The plan of a project, once. */
export const planProject = (project: Project): Plan => createPlanner().plan(project)

/** The accounts of all motifs of a project, in its order; one without an outline is left out with findings. */
export function measureProject(project: Project): { motifs: MotifAccount[]; findings: Finding[] } {
  const motifs: MotifAccount[] = []
  const findings: Finding[] = []
  for (const motif of project.motifs ?? []) {
    const told = accountOf(project, motif)
    if (told.account) motifs.push(told.account)
    findings.push(...told.findings)
  }
  return { motifs, findings: bySeverity(findings) }
}

/** Every finding on a project: its references, all its motifs (placed or not) and its plan, errors first. */
export function checkProject(project: Project): Finding[] {
  const { findings } = planProject(project)
  const placed = project.layout?.kind === 'blanket' ? project.layout.motif : undefined
  const others = (project.motifs ?? []).filter((motif) => motif.id !== placed)
  return bySeverity([...findings, ...others.flatMap((motif) => accountOf(project, motif).findings)])
}

/** The arrangements nearest a wished size in mm, best first; findings say why there are none. */
export function fitProject(
  project: Project,
  target: { width: number; height: number },
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  return fitArrangements(project, target, createPlanner())
}
