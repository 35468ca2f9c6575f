/** Stitches along edges, chains that part pairs, and rounds that end in the corner where they began. Counts by hand. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const spaces = (text: string, round: number, terms: 'US' | 'UK' = 'US') =>
  readRounds(text, { terms }).rounds[round]!.spaces

describe('an edging around a piece in rows', () => {
  it.each(['bottom', 'the bottom edge', 'the lower edge'])(
    'has so many across %s, not so many in each',
    (edge) => {
      const text = `14 ch.
Row 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. (13 dc)
Rows 2-9: 1 ch, 13 dc across, turn. (13 dc)
Border: 1 ch, work 11 dc evenly down side, 3 dc in corner, 11 dc across ${edge}, 3 dc in corner, 11 dc up side, 3 dc in corner, 11 dc across top, 3 dc in last corner, ss to first dc. (56 dc)`
      expect(told(text, 'UK')).toEqual([])
      expect(made(text, 'UK')).toEqual([...Array<number>(9).fill(13), 56])
    },
  )

  it('asks where a row has more than there are', () => {
    const text =
      '14 ch.\nRow 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn. (13 dc)\nRow 2: 1 ch, 14 dc across, turn. (14 dc)'
    expect(told(text, 'UK')).toHaveLength(1)
  })
})

describe('chains between', () => {
  const RING = 'Rnd 1: 12 dc in magic ring, join. (12 dc)\n'
  it.each([
    ['Ch 3 (counts as dc), dc in each dc around with ch 1 between, join.', 12],
    ['Ch 4 (counts as dc and ch 1), dc in each dc around with ch 1 between, join.', 12],
    ['Ch 3, dc in same st, 2 dc in each dc around, with ch 1 between, join.', 24],
    ['Ch 3, dc in same st, 2 dc in each dc around, with ch 1 between each pair, ch 1, join.', 24],
    ['Dc in each dc around with ch 1 between each dc.', 12],
  ])('are as many as there are gaps in a ring: %s', (round, count) => {
    const text = `${RING}Rnd 2: ${round}`
    expect(told(text)).toEqual([])
    expect(made(text)[1]).toBe(count)
    expect(spaces(text, 1)).toEqual({ 'ch-1': 12 })
  })

  it.each([
    'Ch 3, dc in each dc across with ch 1 between, turn.',
    'Ch 4 (counts as dc and ch 1), sk first dc, dc in each dc across with ch 1 between each, turn.',
  ])('are one fewer in a row: %s', (row) => {
    const text = `Ch 12.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (10 dc)\nRow 2: ${row}`
    expect(made(text)[1]).toBe(10)
    expect(spaces(text, 1)).toEqual({ 'ch-1': 9 })
  })
})

describe('a granny that ends in the corner where it began', () => {
  it.each([
    'rep from * around, ending last rep with 3 dc in beg sp, ch 2, join',
    'rep from * around, ending last rep with 3 dc in beg corner, ch 2, join',
    'rep from * around, ending with 3 dc in first sp, ch 2, join',
    'rep from * around, end with 3 dc in same sp as beg ch-3, ch 2, join',
    'rep from * 3 more times, ending last rep with (3 dc, ch 2) in beg corner, join',
  ])('%s', (end) => {
    const text = `Rnd 1: Ch 4, join. Ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12 dc)
Rnd 2: Sl st to ch-2 sp. Ch 3, 2 dc in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next sp; ${end}. (24 dc)
Rnd 3: Sl st in ch-2 sp. Ch 3, 2 dc in same sp, *3 dc in next ch-1 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp; ${end}. (36 dc)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12, 24, 36])
    expect(spaces(text, 1)).toEqual({ 'ch-1': 4, 'ch-2': 4 })
    expect(spaces(text, 2)).toEqual({ 'ch-2': 4 })
  })
})
