/** Picots by the chain that closes them, as British hands tell it. Counts by hand: a picot is no stitch and no space. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { told } from './telling'

describe('a picot', () => {
  it.each([
    '3ch, ss in first of these ch (picot)',
    '3 ch, ss into first of these 3 ch (picot made)',
    '3 ch, ss in 1st of these 3 ch',
    '3ch, ss in base of these ch',
    '3ch, ss into the first ch',
    '4 ch, 1 dc in first of these 4 ch',
    '4 ch, 1 dc in first ch',
    '4 ch, 1 dc into 4th ch from hook',
  ])('is closed: %s', (picot) => {
    const text = `Round 1: 48 tr into magic ring, ss to first tr. (48 tr)\nRound 2: 1ch, *1dc in each of next 3 tr, ${picot}, 1dc in next tr; rep from * to end, ss to first dc. (12 picots)`
    expect(told(text, 'UK')).toEqual([])
    const { made, spaces } = readRounds(text, { terms: 'UK' }).rounds[1]!
    expect([made, spaces]).toEqual([48, {}])
  })
})
