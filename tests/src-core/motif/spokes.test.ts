/** M10: petals that are worked back along their own chain, and petals and loops between slip stitches into a ring. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { radiusOf } from '../../../src-core/motif/rounds/ground'
import { resolveGauge } from '../../../src-core/stitches/gauge'
import { workedMotif } from './written-motif'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }
const W = 5
const gauge = resolveGauge(GAUGE, 'US')

const account = (foundation: RoundsMotif['foundation'], ...rounds: string[]) =>
  roundsAccount(
    { id: 'm', kind: 'rounds', gauge: GAUGE, foundation, rounds: rounds.map((work) => ({ work })) },
    { hand: 'right', terms: 'US', growth: 0 },
  )

const spoked = (chains: number, stitch: string, count = 6) =>
  account(
    { ring: 'adjustable' },
    `ch 1, ${count} sc in ring, join with sl st in first sc`,
    `*ch ${chains}, ${stitch} in 2nd ch from hook, ${stitch} in next ${chains - 2} chs, sl st in next sc; rep from * around`,
  )

describe('M10 spokes', () => {
  it('are (n − 1)·w long, one for each repeat, and nothing of them is wrong', () => {
    const { account: told, findings } = spoked(9, 'hdc')
    expect(findings).toEqual([])
    expect(told).toMatchObject({ shape: 'petals', petals: 6 })
    const longer = spoked(12, 'hdc').account!
    expect((longer.overTips - told!.overTips) / 2).toBeCloseTo(3 * W, 1)
    const inner = told!.rounds[0]!.outerRadius
    expect(told!.overTips / 2 - inner).toBeGreaterThan(8 * W)
    expect(told!.overTips / 2 - inner).toBeLessThan(9.5 * W)
  })

  it('are as wide as their stitches are high, on the side in the direction of work', () => {
    for (const stitch of ['sc', 'hdc', 'dc'] as const) {
      const { located } = spoked(8, stitch)
      const stitches = located[1]!.elements.filter((entry) => entry.element.standing)
      expect(stitches).toHaveLength(6 * 7)
      const farthest = Math.max(
        ...stitches.map(({ base, top }) => Math.hypot(top.x - base.x, top.y - base.y)),
      )
      expect(farthest).toBeCloseTo(gauge.height(stitch), 6)
      // Working direction is clockwise before the picture is mirrored for right-handers.
      for (const { base, top } of stitches) expect(base.x * top.y - base.y * top.x).toBeGreaterThan(0)
    }
  })

  it('keep to their own sector where many stand close', () => {
    const { located } = spoked(8, 'dc', 12)
    const stems = located[1]!.elements.filter((entry) => entry.element.role === 'stem')
    expect(stems).toHaveLength(12)
    const sector = (2 * Math.PI) / 12
    for (const { base, top, element } of located[1]!.elements.filter((entry) => entry.element.standing)) {
      const turn = Math.atan2(base.x * top.y - base.y * top.x, base.x * top.x + base.y * top.y)
      expect(turn, String(element.index)).toBeLessThan(sector)
    }
  })

  it('may begin in the ring itself', () => {
    const { account: told, findings } = account(
      { ring: 'chain', chains: 6 },
      '*ch 8, sc in 2nd ch from hook, hdc in next 5 chs, sc in next ch, sl st in ring; rep from * 7 more times',
    )
    expect(findings.filter((entry) => entry.severity !== 'note')).toEqual([])
    expect(told).toMatchObject({ shape: 'petals', petals: 8 })
    expect(told!.overTips / 2).toBeGreaterThan(7 * W)
  })
})

describe('M5, M10 petals between slip stitches into a ring', () => {
  it('are counted as petals, their valleys at the slip stitches', () => {
    const {
      account: told,
      findings,
      located,
    } = account({ ring: 'chain', chains: 8 }, '(ch 3, 3 dc, ch 3, sl st) 5 times in ring')
    expect(findings.filter((entry) => entry.severity === 'error')).toEqual([])
    expect(told).toMatchObject({ shape: 'petals', petals: 5 })
    const slips = located[0]!.elements.filter((entry) => entry.element.role === 'slip')
    expect(slips).toHaveLength(5)
    for (const slip of slips) expect(radiusOf(slip.top)).toBeLessThan(told!.overTips / 4)
  })

  it('loops of chains alone are petals too', () => {
    const { account: told } = account({ ring: 'chain', chains: 6 }, '(ch 8, sl st in ring) 6 times')
    expect(told).toMatchObject({ shape: 'petals', petals: 6 })
    expect(told!.overTips).toBeGreaterThan(1.2 * told!.overValleys)
  })
})

describe('M5 a disc that begins in one chain', () => {
  const DISC = [
    'ch 4, 11 dc in 4th ch from hook (3 skipped chs count as first dc), join with sl st in top of beg ch',
    'ch 3 (counts as dc), dc in same st, 2 dc in each dc around, join with sl st in top of beg ch-3',
  ]
  it('is round and as large as one from an adjustable ring, and no leaf', () => {
    const told = account(undefined, ...DISC).account!
    const ring = account(
      { ring: 'adjustable' },
      'ch 3, 11 dc in ring, join with sl st in top of beg ch-3',
      DISC[1]!,
    ).account!
    expect(told.shape).toBe('round')
    expect(Math.abs(told.overTips / ring.overTips - 1)).toBeLessThan(0.05)
  })

  it('skipped chains stand for a stitch, or a stitch and a space, or nothing, as the text says', () => {
    const made = (says: string) => {
      const { located } = account(
        undefined,
        `ch 5, (dc, ch 1) 5 times in 5th ch from hook${says}, join with sl st in first st`,
      )
      const { places } = located[0]!.round
      return [
        places.filter((p) => p.kind === 'stitch').length,
        places.filter((p) => p.kind === 'space').length,
      ]
    }
    expect(made(' (4 skipped chs do not count)')).toEqual([5, 5])
    const first = (says: string) =>
      account(
        undefined,
        `ch 5, dc in 5th ch from hook${says}, ch 1, (dc, ch 1) 4 times in same ch, join with sl st in first st`,
      ).located[0]!.round.places
    const kinds = (says: string) =>
      first(says)
        .map((place) => place.kind[1])
        .join('')
    expect(kinds(' (4 skipped chs count as dc and ch 1)')).toBe('tp'.repeat(6))
    expect(kinds(' (skipped chs do not count)')).toBe('tp'.repeat(5))
    expect(kinds(' (4 skipped chs count as first dc)')).toBe(`t${'tp'.repeat(5)}`)
  })
})

it('M5 all that goes into a chain made before it stands around that chain, as where the round makes it', () => {
  const rounds = [
    '6 sc in 2nd ch from hook, join with sl st in first sc',
    'ch 1, 2 sc in each sc around, join',
  ]
  const [first] = workedMotif(rounds, { chain: 2 }).located
  const angles = first!.elements.map(({ top }) => Math.atan2(top.x, -top.y)).sort((a, b) => a - b)
  expect(angles).toHaveLength(6)
  for (let i = 1; i < 6; i++) expect(angles[i]! - angles[i - 1]!).toBeCloseTo(Math.PI / 3, 6)
})
