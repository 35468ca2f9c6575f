/**
 * Yarn, ends and time of a whole project (M34, M35, M40–M43) from geometry that is already known. Everything
 * in the project file is optional: what cannot be told is left out with a finding, never guessed in silence.
 */
import type { Finding, InTerms } from '../../shared-types/finding'
import type { EdgingAccount } from '../../shared-types/plan'
import type { Colourway, Motif } from '../../shared-types/project'
import { plainRounds, writtenRounds } from '../edging/written'
import { finding, spelledValue } from '../findings/finding'
import { fineLengthValue, SWATCH_WORDS } from '../findings/quantities'
import { formatNumber } from '../units/format'
import { isUsableOrZero } from '../units/usable'
import { piecesBeside, toldBeside } from './beside'
import { calibrate } from './calibration'
import type { Calibration } from './calibration'
import { closedEnds, closingMinutes } from './closing'
import { MATERIAL_CONSTANTS } from './constants'
import { usualEdgingStyle, workEdging } from './edging'
import type { EdgingWork } from './edging'
import type { Basis, Materials, MaterialsInput, Piece } from './input'
import { workJoins } from './joins'
import { YarnLedger } from './ledger'
import { motifYarn, NO_YARN } from './motif-yarn'
import type { MotifYarn } from './motif-yarn'
import { exactly, spread, times } from './range'
import { colourSections, outerSlot, yarnOfSlot } from './sections'
import { timeNeeded } from './time'
import { yarnFindings } from './yarn-findings'

const yarnName = (basis: Basis, id: string): string => basis.yarns.find((yarn) => yarn.id === id)?.name ?? id

const colourwayOf = (basis: Basis, id: string): Colourway | undefined =>
  basis.colourways.find((colourway) => colourway.id === id)

const count = (value: number | undefined): number => (isUsableOrZero(value) ? value : 0)

/** How many motifs of a piece each colourway makes; those that none is chosen for stand under ''. */
function byColourway({ counts }: Piece): [string, number][] {
  const entries = Object.entries(counts.byColourway).filter(([id, made]) => id !== '' && count(made) > 0)
  const chosen = entries.reduce((sum, [, made]) => sum + made, 0)
  const without = Math.max(count(counts.byColourway['']), count(counts.motifs) - chosen)
  return without > 0 ? [...entries, ['', without]] : entries
}

/** The colourway that most motifs are worked in. */
const mainColourway = (basis: Basis, piece: Piece | undefined): Colourway | undefined => {
  const chosen = piece ? byColourway(piece).filter(([id]) => id !== '') : []
  const [first] = chosen.sort((a, b) => b[1] - a[1])
  return first ? colourwayOf(basis, first[0]) : undefined
}

interface PieceUse {
  readonly ends: number
  /** Motifs whose yarn is not counted, as they have no colourway. */
  readonly without: number
  /** Whether a weight was split over colours that are worked in different yarns. */
  readonly split: boolean
}

/** Notes what `made` motifs in a colourway take; whether a weight had to be split over several yarns for it. */
function useColourway(
  colourway: Colourway,
  { slots, lot }: MotifYarn,
  made: number,
  ledger: YarnLedger,
): boolean {
  const parts = slots.filter(({ split }) => split !== undefined)
  const [only, ...others] = new Set(parts.map(({ slot }) => yarnOfSlot(colourway, slot)))
  // What is split and comes together again in one yarn is as sure as the weight was.
  const whole = lot !== null && only !== undefined && others.length === 0
  if (whole) ledger.use(only, 'motifs', 'g', times(lot, made))
  for (const { slot, unit, amount, split } of slots) {
    const used = yarnOfSlot(colourway, slot)
    if (used === undefined || (whole && split !== undefined)) continue
    ledger.use(used, 'motifs', unit, times(amount, made), split)
  }
  return parts.length > 0 && !whole
}

