/** One unread phrase or one slip is told where it stands, and not again in every later round. Common practice, no source. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  const told = findings.map(({ code, target }) => `${target?.round ?? 0} ${code.replace('rounds/', '')}`)
  return { told, made: rounds.map(({ made }) => made) }
}

const RING = 'Rnd 1: Magic ring, ch 1, 6 sc in ring; join. (6 sc)\n'

describe('a round that is taken as the text counts it', () => {
  const UNREAD = `${RING}Rnd 2: Ch 1, sc in next 2 sts, work the fancy bit as drawn; join. (24 sc, 6 ch-2 sps)\n`

  it('gives the spaces that the text states, too', () => {
    const { told, made } = read(`${UNREAD}Rnd 3: Ch 1, 5 sc in each ch-2 sp around; join. (30 sc)`)
    expect(told).toEqual(['2 taken-as-stated'])
    expect(made).toEqual([6, 24, 30])
  })

  it.each([
    'Ch 1, 5 sc in each ch-3 sp around; join. (30 sc)',
    'Ch 1, sc in each sc around, working (sc, ch 1, sc) in each corner; join. (30 sc)',
    'Sl st in next ch-5 lp, ch 1, (sc, 3 dc, sc) in same lp and in each lp around; join. (30 sts)',
  ])('of whose spaces nothing is known brings no error in "%s"', (round) => {
    const { told, made } = read(
      `${RING}Rnd 2: Ch 1, sc in next 2 sts, work the fancy bit as drawn; join. (24 sc)\nRnd 3: ${round}\nRnd 4: Ch 1, sc in each st around; join. (30 sc)`,
    )
    expect(told).toEqual(['2 taken-as-stated'])
    expect(made).toEqual([6, 24, 30, 30])
  })

  it('is still checked by its count', () => {
    const { told } = read(
      `${UNREAD}Rnd 3: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * 4 more times; join. (30 sc)`,
    )
    expect(told).toContain('3 too-many-used')
    expect(
      read(`${UNREAD}Rnd 3: Ch 1, *sc in next 4 sts, 2 sc in next st; rep from * around; join. (30 sc)`).told,
    ).toEqual(['2 taken-as-stated', '3 repeat-does-not-fit'])
  })
})

it('a round that comes out otherwise than stated brings no errors in those that fit what is stated', () => {
  const { told, made } = read(`${RING}Rnd 2: Ch 1, 2 sc in each of first 3 sts; join. (12 sc)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * 5 more times; join. (18 sc)
Rnd 4: Ch 1, *sc in next 2 sts, 2 sc in next st; rep from * 5 more times; join. (24 sc)`)
  expect(new Set(told.map((words) => words[0]))).toEqual(new Set(['2']))
  expect(made.slice(2)).toEqual([18, 24])
})

it('a wrong count at the end is told alone where later rounds fit the stitches', () => {
  const { told, made } = read(`${RING}Rnd 2: Ch 1, 2 sc in each st around; join. (14 sc)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * 5 more times; join. (18 sc)`)
  expect(told).toEqual(['2 wrong-end-count'])
  expect(made).toEqual([6, 12, 18])
})

describe('words said of what is worked', () => {
  const SECOND = 'Ch 1, 2 sc in each st around'
  it.each([
    `${SECOND}, the last sc goes where the round started; join`,
    `${SECOND}, not into the tops; join`,
    `${SECOND}, the one you began with included; join`,
    `${SECOND}; join. Make it as big as your pan`,
    `${SECOND}; sl st as before`,
    `${SECOND}; sl st as usual`,
    `${SECOND}; sl st as in Rnd 1`,
    `${SECOND}; slip stitch in the same way`,
    `${SECOND}; sl st, cut`,
    'Ch 1, 2 sc loosely in each st around; join',
  ])('are no work: %s', (round) => {
    const { told, made } = read(
      `${RING}Rnd 2: ${round}. (12 sc)\nRnd 3: Ch 1, sc in each st around; join. (12 sc)`,
    )
    expect(told).toEqual([])
    expect(made).toEqual([6, 12, 12])
  })
})

const SQUARE = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of ch-3. (12 dc)\n`

describe('stitches that are named besides', () => {
  it.each([
    'Ch 1, sc in each dc around, with 3 sc in each ch-2 sp; join',
    'Ch 1, sc in each dc, having 3 sc in each corner sp; join',
    'Ch 1, sc in each dc around with 3 sc in each corner; join',
  ])('are worked: %s', (round) => {
    expect(read(`${SQUARE}Rnd 2: ${round}. (24 sc)`)).toEqual({ told: [], made: [12, 24] })
  })
})

describe('a space called by its chains alone', () => {
  it.each([
    'into the 2 ch. work 2 tr., 2 ch., 2 tr.',
    'work 2 tr., 2 ch., 2 tr. into the 2 ch.',
    '(2 tr., 2 ch., 2 tr.) into the 2 ch.',
  ])('is the space in old UK print: %s', (corner) => {
    const text = `Make 4 ch. and join in a circle.
Row 1.—3 ch. (counting as 1 tr.), 2 tr. into circle, * 2 ch., 3 tr. into circle. Repeat from * twice, 2 ch., slip-stitch to the 3rd of 3 ch. (12 tr.)
Row 2.—3 ch., 1 tr. into each of the next 2 tr., ${corner}, * 1 tr. into each of the next 3 tr., ${corner}. Repeat from * twice, slip-stitch as before. (28 tr.)`
    const { told, made } = read(text, 'UK')
    expect(told.filter((words) => words !== '2 group-without-brackets')).toEqual([])
    expect(made).toEqual([12, 28])
  })
})

describe('chains of which some stand for a stitch', () => {
  it.each([
    '(3 of these stand for a treble)',
    '(3 of which count as 1 tr)',
    '(the first 3 count as a tr)',
    '(of these 3 stand for the first treble)',
  ])('leave the others as a space: %s', (said) => {
    const text = `Rnd 1: 8 ch, ss to form a ring, 3 ch (counts as tr), 23 tr in ring; ss to 3rd of 3 ch. (24 tr)
Rnd 2: 5 ch ${said}, * miss 1 tr, 1 tr in next tr, 2 ch; rep from * ten times more; ss to 3rd of 5 ch. (12 tr)
Rnd 3: 4 dc in each sp around; ss to first dc. (48 dc)`
    expect(read(text, 'UK')).toEqual({ told: [], made: [24, 12, 48] })
  })
})

describe('a mesh whose last space spans what each repeat skips first', () => {
  it.each(['Join to 3rd ch of ch-4', 'Join', 'Join with sl st to 3rd ch'])('closes with "%s"', (join) => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 23 dc in ring; join. (24 dc)
Rnd 2: Ch 4 (counts as dc and ch 1), * skip next dc, dc in next dc, ch 1. Repeat from * around. ${join}. (12 sps)`
    expect(read(text)).toEqual({ told: [], made: [24, 12] })
  })
})

it.each(['R3 Back to normal, into the tops: 1 dc', 'R3 now with a smaller hook: dc'])(
  'R3 begins a round whatever follows: %s',
  (head) => {
    const text = `R1 Magic ring, 6 dc in ring, ss in first dc. 6dc
R2 2dc in each dc, ss in first dc. 12dc
${head} in each dc, ss in first dc. 12dc`
    expect(read(text, 'UK').made).toEqual([6, 12, 12])
  },
)
