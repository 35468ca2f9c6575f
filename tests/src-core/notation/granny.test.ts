/** Squares and hexagons of groups side by side, with chains at their corners alone. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]

/** Rounds 1 to 3 of a square: 36 stitches, 4 corners, two gaps on each side. */
const SQUARE = `1st rnd: 1 ch, 8 dc into magic ring, ss to first dc. Fasten off A.
2nd rnd: Join B with a ss to any dc, 3 ch, 1 tr in same dc, 1 ch, (2 tr in next dc, 1 ch) 7 times, ss to top of 3 ch. Fasten off B.
3rd rnd: Join C to any 1-ch sp, (3 ch, 2 tr, 2 ch, 3 tr) in same sp, 3 tr in next sp, [(3 tr, 2 ch, 3 tr) in next sp, 3 tr in next sp] 3 times, ss to top of 3 ch.
`

describe('a space of no told size', () => {
  it.each([
    'Join A to any 2-ch sp, (3 ch, 2 tr, 2 ch, 3 tr) in same sp, (3 tr in next sp) twice, [(3 tr, 2 ch, 3 tr) in next 2-ch sp, (3 tr in next sp) twice] 3 times, ss to top of 3 ch.',
    'Join A to any corner, (3 ch, 2 tr, 2 ch, 3 tr) in same sp, 3 tr in next sp, 3 tr in next sp, [(3 tr, 2 ch, 3 tr) in next sp, 3 tr in next sp, 3 tr in next sp] 3 times, ss to top of 3 ch.',
    '3 tr in each sp along sides, (3 tr, 2 ch, 3 tr) in each corner.',
    'Join A to any corner, (3 ch, 2 tr, 2 ch, 3 tr) in same sp, *3 tr in each sp along side, (3 tr, 2 ch, 3 tr) in corner; rep from * twice more, 3 tr in each sp along last side, ss to 3 ch.',
    '3 tr in each sp along sides, corners as in 3rd rnd.',
  ])('lies between two groups of a side: %s', (round) => {
    expect(both(`${SQUARE}4th rnd: ${round}`, 'UK')).toEqual([[], [8, 16, 36, 48]])
  })

  it('does not turn four corners into two, though that comes out even', () => {
    const text = `Round 1: (3tr, 2ch) 4 times into magic ring. Join.
Round 2: *3tr, 2ch, 3tr into corner; rep from * to end. Join.
Round 3: *3tr, 2ch, 3tr into corner, 3tr into space; rep from * to end. Join.
Round 4: *3tr, 2ch, 3tr into corner, (3tr into space) twice; rep from * to end. Join.`
    expect(both(text, 'UK')).toEqual([[], [12, 24, 36, 48]])
  })

  it('is one of chains where the count says so', () => {
    const text = (
      count: string,
    ) => `Rnd 1: Magic ring, ch 3, dc in ring, ch 2, (2 dc in ring, ch 2) 5 times, join. (12 dc)
Rnd 2: Sl st to sp, (ch 3, dc, ch 2, 2 dc) in same sp, (2 dc, ch 2, 2 dc) in each sp around, join. (24 dc)
Rnd 3: Sl st to sp, (ch 3, dc, ch 2, 2 dc) in same sp, 2 dc in next sp, *(2 dc, ch 2, 2 dc) in next sp, 2 dc in next sp; rep from * around, join. ${count}`
    expect(made(text('(18 dc)'))).toEqual([12, 24, 18])
    expect(made(text('(36 dc)'))).toEqual([12, 24, 36])
    expect(made(text(''))).toEqual([12, 24, 36])
  })

  it('is found where groups stand without brackets', () => {
    const round = (number: number, side: string, last: string) =>
      `Round ${number}: Ss to next corner, 3ch, 2tr, 1ch, 3tr in same sp, *${side}, 3tr, 1ch, 3tr in next corner; rep from * twice, ${last}, ss to 3rd of 3ch.\n`
    const text = `Round 1: 4ch, ss to form ring, 3ch, 2tr into ring, 1ch, (3tr into ring, 1ch) 3 times, ss to 3rd of 3ch.
Round 2: Ss to next sp, 3ch, 2tr, 1ch, 3tr in same sp, (3tr, 1ch, 3tr in next sp) 3 times, ss to 3rd of 3ch.
${round(3, '3tr in next sp', '3tr in last sp')}${round(4, '(3tr in next sp) twice', '(3tr in last sp) twice')}${round(5, '(3tr in next sp) 3 times', '3tr in each of last 3 sps')}`
    expect(made(text, 'UK')).toEqual([12, 24, 36, 48, 60])
  })
})

