/** The fillers of a plan by their motif: how many, in which openings, how often they are joined. */
import type { MotifAccount, PlacedFiller, Plan } from '../../shared-types/plan'
import { listOf } from '../joins/words'
import { formatLength } from '../units/format'
import type { Millimetres } from '../units/quantity'
import type { UnitSystem } from '../../shared-types/project'

export interface FillersOfMotif {
  readonly account: MotifAccount
  readonly fillers: readonly PlacedFiller[]
  /** Radii of the openings, the largest first. */
  readonly radii: readonly Millimetres[]
  readonly joins: number
}

export const fillersByMotif = (plan: Plan): FillersOfMotif[] =>
  plan.fillerMotifs.map((account) => {
    const fillers = plan.fillers.filter(({ motif }) => motif === account.id)
    const kinds = plan.openings.filter(({ filler }) => filler === account.id)
    return {
      ...{ account, fillers },
      radii: kinds.map(({ radius }) => radius),
      joins: fillers.reduce((sum, { joins }) => sum + joins, 0),
    }
  })

/** "in openings of 3.3 cm and 1.2 cm": how wide the largest circles in them are. */
export function openingWords({ radii }: Pick<FillersOfMotif, 'radii'>, units: UnitSystem): string {
  return `in openings of ${listOf([...new Set(radii.map((radius) => formatLength(2 * radius, units)))])}`
}
