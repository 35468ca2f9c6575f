/** Signs of currencies against Unicode CLDR (through Intl), codes of ISO 4217. */
import { describe, expect, it } from 'vitest'
import { currencyCode, meansCurrency } from '../../../src-core/units/currency'
import { readQuantity } from '../../../src-core/units/read'

describe('a currency as people write it', () => {
  it.each([
    ['£', 'GBP'],
    [' gbp ', 'GBP'],
    ['€', 'EUR'],
    ['$', 'USD'],
    ['¥', 'JPY'],
    ['zł', 'PLN'],
    ['pounds', null],
    ['', null],
    ['£$', null],
  ])('%s is %s', (text, code) => {
    expect(currencyCode(text)).toBe(code)
  })

  it.each([
    ['$', 'CAD', true],
    ['CA$', 'CAD', true],
    ['US$', 'USD', true],
    ['US$', 'CAD', false],
    ['£', 'USD', false],
    ['£', 'GBP', true],
    ['GBP', 'GBP', true],
    ['EUR', 'GBP', false],
    ['£', 'P1', false],
  ])('%s may mean %s: %s', (named, code, may) => {
    expect(meansCurrency(named, code)).toBe(may)
  })

  it('is refused in an amount of another one, by name', () => {
    const read = (text: string, currency: string) =>
      readQuantity(text, { kind: 'money', units: 'metric', currency })
    expect(read('£3.40', 'USD')).toMatchObject({
      ok: false,
      code: 'numbers/other-currency',
      message: "'£' is not USD, which this project counts in. The currency stands in the settings.",
    })
    expect(read('£3.40', 'GBP')).toEqual({ ok: true, value: 3.4 })
    expect(read('3.40 EUR', 'GBP')).toMatchObject({ code: 'numbers/other-currency' })
    expect(read('3.40', 'GBP')).toEqual({ ok: true, value: 3.4 })
  })
})
