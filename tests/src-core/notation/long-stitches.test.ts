/** Long stitches told in words: where the hook goes, and which stitch is covered. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const WHEEL = `Rnd 1: 8 sc in magic ring, join. (8)
Rnd 2: Ch 1, 2 sc in each sc around; join. (16)`
const round = (words: string, count = '(16)') =>
  `${WHEEL}\nRnd 3: Ch 1, *sc in next sc, ${words}; rep from * around; join with sl st in first sc. ${count}`

const COVERING = [
  'spike st in next sc inserting hook in Rnd 1',
  'spike sc in next sc, inserting hook in the sc of Rnd 1 below',
  'spike st over next sc into Rnd 1',
  'spike st into the st two rnds below',
  'long sc (into Rnd 1) in next sc',
  'long sc in next sc, going down into Rnd 1',
  'long sc in next sc, inserting hook one row below',
  'long sc in magic ring over next sc',
  'long sc inserting hook in corresponding sc of Rnd 1, skip 1 sc of Rnd 2 behind it',
  'long dc in st of Rnd 1 under next sc, skip that sc',
  'work a long sc down into the next sc of Rnd 1',
  'insert hook in sc of Rnd 1 directly below next sc and work a long sc',
]

describe('A long stitch', () => {
  it.each(COVERING)('covers the stitch that it stands before: %s', (words) => {
    expect(told(round(words))).toEqual([])
    expect(made(round(words))).toEqual([8, 16, 16])
    expect(told(round(words, '(17)'))).not.toEqual([])
  })

  it('covers it where nothing counts the round, too', () => {
    const text = round('long sc into st of Rnd 1 below next sc', '')
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([8, 16, 16])
  })

  it('covers none where only that comes to the count', () => {
    const text = round('long sc into st of Rnd 1 below next sc, sc in next sc', '(24)')
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([8, 16, 24])
  })

  it('covers one alone where its hook goes into the round before', () => {
    const text = `Rnd 1: 12 sc in magic ring, join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in first sc, *spike st in next sc inserting hook in Rnd 1, sc in next sc; rep from * 4 more times, spike st in last sc inserting hook in Rnd 1; join with sl st in first sc. (12 sts)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 12])
  })

  it('is told where the round that its hook goes into is not there', () => {
    expect(told(round('spike st in next sc inserting hook in Rnd 5')).join()).toMatch('rounds/no-such-round')
  })
})

describe('a spike by itself', () => {
  const page = (steps: string, work: string, count: string) =>
    `SPECIAL STITCH\nSpike: ${steps}\n\nRnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, sl st in top of ch-3. (12 dc)\nRnd 2: Ch 1, *sc in each of next 2 dc, ${work}; rep from * 5 more times, sl st in first sc. ${count}`
  const STEPS =
    'insert hook in the gap directly below, draw up a long loop, yarn over and draw through both loops.'

  it.each([
    '1 spike between this dc and the next',
    'spike between last dc and next dc',
    '1 spike between this dc and the next one',
  ])('is a stitch that the page explains, counted apart: "%s"', (work) => {
    const text = page(STEPS, work, '(12 sc, 6 spikes)')
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 18])
    expect(told(text.replace('12 sc,', '14 sc,'))).toEqual([expect.stringContaining('14 sc')])
  })
})
