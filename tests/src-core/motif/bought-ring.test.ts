/** A bought ring keeps its size, wherever the text tells it. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { GAUGE } from './written-motif'

function across(first: string, instructions?: string, more: Partial<RoundsMotif> = {}): number {
  const motif: RoundsMotif = {
    ...{
      id: 'm',
      kind: 'rounds',
      gauge: GAUGE,
      ...(instructions !== undefined && { instructions }),
      ...more,
    },
    rounds: [{ work: first }, { work: 'ch 1, sc in each sc around, join with sl st in first sc' }],
  }
  const { account } = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
  return 2 * account!.rounds[0]!.outerRadius
}

const ROUND = 'join yarn to ring, ch 1, 36 sc in ring, join with sl st in first sc'
const MADE: Partial<RoundsMotif> = { foundation: { ring: 'adjustable' } }
const plain = across('ch 1, 36 sc in ring, join with sl st in first sc', undefined, MADE)

describe('a bought ring', () => {
  it.each([
    ['Work over a 25 mm plastic ring.', 25],
    ['You need: thread, a plastic ring (25 mm), a needle.', 25],
    ['2.5 cm curtain ring, cotton', 25],
    ['A 1-inch bone ring is worked over.', 25.4],
    ['One brass ring, 38 mm across.', 38],
    ['One 1½" plastic ring.', 38.1],
  ])('is as wide as is told: %s', (words, size) => {
    for (const more of [{}, MADE]) {
      const wide = across(ROUND, words, more)
      // A stitch stands on it all round, a little higher for want of room.
      expect(wide - size).toBeGreaterThan(8)
      expect(wide - size).toBeLessThan(13)
    }
  })

  it.each([
    [ROUND, 'A plastic ring.'],
    [ROUND, 'A 4 mm hook. One plastic ring.'],
    [`${ROUND} (25 mm)`, 'A ring.'],
    ['36 sc in magic ring, join with sl st in first sc', 'A key ring (25 mm) to hang it from.'],
  ])('has no size where none is told of it: %s / %s', (first, words) => {
    expect(across(first, words, MADE)).toBeCloseTo(plain, 6)
  })

  it('is none where a ring of chains is begun on', () => {
    const ring: Partial<RoundsMotif> = { foundation: { ring: 'chain', chains: 6 } }
    expect(across(ROUND, 'One 60 mm key ring.', ring)).toBeCloseTo(across(ROUND, undefined, ring), 6)
  })
})
