import { describe, expect, it } from 'vitest'
import { sensitivityWords } from '../../../src-core/figures/sensitivity'

describe('M26 how sensitive the size is', () => {
  it('tells a step that can be measured: 2 mm, or an eighth of an inch with what an eighth comes to', () => {
    const told = { step: 2, width: 32, height: 26 }
    expect(sensitivityWords(told, 'metric')).toBe(
      'If each motif comes out 2 mm larger, the whole is 32 mm wider and 26 mm longer',
    )
    // 2 mm is no eighth: 32 mm on the width is 16 motifs, and 16 eighths are 2 in, not 1¼.
    expect(sensitivityWords(told, 'imperial')).toBe(
      'If each motif comes out ⅛ in larger, the whole is 2 in wider and 1⅝ in longer',
    )
    expect(sensitivityWords({ step: 0, width: 0, height: 0 }, 'metric')).toBe('')
  })
})
