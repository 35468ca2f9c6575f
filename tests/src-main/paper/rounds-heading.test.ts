/** What stands over printed rounds: "as written" is only said of the designer's own words. */
import { expect, it } from 'vitest'
import { instructionsHeading, roundsHeading } from '../../../src-main/paper/words-motif'

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

it.each([
  [['Materials: Harbour cotton, 50 g / 125 m. Hook 3.5 mm.'], 'What the pattern asks for'],
  [['You will need: a hook and three buttons', 'Yarn: 10 g'], 'What the pattern asks for'],
  [['Materials: cotton', 'Rnd 1: 8 sc in ring, joining as you go.'], 'Instructions'],
  [['Materials lie flat when they are steamed'], 'Instructions'],
  [['Ch 4, join in a ring.'], 'Instructions'],
])('%s stands under “%s”', (lines, heading) => {
  expect(instructionsHeading(lines)).toBe(heading)
})
