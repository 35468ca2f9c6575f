/** A group that the text gives a name, and places whose chains alone are named (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string) => readRounds(text, { terms: 'US' })
const told = (text: string) => read(text).findings.map(({ code, message }) => `${code} ${message}`)
const counts = (text: string) => read(text).rounds.map(({ made, spaces }) => [made, spaces])

const ROUND_1 =
  'Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join. (12 dc)'
const SQUARE = [
  [12, { 'ch-2': 4 }],
  [28, { 'ch-2': 4 }],
  [40, {}],
]
const round2 = (first: string, other: string) =>
  `Rnd 2: Ch 3, dc in next 2 dc, ${first}, *dc in next 3 dc, ${other}; rep from * 2 more times; join. (28 dc, 4 corners)
Rnd 3: Ch 1, sc in each dc and 3 sc in each corner; join. (40 sc)`

/** Where the corner is explained before the rounds, and how the rounds ask for it. */
const EXPLAINED = [
  'Corner = (2 dc, ch 2, 2 dc) in corner sp.',
  'Notes\nCh 3 counts as dc. Corner = (2 dc, ch 2, 2 dc) in corner sp.',
  'Notes\n1. Ch 3 counts as first dc.\n2. Corner = (2 dc, ch 2, 2 dc) in next sp.',
  'Special stitch: corner = (2 dc, ch 2, 2 dc) in ch-2 sp.',
  'Special stitches\nCorner: (2 dc, ch 2, 2 dc) in next sp.',
  'Abbreviations: ch = chain; corner = (2 dc, ch 2, 2 dc) in next sp; dc = double crochet.',
]
const ASKED = ['corner', 'corner in next ch-2 sp', 'work corner in corner sp', 'corner in next ch-2']

describe('A corner that the text explains', () => {
  for (const before of EXPLAINED)
    it.each(ASKED)(`is worked as told: ${before.split('\n').at(-1)} … %s`, (asked) => {
      const text = `${before}\n\n${ROUND_1}\n${round2(asked, asked)}`
      expect(told(text)).toEqual([])
      expect(counts(text)).toEqual(SQUARE)
    })

  it.each([
    'in next ch-2 sp work 2 dc, ch 2, 2 dc (corner made)',
    '(2 dc, ch 2, 2 dc) in next sp (corner made)',
    '(2 dc, ch 2, 2 dc) in next sp for corner',
    'in next ch-2 make 2 dc, ch 2 and 2 dc for corner',
    'in next ch-2 sp work 2 dc, ch 2, 2 dc (first corner made)',
  ])('is what was made where it was first named: %s', (first) => {
    for (const asked of ASKED.slice(1)) {
      const text = `${ROUND_1}\n${round2(first, asked)}`
      expect(told(text)).toEqual([])
      expect(counts(text)).toEqual(SQUARE)
    }
  })

  it('is a place and a count as before where the text makes one thing of it', () => {
    const text = `Corner = (2 dc, ch 2, 2 dc) in corner sp.\n\n${ROUND_1}\n${round2('corner', 'corner')}`
    expect(told(text.replace('(40 sc)', '(41 sc)'))).toHaveLength(1)
  })
})

const LOOPS =
  'Rnd 1: In magic ring, ch 1, 12 sc, join. (12 sc)\nRnd 2: Ch 1, *sc in next sc, ch 3, sk 1 sc; rep from * around; join. (6 ch-3 lps)'
const PLACES = [
  'Into each 3 ch sp',
  'Into each loop of 3 ch',
  'Under each 3 ch',
  'In each ch-3',
  'In every space',
  'In every ch-3 loop',
  'Into each ch-3 loop',
]
const WORDS = [
  ' work (1 sc, 3 dc, 1 sc)',
  ' work 1 sc, 3 dc and 1 sc',
  ': 1 sc, 3 dc, 1 sc',
  ' make (sc, 3 dc, sc)',
]

describe('A place before what goes into it', () => {
  for (const place of PLACES)
    it.each(WORDS)(`holds all of it: ${place}%s`, (words) => {
      const text = `${LOOPS}\nRnd 3: ${place}${words}; join. (30 sts)`
      expect(told(text)).toEqual([])
      expect(counts(text)[2]![0]).toBe(30)
      expect(told(text.replace('30 sts', '36 sts'))).toHaveLength(1)
    })

  it('is missed where there are no such chains', () => {
    expect(told(`${LOOPS}\nRnd 3: Under each 5 ch work 3 dc; join.`)).toHaveLength(1)
    expect(told(`${LOOPS}\nRnd 3: In each ch-5 work 3 dc; join.`)).toHaveLength(1)
  })

  it.each([
    'dc in every dc, and in each corner work 2 dc, ch 2, 2 dc',
    'dc in each dc, in each corner sp work 2 dc, ch 2 and 2 dc',
    'dc in the top of every dc and (2 dc, ch 2, 2 dc) in each ch-2 sp',
  ])('goes around together with the stitches: %s', (words) => {
    const text = `${ROUND_1}\nRnd 2: Ch 3, ${words}; join. (28 dc)`
    expect(told(text)).toEqual([])
    expect(counts(text)).toEqual(SQUARE.slice(0, 2))
  })
})

describe('A count with what falls to a side', () => {
  it.each([
    '[28 dc; 7 per side]',
    '(28 dc - 7 per side)',
    '— 28 dc, 7 on each side',
    '[28 dc; 7 dc per side]',
  ])('is that of the round: %s', (count) => {
    const again = (words: string) =>
      `${ROUND_1}\nRnd 2: Ch 3, dc in each dc and (2 dc, ch 2, 2 dc) in each sp; join. ${words}`
    expect(told(again(count))).toEqual([])
    expect(told(again(count.replace('28', '30')))).toHaveLength(1)
  })

  it.each(['Rep Rnd 2. 44 dc. Fasten off.', 'Work as for Rnd 2. 44 dc.', 'As Rnd 2. [44 dc; 11 per side]'])(
    'is told behind a round that is worked again: %s',
    (words) => {
      const text = `${ROUND_1}\nRnd 2: Ch 3, dc in each dc and (2 dc, ch 2, 2 dc) in each sp; join. (28 dc)\nRnd 3: ${words}`
      expect(told(text)).toEqual([])
      expect(counts(text)[2]).toEqual([44, { 'ch-2': 4 }])
      expect(told(text.replace('44', '48'))).toHaveLength(1)
    },
  )
})

describe('Rounds in one paragraph', () => {
  it.each([
    ['1st rd.:', '2nd rd.:', '3rd rd.:'],
    ['1st round.—', '2nd round.—', '3rd round.—'],
    ['1st rnd:', '2nd rnd:', '3rd rnd:'],
    ['1st Row.—', '2nd Row.—', '3rd Row.—'],
  ])('are taken apart at %s', (first, second, third) => {
    const text = `Make 4 ch., join into a ring. ${first} 3 ch. (counts as 1 dc), 11 dc into ring, s.s. to top of 3 ch. ${second} 3 ch., 1 dc in same place, 2 dc in each dc, s.s. to top of 3 ch. ${third} 1 ch., 1 sc into every dc. Fasten off.`
    expect(told(text)).toEqual([])
    expect(counts(text).map(([made]) => made)).toEqual([12, 24, 24])
  })
})
