/** What a motif in written rounds says beside its words, as far as it can be used: the rest is told and left out. */
import type { Finding } from '../../../shared-types/finding'
import type { MeasuredSizes, RoundsMotif } from '../../../shared-types/project'
import { finding } from '../../findings/finding'
import { boundValues, lengthValue } from '../../findings/quantities'
import { remembered } from '../../memo'
import { LIMITS } from '../../notation/limits'
import { MOTIF_SIZE } from '../constants'

interface UsableRounds {
  readonly motif: RoundsMotif
  readonly findings: readonly Finding[]
}

const MEASURES = {
  overTips: 'tip to tip',
  overValleys: 'dip to dip',
  across: 'across',
  sideToSide: 'side to side',
  pointToPoint: 'point to point',
  length: 'the length',
  width: 'the width',
} as const

/** The motif without numbers that nobody can work or measure. */
export const usableRounds = remembered((motif: RoundsMotif): UsableRounds => {
  const findings: Finding[] = []
  const where = `motif ${motif.id}`
  /** A length in mm that was given and can be one; 0 is none. */
  const isLength = (value: number | undefined, what: string): boolean => {
    if (!value || (value >= MOTIF_SIZE.least && value <= MOTIF_SIZE.most)) return true
    const values = { what, received: lengthValue(value), ...boundValues(MOTIF_SIZE) }
    findings.push(finding('motif/size-range', where, values, { motif: motif.id }))
    return false
  }
  const isCount = (value: number | undefined, what: string): boolean => {
    if (value === undefined || (Number.isInteger(value) && value >= 0 && value <= LIMITS.chains)) return true
    const values = { what, received: String(value), most: LIMITS.chains }
    findings.push(finding('motif/chains', where, values, { motif: motif.id }))
    return false
  }
  const { foundation, rounds, measured } = motif
  const usable: RoundsMotif = {
    ...motif,
    ...(foundation && {
      foundation: without(foundation, [
        ...(isCount(foundation.chains, 'the ring') ? [] : (['chains'] as const)),
        ...(isCount(foundation.chain, 'the foundation chain') ? [] : (['chain'] as const)),
      ]),
    }),
    ...(rounds && {
      rounds: rounds.map((round, i) =>
        isLength(round.across, `across round ${i + 1}`) ? round : without(round, ['across']),
      ),
    }),
    ...(measured && {
      measured: without(
        measured,
        Object.entries(MEASURES).flatMap(([key, what]) => {
          const measure = key as keyof typeof MEASURES
          return isLength(measured[measure], what) ? [] : [measure satisfies keyof MeasuredSizes]
        }),
      ),
    }),
  }
  return { motif: findings.length > 0 ? usable : motif, findings }
})

function without<Fields extends object>(fields: Fields, names: readonly (keyof Fields)[]): Fields {
  if (names.length === 0) return fields
  const rest = { ...fields }
  for (const name of names) delete rest[name]
  return rest
}
