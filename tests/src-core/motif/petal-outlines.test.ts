/** Outlines of petals as an editor would print them: told by number, without spikes, notches and steps. */
import { describe, expect, it } from 'vitest'
import type { MotifAccount } from '../../../shared-types/plan'
import type { RoundsMotif } from '../../../shared-types/project'
import { extremesOf } from '../../../src-core/motif/extremes'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { edgeOfLobe } from '../../../src-core/motif/rounds/lobe'
import { GAUGE, workedMotif } from './written-motif'

const made = (rounds: readonly string[]): MotifAccount => workedMotif(rounds, { ring: 'adjustable' }).account!
const radii = ({ outline }: MotifAccount): number[] => outline.map(({ x, y }) => Math.hypot(x, y))
/** Tips that stand out by a hundredth of the radius. */
const tips = (account: MotifAccount): number => extremesOf(radii(account), account.overTips / 200).tips.length

describe('petals worked into the ring', () => {
  const pansy = (large: number, small: number) =>
    `${'ch 4, 3 dtr in ring, ch 4, sl st in ring, '.repeat(large)}${'ch 3, 4 tr in ring, ch 3, sl st in ring, '.repeat(small)}`
  it.each([
    [2, 3],
    [3, 2],
    [1, 4],
    [2, 2],
    [4, 2],
  ])('are as many as are told, however wide: %i large and %i small', (large, small) => {
    const account = made([pansy(large, small).slice(0, -2)])
    expect(account).toMatchObject({ shape: 'petals', petals: large + small })
    expect(account.anchors.filter(({ kind }) => kind === 'tip')).toHaveLength(large + small)
  })
})

describe('points worked back along chains', () => {
  const star = (points: number, back: string, chains: number) =>
    made([
      `ch 1, ${points * 2} sc in ring, join with sl st in first sc`,
      'ch 1, 2 sc in each sc around, join with sl st in first sc',
      `*ch ${chains}, ${back}, sk next 3 sc, sl st in next sc; rep from * ${points - 1} more times`,
    ])
  it.each([
    [5, 'sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in next ch', 6],
    [6, 'sc in 2nd ch from hook, hdc in next ch, dc in next 2 ch', 5],
    [8, 'sl st in 2nd ch from hook, sc in next 2 ch, hdc in next ch', 5],
  ])('taper to one tip each: %i', (points, back, chains) => {
    const account = star(points, back, chains)
    expect(account.petals).toBe(points)
    expect(tips(account)).toBe(points)
    // From each dip outward nothing steps back, and from each tip inward nothing stands out.
    const all = radii(account)
    const half = all.length / points / 2
    for (let k = 1; k <= half; k++) expect(all[k]!).toBeLessThanOrEqual(all[k - 1]! + 1e-9)
  })
})

describe('points that stand out from corners', () => {
  const flake = (corner: string, shape?: 'petals' | 'straight') => {
    const motif: RoundsMotif = {
      ...{ id: 'm', kind: 'rounds', gauge: GAUGE, foundation: { ring: 'chain', chains: 6 } },
      ...(shape && { shape }),
      rounds: [
        'ch 3 (counts as dc), dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times, join with sl st in top of beg ch-3',
        'sl st in next dc and in ch-2 sp, ch 3 (counts as dc), (dc, ch 3, 2 dc) in same sp, ch 1, *(2 dc, ch 3, 2 dc) in next ch-2 sp, ch 1; rep from * around, join with sl st in top of beg ch-3',
        `sl st in next dc and in ch-3 sp, ch 1, *${corner} in ch-3 sp, ch 4, sc in ch-1 sp, ch 4; rep from * around, join with sl st in first sc`,
      ].map((work) => ({ work })),
    }
    const { account, findings } = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
    return account!
  }
  const PICOTS =
    '(sc, ch 4, sl st in 4th ch from hook, ch 6, sl st in 6th ch from hook, ch 4, sl st in 4th ch from hook, sc)'

  it('make a snowflake of six tips, or a hexagon where that is said', () => {
    const account = flake(PICOTS)
    expect(account).toMatchObject({ shape: 'petals', petals: 6 })
    expect(tips(account)).toBe(6)
    expect(account.shapes).toContain('straight')
    expect(flake(PICOTS, 'petals').overTips).toBeCloseTo(account.overTips, 6)
    expect(flake(PICOTS, 'straight')).toMatchObject({ shape: 'straight', petals: 6 })
  })

  it('are none without picots', () => {
    expect(flake('(sc, ch 2, sc)')).toMatchObject({ shape: 'straight', petals: 6 })
  })
})

describe('a lobe as it is drawn', () => {
  const steps = 240
  const lobe = (radius: (share: number) => number) =>
    Float64Array.from({ length: steps + 1 }, (_, k) => radius(Math.min(k, steps - k) / (steps / 2)))
  const smooth = lobe((share) => 20 + 10 * Math.cos((share * Math.PI) / 2))

  it('has no notch beside a picot', () => {
    const worked = lobe((share) => smooth[Math.round((share * steps) / 2)]! + (share < 0.06 ? 4 : 0))
    const drawn = edgeOfLobe(worked, 6)
    expect(drawn[0]).toBeCloseTo(worked[0]!, 9)
    expect(drawn[12]!).toBeGreaterThan(worked[12]! + 1)
    drawn.forEach((radius, k) => expect(radius).toBeGreaterThanOrEqual(worked[k]! - 1e-9))
  })

  it('has no bump of a round below in its dip', () => {
    const worked = lobe((share) => (share < 0.5 ? 30 : 20 + 0.5 * Math.abs(Math.sin(share * 40))))
    const drawn = [...edgeOfLobe(worked, 6)].slice(0, steps / 2 + 1)
    drawn.slice(1).forEach((radius, k) => expect(radius).toBeLessThanOrEqual(drawn[k]! + 1e-9))
  })

  it('keeps a smaller petal between two large ones', () => {
    const worked = lobe((share) => (share < 0.4 ? 30 : share > 0.8 ? 25 : 15))
    expect(edgeOfLobe(worked, 6)[steps / 2]).toBe(25)
  })
})

describe('a lobe that begins at its dip', () => {
  it('has no petal to draw an edge around', () => {
    const edge = edgeOfLobe(Float64Array.from([2, 2, 10, 2, 2]), 6)
    expect([...edge].every(Number.isFinite)).toBe(true)
    expect(edge[0]).toBe(2)
  })
})
