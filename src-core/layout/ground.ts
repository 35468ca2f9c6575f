/** The ground of a blanket: its motifs in their cells on the lattice, and everything else that its size follows from. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { Motif, Project } from '../../shared-types/project'
import type { Settled, SettledBlanket } from '../../shared-types/settled'
import { accountOf } from '../accounts'
import { finding } from '../findings/finding'
import { isSameOutline } from '../geometry/points'
import type { Outline } from '../geometry/points'
import { joinRules } from '../joins/rule'
import type { Rules } from '../joins/rule'
import { plainRounds, writtenHeights, writtenRounds } from '../edging/written'
import { edgingHeight } from '../materials/edging'
import { likeBefore, memoised } from '../memo'
import { laidBlanketOf } from '../plans/layouts'
import { settled } from '../settled'
import { resolveGauge } from '../stitches/gauge'
import type { Millimetres } from '../units/quantity'
import { blanketCounts, blanketSize, blockingFactors, COUNT_FIELDS } from './blanket'
import type { BlanketCounts, CountFields } from './blanket'
import { cellsOf, hasOwnPairs } from './cells'
import type { Cells } from './cells'
import { LATTICES_KEPT } from './constants'
import { edgingRoom, finished } from './frame'
import { largeSizes } from './large-size'
import { cutOut } from './outline'
import type { Lattice } from './lattice'
import * as stages from './stages'

/** The motifs of a project with these ids, which are set apart by line breaks. */
const motifsById = (motifs: readonly Motif[], ids: string): readonly Motif[] =>
  ids.split('\n').flatMap((id) => motifs.find((motif) => motif.id === id) ?? [])