function usePiece(basis: Basis, piece: Piece, yarn: MotifYarn, ledger: YarnLedger): PieceUse {
  const tailMetres = (MATERIAL_CONSTANTS.tailsPerSection * basis.allowance.tail) / 1000
  const fromStitches = new Set(
    yarn.slots.filter((slot) => slot.source === 'stitches').map((slot) => slot.slot),
  )
  let ends = 0
  let without = 0
  let split = false
  for (const [id, made] of byColourway(piece)) {
    const colourway = colourwayOf(basis, id)
    const sections = colourSections(piece.motif, colourway)
    for (const yarn of new Set(sections.map((section) => section.yarn))) {
      if (yarn !== undefined) {
        ledger.countMotifs(yarn, piece.share === undefined ? made : 0, made * (piece.share ?? 1))
      }
    }
    ends += made * sections.length * MATERIAL_CONSTANTS.tailsPerSection
    if (!colourway) {
      without += made
      continue
    }
    if (useColourway(colourway, yarn, made * (piece.share ?? 1), ledger)) split = true
    const known = new Set(yarn.slots.map(({ slot }) => slot))
    for (const section of sections) {
      if (section.yarn === undefined) continue
      if (made > 0 && !known.has(section.slot)) ledger.lack(section.yarn, piece.motif.id)
      if (fromStitches.has(section.slot)) ledger.use(section.yarn, 'tails', 'm', exactly(made * tailMetres))
    }
  }
  return { ends, without, split }
}

/** The yarn of joins or edging: the one named, else the one that most motifs end with. */
interface ChosenYarn {
  readonly id: string | undefined
  readonly named: boolean
}

function chooseYarn(basis: Basis, named: string | undefined, outer: string | undefined): ChosenYarn {
  if (named !== undefined && named !== '') return { id: named, named: true }
  const only = basis.yarns.length === 1 ? basis.yarns[0]?.id : undefined
  return { id: outer ?? only, named: false }
}

/** The yarn that motifs end with: that of the colourway which is made most often. */
interface Outer {
  readonly outer: string | undefined
  /** The name of that colourway, where others end with another yarn; else null. */
  readonly one: string | null
  /** Said of it, where it is so: counts that follow what is on hand may make another one more often in the end. */
  readonly most: string | InTerms
}

const MOST = spelledValue('; no other colourway is made more often')

function outerOf(
  basis: Basis,
  motif: Motif | null,
  main: Colourway | undefined,
  pieces: Piece[],
  now: Piece['counts'],
): Outer {
  if (!motif) return { outer: undefined, one: null, most: '' }
  const outer = yarnOfSlot(main, outerSlot(motif))
  const ends = pieces.flatMap((piece) =>
    byColourway(piece)
      .filter(([id, made]) => id !== '' && made > 0)
      .map(([id]) => yarnOfSlot(colourwayOf(basis, id), outerSlot(piece.motif))),
  )
  const several = ends.some((yarn) => yarn !== undefined && yarn !== outer)
  const made = main ? count(now.byColourway[main.id]) : 0
  const isMost = Object.entries(now.byColourway).every(([id, other]) => id === '' || count(other) <= made)
  return {
    outer,
    one: several ? main?.code || main?.name || main?.id || null : null,
    most: isMost ? MOST : '',
  }
}

