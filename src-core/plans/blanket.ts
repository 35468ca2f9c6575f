/**
 * A blanket: one motif on a lattice, joined, coloured and edged. Each stage is a pure function in its own room and
 * is not run again while what it reads stays the same (see memo.ts), so that a planner that lives as long as a
 * window answers a small change quickly.
 */
import type { Finding } from '../../shared-types/finding'
import type { BlanketPlan, YarnForMotifs } from '../../shared-types/plan'
import type { Yarn } from '../../shared-types/project'
import type { Settled, SettledBlanket } from '../../shared-types/settled'
import { accountFrom, accountOf, readBy } from '../accounts'
import type { Reference } from '../checks/references'
import { assignColourways } from '../colour/assign'
import { colourCells } from '../colour/cells'
import { legibilityFindings } from '../colour/legibility'
import { bySeverity, finding } from '../findings/finding'
import { joinReach, joinRule } from '../joins/rule'
import { createAdditions, tally } from '../layout/additions'
import { blanketCounts, blanketSize, blockingFactors, COUNT_FIELDS } from '../layout/blanket'
import type { BlanketCounts, CountFields } from '../layout/blanket'
import * as edges from '../layout/edge'
import * as frames from '../layout/frame'
import * as stages from '../layout/stages'
import { offTarget } from '../layout/target'
import { trialsOf } from '../layout/trials'
import { edgingHeight } from '../materials/edging'
import type { MaterialsInput } from '../materials/input'
import { materials } from '../materials/materials'
import { withinYarns } from '../materials/stash'
import { memoised } from '../memo'
import { heldColours } from '../progress/held'
import { blanketWork } from '../progress/blanket-work'
import { isBegun, notBegun, tellProgress } from '../progress/progress'
import { settled } from '../settled'
import { resolveGauge } from '../stitches/gauge'
import { EMPTY } from './empty'
import type { KindPlanner } from './kind'

const NO_ACCOUNTS: BlanketPlan['accounts'] = []
const NO_LINES: BlanketPlan['edgingLines'] = []

/** Stays the same object, so that stages which read it are remembered. */
const NO_WAYS: readonly string[] = []

/** A colourway that the cells name. */
const inCells = (id: string, where: string): Reference => ['colourway', id, `layout.cells.${where}`]

/** The yarns among some ids, which are set apart by blanks: the same list as long as they are. */
function yarnsAmong(yarns: readonly Yarn[], ids: string): readonly Yarn[] {
  const known = new Set(ids.split(' '))
  return yarns.filter(({ id }) => known.has(id))
}

/** How many lattices a planner remembers: straight and offset rows with and without the last change. */
const LATTICES = 6

