import { expect, it } from 'vitest'
import { sentenceOf } from '../../../src-renderer/parts/sentence-of'

it.each([
  ['cut.petalyard: line 58, column 17', 'cut.petalyard: line 58, column 17'],
  ['my throw.petalyard could not be written', 'my throw.petalyard could not be written'],
  ['the project could not be read. See a.pdf', 'The project could not be read. See a.pdf'],
])('%s is said as %s', (words, said) => {
  expect(sentenceOf(words)).toBe(said)
})
