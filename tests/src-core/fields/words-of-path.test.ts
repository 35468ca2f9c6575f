import { expect, it } from 'vitest'
import { wordsOfPath } from '../../../src-core/fields/words-of-path'

it.each([
  ['motifs[0].minutes', 'the minutes for a motif (1st motif)'],
  ['layout.columns', 'Motifs in a row'],
  ['layout.nowhere', 'layout.nowhere'],
])('%s is told as %s', (path, words) => {
  expect(wordsOfPath(path)).toBe(words)
})
