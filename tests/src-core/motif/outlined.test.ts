/** M14: an outline along the edge of petals leaves them petals. Common practice, no source. Texts of our own. */
import { describe, expect, it } from 'vitest'
import { workedMotif } from './written-motif'

const FLOWERS: readonly (readonly [string, number, readonly string[]])[] = [
  ['5 petals in a ring', 5, ['*ch 4, 3 tr in ring, ch 4, sl st in ring; rep from * 4 more times']],
  ['8 petals in a ring', 8, ['*ch 3, dc in ring, ch 3, sl st in ring; rep from * 7 more times']],
  [
    '5 petals on a round',
    5,
    [
      'ch 1, 5 sc in ring, join with sl st in first sc',
      '*(sl st, ch 3, 3 tr, ch 3, sl st) in next sc; rep from * around',
    ],
  ],
]
const SC = 'ch 1, sc in each st around, join with sl st in first sc'

const made = (...rounds: string[]) => workedMotif(rounds, { ring: 'adjustable' }).account!

describe('M14 petals with an outline', () => {
  it.each(FLOWERS)(
    '%s stay a flower, deep between its petals, larger by the outline',
    (_, petals, rounds) => {
      const bare = made(...rounds)
      const outlined = made(...rounds, SC)
      expect(outlined).toMatchObject({ shape: 'petals', petals })
      const grows = [outlined.overTips - bare.overTips, outlined.overValleys - bare.overValleys] as const
      // A round of sc is as wide in the dips as at the tips.
      expect(grows[0]).toBeGreaterThan(4)
      expect(grows[1]).toBeCloseTo(grows[0], -1)
      expect(outlined.overValleys).toBeLessThan(0.8 * outlined.overTips)
    },
  )

  it('a ground of several rounds round them is a circle', () => {
    const more = 'ch 1, sc in each sc around, join with sl st in first sc'
    for (const [, , rounds] of FLOWERS) expect(made(...rounds, SC, more, more).shape).toBe('round')
  })

  it('a bridge of chains over the dips is no outline', () => {
    const bridge =
      'ch 1, *sc in next tr, ch 5, sk 1 tr, sc in next tr, ch 5; rep from * around, join with sl st in first sc'
    expect(made(FLOWERS[0]![2][0]!, bridge).overValleys).toBeGreaterThan(20)
  })
})
