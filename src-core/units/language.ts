/**
 * Numbers, money and plurals as the language of the texts has them: the one place that asks the platform for them.
 * US and UK English group and count alike (Unicode CLDR, plural rules and number patterns of en and en-GB), so that
 * one set serves both; money keeps the short signs of its currency.
 */
const LANGUAGE = 'en'

/** Making a formatter costs a hundred times what using one does. */
const numbers = new Map<number, Intl.NumberFormat>()
const currencies = new Map<string, Intl.NumberFormat>()
const plurals = new Intl.PluralRules(LANGUAGE)

/** A number with at most `digits` decimals, thousands grouped, no trailing zeros: "1,200", "-4.5". */
export function writeNumber(value: number, digits: number): string {
  const known = numbers.get(digits) ?? new Intl.NumberFormat(LANGUAGE, { maximumFractionDigits: digits })
  numbers.set(digits, known)
  return known.format(value)
}

/** An amount in a currency by its code: "€31.20". Throws a RangeError for what is not a code. */
export function writeMoney(amount: number, currency: string): string {
  const style = { style: 'currency', currency } as const
  const known = currencies.get(currency) ?? new Intl.NumberFormat(LANGUAGE, style)
  currencies.set(currency, known)
  return known.format(amount)
}

/** The sign of a currency by its code, narrow ("$") or told apart from others ("CA$"); the code where it has none. */
export function currencySign(code: string, currencyDisplay: 'narrowSymbol' | 'symbol'): string {
  const sign = new Intl.NumberFormat(LANGUAGE, { style: 'currency', currency: code, currencyDisplay })
  return sign.formatToParts(0).find(({ type }) => type === 'currency')?.value ?? code
}

/** A moment on the clock of this machine: "Nov 30, 2026, 14:05". */
export const writeMoment = (time: Date): string =>
  new Intl.DateTimeFormat(LANGUAGE, {
    ...{ year: 'numeric', month: 'short', day: 'numeric', hour: '2-digit', minute: '2-digit' },
    hourCycle: 'h23',
  }).format(time)

/** The word for one, or for any other number: of rows, of "1,200", of 1.5. */
export function plural(count: number, one: string, many = `${one}s`): string {
  return plurals.select(count) === 'one' ? one : many
}
