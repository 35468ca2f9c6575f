/** Repeats over the sides of a motif, and other words that a page may use or leave out (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const SQUARE = (
  repeat: string,
  count = 24,
) => `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join in top of ch-3.
Rnd 2: Ch 1, *sc in next 3 dc, 3 sc in next sp${repeat}, join in first sc. (${count} sc)`

describe('A repeat over sides', () => {
  it.each([
    '; rep from * on other 3 sides',
    '; rep from * on the other three sides',
    '; rep from * on remaining three sides',
    '; rep from * along each of the other 3 sides',
    '; rep from * for other 3 sides',
    '; rep from * on all 4 sides',
    '; rep from * along each side',
    '; rep from * on each side',
    '*. Repeat on each side',
    '*. Repeat along each side',
  ])('goes all around: %s', (repeat) => {
    expect(made(SQUARE(repeat))).toEqual([12, 24])
    expect(told(SQUARE(repeat))).toEqual([])
    expect(told(SQUARE(repeat, 25))).toHaveLength(1)
  })

  it('is held to the number of sides', () => {
    expect(told(SQUARE('; rep from * on other 4 sides', 30))).not.toEqual([])
    expect(told(SQUARE('; rep from * on all 3 sides', 18))).not.toEqual([])
  })
})

it('a count is one without a comma, too', () => {
  const text = (counts: string) =>
    `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join in top of ch-3. - ${counts}`
  expect(made(text('12 dc 4 ch-2 sps'))).toEqual([12])
  expect(told(text('12 dc 4 ch-2 sps'))).toEqual([])
  expect(told(text('12 dc 5 ch-2 sps'))).toHaveLength(1)
})

it('a ring may be a neat little one', () => {
  const text =
    'Rnd 1: Chain 5 and join them into a neat little ring with a slip stitch. Ch 1, 12 sc in ring, join.'
  expect([made(text), told(text)]).toEqual([[12], []])
})

it('the stitch after that is the next one', () => {
  const text = `Rnd 1: Magic ring, 12 sc in ring, join.
Rnd 2: Ch 1, *skip the next stitch, 2 sc in the stitch after that; rep from * around, join. (12 sc)`
  const { rounds, findings } = readRounds(text)
  expect([rounds.map(({ made }) => made), findings]).toEqual([[12, 12], []])
})
