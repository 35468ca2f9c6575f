import { describe, expect, it } from 'vitest'
import { asMeasured, formatMeasure } from '../../../src-core/units/format'

describe('a length of a motif', () => {
  it('is told as it was measured, to a tenth of a mm', () => {
    expect(formatMeasure(72.5, 'metric')).toBe('72.5 mm')
    expect(formatMeasure(0.1 + 72.2, 'metric')).toBe('72.3 mm')
    expect(formatMeasure(72.5, 'imperial')).toBe('2⅞ in')
  })

  it('that was worked out is told as a tape shows it, a small one finer', () => {
    expect(formatMeasure(72.8312, 'metric')).toBe('73 mm')
    expect(formatMeasure(92 * Math.SQRT2, 'metric')).toBe('130 mm')
    expect(formatMeasure(18.94, 'metric')).toBe('18.9 mm')
    expect(formatMeasure(350.27, 'metric')).toBe('35 cm')
    expect(asMeasured(-72.8312)).toBe(-73)
  })
})
