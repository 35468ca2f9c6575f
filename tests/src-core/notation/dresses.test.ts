/**
 * One square of four rounds in the dresses that patterns wear: how a ring is begun, a round named, joined, counted, a
 * repeat told. Each dress alone, then many together: never a finding, and always the same stitches. (Common practice,
 * no source.)
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { runs } from '../../runs'

/** The first of each is what the others are tried with. */
const DRESSES = {
  page: [
    '',
    'Sunny Square\n\n',
    'Special Stitch\nPicot: Ch 3, sl st in first ch.\n\n',
    'Notes: Ch 3 at the beginning of a round counts as a dc.\n\n',
  ],
  label: [
    'Rnd #: ',
    'Round #: ',
    'Rnd # (RS): ',
    'Rnd #. ',
    'Rd #: ',
    'R #: ',
    '#. ',
    'ROUND # – ',
    'Rnd # (with B): ',
  ],
  ring: [
    'Ch 4, join with sl st to form ring.',
    'Ch 4, sl st in first ch to form a ring.',
    'Make a magic ring.',
    'With A, ch 4; join with sl st in first ch to form ring.',
    'Using color A, make an adjustable ring.',
    'With color A and 4 mm hook, ch 4 and join into a ring with a sl st.',
    'Foundation: ch 4, join.',
    'Start: magic ring (or ch 4 and join).',
    'Ch 4, join in ring.',
  ],
  three: [
    'Ch 3 (counts as dc)',
    'Ch 3 (counts as first dc)',
    'Ch-3 (counts as a dc)',
    'Ch 3 – counts as first dc',
    'Beg ch-3 (counts as dc)',
    'Chain 3 (first dc made)',
    '3 ch (= 1 dc)',
  ],
  first: ['dc 11 in ring', '11 dc into ring', 'work 11 dc into the ring', '11 more dc in ring'],
  closing: [
    'join with sl st in top of beg ch-3',
    'sl st to top of beginning ch-3',
    'join with a slip stitch to the third chain of the beginning ch-3',
    'join',
    'sl st in 3rd ch of ch-3 to join',
    'join with sl st to first dc',
    'invisible join',
    'slip stitch to beginning chain 3',
    'sl st into 3rd of 3 ch',
  ],
  stop: ['. ', ' ', '; ', ' – ', ' — ', ': '],
  twelve: [
    '(12 dc)',
    '12 dc.',
    '12 sts',
    'You should have 12 dc.',
    '(12)',
    '{12 dc}',
    '12 double crochets.',
    'Total: 12 dc',
    '12 dc made.',
    '-12 dc',
    '= 12 dc',
    '(12 dc, counting ch-3 as dc)',
    '12 dc, including beg ch-3.',
    'There are 12 dc.',
    '',
  ],
  leaving: [
    '',
    ' Fasten off.',
    ' Cut yarn.',
    ' Break yarn and fasten off.',
    ' Change to B.',
    ' Do not turn.',
  ],
  spaced: [
    'Ch 4 (counts as dc and ch 1), *dc in next dc, ch 1; rep from * around',
    'Ch 4 (counts as dc, ch-1), (dc in next dc, ch 1) around',
    'Ch 4 (counts as dc + ch 1), * dc in next dc, ch 1 * repeat from * to * around',
    'Ch 4 (dc and ch 1), *dc in next st, ch 1*, rep *–* to end',
    'Ch 4 (counts as dc and ch-1). Dc, ch 1 in each st around',
    'Ch 4 (counts as dc, ch 1). *Dc in next dc, ch 1. Repeat from * 10 more times',
    'Ch 4 (counts as dc, ch 1), (dc, ch 1) in each dc around',
    'Ch 4, dc in next dc, *ch 1, dc in next dc; rep from * 9 times more, ch 1',
  ],
  twice: [
    '(12 dc, 12 ch-1 sps)',
    '12 dc and 12 ch-1 spaces',
    '(24 sts)',
    '12 ch-1 sps.',
    '12 dc + 12 ch sps',
    '(12 dc & 12 ch-1)',
    'Total: 12 dc, 12 chain spaces.',
    '',
  ],
  cornered: [
    'Sl st in next ch-1 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *3 dc in each of next 2 ch-1 sps, (3 dc, ch 2, 3 dc) in next ch-1 sp; rep from * 2 more times, 3 dc in each of last 2 ch-1 sps',
    'Attach B to any ch-1 sp with a sl st; ch 3 (counts as dc), in same sp work (2 dc, ch 2, 3 dc); *3 dc in each of next 2 ch-1 sps; in next ch-1 sp work (3 dc, ch 2, 3 dc); rep from * 2 times; 3 dc in each of last 2 ch-1 sps',
    'Standing dc in any ch-1 sp, (2 dc, ch 2, 3 dc) in same sp, *(3 dc in next ch-1 sp) x 2, (3 dc, ch 2, 3 dc) in next ch-1 sp; rep from * x 2 more, (3 dc in next ch-1 sp) x 2',
    'With B, join in any ch-1 sp. Ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp. *3 dc in next 2 sps, (3 dc, ch 2, 3 dc) in next sp. Rep from * twice more, 3 dc in next 2 sps',
  ],
  corners: [
    '(48 dc, 4 ch-2 sps)',
    '48 dc, 4 corner ch-2 sps.',
    '(16 3-dc groups, 4 ch-2 corners)',
    '48 dc, 4 pretty corner spaces',
    '48 dc and 4 corners.',
    '12 dc per side, 4 ch-2 corner spaces',
    '[12 dc on each side]',
    '',
  ],
  edge: [
    'Ch 1, sc in same st, sc in next 2 dc, (2 sc, ch 2, 2 sc) in ch-2 sp, *sc in next 12 dc, (2 sc, ch 2, 2 sc) in ch-2 sp; rep from * 2 more times, sc in last 9 dc',
    'Ch 1, sc in same st and in each dc around, working (2 sc, ch 2, 2 sc) in each ch-2 sp',
    'Ch 1, sc in first 3 dc, *(2 sc, ch 2, 2 sc) in next corner, sc in each of next 12 dc; rep from * to last corner, (2 sc, ch 2, 2 sc) in corner, sc in remaining 9 dc',
    'Ch 1, *sc in each st to corner sp, (2 sc, ch 2, 2 sc) in corner sp; rep from * 3 more times, sc in each rem st',
  ],
} as const

