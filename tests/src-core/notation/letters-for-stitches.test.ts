/** Letters for stitches, and what is left at the end of a row, as patterns of stuffed figures and shaped pieces have them. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const BALL = 'R1: 6X in magic ring (6)\nR2: 6V (12)\nR3: (X, V) × 6 (18)\nR4: (X, A) × 6 (12)'

describe('letters', () => {
  it.each([
    'Key: X = sc; V = 2 sc in same st; A = sc2tog; BLO = back loop only',
    'Key: X = sc, V = inc, A = dec',
    'X = single crochet\nV = increase (2 sc in one st)\nA = decrease (sc 2 together)',
    'X = sc, V = 2 sc into next st, A = 2 sc tog',
  ])('are what the text says: %s', (key) => {
    expect(told(`${key}\n${BALL}`)).toEqual([])
    expect(made(`${key}\n${BALL}`)).toEqual([6, 12, 18, 12])
  })

  it('are what they are everywhere where it says nothing', () => {
    const text =
      'R1: MR 6X (6)\nR2: 6V (12)\nR3: (X, V)*6 (18)\nR4: (2X, V)*6 (24)\nR5: 24X\nR6: (2X, A)*6 (18)\nR7: (X, A)*6 (12)\nR8: 6A (6)'
    expect([told(text), made(text)]).toEqual([[], [6, 12, 18, 24, 24, 18, 12, 6]])
  })

  it('still tell how often behind a bracket, and a V-stitch where the text has one', () => {
    const often = 'Rnd 1: 6 sc in magic ring. (6)\nRnd 2: (inc) 6X. (12)\nRnd 3: (sc, inc) 6X. (18)'
    expect([told(often), made(often)]).toEqual([[], [6, 12, 18]])
    const named = `Rnd 1: With A, 6 sc in magic ring. (6)
Rnd 2: Inc, repeat 6X. (12)
Rnd 3: With A, sc, inc, repeat 6X. (18)`
    expect(readRounds(named, { terms: 'US' }).findings).toEqual([])
    expect(made(named)).toEqual([6, 12, 18])
    const vs = 'Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: V-st in each dc around, join. (24 dc)'
    expect(made(vs)).toEqual([12, 24])
  })

  it('may change their meaning while they are typed', () => {
    const text = `X = sc, V = inc, A = dec\n${BALL}`
    expect(made(text)).toEqual([6, 12, 18, 12])
    expect(made(text.replace('V = inc', 'V = hdc'))).not.toEqual([6, 12, 18, 12])
    expect(made(text)).toEqual([6, 12, 18, 12])
  })
})

describe('the end of a row', () => {
  it.each([
    ['2 sc in first sc, sc in each sc to last, 2 sc in last', [9, 11, 13]],
    ['sc2tog, sc in each st to last 2, sc2tog', [9, 7, 5]],
    ['sc2tog, sc to last 2, sc2tog', [9, 7, 5]],
  ])('%s', (row, counts) => {
    const each =
      counts[1]! > counts[0]! ? 'increasing 2 sts each row' : 'decreasing 1 st at each end of every row'
    const text = `Ch 10.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (9 sc)\nRow 2: Ch 1, ${row}, turn. (${counts[1]} sc)\nRow 3: Repeat Row 2, ${each}. (${counts[2]} sc)`
    expect([told(text), made(text)]).toEqual([[], counts])
  })
})