function useEdging(
  input: MaterialsInput,
  { outer, one, most }: Outer,
  calibration: Calibration,
  ledger: YarnLedger,
  findings: Finding[],
): (EdgingWork & { readonly sections: number }) | null {
  const { basis, edging, edgingBase, gauge, border = null } = input
  const rounds = plainRounds(edging, basis.terms)
  if (!edgingBase || !edging || rounds.length === 0 || !(edgingBase.length > 0)) return null
  const { id, named } = chooseYarn(basis, edging.yarn, outer)
  const work = workEdging(
    edging.style ?? usualEdgingStyle(input.account?.shape),
    rounds,
    id ?? '',
    edgingBase,
    basis.terms,
    gauge,
    border,
  )
  findings.push(...(border?.findings ?? []), ...work.findings)
  for (const stitch of work.unknown) {
    findings.push(finding('yarn/edging-stitch', 'layout.edging.rounds', { stitch }))
  }
  if (id === undefined) findings.push(finding('yarn/no-edging-yarn', 'layout.edging.yarn'))
  else if (!named) {
    const values = { yarn: yarnName(basis, id) }
    findings.push(
      one === null
        ? finding('yarn/edging-yarn-assumed', 'layout.edging.yarn', values)
        : finding('yarn/edging-yarn-of-several', 'layout.edging.yarn', { ...values, way: one, most }),
    )
  }
  const lines = edgingBase.lines ?? 1
  const tails = (lines * MATERIAL_CONSTANTS.tailsPerSection * basis.allowance.tail) / 1000
  const sections: { readonly yarn: string; metres: number }[] = []
  for (const { yarn, metres } of work.account.rounds) {
    if (sections.at(-1)?.yarn !== yarn) sections.push({ yarn, metres: 0 })
    sections.at(-1)!.metres += metres
  }
  for (const { yarn, metres } of sections) {
    if (yarn === '') continue
    ledger.use(yarn, 'edging', 'm', spread(metres * calibration.factor, calibration.spread))
    ledger.use(yarn, 'tails', 'm', exactly(tails))
  }
  const filling = work.account.rounds[0]?.yarn ?? ''
  if (work.filled > 0 && filling !== '')
    ledger.use(filling, 'tails', 'm', exactly((work.filled * tails) / lines))
  return { ...work, sections: lines * sections.length + work.filled }
}

/** Yarn of a motif by a calibration, as far as the stitch model tells it: what was weighed or unravelled stays. */
function calibratedYarn(yarn: MotifYarn, { calibrated, factor, spread: half }: Calibration): MotifYarn {
  if (!calibrated || !yarn.slots.some(({ source }) => source === 'stitches')) return yarn
  const slots = yarn.slots.map((slot) => {
    if (slot.source !== 'stitches') return slot
    const { expected, high } = slot.amount
    const own = high / expected - 1
    // Without a gauge of its own a motif stays as unsure as it was.
    const isRough = own > MATERIAL_CONSTANTS.modelSpread + 1e-9
    return { ...slot, amount: spread(expected * factor, isRough ? own : half) }
  })
  return { ...yarn, slots }
}

