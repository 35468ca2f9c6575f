/** What all the yarn of a project costs: whole balls for the whole need, whatever is on hand, made or bought already. */
import type { YarnNeed } from '../../shared-types/plan'
import type { Yarn } from '../../shared-types/project'
import { isUsableOrZero } from '../units/usable'

/** Less is no difference in money. */
export const PENNY = 0.005

/** The cost of whole balls of the yarns that a price and a need are known of; null where there is none. */
export function wholeCost(
  needs: readonly Pick<YarnNeed, 'id' | 'balls'>[],
  yarns: readonly Yarn[],
): number | null {
  const costs = needs.flatMap(({ id, balls }) => {
    const price = yarns.find((yarn) => yarn.id === id)?.price
    return balls !== null && isUsableOrZero(price) ? [balls * price] : []
  })
  return costs.length > 0 ? costs.reduce((sum, cost) => sum + cost, 0) : null
}
