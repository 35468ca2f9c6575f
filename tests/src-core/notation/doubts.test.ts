/** What works out as written and is hardly meant so. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { told } from './telling'

const square = (
  corner: string,
) => `Rnd 1: Ch 4, sl st in first ch to form ring; ch 3 (counts as dc), 2 dc in ring, ch 3, [3 dc in ring, ch 3] 3 times; join with sl st in top of ch-3.
Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, ${corner} in next ch-3 sp, *dc in next 3 dc, (2 dc, ch 3, 2 dc) in next ch-3 sp; rep from * 2 more times; join with sl st in top of ch-3.`

describe('a chain left out', () => {
  it('is asked for where the same stitch stands twice in one place', () => {
    expect(told(square('(2 dc, 2 dc)'))).toEqual([
      expect.stringContaining('the same stitch twice with nothing between: a chain seems to be missing'),
    ])
    expect(told(square('(2 dc, ch 3, 2 dc)'))).toEqual([])
  })

  it('is not asked for where another kind stands between', () => {
    expect(told(square('(2 dc, tr, dc)'))).toEqual([])
  })

  const wheel = (
    rest: string,
  ) => `Round 1: 6ch, ss in first ch to form a ring; 3ch (counts as 1tr), 17tr in ring, ss in top of 3ch. (18 tr)
Round 2: 3ch, tr2tog over next 2tr (counts as first cluster), 4ch, ${rest}, ss in top of first cluster.`

  it.each([
    ['[tr3tog over next 3tr] 5 times', 'the ch 4 before it stands nowhere in what is repeated'],
    [
      '*tr3tog over next 3tr; rep from * 4 times more',
      'the ch 4 before it stands nowhere in what is repeated',
    ],
  ])('is asked for where a repeat has none: %s', (rest, words) => {
    expect(told(wheel(rest), 'UK')).toEqual([expect.stringContaining(words)])
  })

  it.each(['[tr3tog over next 3tr, 4ch] 5 times', '*tr3tog over next 3tr, 4ch; rep from * 4 times more'])(
    'is found where it stands: %s',
    (rest) => {
      expect(told(wheel(rest), 'UK')).toEqual([])
    },
  )
})

describe('a space run over', () => {
  const fans = (
    way: string,
  ) => `Rnd 1: Magic ring, ch 3 (counts as dc), 3 dc in ring, ch 2, [4 dc in ring, ch 2] 4 times; join with sl st in top of ch-3.
Rnd 2: ${way} and in ch-2 sp, ch 3 (counts as dc), 5 dc in same sp, *6 dc in next ch-2 sp; rep from * 3 more times; join with sl st in top of ch-3.`

  it('is told of slip stitches on the way to it', () => {
    expect(told(fans('Sl st in next 4 dc'))).toEqual([
      expect.stringContaining(
        'leads past a ch-2 sp, and the next words go into one; only 3 sts are before it',
      ),
    ])
    expect(told(fans('Sl st in next 3 dc'))).toEqual([])
  })

  const leaf = (
    run: string,
  ) => `Round 1: Magic ring, 3ch (counts as 1tr), 4tr, 2ch, 5tr in ring, ss in top of 3ch.
Round 2: 1ch, 1dc in same place, 1dc in each of next ${run}, 2dc in 2ch-sp, 1dc in each of next 5tr, ss in first dc.`

  it('is told of a run whose next words go back into it', () => {
    expect(told(leaf('5tr'), 'UK').join('\n')).toContain('only 4 sts are before it')
    expect(told(leaf('4tr'), 'UK')).toEqual([])
  })
})

describe('the side of a border', () => {
  const border = (long: number) => `Ch 13.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)
Rows 2-14: Ch 1, sc in each sc across, turn. (12 sc)
BORDER
Rnd 1: Ch 1, *3 sc in corner st, sc in each of next 10 sts, 3 sc in corner st, 12 sc evenly along row ends; rep from * once more, sl st in first sc. (56 sc)
Rnd 2: Sl st in next sc, ch 1, *3 sc in center sc of corner, sc in each of next 12 sc, 3 sc in center sc of corner, sc in each of next ${long} sc; rep from * once more, sl st in first sc. Fasten off.`

  it('is asked about where it leaves a stitch before the corner that the other sides do not', () => {
    expect(told(border(13))).toEqual([expect.stringContaining('passed over without "sk": 1 st')])
    expect(told(border(14))).toEqual([])
  })
})

describe('a row along a chain', () => {
  const leaf = (first: string) => `Small leaf
Make 9 ch.
Round 1: 1dc in ${first} ch from hook, 1htr in next ch, 1tr in each of next 2ch, 1tr in each of next 2ch, 1htr in next ch, 3dc in last ch; now work along other side of chain: 1htr in next ch, 1tr in each of next 4ch, 1htr in next ch, 1dc in last ch, ss in first dc. Fasten off.`

  it('that ends a chain too late is asked where it begins', () => {
    expect(told(leaf('3rd'), 'UK').join('\n')).toContain('one chain nearer to the hook is usual for a dc')
    expect(told(leaf('2nd'), 'UK')).toEqual([])
  })
})

describe('yarn that was fastened off', () => {
  const wheel = (
    end: string,
    begin: string,
  ) => `Rnd 1: Magic ring, ch 1, 8 sc in ring, join with sl st in first sc. (8 sc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each sc around, join with sl st in top of ch-3. (16 dc) ${end}
Rnd 3: ${begin}ch 1, sc in same st and in each dc around, join with sl st in first sc. (16 sc)`

  it.each([
    ['Fasten off.', ''],
    ['Fasten off B.', 'Continuing with B, '],
  ])('is asked for where the next round goes on: %s %s', (end, begin) => {
    expect(told(wheel(end, begin))).toEqual([
      expect.stringContaining('fastened off in the round before and is not joined again'),
    ])
  })

  it.each([
    ['', ''],
    ['Fasten off A. Join B in same place.', ''],
    ['Fasten off.', 'Join B with sl st in any dc, '],
    ['Fasten off A.', 'With B, '],
  ])('is not where it is joined: %s %s', (end, begin) => {
    expect(told(wheel(end, begin))).toEqual([])
  })
})
