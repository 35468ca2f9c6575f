/** Endings of repeats, and rounds that go on where yarn is joined to an older one. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const read = (text: string, terms: 'US' | 'UK' = 'US') => readRounds(text, { terms })
const slips = (text: string, terms: 'US' | 'UK' = 'US') =>
  read(text, terms).findings.flatMap(({ code, severity }) => (severity === 'note' ? [] : [code]))

const SQUARE =
  'Rnd 1: In magic ring, ch 3 (counts as dc), 11 dc, join. (12 dc)\n' +
  'Rnd 2: Ch 1, sc in first st, *(sc, ch 2, sc) in next st, sc in next 2 sts; rep from * 3 more times, omitting last st, join. (16 sc, 4 ch-2 sps)\n'
const SIDE = 'Rnd 3: Ch 1, sc in first 2 sts, *(2 sc, ch 2, 2 sc) in next ch-2 sp, sc in each of next 4 sts; '

describe('The last repeat of a square that begins in the middle of a side', () => {
  it.each([
    'rep from * 3 more times, omitting last 2 sc, join.',
    'rep from * 3 more times, omitting last 2 sts of last rep, join.',
    'rep from * 3 more times, leaving off the last 2 sts on the last rep, join.',
    'rep from * around, omitting last two sc, join.',
    'rep from * around, ending last rep with sc in each of last 2 sts, join.',
    'rep from * 3 times more, ending last repeat with sc in last 2 sts. Join.',
  ])('takes the stitches off that are named: %s', (ending) => {
    const text = `${SQUARE}${SIDE}${ending} (32 sc, 4 ch-2 sps)`
    expect(slips(text)).toEqual([])
    expect(read(text).rounds[2]).toMatchObject({ made: 32, spaces: { 'ch-2': 4 } })
  })
})

describe('Yarn that is joined to an older round', () => {
  const FLOWER =
    'Rnd 1: In magic ring, ch 1, 12 sc, join. (12 sc)\n' +
    'Rnd 2: In FLO, *sl st in next st, (ch 3, 2 dc, ch 3, sl st) in next st; rep from * around. Fasten off. (6 petals)\n'

  it.each([
    'Rnd 3: Join blue in back loop of any st of Rnd 1, ch 1, working behind petals, 2 sc in each st around, join. (24 sc)',
    'Rnd 3: Working behind the front petals in the back loops of Rnd 1, join blue with sc in any st, sc in same st, 2 sc in each st around, join. (24 sc)',
    'Rnd 3: Join blue with sl st in back loop of any sc of Rnd 1. Ch 1, *2 sc in back loop of next st; rep from * 11 more times, join. (24 sc)',
  ])('is where the round goes on: %s', (round) => {
    expect(slips(FLOWER + round)).toEqual([])
    expect(read(FLOWER + round).rounds[2]).toMatchObject({ made: 24, source: 1 })
  })
})

describe('A spiral steps down behind its last round', () => {
  const bowl = (words: string) =>
    `Rnd 1: 7 hdc in magic ring. (7)\nRnd 2: 2 hdc in each st around. (14)\n${words}`

  it.each([
    'Rnds 3 and 4: Hdc in each st around. (14)\nSc in next st, sl st in next st, fasten off.',
    'Rnds 3-4: Hdc in each st around. (14) To finish, sc in next 2 sts, sl st in next 2 sts. Fasten off.',
    'Rnds 3-4: Hdc in each st around. (14) Sc, sl st, fasten off.',
  ])('%s', (words) => {
    expect(told(bowl(words))).toEqual([])
    expect(made(bowl(words))).toEqual([7, 14, 14, 14])
  })

  it('and a stitch too many is told where none of this is said', () => {
    expect(told(bowl('Rnd 3: Hdc in each st around, hdc in next st. (14)'))).not.toEqual([])
  })
})
