/** What is worked in a round, stitch by stitch, and which spaces are missing. Counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { told } from './telling'

const RING = 'Rnd 1: Magic ring, ch 1, 8 sc in ring, join with sl st in first sc.\n'
const worked = (words: string, terms: 'US' | 'UK' = 'US') =>
  readRounds(`${RING}Rnd 2: ${words}`, { terms }).rounds[1]!.stitches

describe('what is worked', () => {
  it.each([
    ['Ch 1, *5-dc pc in next sc, ch 3; rep from * around, join.', { ch: 25, dc: 40, 'sl st': 1 }],
    ['Ch 1, *3-dc cluster in next sc, ch 1; rep from * around, join.', { ch: 9, dc: 24, 'sl st': 1 }],
    ['Ch 1, *puff in next sc, ch 1; rep from * around, join.', { ch: 9, hdc: 24, 'sl st': 1 }],
    [
      'Ch 1, *bobble in next sc, sc in next sc; rep from * around, join.',
      { ch: 1, dc: 20, sc: 4, 'sl st': 1 },
    ],
    ['Ch 1, *sc2tog; rep from * around, join.', { ch: 1, sc: 8, 'sl st': 1 }],
    ['Ch 1, (sc, ch 3, sl st in 3rd ch from hook) in each sc around, join.', { ch: 25, sc: 8, 'sl st': 9 }],
    [
      'Ch 1, sc in first sc, *ch 5, sc in next sc; rep from * around, ending with ch 2, dc in first sc.',
      { ch: 38, sc: 8, dc: 1 },
    ],
  ])('is counted with all that a stitch is made of: "%s"', (words, stitches) => {
    expect(worked(words)).toEqual(stitches)
  })
})

describe('a round that asks for too many of one kind of space', () => {
  const SQUARE = `Rnd 1: Magic ring, ch 1, 16 sc in ring, join.
Rnd 2: Ch 1, *(sc, ch 3, sc) in next sc, ch 1, sk next sc, sc in next sc, ch 1, sk next sc; rep from * 3 more times, join.
Rnd 3: Sl st in ch-3 sp, ch 1, `
  it.each([
    [
      '(sc, ch 3, sc) in same sp, [sc in next ch-1 sp] 3 times, *(sc, ch 3, sc) in next ch-3 sp, [sc in next ch-1 sp] 3 times; rep from * 2 more times, join.',
      '3 repeats of 3 use 9 ch-1 sps; there are 5',
    ],
    [
      '(sc, ch 3, sc) in same sp, sc in next 3 ch-1 sps, *(sc, ch 3, sc) in next ch-3 sp, sc in next 3 ch-1 sps; rep from * twice more, join.',
      '3 repeats of 3 use 9 ch-1 sps; there are 5',
    ],
    [
      '(sc, ch 3, sc) in same sp, sc in next 2 ch-1 sps, *(sc, ch 3, sc) in next ch-3 sp, sc in next 2 ch-1 sps; rep from * 3 more times, join.',
      '4 repeats of 1 use 4 ch-3 sps; there are 3',
    ],
  ])('says which are missing: "%s"', (words, message) => {
    expect(told(SQUARE + words).join('\n')).toContain(message)
  })
})
