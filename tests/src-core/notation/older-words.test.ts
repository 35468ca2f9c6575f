/** Turns of phrase of older and of UK print (common practice, no source), in whole rounds. */
import { describe, expect, it } from 'vitest'
import type { Terms } from '../../../shared-types/project'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: Terms = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  const told = findings.flatMap(({ severity, where }) => (severity === 'note' ? [] : [where]))
  return { told, made: rounds.map(({ made }) => made), spaces: rounds.at(-1)?.spaces }
}

const FLOWER = `Rnd 1: Magic ring, ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)
Rnd 2: *Ch 3, sk next st, sl st in next st; rep from * 5 more times. (6 ch-3 sps)
Rnd 3: (Sc, 3 dc, sc) in each ch-3 sp around; join with sl st in first sc. (6 petals)
`

describe('where a stitch lies', () => {
  it.each([
    'in the Rnd 2 sl st between this petal and the next',
    'in the sl st of the 2nd rnd lying between this petal and the next',
    'in next sl st of Rnd 2 between petals',
  ])('is passed in "sl st %s"', (place) => {
    const text = `${FLOWER}Rnd 4: Working behind petals, *ch 4, sl st ${place}; rep from * 5 more times. (6 ch-4 sps)`
    expect(read(text)).toEqual({ told: [], made: [12, 0, 30, 0], spaces: { 'ch-4': 6 } })
  })
})

describe('chains that stand for a stitch', () => {
  it.each([
    '3 ch (1 tr)',
    '3 ch for first tr',
    '3 ch to stand for a tr',
    '3 ch (= 1 tr)',
    '3 ch, counting as 1 tr',
  ])('do so in "%s"', (chains) => {
    expect(
      read(`Round 1: 6 ch, ss to form ring, ${chains}, 23 tr in ring, ss in top of 3 ch. 24 tr.`, 'UK'),
    ).toEqual({ told: [], made: [24], spaces: {} })
  })

  it('count or do not as a note says of several at once', () => {
    const text = `Notes: Beginning ch-1 or ch-2 never counts as a stitch.

Rnd 1: Magic ring, ch 2, 12 dc in ring; join. (12 dc)
Rnd 2: Ch 2, *FPdc around next st, dc in top of same st; rep from * around; join. [24: 12 FPdc + 12 dc]`
    expect(read(text)).toEqual({ told: [], made: [12, 24], spaces: {} })
  })
})

describe('names without "crochet"', () => {
  it('are stitches behind a number or an article', () => {
    const text = `1st Round. Make a chain of six and join with a slip stitch to form a ring. Chain 3 to stand for a double, work 15 doubles into the ring, join to the third of the 3 chain. (16 doubles)
2nd Round. Chain 4 (for a double and 1 chain), * 1 double in the next double, chain 1; repeat from * all around, join to the third of the 4 chain. (16 spaces)`
    expect(read(text)).toEqual({ told: [], made: [16, 16], spaces: { 'ch-1': 16 } })
  })
})

it('"round" leads around a stem in the UK', () => {
  const text = `Round 1: 6 ch, ss to form ring, 3 ch (counts as 1 tr), 11 tr in ring, ss to top of 3 ch. 12 tr.
Round 2: 1 ch, starting in same place as ss, *1 dc round stem of next tr, 2 ch; rep from * 11 more times, ss to first dc. (12 2-ch sps)`
  expect(read(text, 'UK')).toEqual({ told: [], made: [12, 12], spaces: { 'ch-2': 12 } })
})

it('free loops on the other side of a chain are that side', () => {
  const text = `Ch 11.
Rnd 1: Sc in 2nd ch from hook, sc in each of next 8 ch, 3 sc in last ch; working in free loops on opposite side of ch, sc in each of next 8 ch, 2 sc in same ch as first sc; join. (22 sc)`
  expect(read(text).told).toEqual([])
})

