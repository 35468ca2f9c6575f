/** Ways of writing of later sets by fresh hands: chatter around rounds, and what terse designers leave out. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { takeApart } from '../../../src-core/notation/take-apart'
import { readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const PETALS =
  'Round 1: Magic ring, 1ch, 10dc into the ring, ss into first dc.\nRound 2: *3ch, 2tr into same dc, (2tr, 3ch, ss) into next dc, ss into next dc; repeat from * 4 more times.\n'

const CASES: readonly Way[] = [
  [
    'words without their apostrophe',
    'UK',
    'r1 - magic loop, 2ch (doesnt count as a stitch, same all the way through), 10 htr in the loop, ss to top of first htr - 10 sts',
    [[10]],
  ],
  [
    'so many remaining spaces',
    'UK',
    'Rnd 1. In a magic ring: 1ch, [htr, 2ch] 6 times. Ss in top of first htr.\nRnd 2. Ss in first 2ch-sp. In same sp: 3ch (counts as 1tr), 1tr, 1ch, 2tr. [2tr, 1ch, 2tr] in each of the 5 remaining sps. Ss in top of 3ch.',
    [
      [6, { 'ch-2': 6 }],
      [24, { 'ch-1': 6 }],
    ],
  ],
  [
    'the slip stitch between two petals',
    'UK',
    `${PETALS}Round 3: Fold the petals towards you. Join to the ss between any two petals, 1ch, 1dc into same place, 4ch, *1dc into next ss between two petals, 4ch; repeat from * 3 more times, ss into first dc.`,
    [[10], [20, { 'ch-3': 10 }], [5, { 'ch-4': 5 }]],
  ],
  [
    'a stitch of the text’s own, told by “To work …”',
    'US',
    'Notes: Work with right side facing.\nTo work crossed pair: Skip next st, dc in next st, dc in skipped st.\n\nRnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring; join with sl st in top of beg ch-3.\nRnd 2: Ch 1, [crossed pair, ch 1] 6 times; join with sl st in first dc.',
    [[12], [12, { 'ch-1': 6 }]],
  ],
  [
    'loops that an earlier round has left, named without a verb',
    'US',
    'Round 1: Magic ring, ch 1, 8 sc in the ring, sl st in the first sc.\nRound 2: Work in the FRONT loops only. [Sl st, ch 2, 3 dc, ch 2, sl st] all in the first front loop and in each front loop around.\nRound 3: Now the BACK loops of Round 1 that you didn’t use. [Sl st, ch 3, 3 tr, ch 3, sl st] all in the first back loop and in each back loop around.',
    [[8], [24, { 'ch-2': 16 }], [24, { 'ch-3': 16 }]],
  ],
  [
    'a corner without brackets whose first stitch is the chain, and a chain that “does count, as a tr”',
    'US',
    'Rnd 1: Magic ring, 36 sc in ring, sl st in first sc.\nRnd 2: Join in any st. Ch 4 (this one does count, as a tr), tr, ch 2, 2 tr in the same st; dc in next st, hdc in next 2 sts, sc in next 2 sts, hdc in next 2 sts, dc in next st; *2 tr, ch 2, 2 tr in next st; dc in next st, hdc in next 2 sts, sc in next 2 sts, hdc in next 2 sts, dc in next st; repeat from * twice more; sl st to top of ch 4.',
    [[36], [48, { 'ch-2': 4 }]],
  ],
  [
    'what stands between the asterisks again, behind dots, and what is left off of it',
    'US',
    'Rnd 1: Magic ring, 20 sc in ring.\nRnd 2: Ch 1, sc in joining st, *ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in last ch, skip 3 sc, sc in next sc* … repeat between *s 4 more times, but leave off the sc of the last repeat and sl st in first sc instead.',
    [[20], [25]],
  ],
  [
    'counts of several rounds in brackets, before a paragraph that begins with “Each”',
    'US',
    'Rnd 1: Magic loop, ch 1, (sc, ch 2) 4 times in loop; join with sl st to first sc.\nRnds 2–3: Sl st to corner, ch 1, (sc, ch 2, sc) in same corner, (sc in next sc) across to next corner, *(sc, ch 2, sc) in corner, (sc in next sc) across to next corner; rep from * twice; join with sl st to first sc. (12 [20] sc, 4 corners)\n\nEach corner is a ch-2 sp.',
    [
      [4, { 'ch-2': 4 }],
      [12, { 'ch-2': 4 }],
      [20, { 'ch-2': 4 }],
    ],
  ],
  [
    'arches of the sides counted beside those of the corners',
    'UK',
    'Round 1: 8dc into a magic ring, ss to first dc.\nRound 2: 1ch, 1dc in same dc, [5ch (corner loop made), 1dc in next dc, 3ch (side arch made), 1dc in next dc] 3 times, 5ch, 1dc in next dc, 3ch, ss to first dc. (8dc, 4 corner loops, 4 side arches)',
    [[8], [8, { 'ch-5': 4, 'ch-3': 4 }]],
  ],
  [
    'chains “for dc and ch 2”',
    'US',
    'Rnd 1: Magic ring, 20 dc in ring, join.\nRnd 2: Ch 5 (for dc and ch 2), * dc in next dc, ch 2; repeat from * around, join to 3rd st of ch-5 (20 sps).',
    [[20], [20, { 'ch-2': 20 }]],
  ],
  [
    'a row that begins with a mesh in its first stitch',
    'US',
    'Row 1: Ch 9, dc in 4th ch from hook and in each ch across, turn. (7 dc)\nRow 2: Ch 4 (counts as dc, ch 1), dc in first dc, [ch 1, sk next dc, dc in next dc] twice, ch 1, sk next dc, (dc, ch 1, dc) in top of turning ch, turn. (6 dc, 5 ch-1 sps)',
    [[7], [6, { 'ch-1': 5 }]],
  ],
  [
    'the chain that was made, called the maker’s own, and a space hopped into',
    'UK',
    'Round 1: Magic ring, 3ch (counts as tr), 15 tr in ring, ss to top of 3ch.\nRound 2. 4ch (your first tr plus 1ch). *1tr in next st, 1ch.* Repeat all the way round, then ss into the third of your four chains.\nRound 3. Hop into the first space with a ss. 3ch (counts as 1tr), 1tr in the same space, 1ch. *2tr in the next 1ch space, 1ch.* Repeat all the way round, ss to the top of the 3ch.',
    [[16], [16, { 'ch-1': 16 }], [32, { 'ch-1': 16 }]],
  ],
  [
    'the place where the joining was worked',
    'UK',
    'Round 1: Magic ring, 3ch (counts as first tr throughout), 11tr in ring, ss in 3rd of 3ch.\nRound 2: 3ch, 1tr in place where ss was worked, 2tr in next tr, 1ch, [2tr in each of next 2tr, 1ch] 5 times, ss in 3rd of 3ch. [24tr, 6 1ch-sps]',
    [[12], [24, { 'ch-1': 6 }]],
  ],
  [
    'a chain that “won’t count”',
    'US',
    'Round 1 – Make a magic ring and ch 2 (it won’t count as a stitch). Work 12 dc in the ring, then sl st in the first dc. You have 12 dc.',
    [[12]],
  ],
  [
    'a bare “next” behind a space, and the whole behind the count of a side',
    'UK',
    'Round 1: Magic ring, 32 tr in ring, ss to first tr.\nRound 2: 3ch (counts as 1tr), 1tr in same st, 1ch, miss 1, *2tr in next st, 1ch, miss 1 st; rep from * around, ss to top of 3ch.\nRound 3: Ss into next tr and into 1ch space. 4ch (counts as 1dtr), (2dtr, 2ch, 3dtr) in that same space, 3tr in the next space, 3htr in the next, 3tr in the next. *(3dtr, 2ch, 3dtr) in the next space, 3tr in the next space, 3htr in the next, 3tr in the next.* Repeat from * to * twice more, ss to top of 4ch. Each side has 15 sts: 60 sts in total.',
    [[32], [32, { 'ch-1': 16 }], [60, { 'ch-2': 4 }]],
  ],
  [
    'the rest of a group that is a run between two spaces',
    'US',
    'Rnd 1: In adjustable ring work [2 sc, ch 2] 6 times.\nRnd 2: *Sk first sc of next group, sc in each rem sc of same group, 2 sc in ch-2 sp, ch 2; rep from * 5 more times.\nRnd 3: *Sk first sc of next group, sc in each rem sc of same group, 2 sc in ch-2 sp, ch 2; rep from * 5 more times.',
    [
      [12, { 'ch-2': 6 }],
      [18, { 'ch-2': 6 }],
      [24, { 'ch-2': 6 }],
    ],
  ],
  [
    'a round begun “in yarn A”',
    'UK',
    'Round 1: In yarn A make a magic ring, 1ch, 6dc in ring, ss to first dc. (6 dc)',
    [[6]],
  ],
  [
    'how often before the asterisks, and “now it’s” before a count',
    'US',
    'Rnd 1: Magic circle, ch 3 (counts as dc), 3 dc into the circle, ch 2, *4 dc into the circle, ch 2*, once more from * to *. Sl st to the top of the ch 3. Now it’s 12 dc.',
    [[12, { 'ch-2': 3 }]],
  ],
  [
    'a bought ring, and the space between this point and the next',
    'US',
    'You need thread and a 1-inch plastic ring.\nRnd 1: Attach thread to ring with a slip knot, ch 1, 36 sc over ring, sl st in first sc.\nRnd 2: Ch 1, sc in same sc, [ch 7, skip 5 sc, sc in next sc] 5 times, ch 7, skip last 5 sc, sl st in first sc.\nRnd 3: Sl st in first loop, ch 1, (sc, hdc, dc, 2 tr, ch 2, 2 tr, dc, hdc, sc) in each loop around, sl st in first sc.\nRnd 4: Sl st in next 4 sts and in ch-2 sp, ch 1, [(sc, ch 6, sc) in ch-2 sp, ch 5, sc in space between this point and next point, ch 5] 6 times, sl st in first sc.',
    [[36], [6, { 'ch-7': 6 }], [60, { 'ch-2': 6 }], [18, { 'ch-6': 6, 'ch-5': 12 }]],
  ],
]

describe('ways of writing', () => readsWays(CASES))

it('holds several rounds to the counts in their bracket', () => {
  const text = CASES.find(([what]) => what.startsWith('counts of several'))![2]
  const codes = (page: string) => readRounds(page, { terms: 'US' }).findings.map(({ code }) => code)
  expect(codes(text)).toEqual([])
  expect(codes(text.replace('12 [20]', '12 [18]'))).toContain('rounds/wrong-end-count')
})

it('takes no talk behind a round into it', () => {
  const work = 'Ch 1, sc in each sc around, join. Fasten off and weave in the ends.'
  const text = `Rnd 1: Magic ring, 8 sc in ring, join.\nRnd 2: ${work}\n\nIf you make one, do show me! I would love to see it.`
  expect(takeApart(text, 'US').rounds.map((round) => round.work)[1]).toBe(work)
})

it('tells a repeat behind which nothing is left', () => {
  const text =
    'Rnd 1: Magic ring, 12 sc in ring, join.\nRnd 2: Sc in each st around, *2 dc in next st, rep from * around.'
  expect(readRounds(text, { terms: 'US' }).findings.map(({ message }) => message)).toEqual([
    expect.stringContaining('one repeat takes 1 st; there are 0'),
  ])
})

it('takes lists told with equals signs for no stitches', () => {
  const lists =
    'Abbreviations (US): ch = chain, sl st = slip stitch, sc = single crochet.\nYarn A = blue, yarn B = white'
  const { special } = takeApart(`${lists}\n\nRnd 1: Magic ring, 8 sc in ring, join.`, 'US')
  expect(special).toBe('')
})
