import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shared } from '../../../src-renderer/state/sharing'

describe('structural sharing', () => {
  it('answers the old object where all is equal, whatever it is', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const copy: unknown = JSON.parse(JSON.stringify(value))
        expect(Object.is(shared(value, copy), value) || value === 0).toBe(true)
      }),
    )
  })

  it('answers what is new, equal to it, whatever was before', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), (before, next) => {
        expect(shared(before, next)).toEqual(next)
      }),
    )
  })

  it('keeps the parts that did not change', () => {
    const before = { a: { deep: [1, 2] }, b: 1 }
    const after = shared(before, { a: { deep: [1, 2] }, b: 2 })
    expect(after.a).toBe(before.a)
    expect(after).not.toBe(before)
  })

  it('sees a key that is gone and one that came as undefined', () => {
    expect(shared({ a: 1, b: 2 } as object, { a: 1 })).toEqual({ a: 1 })
    expect(Object.keys(shared({ a: 1 } as object, { b: undefined }))).toEqual(['b'])
  })
})
