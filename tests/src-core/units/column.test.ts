import { describe, expect, it } from 'vitest'
import { lengthsIn } from '../../../src-core/units/format'

describe('the lengths of one column', () => {
  it('are told in mm or in cm, never in both, and in inches throughout', () => {
    const told = (units: 'metric' | 'imperial', lengths: number[]) => lengths.map(lengthsIn(units, lengths))
    expect(told('metric', [24, 180])).toEqual(['24 mm', '180 mm'])
    expect(told('metric', [24, 180, 1800])).toEqual(['2.4 cm', '18 cm', '180 cm'])
    expect(told('metric', [-24, -1800])).toEqual(['−2.4 cm', '−180 cm'])
    expect(told('imperial', [25.4, 254])).toEqual(['1 in', '10 in'])
    expect(told('metric', [])).toEqual([])
  })
})
