/** Where lines break: a count stays with what it counts. */
import { expect, it } from 'vitest'
import { breakLines } from '../../../src-core/figures/lines'
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
