/** A round that does not work out leaves those before it as they are, and what would follow from it unsaid. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'

/** Six petals, loops behind them, and a hexagon on the loops (our own). */
const WORKS = [
  'Ch 1, 12 sc in ring, sl st in first sc to join. (12 sc)',
  'Ch 3 (counts as dc), dc in same st, ch 1, skip next st, *2 dc in next st, ch 1, skip next st; rep from * 4 more times, sl st in top of beg ch-3 to join. (12 dc, 6 ch-1 sps)',
  'Join B in any ch-1 sp, *(sc, hdc, 3 dc, hdc, sc) in ch-1 sp; rep from * 5 more times, sl st in first sc to join. (6 petals)',
  'Join C between any 2 petals, working behind petals, ch 1, *sc in sp between petals, ch 4; rep from * 5 more times, sl st in first sc to join. (6 sc, 6 ch-4 sps)',
  'Sl st in first ch-4 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-4 sp; rep from * 4 more times, sl st in top of beg ch-3 to join. (36 dc, 6 ch-2 sps)',
]
const motifOf = (works: readonly string[], sideToSide?: number): RoundsMotif => ({
  ...{ id: 'm', kind: 'rounds', foundation: { ring: 'chain', chains: 5 } },
  gauge: { stitch: 'sc', stitches: 14, rows: 16, over: 100, hook: 5 },
  ...(sideToSide !== undefined && { measured: { sideToSide } }),
  rounds: works.map((work) => ({ work })),
})
const account = (works: readonly string[], sideToSide?: number) =>
  roundsAccount(motifOf(works, sideToSide), { hand: 'right', terms: 'US', growth: 0 })
const with4 = (change: (work: string) => string) => WORKS.map((work, at) => (at === 3 ? change(work) : work))
const LONGER = with4((work) => work.replace('ch 4;', 'ch 5;'))
const UNREAD = with4((work) => work.replace('*sc in sp', '*blurb in sp'))
const codes = (told: ReturnType<typeof account>) =>
  told.findings.map(({ code }) => code).filter((code) => !code.startsWith('rounds/'))
const sizes = (told: ReturnType<typeof account>, upTo: number) =>
  told.account!.rounds.slice(0, upTo).map(({ outerRadius }) => Math.round(outerRadius * 10) / 10)

describe('a round in error', () => {
  it('is worked into the spaces that there are, where their chains alone are told wrongly', () => {
    const told = account(LONGER, 122)
    expect(told.findings.filter(({ code }) => code === 'rounds/no-such-space')).toHaveLength(1)
    expect(codes(told).filter((code) => /ruffles|measured-against/.test(code))).toEqual([])
    expect(sizes(told, 4)).toEqual(sizes(account(WORKS, 122), 4))
    expect(told.account!.rounds[4]!.outerRadius).toBe(0)
    expect(told.account!.rounds[4]!.lies).toBeNull()
  })

  it('leaves the rounds before it as the gauge has them, and says nothing of those after', () => {
    for (const measured of [undefined, 122]) {
      const told = account(UNREAD, measured)
      expect(told.findings.some(({ code }) => code === 'rounds/unknown-abbreviation')).toBe(true)
      expect(codes(told)).toEqual([])
      expect(sizes(told, 3)).toEqual(sizes(account(WORKS), 3))
      expect(
        told.account!.rounds.slice(3).every(({ outerRadius, lies }) => outerRadius === 0 && lies === null),
      ).toBe(true)
    }
  })

  it('says all of rounds that work out', () => {
    expect(codes(account(WORKS, 122))).toContain('motif/other-than-gauge')
    expect(account(WORKS, 122).account!.rounds.every(({ outerRadius }) => outerRadius > 0)).toBe(true)
  })
})