/** Plans blankets, with a memory of the last one. */
export function createBlanketPlanner(): KindPlanner<SettledBlanket> {
  const gaugeOf = memoised(resolveGauge)
  const ruleOf = memoised(joinRule)
  const counted = memoised((...fields: unknown[]) =>
    blanketCounts(Object.fromEntries(COUNT_FIELDS.map((name, i) => [name, fields[i]])) as CountFields),
  )
  // By its fields: a layout whose cells alone were painted keeps its counts, and all that follows from them.
  const countsOf = (layout: SettledBlanket) => counted(...COUNT_FIELDS.map((name) => layout[name]))
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
  function frame(project: Settled, layout: SettledBlanket) {
    const findings: Finding[] = []
    const hand = project.hand
    const motif = project.motifs.find((entry) => entry.id === layout.motif)
    if (!layout.motif) findings.push(finding('layout/no-motif', 'layout.motif'))
    const told = motif ? accountOf(project, motif) : null
    const read = countsOf(layout)
    const blocking = blockingFactors(layout)
    const gauge = told?.gauge ?? gaugeOf((motif ?? project).gauge, project.terms)
    const { rule, findings: ruleFindings } = ruleOf(project.joining, gauge)
    findings.push(...(told?.findings ?? []), ...read.findings, ...blocking.findings, ...ruleFindings)
    const measured = told?.account ?? null
    const counts = read.counts
    if (!motif || !measured || !counts) return { findings, measured, parts: null }
    const offset = counts.arrangement !== 'straight-rows'
    const grid = lattice(measured, offset, counts.turn, counts.alternateTurn, rule)
    const edging = edgingHeight(layout.edging?.rounds ?? [], project.terms, gauge)
    return {
      findings,
      measured,
      parts: { hand, motif, measured, gauge, rule, counts, offset, grid, edging, blocking },
    }
  }

  /** Everything of a blanket that counts; what is drawn and told of each motif comes in `planBlanket`. */
  const reckon = memoised((project: Settled, layout: SettledBlanket) => {
    const { findings, measured: known, parts } = frame(project, layout)
    if (!parts) return { known, findings, laid: null }
    const { hand, motif, measured, gauge, rule, counts, offset, grid, edging, blocking } = parts
    const units = project.units
    const arranged = arrange(measured, grid, counts, rule)
    const laid = placed(measured, grid, hand)
    const joined = join(laid, gauge, rule, project.joining, arranged, counts)
    const ways = project.colourways
    const { fill, painted, kept, held } = layout.cells
    const fast = heldColours(held, project.made)
    const order = project.order
    // Only an order by colourway hangs on the colours: painting leaves every other order as it is.
    const sorted = order === 'colourway'
    const wayOrder = sorted ? ways.map((way) => way.id).join(' ') : ''
    const shared = { project, layout, account: measured, rule, arranged, joined }
    const gaps = additions.lay({ ...shared, counts, open: () => open(arranged, joined, counts).openings })
    const { width, height } = blocking
    const size = finishSize(measured, arranged, edging, width, height)
    const beside = cells(arranged.placements, offset)
    /** Everything that follows from the colours, down to the yarn. */
    const colour = (stash: readonly YarnForMotifs[]) => {
      const coloured = colours(beside, fill, painted, ways, kept, counts.arrangement, stash, fast)
      const wayOf = sorted ? coloured.colourways : NO_WAYS
      const worked = work(
        ...([arranged, joined, order, hand, wayOf, wayOrder, offset] as const),
        ...([gaps.halved, gaps.filling, gaps.filler] as const),
      )
      const tallied = { motifs: arranged.placements.length, byColourway: tally(coloured.colourways) }
      const added = additions.finish({
        ...{ ...shared, motif, gaps, worked, edging, blocking },
        colourways: coloured.colourways,
      })
      const style = layout.edging?.style
      const halves = added.placed.halves.length > 0
      const edge = edging > 0 ? edgeInput(measured, grid, counts, style, joined.reach, halves) : null
      const line = edge && edgeLine(edge)
      const input: MaterialsInput = {
        basis: project,
        joining: project.joining,
        edging: layout.edging,
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
      }
      return { coloured, worked, tallied, added, edge, line, input, needed: materials(input) }
    }
    const { coloured, worked, tallied, added, edge, line, input, needed, stash } = withinYarns(fill, colour)
    const holding = hold(arranged, joined, added.placed.fillers, gaps.halved)
    const { progress, marks, ...told } = isBegun(project)
      ? tellProgress(
          project,
          blanketWork({
            ...{ arranged, joined, worked, input, colourways: coloured.colourways },
            ...{ halved: gaps.halved, filling: gaps.filling },
            ...{ halves: added.placed.halves, fillers: added.placed.fillers },
          }),
          needed.yarns,
        )
      : notBegun(
          needed,
          {
            motifs: tallied.motifs,
            others: added.placed.fillers.length + added.placed.halves.length,
            joins: added.joinOperations + gaps.filling.joins,
          },
          'joined',
        )
    const inUse = used(project.yarns, needed.yarns.map(({ id }) => id).join(' '))
    findings.push(...legibility(inUse, ways))
    findings.push(...joined.findings, ...coloured.findings, ...worked.findings)
    findings.push(...added.findings, ...needed.findings, ...told.findings)
    // What is to stand apart is not joined on purpose.
    if (rule.rule !== 'apart') findings.push(...holding.findings)
    findings.push(...offTarget(layout, size, units))
    const counted = {
      kind: 'blanket' as const,
      size,
      pieces: holding.pieces,
      single: holding.single,
      ...needed,
      ...(stash.length > 0 && { stash }),
      ...{ progress, marks },
      ...added.placed,
      accounts: NO_ACCOUNTS,
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
      laid: { counted, parts, arranged, account: laid, joined, coloured, gaps, worked, edge, line, stash },
    }
  })

  function planBlanket(project: Settled, layout: SettledBlanket): BlanketPlan {
    const { known, findings, laid } = reckon(project, layout)
    if (!laid) return { ...EMPTY, motif: known, findings: bySeverity(findings) }
    const { counted, parts, arranged, account, joined, coloured, gaps, worked, edge, line } = laid
    const { hand, rule, edging, blocking } = parts
    const { labels, firsts } = worked
    const { halved, filling, filler } = gaps
    const frame = [edging, blocking.width, blocking.height] as const
    return {
      settled: settled(project),
      ...counted,
      motifs: finishMotifs(arranged, labels, firsts, coloured.colourways, ...frame),
      joins: finishJoins(arranged, joined, labels, ...frame),
      order: tellWork(account, arranged, joined, rule, hand, worked, halved, filling, filler),
      fillerSteps: additions.tell(gaps, arranged, rule, labels, hand),
      holes: open(arranged, joined, parts.counts).holes,
      edgingLines: edge && line ? finishEdge(edge, arranged, line, ...frame) : NO_LINES,
    }
  }

  return {
    plan: planBlanket,
    // Fillers are looked at once the motifs lie.
    placedMotifs: (layout, plan) => [
      layout.motif,
      plan.motifs.length > 0 ? layout.fillers?.motif : undefined,
    ],
    names: ({ motif, fillers, edging, cells }) => [
      ['motif', motif, 'layout.motif'],
      ['motif', fillers?.motif, 'layout.fillers.motif'],
      ['colourway', fillers?.colourway, 'layout.fillers.colourway'],
      ['yarn', edging?.yarn, 'layout.edging.yarn'],
      ...(cells.fill?.colourways ?? []).map((id, i) => inCells(id, `fill.colourways[${i}]`)),
      ...Object.entries(cells.painted ?? {}).map(([cell, id]) => inCells(id, `painted["${cell}"]`)),
      ...Object.entries(cells.held ?? {}).map(([cell, id]) => inCells(id, `held["${cell}"]`)),
    ],
    numbers(project, layout) {
      // The account of a kit reads the whole plan.
      if (layout.kit) return null
      const { laid } = reckon(project, layout)
      if (!laid) return null
      const { kind, size, counts, pieces, single, yarns, ends, minutes, progress } = laid.counted
      return {
        ...{ kind, size, counts, pieces, single, yarns, ends, minutes, progress },
        motifs: { length: laid.arranged.placements.length },
      }
    },
    stash: (project, layout) => reckon(project, layout).laid?.stash ?? [],
    size(project, layout) {
      const { parts } = frame(project, layout)
      return parts && frames.finished(blanketSize(parts.grid, parts.counts), parts)
    },
    tryout(project, layout) {
      const { parts } = frame(project, layout)
      if (!parts) return null
      const { measured: account, rule, hand, gauge } = parts
      const { reach } = joinReach(project.joining, rule, account, gauge)
      const trials = trialsOf({ account, rule, reach, hand })
      const size = (counts: BlanketCounts) =>
        frames.finished(blanketSize(trials.lattice(counts), counts), parts)
      return { trials, counts: parts.counts, size }
    },
  }
}
