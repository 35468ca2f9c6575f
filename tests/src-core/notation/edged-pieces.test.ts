/** Edgings on cloth, steps of leaves, rings and picots told in passing. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const both = (text: string, terms: 'US' | 'UK' = 'US') => [told(text, terms), made(text, terms)]

describe('stitches along a cloth', () => {
  it.each(['along the hem', 'across the edge of the towel', 'around the handkerchief'])(
    'are as many as are told: %s',
    (where) => {
      const text = `Join thread to the cloth.
Row 1: Ch 1, work 41 sc evenly ${where}, turn.
Row 2: Ch 1, sc in first sc, *ch 5, skip 3 sc, sc in next sc; rep from * to end. (10 loops)`
      expect(both(text)).toEqual([[], [41, 11]])
    },
  )
})

describe('a leaf in steps', () => {
  const leaf = (first: string) => `Ridged leaf
Make 12ch.
Row 1: 1dc in 2nd ch from hook, 1dc in each of next 9ch, 3dc in last ch; working along other side of chain, 1dc in each of next 8ch, turn${first}.
Row 2: 1ch, working in back loops only, 1dc in each of next 9dc, 3dc in next dc, 1dc in each of next 9dc, turn.
Row 3: 1ch, working in back loops only, 1dc in each of next 10dc, 3dc in next dc, 1dc in each of next 8dc. Fasten off.`

  it('leaves as many at each end as its first row says', () => {
    expect(made(leaf(', leaving last 2ch unworked'), 'UK')).toEqual([21, 21, 21])
    expect(told(leaf(', leaving last 2ch unworked'), 'UK')).toEqual([])
  })
})

describe('a ring named before the rounds of a part', () => {
  it('is there for each part', () => {
    const text = `Octagon (make 20)
Using a magic ring and yarn A:
R1: 4ch (counts as 1tr, 1ch), [1tr into ring, 1ch] 7 times, ss to 3rd of 4ch. [8 tr]

Small square (make 12)
Using a magic ring and yarn B:
R1: 4ch (counts as 1tr, 1ch), [4tr into ring, 1ch] 3 times, 3tr into ring, ss to 3rd of 4ch. Fasten off. [16 tr]`
    expect(both(text, 'UK')).toEqual([[], [8, 16]])
  })
})

describe('a picot', () => {
  it('may be closed in the side of the last stitch', () => {
    const text = `Rnd 1: Magic ring, ch 1, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, *sc in each of next 3 sc, ch 3, sl st in side of last sc (picot made); rep from * to end, join. (4 picots)`
    expect(both(text)).toEqual([[], [12, 12]])
  })
})

describe('stitches left over by "rep from * to end"', () => {
  it('are told at the repeat', () => {
    const text = `Row 1: Ch 22, sc in 2nd ch from hook and in each ch to end, turn. (21 sc)
Row 2: Ch 1, sc in first sc, *skip 2 sc, 5 dc in next sc, skip 2 sc, sc in next sc; rep from * to end.`
    const [found] = readRounds(text, { terms: 'US' }).findings.filter(({ severity }) => severity === 'error')
    const line = text.split('\n')[found!.target!.line! - 1]!
    expect(line.slice(found!.target!.column! - 1)).toMatch(/^rep from \*/)
  })
})
