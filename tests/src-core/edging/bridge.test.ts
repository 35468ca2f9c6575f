/** M35, M36: the chains of an edging that bridges the dips, gap by gap, against lines whose tips are known. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bridgeStretches, plainGaps } from '../../../src-core/edging/bridge'
import { spansOf } from '../../../src-core/edging/bridge-spans'
import { planProject } from '../../../src-core/plan'
import { resolveGauge } from '../../../src-core/stitches/gauge'
import { ofKind, squares } from './helpers'

const gauge = resolveGauge({ stitch: 'sc', stitches: 20, rows: 22, over: 100 }, 'US')
const sum = (counts: readonly number[]): number => counts.reduce((total, each) => total + each, 0)

/** A rectangle of 200 × 100 mm with tips at its corners and in the middles of its long sides. */
const LINE = [
  { x: 0, y: 0 },
  { x: 100, y: 0 },
  { x: 200, y: 0 },
  { x: 200, y: 100 },
  { x: 100, y: 100 },
  { x: 0, y: 100 },
]

describe('M35 chains between tips', () => {
  it('M35 are round(0.95·chord/w) of each chord by itself', () => {
    const uneven = [...LINE.slice(0, 1), { x: 40, y: 0 }, ...LINE.slice(2)]
    expect(plainGaps(uneven, false, gauge).gaps).toEqual([8, 30, 19, 19, 19, 19])
    // An open line begins anew where it ends.
    expect(plainGaps(uneven.slice(0, 3), true, gauge).gaps).toEqual([8, 30])
  })

  it('M35 make the chains of the round, and its yarn', () => {
    const { edging } = planProject(squares(8, 5, { style: 'bridge', rounds: ['sc'] }))
    const [first] = edging!.rounds
    // Squares joined along their sides have four free corners: 0.95 · 480 / 5 and 0.95 · 300 / 5 between them.
    expect(first!.gaps!.flat().toSorted((a, b) => a - b)).toEqual([57, 57, 91, 91])
    expect([first!.stitches, first!.chains]).toEqual([4, 2 * (57 + 91)])
  })
})

describe('M36 chains from corner to corner', () => {
  it('M36 are as many as a side takes beside its tips', () => {
    const corners = [0, 200, 300, 500]
    const { gaps, marks } = bridgeStretches(LINE, false, corners, [42, 20, 43, 21])!
    // 42 with two tips leave 40 chains for two gaps, 20 with one 19 for one, 43 with two 41.
    expect(gaps).toEqual([20, 20, 19, 21, 20, 20])
    expect(marks.map(({ tip, chain }) => [tip, chain])).toEqual([
      [0, 0],
      [2, 0],
      [3, 0],
      [5, 0],
    ])
  })

  it('M36 hold the corner where it lies between two tips', () => {
    // Corners in the middles of the short sides: 250 and 550 mm along.
    const { gaps, marks } = bridgeStretches(LINE, false, [250, 550], [61, 61])!
    // Three tips and 58 chains on 50 + 100 + 100 + 50 mm.
    expect(sum(gaps) + LINE.length).toBe(122)
    expect(marks.map(({ tip }) => tip)).toEqual([2, 5])
    for (const { tip, chain } of marks) {
      expect(gaps[tip]).toBeGreaterThanOrEqual(18)
      expect(Math.abs(chain - gaps[tip]! / 2)).toBeLessThanOrEqual(1)
    }
  })

  it('M36 are not made up where a side has more tips than stitches', () => {
    expect(bridgeStretches(LINE, false, [0, 200, 300, 500], [1, 20, 43, 21])).toBeNull()
  })

  it('M36 come to what the rounds above come out even on, whatever lines, corners and counts', () => {
    const line = fc
      .array(fc.double({ min: 5, max: 200, noNaN: true }), { minLength: 4, maxLength: 24 })
      .map((reach) =>
        reach.map((each, i) => ({
          x: (200 + each) * Math.cos((2 * Math.PI * i) / reach.length),
          y: (200 + each) * Math.sin((2 * Math.PI * i) / reach.length),
        })),
      )
    const shares = fc.uniqueArray(fc.integer({ min: 0, max: 99 }), { maxLength: 6 })
    fc.assert(
      fc.property(
        line,
        shares,
        fc.array(fc.integer({ min: 1, max: 200 }), { minLength: 6 }),
        (at, share, counts) => {
          const length = at.reduce((total, { x, y }, i) => {
            const next = at[(i + 1) % at.length]!
            return total + Math.hypot(next.x - x, next.y - y)
          }, 0)
          const marks = share.sort((a, b) => a - b).map((each) => (each / 100) * length)
          const stretches = counts.slice(0, Math.max(1, marks.length))
          const bridged = bridgeStretches(at, false, marks, stretches)
          if (!bridged) return
          expect(bridged.gaps).toHaveLength(at.length)
          expect(Math.min(...bridged.gaps)).toBeGreaterThanOrEqual(0)
          expect(sum(bridged.gaps) + at.length).toBe(sum(stretches))
        },
      ),
    )
  })

  it('M36 are told for every loop that bridges, and for no other', () => {
    const loopsOf = (style: 'bridge' | 'follow') =>
      planProject(squares(8, 5, { ...ofKind('shell'), style })).edging!.loops!
    for (const { bridged, stitches } of loopsOf('bridge'))
      expect(sum(bridged!.gaps) + bridged!.gaps.length).toBe(stitches)
    expect(loopsOf('follow').every(({ bridged }) => bridged === undefined)).toBe(true)
  })
})

describe('gaps that are alike', () => {
  it('are counted together, those within a motif first', () => {
    expect(spansOf([8, 15, 8, 18, 15, 8], [false, true, false, true, true, true])).toEqual([
      { from: 'one', chains: 8, gaps: 2 },
      { from: 'next', chains: 8, gaps: 1 },
      { from: 'next', chains: 15, gaps: 2 },
      { from: 'next', chains: 18, gaps: 1 },
    ])
  })
})
