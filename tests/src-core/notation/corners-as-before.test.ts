/** Corners that an earlier round tells, and stitches straight below. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const SQUARE = `Rnd 1: Ch 4, join to form ring. Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join in top of ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in corner sp, dc in next 3 dc; rep from * 2 more times, (2 dc, ch 2, 2 dc) in last corner sp; join. (28 dc, 4 ch-2 sps)`

describe('Corners as an earlier round has them', () => {
  it.each([
    'dc in each dc around, corners as before',
    'dc in each dc, work corners as in Rnd 2',
    'dc in each dc around, increasing in corners as before',
    'dc in each dc around and corners as in Rnd 2',
    'dc in each dc, working corners in the same way',
    'dc in each dc around, with corners the same as last round',
    'dc in next 4 dc, *corner as before, dc in next 7 dc; rep from * 2 more times, corner as before, dc in next 2 dc',
  ])('hold what those hold: %s', (words) => {
    const text = `${SQUARE}\nRnd 3: Ch 3, ${words}; join. (44 dc, 4 ch-2 sps)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 28, 44])
    expect(told(text.replace('44', '45'))).not.toEqual([])
  })

  it('are stitches where the round has no spaces', () => {
    const text = `Rnd 1: 12 sc in magic ring, join. (12)
Rnd 2: Ch 1, *sc in next 2 sc, 3 sc in next sc for corner; rep from * 3 more times, join. (20)
Rnd 3: Ch 1, sc in each sc around, increase in corners as before; join. (28)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 20, 28])
  })
})

it.each([
  'dc in the free front loop of a Rnd 3 st straight below, skip the Rnd 4 st behind the dc',
  'dc in the front loop of next Rnd 3 st, skip st of Rnd 4 behind dc',
  'dc in the front loop of the st two rounds straight below, skip next st',
])('a stitch straight below, and the one that is passed for it: %s', (words) => {
  const text = `Rnd 1: 6 sc in a magic ring. (6)
Rnd 2: 2 sc in each st. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)
Rnd 4: In back loops only, *sc in next 2 sts, 2 sc in next st; rep from * around. (24)
Rnd 5: *Sc in next 3 sts, ${words}; rep from * around. (24)`
  expect(told(text)).toEqual([])
  expect(made(text)).toEqual([6, 12, 18, 24, 24])
})
