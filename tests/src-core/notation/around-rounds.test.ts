/** What a page tells around its rounds: what hangs on a motif, comments on counts, first clusters. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const CIRCLE = `Rnd 1: Magic ring, ch 1, 8 sc in ring, sl st in first sc. (8)
Rnd 2: Ch 1, 2 sc in each st around, sl st in first sc. (16)`

describe('What hangs on a motif', () => {
  it.each([
    'Stem: Ch 8, sl st in 2nd ch from hook and in each of next 6 ch, sl st in any st. Fasten off.',
    'STEM\nCh 8, sl st in 2nd ch from hook and in each ch across. Fasten off.',
    'For a stem: ch 8, sl st in 2nd ch from hook and in each ch across. Fasten off.',
    'Hanging loop: Ch 12, sl st in same st. Fasten off.',
    'Loop for hanging: Ch 12, sl st in same st.',
    'Joining: Hold two pieces with wrong sides together. Ch 1, sc in each st around through both layers, join.',
  ])('is no round of it: %s', (words) => {
    expect(told(`${CIRCLE}\n${words}`)).toEqual([])
    expect(made(`${CIRCLE}\n${words}`)).toEqual([8, 16])
  })

  it('is checked all the same', () => {
    const [first] = told(`${CIRCLE}\nStem: Ch 8, sl st in 2nd ch from hook and in each of next 9 ch.`)
    expect(first).toMatch(/^rounds\/no-chain/)
  })

  it('is a round where a number says so, or another name', () => {
    expect(made(`${CIRCLE}\nRnd 3 (stem): Ch 1, sc in each st around, sl st in first sc.`)).toEqual([
      8, 16, 16,
    ])
    expect(made(`${CIRCLE}\nEdging: Ch 1, sc in each st around, sl st in first sc.`)).toEqual([8, 16, 16])
  })
})

describe('A comment on how a count was made', () => {
  it.each([
    '(7 tr + 6 dc = 13 sts, I don’t count the ch 3s.)',
    "(13 sts, I don't count the ch 3s)",
    '(13 sts; the ch-3s are not counted)',
    '(13 sts, counting no chains)',
  ])('adds none to it: %s', (count) => {
    const heart = `Rnd 1: In a magic ring, ch 3, 3 tr, 3 dc, ch 1, 1 tr, ch 1, 3 dc, 3 tr, ch 3, sl st in ring. ${count}`
    expect(told(heart)).toEqual([])
    expect(made(heart)).toEqual([13])
    expect(told(heart.replaceAll('13', '17'))).not.toEqual([])
  })
})

describe('Stitches in a manner of their own', () => {
  const text = (counts: string) => `Rnd 1: Magic ring, ch 1, 8 sc in ring, join. (8 sc)
Rnd 2: Ch 1, 2 sc in each st around, join. (16 sc)
Rnd 3: Ch 1, *sc in next sc, long sc in next st of Rnd 1, skip sc behind it; rep from * around, join. ${counts}`

  it('have a count of their own, or stand with the others', () => {
    expect(told(text('(8 sc, 8 long sc)'))).toEqual([])
    expect(told(text('(16 sc)'))).toEqual([])
    expect(told(text('(16 sc, 8 long sc)'))).not.toEqual([])
    expect(told(text('(8 sc, 7 long sc)'))).not.toEqual([])
  })
})

describe('The gap by a corner', () => {
  it.each([
    '2 dc in the gap before the next corner',
    '2 dc in sp before next corner',
    '2 dc in the space between the corners',
  ])('lies between groups: %s', (gap) => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), dc in ring, ch 1, (2 dc in ring, ch 1) 5 times, join. (12 dc)
Rnd 2: Sl st to first ch-1 sp, ch 3, (dc, ch 1, 2 dc) in same sp, (2 dc, ch 1, 2 dc) in each of next 5 ch-1 sps, join. (24 dc)
Rnd 3: Sl st to first ch-1 sp, ch 3, (dc, ch 1, 2 dc) in same sp, ${gap}, *(2 dc, ch 1, 2 dc) in next ch-1 sp, ${gap}; rep from * 4 more times, join. (36 dc)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 24, 36])
  })
})

it('The first cluster of a round is explained under a label of its own', () => {
  const text = `Special stitch - 3-dc cluster (cl): (yo, insert, pull up loop, yo, pull through 2) three times in the same space, yo, pull through all 4 loops.
First cl of the round: ch 3, then (yo, insert, pull up loop, yo, pull through 2) twice in the same space, yo, pull through all 3 loops.

Rnd 1: Magic circle, ch 4 (counts as dc + ch 1), *dc in circle, ch 1* 11 times, join to 3rd ch of ch 4. (12 dc)
Rnd 2: Sl st in first ch-1 space, first cl in same space, ch 2, *cl in next ch-1 space, ch 2* 11 times, join. (12 cl)`
  expect(told(text)).toEqual([])
  expect(made(text)).toEqual([12, 12])
})
