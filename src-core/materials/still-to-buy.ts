/**
 * What is still to be bought of a yarn that was weighed or counted again: as much as its forecast says will be missing. Before it
 * was weighed, that follows from the plan alone; afterwards both would be told side by side, and differ.
 */
import type { Forecast, YarnNeed } from '../../shared-types/plan'
import type { Yarn } from '../../shared-types/project'
import { isUsableOrZero } from '../units/usable'
import { positiveOrNull, wholeBalls } from './ledger'

/** The needs, those that a forecast tells of brought to it. */
export function stillToBuy(
  needs: readonly YarnNeed[],
  forecast: readonly Forecast[],
  yarns: readonly Yarn[],
): readonly YarnNeed[] {
  if (forecast.length === 0) return needs
  return needs.map((need) => {
    const told = forecast.find(({ yarn }) => yarn === need.id)
    const yarn = yarns.find(({ id }) => id === need.id)
    const ballGrams = positiveOrNull(yarn?.ballGrams)
    if (!told || !yarn) return need
    if (need.noMore) {
      const leftover = Math.max(0, told.plan ? told.left - told.plan.expected : told.over)
      return { ...need, again: true as const, noMore: { missing: told.missing }, leftover }
    }
    if (ballGrams === null || need.toBuy === null) return need
    // Whatever it was begun with, what was weighed is there.
    const toBuy = wholeBalls(told.missing, ballGrams, told.left + told.missing)
    const price = isUsableOrZero(yarn.price) ? yarn.price : null
    const { left, missing, over, plan } = told
    return {
      ...need,
      again: true as const,
      toBuy,
      leftover: toBuy * ballGrams + (plan ? left - plan.expected : over - missing),
      cost: price === null ? null : toBuy * price,
    }
  })
}
