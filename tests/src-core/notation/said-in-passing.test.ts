/** More of what older print, translated and wordy pages say. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const RING = '8 ch., join into a ring with s.s.\n'
const SIXTEEN = `${RING}1st Round: 3 ch. (to stand for 1 tr.), 15 tr. into ring, s.s. to top of 3 ch.\n`

describe('older print', () => {
  it.each([
    'Make 8 ch. and unite.',
    'Commence with 8 chain, join.',
    'Ch. 8, close.',
    'Begin in the centre with 8 ch., join to a circle.',
    '8 ch. Join to a circle with a s.s.',
  ])('makes its ring right behind the materials: "%s"', (start) => {
    const text = `MEDALLION\nMATERIALS: 2 balls of Crochet Cotton No. 20; a No. 3 steel hook.\n${start}\n1st Round: 3 ch. (to stand for 1 tr.), 15 tr. into ring, s.s. to top of 3 ch.`
    expect([told(text, 'UK'), made(text, 'UK')]).toEqual([[], [16]])
  })

  it.each([
    '4 ch., then 1 tr., 1 ch. on every tr. all round, s.s. to 3rd ch.',
    '4 ch., * 1 tr. on next tr., 1 ch.; repeat from * all round, s.s. to 3rd of 4 ch.',
  ])('begins a round with chains of its own: "%s"', (words) => {
    expect([
      told(`${SIXTEEN}2nd Round: ${words}`, 'UK'),
      made(`${SIXTEEN}2nd Round: ${words}`, 'UK'),
    ]).toEqual([[], [16, 16]])
  })

  const LOOPS = `${SIXTEEN}2nd Round: 1 ch., 2 d.c. into each tr., s.s. to first d.c.\n`
  it.each([
    '* 5 ch., s.s. in the 4th d.c.; repeat from * round.',
    '* 5 ch., s.s. into fourth d.c. from last; repeat from * to end.',
    '5 ch., miss 3 d.c., s.s. in next d.c., and repeat 7 times.',
  ])('has eight loops: "%s"', (words) => {
    for (const filled of [
      'Into each loop work 3 d.c., 3 ch. (p. made), 3 d.c.; s.s. to first d.c.',
      'Under every 5 ch. work 3 d.c., 3 ch., 3 d.c.',
      'Each loop is filled with 3 d.c., 3 ch., 3 d.c.; s.s. to finish.',
      'In each loop 3 d.c., 1 picot of 3 ch., 3 d.c.',
    ]) {
      const text = `${LOOPS}3rd Round: ${words}\n4th Round: ${filled} Fasten off.`
      expect([told(text, 'UK'), made(text, 'UK')]).toEqual([[], [16, 32, 0, 48]])
    }
  })
})

describe('first stitches', () => {
  it.each([
    '3 turning ch (instead of first dc), 11 dc into ring, close rnd with sl st in 3rd turning ch.',
    '12 dc in ring, the first dc replaced by 3 ch, close with sl st.',
  ])('of chains in any words: "%s"', (words) => {
    expect([
      told(`Ch 5, join.\nRnd 1: ${words} (12 dc)`),
      made(`Ch 5, join.\nRnd 1: ${words} (12 dc)`),
    ]).toEqual([[], [12]])
  })

  const TWELVE =
    'Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)\n'
  it.each([
    'In B: ch 3 in any stitch, dc in same st, 2 dc in each st around',
    'With B, ch 3 in any dc, dc in same st, 2 dc in each dc around',
    'Tie B to any st, ch 3, dc in same st, 2 dc in each st around',
    'B. Ch 3, dc in same st, 2 dc in each st around',
  ])('of a new yarn: "%s"', (words) => {
    const text = `${TWELVE}Rnd 2: ${words}; join. (24 dc)`
    expect([told(text), made(text)]).toEqual([[], [12, 24]])
  })
})

describe('last loops', () => {
  const SIXTY = `Ch 8, join.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring; join. (24 dc)
Rnd 2: Ch 6 (counts as dc and ch 3), sk next dc, *dc in next dc, ch 3, sk next dc; rep from * around; join with sl st in 3rd ch of ch-6. (12 ch-3 sps)
Rnd 3: Ch 1, 5 sc in each ch-3 sp around; join. (60 sc)
`
  it.each([
    'Sc in joining, *ch 7, skip 4 sts, sc in next st; rep from * around. Join last ch-7 with sl st to first sc.',
    'Ch 1, sc in same sc as joining, ch 7, *sk 4 sc, sc in next sc, ch 7; rep from * around, join to first sc.',
    'Ch 1, sc in same place, *ch 7, sc in 5th sc from hook; rep from * around, ending with ch 7, sl st in first sc.',
    'Ch 1, sc in same place, (ch 7, sk 4 sc, sc in next sc) around, ch 7, join to first sc.',
  ])('span what is left, whatever the groups of the round before: "%s"', (words) => {
    const text = `${SIXTY}Rnd 4: ${words} (12 loops)`
    expect([told(text), made(text)]).toEqual([[], [24, 12, 60, 12]])
  })
})

describe('squares', () => {
  const ONE =
    'Ch 4, join.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st in top of ch-3. (12 dc)\n'
  const TWO = 'Ch 3, dc in each dc around, working (2 dc, ch 2, 2 dc) in each corner; join.'
  it.each(['(7 dc per side)', 'Each side now has 7 dc.', 'Four sides of 7 dc.'])(
    'are counted by a side: "%s"',
    (count) => {
      expect([told(`${ONE}Rnd 2: ${TWO} ${count}`), made(`${ONE}Rnd 2: ${TWO} ${count}`)]).toEqual([
        [],
        [12, 28],
      ])
    },
  )
  it.each(['Each side now has 8 dc.', 'Four sides of 9 dc.'])(
    'and told where that is wrong: "%s"',
    (count) => {
      expect(told(`${ONE}Rnd 2: ${TWO} ${count}`)).toHaveLength(1)
    },
  )

  it.each([
    'Work another round as before',
    'Work 1 more round in the same way',
    'Follow Rnd 2',
    'Do Rnd 2 again',
    'Work Rnd 2 again',
    'Ch 3, dc in each dc around, making (2 dc, ch 2, 2 dc) at each corner; join',
  ])('have another round: "%s"', (words) => {
    const text = `${ONE}Rnd 2: ${TWO}\nRnd 3: ${words}. (44 dc)`
    expect([told(text), made(text)]).toEqual([[], [12, 28, 44]])
  })
})

it.each([
  'sc in each dc around, counting the ch-3 as a dc and working 3 sc in each corner sp',
  'sc in each dc around, counting ch-3 as 1 dc and 3 sc in each corner sp',
  'sc in each dc around, counting the ch-3 as a dc, and working 3 sc in each corner sp',
])('what chains count as ends where work follows: "%s"', (work) => {
  const text = `Rnd 1: Magic ring, ch 3, 2 dc in ring, ch 3, *3 dc in ring, ch 3; rep from * twice, join. (12 dc)\nRnd 2: Ch 1, ${work}; join. (24 sc)`
  expect([told(text), made(text)]).toEqual([[], [12, 24]])
})

it.each([
  'Sl st in next dc, dc and ch-2 sp',
  'Sl st in next dc, next dc, and ch-2 sp',
  'Sl st in next dc, in next dc and in ch-2 sp',
])('slip stitches lead over what a list names to its space: "%s"', (way) => {
  const text = `Rnd 1: Magic ring, ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice, join. (12 dc)\nRnd 2: ${way}, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice, ch 1; join. (24 dc)`
  expect([told(text), made(text)]).toEqual([[], [12, 24]])
})

it.each([
  ['ch 3, dc in next dc, *ch 2, sk 1, dc in next 2 dc; rep from * around, ch 2; join. (8 dc)', 8],
  ['ch 3, dc in next 2 dc, *ch 3, sk next dc, dc in next 3 dc; rep from * around, ch 3; join.', 9],
])('the last chain passes over what each one passes: "%s"', (work, count) => {
  const text = `Rnd 1: Magic ring, ch 3, 11 dc in ring, join. (12 dc)\nRnd 2: ${work}`
  expect([told(text), made(text)]).toEqual([[], [12, count]])
})

it('beginning chains do not count where only that leaves nothing over', () => {
  const text =
    'Rnd 1: Magic ring, ch 2 (does not count), 12 hdc in ring, join. 12 hdc\nRnd 2: Ch 2, *2 hdc in next, hdc in next*, repeat around, join. 18 hdc'
  expect([told(text), made(text)]).toEqual([[], [12, 18]])
})

it.each([
  'Ch 3, ch 2, *dc in space before next dc, ch 2; rep from * around, making the last dc between the last dc and the ch 3; join. (12 dc, 12 ch-2 sps)',
  'Ch 3, ch 2, *dc in space before next dc, ch 2; rep from * around (working the last dc between last dc and ch-3); join. (12 dc, 12 ch-2 sps)',
])('the last gap is where the laps lead to: "%s"', (work) => {
  const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring; join. (12 dc)\nRnd 2: Sl st into the space between the ch 3 and the next dc. ${work}`
  expect([told(text), made(text)]).toEqual([[], [12, 12]])
})

it('a note tells of two beginnings in one sentence', () => {
  const text =
    'Notes: The starting ch 3 counts as a dc and the starting ch 4 counts as a tr.\n\nRnd 1: Magic ring. Ch 3, 11 dc in ring, join. (12 dc)\nRnd 2: Ch 4, tr in same st, 2 tr in each st around, join. (24 tr)'
  expect([told(text), made(text)]).toEqual([[], [12, 24]])
  expect(readRounds(text, { terms: 'US' }).rounds.map(({ spaces }) => spaces)).toEqual([{}, {}])
})

it.each([
  'Petal: [Yo, insert hook in next st, yo and draw up a loop, yo and draw through 2 loops] 3 times in same st, yo and draw through all 4 loops on hook.',
  'BegPC – beginning popcorn: ch 3, 4 dc in same st, remove hook, insert it in top of ch-3, draw loop through.\nPC – popcorn: 5 dc in st, remove hook, insert it in first dc, draw loop through.',
])('a page explains stitches by names of its own: "%s"', (special) => {
  const [begins, name] = special.startsWith('Beg')
    ? ['BegPC in same st', 'PC']
    : ['Ch 1, petal in same st', 'petal']
  const text = `Special Stitches\n${special}\n\nRnd 1: Magic ring, ch 3 (counts as dc), 15 dc in ring, join. (16 dc)\nRnd 2: ${begins}, ch 4, sk next dc, *${name} in next dc, ch 4, sk next dc; rep from * 6 more times, join. (8 ch-4 sps)`
  expect([told(text), made(text)]).toEqual([[], [16, 8]])
})

describe('a slip taken over from another round', () => {
  const BEGUN =
    'Rnd 1: Magic ring, ch 4 (counts as dc and ch 1), dc in ring, ch 3, (dc in ring, ch 1, dc in ring, ch 3) 3 times, join with sl st in 3rd ch of beg ch-4. (8 dc)'

  it.each(['top of beg ch-3', '3rd ch of beg ch-3'])(
    'is told of a beginning that is not there: "%s"',
    (place) => {
      expect(told(BEGUN)).toEqual([])
      expect(told(BEGUN.replace('3rd ch of beg ch-4', place))).toEqual([
        expect.stringContaining('join-no-such-chain'),
      ])
    },
  )

  it('is told of corner spaces of another size, beside others that are there', () => {
    const next = (corner: string) =>
      `${BEGUN}\nRnd 2: Ch 1, sc in same st, sc in each dc and ch-1 sp around, working (2 sc, ch 2, 2 sc) in each corner ${corner} sp; join. (28 sc)`
    expect(told(next('ch-3'))).toEqual([])
    expect(told(next('ch-2'))).toEqual([expect.stringContaining('no ch-2 corner sps')])
  })
})

it('a set-up round stands before the first one', () => {
  const text =
    'Magic ring.\nSet-up rnd: Ch 1, 6 sc in ring; join. (6 sc)\nRnd 1: Ch 1, 2 sc in each sc around; join. (12 sc)\nR.2: Ch 1, *sc in next sc, inc; rep from * around; join. (18 sc)'
  expect([told(text), made(text)]).toEqual([[], [6, 12, 18]])
})
