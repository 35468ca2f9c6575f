/**
 * The pipeline: project → plan. It reads as a table of contents; each stage is a pure function in its own room
 * and is not run again while what it reads stays the same (see memo.ts), so that a planner that lives as long
 * as a window answers a small change quickly.
 */
import type { Finding } from '../shared-types/finding'
import type { FitArrangement, MotifAccount, Plan, PlanNumbers } from '../shared-types/plan'
import type {
  BlanketLayout,
  Colourway,
  JoinRule,
  Layout,
  Motif,
  Project,
  Yarn,
} from '../shared-types/project'
import { accountFrom, accountOf, readBy } from './accounts'
import { checkReferences } from './checks/references'
import { assignColourways } from './colour/assign'
import { colourCells } from './colour/cells'
import { legibilityFindings } from './colour/legibility'
import { bySeverity, finding, toldTo } from './findings/finding'
import { joinReach, joinRule } from './joins/rule'
import { createAdditions, tally } from './layout/additions'
import { planApplique } from './layout/applique'
import { blanketCounts, blanketSize, blockingFactors, COUNT_FIELDS } from './layout/blanket'
import type { BlanketCounts, CountFields } from './layout/blanket'
import * as edges from './layout/edge'
import { fitArrangements } from './layout/fit'
import * as frames from './layout/frame'
import { planGarland } from './layout/garland'
import { proposeArrangements } from './layout/proposals'
import type { Proposals } from './layout/proposals'
import { bestRotation } from './layout/rotation'
import type { BestRotation } from './layout/rotation'
import * as stages from './layout/stages'
import { offTarget } from './layout/target'
import { trialsOf } from './layout/trials'
import type { Trials } from './layout/trials'
import { createLetterFindings } from './letters/findings'
import { edgingHeight } from './materials/edging'
import { withKit } from './materials/kit/kit'
import { materials } from './materials/materials'
import { memoised } from './memo'
import { resolveGauge } from './stitches/gauge'

export interface Planner {
  /** The plan of a project; it shows what can be shown, also when there are errors. */
  plan(project: Project): Plan
  /**
   * What the plan of a project comes to, well before all of it can be told; null where the plan is as quick. The
   * plan that is asked for next goes on from there.
   */
  numbers(project: Project): PlanNumbers | null
  /** Findings on motifs that the layout does not place: its plan leaves them out. */
  unplaced(project: Project, plan: Plan): readonly Finding[]
  /** The finished size alone, in mm; null while something is missing that it follows from. */
  size(project: Project): { width: number; height: number } | null
  /** The best rotation, beside the present one; null while something is missing. */
  rotation(project: Project): BestRotation | null
  /** Everything by which arrangements of the project's blanket are compared; null while something is missing. */
  tryout(project: Project): Tryout | null
}

/** By what arrangements of one blanket are compared without planning each. */
export interface Tryout {
  readonly trials: Trials
  /** The present counts. */
  readonly counts: BlanketCounts
  /** Finished size with other counts and rotations, in mm. */
  readonly size: (counts: BlanketCounts) => { width: number; height: number }
}

/** The plan of a project of which nothing can be said yet. */
export const EMPTY: Plan = {
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
  pieces: 0,
  single: 0,
  order: [],
  holes: [],
  fillers: [],
  fillerSteps: [],
  halves: [],
  edging: null,
  edgingLines: [],
  yarns: [],
  ends: 0,
  minutes: null,
  findings: [],
  motif: null,
  fillerMotif: null,
}

const NO_LINES: Plan['edgingLines'] = []

/** Empty lists that stay the same object, so that stages which read them are remembered. */
const NONE: readonly Colourway[] = []
const NO_YARNS: readonly Yarn[] = []
const NO_WAYS: readonly string[] = []

/** The yarns among some ids, which are set apart by blanks: the same list as long as they are. */
function yarnsAmong(yarns: readonly Yarn[], ids: string): readonly Yarn[] {
  const known = new Set(ids.split(' '))
  return yarns.filter(({ id }) => known.has(id))
}

/** How many lattices a planner remembers: straight and offset rows with and without the last change. */
const LATTICES = 6

