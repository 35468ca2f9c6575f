import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { differences, withEdit } from '../../../src-core/ways/edit'

describe('an edit', () => {
  it('is all that differs, whatever is in the file', () => {
    const json = fc.dictionary(fc.constantFrom('a', 'b', 'c'), fc.jsonValue({ maxDepth: 3 }))
    fc.assert(
      fc.property(json, json, (before, after) => {
        expect(withEdit(before as never, differences(before, after))).toEqual(after)
      }),
    )
  })
})
