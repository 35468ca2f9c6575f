/** A round on the tips of petals, whatever the petals are made of. Counts by hand: one stitch to each petal. */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const RING = 'Rnd 1: Make a magic ring, ch 1, 10 hdc in ring, join. (10 hdc)\n'
const PETALS = [
  '(Ch 2, 3 dc, ch 2, sl st) in each hdc around.',
  '*(Sc, hdc, dc, hdc, sc) in next hdc; rep from * around, join.',
  '(Sl st, ch 2, dc, tr, dc, ch 2, sl st) in each st around. (10 petals)',
  '*Ch 3, 2 dc in same st, ch 3, sl st in same st, sl st in next st; rep from * around. (10 petals)',
  '*Ch 4, tr3tog in same st, ch 4, sl st in same st, sl st in next st; rep from * 9 times. (10 petals)',
]
const ROUNDS = [
  'Join B in tip of any petal, ch 1, sc in same st, ch 5, *sc in tip of next petal, ch 5; rep from * around, join. (10 ch-5 sps)',
  '*Sc in next petal, ch 5; rep from * around, join. (10 ch-5 sps)',
  'Join B with sc in any petal, ch 5, (sc in next petal, ch 5) 9 times, join. (10 ch-5 sps)',
  'Join B with sc in the top of any petal, ch 5, *sc in top of next petal, ch 5; rep from * around, join. (10 ch-5 sps)',
  'Join B to center of any petal, ch 1, sc in same place, ch 5, *sc in center of next petal, ch 5; rep from * around, join. (10 ch-5 sps)',
  '(Sc in tip of each petal, ch 5) around. (10 ch-5 sps)',
]

describe.each(PETALS)('above %s', (petals) => {
  it.each(ROUNDS)('%s', (round) => {
    const text = `${RING}Rnd 2: ${petals}\nRnd 3: ${round}`
    expect(told(text)).toEqual([])
    expect(made(text)[2]).toBe(10)
  })

  it('tells a tip too many', () => {
    const text = `${RING}Rnd 2: ${petals}\nRnd 3: (Sc in next petal, ch 5) 11 times, join.`
    expect(told(text)).not.toEqual([])
  })
})
