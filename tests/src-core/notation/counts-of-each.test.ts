/** Counts of each end, side or corner beside those of the round. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const heart = (
  count: string,
) => `Round 1: Make a magic ring. Ch 3, then all in the ring: 3 tr, 4 dc, 1 tr, 4 dc, 3 tr; ch 3, sl st in ring. Pull the ring shut. ${count}
Round 2: Ch 1, 3 sc over the first chain loop, 2 sc in each of the 3 tr, 1 sc in each of the 4 dc, (sc, ch 2, sc) in the single tr at the point, 1 sc in each of the 4 dc, 2 sc in each of the 3 tr, 3 sc over the other chain loop, sl st in the center of the heart. 28 sc.`

const square = (
  count: string,
) => `Rnd 1: Ch 3 (counts as dc), 2 dc in magic ring, ch 2, [3 dc in ring, ch 2] 3 times, sl st in top of ch-3. (12 dc)
Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times, sl st in top of ch-3. ${count}`

describe('A count of each end, side or corner', () => {
  it.each([
    'You should count 15 stitches with one chain loop at each end.',
    '15 sts, with a ch-3 loop at either end.',
    '15 stitches and two chain loops.',
  ])('counts for one of them or for all: %s', (count) => {
    expect(told(heart(count))).toEqual([])
    expect(made(heart(count))).toEqual([15, 28])
  })

  it.each([
    '24 dc, 1 ch-1 sp per side, one ch-2 sp at each corner.',
    '(24 dc, with a ch-2 sp in each corner)',
    '(24 dc, 4 ch-1 sps on the sides, 6 dc for each corner)',
  ])('tells nothing more to work: %s', (count) => {
    expect(told(square(count))).toEqual([])
    expect(made(square(count))).toEqual([12, 24])
  })

  it('may tell what has grown, or what each of the petals has', () => {
    const petals = `Rnd 1: Magic ring, ch 1, 6 sc in ring, sl st in first sc. (6 sc)
Rnd 2: Ch 1, (sc, hdc, 3 dc, hdc, sc) in each sc around, sl st in first sc. You now have 6 petals with 7 stitches in each.`
    expect(told(petals)).toEqual([])
    expect(told(square('24 dc, six to a side.'))).toEqual([])
    expect(told(square('24 dc, three more on each side.'))).toEqual([])
  })

  it('is held against the round', () => {
    expect(told(heart('15 stitches, and four chain loops at each end.'))).toEqual([
      expect.stringContaining('rounds/wrong-end-count'),
    ])
    expect(told(square('24 dc, 3 ch-1 sps per side.'))).toEqual([
      expect.stringContaining('rounds/wrong-end-count'),
    ])
  })
})
