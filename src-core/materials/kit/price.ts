/** M52: from the cost of a kit to its price, to what is asked, and to when the run is paid for. */
import type { KitNumbers } from './read'

/**
 * Price before tax: (cost + fixed fees)/(1 − margin − share of fees). The caller sees to it that margin and
 * share stay under 100 % together.
 */
export const priceOf = (
  cost: number,
  { margin, feeShare, feeFixed }: Pick<KitNumbers, 'margin' | 'feeShare' | 'feeFixed'>,
): number => (cost + feeFixed) / (1 - margin / 100 - feeShare / 100)

const cents = (amount: number): number => Math.round(amount * 100 + 1e-7)

/** What is asked, in whole cents: price and tax are rounded once each, and their sum is what is paid. */
export function toCents(
  price: number,
  taxPercent: number,
): { beforeTax: number; tax: number; withTax: number } {
  const beforeTax = cents(price)
  const tax = cents((beforeTax / 100) * (taxPercent / 100))
  return { beforeTax: beforeTax / 100, tax: tax / 100, withTax: (beforeTax + tax) / 100 }
}

/** Kits to sell before the run has paid for itself: its cost over what is left of each price after fees. */
export function breakEven(
  runCost: number,
  price: number,
  { feeShare, feeFixed }: Pick<KitNumbers, 'feeShare' | 'feeFixed'>,
): number | null {
  const left = price * (1 - feeShare / 100) - feeFixed
  return left > 0 ? Math.ceil(runCost / left - 1e-9) : null
}
