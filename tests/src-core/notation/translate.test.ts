/** The same text in the other terms: chains as publishers there write them (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { editionText } from '../../../src-core/notation/translate'

const uk = (text: string) => editionText(text, 'US', 'UK')
const us = (text: string) => editionText(text, 'UK', 'US')

describe('chains in the other terms', () => {
  it.each([
    ['ch 5, sk next ch-2 sp, sc in next ch-2 sp', '5 ch, miss next 2-ch sp, dc in next 2-ch sp'],
    ['(sc, ch 3, sc) in next st', '(dc, 3 ch, dc) in next st'],
    ['ch 1, turn, 2 dc in first ch-3 loop', '1 ch, turn, 2 tr in first 3-ch loop'],
    ['sl st in top of ch 3', 'ss in top of 3 ch'],
    // What is there already is counted alike.
    ['sc in next 5 ch, sk 2 ch, dc in each of 3 ch', 'dc in next 5 ch, miss 2 ch, tr in each of 3 ch'],
    ['2 dc in each ch 3 times', '2 tr in each ch 3 times'],
    ['sc in 2nd ch from hook', 'dc in 2nd ch from hook'],
  ])('%s', (american, british) => {
    expect(uk(american)).toBe(british)
    expect(us(british)).toBe(american)
  })

  it('are one way within a text, whichever way they stood there', () => {
    expect(uk('Ch 4, join. Ch 3, dc in ch 2 sp.')).toBe('4 ch, join. 3 ch, tr in 2-ch sp.')
    expect(us('3 ch, 2 tr into ring. 3 ch, tr in 2 ch sp')).toBe('ch 3, 2 dc into ring. Ch 3, dc in ch-2 sp')
    expect(us('1 dc in each of next 3 tr, 2 ch, miss out 2 tr')).toBe(
      '1 sc in each of next 3 dc, ch 2, skip 2 dc',
    )
    expect([uk('sk 2 sts'), uk('skip 2 sts'), us('miss 2 sts'), us('miss out 2 sts')]).toEqual([
      'miss 2 sts',
      'miss 2 sts',
      'sk 2 sts',
      'skip 2 sts',
    ])
  })
})
