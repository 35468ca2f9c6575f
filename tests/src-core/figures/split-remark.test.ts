/** How sure the parts of a split weight are: the same number in the note and beside the table of materials. */
import { describe, expect, it } from 'vitest'
import type { YarnNeed } from '../../../shared-types/plan'
import { splitRemark } from '../../../src-core/figures/yarn-words'

const need = (id: string, ...split: NonNullable<YarnNeed['split']>): YarnNeed => ({ id, split }) as YarnNeed

describe('what a weight was split by', () => {
  it('says how sure that is: by stitches as the note has it, ±15 %, by area ±25 %', () => {
    const name = (id: string) => id
    expect(splitRemark([need('Pink', 'stitches'), need('Cream', 'stitches')], name)).toBe(
      'Pink and Cream split by stitches, each within ±15\u00a0%',
    )
    expect(splitRemark([need('Pink', 'areas')], name)).toBe('Pink split by area, within ±25\u00a0%')
    expect(splitRemark([need('Pink', 'stitches', 'areas'), need('Moss', 'stitches')], name)).toBe(
      'Pink split by stitches and split by area, within ±25\u00a0%; Moss split by stitches, within ±15\u00a0%',
    )
    expect(splitRemark([need('Pink')], name)).toBe('')
  })
})
