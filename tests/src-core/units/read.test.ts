import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  formatLength,
  formatMass,
  formatMinutes,
  formatMoney,
  formatNumber,
  formatYarnLength,
} from '../../../src-core/units/format'
import { readNumeral } from '../../../src-core/units/numerals'
import { readQuantity } from '../../../src-core/units/read'
import type { QuantityField, QuantityKind } from '../../../src-core/units/read'

const read = (text: string, kind: QuantityKind = 'length', more: Partial<QuantityField> = {}) => {
  const result = readQuantity(text, { kind, units: 'metric', ...more })
  return result.ok ? result.value : result.code
}
const imperial = { units: 'imperial' } as const

describe('numerals', () => {
  it.each([
    ['9.5', 9.5],
    ['9,5', 9.5],
    ['0,125', 0.125],
    ['.5', 0.5],
    [',5', 0.5],
    ['1,250', 1250],
    ['1.250', 1.25],
    ['1,234.5', 1234.5],
    ['1.234,5', 1234.5],
    ['1.234.567', 1234567],
    ['1,234,567', 1234567],
    ['1 234,5', 1234.5],
    ['12,34', 12.34],
    ['1234,567', 1234.567],
  ])('reads %s', (text, value) => {
    expect(readNumeral(text)).toBeCloseTo(value, 12)
  })

  it.each(['1,2,3', '1.2.3', '12,34,567', '1,234,56', '1.234.5', ',', '', '1,234.567,8'])(
    'does not guess %s',
    (text) => {
      expect(readNumeral(text)).toBeNull()
    },
  )
})

describe('lengths', () => {
  it.each([
    ['78', 78],
    ['4 in', 101.6],
    ['4in.', 101.6],
    ['9,5 cm', 95],
    ['12 1/2"', 317.5],
    ['12½ in', 317.5],
    ['3⅛ in', 79.375],
    ['½"', 12.7],
    ['1/2 in', 12.7],
    ['4\' 2"', 1270],
    ['4′2 1/2″', 1282.7],
    ["4'2''", 1270],
    ['4 ft 2 in', 1270],
    ['1 m 20 cm', 1200],
    ['1 yd', 914.4],
    ['−2 mm', -2],
    ['−4\' 2"', -1270],
    ['1\u202f300 mm', 1300],
    ['1,300 mm', 1300],
    ['1.3 m', 1300],
    ['130 CM', 1300],
  ])('reads %s', (text, value) => {
    expect(read(text)).toBeCloseTo(value, 9)
  })

  it('takes a number without a unit in the unit of the field', () => {
    expect(read('4', 'length', imperial)).toBeCloseTo(101.6, 9)
    expect(read('12 1/2', 'length', imperial)).toBeCloseTo(317.5, 9)
    expect(read('97.5', 'length', { bare: 'cm' })).toBeCloseTo(975, 9)
    expect(read('4 in', 'length', { bare: 'cm' })).toBeCloseTo(101.6, 9)
  })
})

describe('sums', () => {
  it.each([
    ['12*9.5', 114],
    ['12 × 9,5', 114],
    ['(3+4)*2 cm', 140],
    ['3 + 4 cm', 70],
    ['(3 + 4) cm', 70],
    ['(3 cm + 4 cm) * 2', 140],
    ['4 in + 1 cm', 111.6],
    ['2 * 4\' 2" + 10 cm', 2640],
    ['1 m - 20 cm', 800],
    ['1 m / 8', 125],
    ['24/6/3', 24 / 6 / 3],
    ['24 /6/3', 24 / 6 / 3],
    ['2/6/3', 2 / 6 / 3],
    ['2*6/3', 4],
    ['8-6/2', 5],
    ['3 - -2', 5],
    ['-(2+3)', -5],
    ['2 * (3 - 5)', -4],
    ['1/2 + 1/4', 0.75],
    ['2½*4', 10],
  ])('works out %s', (text, value) => {
    expect(read(text)).toBeCloseTo(value, 9)
  })

  it.each([
    ['4 in + 2', 'numbers/mixed'],
    ['10 cm / 2 cm', 'numbers/wrong-dimension'],
    ['2 cm * 3 cm', 'numbers/wrong-dimension'],
    ['5/0', 'numbers/divided-by-zero'],
    ['5/(3-3)', 'numbers/divided-by-zero'],
    ['1-1/2"', 'numbers/dashed-fraction'],
    ['', 'numbers/empty'],
    ['   ', 'numbers/empty'],
    ['abc', 'numbers/unknown-unit'],
    ['12 parsecs', 'numbers/unknown-unit'],
    ['12 g', 'numbers/other-unit'],
    ['3 4', 'numbers/unreadable'],
    ['4 ft 2', 'numbers/unreadable'],
    ['2 in 3 in', 'numbers/unreadable'],
    ['2(3)', 'numbers/unreadable'],
    ['(2)(3)', 'numbers/unreadable'],
    ['(2', 'numbers/unreadable'],
    ['2**3', 'numbers/unreadable'],
    ['2 //', 'numbers/unreadable'],
    ['+', 'numbers/unreadable'],
    ['in', 'numbers/unreadable'],
    ['1,2,3', 'numbers/unreadable'],
    ['constructor', 'numbers/unknown-unit'],
    ['t0', 'numbers/unknown-unit'],
    ['2; 3', 'numbers/unreadable'],
    ['[1]', 'numbers/unreadable'],
    ['1'.repeat(201), 'numbers/too-long'],
  ])('refuses %s', (text, code) => {
    expect(read(text)).toBe(code)
  })

  it('says what is wrong in words', () => {
    const found = readQuantity('12 g', { kind: 'length', units: 'metric' })
    expect(found).toEqual({
      ok: false,
      code: 'numbers/other-unit',
      message: "'g' is the unit of a weight; a length is expected.",
    })
  })
})

