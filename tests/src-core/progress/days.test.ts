/** Days as they are written where the terms are at home. */
import { describe, expect, it } from 'vitest'
import { dayIn } from '../../../src-core/progress/days'

describe('a day of the log', () => {
  it.each([
    ['2026-12-01', 'UK', '1 December 2026'],
    ['2026-12-01', 'US', 'December 1, 2026'],
    ['2027-01-31', 'UK', '31 January 2027'],
    ['some day', 'US', 'some day'],
  ] as const)('%s in %s terms: %s', (day, terms, words) => {
    expect(dayIn(day, terms)).toBe(words)
  })
})
