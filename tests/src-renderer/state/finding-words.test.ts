import { describe, expect, it } from 'vitest'
import { toldWords } from '../../../src-renderer/state/finding-words'

describe('the words of a finding', () => {
  it.each([
    ['Octagon', 'it has neither stitches nor a weight.', 'Octagon: it has neither stitches nor a weight.'],
    ['Octagon', 'Octagon is not weighed yet.', 'Octagon is not weighed yet.'],
    ['Octagon', 'Octagons are not weighed yet.', 'Octagon: Octagons are not weighed yet.'],
    ['Octagon', 'Octagon: it has no weight.', 'Octagon: it has no weight.'],
    ['Yarn Leek', 'Leek (50 g): the price is missing.', 'Leek (50 g): the price is missing.'],
    ['Yarn Leek', 'Leeks differ in lots.', 'Yarn Leek: Leeks differ in lots.'],
    [null, 'two yarns are alike.', 'Two yarns are alike.'],
  ])('in %s: "%s"', (where, message, told) => {
    expect(toldWords(where, message)).toBe(told)
  })
})
