/** Ways of writing of still later sets by fresh hands: stitches of the text's own that go over several of the round before. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { RING, readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const ROUND = 'Round 1: Magic ring, 12dc in ring, ss to first dc.\n'

const CROSSED: readonly Way[] = [
  [
    'the stitch that you missed',
    'UK',
    `Crossed pair: miss the next st, 1tr in the st after it, then 1tr in the st you missed, working in front of the tr just made.\n\n${ROUND}Round 2: 2ch (doesn't count), [1 crossed pair over next 2 sts, 1ch] 6 times, ss to first tr. – 12tr, 6 1ch-sps\nRound 3: 1ch, [1dc in each of the next 2tr, 1dc in next 1ch-sp] 6 times, ss to first dc.`,
    [[12], [12, { 'ch-1': 6 }], [18]],
  ],
  [
    'the stitch just missed',
    'UK',
    `Crossed trebles: miss 1 st, 1tr in the next st, then go back and work 1tr in the stitch just missed.\n\n${ROUND}Round 2: 2ch (doesn't count), [crossed trebles over next 2 sts, 1ch] 6 times, ss to first tr.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'the stitch that was skipped',
    'UK',
    `Cross stitch (cs): skip the next st, 1tr in the following st, 1ch, 1tr in the st that was skipped.\n\n${ROUND}Round 2: 2ch (doesn't count), [1 cs over next 2 sts, 1ch] 6 times, ss to first tr.`,
    [[12], [12, { 'ch-1': 12 }]],
  ],
  [
    'the first of those that were skipped, and a cross wider than its stitches',
    'US',
    `X-stitch: skip next 2 sts, dc in next st, ch 1, dc in the first of the 2 skipped sts.\n\n${RING}Rnd 2: Ch 2 (does not count), [X-stitch over next 3 sts, ch 1] 4 times, join.`,
    [[12], [8, { 'ch-1': 8 }]],
  ],
  [
    'the stitch that you left, until the round is done',
    'US',
    `Crossed dc: sk next st, dc in next st, then working behind that dc, dc in the st you left.\n\n${RING}Rnd 2: Ch 2 (does not count), *crossed dc, ch 1; rep from * around, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'each of the two that you skipped',
    'US',
    `Crossed cable: skip 2 sts, tr in each of next 2 sts, working in front of those tr, tr in each of the 2 sts you skipped.\n\n${RING}Rnd 2: Ch 2 (does not count), [crossed cable over next 4 sts] 3 times, join.`,
    [[12], [12]],
  ],
  [
    'the stitch before it, where none is skipped in words',
    'US',
    `Crossed pair: dc in the 2nd st from hook, then dc in the st before it.\n\n${RING}Rnd 2: Ch 2 (does not count), [crossed pair over next 2 sts, ch 1] 6 times, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'the one after, and the one that you missed',
    'US',
    `${RING}Rnd 2: Ch 2 (does not count), [miss the next stitch and dc in the one after, then dc in the one you missed, ch 1] 6 times, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'the missed one',
    'US',
    `${RING}Rnd 2: Ch 2 (does not count), [miss a st, dc in next st, dc in the missed one, ch 1] 6 times, join.`,
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'one shell over five stitches, in the middle one of them',
    'US',
    `Shell: skip 2 sts, 5 dc in next st, skip 2 sts.\n\n${RING}Rnd 2: Ch 1, [sc in next st, shell over next 5 sts] 2 times, join.`,
    [[12], [12]],
  ],
  [
    'shells over six stitches, one in each',
    'US',
    `V-st: (dc, ch 1, dc) in one st.\n\n${RING}Rnd 2: Ch 1, V-sts over next 6 sts, sc in next 6 sts, join.`,
    [[12], [18, { 'ch-1': 6 }]],
  ],
  [
    'the stitches left, and the stitch that a marker was left in',
    'US',
    `${RING}Rnd 2: Ch 1, sc in the first 10 sts, sc in the 2 sts left, join.\nRnd 3: Ch 1, sc in next 11 sts, sc in the st you left your marker in, join.`,
    [[12], [12], [12]],
  ],
]

describe('stitches that cross', () => readsWays(CROSSED))

it('goes back only into what this round has skipped', () => {
  const text = `${RING}Rnd 2: Ch 1, [skip next st, dc in next st, dc in the st you missed] 7 times, join.`
  const codes = readRounds(text, { terms: 'US' }).findings.map(({ code }) => code)
  expect(codes).toContain('rounds/too-many-used')
})

const HELD: readonly Way[] = [
  [
    'chains that begin a cluster over three stitches, loops counted',
    'UK',
    '1st Row. — Magic ring, 3 ch. (to stand for 1 tr.), 3 tr. into ring, * 1 ch., 4 tr. into ring; repeat from * 4 times more, 1 ch., 1 s.s. into top of 3 ch.\n2nd Row. — 2 ch., leaving the last loop of each on hook work 1 tr. into each of next 3 tr., thread over and draw through all 4 loops on hook (first cluster made), * 5 ch., 1 d.c. into next sp., 5 ch., leaving the last loop of each on hook work 1 tr. into each of next 4 tr., thread over and draw through all 5 loops on hook (a cluster made); repeat from * 4 times more, 5 ch., 1 d.c. into next sp., 5 ch., 1 s.s. into top of first cluster.\n3rd Row. — 1 ch., 1 d.c. into first cluster, * 9 ch., 1 d.c. into next cluster; repeat from * 4 times more, 9 ch., 1 s.s. into first d.c.',
    [
      [24, { 'ch-1': 6 }],
      [12, { 'ch-5': 12 }],
      [6, { 'ch-9': 6 }],
    ],
  ],
  [
    'the loops kept told behind the stitches',
    'US',
    'Rnd 1: Magic ring, 15 sc in ring, join.\nRnd 2: Ch 2, dc in each of next 2 sc keeping last lp of each on hook, yo and draw through all 3 lps on hook, ch 4, [dc in each of next 3 sc keeping last lp of each on hook, yo and draw through all 4 lps on hook, ch 4] 4 times; join with sl st in top of first cluster.',
    [[15], [5, { 'ch-4': 5 }]],
  ],
  [
    'chains that stand behind none of the stitches of their cluster',
    'US',
    'Rnd 1: Magic ring, 15 sc in ring, join.\nRnd 2: Ch 2, holding back the last loop of each, dc in same sc and in next 2 sc, yo and draw through all 4 loops, ch 4, *holding back the last loop of each, dc in next 3 sc, yo and draw through all 4 loops, ch 4; rep from * 3 more times; join in top of first cluster.',
    [[15], [5, { 'ch-4': 5 }]],
  ],
  [
    'clusters that all go over three, with chains before the first',
    'US',
    'Rnd 1: Magic ring, 15 sc in ring, join.\nRnd 2: Ch 2, *holding back the last loop of each, dc in next 3 sc, yo and draw through all 4 loops, ch 4; rep from * 4 more times; join in top of first cluster.',
    [[15], [5, { 'ch-4': 5 }]],
  ],
  [
    'clusters in one place',
    'US',
    'Rnd 1: Magic ring, 6 sc in ring, join.\nRnd 2: Ch 2, holding back the last loop of each, 2 dc in same sc, yo and draw through all loops, ch 2, *holding back the last loop of each, 3 dc in next sc, yo and draw through all 4 loops, ch 2; rep from * 4 more times; join in top of first cluster.',
    [[6], [6, { 'ch-2': 6 }]],
  ],
]

describe('clusters that chains begin', () => {
  readsWays(HELD)
  it.each(HELD)('nothing is asked of the chains: %s', (_, terms, text) => {
    expect(readRounds(text, { terms }).findings.map(({ code }) => code)).toEqual([])
  })
})

it('asks of two chains before stitches that are not drawn together', () => {
  const text =
    'Rnd 1: Magic ring, 15 sc in ring, join.\nRnd 2: Ch 2, dc in each of next 14 sc, join.\nRnd 3: Ch 1, sc in each st around, join.'
  expect(readRounds(text, { terms: 'US' }).findings.map(({ code }) => code)).toContain(
    'rounds/ch2-not-stated',
  )
})

describe('loops over stitches of another form', () => {
  const round = (times: number) =>
    `Rnd 1: Magic ring, [3-dc cluster in ring, ch 3, dc in ring, ch 3] 4 times; join with sl st in first cluster.\nRnd 2: Ch 1, sc in first cluster, [ch 7, sc in next cluster] ${times} times, ch 7; join with sl st in first sc.`
  const codes = (text: string) => readRounds(text, { terms: 'US' }).findings.map(({ code }) => code)
  it('pass one between each two', () => expect(codes(round(3))).toEqual([]))
  it('leave none of them out', () => expect(codes(round(2))).toEqual(['rounds/stitches-left']))
})

const ROWS =
  'Row 1: Ch 10, dc in 4th ch from hook and in next 6 chs, turn. (8 dc)\nRow 2: Ch 1, sc in first dc, (ch 1, tr in next dc) 6 times, ch 1, sc in top of ch, turn.\nRow 3: Ch 1, sc in first sc, '
const ROWS_MADE = [[8], [8, { 'ch-1': 7 }], [7, { 'ch-3': 6 }]] as const

const PINEAPPLES: readonly Way[] = [
  [
    'shells over shells that were all worked in the ring, and the space between the first two stitches',
    'US',
    'SHELL: 2 dc, ch 2, 2 dc all in same place.\nSHELL OVER SHELL: Make shell in ch-2 sp of next shell. At start of a row, sl st in first 2 dc and in sp of shell, ch 3 to count as first dc, then dc, ch 2 and 2 dc in same sp.\n\nCh 6, join with sl st to form ring.\n1st Row: Ch 3 to count as first dc, in ring make dc, ch 2, 2 dc, ch 3, shell. Turn.\n2nd Row: Shell over shell, ch 1, 6 tr in ch-3 sp, ch 1, shell over shell. Turn.\n3rd Row: Shell over shell, (ch 1, tr in next tr) 6 times, ch 1, shell over shell. Turn.\n4th Row: Shell over shell, ch 3, sc in ch-1 sp between first 2 tr, (ch 3, sc in next ch-1 sp between tr) 4 times, ch 3, shell over shell. Turn.',
    [
      [8, { 'ch-2': 2, 'ch-3': 1 }],
      [14, { 'ch-2': 2, 'ch-1': 2 }],
      [14, { 'ch-2': 2, 'ch-1': 7 }],
      [13, { 'ch-2': 2, 'ch-3': 6 }],
    ],
  ],
  [
    'where shells go told before what a shell is',
    'US',
    'SHELL IN A SHELL: Work shell in ch-3 sp of next shell.\nSHELL: 3 dc, ch 3, 3 dc in same place.\n\nCh 5, join with sl st to form ring.\nRow 1: Ch 3 (counts as dc), in ring work 2 dc, ch 3, 3 dc, ch 2, shell. Turn.\nRow 2: Ch 3, shell in next shell, ch 2, 5 dc in ch-2 sp, ch 2, shell in next shell, dc in top of turning ch. Turn.',
    [
      [12, { 'ch-3': 2, 'ch-2': 1 }],
      [19, { 'ch-3': 2, 'ch-2': 2 }],
    ],
  ],
  [
    'shells around a ring, and shells in them',
    'US',
    'Shell: (2 dc, ch 2, 2 dc) in same sp.\nRnd 1: Magic ring, (shell, ch 3) 3 times in ring, join.\nRnd 2: Sl st in next dc, sl st in ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 5, [shell in next shell, ch 5] twice, join to top of ch-3.',
    [
      [12, { 'ch-2': 3, 'ch-3': 3 }],
      [12, { 'ch-2': 3, 'ch-5': 3 }],
    ],
  ],
  [
    'spaces between stitches that are named',
    'US',
    `${ROWS}(ch 3, sc in next ch-1 sp between tr) 5 times, ch 3, sc in last sc, turn.`,
    ROWS_MADE,
  ],
  [
    'the same until the row is done',
    'US',
    `${ROWS}*ch 3, sc in next ch-1 sp between 2 tr; rep from * across, ch 3, sc in last sc, turn.`,
    ROWS_MADE,
  ],
]

describe('pineapples', () => {
  readsWays(PINEAPPLES)
  const codes = (row: string) =>
    readRounds(`${ROWS}(${row}, ch 3, sc in last sc, turn.`, { terms: 'US' }).findings.map(({ code }) => code)
  it('lead over no space that is told', () => {
    expect(codes('ch 3, sc in next ch-1 sp between tr) 5 times')).toEqual([])
    expect(codes('ch 3, sc in next ch-1 sp between tr) 4 times')).toEqual(['rounds/spaces-left'])
    expect(codes('ch 3, sc in next ch-1 sp between tr) 6 times')).toEqual(['rounds/too-many-used'])
    expect(codes('ch 3, sc in next ch-1 sp) 5 times')).toEqual(['rounds/spaces-left'])
  })
})
