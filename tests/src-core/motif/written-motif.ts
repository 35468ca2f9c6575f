/** A motif in written rounds, worked: every text is our own. */
import { expect } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'

export const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

/** What follows from rounds without errors, for a right hand in US terms. */
export function workedMotif(rounds: readonly string[], foundation: RoundsMotif['foundation']) {
  const motif: RoundsMotif = {
    ...{ id: 'm', kind: 'rounds', gauge: GAUGE, foundation },
    rounds: rounds.map((work) => ({ work })),
  }
  const worked = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
  expect(worked.findings.filter(({ severity }) => severity === 'error')).toEqual([])
  return worked
}
