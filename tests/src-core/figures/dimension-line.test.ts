import { describe, expect, it } from 'vitest'
import { arrowEnd, dimensionPath, tickEnd } from '../../../src-core/figures/dimension-line'
import { pathData } from '../../../src-core/figures/path'

const from = { x: 10, y: 5 }
const drawn = (...given: Parameters<typeof dimensionPath>) => pathData(dimensionPath(...given))
const tick = tickEnd(2)

describe('a dimension line', () => {
  it('has a stroke across it at each end, level and upright alike', () => {
    expect(drawn(from, { x: 30, y: 5 }, { end: tick })).toBe('M10 5L30 5M10 3L10 7M30 7L30 3')
    expect(drawn(from, { x: 10, y: 25 }, { end: tick })).toBe('M10 5L10 25M12 5L8 5M8 25L12 25')
  })

  it('has strokes square to it where it slopes', () => {
    expect(drawn({ x: 0, y: 0 }, { x: 30, y: 40 }, { end: tickEnd(5) })).toBe(
      'M0 0L30 40M4 -3L-4 3M26 43L34 37',
    )
  })

  it('has arrows that point outwards', () => {
    expect(drawn(from, { x: 30, y: 5 }, { end: arrowEnd(1) })).toBe(
      'M10 5L30 5M11 4.3L10 5L11 5.7M29 5.7L30 5L29 4.3',
    )
  })

  it('leaves a gap for its number, and is whole where the number stands beyond an end', () => {
    const to = { x: 30, y: 5 }
    const ends = [false, false] as const
    expect(drawn(from, to, { end: tick, ends, gap: [8, 12] })).toBe('M10 5L18 5M22 5L30 5')
    expect(drawn(from, to, { end: tick, ends, gap: [24, 30] })).toBe('M10 5L30 5')
    expect(drawn(from, to, { end: tick, ends, gap: [-9, -3] })).toBe('M10 5L30 5')
    expect(drawn(from, to, { end: tick, ends, gap: [-3, 30] })).toBe('')
  })

  it('has no end where what is measured goes on', () => {
    expect(drawn(from, { x: 30, y: 5 }, { end: tick, ends: [false, true] })).toBe('M10 5L30 5M30 7L30 3')
  })
})
