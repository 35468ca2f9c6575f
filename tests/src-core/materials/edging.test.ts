import { describe, expect, it } from 'vitest'
import { edgingHeight, workEdging } from '../../../src-core/materials/edging'
import type { EdgeDip } from '../../../src-core/edging/level'
import { resolveGauge, stitchYarn } from '../../../src-core/stitches/gauge'
import type { StitchKey } from '../../../src-core/stitches/table'

const gauge = resolveGauge({ stitch: 'sc', stitches: 20, over: 100 }, 'US')
const base = { length: 4000, outerCorners: 4, tips: 40, chord: 100 }

describe('M35 edging', () => {
  it('M35 follows the edge: a round is the base grown by 2π times the height, its stitches that over w', () => {
    const { account } = workEdging('follow', ['sc', 'dc'], 'y1', base, 'US', gauge)
    const sc = gauge.height('sc')
    const dc = gauge.height('dc')
    expect(account.height).toBeCloseTo(sc + dc, 12)
    expect(account.rounds[0]?.length).toBeCloseTo(4000 + 2 * Math.PI * sc, 9)
    // At the default heights 2πh/w is 6 for sc and 12 for dc: the flat increases of §flat-circle.
    expect(account.rounds.map((round) => round.stitches)).toEqual([806, 818])
    expect(account.rounds[1]?.metres).toBeCloseTo((818 * stitchYarn('dc', gauge)) / 1000, 9)
  })

  it('M35 bridges: one stitch in each tip, round(0.95·chord/w) chains between, later rounds all along', () => {
    const { account } = workEdging('bridge', ['sc', 'sc'], 'y1', base, 'US', gauge)
    const [first, second] = account.rounds
    expect([first?.stitches, first?.chains]).toEqual([40, 40 * 19])
    expect(first?.metres).toBeCloseTo((40 * 52 + 40 * 19 * 26) / 1000, 9)
    expect([second?.stitches, second?.chains]).toEqual([812, 0])
  })

  it('M35 levels: stitches as tall as the edge lies deep take the place of its own, one for one', () => {
    const zigzag = (width: number, depth: number): EdgeDip => ({
      width,
      profile: [
        { along: 0, depth: 0 },
        { along: width / 2, depth },
        { along: width, depth: 0 },
      ],
    })
    const dips = Array.from({ length: 40 }, () => zigzag(40, 10))
    const { account, filled, findings } = workEdging('level', ['sc'], 'y1', { ...base, dips }, 'US', gauge)
    const [first] = account.rounds
    // By hand: w 5 mm, sc 4.77, hdc 6.92, dc 9.55, tr 13.53 mm; eight stitches on a slope of 1 in 2 have
    // 1.25, 3.75, 6.25 and 8.75 mm under them, and need 6.0, 8.5, 11.0 and 13.5 mm.
    const half = [
      ['hdc', 1],
      ['dc', 2],
      ['tr', 1],
    ] as const
    const work = [...half.slice(0, 2), ['tr', 2] as const, ...half.slice(0, 2).reverse()]
    expect(
      account.dips?.map((dip) => [dip.count, dip.work.map(({ stitch, count }) => [stitch, count])]),
    ).toEqual([[40, work]])
    expect(first?.stitches).toBe(806)
    const yarn = (stitch: StitchKey) => stitchYarn(stitch, gauge)
    const told = 40 * (2 * yarn('hdc') + 4 * yarn('dc') + 2 * yarn('tr')) + (806 - 40 * 8) * yarn('sc')
    expect(first?.metres).toBeCloseTo(told / 1000, 9)
    expect([filled, findings]).toEqual([0, []])
  })

  it('M35 reads stitches in the terms of the project and names those it does not know', () => {
    const uk = workEdging('follow', ['dc', 'tr'], 'y1', base, 'UK', gauge)
    const us = workEdging('follow', ['sc', 'dc'], 'y1', base, 'US', gauge)
    expect(uk.account.rounds.map((round) => round.metres)).toEqual(
      us.account.rounds.map((round) => round.metres),
    )
    expect(uk.account.rounds[0]?.stitch).toBe('dc')
    expect(workEdging('follow', ['crab stitch'], 'y1', base, 'US', gauge).unknown).toEqual([])
    const strange = workEdging('follow', ['loop-the-loop'], 'y1', base, 'US', gauge)
    expect(strange.unknown).toEqual(['loop-the-loop'])
    expect(edgingHeight(['loop-the-loop', 'dc'], 'US', gauge)).toBeCloseTo(
      gauge.height('sc') + gauge.height('dc'),
      12,
    )
  })
})