/** Reads the ground of blankets, with a memory of its own. */
export function createGround() {
  const gaugeOf = memoised(resolveGauge)
  const rulesOf = memoised(joinRules)
  const counted = memoised((...fields: unknown[]) =>
    blanketCounts(Object.fromEntries(COUNT_FIELDS.map((name, i) => [name, fields[i]])) as CountFields),
  )
  // By its fields: a layout whose cells alone were painted keeps its counts, and all that follows from them.
  const countsOf = (layout: SettledBlanket) => counted(...COUNT_FIELDS.map((name) => layout[name]))
  const lattice = memoised(stages.lattice, LATTICES_KEPT)
  // One object for equal fields: what is placed in it is not placed again.
  const room = memoised(edgingRoom)
  const idsOf = memoised((...ids: string[]): readonly string[] => ids)
  // By what it hangs on: blankets that differ in how many motifs they have, in what these weigh or in how they are
  // worked stand on the same lattice, whose edges are walked once.
  const endless = memoised(stages.endlessLattice, LATTICES_KEPT)
  const alike = likeBefore(isSameOutline, LATTICES_KEPT)
  const outlinesOf = memoised((...outlines: Outline[]): readonly Outline[] => outlines, LATTICES_KEPT)
  const gapsOf = memoised((...gaps: Millimetres[]): readonly Millimetres[] => gaps, LATTICES_KEPT)
  const latticeUnder = (
    accounts: readonly MotifAccount[],
    cells: Cells,
    counts: BlanketCounts,
    rules: Rules,
  ) => {
    const outlines = outlinesOf(...accounts.map(({ outline }) => alike(outline)))
    const gaps = gapsOf(...stages.gapsUnder(rules, accounts.length))
    if (hasOwnPairs(cells, counts)) return lattice(outlines, cells, counts, gaps)
    const { arrangement, count, by, rings } = cells.pattern
    const middle = arrangement === 'rings' && count > 1 ? rings : 0
    return endless(outlines, arrangement, count, by, middle, counts.turn, counts.alternateTurn, gaps)
  }
  /**
   * The cells of a blanket with other counts than its own, and their lattice; null where the pattern alone says where
   * motifs stand, and where others of them are put in by hand than in the present counts.
   */
  const cellsWith = (
    layout: SettledBlanket,
    accounts: readonly MotifAccount[],
    ids: readonly string[],
    known: string,
    rules: Rules,
    counts: BlanketCounts,
  ): { readonly cells: Cells; readonly grid: Lattice } | null => {
    const { motifs, large } = layout.cells
    const cells = cellsOf(ids[0]!, layout.alternate, motifs, counts, known, large)
    if (cells.own.size === 0 || cells.motifs.join('\n') !== ids.join('\n')) return null
    const outlines = accounts.map(({ outline }) => outline)
    return { cells, grid: stages.lattice(outlines, cells, counts, stages.gapsUnder(rules, ids.length)) }
  }
  const cellsFor = memoised(cellsOf)
  const cutOutOf = memoised(cutOut)
  const motifsOf = memoised(motifsById)
  const accountsOf = memoised((...accounts: MotifAccount[]): readonly MotifAccount[] => accounts)

  /** Everything that the size follows from; null where a part of it is missing. */
  return function ground(project: Settled, layout: SettledBlanket) {
    const findings: Finding[] = []
    const hand = project.hand
    const first = project.motifs.find((entry) => entry.id === layout.motif)
    if (!layout.motif) findings.push(finding('layout/no-motif', 'layout.motif'))
    const read = countsOf(layout)
    const blocking = blockingFactors(layout)
    const known = project.motifs.map(({ id }) => id).join('\n')
    const cells =
      first && read.counts
        ? cellsFor(first.id, layout.alternate, layout.cells.motifs, read.counts, known, layout.cells.large)
        : null
    const motifs = motifsOf(project.motifs, cells?.motifs.join('\n') ?? first?.id ?? '')
    const told = motifs.map((motif) => accountOf(project, motif))
    const gauge = told[0]?.gauge ?? gaugeOf((first ?? project).gauge, project.terms)
    const rules = rulesOf(project.joining, gauge, idsOf(...(cells?.motifs ?? [])))
    const cut = cutOutOf(layout.outlineShape)
    findings.push(...told.flatMap((each) => each.findings), ...read.findings, ...(cells?.findings ?? []))
    const listed = layout.alternate?.motifs?.[0]
    if (first && listed !== undefined && listed !== first.id && cells && cells.pattern.count > 1) {
      const nameOf = (id: string) => project.motifs.find((motif) => motif.id === id)?.name ?? id
      const values = { motif: nameOf(first.id), listed: nameOf(listed) }
      findings.push(finding('layout/alternate-first', 'layout.alternate.motifs[0]', values))
    }
    findings.push(...blocking.findings, ...rules.findings, ...cut.findings)
    const measured = told[0]?.account ?? null
    const accounts = told.flatMap(({ account }) => account ?? [])
    const counts = read.counts
    if (!cells || !counts || accounts.length < told.length) return { findings, measured, parts: null }
    const all = accountsOf(...accounts)
    const grid = latticeUnder(all, cells, counts, rules)
    if (cells.blocks.size > 0) {
      const natural = latticeUnder(all, { ...cells, own: NONE_OWN }, { ...counts, inTheRound: false }, rules)
      const { joining, units } = project
      findings.push(...largeSizes(cells, motifs, all, natural, rules, joining, gauge, units))
    }
    const plain = plainRounds(layout.edging, project.terms)
    const written = writtenHeights(writtenRounds(layout.edging), plain.length + 1, project.terms, gauge)
    const height = edgingHeight(plain, project.terms, gauge) + written.reduce((sum, each) => sum + each, 0)
    const frame = { edging: room(height, counts.inTheRound, layout.edging?.ends), blocking }
    const cellsIn = memoised(
      (other: BlanketCounts) => cellsWith(layout, all, cells.motifs, known, rules, other),
      COUNTS_TRIED,
    )
    /** Finished size in mm with other counts; `endless` is the lattice of the pattern alone. */
    const sizeWith = (other: BlanketCounts, endless: Lattice) => {
      const own = cellsIn(other)
      return finished(blanketSize(own?.grid ?? endless, other, own?.cells, cut.test), frame)
    }
    return {
      findings,
      measured,
      parts: { hand, motifs, accounts: all, cells, gauge, rules, counts, grid, ...frame, cut, sizeWith },
    }
  }
}

/** Of a blanket with motifs put in by hand: the last counts that were tried of it are kept. */
const COUNTS_TRIED = 32

/** Nothing put in by hand. */
const NONE_OWN: Cells['own'] = new Map()

const standing = createGround()

/** The ground of a project's blanket by itself, without the rest of its plan; null where none can be laid out. */
export function groundOf(project: Project) {
  const made = settled(project)
  const layout = laidBlanketOf(made)
  return layout ? standing(made, layout).parts : null
}
