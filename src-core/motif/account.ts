/** One motif of the project → its account: outline, anchors, sizes. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { Hand, Motif, Terms } from '../../shared-types/project'
import type { ResolvedGauge } from '../stitches/gauge'
import { measuredAccount } from './measured'
import { roundsAccount } from './rounds/account'

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
  return motif.kind === 'measured' ? measuredAccount(motif, context) : roundsAccount(motif, context)
}
