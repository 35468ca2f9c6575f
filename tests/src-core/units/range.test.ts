import { describe, expect, it } from 'vitest'
import { formatLength, formatMassRange, formatMinutes, formatRange } from '../../../src-core/units/format'

const range = (low: number, expected: number, high: number) => ({ low, expected, high })

describe('ranges in words', () => {
  it('tell a shared unit once', () => {
    expect(formatMassRange(range(380, 410, 445), 'metric')).toBe('410 g (380–445)')
    expect(formatRange(range(600, 660, 780), formatMinutes)).toBe('11 h (10–13)')
  })

  it('tell every unit where they differ', () => {
    expect(formatRange(range(55, 65, 120), formatMinutes)).toBe('1 h 5 min (55 min – 2 h)')
    expect(formatRange(range(450, 540, 660), formatMinutes)).toBe('9 h (7 h 30 min – 11 h)')
    expect(formatRange(range(290, 310, 330), (mm) => formatLength(mm, 'metric'))).toBe(
      '31 cm (290 mm – 33 cm)',
    )
  })

  it('tell one number where both bounds round to it', () => {
    expect(formatMassRange(range(409.8, 410, 410.2), 'metric')).toBe('410 g')
  })
})
