/** Wordings of translated patterns, and points that are worked around on both sides (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

describe('Chains between, told behind', () => {
  it.each([
    'sc in every dc, after each one ch 3',
    'sc in every dc, ch 3 after each',
    'sc in every dc, between them always ch 3',
    'sc in every dc, always with 3 ch between',
    'sc in every dc, each followed by ch 3',
    'in every dc: 1 sc, after each one 3 ch',
  ])('%s', (words) => {
    const text = (all: number) =>
      `Magic ring.\nRnd 1: Ch 3, 11 dc in ring, join. (12)\nRnd 2: ${words}. Join. (12 sc)\nRnd 3: In each space 4 sc. (${all})`
    expect(told(text(48))).toEqual([])
    expect(made(text(48))).toEqual([12, 12, 48])
    expect(told(text(44))).toHaveLength(1)
  })

  it('and the first of them in a bracket', () => {
    const text =
      'Rd 1: Magic ring, 3 ch, 11 tr in the ring, close the round. = 12 tr\nRd 2: 4 ch (= 1 tr + 1 ch), then * 1 tr, 1 ch in the following tr *, repeat *-* all around, 1 ss in the 3rd of the 4 ch. = 12 tr\nRd 3: In every 1-ch-space: 2 tr worked off together, after each one 2 ch. (The first: 3 ch + 1 tr.) = 12 groups\nRd 4: In every 2-ch-space: 3 tr, 1 ch. = 36 tr'
    expect(told(text, 'UK')).toEqual([])
    expect(made(text, 'UK')).toEqual([12, 12, 12, 36])
  })
})

describe('Rings and joins from abroad', () => {
  it.each([
    [
      'Close 6 air chains to a ring with a slip stitch. 1st rd: 12 trebles in the ring, close the round. = 12 tr',
      12,
    ],
    [
      'Rd 1: Ring of 6 chains. 3 chains (replace the 1st treble), 15 trebles in the ring, close with 1 slip stitch in the 3rd air chain. (16 tr)',
      16,
    ],
    [
      'Ring of 5 ch.\n1st round: in the ring 1 dtr, 2 ch, repeat until there are 8 dtr and 8 times 2 ch. (8 dtr)',
      8,
    ],
  ] as const)('%s', (text, count) => {
    expect(told(text, 'UK')).toEqual([])
    expect(made(text, 'UK')).toEqual([count])
  })

  it('begin each lap in the space that is in hand', () => {
    const text = (times: number) =>
      `Ring of 5 ch.\n1st round: Ch 5, (dc in ring, ch 2) 7 times, sl st in 3rd ch of ch-5. (8 dc)\n2nd round: begin in a 2-ch space. * In this space 3 dc, 2 ch, 3 dc (= corner), in the next space 3 dc *, repeat in total ${times} times. = ${9 * times} dc`
    expect(told(text(4))).toEqual([])
    expect(made(text(4))).toEqual([8, 36])
    expect(told(text(5))).not.toEqual([])
  })
})

describe('Points of a star', () => {
  const star =
    'Rnd 1: Magic ring, ch 1, 10 sc in ring, join. (10)\nRnd 2: *Ch 4, sc in 2nd ch from hook, hdc in next ch, dc in next ch, sk 1 sc, sl st in next sc; rep from * around. (5 points)\nRnd 3: '
  it.each([
    [
      'Ch 1, *sc in each of 3 ch up the point, 3 sc in tip, sc in each of 3 sts down the point; rep from * around, join.',
      45,
    ],
    ['Ch 1, *sc in next 3 ch, 3 sc in tip of point, sc in next 3 sts; rep from * around, join.', 45],
    [
      'Ch 1, *sc in next 3 ch along the side of the point, 3 sc in the ch at the tip, sc in next 3 sts, sl st in sl st; rep from * around.',
      45,
    ],
    [
      'Working up the unworked side of each chain, *sc in each of next 3 ch, (sc, ch 2, sc) in turning ch, sc in next 3 sts; rep from * around.',
      40,
    ],
    [
      'Ch 1, *working up the chain side of the point, 1 sc in each of 3 ch, 3 sc in ch at tip, then down the other side 1 sc in each of next 3 sts; rep from * 4 more times, join.',
      45,
    ],
    [
      'Ch 1, *sc in the unused side of each of the 3 ch, 3 sc in the ch at the tip, sc in each of the 3 sts coming down; rep from * around, join.',
      45,
    ],
  ] as const)('%s', (round, count) => {
    expect(told(`${star}${round} (${count} sc)`)).toEqual([])
    expect(made(`${star}${round} (${count} sc)`)).toEqual([10, 15, count])
    // A point has three chains besides the one it is turned in.
    expect(told(`${star}${round.replace(/\b3 ch\b/, '4 ch')}`)).not.toEqual([])
  })

  it('may have a slip stitch at the tip', () => {
    const text = (sts: number) =>
      `Rnd 1: Magic ring, ch 1, 15 sc in ring, join. (15)\nRnd 2: *Ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in last ch, sk 2 sc, sl st in next sc*. Repeat from * to * 4 more times; the very last sl st goes in the same st as the join. (5 points)\nRnd 3: *Sc in each of 5 ch going up, (sc, ch 2, sc) in the ch at the tip, sc in each of the ${sts} sts coming down (that's the sl st, sc, hdc, dc and tr), sl st in the sl st between the points*. Repeat from * to * 4 more times. (60 sc)`
    expect(told(text(5))).toEqual([])
    expect(told(text(6))).not.toEqual([])
  })
})

describe('Joined as you go', () => {
  const first =
    'FIRST SQUARE\nMake 4ch, ss in first ch to make a ring.\nRound 1: 3ch (counts as 1tr), 2tr in ring, 2ch, [3tr in ring, 2ch] 3 times, ss in 3rd ch. 12 tr.\nRound 2: Ss in next 2tr and in 2ch sp, [3ch, 2tr, 2ch, 3tr] in same sp, 1ch, *[3tr, 2ch, 3tr] in next 2ch sp, 1ch; rep from * twice more, ss in 3rd ch. 24 tr. Fasten off.\n\n'
  const second = (space: string, last: string) =>
    `${first}SECOND SQUARE\nRound 1: As Round 1 of first square.\nRound 2: Ss in next 2tr and in 2ch sp, [3ch, 2tr] in same sp, 1ch, 1dc in a corner sp of first square, 1ch, 3tr in same sp of second square, 1dc in the ${space} sp of first square, 3tr in next 2ch sp of second square, 1ch, 1dc in next corner sp of first square, 1ch, 3tr in same sp ${last}, 1ch (one side joined), *[3tr, 2ch, 3tr] in next 2ch sp, 1ch; rep from * once more, ss in 3rd ch. Fasten off.`
  it('names the motif in hand as well', () => {
    expect(told(second('1ch', 'of second square'), 'UK')).toEqual([])
    expect(told(second('1ch', 'as before'), 'UK')).toEqual([])
    expect(told(second('1ch', 'as last 3 tr'), 'UK')).toEqual([])
    expect(made(second('1ch', 'of second square'), 'UK')).toEqual([12, 24, 12, 24])
  })

  it('misses a space that the first one has not', () =>
    expect(told(second('5ch', 'of second square'), 'UK')).toHaveLength(1))
})

describe('More of what is said abroad', () => {
  it.each([
    'Rnd 1: 6 firm stitches in a magic ring.\nRnd 2: double every stitch (12 sts)\nRnd 3: double every 2nd st (18 sts)',
    'Rnd 1: 6 solid stitches in a magic ring.\nRnd 2: 2 solid stitches in each stitch = 12 solid stitches.\nRnd 3: *1 solid stitch, 2 solid stitches in next stitch*, repeat 6x in total = 18.',
    'Rnd 1: 6 sc in thread ring, close with a chain stitch.\nRnd 2: double each st, finish the round with a slip stitch. (12)\nRnd 3: *1 sc, increase 1 st; from * repeat still 5 x, close with 1 slip stitch in the first sc. (18)',
  ])('is counted: %s', (text) => {
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([6, 12, 18])
  })

  it('marks a stitch that nobody knows, and rows of filet told by what they show', () => {
    expect(told('Rnd 1: Magic ring. 12 full st in ring, close with sl st.').join()).toMatch('rounds/not-read')
    const row = 'Row 1: Ch 30, dc in 4th ch from hook and in each ch across, turn. (28 dc)'
    for (const filet of ['1 block, 7 spaces, 1 block', '*1 open mesh, 1 solid mesh; rep from * across'])
      expect(told(`${row}\nRow 2: Ch 3 (counts as dc), ${filet}, turn.`).join()).toMatch('rounds/not-read')
  })
})
