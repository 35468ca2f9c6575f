import { describe, expect, it } from 'vitest'
import { STITCHES, STITCH_KEYS, isStitchKey, relativeHeight } from '../../../src-core/stitches/table'

const TAU = 2 * Math.PI

describe('M1 heights of stitches', () => {
  it('M1 lets a published disc of sc (+6), dc (+12) lie flat: 2πh/w stitches are added per round', () => {
    // §flat-circle: sc 6, dc 12 per round; §flat-mathematics: 2π·h/w.
    expect(TAU * relativeHeight('sc')).toBeCloseTo(6, 10)
    expect(TAU * relativeHeight('dc')).toBeCloseTo(12, 10)
  })

  it('M1 stays within the published increases of hdc (8–10) and of tr (15–16), dtr from memory (20–22), §flat-circle', () => {
    expect(TAU * relativeHeight('hdc')).toBeGreaterThanOrEqual(8)
    expect(TAU * relativeHeight('hdc')).toBeLessThanOrEqual(10)
    expect(Math.abs(TAU * relativeHeight('tr') - 16)).toBeLessThanOrEqual(1)
    expect(Math.abs(TAU * relativeHeight('dtr') - 21)).toBeLessThanOrEqual(1)
  })

  it('M1 agrees with the one published measurement of rows within 5 %', () => {
    // One maker's swatches, worsted, 5 mm hook: yarn of a row (10.6, 15.7, 20.4 in per in) over yarn of an area
    // (31.42, 32.08, 31.60 in per square in) is the row height: §windchilde.
    const rows = { sc: 10.6 / 31.42, hdc: 15.7 / 32.08, dc: 20.4 / 31.6 }
    for (const stitch of ['hdc', 'dc'] as const) {
      const published = rows[stitch] / rows.sc
      const model = relativeHeight(stitch) / relativeHeight('sc')
      expect(Math.abs(model / published - 1)).toBeLessThan(0.05)
    }
  })

  it('M1 prints the values of the model', () => {
    const rounded = STITCH_KEYS.map((key) => Math.round(relativeHeight(key) * 1000) / 1000)
    expect(rounded).toEqual([1, 0.3, 0.955, 1.385, 1.91, 2.706, 3.501, 4.297])
    expect(STITCH_KEYS.map((key) => STITCHES[key].loops)).toEqual([1, 1, 2, 3, 4, 6, 8, 10])
    expect(STITCH_KEYS.map((key) => STITCHES[key].flatIncrease)).toEqual([null, null, 6, 8, 12, 16, 20, 24])
  })

  it('M6 knows the beginning chains of the handbooks (sc 1, hdc 2, dc 3, tr 4, dtr 5, trtr 6; sc does not count)', () => {
    // §turning-chains.
    expect(STITCH_KEYS.map((key) => STITCHES[key].beginningChains)).toEqual([0, 0, 1, 2, 3, 4, 5, 6])
    expect(STITCHES.sc.beginningCounts).toBe(false)
    expect(STITCHES.dc.beginningCounts).toBe(true)
  })

  it('tells its keys from other texts', () => {
    expect(isStitchKey('sl st')).toBe(true)
    expect(isStitchKey('htr')).toBe(false)
    expect(isStitchKey('toString')).toBe(false)
  })
})
