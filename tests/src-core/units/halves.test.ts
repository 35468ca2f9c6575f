/** Sizes are sums of many lengths: what one is off by in its last digits never decides how it is told. */
import { expect, it } from 'vitest'
import { formatEighths, formatNumber, formatSize } from '../../../src-core/units/format'

it('rounds a half alike, whichever way it came about', () => {
  // 10.5 motifs of 119 mm, by themselves and with a border of 1.1 mm that is taken off again.
  const [plain, less] = [10.5 * 119, 1249.5 - 1e-10]
  expect(formatSize(plain, 1374, 'metric')).toBe('125 × 137.4 cm')
  expect(formatSize(less, 1374, 'metric')).toBe('125 × 137.4 cm')
  expect(formatNumber(2.5 - 1e-13)).toBe(formatNumber(2.5))
  expect(formatEighths(25.4 * (1 + 1 / 16) - 1e-11)).toBe(formatEighths(25.4 * (1 + 1 / 16)))
  // A millionth of a millimetre less is less.
  expect(formatNumber(2.499999)).toBe('2')
})
