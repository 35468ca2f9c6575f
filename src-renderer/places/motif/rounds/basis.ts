/**
 * What a motif is based on: measures, or written rounds. Going over to the other and back changes nothing; what was
 * entered on either side stays entered, and what the rounds give is never taken for a measure. Measures in mm.
 */
import type { MotifAccount } from '../../../../shared-types/plan'
import { measuredMotifSchema, roundsMotifSchema } from '../../../../shared-types/project'
import type {
  MeasuredMotif,
  MeasuredOutline,
  MeasuredSizes,
  Motif,
  OutlineKind,
  Project,
  RoundsMotif,
  Weighed,
} from '../../../../shared-types/project'
import { isFromRounds } from '../../../../src-core/motif/from-rounds'
import { MEASURES, slotsOf, updateMotif } from '../../../state/edits/motif'
import type { MeasureKey } from '../../../state/edits/motif'
import { withYarns } from './edits'

const ALL_MEASURES = [...new Set(Object.values(MEASURES).flat())]

/** How it was measured, beside the measures. */
const ABOUT_MEASURES = ['ruler', 'blocked', 'asMeasured'] as const

/** From measures to written rounds; everything that was entered stays, and what was measured calibrates the rounds. */
export function toRounds(project: Project, id: string): Project {
  const next = updateMotif(project, id, (motif) => {
    if (motif.kind === 'rounds') return motif
    const kept: unknown = { ...withoutLook(motif), kind: 'rounds' }
    const read = roundsMotifSchema.safeParse(kept)
    const written = read.success
      ? read.data
      : {
          ...(kept as RoundsMotif),
          rounds: [],
          foundation: undefined,
          special: undefined,
          measured: undefined,
        }
    const measured = measuredOf(motif, written.measured)
    const weighed = written.weighed ?? weighedByColour(motif)
    return {
      ...written,
      ...(weighed ? { weighed } : {}),
      rounds: written.rounds ?? [],
      ...(measured && { measured }),
    }
  })
  return withYarns(next, id)
}

/** What was measured, beside written rounds: as it is now, and what another shape was measured by before. */
function measuredOf(motif: MeasuredMotif, before: MeasuredSizes | undefined): MeasuredSizes | undefined {
  const sizes: MeasuredSizes = { ...before }
  for (const key of [...MEASURES[motif.outline], ...ABOUT_MEASURES]) delete sizes[key]
  const told: MeasuredSizes = {}
  for (const key of MEASURES[motif.outline])
    if (motif[key] !== undefined && !isFromRounds(motif, key)) told[key] = motif[key]
  const about = Object.fromEntries(
    ABOUT_MEASURES.flatMap((key) => (motif[key] === undefined ? [] : [[key, motif[key]]])),
  )
  const measured: MeasuredSizes = { ...sizes, ...told, ...about }
  return before || Object.keys(measured).length > 0 ? measured : undefined
}

/** Takes out what stands in a motif only because its rounds were looked at as measures: its shape was not changed. */
function withoutLook(motif: MeasuredMotif): Partial<MeasuredMotif> {
  const { fromRounds, outline, petals } = motif
  if (!fromRounds || fromRounds.outline !== outline || fromRounds.petals !== petals) return motif
  const rest: Partial<MeasuredMotif> = { ...motif }
  for (const key of ['outline', 'petals', 'fromRounds', ...ALL_MEASURES, ...ABOUT_MEASURES] as const)
    delete rest[key]
  if (motif.slots?.every(({ grams }) => grams === undefined)) delete rest.slots
  return rest
}

/** What each colour of one motif weighs, as its whole weight and the shares in it; where every colour is weighed. */
function weighedByColour({ slots = [] }: MeasuredMotif): Weighed | undefined {
  const grams = slots.reduce((sum, slot) => sum + (slot.grams ?? 0), 0)
  if (slots.length === 0 || !slots.every((slot) => (slot.grams ?? 0) > 0)) return undefined
  return {
    motifs: 1,
    grams: Math.round(grams * 1000) / 1000,
    shares: Object.fromEntries(slots.map(({ slot, grams: own }) => [slot, own! / grams])),
  }
}

