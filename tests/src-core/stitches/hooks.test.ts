/** Hooks by US letter and number: §yarn-weights. */
import { expect, it } from 'vitest'
import { hookWords } from '../../../src-core/stitches/hooks'

it.each([
  [3.5, '3.5 mm (US E-4)'],
  [4.5, '4.5 mm (US 7)'],
  [5, '5 mm (US H-8)'],
  [6.5, '6.5 mm (US K-10½)'],
  [9, '9 mm (US M/N-13)'],
  // Between two of the table, and thinner than all of it.
  [4.25, '4.25 mm'],
  [1.5, '1.5 mm'],
])('a hook of %s mm has its US name for readers of US terms alone', (mm, told) => {
  expect(hookWords(mm, 'US')).toBe(told)
  expect(hookWords(mm, 'UK')).toBe(`${mm} mm`)
})
