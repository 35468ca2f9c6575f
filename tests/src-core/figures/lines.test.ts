/** Where lines break: a count stays with what it counts. */
import { expect, it } from 'vitest'
import { breakLines, withoutOrphan } from '../../../src-core/figures/lines'
import type { MeasureText } from '../../../src-core/figures/figure'

/** Every letter one mm wide. */
const measure = ((text: string) => text.length) as MeasureText
const broken = (text: string, width: number) => breakLines(text, width, measure, 10)

it.each([
  ['3 tr in next sp, ch 1, turn', 19, 'ch 1,'],
  ['ss in corresponding ch-2 sp of neighbour', 24, 'ch-2 sp'],
  ['ss in corresponding 2-ch sp of neighbour', 24, '2-ch sp'],
  ['Work as for Rnd 4 above', 15, 'Rnd 4'],
  ['in each of next 6 ch-3 sps, turn', 24, 'ch-3 sps,'],
])('%s', (text, width, whole) => {
  const lines = broken(text, width)
  expect(lines.length).toBeGreaterThan(1)
  expect(lines.some((line) => line.includes(whole))).toBe(true)
  expect(lines.join(' ')).toBe(text)
})

it('a short word is not left alone on the last line of a paragraph, a number not torn from its unit for it', () => {
  const lines = broken('before the border of sc, 37 in with it.', 36)
  expect(lines).toEqual(['before the border of sc, 37 in with', 'it.'])
  expect(withoutOrphan(lines)).toEqual(['before the border of sc, 37 in', 'with it.'])
  expect(withoutOrphan(['a border that is as wide as 37 in', 'too.'])).toEqual([
    'a border that is as wide as',
    '37 in too.',
  ])
  // Long words, several, and lines of few words stay.
  for (const stays of [
    ['One skein is of this one', 'substitute.'],
    ['One skein is of this', 'one too.'],
    ['All cotton', 'too.'],
    ['Alone.'],
  ])
    expect(withoutOrphan(stays)).toEqual(stays)
})
