/** Lists of stitches down a chain, and up its other side. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

describe('A list down the chain of a petal', () => {
  it.each([
    'Ch 7, sl st in 2nd ch from hook, sc, hdc, dc, hdc, sc down the chain, sl st in next sc',
    'Ch 7, then down the ch: sl st, sc, hdc, dc, hdc, sc, sl st in next sc',
    'Ch 7, sl st in 2nd ch from hook, sc, hdc, dc, hdc, sc, sl st in next sc',
    'Ch 7, sl st, sc, hdc, dc, hdc, sc back along the chain, sl st in next sc',
    'Ch 7, work back along the chain: sl st in 2nd ch from hook, sc, hdc, dc, hdc, sc; sl st in next sc',
    'Ch 7, starting in 2nd ch from hook: sl st, sc, hdc, dc, hdc, sc along the chain, sl st in next sc',
  ])('takes nothing of the round: %s', (petal) => {
    const flower = `Rnd 1: 6 sc in magic ring, join. (6 sc)\nRnd 2: *${petal}; rep from * 5 more times. (6 petals)`
    expect(told(flower)).toEqual([])
    expect(made(flower)).toEqual([6, 30])
    expect(told(flower.replace('5 more', '6 more'))).not.toEqual([])
  })
})

describe('A list on both sides of a chain', () => {
  it.each([
    'sc, hdc, 2 dc, hdc, sc. Work down the other side: sc, hdc, 2 dc, hdc, sc, sl st',
    'sc, hdc, 2 dc, hdc, sc along the chain; repeat down the other side: sc, hdc, 2 dc, hdc, sc, sl st',
    'sc, hdc, 2 dc, hdc, sc in last ch, then sc, hdc, 2 dc, hdc, sc back along other side; join',
    'sc, hdc, 2 dc, hdc, sc down the chain. On the other side of the chain: sc, hdc, 2 dc, hdc, sc',
  ])('turns where it is told: %s', (list) => {
    const leaf = `Ch 8. Sl st in 2nd ch from hook, ${list}. Fasten off.`
    expect(told(leaf)).toEqual([])
    expect(made(leaf)).toEqual([12])
  })

  it('goes the same way back', () => {
    const leaf =
      'Row 1: Ch 8, sc in 2nd ch from hook, hdc, 3 dc, hdc, sc along chain; turn, work the same along the other side of the chain. (14 sts)'
    expect(told(leaf)).toEqual([])
    expect(made(leaf)).toEqual([14])
  })

  it('is told where it is longer than its chain', () => {
    expect(told('Ch 5. Sc in 2nd ch from hook, hdc, 3 dc, hdc, sc along the chain. (7 sts)')).not.toEqual([])
  })
})
