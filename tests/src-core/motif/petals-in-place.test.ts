/** Petals that rise from a slip stitch in their own place have one outline, however they are told. */
import { describe, expect, it } from 'vitest'
import { workedMotif } from './written-motif'

const daisy = (round: string) =>
  workedMotif(['8 sc in magic ring, sl st in first sc', round], { ring: 'adjustable' }).account!

describe('eight petals of two tr between chains', () => {
  const told = daisy(
    '*(ch 4, 2 tr, ch 4, sl st) in same sc, sl st in next sc; rep from * 7 more times. Fasten off.',
  )

  it.each([
    'Join white with a sl st in any sc, *ch 4, 2 tr in same sc, ch 4, sl st in same sc, sl st in next sc; rep from * 7 more times. Fasten off.',
    '*ch 4, 2 tr in same sc, ch 4, sl st in same sc, sl st in next sc; rep from * 7 more times. Fasten off.',
  ])('are eight: %s', (round) => {
    const motif = daisy(round)
    expect(motif).toMatchObject({ shape: 'petals', petals: 8 })
    expect(motif.overTips).toBeCloseTo(told.overTips, 6)
    expect(motif.overValleys).toBeCloseTo(told.overValleys, 6)
  })

  it('that rise over to the next stitch are eight as well', () => {
    expect(daisy('*Ch 3, 2 dc in next sc, ch 3, sl st in same sc; rep from * around.')).toMatchObject({
      petals: 8,
    })
  })
})