it('a join to a chain that the round does not begin with is told at its place', () => {
  const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 15 dc in ring; join with sl st in top of ch-3. (16 dc)
Rnd 2: Ch 1, sc in same st, *ch 4, sk 1 dc, sc in next dc; rep from * 6 more times, ch 4, sk last dc, join with sl st in top of ch-3. (8 sc, 8 ch-4 sps)`
  expect(readRounds(text).findings.map(({ code, where }) => [code, where])).toEqual([
    ['rounds/join-no-such-chain', 'round 2, column 119: "in top of ch-3"'],
  ])
  expect(read(text.replace(/in top of ch-3\. \(8/, 'in first sc. (8')).told).toEqual([])
})

it('chains alike on both sides of what goes into the ring are the edges of a petal', () => {
  const heart =
    'Make an adjustable ring.\nRound 1: Into ring work 3 ch, 3 dtr, 4 tr, 1 ch, 1 dtr, 1 ch, 4 tr, 3 dtr, 3 ch, ss. (7 dtr, 8 tr, two 3-ch sps)'
  expect(read(heart, 'UK')).toEqual({ told: [], made: [15], spaces: { 'ch-3': 2, 'ch-1': 2 } })
})

describe('names with blanks and cut short', () => {
  const ring = 'Rnd 1: Magic ring, ch 1, 12 sc in ring, join with sl st in first sc.\n'
  it.each([
    ['US', 'h dc'],
    ['US', 'h d c'],
    ['US', 'half dc'],
    ['US', 'half d c'],
    ['US', 'dbl tr'],
    ['US', 'd tr'],
    ['UK', 'half tr'],
    ['UK', 'h tr'],
    ['UK', 'dbl tr'],
  ] as const)('are the stitch itself in %s terms: "%s"', (terms, name) => {
    const text = `${ring}Rnd 2: *2 ${name} in next st, ${name} in next st; rep from * around. (18 ${name})`
    const { rounds, findings, worked } = readRounds(terms === 'UK' ? text.replaceAll('sc', 'dc') : text, {
      terms,
    })
    expect(findings).toEqual([])
    expect(rounds[1]!.made).toBe(18)
    const whole = { US: /^h|half/.test(name) ? 'hdc' : 'dtr', UK: /^h|half/.test(name) ? 'hdc' : 'tr' }
    expect(new Set(worked[1]!.elements.map(({ stitch }) => stitch))).toEqual(new Set([whole[terms]]))
  })
})

describe('words that make no stitch', () => {
  it('leave a round as it is: what is skipped beside spaces, and the tip of a cluster that is its top', () => {
    const text = `Rnd 1: Magic ring, ch 1, (sc in ring, ch 5) 6 times, join with sl st in first sc.
Rnd 2: Sl st in first ch-5 sp, 6 hdc in each ch-5 sp around, skipping the sc.
Rnd 3: *Dc2tog over next 2 hdc, ch 2; rep from * around, join with sl st to tip of first cluster.`
    expect(read(text)).toEqual({ told: [], made: [6, 36, 18], spaces: { 'ch-2': 18 } })
  })
})

describe('slip stitches on the way', () => {
  const loops = 'Rnd 1: Magic ring, ch 1, (sc in ring, ch 5) 6 times, join with sl st in first sc.\n'
  it.each([
    'Sl st in first ch-5 sp, 6 hdc in each ch-5 sp around',
    'Sl st into ch-5 sp, 6 hdc in each ch-5 sp around',
    'Sl st in next ch-5 sp, (3 hdc, 3 dc) in each ch-5 sp around',
    'Sl st in next ch-5 sp, ch 1, 6 hdc in each ch-5 sp around',
    'Sl st in ch-5 sp, 6 hdc in same sp, 6 hdc in each remaining ch-5 sp',
  ])('use no space up: "%s"', (work) => {
    expect(read(`${loops}Rnd 2: ${work}, join.`)).toEqual({ told: [], made: [6, 36], spaces: {} })
  })

  it('are stitches of their own where others follow before the sweep', () => {
    const text = `${loops}Rnd 2: Sl st in next ch-5 sp, sc in same sp, 6 hdc in each ch-5 sp around, join.`
    expect(read(text).made).toEqual([6, 31])
  })
})
