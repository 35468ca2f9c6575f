/**
 * A blanket: cells on a lattice, each with its motif or none, joined, coloured and edged. Each stage is a pure function in its own room and
 * is not run again while what it reads stays the same (see memo.ts), so that a planner that lives as long as a
 * window answers a small change quickly.
 */
import type { BlanketPlan, MotifAccount, YarnForMotifs } from '../../shared-types/plan'
import type { Motif, Yarn } from '../../shared-types/project'
import type { Settled, SettledBlanket } from '../../shared-types/settled'
import { accountFrom, readBy } from '../accounts'
import { assignByMotif, patternAlone } from '../colour/by-hand'
import { colourCells, keepsApart } from '../colour/cells'
import { letterFindings, legibilityFindings } from '../colour/legibility'
import { isByYarn } from '../colour/limits'
import * as borders from '../edging/border'
import { plainRounds, writtenRounds } from '../edging/written'
import { bySeverity, finding } from '../findings/finding'
import { joinRemarks, pairsApart } from '../joins/between'
import { besideFillers } from '../joins/checks'
import type { Rule } from '../joins/rule'
import { sidesTold, sumOfSides } from '../joins/sides'
import { createAdditions, openingsIn, tally } from '../layout/additions'
import { blanketSize } from '../layout/blanket'
import type { BlanketCounts, Placement } from '../layout/blanket'
import * as closing from '../layout/closed-ends'
import { createGround } from '../layout/ground'
import { outlineReach } from '../layout/outline'
import { countPlaces, fullLengths } from '../layout/places'
import * as edges from '../layout/edge'
import * as dipsAlong from '../layout/edge-dips'
import * as frames from '../layout/frame'
import * as stages from '../layout/stages'
import { touchingPairs } from '../layout/touching'
import * as works from '../layout/works'
import { offTarget } from '../layout/target'
import { trialsOf } from '../layout/trials'
import { goingWith } from '../materials/beside'
import { edgingHeight } from '../materials/edging'
import type { Bridges, MaterialsInput, Piece } from '../materials/input'
import { leavingOrder } from '../materials/leaving'
import { materials } from '../materials/materials'
import { withinYarns } from '../materials/stash'
import { memoised, remembered } from '../memo'
import { heldColours } from '../progress/held'
import { blanketWork } from '../progress/blanket-work'
import { ownPoints } from '../layout/placed'
import { isBegun, notBegun, tellProgress } from '../progress/progress'
import { atHand } from '../progress/at-hand'
import { settled } from '../settled'
import { toldAs, withFields } from '../telling'
import { LATTICES_KEPT } from '../layout/constants'
import { fillerIds, namedByBlanket } from './blanket-references'
import { EMPTY } from './empty'
import type { KindPlanner } from './kind'

const NO_ACCOUNTS: BlanketPlan['accounts'] = []
/** What is joined in the round has an edge at either end. */
const edgesOf = ({ inTheRound }: BlanketCounts, { edging }: SettledBlanket): number =>
  inTheRound && (edging?.ends ?? 'both') === 'both' ? 2 : 1
const NO_LINES: BlanketPlan['edgingLines'] = []

/** Stays the same object, so that stages which read it are remembered. */
const NO_WAYS: readonly string[] = []
const NO_PAIRS: ReturnType<typeof touchingPairs> = []

/** The yarns among some ids, which are set apart by blanks: the same list as long as they are. */
function yarnsAmong(yarns: readonly Yarn[], ids: string): readonly Yarn[] {
  const known = new Set(ids.split(' '))
  return yarns.filter(({ id }) => known.has(id))
}

/** How often each motif is made, in which colourways. */
function piecesOf(
  motifs: readonly Motif[],
  accounts: readonly MotifAccount[],
  placements: readonly Placement[],
  colourways: readonly string[],
): Piece[] {
  return motifs.map((motif, kind) => {
    const own = colourways.filter((_, i) => placements[i]!.kind === kind)
    return { motif, account: accounts[kind]!, counts: { motifs: own.length, byColourway: tally(own) } }
  })
}

/** Joins with joining chains, those of half motifs too: they join as the motifs do. */
const allBridges = (joined: Pick<stages.Joined, 'bridges'>, rule: Rule, halves: number): Bridges[] =>
  rule.rule === 'bridge' && halves > 0
    ? [...joined.bridges, { chains: rule.chains, operations: halves }]
    : [...joined.bridges]