type Slot = keyof typeof DRESSES
type Worn = Record<Slot, string>

const slots = Object.keys(DRESSES) as Slot[]
const plain = Object.fromEntries(slots.map((slot) => [slot, DRESSES[slot][0]])) as Worn

function write(worn: Worn): string {
  const named = (round: number) => worn.label.replace('#', String(round))
  const told = (count: string) => (count === '' ? '.' : worn.stop + count)
  return [
    worn.page + worn.ring,
    `${named(1)}${worn.three}, ${worn.first}; ${worn.closing}${told(worn.twelve)}`,
    `${named(2)}${worn.spaced}; join with sl st in 3rd ch of beg ch-4${told(worn.twice)}${worn.leaving}`,
    `${named(3)}${worn.cornered}; ${worn.closing}${told(worn.corners)}`,
    `${named(4)}${worn.edge}, join with sl st in first sc. (64 sc)`,
  ].join('\n')
}

function expectPlain(worn: Worn): void {
  const text = write(worn)
  const { findings, rounds } = readRounds(text, { terms: 'US' })
  const told = findings
    .filter(({ severity }) => severity !== 'note')
    .map(({ code, message }) => `${code} ${message}`)
  expect({ text, told, made: rounds.map(({ made }) => made) }).toEqual({
    text,
    told: [],
    made: [12, 12, 48, 64],
  })
}

describe.each(slots)('The dresses of "%s"', (slot) => {
  it.each(DRESSES[slot].map((dress) => [dress]))('%j', (dress) => {
    expectPlain({ ...plain, [slot]: dress })
  })
})

it('agree in any company', () => {
  const worn = fc.record(
    Object.fromEntries(slots.map((slot) => [slot, fc.constantFrom(...DRESSES[slot])])) as {
      [Key in Slot]: fc.Arbitrary<string>
    },
  )
  fc.assert(fc.property(worn, expectPlain), { numRuns: runs(400) })
})

it('a wrong count is told in any dress', () => {
  for (const twelve of DRESSES.twelve)
    for (const stop of DRESSES.stop) {
      const text = write({ ...plain, twelve: twelve.replace('12', '14'), stop })
      const told = readRounds(text, { terms: 'US' }).findings.filter(
        ({ code }) => code === 'rounds/wrong-end-count',
      )
      expect({ text, told: told.length }).toEqual({ text, told: twelve === '' ? 0 : 1 })
    }
})

describe('A part between two asterisks', () => {
  it.each([
    'repeat around',
    'repeat 5 more times',
    'rep 5x more',
    'repeat *-* in total 6 times',
    'repeat between the stars all the way round, 6 times altogether',
    'repeat from * to * 5 times more',
  ])('goes round with "%s"', (words) => {
    const text = `Rnd 1: In magic ring, ch 1, 12 sc, join. (12 sc)\nRnd 2: Ch 1, *sc in next st, 2 sc in next st*, ${words}, join. (18 sc)`
    const { findings, rounds } = readRounds(text, { terms: 'US' })
    expect(findings).toEqual([])
    expect(rounds.map(({ made }) => made)).toEqual([12, 18])
    expect(readRounds(text.replace('18 sc', '20 sc'), { terms: 'US' }).findings).toHaveLength(1)
  })

  it('goes into every space that is named behind it', () => {
    const text =
      'Rnd 1: In magic ring, ch 1, (sc, ch 2) 6 times, join. (6 sc, 6 ch-2 sps)\nRnd 2: Sl st in next sp, ch 1, *3 sc in the space, ch 1*, repeat in every space around, join. (18 sc, 6 ch-1 sps)'
    const { findings, rounds } = readRounds(text, { terms: 'US' })
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(rounds.at(-1)).toMatchObject({ made: 18, spaces: { 'ch-1': 6 } })
  })
})

describe('A ring', () => {
  it.each([
    'With dark pink make 6 ch and close into a ring with a slip stitch.',
    'Begin in center with ch 6, join with sl st.',
    'Starting at the middle, ch 6, join with sl st.',
    'Close a chain of 6 chains in a ring with 1 slip st.',
  ])('is begun by "%s"', (ring) => {
    const { findings, rounds } = readRounds(`${ring}\nRnd 1: Ch 1, 12 sc in ring, join. (12 sc)`, {
      terms: 'US',
    })
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(rounds.map(({ made }) => made)).toEqual([12])
  })
})
