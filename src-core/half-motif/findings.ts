/** What is said of half motifs: whether somebody said how they are worked, whether it follows from the rounds. */
import type { Finding } from '../../shared-types/finding'
import type { MotifAccount, PlacedHalf } from '../../shared-types/plan'
import type { Settled } from '../../shared-types/settled'
import { finding } from '../findings/finding'
import { isUndesigned } from '../layout/halves'
import { halfFor, saysHalf } from './half-motif'

/**
 * Findings with what is known of halves that no designer worked out: nothing is said where the instructions of their motif
 * speak of them, and rows that follow from its rounds are told as a suggestion.
 */
export const halfFindings = (
  findings: readonly Finding[],
  project: Settled,
  accounts: readonly MotifAccount[],
  halves: readonly PlacedHalf[],
): Finding[] =>
  findings.flatMap((each) => {
    const id = isUndesigned(each) ? each.target?.motif : undefined
    const motif = project.motifs.find((own) => own.id === id)
    const account = accounts.find((own) => own.id === id)
    if (!motif || !account) return [each]
    if (saysHalf(motif)) return []
    const half = halfFor(project, account, halves, accounts[0]?.id)
    if (!half) return [each]
    const values = { motif: account.name || account.id, rows: half.rows.length, stitches: half.stitches }
    return [finding('layout/half-suggested', 'layout.halves', values, { motif: account.id })]
  })