/** What a project takes: yarn by colour with ranges, the edging round by round, ends, time, and findings. */
export function materials(input: MaterialsInput): Materials {
  const { basis, motif, account, gauge } = input
  const findings: Finding[] = []
  const ledger = new YarnLedger()
  const own: Piece | undefined = motif ? { motif, account, counts: input.counts } : undefined
  const placed = [...(own ? [own] : []), ...(input.others ?? [])]
  const pieces = [...placed, ...piecesBeside(input.beside ?? [], placed)]
  const { beside, findings: besideFindings } = toldBeside(input.beside ?? [], placed)
  findings.push(...besideFindings)

  const told = pieces.map((piece) =>
    motifYarn(piece.motif, piece.account, `motif ${piece.motif.id}`, basis.terms),
  )
  // What is left of a work is edged and joined as the whole of it is.
  const main = mainColourway(basis, own && { ...own, counts: input.whole ?? own.counts })
  const calibration = calibrate(basis.yarns, motif, account, told[0] ?? NO_YARN, main, basis.allowance.tail)
  // The same hand works fillers and further motifs.
  const yarns = told.map((yarn, index) => (own && index === 0 ? yarn : calibratedYarn(yarn, calibration)))
  let ends = 0
  let without = 0
  pieces.forEach((piece, index) => {
    const yarn = yarns[index] ?? NO_YARN
    findings.push(...yarn.findings)
    const used = usePiece(basis, piece, yarn, ledger)
    if (used.split && yarn.splitNote) findings.push(yarn.splitNote)
    ends += used.ends
    without += used.without
  })
  const inMotifs = new Map(
    basis.yarns.map((yarn) => [yarn.id, ledger.high(yarn, basis.allowance.wastePercent)]),
  )
  if (without > 0 && basis.yarns.length > 0) {
    findings.push(finding('yarn/no-colourway', 'colourways', { motifs: formatNumber(without) }))
  }

  if (calibration.refused !== null && motif) {
    const percent = formatNumber(calibration.refused * 100)
    findings.push(
      finding('yarn/weight-far-from-stitches', `motif ${motif.id}`, { percent }, { motif: motif.id }),
    )
  }
  const model: Calibration =
    !calibration.calibrated && gauge.provenance === 'rule-of-thumb'
      ? { ...calibration, spread: Math.max(calibration.spread, gauge.spread) }
      : calibration

  const wholes = own ? [{ ...own, counts: input.whole ?? own.counts }] : []
  const ofMost = outerOf(basis, motif, main, wholes, input.counts)
  const { outer } = ofMost
  const joinYarn = chooseYarn(basis, input.joining?.yarn, outer)
  const joins = workJoins(input, joinYarn.id, joinYarn.named, outer, basis.allowance.tail)
  if (joins.millimetres > 0) {
    if (joinYarn.id === undefined) findings.push(finding('yarn/no-joining-yarn', 'joining.yarn'))
    else {
      if (!joinYarn.named && joins.ownYarn) {
        const values = { yarn: yarnName(basis, joinYarn.id) }
        findings.push(
          ofMost.one === null
            ? finding('yarn/joining-yarn-assumed', 'joining.yarn', values)
            : finding('yarn/joining-yarn-of-several', 'joining.yarn', {
                ...values,
                ...{ way: ofMost.one, most: ofMost.most },
              }),
        )
      }
      const metres = (joins.millimetres / 1000) * model.factor
      ledger.use(joinYarn.id, 'joins', 'm', spread(metres, model.spread))
      ledger.use(joinYarn.id, 'tails', 'm', exactly(joins.tailMillimetres / 1000))
    }
  }
  ends += joins.ends

  for (const { yarn, use, millimetres, tails } of input.works ?? []) {
    ledger.use(yarn, use, 'm', spread((millimetres / 1000) * model.factor, model.spread))
    ledger.use(yarn, 'tails', 'm', exactly((tails * basis.allowance.tail) / 1000))
    ends += tails
  }

  const edging = useEdging(input, ofMost, model, ledger, findings)
  if (edging) ends += edging.sections * MATERIAL_CONSTANTS.tailsPerSection
  // What is closed is not worked on: its edging is made, whether it is told here or not.
  const lastRound = writtenRounds(input.edging).at(-1)?.yarn
  const edgingYarn = lastRound ?? chooseYarn(basis, input.edging?.yarn, outer).id
  const closed = closedEnds(input, joinYarn.id, edgingYarn)
  if (closed.some(({ yarn }) => yarn === '')) findings.push(finding('yarn/no-closing-yarn', 'joining.yarn'))
  for (const { yarn, metres } of closed) {
    ends += MATERIAL_CONSTANTS.tailsPerSection
    if (yarn === '') continue
    const tails = (MATERIAL_CONSTANTS.tailsPerSection * basis.allowance.tail) / 1000
    ledger.use(yarn, 'joins', 'm', spread((metres - tails) * model.factor, model.spread))
    ledger.use(yarn, 'tails', 'm', exactly(tails))
  }
  if (gauge.provenance === 'rule-of-thumb' && (edging || joins.usesGauge)) {
    const values = {
      width: fineLengthValue(gauge.width),
      spread: formatNumber(gauge.spread * 100),
      over: SWATCH_WORDS,
    }
    findings.push(finding('gauge/missing', 'gauge', values))
  }

  const listed = basis.yarns.filter((yarn) => ledger.has(yarn.id))
  const needs = listed.map((yarn) => ledger.need(yarn, basis.allowance.wastePercent))
  findings.push(...yarnFindings(basis.units, listed, needs, ledger, ({ id }) => inMotifs.get(id) ?? 0))

  const time = timeNeeded(input, pieces, edging, ends, closingMinutes(closed))
  findings.push(...time.findings)
  const accountOfEdging: EdgingAccount | null = edging ? edging.account : null
  return {
    ...{ yarns: needs, edging: accountOfEdging, ends, findings, minutes: time.minutes },
    ...(time.parts && { time: time.parts }),
    ...(closed.length > 0 && { closed }),
    ...(beside.length > 0 && { beside }),
  }
}
