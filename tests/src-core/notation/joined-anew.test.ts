/** New yarn drawn up as a loop, rings drawn tight, clusters with their number, chains gone around. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const clean = (text: string, counts: readonly number[], terms: 'US' | 'UK' = 'US') => {
  expect(told(text, terms)).toEqual([])
  expect(made(text, terms)).toEqual(counts)
}

const DISC = 'Rnd 1: Magic ring, ch 1, 12 sc in ring, sl st in first sc. (12 sc)'

describe('A loop that is drawn up in any stitch', () => {
  it.each([
    'With green, pull up a loop in any sc, ch 3 (counts as dc), dc in same st',
    'Draw up a loop of B in any sc, ch 3 (counts as dc), dc in same st',
    'Insert hook in any sc and draw up a loop of blue, ch 3 (counts as dc), dc in same st',
  ])('joins the yarn there: %s', (joins) => {
    clean(`${DISC}\nRnd 2: ${joins}, 2 dc in each sc around, sl st in top of ch-3. (24 dc)`, [12, 24])
  })

  it('is no leg of the puff behind it', () => {
    const puff =
      'puff: (Yo, insert hook in st, yo and pull up a loop) 3 times in same st, yo and pull through all 7 loops.'
    clean(
      `STITCH GUIDE\n${puff}\n\n${DISC}\nRnd 2: With white, pull up a loop in any sc, ch 2 (does not count as a st), puff in same sc, ch 2, (puff in next sc, ch 2) 11 times, sl st in first puff. (12 puffs)`,
      [12, 12],
    )
  })
})

describe('A ring that is drawn tight', () => {
  it.each([
    'Pull the loop tight and ss into the top of the 3 ch.',
    'Draw the ring closed, ss in top of 3 ch.',
  ])('is no stitch: %s', (tight) => {
    clean(
      `Round 1 – With berry, make a magic loop. Make 3 ch (this counts as your first treble), then 11 tr into the loop. ${tight} Count them: you should have 12 trebles.`,
      [12],
      'UK',
    )
  })
})

describe('A cluster with the number of its legs', () => {
  const round = (cluster: string) =>
    `${DISC}\nRnd 2: Ch 1, *sc in next st, ${cluster} in next st; rep from * around, sl st in first sc. (12 sts)`

  it.each(['a 3 dc cluster', 'a 5 dc popcorn', '4 dc popcorn', 'another 3 dc bobble'])(
    'is one: %s',
    (cluster) => {
      clean(round(cluster), [12, 12])
    },
  )

  it('is several in the plural', () => {
    expect(made(round('2 dc popcorns'))).toEqual([12, 18])
  })
})

describe('Chains that a round began with, gone around', () => {
  it.each(['the ch 3 of Rnd 1', 'beg ch-3 of Rnd 1', 'the beginning ch-3', 'the turning chain'])(
    'are its first stitch: %s',
    (chains) => {
      clean(
        `Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, sl st in top of ch-3. (12 dc)
Rnd 2: Ch 3 (counts as dc), FPdc around ${chains}, *dc in next dc, FPdc around same dc; rep from * around, sl st in top of ch-3. 24 sts (12 dc, 12 FPdc)`,
        [12, 24],
      )
    },
  )
})

describe('A point worked back along its chain', () => {
  it.each([
    ['working back along these ch,', 'placing last ss at base of first point'],
    ['turn and work back along the 6 ch,', 'working last ss at the foot of the first point'],
    ['working back down the chain just made,', 'putting the last ss in same place as first ch'],
  ])('%s … %s', (back, last) => {
    clean(
      `Make a magic ring.
1st round: 3ch (to stand for first treble), 14tr in ring, ss in 3rd of 3ch. 15tr.
2nd round: *6ch; ${back} 1dc in 2nd ch from hook, 1htr in next ch, 1tr in each of next 2ch, 1dtr in next ch; miss 2tr, ss in next tr; repeat from * 4 more times, ${last}. 25 sts.`,
      [15, 25],
      'UK',
    )
  })
})
