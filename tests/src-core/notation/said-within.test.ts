/** What a round says besides its stitches: how one is made, counts in marks, the far side of a chain (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => readRounds(text, { terms })
const told = (text: string, terms: 'US' | 'UK' = 'US') =>
  read(text, terms).findings.map(({ code, message }) => `${code} ${message}`)
const made = (text: string, terms: 'US' | 'UK' = 'US') => read(text, terms).rounds.map((round) => round.made)

const EIGHT = 'Rnd 1: Magic ring, ch 1, 8 sc in ring, join.\n'

describe('A stitch explained in the midst of a round', () => {
  it.each([
    'Rnd 2: Ch 1, (sc, picot) in each sc around (picot = ch 3, sl st in 3rd ch from hook). Join. ',
    'Rnd 2: Ch 1, (sc, picot) in each sc around (a picot is ch 3, sl st in 3rd ch from hook), join. ',
    'Rnd 2: Ch 1, (sc, picot) in each sc around. Join. The picot is ch 3, sl st in the 3rd ch from hook. ',
    'Rnd 2: Ch 1, (sc, picot) in each sc around. For each picot, ch 3, sl st in 3rd ch from hook. Join. ',
    'Rnd 2: Ch 1, (sc, picot) in each sc around (to make a picot: ch 3, sl st in 3rd ch from hook), join. ',
  ])('is not worked there: %s', (round) => {
    expect(told(`${EIGHT}${round}(8 sc, 8 picots)`)).toEqual([])
    expect(read(`${EIGHT}${round}`).rounds[1]).toMatchObject({ made: 8, picots: 8 })
    expect(told(`${EIGHT}${round}(8 sc, 9 picots)`)).toHaveLength(1)
  })

  it('may be explained behind the name', () => {
    const text =
      '1st Row: Magic ring, 12 dc into ring.\n2nd Row: 3 ch (counts as 1 tr), 1 tr in first dc, * 3 picots (a picot is 4 ch, 1 s.s. into 4th ch from hook), 2 tr into next dc; repeat from * 10 times more, 3 picots, 1 s.s. into 3rd of 3 ch. (24 tr, 36 picots)'
    expect(told(text, 'UK')).toEqual([])
  })

  it('has its legs from there', () => {
    const text = `${EIGHT}Rnd 2: Ch 1, bobble in each sc around (each bobble is 4 dc tog), join.`
    expect(told(text)).toEqual([])
  })
})

describe('Counts', () => {
  it.each(['*', '~', '|'])('between two "%s" are no repeat', (mark) => {
    const count = (words: string) => ` ${mark}${words}${mark}`
    const text = (third: string) =>
      `${EIGHT.trim()}${count('8 sc')}\nRnd 2: Ch 1, 2 sc in each st around, join and cut green.${count('16 sc')}\nRnd 3: Ch 1, *sc in next st, sk 1 st; rep from * around.${count(third)}`
    expect(told(text('8 sc'))).toEqual([])
    expect(made(text('8 sc'))).toEqual([8, 16, 8])
    expect(told(text('9 sc'))).toHaveLength(1)
  })

  it.each([
    '[32 sc after Rnd 3; 64 sc after Rnd 4]',
    '(Rnd 3: 32 sc, Rnd 4: 64 sc)',
    '(32 sc in Rnd 3, 64 sc in Rnd 4)',
  ])('belong to the round that they name: %s', (counts) => {
    const text = (said: string) =>
      `${EIGHT}Rnd 2: Ch 1, 2 sc in each st around, join. (16 sc)\nRnds 3-4: Rep Rnd 2. ${said}`
    expect(told(text(counts))).toEqual([])
    expect(told(text(counts.replace('64', '63')))).toHaveLength(1)
  })

  it.each(['Fasten off A: 12 dc.', 'Fasten off the white yarn: 12 dc.'])(
    'behind the end are no work: %s',
    (end) => {
      const text = `Rnd 1: With A, in magic ring, ch 3 (counts as dc), 11 dc; join with sl st in top of ch-3. ${end}`
      expect(made(text)).toEqual([12])
      expect(told(text.replace('12 dc', '13 dc'))).toHaveLength(1)
    },
  )

  it.each([
    'Total: 12 dc = 6 pairs',
    'Stitch count: 12 dc, two in each colour',
    'You should have 12 dc (6 pairs)',
  ])('behind a label are no work, whatever else is told: %s', (label) => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring; join. ${label}.`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12])
    expect(told(text.replace('12 dc', '13 dc'))).toHaveLength(1)
  })
})

describe('The far side of a chain', () => {
  it.each([
    'continue on the other side of the ch:',
    'rotate work and continue along underside of foundation chain,',
    'working back along the bottom of the chain,',
    'working in remaining loops of foundation ch,',
    'turn the piece so that you can work along the other side of the chain:',
  ])('is turned to by "%s"', (words) => {
    const text = `Ch 11.\nRnd 1: Sc in 2nd ch from hook and in next 8 ch, 3 sc in last ch; ${words} sc in next 8 ch, 2 sc in last ch, sl st to first sc.`
    expect(told(`${text} (22 sc)`)).toEqual([])
    expect(told(`${text} (23 sc)`)).toHaveLength(1)
  })

  it('begins in the chain at the end, where one stitch stands there and "first" is said', () => {
    const text =
      'Ch 11.\nRnd 1: Sc in 2nd ch from hook and in each of next 9 ch, ch 2, working along other side of ch, sc in first ch, sc in each of next 8 ch, sc in last ch, sl st in first sc. (20 sc, 1 ch-2 sp)'
    expect(told(text)).toEqual([])
  })

  it('ends in the top of the skipped chains', () => {
    const text =
      'Ch 8.\nRnd 1: 2 dc in 4th ch from hook (the 3 skipped chs count as 1 dc), dc in each of next 3 ch, 6 dc in last ch. Working on opposite side of chain, dc in each of next 3 ch, 3 dc in last ch, sl st in top of skipped chs – 18 dc.'
    expect(told(text)).toEqual([])
  })
})

describe('The space in which the hook stands', () => {
  it.each([
    'Sl st in ch-3 sp, *(sc, 3 dc, sc) in ch-3 sp; rep from * 5 more times, join.',
    'Sl st in next ch-3 sp, *sc in ch-3 sp, 3 dc in same sp, sc in same sp; rep from * 5 more times, join.',
  ])('is the one that is named without "next": %s', (round) => {
    const text = `Rnd 1: Magic ring, ch 1, (sc, ch 3) 6 times in ring, join.\nRnd 2: ${round}`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([6, 30])
  })

  it('is another one where "next" is said', () => {
    const text =
      'Rnd 1: Magic ring, ch 1, (sc, ch 3) 6 times in ring, join.\nRnd 2: Sl st in first ch-3 sp, *ch 5, sl st in next ch-3 sp; rep from * 5 more times.'
    expect(told(text)).toHaveLength(1)
  })
})

describe('The rest of the spaces', () => {
  it.each(['each of the other 5', 'each of the remaining 5', 'each of next 5'])(
    'are named by "%s"',
    (five) => {
      const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, ch 1, [3 dc in ring, ch 1] x 5; join. (18 dc, 6 ch-1 sps)\nRnd 2: Sl st in next 2 dc and ch-1 sp; ch 3 (counts as dc), [1 dc, ch 2, 2 dc] in same sp, [2 dc, ch 2, 2 dc] in ${five} ch-1 sps; join, cut. (24 dc, 6 ch-2 sps)`
      expect(told(text)).toEqual([])
    },
  )
})

describe('A slip stitch to another piece', () => {
  it.each(['sl st to the centre of the shamrock', 'sl st to base of bud', 'sl st to side of pot'])(
    'makes no stitch: %s',
    (words) => {
      const text = `Row 1: Ch 9, sc in 2nd ch from hook, sc in each of next 7 ch, ${words}. Fasten off. (8 sc)`
      expect(told(text)).toEqual([])
    },
  )
})

describe('Repeats told behind the closing asterisk', () => {
  it.each(['*; repeat 8 times in all,', '*, repeat 8 times in all,', '* 8 times,', '*. Work 8 times,'])(
    '%s',
    (words) => {
      const text = `Rnd 1: Magic ring, ch 1, 16 sc in ring, join.\nRnd 2: Ch 1, *sc in next sc, ch 3, sk 1 sc${words} join. (8 sc, 8 ch-3 sps)`
      expect(told(text)).toEqual([])
    },
  )
})
