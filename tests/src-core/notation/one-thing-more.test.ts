/** More wordings of counts, corners, popcorns and rings (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => readRounds(text, { terms })
const codes = (text: string, terms: 'US' | 'UK' = 'US') => read(text, terms).findings.map(({ code }) => code)
const made = (text: string, terms: 'US' | 'UK' = 'US') => read(text, terms).rounds.map((round) => round.made)

describe('A popcorn that is told in two steps', () => {
  it.each(['complete as pc', 'finish as for popcorn', 'close as a pc', 'complete as for PC'])(
    'is one stitch: %s',
    (words) => {
      const text = `Rnd 1: Magic ring, ch 3 and 4 dc in ring, ${words}, ch 3, (5-dc popcorn in ring, ch 3) 5 times, sl st in top of first popcorn. (6 popcorns)`
      expect(codes(text)).toEqual([])
      expect(made(text)).toEqual([6])
      expect(codes(text.replace('6 popcorns', '7 popcorns'))).toHaveLength(1)
    },
  )
})

const GRANNY =
  'Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc, ch 1, (3 dc, ch 2, 3 dc, ch 1) 2 times, 3 dc, ch 2; join. (18 dc)'

describe('The stitch named before', () => {
  it.each([
    'dc in every dc and one in every ch-1 sp, and 2 dc in every ch-2 sp',
    'dc in every dc and 1 in every ch-1 sp, and 2 dc in every ch-2 sp',
    'dc in each dc, one in each ch-1 sp and 2 in each ch-2 sp',
  ])('is meant by the number alone: %s', (words) => {
    const text = `${GRANNY}\nRnd 2: Ch 3 (first dc), ${words}; join. (27 dc)`
    expect(codes(text)).toEqual([])
    expect(codes(text.replace('27', '25'))).toEqual(['rounds/wrong-end-count'])
  })
})

describe('Corners of which one is called so', () => {
  const round = (words: string) =>
    `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc, ch 1, (3 dc, ch 1) 3 times; join. (12 dc)
Rnd 2: Sl st to first ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, ch 3, 3 dc in same sp ${words}, *3 dc, ch 3 and 3 dc in next sp; rep from * twice more; join. (24 dc)
Rnd 3: Ch 1, sc in each dc, working 3 sc in each corner sp; join. (36 sc)`
  it.each(['(corner)', '(corner made)', ''])('are all that are like it: "%s"', (words) => {
    expect(made(round(words))).toEqual([12, 24, 36])
    expect(codes(round(words)).filter((code) => code !== 'rounds/group-without-brackets')).toEqual([])
  })
})

describe('Counts in all', () => {
  it.each([
    '2 dc in each sp; 24 dc in all.',
    '2 dc in every sp, making 24 dc in all; join.',
    '2 dc in each sp around, 24 dc in all',
  ])('end a round: %s', (words) => {
    const text = `Rnd 1: Magic ring, ch 4 (counts as dc and ch 1), (dc, ch 1) 11 times; join. (12 dc)\nRnd 2: ${words}`
    expect(codes(text)).toEqual([])
    expect(made(text)).toEqual([12, 24])
    expect(codes(text.replace('24 dc', '26 dc'))).toEqual(['rounds/wrong-end-count'])
  })
})

describe('Stops of older print', () => {
  it.each([
    'into each loop of 5 ch. work 1 d.c., 1 h.tr., 3 tr., 1 h.tr., 1 d.c.',
    'under each 5 ch. work 1 d.c., 1 h.tr., 3 tr., 1 h.tr., 1 d.c.',
    '1 d.c., 1 h.tr., 3 tr., 1 h.tr. and 1 d.c. all into each loop',
  ])('end nothing before what is worked: %s', (words) => {
    const text = `Rnd 1: 6 ch., join into a ring, 12 d.c. into ring, s.s. to first d.c. (12 d.c.)
Rnd 2: * 1 d.c. into next d.c., 5 ch., miss 1 d.c.; rep. from * to end, s.s. to first d.c.
Rnd 3: ${words}, s.s. to first d.c. (42 sts.)`
    expect(codes(text, 'UK')).toEqual([])
    expect(made(text, 'UK')).toEqual([12, 6, 42])
  })
})

describe('What everything begins with', () => {
  it.each(['Foundation: 4ch, join with ss into a ring.', 'Foundation ring: 4ch, ss into first ch.'])(
    'is no round behind a note of other chains: %s',
    (words) => {
      const text = `3ch at start of rnd counts as 1tr throughout. 1ch does not count as a st.\n\n${words}
Rnd 1: 3ch, 2tr into ring, 2ch, [3tr into ring, 2ch] 3 times, ss into 3rd of 3ch. 12tr, 4 2ch-sps`
      expect(codes(text, 'UK')).toEqual([])
      expect(made(text, 'UK')).toEqual([12])
    },
  )

  it('may have the number of its round on a line of its own', () => {
    const text =
      'Round 1\nIn magic ring, ch 1, 12 sc; join. (12 sc)\n\nRound 2\nInc around. (24 sc)\n\nRound 3\nAs Round 2. (48 sc)'
    expect(codes(text)).toEqual([])
    expect(made(text)).toEqual([12, 24, 48])
  })

  it.each(['do 2 dc, ch 2, 2 dc', 'put 2 dc, ch 2 and 2 dc', 'work (2 dc, ch 2, 2 dc)'])(
    'goes into each space: %s',
    (words) => {
      const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc, ch 2, (3 dc, ch 2) 5 times; join. (18 dc)\nRnd 2: In each of the 6 ch-2 sps ${words}; join. (24 dc)`
      expect(codes(text)).toEqual([])
      expect(made(text)).toEqual([18, 24])
    },
  )
})
