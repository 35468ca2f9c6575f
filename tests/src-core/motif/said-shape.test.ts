/** What a motif in written rounds is said to be, where an edge over petals leaves it to tension. */
import { describe, expect, it } from 'vitest'
import type { RoundShape, RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'

const PETALS = [
  'ch 1, 12 sc in ring, join with sl st in first sc',
  'ch 1, *sc in next sc, ch 5, sk next sc; rep from * 5 more times, join with sl st in first sc',
  '(sc, hdc, dc, 3 tr, dc, hdc, sc) in each ch-5 sp around, join with sl st in first sc',
]
const EDGE =
  'ch 1, *sc in next 4 sts, 3 sc in next st, sc in next 4 sts; rep from * 5 more times, join with sl st in first sc'
const HEXAGON = ['12 sc in ring', '*sc in next st, 3 sc in next st; rep from * 5 more times']

function told(rounds: readonly string[], shape?: RoundShape, more: Partial<RoundsMotif> = {}) {
  const motif: RoundsMotif = {
    id: 'm1',
    kind: 'rounds',
    foundation: { ring: 'chain', chains: 4 },
    gauge: { stitch: 'dc', stitches: 18, rows: 9, over: 100, hook: 4 },
    rounds: rounds.map((work) => ({ slot: 'a', work })),
    ...(shape && { shape }),
    ...more,
  }
  const { account, findings, drawing } = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
  return { account: account!, codes: findings.map(({ code }) => code), drawing: drawing() }
}

describe('a flower with a round over its petals', () => {
  it('is as its rounds say until somebody says what it is', () => {
    const { account, codes } = told([...PETALS, EDGE])
    expect(account).toMatchObject({ shape: 'straight', petals: 6, shapes: ['straight', 'petals', 'round'] })
    expect(codes).toContain('motif/petals-pulled')
  })

  it('keeps its petals where that is said, and is as far across as its petals and the edge on them', () => {
    const { account, codes } = told([...PETALS, EDGE], 'petals')
    expect(account).toMatchObject({ shape: 'petals', petals: 6, shapes: ['straight', 'petals', 'round'] })
    expect(codes).not.toContain('motif/petals-pulled')
    const bare = told(PETALS).account
    const grown = account.overTips - bare.overTips
    // One round of single crochet on either side: about its height, 5 mm at this gauge.
    expect(grown).toBeGreaterThan(6)
    expect(grown).toBeLessThan(14)
    expect(account.overValleys).toBeGreaterThan(bare.overValleys)
    expect(account.overValleys / account.overTips).toBeLessThan(0.9)
    expect(account.anchors.filter(({ kind }) => kind === 'tip')).toHaveLength(6)
    expect(Math.max(...account.outline.map(({ x, y }) => Math.hypot(x, y)))).toBeCloseTo(
      account.overTips / 2,
      6,
    )
  })

  it('is drawn with its petals', () => {
    expect(told([...PETALS, EDGE]).drawing!.located.at(-1)!.corners).toBe(6)
    expect(told([...PETALS, EDGE], 'petals').drawing!.located.at(-1)!.corners).toBe(0)
  })

  it('may be a circle through its tips', () => {
    const { account } = told([...PETALS, EDGE], 'round')
    expect(account).toMatchObject({ shape: 'round', petals: 0, overTips: account.overValleys })
    expect(account.overTips).toBeCloseTo(told([...PETALS, EDGE], 'petals').account.overTips, 6)
  })

  it('says nothing of pulled petals once its shape is said', () => {
    const { account, codes } = told([...PETALS, EDGE], 'straight')
    expect(account.shape).toBe('straight')
    expect(account.overTips).toBe(told([...PETALS, EDGE]).account.overTips)
    expect(codes).not.toContain('motif/petals-pulled')
  })

  it('is scaled by its measures whatever it is said to be', () => {
    for (const shape of ['petals', 'round', 'straight'] as const)
      expect(told([...PETALS, EDGE], shape, { measured: { overTips: 100 } }).account.overTips).toBeCloseTo(
        100,
        6,
      )
  })
})

describe('what rounds can be said to be', () => {
  it('leaves bare petals their petals', () => {
    expect(told(PETALS).account.shapes).toEqual(['petals', 'round'])
  })

  it('is nothing else for a disc without petals', () => {
    expect(told(['12 sc in ring', '2 sc in each st around']).account).not.toHaveProperty('shapes')
  })

  it('is told where a file says what they cannot make', () => {
    const { account, codes } = told(HEXAGON, 'petals')
    expect(codes).toContain('motif/other-shape')
    expect(account.shape).toBe(told(HEXAGON).account.shape)
    expect(told(PETALS, 'round').codes).not.toContain('motif/other-shape')
  })
})
