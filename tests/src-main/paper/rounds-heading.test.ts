/** What stands over printed rounds: "as written" is only said of the designer's own words. */
import { expect, it } from 'vitest'
import { roundsHeading } from '../../../src-main/paper/words-motif'

it.each([
  [undefined, 'US', 'US', 'Rounds as written, in US terms'],
  [undefined, 'US', 'UK', 'Rounds in UK terms, translated from US'],
  ['UK', 'US', 'US', 'Rounds in US terms, translated from UK'],
  ['UK', 'US', 'UK', 'Rounds in UK terms'],
  ['UK', 'UK', 'UK', 'Rounds as written, in UK terms'],
  ['US', 'US', 'UK', 'Rounds in UK terms, translated from US'],
] as const)('a page in %s terms, kept in %s, printed in %s', (terms, kept, printed, words) => {
  const page = terms && { text: 'UK terms', terms }
  expect(roundsHeading({ id: 'm', kind: 'rounds', page }, kept, printed)).toBe(words)
})