describe('a round as the one before, with more on each side', () => {
  it.each([
    'As 3rd rnd, working 3 tr in each sp along sides.',
    'As 3rd rnd, but working 1 more group on each side.',
    'As 3rd rnd, with an extra 3-tr group along each side.',
    'Work as 3rd rnd, working 2 groups of 3 tr on each side.',
    'As 3rd rnd, having 2 groups between corners.',
    'As 3rd rnd but working 3 tr in each sp between groups and (3 tr, 2 ch, 3 tr) in each corner.',
    'Work in the same way as 3rd rnd, with 3 tr in each side sp and corners as before.',
  ])('fills each gap once: %s', (round) => {
    expect(both(`${SQUARE}4th rnd: ${round}`, 'UK')).toEqual([[], [8, 16, 36, 48]])
  })

  it('grows again with each of several rounds', () => {
    const text = `Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join.
Rnd 2: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, (3 dc, ch 2, 3 dc) in next 3 sps, join.
Rnd 3: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, 3 dc in next sp, *(3 dc, ch 2, 3 dc) in corner, 3 dc in next sp; rep from * around, join.
Rnds 4-6: Continue in this way, working 1 more group on each side.`
    expect(both(text)).toEqual([[], [12, 24, 36, 48, 60, 72]])
  })

  it('grows behind its repeat as well', () => {
    const text = `Rnd 1: Magic ring: ch 3, dc, ch 2, (2 dc, ch 2) 5 times. Join. (6 ch-2 sps)
Rnd 2: Sl st in ch-2 sp; (ch 3, dc, ch 2, 2 dc) in same sp; *(2 dc, ch 2, 2 dc) in next sp; rep from * around; join.
Rnd 3: Sl st to ch-2 sp; (ch 3, dc, ch 2, 2 dc) in same sp; *2 dc in sp between groups, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * around, ending 2 dc in last sp between groups; join.
Rnd 4: Work as Rnd 3, working 2 dc in both spaces on each side.`
    expect(both(text)).toEqual([[], [12, 24, 36, 48]])
  })
})

describe('a corner by its name', () => {
  it('is told with its place before what it is, and again without', () => {
    const text = `Rnd 1: In magic ring, ch 3, 2 dc, ch 2, *3 dc, ch 2; rep from * twice more, join.
Rnd 2: Sl st to ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, *corner (3 dc, ch 2, 3 dc) in next sp; rep from * twice more, join.
Rnd 3: Sl st to ch-2 sp, work corner in same sp (ch 3, 2 dc, ch 2, 3 dc), *3 dc between next two groups, work corner in next sp (3 dc, ch 2, 3 dc); rep from * twice more, 3 dc between next two groups, join.
Rnd 4: Sl st to ch-2 sp, work corner in same sp, *(3 dc between next two groups) twice, corner in next sp; rep from * around, ending with (3 dc between next two groups) twice, join.`
    expect(both(text)).toEqual([[], [12, 24, 36, 48]])
  })
})

describe('along a chain', () => {
  it.each([
    'Leaf: Ch 8, skip 1 ch, sc in next ch, hdc in next ch, dc in next 3 ch, hdc in next ch, sc in last ch.',
    'Leaf: Ch 8, skip first ch, sc, hdc, 3 dc, hdc, sc in last ch.',
    'Leaf: Ch 8, sk 1, sc in next ch, hdc, 3 dc, hdc, sc.',
  ])('what is skipped first is at the hook: %s', (text) => {
    expect(both(text)).toEqual([[], [7]])
  })

  it('a row may begin so', () => {
    expect(both('Row 1: 12 ch, miss 1 ch, 1 dc in each ch to end, turn. (11 dc)', 'UK')).toEqual([[], [11]])
  })

  it('the other side may be worked up', () => {
    const text =
      'Leaf: Ch 10. Starting in 2nd ch from hook: sc 1, hdc 1, dc 2, tr 1, dc 2, hdc 1, sc 1. Ch 2. Work up other side: sc 1, hdc 1, dc 2, tr 1, dc 2, hdc 1, sc 1. Sl st in first sc.'
    expect(both(text)).toEqual([[], [18]])
  })
})

describe('a ring of chains', () => {
  it.each(['sl st in 4th ch from hook', 'sl st in first ch', 'sl st to close'])(
    'is closed by "%s"',
    (closed) => {
      const text = `Rnd 1: Ch 4, ${closed}. Ch 3, 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 2, sl st to top of ch 3.`
      expect(both(text)).toEqual([[], [12]])
    },
  )
})

describe('an edging', () => {
  it.each(['along each side', 'along sides', 'across all four sides', 'along all sides'])(
    'goes %s, with more in each corner',
    (along) => {
      const text = `Round 1: 4ch, ss to form ring, 3ch, 2tr into ring, 2ch, (3tr into ring, 2ch) 3 times, ss to 3rd of 3ch.
Edging
1st round: Join yarn in any corner, 1ch, 3dc in corner, work 1dc in each tr ${along} and 3dc in each corner, ss in first dc.`
      expect(both(text, 'UK')).toEqual([[], [12, 24]])
    },
  )
})
