/** §patterns-corpus: the same work in the words of many hands, old and new, US and UK (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const US = { terms: 'US' } as const
const UK = { terms: 'UK' } as const
const told = (text: string, as: typeof US | typeof UK) => {
  const { rounds, findings } = readRounds(text, as)
  return {
    made: rounds.map(({ made }) => made),
    found: findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code),
  }
}

describe('stitches that signs bind go into one place', () => {
  it.each([
    ['(1 hdc + 1 dc in next st, sc in next st) 6 times', 18],
    ['*1 sc in next st, 1 hdc + 1 dc in the next st*, work *-* 6 times in total', 18],
    ['(sc + ch 2 + sc in next st, sc in next st) 6 times', 18],
    ['(sc + hdc + dc in next st, dc + hdc + sc in next st) x 6', 36],
    ['*1 sc in next st, 1 hdc plus 1 dc in next st; rep from * around', 18],
    ['(sc, hdc and dc in next st, sc in next st) 6 times', 24],
    ['*sc, ch 2, sc in next st, sc in next st; rep from * around', 18],
    ['*2 sc in next st + 1 sc in next st; rep from * around', 18],
  ])('%s', (words, made) => {
    const text = (count: number) =>
      `Rnd 1: Magic ring, 12 sc in ring; join.\nRnd 2: Ch 1, ${words}; join. (${count})`
    expect(told(text(made), US)).toEqual({ made: [12, made], found: [] })
    expect(told(text(made + 1), US).found).toEqual(['rounds/wrong-end-count'])
  })
})

describe('a sentence behind a repeat', () => {
  it.each([
    '1 sc in each of last 3 sts.',
    '1 sc in each remaining st.',
    '1 sc in each of the 3 sts that are left.',
    '1 sc in each st to end.',
  ])('is worked: %s', (words) => {
    const text = `Rnd 1: Magic ring, 12 dc in ring. Join. 12 dc.
Rnd 2: Ch 1. *2 sc in each of next 3 sts. Rep from * twice more. ${words} Join.`
    expect(told(`${text} 21 sc.`, US)).toEqual({ made: [12, 21], found: [] })
    expect(told(`${text} 20 sc.`, US).found).toEqual(['rounds/wrong-end-count'])
  })

  it.each([
    'In all, 24 treble.',
    'Altogether 24 treble.',
    'Thus 24 treble.',
    'The ring holds 24 treble.',
    'Now 24 treble are made.',
    'All in all 24 treble.',
  ])('is held to: %s', (words) => {
    const text = (said: string) => `Make 10 chain; form into a circle with a single stitch.
First Round. 3 chain for the first treble, 23 treble into the circle; join to the top of the chain. ${said}`
    expect(told(text(words), UK)).toEqual({ made: [24], found: [] })
    expect(told(text(words.replace('24', '25')), UK).found).toEqual(['rounds/wrong-end-count'])
  })
})

describe('a ring', () => {
  it.each([
    'Lay up 6 ch and close to a ring with 1 sl st.',
    'Make up 6 ch and close them to a circle with 1 ss.',
    'Make a chain of 6, and form it into a round by a single stitch.',
    'Commence with 6 chain, united into a circle.',
    'Cast on 6 chain; turn them into a ring with a single chain.',
  ])('%s', (words) => {
    expect(told(`${words}\n1st Round: 3 ch, 15 tr in ring, ss to top of 3 ch. (16 tr)`, UK)).toEqual({
      made: [16],
      found: [],
    })
  })
})

describe('the last repeat ends where it is marked', () => {
  it.each([
    'stopping the last repeat at **',
    'but stop at ** the last time',
    'the last time stopping at **',
    'leaving off at ** in last repeat',
    'end the 4th repeat at **',
    'omitting from ** to end on last repeat',
    'the final repeat finishes at **',
    'on last repeat work to ** only',
  ])('%s', (words) => {
    const text = (
      count: number,
    ) => `Rnd 1: Magic ring, ch 4 (first tr), 3 tr in ring, ch 4, *4 tr in ring, ch 4; repeat from * twice more; sl st in 4th ch. 16 tr.
Rnd 2: Ch 1, *sc in each of next 4 tr**, 3 sc in corner space, ch 1; repeat from * around, ${words}; 3 sc in last corner; sl st in first sc. ${count} sc.`
    expect(told(text(28), US)).toEqual({ made: [16, 28], found: [] })
    expect(told(text(29), US).found).toEqual(['rounds/wrong-end-count'])
  })

  it.each(['after every corner', 'between the corners', 'along each side'])(
    'work from * to ** %s',
    (words) => {
      const text = `Rnd 1: Magic ring, (4 tr in ring, ch 4) 4 times; sl st in first tr. 16 tr.
Rnd 2: Sl st to ch-4 sp, ch 1, 3 sc in same sp, *sc in each of next 4 tr**, 3 sc in corner space; work from * to ** ${words}; sl st in first sc. 28 sc.`
      expect(told(text, US)).toEqual({ made: [16, 28], found: [] })
    },
  )
})

it.each([
  'until seven more spokes are made besides the first, miss the last 2 treble',
  'until you have 7 more spokes, miss last 2 treble',
  'until there are eight spokes in all, miss 2',
])('a repeat goes on %s', (words) => {
  const text = `Rnd 1: Magic ring, 24 treble, join. 24 treble.
Rnd 2: 6 chain (a treble and 3 chain), * miss 2 treble, 1 treble upon the next, 3 chain; repeat from * ${words}, and join to the third of the 6 chain. 8 treble.`
  expect(told(text, UK)).toEqual({ made: [24, 8], found: [] })
})

describe('what goes into every space', () => {
  it.each([
    'Into every one of the eight spaces work 1 d.c., 5 tr., 1 d.c.',
    'In each of these spaces work 1 d.c., 5 tr., 1 d.c.',
    'Into each and every space 1 d.c., 5 tr., 1 d.c.',
    'Into each successive space 1 d.c., 5 tr., 1 d.c.',
    '1 d.c., 5 tr., 1 d.c., into every space',
    'Work 1 d.c., 5 tr., 1 d.c., all into each space',
    '1 d.c., 5 tr., 1 d.c. into every one of the spaces',
  ])('%s', (words) => {
    const text = (
      count: number,
    ) => `1st Round: 12 ch., ss to form ring, (3 d.c., 2 ch.) 8 times into ring; ss to first d.c.
2nd Round.—${words}; unite to the first d.c. (${count})`
    expect(told(text(56), UK)).toEqual({ made: [24, 56], found: [] })
    expect(told(text(57), UK).found).toEqual(['rounds/wrong-end-count'])
  })

  it('is not guessed where the words do not name it', () => {
    const text = `1st Round: 12 ch., ss to form ring, (3 d.c., 2 ch.) 8 times into ring; ss to first d.c.
2nd Round.—Into every one of these work 1 d.c., 5 tr., 1 d.c.; unite to the first d.c.`
    expect(told(text, UK)).toEqual({ made: [24, null], found: ['rounds/not-read'] })
  })
})

describe('yarn joined in the loops that an earlier round left', () => {
  it.each([
    'Green, join in an unused back loop of Rnd 2, petals pushed forward',
    'Join green in an unused back loop of Rnd 2.',
    'With green, join in any free back loop of Rnd 2, holding the petals forward.',
    'Fold petals forward and join green to a back loop left from Rnd 2.',
    'Now join green in one of the unworked back loops of Rnd 2.',
    'Working behind the petals, join green in an unworked back loop of round 2',
    'Join green in the leftover back loops of Rnd 2, behind the petals.',
  ])('%s', (words) => {
    const text = `Rnd 1: MR, 5 sc [5]
Rnd 2: inc × 5 [10]
Rnd 3: FLO (sc & hdc in next st, dc + hdc + sc in next st) × 5 [25]
Sl st, cut.
${words}
Rnd 4: BLO inc × 10 [20]`
    expect(told(text, US)).toEqual({ made: [5, 10, 25, 20], found: [] })
    // Without the words the loops are not free.
    expect(told(text.replace('FLO ', ''), US).found).toContain('rounds/loop-already-used')
  })
})

it.each([
  'but in last pattern work 1dc in the last dc instead of missing it',
  'but in the last repeat work 1dc in last dc',
  'on the last set 1dc in last dc',
])('the last lap is put differently: %s', (words) => {
  const text = (count: number) => `Make 38ch.
1st row: 1dc in 2nd ch from hook, 1dc in each ch to end, turn. (37dc)
2nd row: 1ch, 1dc in first dc, *miss 2dc, (2tr, 2ch, 2tr) in next dc, miss 2dc, 1dc in next dc; rep from * to end, turn. (24tr, 7dc)
3rd row: 1ch, 1dc in first dc, *1dc in each of next 2tr, 2dc in 2ch sp, 1dc in each of next 2tr, miss next dc; rep from * to end, ${words}. (${count}dc)`
  expect(told(text(38), UK)).toEqual({ made: [37, 31, 38], found: [] })
  expect(told(text(37), UK).found).toEqual(['rounds/wrong-end-count'])
})

it.each([
  'Just the same as Row 2',
  'Exactly like Row 2',
  'A repeat of Row 2',
  'This row is the same as Row 2',
  'Make another row like Row 2',
  'Do what you did in Row 2',
  'The same again',
  'One more row the same',
  'Ditto',
])('a row is worked again: %s', (words) => {
  const text = (
    count: number,
  ) => `Row 1: Make 5ch. Work 1dc into the 2nd ch from the hook, dc in each ch. (4 sts)
Row 2: 1ch, turn, 2dc in the first stitch, dc in each st to last st, 2dc in the last stitch. (6 stitches)
Row 3: ${words}. (${count} sts)`
  expect(told(text(8), UK)).toEqual({ made: [4, 6, 8], found: [] })
  expect(told(text(9), UK).found).toEqual(['rounds/wrong-end-count'])
})

it.each([
  'until one is left',
  'until there is 1 st left',
  'until 1 st remains',
  'until the last one',
  'to within 1 st of the end',
  'except the last',
])('stitches go on %s', (words) => {
  const text = (
    last: number,
  ) => `Row 1: Make 5ch. Work 1dc into the 2nd ch from the hook, dc in each ch. (4 sts)
Row 2: 1ch, turn, 2dc in the first stitch, dc in each st ${words}, ${last}dc in the last stitch. (6 sts)`
  expect(told(text(2), UK)).toEqual({ made: [4, 6], found: [] })
  expect(told(text(3), UK).found).toEqual(['rounds/wrong-end-count'])
})

it('terse hands leave "in" out, and say of a chain that it is nothing', () => {
  const text = (last: number) => `3ch at start = tr. 1ch at start = nothing. All rnds end ss to 1st st.
6ch, ss, ring.
1. 3ch, 15tr in ring. (16)
2. 3ch, tr same st, 2tr ea tr. (32)
3. 1ch, *dc nxt 2, htr nxt, (2tr, 2ch, 2tr) nxt, htr nxt, dc nxt 3* x4. (44)
4. 3ch, tr nxt 4, *(2tr, 2ch, 2tr) 2chsp, tr nxt 11* x3, (2tr, 2ch, 2tr) 2chsp, tr last ${last}. (60 + 4 x 2ch)`
  expect(told(text(6), UK)).toEqual({ made: [16, 32, 44, 60], found: [] })
  expect(told(text(7), UK).found).not.toEqual([])
})

it('a verb at the end of a text works nothing', () => {
  expect(() => readRounds('sc working', US)).not.toThrow()
})
