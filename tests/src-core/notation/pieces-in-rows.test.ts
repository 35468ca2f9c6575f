/** Pieces in rows: their sides, the chain under them, and petals in rows on a round (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => readRounds(text, { terms })
const told = (text: string, terms: 'US' | 'UK' = 'US') =>
  read(text, terms)
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ code, message }) => `${code} ${message}`)
const made = (text: string, terms: 'US' | 'UK' = 'US') => read(text, terms).rounds.map((round) => round.made)

const FLAG =
  'Ch 2.\nRow 1: 3 sc in 2nd ch from hook. (3)\nRow 2: Ch 1, turn. 2 sc in first st, sc in next, 2 sc in last. (5)\nRow 3: Ch 1, turn. 2 sc in first st, sc in next 3, 2 sc in last. (7)\nEdging: Ch 1, turn. 3 sc in first st, sc in next 5, 3 sc in last st'
const BLOCK =
  'Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\nRow 2: Ch 1, turn, sc in each sc across. (11 sc)\nRow 3: Ch 1, turn, sc in each sc across. (11 sc)\n'

describe('The sides of rows', () => {
  it.each([
    '; down the side put 1 sc in the end of each of the 3 rows; 3 sc in the bottom ch; then 1 sc in the end of each of the 3 rows up the other side. Sl st to first sc.',
    ', sc in next 3 row ends, 3 sc in ch at point, sc in next 3 row ends, join.',
    ', sc in each row-end to point, 3 sc in point, sc in each row-end to top, join.',
    ', 3 sc evenly along side, 3 sc in base ch, 3 sc evenly along second side, sl st in first sc.',
    ', 1 sc in the side of each row down to the point, 3 sc in the point, 1 sc into the side of each row up to the top, sl st in first sc.',
    ', work 1 sc in each row down the side, 3 sc in the tip, work 1 sc in each row up the other side, sl st in first sc.',
    ', 3 sc down the side, 3 sc in the foundation ch, 3 sc up the other side, join.',
    ', sc in ends of next 3 rows, 3 sc in bottom ch, sc in ends of next 3 rows, join.',
    ', sc in end of every row, 3 sc in tip, sc in end of every row, join.',
  ])('are worked along%s', (side) => {
    expect(told(`${FLAG}${side} (20)`)).toEqual([])
    expect(made(`${FLAG}${side} (20)`)).toEqual([3, 5, 7, 20])
    expect(told(`${FLAG}${side} (21)`)).toHaveLength(1)
  })

  it('have as many ends as there are rows', () => {
    const side = (rows: number) =>
      `${FLAG}, sc in end of each of next ${rows} rows, 3 sc in base ch, sc in end of each of next 3 rows, join.`
    expect(told(side(3))).toEqual([])
    expect(told(side(4))).toHaveLength(1)
  })

  it.each([
    'Border: Ch 1, turn, 3 sc in first sc, sc in next 9 sc, 3 sc in last sc; sc in end of each of next 3 rows; working in opposite side of foundation ch, 3 sc in first ch, sc in next 9 ch, 3 sc in last ch; sc in end of each of next 3 rows; sl st in first sc. (36 sc)',
    'Border: Ch 1, turn, 3 sc in first sc, sc in next 9 sc, 3 sc in last sc; 3 sc evenly down the side; along the bottom edge of the foundation chain 3 sc in first ch, sc in next 9 ch, 3 sc in last ch; 3 sc evenly up the other side; join. (36 sc)',
    'Border: Ch 1, turn, 2 sc in first sc, sc in next 9 sc, 2 sc in last sc, sc evenly down the side working 1 sc in each row end, 2 sc in corner, sc in each of next 9 ch along the foundation edge, 2 sc in corner, sc in each row end, join. (32 sc)',
  ])('and the chain under them', (border) => {
    expect(told(BLOCK + border)).toEqual([])
    expect(told((BLOCK + border).replace(/next 9 ch/, 'next 13 ch'))).not.toEqual([])
  })

  it('are none of a round', () =>
    expect(told('Rnd 1: 6 sc in magic ring, join. (6)\nRnd 2: Ch 1, sc in each row end, join.')).toHaveLength(
      1,
    ))
})

describe('Petals in rows on a round', () => {
  const center =
    'Rnd 1: Magic ring, ch 1, 5 sc in ring, join. [5]\nRnd 2: Ch 1, 2 sc in each st, join. [10]\nRnd 3: Ch 1, 2 sc in each st, join. [20]\n\n'
  const rows = (title: string, first: string, rest: string) =>
    `${center}${title}\nRow 1: ${first} [4]\nRow 2: Ch 1, turn, sc in each st. [4]\nRow 3: Ch 1, turn, sc2tog twice. [2] Fasten off.${rest}`
  it.each([
    rows(
      'Points (rows, worked five times)',
      'Ch 1, sc in the next 4 sts of Rnd 3 (the first point starts in the same st as the join). Leave the rest.',
      '\nAttach yarn in the next free st of Rnd 3 for each of the other 4 points.',
    ),
    rows('Petal (make 5)', 'Join yarn in any st of Rnd 3, ch 1, sc in same st, sc in next 3 sts.', ''),
    rows(
      'First petal',
      'Ch 1, sc in first 4 sts, leaving remaining sts unworked.',
      '\nNext 4 petals: Join yarn in next unworked st of Rnd 3 and work as first petal.',
    ),
    rows(
      'Petals (make 5, working to and fro)',
      'Ch 1, sc in next 4 sc of Rnd 3.',
      '\nFor each of the other 4 petals, join yarn with RS facing in next unworked sc of Rnd 3 and rep Rows 1-3.',
    ),
    rows(
      'Petals',
      'Ch 1, sc in first 4 sts.',
      '\nJoin the yarn to the next free sc of the center and work four more petals in the same manner, each over 4 sc.',
    ),
  ])('%#', (text) => {
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([5, 10, 20, 4, 4, 2])
  })

  it('stand all round behind them', () => {
    const text = (petals: number, all: number) =>
      `${rows(`Petals (make ${petals})`, 'Ch 1, sc in next 4 sc of Rnd 3.', '')}\n\nEdging\nJoin contrast at base of any petal. *Sc in the end of each of 3 rows up side of petal, sc in each of 2 sts at tip, sc in the end of each of 3 rows down other side; rep from * around, join with sl st in first sc. (${all} sc)`
    expect(told(text(5, 40))).toEqual([])
    expect(told(text(4, 32))).toEqual([])
    expect(told(text(5, 41))).toHaveLength(1)
    // Six petals over 4 sts are more than the round has.
    expect(told(text(6, 48))).toHaveLength(1)
  })
})

describe('A decrease', () => {
  it.each(['take 2 sc together', 'take the next 2 sts together', 'sc 2 together'])('%s', (words) =>
    expect(
      made(
        `Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across. (6)\nRow 2: Ch 1, turn, ${words}, sc in next 2 sts, ${words}. (4 sts)`,
      ),
    ).toEqual([6, 4]),
  )
})
