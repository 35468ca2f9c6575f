import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { formatMass, formatYarnLength, totalMass, totalYarnLength } from '../../../src-core/units/format'

/** What somebody reads off "1,204 g". */
const read = (words: string): number =>
  Number(words.replace(/ .*$/, '').replaceAll(',', '').replace('−', '-'))

describe('a sum beside its parts', () => {
  it('is what the parts add up to as they are shown', () => {
    const parts = [501.6, 1203.5]
    expect(parts.map((grams) => formatMass(grams, 'metric'))).toEqual(['502 g', '1,204 g'])
    expect(formatMass(501.6 + 1203.5, 'metric')).toBe('1,705 g')
    expect(formatMass(totalMass(parts, 'metric'), 'metric')).toBe('1,706 g')
    expect(totalMass([], 'imperial')).toBe(0)
  })

  it('comes out for any masses and lengths, in both units', () => {
    const amounts = fc.array(fc.double({ min: 0, max: 20_000, noNaN: true }), { maxLength: 12 })
    fc.assert(
      fc.property(amounts, fc.constantFrom('metric', 'imperial'), (parts, units) => {
        const check = (shown: string, byHand: number): void => {
          // A small part may show decimals that a large sum does not.
          const decimals = shown.match(/\.(\d+)/)?.[1]?.length ?? 0
          const half = 0.5 * 10 ** -Math.max(decimals, byHand < 20 ? 1 : 0)
          expect(Math.abs(read(shown) - byHand)).toBeLessThan(half + 1e-6)
        }
        const added = (shown: readonly string[]): number => shown.reduce((sum, part) => sum + read(part), 0)
        check(formatMass(totalMass(parts, units), units), added(parts.map((part) => formatMass(part, units))))
        check(
          formatYarnLength(totalYarnLength(parts, units), units),
          added(parts.map((part) => formatYarnLength(part, units))),
        )
      }),
    )
  })
})
