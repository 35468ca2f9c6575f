/**
 * M52: from the cost of a kit to its price, to what is asked, and to when the run is paid for. What is asked is counted
 * in whole coins, the smallest of the currency; nothing else of the project adds up money that is paid.
 */
import { coinsIn } from '../../units/currency'
import type { KitNumbers } from './read'

type Fees = Pick<KitNumbers, 'feeShare' | 'feeFixed' | 'feesOnTax' | 'taxPercent'>

/** The share of fees as a percentage of the price before tax, whatever it is charged on. */
export const feesOfPrice = ({ feeShare, feesOnTax, taxPercent }: Omit<Fees, 'feeFixed'>): number =>
  feesOnTax ? feeShare * (1 + taxPercent / 100) : feeShare

/**
 * Price before tax: (cost + fixed fees)/(1 − margin − share of fees), the share being that of the price before tax. The
 * caller sees to it that margin and share stay under 100 % together.
 */
export const priceOf = (cost: number, numbers: Pick<KitNumbers, 'margin'> & Fees): number =>
  (cost + numbers.feeFixed) / (1 - numbers.margin / 100 - feesOfPrice(numbers) / 100)

/** What is asked for one kit: beforeTax + tax = withTax. */
interface Asked {
  readonly beforeTax: number
  readonly tax: number
  readonly withTax: number
}

const coins = (amount: number, coinsInOne: number): number => Math.round(amount * coinsInOne + 1e-7)

/** What is asked, in whole coins: price and tax are rounded once each, and their sum is what is paid. */
export function toCents(price: number, taxPercent: number, currency = ''): Asked {
  const inOne = coinsIn(currency)
  const beforeTax = coins(price, inOne)
  const tax = coins((beforeTax / inOne) * (taxPercent / 100), inOne)
  return { beforeTax: beforeTax / inOne, tax: tax / inOne, withTax: (beforeTax + tax) / inOne }
}

/** A coin in this many parts: whole numbers of them divide without the dust of binary fractions. */
const PARTS = 1e4

/**
 * Kits to sell, at the price that is asked, before the run has paid for itself: its cost over what is left of each
 * price after fees. A price that was rounded down may leave a few coins of a whole run open when it has no margin to
 * take them from: then all are to be sold, and `short` is what is still missing.
 */
export function breakEven(
  runCost: number,
  asked: Asked,
  {
    count,
    feeShare,
    feeFixed,
    feesOnTax,
  }: Pick<KitNumbers, 'count' | 'feeShare' | 'feeFixed'> & Partial<Pick<KitNumbers, 'feesOnTax'>>,
  currency = '',
): { kits: number; short: number } | null {
  const inOne = coinsIn(currency)
  const parts = (amountInCoins: number): number => Math.round(amountInCoins * PARTS)
  const charged = coins(feesOnTax ? asked.withTax : asked.beforeTax, inOne)
  const left = parts(coins(asked.beforeTax, inOne) - (charged * feeShare) / 100 - feeFixed * inOne)
  if (left <= 0) return null
  const cost = parts(runCost * inOne)
  const kits = Math.ceil(cost / left)
  if (kits <= count) return { kits, short: 0 }
  return { kits: count, short: Math.ceil((cost - left * count) / PARTS) / inOne }
}
