/** One motif of the project → its account: outline, anchors, sizes. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount } from '../../shared-types/plan'
import type { Hand, Motif } from '../../shared-types/project'
import { finding } from '../findings/finding'
import { measuredAccount } from './measured'

export interface AccountContext {
  readonly hand: Hand
  /** M18: growth in blocking as a share, for motifs measured before it. */
  readonly growth: number
}

/** The account of a motif, or null with findings that say why there is none. */
export function motifAccount(
  motif: Motif,
  context: AccountContext,
): { account: MotifAccount | null; findings: readonly Finding[] } {
  if (motif.kind === 'measured') return measuredAccount(motif, context)
  return {
    account: null,
    findings: [finding('motif/no-outline', `motif ${motif.id}`, {}, { motif: motif.id })],
  }
}
