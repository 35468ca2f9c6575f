/** Counts on a line of their own or behind signs, with more of the text below. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const page = (
  count: string,
) => `Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, sl st in top of ch-3. (12 dc)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around, sl st in top of ch-3.${count}

Fasten off. The long edge goes to the outside.
`

const row = (count: string) => `Begin with a magic ring.
Row 1: ch 4 (counts as dc + ch 1 on every row), into the ring work 3 dc, ch 2, 3 dc, ch 1, dc. Turn.${count}

Fasten off.
`

const WAYS = [
  ' // 24 dc',
  ' | 24 dc',
  ' » 24 dc',
  ' ~ 24 dc ~',
  ' ✓ 24 dc',
  '\n✔ 24 dc',
  '\n✔ 24 dc, 4 on each side',
  '\n✅ You have 24 dc',
  '\n→ 24 stitches.',
  '\n24 dc',
  '\n• 24 dc in all',
  '\nCheck: 24 dc',
]

describe('A count on a line of its own', () => {
  it.each(WAYS)('is no more to work: %j', (count) => {
    expect(told(page(count))).toEqual([])
    expect(made(page(count))).toEqual([12, 24])
  })

  it.each(WAYS)('is held against the round: %j', (count) => {
    expect(told(page(count.replace('24', '25')))).toEqual([expect.stringContaining('rounds/wrong-end-count')])
  })

  it('stands behind a row that ends in a stitch', () => {
    expect(made(row(' // 8 dc'))).toEqual([8])
    expect(told(row(' // 9 dc'))).toEqual([expect.stringContaining('rounds/wrong-end-count')])
  })

  it('leaves what is worked on a line of its own to be worked', () => {
    expect(made('Rnd 1: 6 sc in magic ring.\nRnd 2: Ch 1,\n2 sc in each st around.\n(12 sc)')).toEqual([
      6, 12,
    ])
  })
})
