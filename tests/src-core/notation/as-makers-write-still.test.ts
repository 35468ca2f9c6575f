/** Ways of writing of still later sets by fresh hands: stitches of the text's own that go over several of the round before. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { restyle } from '../../../src-core/notation/restyle'
import { takeApart } from '../../../src-core/notation/take-apart'
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

const SQUARES =
  'Space (sp): ch 2, skip 2 sts, dc in next dc.\nBlock (bl): dc in each of next 3 sts.\n\nCh 20.\nRow 1: 5 sp; turn.\n'

const FILET: readonly Way[] = [
  [
    'spaces and blocks told over what lies below, rows that name no chains, and a row as an earlier one',
    'US',
    'FILET POCKET\n(for those who would rather not read the chart)\n\nSpace (sp): ch 2, skip 2 sts or chs, dc in next dc.\nBlock (bl) over a space: 2 dc in ch-2 space, dc in next dc.\nBlock over a block: dc in each of next 3 dc.\nEvery row is 5 squares wide. Beginning space: ch 5 (this is the first dc and ch 2), dc in next dc. At the end of each row the last dc goes in the 3rd ch of the turning ch-5.\n\nCh 20.\nRow 1: Dc in 8th ch from hook (first sp made), [ch 2, skip 2 chs, dc in next ch] 4 times; turn. 5 sp.\nRow 2: 2 sp, 1 bl, 2 sp; turn.\nRow 3: 1 sp, 3 bl, 1 sp; turn.\nRow 4: Same as Row 3.\nRow 5: 5 sp. Fasten off.',
    [
      [6, { 'ch-2': 5 }],
      [8, { 'ch-2': 4 }],
      [12, { 'ch-2': 2 }],
      [12, { 'ch-2': 2 }],
      [6, { 'ch-2': 5 }],
    ],
  ],
  [
    'squares in full words, with the chains of some rows told',
    'UK',
    'FILET COASTER (UK terms)\n1 space = 2ch, miss 2 sts, 1tr in next tr. 1 block = 1tr in each of next 3 sts (or 2tr in the space and 1tr in next tr).\n\nChain 23.\nRow 1: 1tr in 8th ch from hook, 5 spaces. Turn.\nRow 2: 5ch, 1tr in next tr, 1 space, 2 blocks, 2 spaces. Turn.\nRow 3: 3ch, 1 block, 4 spaces, 1 block. Turn.\nRow 4: 6 blocks.',
    [[7, { 'ch-2': 6 }], [11, { 'ch-2': 4 }], [11, { 'ch-2': 4 }], [19]],
  ],
  [
    'meshes of one chain, by abbreviations of the text’s own',
    'US',
    'Special stitches\nOpen mesh (OM): ch 1, sk next st or ch-1 sp, dc in next dc.\nSolid mesh (SM): dc in next st or ch-1 sp, dc in next dc.\n\nCh 15.\nRow 1 (RS): Dc in 4th ch from hook and in each ch across, turn. (13 dc)\nRow 2: Ch 3 (counts as dc), 1 SM, 4 OM, 1 SM, turn. (9 dc, 4 ch-1 sps)\nRow 3: Ch 4 (counts as dc, ch 1), sk next st, dc in next dc, 1 OM, 2 SM, 2 OM, turn.\nRow 4: Ch 3, 6 SM. Fasten off.',
    [[13], [9, { 'ch-1': 4 }], [9, { 'ch-1': 4 }], [13]],
  ],
  [
    'squares that are repeated, and rows that are told together',
    'US',
    'Sp: ch 2, sk 2, dc in next dc.\nBlk: 3 dc (2 in the sp, or in the dc below, and 1 in next dc).\n\nCh 20.\nRow 1: 5 sp, turn. (5 sps)\nRow 2: 1 blk, 3 sp, 1 blk, turn.\nRow 3: [1 sp, 1 blk] twice, 1 sp, turn.\nRows 4 and 5: 5 blks, turn.',
    [[6, { 'ch-2': 5 }], [10, { 'ch-2': 3 }], [10, { 'ch-2': 3 }], [16], [16]],
  ],
  [
    'squares explained in sentences, worked from the chain on',
    'US',
    'Filet key: A space is ch 2, skip 2, dc in next dc. A block is dc in each of next 3 sts.\n\nCh 18.\nRow 1: 1 bl, 3 sp, 1 bl, turn.\nRow 2: 2 sp, 1 bl, 2 sp, turn.\nRow 3: *1 sp, 1 bl; rep from * once, 1 sp. Fasten off.',
    [
      [10, { 'ch-2': 3 }],
      [8, { 'ch-2': 4 }],
      [10, { 'ch-2': 3 }],
    ],
  ],
  [
    'names with stops, as older print has them',
    'UK',
    'Sp. = 2 ch., miss 2, 1 tr. into next tr. Blk. = 4 tr. (3 more for each blk. after it).\n\nCommence with 23 ch.\n1st row.—1 tr. into 8th ch. from hook, 5 sps., turn.\n2nd row.—5 ch., 1 tr. into next tr., 1 sp., 2 blks., 2 sps., turn.\n3rd row.—1 blk., 4 sps., 1 blk., turn.',
    [
      [7, { 'ch-2': 6 }],
      [11, { 'ch-2': 4 }],
      [11, { 'ch-2': 4 }],
    ],
  ],
  [
    'chains of the next row before the turn, and what the squares lie over',
    'US',
    `${SQUARES}Row 2: 2 sp, 1 bl over sp, 2 sp over 2 sp, ch 3, turn.\nRow 3: 1 bl, 1 sp, 1 bl, 1 sp, 1 bl, ch 5, turn.\nRow 4: 5 sp. Fasten off.\n\nEdging: Ch 1, 2 sc in each sp. Fasten off.`,
    [[6, { 'ch-2': 5 }], [8, { 'ch-2': 4 }], [12, { 'ch-2': 2 }], [6, { 'ch-2': 5 }], [10]],
  ],
  [
    'squares in brackets behind what makes them',
    'US',
    'Sp—ch 2, skip 2, d c in next st. Blk—4 d c; each blk after the first adds 3 d c.\n\nCh 20. 1st row: D c in 8th ch from hook (first sp), * ch 2, skip 2 ch, d c in next ch. Repeat from * across (5 sps). Ch 5 (counts as d c and ch 2), turn. 2nd row: Skip first d c, d c in next d c, ch 2, d c in next d c (2 sps), 2 d c in sp, d c in next d c (1 blk), ch 2, d c in next d c, ch 2, skip 2 ch, d c in next ch (2 sps). Fasten off.',
    [
      [6, { 'ch-2': 5 }],
      [8, { 'ch-2': 4 }],
    ],
  ],
  [
    'spaces of a page that explains no squares',
    'US',
    'Abbreviations: sp = space, bl = block, dc = double crochet.\n\nRnd 1: Magic ring, ch 5 (counts as dc, ch 2), [dc in ring, ch 2] 7 times, join. 8 sp.\nRnd 2: Sl st in first sp, ch 3, 2 dc in same sp, ch 1, [3 dc in next sp, ch 1] 7 times, join. 8 sp.',
    [
      [8, { 'ch-2': 8 }],
      [24, { 'ch-1': 8 }],
    ],
  ],
  [
    'a first row of mesh in brackets',
    'US',
    'Ch 16.\nRow 1: Dc in 6th ch from hook, [ch 1, skip 1 ch, dc in next ch] 5 times; turn. (7 dc, 6 ch-1 sps)',
    [[7, { 'ch-1': 6 }]],
  ],
]

describe('filet in words', () => {
  readsWays(FILET)
  const codes = (rows: string) =>
    readRounds(`${SQUARES}${rows}`, { terms: 'US' }).findings.map(({ code }) => code)
  it('tells rows that have a square too many or too few', () => {
    expect(codes('Row 2: 2 sp, 1 bl, 2 sp; turn.')).toEqual([])
    expect(codes('Row 2: 2 sp, 2 bl, 2 sp; turn.')).toContain('rounds/too-many-used')
    expect(codes('Row 2: 1 sp, 2 bl, 1 sp; turn.')).toContain('rounds/spaces-left')
  })
  it('holds a row to its count of spaces', () => {
    expect(codes('Row 2: 2 sp, 1 bl, 2 sp; turn. 4 sp.')).toEqual([])
    expect(codes('Row 2: 2 sp, 1 bl, 2 sp; turn. 5 sp.')).toEqual(['rounds/wrong-end-count'])
  })
  it.each(FILET)('reads the same when it is printed: %s', (_, terms, text) => {
    const made = (words: string) =>
      readRounds(words, { terms }).rounds.map(({ made, spaces }) => [made, spaces])
    expect(made(restyle(readRounds(text, { terms }).tree, false))).toEqual(made(text))
  })
  it('keeps what explains the squares for the page', () => {
    const { rounds, special } = takeApart(FILET[0]![2], 'US')
    expect(rounds.map(({ work }) => work)[1]).toBe('2 sp, 1 bl, 2 sp; turn.')
    expect(special).toContain('Block over a block: dc in each of next 3 dc.')
  })
})