/** Plans blankets, with a memory of the last one. */
export function createBlanketPlanner(): KindPlanner<SettledBlanket> {
  const frame = createGround()
  const arrange = memoised(stages.arrange)
  const placed = memoised(stages.placedAccounts, LATTICES_KEPT)
  const join = memoised(stages.join)
  const open = memoised(stages.open)
  const hold = memoised(stages.hold)
  const colourable = memoised(colourCells)
  const touching = memoised(touchingPairs)
  const colours = memoised(assignByMotif)
  const pattern = memoised(patternAlone)
  const legibility = memoised(legibilityFindings)
  const used = memoised(yarnsAmong)
  const work = memoised(works.work)
  const tellWork = memoised(works.tellWork)
  const edgeInput = memoised(stages.edgeInput)
  const edgeLine = memoised(edges.edgeLine)
  const finishEdge = memoised(edges.finishEdge)
  const borderEdge = memoised(edges.borderEdge)
  const edgeDips = memoised(dipsAlong.edgeDips)
  const finishDips = memoised(dipsAlong.finishDips)
  const flatEnds = memoised(closing.flatEnds)
  const workBorder = memoised(borders.workBorder)
  const plainLoops = memoised(borders.plainLoops)
  const filler = remembered(accountFrom)
  const additions = createAdditions((motif, project) => filler(motif, ...readBy(project)))
  const tellOpenings = memoised(openingsIn)
  const finishSize = memoised(frames.finishSize)
  const finishMotifs = memoised(frames.finishMotifs)
  const finishJoins = memoised(frames.finishJoins)
  const finishLeftOut = memoised(frames.finishLeftOut)

  /** Everything of a blanket that counts; what is drawn and told of each motif comes in `planBlanket`. */
  const reckon = memoised((project: Settled, layout: SettledBlanket) => {
    const { findings, measured: known, parts } = frame(project, layout)
    if (!parts) return { known, findings, laid: null }
    const { hand, motifs, accounts, cells, gauge, rules, counts, grid, edging, blocking, cut } = parts
    const offset = counts.arrangement !== 'straight-rows'
    const rule = rules.main
    const units = project.units
    const arranged = arrange(accounts, cells, grid, counts, rules, cut.test)
    if (arranged.placements.length === 0) {
      findings.push(finding('layout/nothing-left', 'layout.cells'))
      return { known, findings, laid: null }
    }
    findings.push(...outlineReach(cut, grid, counts, units))
    const laid = placed(accounts, grid, hand, ...(cells.blocks.size > 0 ? [cells] : []))
    const joined = join(laid, gauge, rules, project.joining, arranged, counts)
    const ways = project.colourways
    const { fill, painted, kept, held } = layout.cells
    const fast = heldColours(held, project.made)
    const order = project.order
    // Only an order by colourway hangs on the colours: painting leaves every other order as it is.
    const sorted = order === 'colourway'
    const wayOrder = sorted ? ways.map((way) => way.id).join(' ') : ''
    const shared = { project, layout, accounts: laid, rule, arranged, joined }
    const gaps = additions.lay({ ...shared, counts, open: () => open(arranged, joined, counts).openings })
    const { width, height } = blocking
    const size = finishSize(accounts, arranged, edging, width, height)
    const isCut = arranged.placements.length < countPlaces(counts)
    const beside = colourable(
      ...([arranged.placements, offset, counts.inTheRound ? counts.columns : 0] as const),
      isCut ? fullLengths(counts) : undefined,
      keepsApart(fill) ? touching(arranged.placements, joined.nodes) : NO_PAIRS,
    )
    /** The edge and its rounds: of the colours they hang on nothing but whether there are half motifs. */
    const edged = memoised((halves: boolean) => {
      const style = layout.edging?.style
      const edge =
        edging.height > 0
          ? edgeInput(accounts, cells, arranged, counts, style, joined, halves, layout.edging?.ends ?? 'both')
          : null
      const line = edge && edgeLine(edge)
      const written = writtenRounds(layout.edging)
      const plain = plainRounds(layout.edging, project.terms)
      const along = edge && line && borderEdge(edge, arranged, line, laid, hand)
      const heightOf = (rounds: readonly string[]) => edgingHeight(rounds, project.terms, gauge)
      const border =
        along && written.length > 0
          ? workBorder(along, written, plain.length, heightOf(plain), project.terms, gauge)
          : null
      const loops = along && plainLoops(along, heightOf(plain.slice(0, 1)), gauge)
      const dips = edge?.style === 'level' ? edgeDips(edge, arranged, hand) : null
      const bare = edge ?? edgeInput(accounts, cells, arranged, counts, style, joined, halves, 'both')
      const ends = counts.inTheRound ? flatEnds(bare, edge, arranged, width, height) : null
      return { edge, line, border, loops, dips, ends }
    })
    const coloured = [beside, fill, painted, ways, kept, counts.arrangement, cells.motifs] as const
    // Joins and edging in no yarn of their own follow the pattern, not what limits make of it: colours are chosen by
    // what they take, and one motif more or less moves them to no other yarn.
    const whole = isByYarn(fill)
      ? piecesOf(motifs, laid, arranged.placements, pattern(...coloured))[0]?.counts
      : undefined
    /** Everything that follows from the colours, down to the yarn. */
    const colour = (stash: readonly YarnForMotifs[]) => {
      const assigned = colours(...coloured, stash, fast)
      const wayOf = sorted ? assigned.colourways : NO_WAYS
      const worked = work(
        ...([arranged, joined, order, hand, wayOf, wayOrder, offset] as const),
        project.joining.rule === 'seam',
        ...([gaps.halved, gaps.filling] as const),
      )
      const tallied = { motifs: arranged.placements.length, byColourway: tally(assigned.colourways) }
      const added = additions.finish({
        ...{ ...shared, motifs, gaps, worked, edging, blocking },
        colourways: assigned.colourways,
      })
      const { edge, line, border, loops, dips, ends } = edged(added.placed.halves.length > 0)
      const [main, ...others] = piecesOf(motifs, laid, arranged.placements, assigned.colourways)
      const input: MaterialsInput = {
        basis: project,
        joining: project.joining,
        edging: layout.edging,
        motif: main!.motif,
        account: main!.account,
        gauge,
        counts: main!.counts,
        ...(whole && { whole }),
        others: [...others, ...added.pieces],
        beside: goingWith(project),
        joinOperations: added.joinOperations,
        ...((project.joining.pairs ?? project.joining.single) && {
          bridges: allBridges(joined, rule, gaps.halved.operations),
        }),
        joinsAgain: added.joinsAgain,
        fillerJoins: added.fillerJoins,
        seams: added.seams,
        sides: added.sides,
        edgingBase: line && {
          length: line.length,
          outerCorners: line.corners,
          turns: line.turns,
          lines: border?.loops.length ?? edgesOf(counts, layout),
          tips: line.tips,
          chord: line.tips > 0 ? line.length / line.tips : 0,
          ...(dips && { dips }),
          ...(loops && { loops }),
        },
        border,
        ...(ends && { closings: closing.closings(layout, ends, edge !== null) }),
      }
      return { assigned, worked, tallied, added, edge, line, dips, ends, input, needed: materials(input) }
    }
    const workOf = ({ worked, input, assigned, added }: ReturnType<typeof colour>) =>
      blanketWork({
        ...{ arranged, joined, worked, input, colourways: assigned.colourways },
        ...{ halved: gaps.halved, filling: gaps.filling, motifs: motifs.length },
        ...{ halves: added.placed.halves, fillers: added.placed.fillers },
      })
    const told = withinYarns(fill, motifs.length, colour, (first) =>
      atHand(project, () => workOf(first), first.needed.yarns),
    )
    const { assigned, worked, tallied, added, edge, line, dips, needed, stash } = told
    const holding = hold(arranged, joined, added.placed.fillers, gaps.halved)
    const { progress, marks, yarns, ...begun } = isBegun(project)
      ? tellProgress(project, workOf(told), needed.yarns)
      : notBegun(
          needed,
          {
            motifs: tallied.motifs,
            others: added.placed.fillers.length + added.placed.halves.length,
            joins: joined.nodes.length + ownPoints([...added.placed.fillers, ...added.placed.halves]),
          },
          'joined',
        )
    const leaving = leavingOrder(fill, assigned, project.yarns, told.taken)
    const inUse = used(project.yarns, needed.yarns.map(({ id }) => id).join(' '))
    findings.push(...legibility(inUse, ways), ...letterFindings(ways))
    findings.push(...besideFillers(joined, added.placed), ...assigned.findings, ...worked.findings)
    findings.push(...added.findings, ...needed.findings, ...begun.findings)
    // What is to stand apart is not joined on purpose.
    if (rule.rule !== 'apart') findings.push(...holding.findings)
    const remarks = joinRemarks({ ...joined, ...arranged, accounts: laid }, rule.rule)
    const nameOf = (id: string) => project.motifs.find((each) => each.id === id)?.name ?? id
    findings.push(...pairsApart({ ...joined, ...arranged }, project.joining, cells.motifs, nameOf))
    findings.push(...remarks.findings, ...closing.unevenRound(cells, counts))
    findings.push(...offTarget(layout, size, units))
    const sides = sumOfSides([added.sides.seams, added.sides.along])
    const counted = {
      kind: 'blanket' as const,
      size,
      pieces: holding.pieces,
      single: holding.single,
      ...(project.forChild && { opening: 2 * gaps.filling.open }),
      ...needed,
      ...(stash.length > 0 && { stash }),
      ...(leaving && { leaving }),
      ...{ progress, marks, yarns },
      ...added.placed,
      accounts: laid.length > 1 ? laid : NO_ACCOUNTS,
      ...(arranged.round > 0 && {
        round: closing.roundAccount(arranged, joined, edging, width, told.ends),
      }),
      counts: {
        ...tallied,
        fillers: added.placed.fillers.length,
        halves: added.placed.halves.length,
        joins: joined.nodes.length + added.joinPoints,
        ...(sides.count > 0 && { sides: sidesTold(sides) }),
        ...remarks.counts,
      },
      pitch: {
        column: grid.column * width,
        row: ((grid.rows[0] + grid.rows[1]) / 2) * height,
        rows: [grid.rows[0] * height, grid.rows[1] * height] as const,
      },
      arrangement: counts.arrangement,
      motif: laid[0] ?? null,
      findings: bySeverity(findings),
    }
    return {
      known,
      findings,
      laid: {
        counted,
        parts,
        arranged,
        accounts: laid,
        joined,
        assigned,
        gaps,
        worked,
        edge,
        line,
        dips,
        stash,
      },
    }
  })

  function planBlanket(project: Settled, layout: SettledBlanket): BlanketPlan {
    const { known, findings, laid } = reckon(project, layout)
    if (!laid) return { ...EMPTY, motif: known, findings: bySeverity(findings) }
    const { counted, parts, arranged, accounts, joined, assigned, gaps, worked, edge, line, dips } = laid
    const { hand, rules, cells, edging, blocking } = parts
    const [rule, { labels, firsts }, { halved, filling }] = [rules.main, worked, gaps] as const
    const { openings, holes } = open(arranged, joined, parts.counts)
    const frame = [edging, blocking.width, blocking.height] as const
    const laidOut = {
      settled: settled(project),
      ...counted,
      motifs: finishMotifs(arranged, labels, firsts, assigned.colourways, cells.motifs, ...frame),
      joins: finishJoins(arranged, joined, labels, ...frame),
      ...(arranged.leftOut.length > 0 && { leftOut: finishLeftOut(arranged, ...frame) }),
    }
    const order = tellWork(accounts, arranged, joined, rule, hand, worked, halved, filling)
    return withFields(laidOut, toldAs('order', order), {
      fillerSteps: additions.tell(gaps, arranged, rule, labels, hand),
      holes,
      openings: tellOpenings(openings, arranged, accounts, filling),
      ...(dips && dips.length > 0 && { edgingDips: finishDips(dips, ...frame) }),
      edgingLines: edge && line ? finishEdge(edge, arranged, line, ...frame) : NO_LINES,
    })
  }

  return {
    plan: planBlanket,
    // Fillers are looked at once the motifs lie.
    placedMotifs: (layout, plan) => [
      layout.motif,
      ...plan.accounts.map(({ id }) => id),
      ...(plan.motifs.length > 0 ? fillerIds(layout) : []),
    ],
    names: namedByBlanket,
    numbers(project, layout) {
      // The account of a kit reads the whole plan.
      if (layout.kit) return null
      const { laid } = reckon(project, layout)
      if (!laid) return null
      const { kind, size, counts, pieces, single, opening, yarns, ends, minutes, progress } = laid.counted
      return {
        ...{ kind, size, counts, pieces, single, yarns, ends, minutes, progress },
        ...(opening !== undefined && { opening }),
        motifs: { length: laid.arranged.placements.length },
      }
    },
    stash: (project, layout) => reckon(project, layout).laid?.stash ?? [],
    size(project, layout) {
      const { parts } = frame(project, layout)
      return (
        parts && frames.finished(blanketSize(parts.grid, parts.counts, parts.cells, parts.cut.test), parts)
      )
    },
    tryout(project, layout) {
      const { parts } = frame(project, layout)
      if (!parts) return null
      const { accounts, cells, rules, hand, gauge, sizeWith } = parts
      const trials = trialsOf({ accounts, cells, rules, hand, joining: project.joining, gauge })
      const size = (counts: BlanketCounts) => sizeWith(counts, trials.lattice(counts))
      return { trials, counts: parts.counts, size }
    },
  }
}