/** A planner with a memory of its last project: make one for each window. */
export function createPlanner(): Planner {
  const references = memoised(checkReferences)
  const letters = createLetterFindings()
  const gaugeOf = memoised(resolveGauge)
  const ruleOf = memoised(joinRule)
  const counted = memoised((...fields: unknown[]) =>
    blanketCounts(Object.fromEntries(COUNT_FIELDS.map((name, i) => [name, fields[i]])) as CountFields),
  )
  // By its fields: a layout whose cells alone were painted keeps its counts, and all that follows from them.
  const countsOf = (layout: BlanketLayout) => counted(...COUNT_FIELDS.map((name) => layout[name]))
  const lattice = memoised(stages.lattice, LATTICES)
  const arrange = memoised(stages.arrange)
  const placed = memoised(stages.placedAccount, LATTICES)
  const join = memoised(stages.join)
  const open = memoised(stages.open)
  const hold = memoised(stages.hold)
  const cells = memoised(colourCells)
  const colours = memoised(assignColourways)
  const legibility = memoised(legibilityFindings)
  const used = memoised(yarnsAmong)
  const work = memoised(stages.work)
  const tellWork = memoised(stages.tellWork)
  const edgeInput = memoised(stages.edgeInput)
  const edgeLine = memoised(edges.edgeLine)
  const finishEdge = memoised(edges.finishEdge)
  const filler = memoised(accountFrom)
  const additions = createAdditions((motif, project) => filler(motif, ...readBy(project)))
  const finishSize = memoised(frames.finishSize)
  const finishMotifs = memoised(frames.finishMotifs)
  const finishJoins = memoised(frames.finishJoins)

  /** Everything that the size follows from; null where a part of it is missing. */
  function frame(project: Project, layout: BlanketLayout) {
    const findings: Finding[] = [...references(project)]
    const hand = project.hand ?? 'right'
    const motif = project.motifs?.find((entry) => entry.id === layout.motif)
    if (!layout.motif) findings.push(finding('layout/no-motif', 'layout.motif'))
    const told = motif ? accountOf(project, motif) : null
    const read = countsOf(layout)
    const blocking = blockingFactors(layout)
    const gauge = told?.gauge ?? gaugeOf(motif?.gauge ?? project.gauge, project.terms ?? 'US')
    const { rule, findings: ruleFindings } = ruleOf(project.joining, gauge)
    findings.push(...(told?.findings ?? []), ...read.findings, ...blocking.findings, ...ruleFindings)
    const measured = told?.account ?? null
    const counts = read.counts
    if (!motif || !measured || !counts) return { findings, measured, parts: null }
    const offset = counts.arrangement !== 'straight-rows'
    const grid = lattice(measured, offset, counts.turn, counts.alternateTurn, rule)
    const edging = edgingHeight(layout.edging?.rounds ?? [], project.terms ?? 'US', gauge)
    return {
      findings,
      measured,
      parts: { hand, motif, measured, gauge, rule, counts, offset, grid, edging, blocking },
    }
  }

  /** Everything of a blanket that counts; what is drawn and told of each motif comes in `planBlanket`. */
  const reckon = memoised((project: Project, layout: BlanketLayout) => {
    const { findings, measured: known, parts } = frame(project, layout)
    if (!parts) return { known, findings, laid: null }
    const { hand, motif, measured, gauge, rule, counts, offset, grid, edging, blocking } = parts
    const units = project.units ?? 'metric'
    const arranged = arrange(measured, grid, counts, rule)
    const laid = placed(measured, grid, hand)
    const joined = join(laid, gauge, rule, project.joining, arranged, counts)
    const ways = project.colourways ?? NONE
    const { fill, painted, kept } = layout.cells ?? {}
    const coloured = colours(
      cells(arranged.placements, offset),
      fill,
      painted,
      ways,
      kept,
      counts.arrangement,
    )
    const order = project.order ?? 'there-and-back'
    // Only an order by colourway hangs on the colours: painting leaves every other order as it is.
    const sorted = order === 'colourway'
    const wayOrder = sorted ? ways.map((way) => way.id).join(' ') : ''
    const wayOf = sorted ? coloured.colourways : NO_WAYS
    const shared = { project, layout, account: measured, rule, arranged, joined }
    const gaps = additions.lay({ ...shared, counts, open: () => open(arranged, joined, counts).openings })
    const worked = work(
      ...([arranged, joined, order, hand, wayOf, wayOrder, offset] as const),
      ...([gaps.halved, gaps.filling, gaps.filler] as const),
    )
    const { width, height } = blocking
    const size = finishSize(measured, arranged, edging, width, height)
    const tallied = { motifs: arranged.placements.length, byColourway: tally(coloured.colourways) }
    const added = additions.finish({
      ...{ ...shared, motif, gaps, worked, edging, blocking },
      colourways: coloured.colourways,
    })
    const holding = hold(arranged, joined, added.placed.fillers, gaps.halved)
    const style = layout.edging?.style
    const halves = added.placed.halves.length > 0
    const edge = edging > 0 ? edgeInput(measured, grid, counts, style, joined.reach, halves) : null
    const line = edge && edgeLine(edge)
    const needed = materials({
      project,
      motif,
      account: measured,
      gauge,
      counts: tallied,
      others: added.pieces,
      joinOperations: added.joinOperations,
      joinNodes: joined.nodes.length,
      fillerJoins: added.fillerJoins,
      seams: added.seams,
      edgingBase: line && {
        length: line.length,
        outerCorners: line.corners,
        tips: line.tips,
        chord: line.tips > 0 ? line.length / line.tips : 0,
      },
    })
    const inUse = used(project.yarns ?? NO_YARNS, needed.yarns.map(({ id }) => id).join(' '))
    findings.push(...legibility(inUse, ways))
    findings.push(...joined.findings, ...coloured.findings, ...worked.findings)
    findings.push(...added.findings, ...needed.findings)
    // What is to stand apart is not joined on purpose.
    if (rule.rule !== 'apart') findings.push(...holding.findings)
    findings.push(...offTarget(layout, size, units))
    const counted = {
      size,
      pieces: holding.pieces,
      single: holding.single,
      ...needed,
      ...added.placed,
      counts: {
        ...tallied,
        fillers: added.placed.fillers.length,
        halves: added.placed.halves.length,
        joins: joined.nodes.length + added.joinPoints,
      },
      pitch: {
        column: grid.column * width,
        row: ((grid.rows[0] + grid.rows[1]) / 2) * height,
        rows: [grid.rows[0] * height, grid.rows[1] * height] as const,
      },
      arrangement: counts.arrangement,
      motif: laid,
      findings: bySeverity(findings),
    }
    return {
      known,
      findings,
      laid: { counted, parts, arranged, account: laid, joined, coloured, gaps, worked, edge, line },
    }
  })

  function planBlanket(project: Project, layout: BlanketLayout): Plan {
    const { known, findings, laid } = reckon(project, layout)
    if (!laid) return { ...EMPTY, motif: known, findings: bySeverity(findings) }
    const { counted, parts, arranged, account, joined, coloured, gaps, worked, edge, line } = laid
    const { hand, rule, edging, blocking } = parts
    const { labels, firsts } = worked
    const { halved, filling, filler } = gaps
    const frame = [edging, blocking.width, blocking.height] as const
    return {
      ...counted,
      motifs: finishMotifs(arranged, labels, firsts, coloured.colourways, ...frame),
      joins: finishJoins(arranged, joined, labels, ...frame),
      order: tellWork(account, arranged, joined, rule, hand, worked, halved, filling, filler),
      fillerSteps: additions.tell(gaps, arranged, rule, labels, hand),
      holes: open(arranged, joined, parts.counts).holes,
      edgingLines: edge && line ? finishEdge(edge, arranged, line, ...frame) : NO_LINES,
    }
  }

  function tryout(project: Project): Tryout | null {
    const { layout } = project
    const parts = layout?.kind === 'blanket' ? frame(project, layout).parts : null
    if (!parts) return null
    const { measured: account, rule, hand, gauge } = parts
    const { reach } = joinReach(project.joining, rule, account, gauge)
    const trials = trialsOf({ account, rule, reach, hand })
    const size = (counts: BlanketCounts) =>
      frames.finished(blanketSize(trials.lattice(counts), counts), parts)
    return { trials, counts: parts.counts, size }
  }

  return {
    size(project) {
      const { layout } = project
      const parts = layout?.kind === 'blanket' ? frame(project, layout).parts : null
      return parts && frames.finished(blanketSize(parts.grid, parts.counts), parts)
    },
    rotation(project) {
      const ways = tryout(project)
      return ways && bestRotation(ways.trials, ways.counts)
    },
    tryout,
    numbers(project) {
      const { layout } = project
      // The account of a kit reads the whole plan.
      if (layout?.kind !== 'blanket' || layout.kit) return null
      const { laid } = reckon(project, layout)
      if (!laid) return null
      const { size, counts, pieces, single, yarns, ends, minutes } = laid.counted
      return {
        ...{ size, counts, pieces, single, yarns, ends, minutes },
        motifs: { length: laid.arranged.placements.length },
      }
    },
    plan(project) {
      const plan = withKit(project, planLayout(project))
      const missing = letters(project)
      const findings = missing.length > 0 ? bySeverity([...plan.findings, ...missing]) : plan.findings
      return { ...plan, findings: toldTo(project, findings) }
    },
    unplaced(project, plan) {
      const placed = placedMotifs(project.layout, plan)
      const others = (project.motifs ?? []).filter((motif) => !placed.has(motif.id))
      return others.flatMap((motif) => accountOf(project, motif).findings)
    },
  }

  function planLayout(project: Project): Plan {
    const { layout } = project
    if (!layout)
      return { ...EMPTY, findings: bySeverity([...references(project), finding('layout/none', 'layout')]) }
    if (layout.kind === 'blanket') return planBlanket(project, layout)
    const stages = {
      empty: EMPTY,
      references: references(project),
      accountOf: (motif: Motif) => accountOf(project, motif),
    }
    return layout.kind === 'applique'
      ? planApplique(project, layout, stages)
      : planGarland(project, layout, stages)
  }
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

/** Ids of the motifs that a layout places, whose findings stand in its plan. */
function placedMotifs(layout: Layout | undefined, plan: Plan): ReadonlySet<string | undefined> {
  if (!layout) return new Set()
  // Fillers are looked at once the motifs lie.
  if (layout.kind === 'blanket')
    return new Set([layout.motif, plan.motifs.length > 0 ? layout.fillers?.motif : undefined])
  return new Set(layout.items?.map((item) => item.motif))
}

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
): { arrangements: FitArrangement[]; findings: readonly Finding[] } {
  return fitArrangements(project, target, createPlanner())
}

/** A few arrangements of a project's motif that hold, nearest a size in mm, the best first. */
export const proposeProject = (
  project: Project,
  target: { width: number; height: number },
  rules?: readonly JoinRule[],
  most?: number,
): Proposals => proposeArrangements(project, target, createPlanner(), rules, most)
