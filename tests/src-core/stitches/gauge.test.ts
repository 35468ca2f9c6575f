import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { gaugeFindings } from '../../../src-core/stitches/gauge-findings'
import {
  GAUGE_CONSTANTS,
  resolveGauge,
  scaleGauge,
  sizeSpread,
  stitchYarn,
} from '../../../src-core/stitches/gauge'
import { STITCH_KEYS, relativeHeight } from '../../../src-core/stitches/table'

describe('M2 gauge', () => {
  it('M2 takes the width from the stitches and, without rows, the flat-disc heights', () => {
    const gauge = resolveGauge({ stitch: 'sc', stitches: 20, over: 100 }, 'US')
    expect(gauge.width).toBe(5)
    expect(gauge.height('sc')).toBeCloseTo((5 * 6) / (2 * Math.PI), 12)
    expect(gauge.height('dc')).toBeCloseTo((5 * 12) / (2 * Math.PI), 12)
    expect(gauge.height('ch')).toBe(5)
    expect(gauge.provenance).toBe('gauge')
    expect(gauge.problems).toEqual([])
  })

  it('M2 follows its closed form h = w · rel · √(q/0.955) with q = row / rel × 0.955 / w', () => {
    const gauge = resolveGauge({ stitch: 'dc', stitches: 16, rows: 8, over: 100 }, 'US')
    const width = 6.25
    const sc = 6 / (2 * Math.PI)
    const q = ((12.5 / relativeHeight('dc')) * sc) / width
    for (const stitch of ['sl st', 'sc', 'hdc', 'dc', 'tr', 'dtr'] as const) {
      expect(gauge.height(stitch)).toBeCloseTo(width * relativeHeight(stitch) * Math.sqrt(q / sc), 10)
    }
  })

  it('M2 brings dc rounds at 14 sc × 16 rows to 4 in within 6 % of the published 0.5 in each', () => {
    // §crochetbtf: worsted, 5 mm hook, 5 dc rounds = 5 in across.
    const gauge = resolveGauge({ stitch: 'sc', stitches: 14, rows: 16, over: 101.6, hook: 5 }, 'US')
    expect(Math.abs(gauge.height('dc') / 12.7 - 1)).toBeLessThan(0.06)
  })

  it('M2 reads the gauge stitch in the terms of the project', () => {
    const us = resolveGauge({ stitch: 'dc', stitches: 16, rows: 8, over: 100 }, 'US')
    const uk = resolveGauge({ stitch: 'tr', stitches: 16, rows: 8, over: 100 }, 'UK')
    expect(uk.stitch).toBe('dc')
    for (const stitch of STITCH_KEYS) expect(uk.height(stitch)).toBe(us.height(stitch))
    const ukShort = resolveGauge({ stitch: 'dc', stitches: 16, rows: 8, over: 100 }, 'UK')
    expect(ukShort.height('dc')).toBeGreaterThan(us.height('dc'))
  })

  it('M2 lets measured heights override, in the terms of the project', () => {
    const gauge = resolveGauge({ stitches: 20, over: 100, heights: { tr: 11 } }, 'UK')
    expect(gauge.height('dc')).toBe(11)
    expect(gauge.height('sc')).toBeCloseTo(4.7746, 4)
    expect(scaleGauge(gauge, 1.2).height('dc')).toBe(11)
  })

  it('M2 takes 10 cm and sc where the gauge does not say', () => {
    expect(resolveGauge({ stitches: 20 }, 'US').width).toBe(5)
    expect(resolveGauge({ stitches: 20 }, 'UK').stitch).toBe('sc')
  })

  it('M2 falls back to a rule of thumb of ±25 % from the hook, marked as such', () => {
    const gauge = resolveGauge({ hook: 5 }, 'US')
    expect(gauge.width).toBeCloseTo(7, 12)
    expect(gauge.provenance).toBe('rule-of-thumb')
    expect(gauge.spread).toBe(0.25)
    expect(resolveGauge(undefined, 'US').width).toBeCloseTo(5.6, 12)
    expect(resolveGauge(undefined, 'US').hook).toBeNull()
  })

  it('M2 keeps the rule of thumb within the standard yarn weight classes 1–5 (sc per 4 in, hook mm)', () => {
    // §yarn-weights, crochet columns: gauge range and hook range of each class.
    const classes = [
      { sc: [21, 32], hook: [2.25, 3.5] },
      { sc: [16, 20], hook: [3.5, 4.5] },
      { sc: [12, 17], hook: [4.5, 5.5] },
      { sc: [11, 14], hook: [5.5, 6.5] },
      { sc: [8, 11], hook: [6.5, 9] },
    ] as const
    for (const { sc, hook } of classes) {
      const { width } = resolveGauge({ hook: (hook[0] + hook[1]) / 2 }, 'US')
      expect(width).toBeGreaterThanOrEqual(101.6 / sc[1])
      expect(width).toBeLessThanOrEqual(101.6 / sc[0])
    }
  })

  it('M2 leaves out what cannot be used and says which', () => {
    const gauge = resolveGauge(
      { stitch: 'htr', stitches: 0, rows: -3, over: Number.NaN, heights: { sc: 0, blob: 3 } },
      'US',
    )
    expect(gauge.problems.map((problem) => problem.field).sort()).toEqual(
      ['heights.blob', 'heights.sc', 'over', 'rows', 'stitch', 'stitches'].sort(),
    )
    expect(gauge.provenance).toBe('rule-of-thumb')
    for (const stitch of STITCH_KEYS) expect(gauge.height(stitch)).toBeGreaterThan(0)
    const codes = gaugeFindings(gauge, 'motifs[0].gauge').map((found) => found.code)
    expect(new Set(codes)).toEqual(new Set(['gauge/unknown-stitch', 'gauge/invalid-value']))
  })

  it('M2 never turns any gauge into a width or height that is not a positive number', () => {
    const value = fc.option(fc.double({ noNaN: false }), { nil: undefined })
    fc.assert(
      fc.property(value, value, value, value, (stitches, rows, over, hook) => {
        const usable = [stitches, rows, over, hook].every(
          (given) => given === undefined || !(given > 0) || (given > 1e-6 && given < 1e6),
        )
        fc.pre(usable)
        const gauge = resolveGauge({ stitches, rows, over, hook }, 'US')
        for (const stitch of STITCH_KEYS) {
          expect(gauge.height(stitch)).toBeGreaterThan(0)
          expect(Number.isFinite(gauge.height(stitch))).toBe(true)
        }
      }),
    )
  })

  it('M2 scales: a gauge counted over k times the length is k times as wide and tall', () => {
    fc.assert(
      // As far as stitches are 0.1 to 300 mm wide and high; beyond that a gauge is refused.
      fc.property(fc.double({ min: 0.02, max: 8, noNaN: true }), (k) => {
        const one = resolveGauge({ stitch: 'dc', stitches: 15, rows: 9, over: 100 }, 'US')
        const other = resolveGauge({ stitch: 'dc', stitches: 15, rows: 9, over: 100 * k }, 'US')
        for (const stitch of STITCH_KEYS) {
          expect(other.height(stitch) / (one.height(stitch) * k)).toBeCloseTo(1, 9)
          expect(scaleGauge(one, k).height(stitch) / other.height(stitch)).toBeCloseTo(1, 9)
        }
      }),
    )
  })
})