describe('other kinds', () => {
  it.each<[string, QuantityKind, number]>([
    ['4.2', 'mass', 4.2],
    ['1 kg', 'mass', 1000],
    ['1 lb 2 oz', 'mass', 18 * 28.349523125],
    ['125', 'yarnLength', 125],
    ['137 yd', 'yarnLength', 137 * 0.9144],
    ['€31.20', 'money', 31.2],
    ['31,20 €', 'money', 31.2],
    ['SEK 310', 'money', 310],
    ['-$3.50', 'money', -3.5],
    ['2 * €3.90 + €1', 'money', 8.8],
    ['1,344', 'count', 1344],
    ['12*14', 'count', 168],
    ['22.5°', 'angle', 22.5],
    ['45 min', 'time', 45],
    ['2 h 30 min', 'time', 150],
    ['1.5 h', 'time', 90],
    ['10 %', 'percent', 10],
    ['10', 'percent', 10],
  ])('reads %s as %s', (text, kind, value) => {
    expect(read(text, kind)).toBeCloseTo(value, 9)
  })

  it('refuses what the kind does not allow', () => {
    expect(read('2.5', 'count')).toBe('numbers/not-whole')
    expect(read('€3 + $2', 'money')).toBe('numbers/two-currencies')
    expect(read('3 cm', 'mass')).toBe('numbers/other-unit')
    expect(read('-1', 'count', { least: 0 })).toBe('numbers/too-small')
    expect(read('101', 'percent', { most: 100 })).toBe('numbers/too-large')
    expect(read('100', 'percent', { most: 100 })).toBe(100)
  })
})

const lengths = fc.double({ min: -1e5, max: 1e5, noNaN: true })
const near = (text: string, kind: QuantityKind, value: number, rounding: number) => {
  const result = read(text, kind)
  expect(typeof result, text).toBe('number')
  expect(Math.abs(Number(result) - value), text).toBeLessThanOrEqual(rounding * (1 + 1e-9) + 1e-9)
}

describe('what is printed reads back within its rounding', () => {
  it('lengths: 0.05 mm under 30 cm, 0.5 mm from there on, a sixteenth of an inch', () => {
    fc.assert(
      fc.property(lengths, (mm) => {
        near(formatLength(mm, 'metric'), 'length', mm, Math.abs(mm) < 300 ? 0.05 : 0.5)
        near(formatLength(mm, 'imperial'), 'length', mm, 25.4 / 16)
      }),
    )
  })

  it('weights and lengths of yarn', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (value) => {
        const { abs } = Math
        near(formatMass(value, 'metric'), 'mass', value, abs(value) < 20 ? 0.05 : 0.5)
        near(formatMass(value, 'imperial'), 'mass', value, 0.05 * 28.349523125)
        near(formatYarnLength(value, 'metric'), 'yarnLength', value, abs(value) < 20 ? 0.05 : 0.5)
        near(formatYarnLength(value, 'imperial'), 'yarnLength', value, abs(value / 0.9144) < 20 ? 0.05 : 0.5)
      }),
    )
  })

  it('money in many currencies, times, counts, plain numbers', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.constantFrom('EUR', 'USD', 'GBP', 'CAD', 'AUD', 'SEK', 'CHF', 'JPY', 'NZD', 'INR', 'PLN'),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.integer({ min: -1e7, max: 1e7 }),
        (amount, currency, minutes, count) => {
          near(formatMoney(amount, currency), 'money', amount, currency === 'JPY' ? 0.5 : 0.005)
          near(formatMinutes(minutes), 'time', minutes, minutes < 599.5 ? 0.5 : 30.5)
          near(formatNumber(count), 'count', count, 0)
          near(`${formatNumber(amount, 2)} %`, 'percent', amount, 0.005)
        },
      ),
    )
  })
})

describe('sums follow arithmetic', () => {
  it('agrees with the numbers themselves', () => {
    const small = fc.integer({ min: 1, max: 999 }).map((value) => value / 8)
    fc.assert(
      fc.property(small, small, small, fc.constantFrom('mm', 'cm', 'in', 'ft'), (a, b, c, unit) => {
        const one = Number(read(`1 ${unit}`))
        expect(read(`(${a} + ${b}) * ${c} ${unit}`)).toBeCloseTo((a + b) * c * one, 6)
        expect(read(`${a} ${unit} - ${b} ${unit} * ${c}`)).toBeCloseTo((a - b * c) * one, 6)
        expect(read(`${a} / ${b} ${unit}`)).toBeCloseTo((a / b) * one, 6)
      }),
    )
  })

  it('never throws and never answers a number that is none, whatever is typed', () => {
    const signs = fc.constantFrom(...'0123456789.,+-*/() \'"½°%€einmcft')
    const kinds = fc.constantFrom<QuantityKind>('length', 'mass', 'money', 'count', 'time', 'percent')
    const texts = fc.oneof(
      fc.string(),
      fc.array(signs, { maxLength: 30 }).map((typed) => typed.join('')),
    )
    fc.assert(
      fc.property(texts, kinds, (text, kind) => {
        const result = readQuantity(text, { kind, units: 'metric' })
        if (result.ok) expect(Number.isFinite(result.value)).toBe(true)
        else expect(result.message.length).toBeGreaterThan(5)
      }),
      { numRuns: 2000 },
    )
  })
})
