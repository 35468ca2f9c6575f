/** Rounds worked again with one thing changed, and counts of a round told to a side (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string) => readRounds(text, { terms: 'US' })
const codes = (text: string) => read(text).findings.map(({ code }) => code)
const made = (text: string) => read(text).rounds.map((round) => round.made)

const LOOPS = `Rnd 1: Magic ring, ch 1, 16 sc; join. (16 sc)
Rnd 2: Ch 1, sc in first sc, *ch 3, sk 1 sc, sc in next sc; rep from * 6 more times, ch 3, sk last sc; join. (8 ch-3 lps)
Rnd 3: Sl st in next lp, ch 1, sc in same lp, *ch 4, sc in next lp; rep from * around, ch 4; join. (8 ch-4 lps)
Rnd 4: `
const SQUARE = `Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in each dc and (2 dc, ch 2, 2 dc) in each sp; join. (28 dc)
Rnd 3: `

describe('A round worked again with other chains', () => {
  it.each([
    'As Rnd 3, but with ch 6 between the sc.',
    'As the 3rd rnd, but with 6 ch. between the sc.',
    'Same as 3rd rnd, having ch 6 between sc instead of ch 4.',
    'Rep Rnd 3, working ch 6 instead of ch 4.',
    'Work as for Rnd 3, making loops of 6 ch in place of 4.',
    'Work same as Rnd 3 except with ch-6 instead of ch-4.',
    'Rep last rnd, with ch 6 in place of ch 4.',
    'Repeat the 3rd round, with 6 chains in each loop instead of 4.',
  ])('has loops of that size: %s', (words) => {
    const text = `${LOOPS}${words}\nRnd 5: In each ch-6 lp work 7 sc; join. (56 sc)`
    expect(codes(text)).toEqual([])
    expect(read(text).rounds[3]).toMatchObject({ made: 8, spaces: { 'ch-6': 8 } })
    expect(codes(text.replace('ch-6 lp work', 'ch-4 lp work'))).toContain('rounds/no-such-space')
  })

  it('may be repeated with more of them each time', () => {
    const text = `${LOOPS}As Rnd 3, but with ch 5 between the sc.\nRnd 5: As Rnd 3, but with ch 6 between the sc.\nRnd 6: In each ch-6 lp work 7 sc; join. (56 sc)`
    expect(codes(text)).toEqual([])
  })

  it.each(['ch 3 in the corners instead of ch 2', '3 ch in each corner in place of 2'])(
    'has corners of that size: %s',
    (words) => {
      const text = `${SQUARE}Same as Rnd 2, having ${words}. (44 dc)`
      expect(codes(text)).toEqual([])
      expect(read(text).rounds[2]).toMatchObject({ made: 44, spaces: { 'ch-3': 4 } })
    },
  )
})

describe('A round worked again with other stitches', () => {
  it.each([
    'but with 3 dc instead of 2',
    'working 3 dc in place of 2 dc',
    'having 3 dc at each side of ch 2 instead of 2',
  ])('has as many as are told: %s', (words) => {
    const text = `${SQUARE}As Rnd 2, ${words}. (52 dc)`
    expect(codes(text)).toEqual([])
    expect(made(text)[2]).toBe(52)
    expect(codes(text.replace('52 dc', '44 dc'))).toEqual(['rounds/wrong-end-count'])
  })

  it('says so where there is nothing of the kind to change', () => {
    const text = `${SQUARE}As Rnd 2, but with 7 dc instead of 5. (44 dc)`
    expect(codes(text)).toEqual(['rounds/not-read'])
  })
})

describe('Counts of several rounds', () => {
  it.each(['(44, 60, 76 dc)', '[44, 60, then 76 dc]', '(44, 60, and 76 dc)'])(
    'are told in turn: %s',
    (count) => {
      const text = `${SQUARE.replace('Rnd 3: ', 'Rnds 3-5: ')}Rep Rnd 2. ${count}`
      expect(codes(text)).toEqual([])
      expect(made(text)).toEqual([12, 28, 44, 60, 76])
      expect(codes(text.replace('76 dc', '78 dc'))).toEqual(['rounds/wrong-end-count'])
    },
  )

  it.each([
    '– 28 dc (7 each side)',
    '(28 dc - that’s 7 for each side)',
    '(28 dc, 7 to each side)',
    '28 dc (7 per side).',
  ])('are not those of a side: %s', (count) => {
    const text = `${SQUARE.replace('(28 dc)', count)}Ch 1, sc in each dc and 3 sc in each sp; join. (40 sc)`
    expect(codes(text)).toEqual([])
    expect(made(text)).toEqual([12, 28, 40])
  })
})

describe('One sweep over all that is there', () => {
  it.each([
    'sc in each dc and in each popcorn around, making 5 sc in each ch-2 sp',
    'sc in each dc and each popcorn, 5 sc in each ch-2 sp',
    'sc in every dc and in every popcorn, and 5 sc in every ch-2 sp',
  ])('takes stitches of every name: %s', (words) => {
    const text = `Rnd 1: Magic ring, ch 1, (2 dc, popcorn, ch 2) 4 times in ring; join. (8 dc, 4 popcorns)\nRnd 2: Ch 1, ${words}; join. (32 sc)`
    expect(codes(text.replace('(2 dc, popcorn', '(2 dc, 5-dc popcorn'))).toEqual([])
    expect(made(text)).toEqual([12, 32])
    expect(codes(text.replace('32 sc', '30 sc'))).toContain('rounds/wrong-end-count')
  })
})

describe('What is told behind the end of a round', () => {
  it('is where the next one begins', () => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, join. 12 dc. Fasten off A.
Join color B to any stitch.
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around; join. (24 dc)`
    expect(codes(text)).toEqual([])
    expect(made(text)).toEqual([12, 24])
  })

  it.each(['Make a magic ring with 6 sc.', 'Magic ring with 6 sc, do not join.'])(
    'begins with stitches: %s',
    (words) => {
      expect(made(`Rnd 1: ${words} (6)\nRnd 2: 2 sc in each sc. (12)`)).toEqual([6, 12])
    },
  )
})
