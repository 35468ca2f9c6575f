/** Stars and brackets mean something in a text only where that text uses them so. */
import { describe, expect, it } from 'vitest'
import { signsIn } from '../../../src-core/notation/abbreviations'

const meaning = (text: string, sign: string): string | undefined =>
  signsIn([text]).find(({ abbreviation }) => abbreviation === sign)?.meaning

const AGAIN = /as many times as it says/
const TOGETHER = /in one place/
const REMARK = /remark or a count/

describe('signs of written rounds', () => {
  it('are a star where a repeat goes back to it', () => {
    expect(meaning('*2 dc in ring, ch 2; rep from * 4 more times.', '*')).toContain('a repeat begins here')
    expect(meaning('2 dc in ring, ch 2.', '*')).toBeUndefined()
  })

  it('are brackets by what is done with them', () => {
    expect(meaning('[2 dc in ring, ch 2] twice', '[ ]')).toMatch(AGAIN)
    expect(meaning('(2 dc in ring, ch 2) 5 times', '( )')).toMatch(AGAIN)
    expect(meaning('(dc, ch 2, dc) in next ch-2 sp (24 dc)', '( )')).toMatch(TOGETHER)
    expect(meaning('(dc, ch 2, dc) in next ch-2 sp (24 dc)', '( )')).toMatch(REMARK)
    expect(meaning('(dc, ch 2, dc) in next ch-2 sp', '( )')).not.toMatch(AGAIN)
    expect(meaning('[dc, ch 2, dc] in next sp', '[ ]')).toMatch(TOGETHER)
  })

  it('are not told where brackets only count', () => {
    expect(signsIn(['Ch 3 (counts as dc), dc in each st around. (24 dc)'])).toEqual([])
  })
})
