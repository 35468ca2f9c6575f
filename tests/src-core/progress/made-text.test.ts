import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { madeText, readMadeText } from '../../../src-core/progress/made-text'

describe('marks as a short text', () => {
  it('writes neighbours in a row as a range, rows in order', () => {
    expect(madeText(['2,1', '1,3', '1,1', '1,2', '10,5', '1,7'])).toBe('1,1-3 1,7 2,1 10,5')
  })

  it('writes half motifs and fillers by themselves', () => {
    expect(madeText(['1,1+1,2+2,1', '1,2', '4,left'])).toBe('1,2 1,1+1,2+2,1 4,left')
  })

  it('has nothing to write where nothing is made', () => {
    expect(madeText([])).toBe('')
  })

  it('reads back what it wrote', () => {
    const address = fc.oneof(
      fc.tuple(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 60 })).map((at) => at.join(',')),
      fc.constantFrom('3,left', '3,right', '1,1+1,2+2,1', '2,1+2,2+3,1'),
    )
    fc.assert(
      fc.property(fc.uniqueArray(address, { maxLength: 200 }), (ids) => {
        const read = readMadeText(madeText(ids), new Set(ids))
        expect([...read.ids].sort()).toEqual([...ids].sort())
        expect(read.unknown).toEqual([])
      }),
    )
  })

  it('reads a text with a heading, line ends and stops', () => {
    const known = new Set(['1,1', '1,2', '1,3', '2,4'])
    expect(readMadeText('Orchard throw, made:\n1,1-3,\n2,4\n', known)).toEqual({
      ids: ['1,1', '1,2', '1,3', '2,4'],
      removed: [],
      isNewer: false,
      unknown: [],
    })
  })

  it('carries removals behind the marks, under its version; older texts have none', () => {
    const known = new Set(['1,1', '1,2', '1,3', '2,4', '3,left', '1,1+1,2+2,1'])
    const text = madeText(['1,1'], ['1,3', '1,2', '3,left', '1,1+1,2+2,1'])
    expect(text).toBe('marks 2: 1,1 -1,2-3 -1,1+1,2+2,1 -3,left')
    expect(readMadeText(text, known)).toMatchObject({
      ids: ['1,1'],
      removed: ['1,2', '1,3', '1,1+1,2+2,1', '3,left'],
      unknown: [],
    })
    // A dash for the minus, and nothing made.
    expect(readMadeText('Marks 2: –1,2', known)).toMatchObject({ ids: [], removed: ['1,2'], unknown: [] })
    expect(readMadeText('1,1-2 2,4', known)).toMatchObject({ ids: ['1,1', '1,2', '2,4'], removed: [] })
    expect(readMadeText('marks 3: 1,1 *2,4', known).isNewer).toBe(true)
    // What is made and taken away is made.
    expect(readMadeText('marks 2: 1,1 -1,1', known)).toMatchObject({ ids: ['1,1'], removed: [] })
  })

  it('names what the project does not have, and takes no part of a range', () => {
    const known = new Set(['1,1', '1,2'])
    expect(readMadeText('1,1-3 1,2 x 9,9 1,5-2 1,1-99999999999', known)).toEqual({
      ids: ['1,2'],
      removed: [],
      isNewer: false,
      unknown: ['1,1-3', 'x', '9,9', '1,5-2', '1,1-99999999999'],
    })
  })

  it('follows no range beyond what the project has: a text of 400,000 letters keeps nobody waiting', () => {
    const text = '1,1-9999 1,1-2 '.repeat(30_000)
    const read = readMadeText(text, new Set(['1,1', '1,2']))
    expect([read.ids, read.unknown.length]).toEqual([['1,1', '1,2'], 30_000])
  }, 2_000)
})
