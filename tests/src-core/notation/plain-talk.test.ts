/** How people word a pattern who write as they talk. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]
const RING = 'Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, sl st in top of ch-3. (12 dc)\n'

describe('what a motif begins with', () => {
  const chained = (words: string) =>
    `${words}\n\nRow 1: Sc in 2nd ch from hook and in each ch across: 9 sc.\nRow 2: Ch 1, turn, sc in first 2 sc, dc in next 5 sc, sc in last 2 sc: 5 dc and 4 sc.`

  it.each([
    'Mount a chain of 10 ch.',
    'Make a chain of 10 chain stitches.',
    'Start with a foundation chain of 10 stitches.',
    'Make a base of 10 ch.',
    'For the example chain 10.',
    'Multiple of 4 sts + 1, plus 1 ch for the base.\nSample: make 10 ch.',
    'Multiple: 4 sts + 1 (plus 1 ch).\nSwatch: 10 ch.',
    'Worked over a multiple of 4 ch plus 2 ch.\nFor a sample, ch 10.',
    'Stitch count: divisible by 4, plus 1, and 1 turning chain.\nTest piece: 10 ch.',
  ])('is a chain: "%s"', (words) => {
    expect(both(chained(words))).toEqual([[], [9, 9]])
  })

  it.each([
    'Make a ring with the thread end.',
    'Form a loop with the tail of the yarn.',
    'Make a circle from the end of the thread.',
    'Begin: 4 ch, close with 1 sl st in the first ch.',
    'Start: chain 4 and close with one slip stitch.',
    'We start with 5 ch, join them with a slip stitch.',
  ])('is a ring: "%s"', (words) => {
    const text = `${words}\n\nRnd 1: 3 ch (= 1 dc), 15 dc in the ring, close with 1 sl st in the 3rd ch: 16 dc.`
    expect(both(text)).toEqual([[], [16]])
  })

  it('is held against a wrong count behind a colon', () => {
    const wrong = chained('Ch 10.').replace(': 9 sc.', ': 10 sc.').replace('4 sc.', '6 sc.')
    expect(told(wrong).map((line) => line.split(' ')[0])).toEqual([
      'rounds/wrong-end-count',
      'rounds/wrong-end-count',
    ])
  })
})

describe('rows that are repeated', () => {
  const rows =
    'Ch 18.\nRow 1: Sc in 2nd ch from hook, sc in each ch across. (17 sc)\nRow 2: Ch 1, turn, dc in each sc across. (17 dc)\nRow 3: Ch 1, turn, sc in each dc across. (17 sc)\n'

  it.each([
    'Repeat Rows 2-3 twice more. Fasten off.',
    '\nRep Rows 2 and 3 for pattern.',
    'Repeat Rows 2 and 3 until the block is square.',
    'Rep Row 3 for 2 inches.',
    'Rep Rows 1-3.',
  ])('behind the last one are told and add none: "%s"', (words) => {
    const { findings, rounds } = readRounds(`${rows}${words}`, { terms: 'US' })
    expect(rounds.map((round) => round.made)).toEqual([17, 17, 17])
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['rounds/part-in-prose', 'note']])
  })

  it('are those up to the next number', () => {
    const text = `${rows}Repeat Rows 2 and 3 twice more.\nRow 8: Ch 1, turn, sc in each sc across. (18 sc)`
    expect(made(text)).toEqual([17, 17, 17, 17, 17, 17, 17, 17])
    expect(told(text)).toEqual([expect.stringContaining('18 sc')])
  })

  it('are the last two, in turn, where these are named', () => {
    const wider = `Ch 12.
Row 1: Sc in 2nd ch from hook, sc in each ch across. (11 sc)
Row 2: Ch 1, turn, 2 sc in first sc, sc in each sc across. (12 sc)
Row 3: Ch 1, turn, sc in each sc across. (12 sc)
Repeat last 2 rows twice more.
Row 8: Ch 1, turn, sc in each sc across. (14 sc)`
    expect(made(wider)).toEqual([11, 12, 12, 13, 13, 14, 14, 14])
    expect(told(wider)).toEqual([])
    expect(made(wider.replace('last 2 rows', '2nd and 3rd rows'))).toEqual(made(wider))
  })

  it('hide no slip of the last one', () => {
    const wrong = rows.replace('each dc across. (17 sc)', 'each dc across. (18 sc)')
    expect(told(`${wrong}Repeat Rows 2 and 3 for pattern.`)).toEqual([expect.stringContaining('18 sc')])
  })
})

describe('chains and what they stand for, with a sign between', () => {
  it('are worked where a round begins with them', () => {
    const text = `Rnd 1: Magic ring, ch 1, 14 sc in ring; join with sl st in first sc. (14 sc)
Rnd 2: Ch 4 = 1 dc and ch 1, dc in next sc, *ch 1, dc in next sc; rep from * around, ch 1; join with sl st in 3rd ch. (14 dc)`
    expect(made(text)).toEqual([14, 14])
    expect(told(text)).toEqual([])
  })
})

describe('chains passed over', () => {
  it.each([
    '(the 3 skipped ch are a dc) and in each ch to the end',
    '(the missed chains are your first dc) and each ch to end',
    '[3 sk ch = 1 dc] and in each ch across',
    '(the 3 skipped chains make one dc), dc in each ch across',
    '(skipped ch-3 counts as dc) and in each ch across',
  ])('stand for a stitch: "%s"', (words) => {
    const text = `Ch 22.\nRow 1: Dc in 4th ch from hook ${words}. (20 dc)`
    expect(readRounds(text, { terms: 'US' }).findings).toEqual([])
    expect(made(text)).toEqual([20])
  })
})

describe('what a round comes to', () => {
  const counted = (words: string) =>
    `${RING}Rnd 2: 5 ch (= 1 dc + 2 ch), skip 1 dc, *1 dc in the next dc, 2 ch, skip 1 dc*, repeat from * to * 5 times in total. Close with sl st in the 3rd ch. ${words}`

  it.each([
    'We have 6 dc and 6 arches of 2 ch.',
    'We get 6 dc and 6 arches of 2 ch.',
    'You have got 6 dc and 6 spaces of 2 ch.',
    'In total there are 6 dc, 6 spaces of 2 ch.',
    'The result is 6 dc and 6 arches of 2 ch.',
    'This round has 6 dc, 6 arches of 2 ch.',
    'You end up with 6 dc and 6 arches of 2 ch.',
    'So now we have 6 dc and 6 arches of 2 ch.',
  ])('is told: "%s"', (words) => {
    expect(told(counted(words))).toEqual([])
    expect(made(counted(words))).toEqual([12, 6])
    expect(told(counted(words.replace('6 dc', '7 dc')))).toEqual([expect.stringContaining('7 dc')])
  })

  it.each([
    'Count every row: 12 hdc.',
    '12 hdc in every row.',
    'Each row has 12 hdc.',
    'Count each time: 12 hdc.',
  ])('is told of every row: "%s"', (words) => {
    const text = `Ch 14.\nRow 1: Hdc in the 3rd ch from the hook (the 2 skipped chains do not count), hdc in every ch to the end. Turn. Count: 12 hdc.\nRow 2: Ch 2 (does not count), hdc in each of the 12 stitches. Turn. Count: 12 hdc.\nRows 3-5: Repeat Row 2. ${words}`
    expect(both(text)).toEqual([[], [12, 12, 12, 12, 12]])
    expect(told(text.replace(words, words.replace('12', '13'))).length).toBeGreaterThan(0)
  })
})