/**
 * From written rounds to measures; everything that was written stays. `account` tells what was not measured, and that
 * is marked as such.
 */
export function toMeasured(project: Project, id: string, account: MotifAccount | null): Project {
  return updateMotif(project, id, (motif): Motif => {
    if (motif.kind === 'measured') return motif
    const plain = slotsOf(motif).map((slot) => ({ slot }))
    const kept = measuredMotifSchema.safeParse({ ...motif, kind: 'measured' })
    if (kept.success)
      return { ...resumed(kept.data, motif.measured, account), slots: kept.data.slots ?? plain }
    const looked = lookedAt(motif, account)
    const read = measuredMotifSchema.safeParse(looked)
    return { ...looked, slots: (read.success && read.data.slots) || plain }
  })
}

/** Measures that were there before, as they are entered beside the rounds now. */
function resumed(
  kept: MeasuredMotif,
  entered: MeasuredSizes = {},
  account: MotifAccount | null,
): MeasuredMotif {
  const motif: MeasuredMotif = { ...kept }
  const given = account ? sizesFrom(account, kept.outline) : {}
  const sizes: Partial<Record<MeasureKey, number>> = {}
  const [lead] = MEASURES[kept.outline]
  for (const key of MEASURES[kept.outline]) {
    const isGiven = isFromRounds(kept, key)
    if (entered[key] !== undefined) motif[key] = entered[key]
    else if (given[key] !== undefined && (isGiven || key === lead)) motif[key] = sizes[key] = given[key]
    else if (isGiven) sizes[key] = kept[key]!
    else delete motif[key]
  }
  for (const key of ABOUT_MEASURES) delete motif[key]
  const about = Object.fromEntries(
    ABOUT_MEASURES.flatMap((key) => (entered[key] === undefined ? [] : [[key, entered[key]]])),
  )
  const { fromRounds, ...rest } = motif
  const isNoted = Object.keys(sizes).length > 0 || fromRounds
  return { ...rest, ...about, ...(isNoted && { fromRounds: { ...fromRounds, sizes } }) } as MeasuredMotif
}

/** The measures of rounds that have been known by nothing else, and which of them nobody has measured. */
function lookedAt(motif: RoundsMotif, account: MotifAccount | null): MeasuredMotif {
  const outline = account ? outlineOf(account) : 'petals'
  const petals = outline === 'petals' ? { petals: account?.petals ?? 6 } : {}
  const given = account ? sizesFrom(account, outline) : { overTips: 80, overValleys: 56 }
  const entered = motif.measured ?? {}
  const sizes = Object.fromEntries(Object.entries(given).filter(([key]) => entered[key] === undefined))
  const looked = { ...motif, kind: 'measured', outline, ...petals, ...given, ...entered } as unknown
  return { ...(looked as MeasuredMotif), fromRounds: { outline, ...petals, sizes } }
}

const SIDES: Readonly<Record<number, OutlineKind>> = { 4: 'square', 6: 'hexagon', 8: 'octagon' }

const outlineOf = ({ shape, petals }: MotifAccount): OutlineKind => {
  if (shape === 'petals' || shape === 'leaf') return shape
  return (shape === 'straight' && SIDES[petals]) || 'round'
}

/** What the ruler would show of a motif as it is worked out, by the measures of an outline; to a tenth of a mm. */
function sizesFrom(account: MotifAccount, outline: MeasuredOutline): Partial<Record<MeasureKey, number>> {
  const [tips, valleys] = [account.overTips, account.overValleys].map((mm) => Math.round(mm * 10) / 10)
  switch (outline) {
    case 'petals':
    case 'traced':
      return { overTips: tips!, ...(account.shape === 'petals' && { overValleys: valleys! }) }
    case 'leaf':
      return { length: tips!, ...(account.shape === 'leaf' && { width: valleys! }) }
    case 'round':
      return { across: tips! }
    default: {
      const sides = account.shape === 'straight' && SIDES[account.petals] === outline
      return { ...(sides && { sideToSide: valleys! }), pointToPoint: tips! }
    }
  }
}
