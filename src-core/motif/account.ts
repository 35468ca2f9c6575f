/** One motif of the project → its account: outline, anchors, sizes. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import { roundsMotifSchema } from '../../shared-types/project'
import type { Hand, MeasuredMotif, Motif, RoundsMotif, Terms } from '../../shared-types/project'
import { remembered } from '../memo'
import type { ResolvedGauge } from '../stitches/gauge'
import { measuredAccount } from './measured'
import { roundsAccount } from './rounds/account'
import { otherHookSizes } from './taken-with'

interface AccountContext {
  readonly hand: Hand
  readonly terms: Terms
  /** M18: growth in blocking as a share, for motifs measured before it. */
  readonly growth: number
}

/**
 * The account of a motif with the gauge that it is worked in, or null with findings that say why there is none; from written rounds also the gauge
 * as their own measures calibrate it.
 */
export function motifAccount(
  motif: Motif,
  context: AccountContext,
): { account: MotifAccount | null; findings: readonly Finding[]; gauge?: ResolvedGauge } {
  if (motif.kind === 'rounds') return asTaken(motif, context, roundsAccount(motif, context))
  const told = asTaken(motif, context, measuredAccount(motif, context))
  const rounds = keptRounds(motif)
  const written = rounds && roundsAccount(rounds, context).account?.metres
  return told.account && written ? { ...told, account: { ...told.account, written } } : told
}

/** An account with what is to be said of sizes that were measured with another hook. */
function asTaken<Told extends { account: MotifAccount | null; findings: readonly Finding[] }>(
  motif: Motif,
  { terms }: AccountContext,
  told: Told,
): Told {
  const more = told.account ? otherHookSizes(motif, told.account, terms) : []
  if (!told.account || more.length === 0) return told
  const findings = [...told.findings, ...more]
  return { ...told, account: { ...told.account, findings }, findings }
}

/** The written rounds that a motif keeps while it goes by measures, as far as they can be read; null without any. */
const keptRounds = remembered((motif: MeasuredMotif): RoundsMotif | null => {
  if (!Array.isArray(motif.rounds)) return null
  const { measured: _, ...kept } = motif
  const read = roundsMotifSchema.safeParse({ ...kept, kind: 'rounds' })
  return read.success ? read.data : null
})
