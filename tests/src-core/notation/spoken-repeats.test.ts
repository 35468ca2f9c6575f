/** Repeats, groups and counts as wordy pages tell them, each in many wordings. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  return {
    told: findings.filter(({ severity }) => severity !== 'note').map(({ code, where }) => `${where} ${code}`),
    made: rounds.map(({ made }) => made),
  }
}
const TWELVE = 'Rnd 1: Magic ring, ch 1, 12 sc in ring; join. (12 sc)\n'

describe('what stands between asterisks', () => {
  it.each([
    'and repeat what is between the stars 11 more times',
    'and repeat between the stars 11 more times',
    'repeating between * and * 11 more times',
    '; repeat the part between asterisks 11 more times',
    ', repeat what is between the stars to the end of the round',
    ', repeat instructions between stars around',
    ', repeat all that is between the two asterisks 11 times more',
    '(12 times)',
    '[12 times]',
    ', and do this 11 more times',
    ', work from * to * 12 times in total',
  ])('is repeated: "%s"', (repeat) => {
    expect(read(`${TWELVE}Rnd 2: Ch 1, *sc in next sc, ch 1* ${repeat}. Join. (12 sc)`)).toEqual({
      told: [],
      made: [12, 12],
    })
  })

  it('is still held to what there is', () => {
    const { told } = read(
      `${TWELVE}Rnd 2: Ch 1, *sc in next sc, ch 1* and repeat between the stars 12 more times. Join.`,
    )
    expect(told).toHaveLength(1)
  })
})

describe('as many on both sides of chains', () => {
  const SQUARE = `Ch 4, join to a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 3, (3 dc in ring, ch 3) 3 times; join with sl st to top of ch-3. (12 dc)
Rnd 2: Sl st to corner. Ch 3, (2 dc, ch 3, 3 dc) in corner, ch 1, `
  it.each([
    '*3 dc, ch 3, 3 dc in next corner, ch 1* 3 times',
    '*3 dc, ch 3, 3 dc in next corner sp, ch 1; rep from * 2 more times',
    '[3 dc, ch 3, 3 dc in next corner, ch 1] 3 times',
    '*3 double crochet, ch 3, 3 dc in next ch-3 sp, ch 1* three times',
  ])('are one group: "%s"', (group) => {
    const next =
      '\nRnd 3: Sl st to corner. Ch 3, (2 dc, ch 3, 3 dc) in corner, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 3, 3 dc) in next corner, ch 1, 3 dc in next ch-1 sp, ch 1* 3 times; join. (36 dc)'
    expect(read(`${SQUARE}${group}; join. (24 dc)${next}`)).toEqual({ told: [], made: [12, 24, 36] })
  })

  it('are none where each stands in a stitch of its own', () => {
    const text = `${TWELVE}Rnd 2: Ch 1, *sc in next sc, ch 3, sc in next sc; rep from * around; join. (12 sc, 6 ch-3 sps)`
    expect(read(text)).toEqual({ told: [], made: [12, 12] })
  })
})

describe('a ring that is pulled tight', () => {
  it.each([
    'Close the ring and join with a slip stitch to the top of the chain 3.',
    'Close the magic ring, then join with sl st to top of ch 3.',
    'Tighten the ring and join.',
    'Pull the ring tight and sl st to top of ch 3.',
    'Close ring. Sl st to top of ch 3.',
  ])('works nothing: "%s"', (closing) => {
    expect(read(`Rnd 1: Magic ring. Ch 3 (counts as dc), 11 dc into the ring. ${closing} (12 dc)`)).toEqual({
      told: [],
      made: [12],
    })
  })
})

describe('a count with its label on a line of its own', () => {
  it.each([
    'Join with sl st to top of ch 3',
    'Join with a slip stitch to the top of the chain 3',
    'Join',
    'Sl st to first sc',
  ])('is no work behind "%s"', (joining) => {
    for (const label of ['Stitch count', 'Stitch Count', 'Total', 'Count', 'Total stitches'])
      expect(
        read(
          `Rnd 1: Magic ring, ch 1, 12 sc in ring. ${joining}.\n${label}: 12 sc\nRnd 2: Ch 1, sc in each sc. Join. (12 sc)`,
        ).made,
      ).toEqual([12, 12])
  })
})

it('says of two beginning chains in one line what each counts as', () => {
  const text = `3ch = 1tr, 4ch = 1dtr at start of rnd

R1: Magic ring, 3ch, 15tr in ring, ss. 16
R2: 4ch, (dtr, 2ch, 2dtr) in same st, tr in next 3, *(2dtr, 2ch, 2dtr) in next, tr in next 3; rep from * 2 more times, ss in top of 4ch. 28
R3: ss in next dtr & in 2ch-sp, 3ch, (tr, 2ch, 2tr) in sp, tr in next 7 sts, *(2tr, 2ch, 2tr) in 2ch-sp, tr in next 7 sts; rep from * 2 more times, ss. 44`
  expect(read(text, 'UK')).toEqual({ told: [], made: [16, 28, 44] })
})