describe('a gauge that no hand can work', () => {
  it.each([
    ['stitches', { stitches: 0.1, rows: 20 }],
    ['stitches', { stitches: 20, rows: 20, over: 1e9 }],
    ['rows', { stitches: 20, rows: 1e6 }],
    ['hook', { hook: 1e8 }],
    ['heights.dc', { heights: { dc: 1e8 } }],
    ['rounds', { rounds: 1e8, across: 60 }],
    ['across', { rounds: 2, across: 1e8 }],
  ] as const)('is told and not used: %s', (field, given) => {
    const gauge = resolveGauge(given, 'US')
    expect(gauge.problems.map((problem) => problem.field)).toContain(field)
    const { stitch } = GAUGE_CONSTANTS
    for (const key of ['sc', 'dc'] as const) expect(gauge.height(key)).toBeLessThan(stitch.most)
    expect(gauge.width).toBeLessThan(stitch.most)
    expect(gauge.hook ?? 0).toBeLessThan(100)
    expect(gauge.roundsMeasure).toBeNull()
    for (const told of gaugeFindings(gauge, 'gauge'))
      expect(told.message).toMatch(/ expected; it is left out/)
  })
})

describe('M3 gauge by rounds', () => {
  it('M3 hands the measure on and stays a rule of thumb until the rounds scale it', () => {
    const gauge = resolveGauge({ rounds: 2, across: 63.5, hook: 5 }, 'US')
    expect(gauge.roundsMeasure).toEqual({ rounds: 2, across: 63.5 })
    expect(gauge.provenance).toBe('rule-of-thumb')
    const scaled = scaleGauge(gauge, 1.1)
    expect(scaled.provenance).toBe('gauge')
    expect(scaled.width).toBeCloseTo(7.7, 12)
    expect(scaled.height('dc')).toBeCloseTo(gauge.height('dc') * 1.1, 12)
    expect(() => scaleGauge(gauge, 0)).toThrow()
  })
})

describe('M4 how sure', () => {
  it('M4 gives ±10 % in yarn, ±15 % in thread or with a gauge in another stitch, ±25 % by rule of thumb', () => {
    const yarn = resolveGauge({ stitch: 'sc', stitches: 20, hook: 3.5 }, 'US')
    const thread = resolveGauge({ stitch: 'dc', stitches: 36, hook: 1.5 }, 'US')
    expect(sizeSpread(yarn, 'sc')).toBe(0.1)
    expect(sizeSpread(yarn, 'dc')).toBe(0.15)
    expect(thread.thread).toBe(true)
    expect(sizeSpread(thread, 'dc')).toBe(0.15)
    expect(sizeSpread(resolveGauge(undefined, 'US'), 'dc')).toBe(0.25)
    expect(sizeSpread(scaleGauge(resolveGauge({ rounds: 2, across: 60 }, 'US'), 1), 'dc')).toBe(0.1)
  })
})

describe('M40 yarn in a stitch', () => {
  it('M40 comes within 6 % of the one published measurement (chain 4.95, sc 10.6, hdc 15.7, dc 20.4 per width)', () => {
    // One maker's swatches, worsted, 5 mm hook: §windchilde.
    const gauge = resolveGauge({ stitches: 14, over: 101.6 }, 'US')
    const published = { ch: 4.95, sc: 10.6, hdc: 15.7, dc: 20.4 } as const
    for (const stitch of ['ch', 'sc', 'hdc', 'dc'] as const) {
      const model = stitchYarn(stitch, gauge) / gauge.width
      expect(Math.abs(model / published[stitch] - 1)).toBeLessThan(0.06)
    }
  })

  it('M40 follows how tall the stitch really is', () => {
    const gauge = resolveGauge({ stitches: 20, over: 100 }, 'US')
    expect(stitchYarn('dc', gauge)).toBeCloseTo(5.2 * 5 * 4, 10)
    expect(stitchYarn('dc', gauge, 2 * gauge.height('dc'))).toBeCloseTo(5.2 * 5 * 7, 10)
    expect(stitchYarn('sl st', gauge)).toBeCloseTo(5.2 * 5, 10)
  })
})
