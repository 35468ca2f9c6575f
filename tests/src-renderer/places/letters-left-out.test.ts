/** A new colourway skips the letters that the pattern gives its yarns, and that is said. */
import { describe, expect, it } from 'vitest'
import { lettersLeftOut } from '../../../src-renderer/places/colours/words'

describe('letters that are left out', () => {
  it('are those of the pattern’s yarns', () => {
    expect(lettersLeftOut(['color A', 'color B', 'color C'])).toMatch(
      /^The pattern calls its yarns A, B and C \(“Join C”\): a new colou?rway takes another letter\.$/,
    )
    expect(lettersLeftOut(['centre', 'petals'])).toBe('')
  })
})
