/** The same things in other words: corners, posts, gaps, counts with labels (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => readRounds(text, { terms })
const told = (text: string, terms: 'US' | 'UK' = 'US') =>
  read(text, terms).findings.map(({ code, message }) => `${code} ${message}`)
const made = (text: string, terms: 'US' | 'UK' = 'US') => read(text, terms).rounds.map((round) => round.made)

const SQUARE =
  'Rnd 1: In magic ring, ch 3 (counts as dc), 2 dc, ch 2, (3 dc, ch 2) 3 times, join in top of ch-3.'

describe('Corner spaces', () => {
  it.each(['4 corner sps', '4 ch-2 corners', '4 ch-2 corner sps', '4 corners', '4 2-ch corner sps'])(
    'are counted as "%s"',
    (corners) => {
      expect(told(`${SQUARE} (12 dc, ${corners})`)).toEqual([])
      expect(told(`${SQUARE} (13 dc, ${corners})`)).toHaveLength(1)
    },
  )

  it.each(['ch-2 corner sp', 'corner ch-2 sp', 'ch 2 corner sp', '2ch corner sp', '2 ch corner sp'])(
    'are worked into as "%s"',
    (corner) => {
      const text = `${SQUARE}\nRnd 2: Ch 1, sc in each dc around, working 3 sc in each ${corner}, join. (24 sc)`
      expect(told(text)).toEqual([])
    },
  )
})

describe('A label before the count', () => {
  it.each(['Stitch count: 12 dc', 'Total: 12 dc', 'St count = 12 dc', 'You should have 12 dc'])(
    'makes no round of its own: %s',
    (label) => {
      const text = `${SQUARE}\n${label}\n\nRnd 2: Ch 1, sc in each dc and in each ch-2 sp around, join. (16 sc)`
      expect(told(text)).toEqual([])
      expect(made(text)).toEqual([12, 16])
      expect(told(text.replace('12 dc\n', '14 dc\n'))).toHaveLength(1)
    },
  )
})

describe('A ring named last', () => {
  it('holds all that stands before it', () => {
    const text = 'Rnd 1: 3ch (counts as tr), 2tr, 2ch, (3tr, 2ch) x 3 into a magic ring. Ss to join. (12 tr)'
    expect(told(text, 'UK')).toEqual([])
    expect(read(text, 'UK').rounds[0]).toMatchObject({ made: 12, spaces: { 'ch-2': 4 } })
  })
})

describe('Stitches with a count of their own', () => {
  it('are not among the plain ones', () => {
    const text = (dc: number) =>
      `Popcorn: 5 dc in same st, drop loop.\n\nRnd 1: In magic ring, ch 1, 8 sc, join.\nRnd 2: Ch 1, (dc, popcorn) in each sc around, join. (${dc} dc, 8 popcorns)`
    expect(told(text(8))).toEqual([])
    expect(told(text(16))).toHaveLength(1)
  })
})

const POSTS = 'Rnd 1: In magic ring, ch 3 (counts as dc), 11 dc, join in top of ch-3. (12 dc)'

describe('Posts', () => {
  it.each(['dc in top of same dc', 'dc in same dc'])('leave "%s" a stitch in the top', (top) => {
    const text = `${POSTS}\nRnd 2: *FPdc around next dc, ${top}; rep from * 11 more times. (12 FPdc, 12 dc)`
    expect(told(text)).toEqual([])
  })

  it.each(['BPdc around next dc', 'BPdc (back post double crochet) around next dc'])(
    'are read in "%s"',
    (post) => {
      const text = `${POSTS}\nRnd 2: *${post}, ch 2; rep from * 11 more times. (12 BPdc, 12 ch-2 sps)`
      expect(told(text)).toEqual([])
    },
  )

  it('are worked round as well as around', () => {
    const text =
      '1st Row: Into magic ring work 8 dc, ss to first dc.\n2nd Row: * 5 ch, 1 dc round next dc of 1st row, inserting hook from the back; repeat from * 7 times more. (8 dc)'
    expect(read(text, 'UK').rounds[1]).toMatchObject({ made: 8, spaces: { 'ch-5': 8 } })
  })
})

describe('Older places', () => {
  it.each(['Under', 'Into', 'In'])('"%s each loop" is in the loop', (into) => {
    const text = `Rnd 1: In magic ring, ch 1, (sc, ch 3) 6 times, join in first sc.\nRnd 2: ${into} each loop of 3 chain work 1 sc, 3 dc, 1 sc. Join. (30 sts)`
    expect(made(text)).toEqual([6, 30])
  })
})
