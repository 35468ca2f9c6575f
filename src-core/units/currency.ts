/** Currencies as people write them: the three letters of ISO 4217, or a sign (Unicode CLDR through Intl). */

import { currencySign } from './language'

/** A sign is that of several currencies; these come first, the ones most traded (from memory). */
const FIRST = [
  'USD',
  'EUR',
  'GBP',
  'JPY',
  'INR',
  'KRW',
  'BRL',
  'PLN',
  'CZK',
  'HUF',
  'ILS',
  'TRY',
  'UAH',
] as const
const isCode = (text: string): boolean => /^[A-Z]{3}$/.test(text)

/** Currencies whose smallest coin is not a hundredth, by its decimals (ISO 4217, list one). */
const COIN_DECIMALS: Readonly<Record<number, readonly string[]>> = {
  0: 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF'.split(' '),
  3: 'BHD IQD JOD KWD LYD OMR TND'.split(' '),
}

/** With how many decimals amounts are written: two in most currencies. */
export function decimalsOf(currency: string): number {
  const [decimals] = Object.entries(COIN_DECIMALS).find(([, codes]) => codes.includes(currency)) ?? ['2']
  return Number(decimals)
}

/** How many of the smallest coins make one: 100 of most currencies. */
export const coinsIn = (currency: string): number => 10 ** decimalsOf(currency)

/** Whether a sign or three letters can mean a currency: "$" and "CA$" both mean CAD. */
export function meansCurrency(named: string, code: string): boolean {
  if (named === code) return true
  if (!isCode(code)) return false
  const narrow = currencySign(code, 'narrowSymbol')
  return (
    named === `${code.slice(0, 2)}${narrow}` || named === narrow || named === currencySign(code, 'symbol')
  )
}

/** The code of what somebody entered as a currency: "gbp" and "£" are GBP; null where it is none. */
export function currencyCode(text: string): string | null {
  const named = text.trim().toUpperCase()
  if (isCode(named)) return named
  return FIRST.find((code) => meansCurrency(text.trim(), code)) ?? null
}
