/**
 * M52: the cheapest mix of pack sizes that holds at least so many grams, exactly, by dynamic programming over
 * whole units of weight. Of mixes at one price the one with the least left over is taken, then the one with
 * the fewest packs.
 */
import type { BoughtPack } from '../../../shared-types/plan'
import type { Grams } from '../../units/quantity'

export interface Pack {
  readonly grams: Grams
  readonly price: number
}

/** Packs are told apart to a tenth of a gram. */
export const PACK_STEP: Grams = 0.1
/** Cells of the table: 200 kg in tenths of a gram, two tonnes in whole ones, more where packs divide evenly. */
const MOST_CELLS = 2_000_000

/** Prices are compared in ten-thousandths, so that sums of cents are exact. */
const MONEY = 10_000

const tenths = (grams: Grams): number => Math.round(grams / PACK_STEP)
const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b))

/**
 * The cheapest mix for `needed` grams; nothing for a need of 0, null where the need is beyond the table or
 * there are no packs. Packs must weigh whole tenths of a gram, at least one.
 */
export function cheapestMix(packs: readonly Pack[], needed: Grams): BoughtPack[] | null {
  if (needed <= 0) return []
  if (packs.length === 0) return null
  const unit = packs.map((pack) => tenths(pack.grams)).reduce(divisor)
  // A hair over a whole pack is rounding, not yarn.
  const cells = Math.max(1, Math.ceil(needed / PACK_STEP / unit - 1e-6))
  if (!(cells <= MOST_CELLS)) return null
  const sizes = packs.map((pack) => tenths(pack.grams) / unit)
  const prices = packs.map((pack) => Math.round(pack.price * MONEY))
  // best[n]: what n units or more cost at least, with how much is bought and in how many packs.
  const cost = new Float64Array(cells + 1)
  const held = new Float64Array(cells + 1)
  const count = new Int32Array(cells + 1)
  const chosen = new Int32Array(cells + 1).fill(-1)
  for (let n = 1; n <= cells; n++) {
    cost[n] = Infinity
    for (let i = 0; i < sizes.length; i++) {
      const rest = Math.max(0, n - sizes[i]!)
      const price = cost[rest]! + prices[i]!
      const weight = held[rest]! + sizes[i]!
      const number = count[rest]! + 1
      const better =
        price < cost[n]! ||
        (price === cost[n]! && (weight < held[n]! || (weight === held[n]! && number < count[n]!)))
      if (!better) continue
      cost[n] = price
      held[n] = weight
      count[n] = number
      chosen[n] = i
    }
  }
  const bought = new Array<number>(packs.length).fill(0)
  for (let n = cells; n > 0;) {
    const i = chosen[n]!
    bought[i]!++
    n = Math.max(0, n - sizes[i]!)
  }
  return packs
    .map(({ grams, price }, i) => ({ grams, price, count: bought[i]! }))
    .filter((pack) => pack.count > 0)
    .sort((a, b) => b.grams - a.grams)
}
