/** Chains worked on both sides, rows that leave stitches, rings of all kinds and ways to a loop, each told in many words (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

describe('The other side of a chain', () => {
  it.each([
    'working along underside of ch, sc in next 8 ch, 2 sc in last ch',
    'do not turn but work back along other side of ch, sc in next 8 ch, 2 sc in last ch',
    'then back down the other side: sc in next 8 ch, 2 sc in last ch',
    'then come back along the other side with sc in next 8 ch, 2 sc in end ch',
    'spin work around and work into the bottom of the chain, sc in next 8 ch, 2 sc in the chain that holds the first sc',
    'now working the other side of the foundation chain, sc in next 8 ch, 2 sc in same ch as first sc',
    'going along the opposite edge of the ch, sc in each of next 8 ch, 2 sc in last ch',
    'turn work upside down, sc in next 8 loops, 2 sc in last',
    'on the other side sc in next 8 ch, 2 sc in the last',
    'turn to work on the other side, sc in next 8 free loops, 2 sc in last loop',
    'along the other side work 8 sc, 2 sc in the same ch as the very first sc',
    'rotate, sc in next 8 ch, 2 sc in the ch where you started',
    'rotate the piece 180 degrees; working on the far side of the foundation, sc in next 8 ch, 2 sc in final ch',
    'Rotate your work so that you can work along the underside of the chain: sc in each of the next 8 chains, 2 sc in the final chain',
  ])('%s', (words) => {
    const text = (side: string) =>
      `Ch 11.\nRnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch; ${side}. (22)`
    expect(told(text(words))).toEqual([])
    expect(made(text(words))).toEqual([22])
    expect(told(text(words.replace(/(next|work) 8/, '$1 9')))).not.toEqual([])
  })

  it('begins where it is said', () => {
    for (const opens of [
      'Starting in 2nd ch from hook, sc in each ch across',
      'Beginning with the 2nd ch from hook, sc in each ch across',
      'Starting in the second chain from the hook, sc in that chain and in each of the next 7 chains',
      'Starting from the 2nd ch from hook: work 8 sc',
    ]) {
      expect(told(`Ch 9.\nRow 1: ${opens}. (8)`)).toEqual([])
      expect(made(`Ch 9.\nRow 1: ${opens}. (8)`)).toEqual([8])
      expect(told(`Ch 9.\nRow 1: ${opens}. (9)`)).not.toEqual([])
    }
  })

  it('ends in the chain that the first stitches stand in', () => {
    const text =
      'Ch 14.\nRnd 1: 2 dc in 4th ch from hook (the 3 ch missed are 1 dc), dc in each of next 9 ch, 6 dc in end ch; working on other side of ch, dc in each of next 9 ch, 3 dc in the ch which holds the first 2 dc, sl st into top of ch 3. (30 dc, counting the ch 3)'
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([30])
  })
})

describe('What a row leaves', () => {
  const text = (row: string) =>
    `Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Ch 1, turn, sc in next 7 sts${row}. (7)`
  it.each([
    ', leave last 3 sts',
    ', leaving 3 sts unworked',
    ', leave the rest',
    '. Leave the remaining stitches unworked',
    ', leave the other 3 sts free',
    '; the last 3 sts are left unworked',
    ', do not work the last 3 sts',
    ', turn, leaving the rest of the row',
    ', stop 3 sts before the end',
    ', leaving last 3 sc',
    '; leave the remaining 3 s.c. unworked',
  ])('is told: %s', (row) => {
    expect(told(text(row))).toEqual([])
    expect(made(text(row))).toEqual([10, 7])
    if (row.includes('3')) expect(told(text(row.replace('3', '2')))).toHaveLength(1)
  })

  it('is missed where it is not', () => expect(told(text(''))).toHaveLength(1))

  it('may be the rest of a chain', () => {
    const leaf = (rest: string) =>
      `Ch 13.\nRow 1: Sc in 2nd ch from hook, sc in next 10 ch, 3 sc in last ch; along the other side sc in next 9 ch${rest}. (23)`
    expect(told(leaf(', leaving the rest'))).toEqual([])
    expect(told(leaf(''))).toHaveLength(1)
  })

  it('stands before a count of one', () =>
    expect(
      made(
        'Ch 4.\nRow 1: Sc in 2nd ch from hook and in each ch across. (3)\nRow 2: Ch 1, turn, sc3tog. 1 st. Fasten off.',
      ),
    ).toEqual([3, 1]))
})

describe('A ring', () => {
  it.each([
    'Wind the cotton a few times round the finger, or make 8 ch. and join.',
    'Make 6 ch. and join, or use a magic ring.',
    'Wrap the yarn twice around your finger.',
    'Twist the cotton four times round a pencil.',
    'Over a brass ring.',
    'Ch 4 and join (or make a magic ring).',
  ])('%s', (ring) =>
    expect(told(`${ring} Rnd 1: 12 sc into the ring, join with a sl st. (12 sc)`)).toEqual([]),
  )

  it('is worked into again by a heart', () => {
    const heart = (first: string, over: string) =>
      `Rnd 1: Magic ring, ${first}, 3 tr, 3 dc, 1 tr, 3 dc, 3 tr, ch 3, sl st into the ring. (13 sts)\nRnd 2: Ch 1, 3 sc ${over} first ch-3, 2 sc in each of next 3 tr, sc in next 3 dc, 3 sc in point tr, sc in next 3 dc, 2 sc in each of next 3 tr, 3 sc ${over} last ch-3, sl st into ring. (27 sc)`
    for (const over of ['in', 'over', 'around']) {
      expect(told(heart('ch 3', over))).toEqual([])
      expect(told(heart('ch 3 (does not count as a stitch)', over))).toEqual([])
    }
    expect(told(heart('ch 3', 'in').replace('3 sc in last ch-3, ', ''))).not.toEqual([])
  })
})

describe('The way to a loop', () => {
  const text = (way: string) =>
    `Rnd 1: Magic ring, ch 1, 12 sc in ring, join.\nRnd 2: Sc in same st, *ch 5, sk 1 sc, sc in next; rep from * 4 times, ch 5, join. (6 loops)\nRnd 3: In each loop sc, hdc, dc, ch 3, dc, hdc, sc; join.\nRnd 4: ${way}, *ch 7, sc in next ch-3 loop; rep from * 4 times, ch 7, sl st in first sc. (6 sc)`
  it.each([
    'Sl st along to 1st ch-3 loop, sc in loop',
    'S.s. up to the 3 ch. loop of first petal, sc in same loop',
    'Sl st to next ch-3 loop, sc in this loop',
    'Slip to the middle of first ch-3 loop, sc in same loop',
    'Slip along to next ch-3 loop, ch 1, sc in same loop',
    'Sl st in first 3 sts and in ch-3 loop, sc in loop',
  ])('%s', (way) => {
    expect(told(text(way))).toEqual([])
    expect(made(text(way))).toEqual([12, 6, 36, 6])
  })
})

describe('A chain that a round makes', () => {
  const daisy = (chains: number, words: string) => `Rnd 1: 12 sc in a magic ring, close with sl st. (12)
Rnd 2: *Ch ${chains}, sl st in 2nd ch from hook, ${words}, sl st in next sc of Rnd 1; rep from * around. (12 petals)`

  it.each([
    'sc in next, hdc in next, dc in next 3, hdc in next, sc in last',
    'sc in the next, hdc in next one, dc in each of next 3, hdc in next, sc in next',
    'sc in next ch, hdc in next, dc in next three, hdc in next, sc in last ch',
  ])('is worked down without its name: %s', (words) => {
    expect(told(daisy(9, words))).toEqual([])
    expect(made(daisy(9, words))).toEqual([12, 84])
    if (words.includes('last')) expect(told(daisy(8, words))).not.toEqual([])
  })

  it.each([
    'sc in next, hdc in next, dc in next 3, hdc in next, sc in next',
    'sc in next, hdc in next, dc in next 4, sc in next',
    'sc in next ch, hdc in next ch, dc in next 3 ch, hdc in next, sc in next',
  ])('is told where it is too short: %s', (words) => {
    expect(told(daisy(8, words))).toEqual([expect.stringContaining('chain to work along')])
  })

  it('is left where the stitch behind it stands in the round again', () => {
    const text = `Rnd 1: 12 sc in a magic ring, close with sl st. (12)
Rnd 2: *Ch 4, sc in 2nd ch from hook, sc in next 2 ch, sl st in next 2; rep from * around.`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 18])
  })

  it('is left where a picot hangs on it', () => {
    const text = `Rnd 1: 12 sc in a magic ring, close with sl st. (12)
Rnd 2: Ch 1, *sc in next 3, ch 4, sl st in 3rd ch from hook, ch 1; rep from * around. (12 sc)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 12])
  })
})

describe('The other side begins in the chain of the tip', () => {
  const leaf = (tip: string, side: string) =>
    `Ch 10.\nRnd 1: Sc in 2nd ch from hook, hdc in next ch, dc in each of next 5 ch, hdc in next ch, ${tip}, working along opposite side of ch, sc in next ch, hdc in next ch, dc in each of next ${side} ch, hdc in next ch, sc in last ch, sl st in first sc.`

  it('where one stitch alone stands there', () => {
    expect(told(leaf('sc in last ch, ch 2', '5'))).toEqual([])
    expect(made(leaf('sc in last ch, ch 2', '5'))).toEqual([18])
  })

  it('and one too many is told all the same', () => {
    expect(told(leaf('sc in last ch, ch 2', '6'))).not.toEqual([])
    expect(told(leaf('3 sc in last ch', '5'))).not.toEqual([])
  })
})

describe('A ring of chains is told in any order of its words', () => {
  it.each([
    'Ch 5 and close to a ring with 1 sl st.',
    'Ch 5, close into a ring with a slip stitch.',
    'Ch 5, sl st in first ch to form ring.',
    'Ch 5, sl st to form a ring.',
    'Ch 5; join with sl st to form a ring.',
    'Ch 5; join to form ring.',
    'Ch 5, join in a ring.',
    'Ch 5, join into a ring with a sl st.',
    'Ch 5, join into a ring with sl st in the first ch.',
    'Ch 5, join with a sl st into a ring.',
    'Form a ring with 5 ch.',
    'With 5 ch form a ring.',
    'Form with 5 ch a ring.',
    'Make a ring of 5 ch.',
    'Close a chain of 5 chains in a ring with 1 slip st.',
    'Make a chain of 5 and join with a slip stitch into the first ch to make a ring.',
    'Ch 5 and join with sl st in 1st ch made to form a circle.',
    'Ch 5, then sl st into the first chain to make a loop.',
    'Ch 5, connect into a ring with a sl st.',
    'Ch 5, join in ring with sl st.',
    '5 ch, close with 1 sl st into a ring.',
    'Chain five stitches, join in a ring with a slip stitch.',
    'Ch 5 (or make a magic ring), sl st in first ch to form ring.',
    'Begin with a chain of 5 joined into a ring.',
    'Ch 5, form into a ring with a sl st in first ch.',
    'Work 5 chain stitches and close them to a ring.',
    'Make 5 chain stitches, join in a ring.',
    'Start with 5 ch. Close to a ring with a sl st.',
    'Ch 5, sl st into furthest ch from hook to form a ring.',
    'Ch 5 & sl st to ring.',
    'Ch 5, sl st in 5th ch from hook to form ring.',
    'Ch 5 and join to a ring.',
    'Ch 5 for ring, join with sl st.',
    'Ch 5, sl st in first ch, forming a ring.',
  ])('%s', (words) => {
    const round = 'ch 1, 10 sc in ring, sl st in first sc. (10 sc)'
    for (const text of [`${words}\nRnd 1: C${round.slice(1)}`, `Rnd 1: ${words} C${round.slice(1)}`]) {
      expect(told(text)).toEqual([])
      expect(made(text)).toEqual([10])
    }
  })

  it('and a slip stitch in a ring that is there closes none', () => {
    const text = 'Rnd 1: Magic ring, ch 1, 5 sc in ring, ch 3, sl st in ring, 5 sc in ring. (10 sc)'
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([10])
  })
})

describe('a border that comes to the foundation chain', () => {
  const border = (round: string) => `14ch.
Row 1 (RS): 1dc in 2nd ch from hook, 1dc in each ch to end, turn. (13dc)
Row 2: 1ch, 1dc in each st to end, turn. (13dc)
Row 3: As Row 2.

BORDER
Round 1: 1ch, 3dc in first dc, 1dc in each of next 11dc, 3dc in last dc, 1dc in each of next 2 row-ends, ${round}`

  // 3 + 11 + 3 along the top, 2, 3 + 11 + 3 along the chain, 2.
  it.each([
    '3dc in first ch of foundation, 1dc in each of next 11ch, 3dc in last ch',
    '3dc in first foundation ch, 1dc in each of next 11ch, 3dc in last ch',
    '3dc in first ch, 1dc in each of next 11ch, 3dc in last ch',
    '3dc in next ch of foundation, 1dc in each of next 11ch, 3dc in last ch',
  ])('%s', (along) => {
    const text = border(`${along}, 1dc in each of next 2 row-ends, ss in first dc. (38dc)`)
    const { rounds, findings } = readRounds(text, { terms: 'UK' })
    expect(findings).toEqual([])
    expect(rounds.at(-1)!.made).toBe(38)
  })

  it('of more chains than there are is told', () => {
    const text = border('3dc in first ch of foundation, 1dc in each of next 14ch, ss in first dc.')
    expect(readRounds(text, { terms: 'UK' }).findings.map(({ code }) => code)).toContain('rounds/no-chain')
  })
})
