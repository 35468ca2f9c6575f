/** Ways of writing that fresh hands used: each reads as its plain form does. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { RING, readsWays } from './ways-of-writing'
import type { Made, Way } from './ways-of-writing'

const CASES: readonly Way[] = [
  [
    'a name of the text’s own in quotation marks',
    'US',
    `"Tip" means (2 dc, ch 2, 2 dc) in the place given.\n\n${RING}Rnd 2: Ch 1, (tip in next st, sk 1) 6 times, join.`,
    [[12], [24, { 'ch-2': 6 }]],
  ],
  [
    'a stitch explained in a sentence with its short name',
    'US',
    `Ch 3 counts as 1 dc. A V-stitch (V-st) is (dc, ch 2, dc) all in one stitch.\n\n${RING}Rnd 2: Ch 1, (V-st in next st, ch 1, sk next st) 6 times, join.`,
    [[12], [12, { 'ch-2': 6, 'ch-1': 6 }]],
  ],
  [
    'two stitches explained in one sentence',
    'US',
    `A shell (sh) means 5 dc in one stitch, and a V-stitch (V-st) means dc, ch 2, dc in one stitch.\n\n${RING}Rnd 2: Ch 1, (V-st in next st, sk 1, sh in next st, sk 1) 3 times, join.`,
    [[12], [21, { 'ch-2': 3 }]],
  ],
  [
    '"every other" beside the first',
    'UK',
    'Round 1: Magic ring, 3 ch (= 1 tr), 11 tr in ring, ss into 3rd ch. (12)\nRound 2: 3 ch (= 1 tr), 1 tr in same st, 2 tr in every other st, ss into 3rd ch. (24)',
    [[12], [24]],
  ],
  [
    'labels of places within a round',
    'UK',
    'Make 6 ch.\nRound 1\nFirst side: 1 dc in 2nd ch from hook, 1 dc in each of next 3 ch.\nThe tip: 3 dc in last ch.\nSecond side, into the other loops of the same chains: 1 dc in each of next 4 ch.\nSs in first dc. (11 dc)\nRound 2: 1 ch, 1 dc in each st. (11 dc)',
    [[11], [11]],
  ],
  [
    'which way a round goes, in a sentence before it',
    'UK',
    'Make 6 ch.\nRound 1: You’ll work down one side of the chain, round the bottom, and back up the other side. 1 dc in 2nd ch from hook, 1 dc in each of next 3 ch, 3 dc in last ch, working back along other side, 1 dc in each of next 4 ch. (11 dc)',
    [[11]],
  ],
  [
    'the one space among the counts',
    'UK',
    'Round 1: Magic ring, (18 dc, 2 ch, 17 dc) in ring, ss. (35 dc and the 2-ch space)\nRound 2: 1 ch, 1 dc in each dc, ss. (35 dc)',
    [[35, { 'ch-2': 1 }], [35]],
  ],
  [
    'a chain right below a title that no stop ends',
    'US',
    'Pocket tray, small\nCh 9\nR1: sc in 2nd ch from hook and in each ch across. (8)',
    [[8]],
  ],
  [
    'a slip knot before the chain, and where to stop',
    'US',
    'Start with a slip knot and ch 4.\nRow 1. Sc in 2nd ch from hook, sc in next 2 ch. (3)\nRow 2. Ch 1, turn. Put 1 sc in each of the first 2 stitches. Leave the other stitch alone. You have 2.\nRow 3. Ch 1, turn. 1 sc in the first stitch. Stop here. You have 1.',
    [[3], [2], [1]],
  ],
  [
    'rows that go up to a stitch before the one of the row below',
    'US',
    'Ch 16\nRow 1: sc in 2nd ch from hook and in each ch across. (15)\nRow 2: Ch 1, sc in next 6 sts, sc3tog, sc in next 6 sts. (13)\nRows 3-7: Ch 1, sc in each st to 1 st before the sc3tog of the row below, sc3tog, sc in each st to end, turn. (11, 9, 7, 5, 3 sts)',
    [[15], [13], [11], [9], [7], [5], [3]],
  ],
  [
    'rows that go up to a stitch before the center',
    'US',
    'Ch 16\nRow 1: sc in 2nd ch from hook and in each ch across. (15)\nRows 2-3: Ch 1, sc in each st to 1 st before the center st, sc3tog, sc in each st to end, turn. (13, 11 sts)',
    [[15], [13], [11]],
  ],
  [
    'rounds that go up to a stitch before the corner',
    'US',
    'Rnd 1: Magic ring, [3 sc, ch 2] 4 times in ring, join.\nRnd 2: Ch 1, *sc in each st to 1 st before corner, 2 sc in next st, (sc, ch 2, sc) in corner; rep from * 3 more times, join.',
    [
      [12, { 'ch-2': 4 }],
      [24, { 'ch-2': 4 }],
    ],
  ],
  [
    'the number of a round before its word',
    'US',
    '1. round: magic ring, 12 sc in the ring. = 12 sc\n2. round: 1 ch, * 1 sc in the next st, 2 sc in the next st; repeat from * still 5 times. = 18 sc',
    [[12], [18]],
  ],
  [
    'what a round is, behind its number',
    'UK',
    'Round 1: Magic ring, 24 dc in ring.\nRound 2, a shell border: * 1 dc in the next st., miss 1, 5 tr. in the next, miss 1; repeat from * to the end of the round, which makes six shells.',
    [[24], [36]],
  ],
  [
    'as many as there are in the end, with those that stand there',
    'US',
    'Ch 10, join with sl st to form ring.\nRnd 1: Ch 5 (to count as tr and ch-1), * tr in ring, ch 1; repeat from * until there are 16 tr, counting the ch-5 as the first; join with sl st to 4th ch of ch-5.',
    [[16, { 'ch-1': 16 }]],
  ],
  [
    'several things that are skipped one after the other',
    'US',
    'Rnd 1: Magic ring, (sc, ch 2) 4 times in ring, join.\nRnd 2: Ch 1, *5 dc in next ch-2 sp, ch 2, sc in next ch-2 sp, ch 2; rep from * once, join.\nRnd 3: Ch 1, *sc in next 5 dc, skip next ch-2, sc and ch-2; rep from * once, join.',
    [[4, { 'ch-2': 4 }], [12, { 'ch-2': 4 }], [10]],
  ],
  [
    'an edging round a block, with the ends of its rows',
    'US',
    'With MC, ch 13.\nRow 1: Hdc in 3rd ch from hook and in each ch across; turn. (11 hdc)\nRows 2-8: Ch 1, hdc in each hdc across; turn. (11 hdc)\n\nBorder\nRnd 1: Ch 1, 3 sc in first hdc, sc in next 9 hdc, 3 sc in last hdc; work 9 sc evenly spaced in the row ends; working in free loops of foundation ch, 3 sc in first ch, sc in next 9 chs, 3 sc in last ch; working along row ends, work 9 sc evenly spaced; join with sl st in first sc. (48 sc)',
    [...Array.from({ length: 8 }, (): Made => [11]), [48]],
  ],
  [
    'the ends of rows, named before and in the place',
    'US',
    'Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (5 sc)\nRows 2-4: Ch 1, sc in each sc across; turn.\n\nEdging\nRnd 1: Ch 1, 3 sc in first sc, sc in next 3 sc, 3 sc in last sc; working in ends of rows, sc in each of 4 rows; working in free loops of foundation ch, 3 sc in first ch, sc in next 3 chs, 3 sc in last ch; sc in each of 4 row ends; join. (26 sc)',
    [[5], [5], [5], [5], [26]],
  ],
  [
    'a list without brackets, how often, and its place',
    'UK',
    'Rnd 1: 4 ch (this is a tr & 1 ch), then 1 tr & 1 ch eleven times more in the ring, slip st to 3rd of the 4 ch.\nRnd 2: 3 ch for first tr, 2 tr in the hole, 1 tr on next tr, 2 ch. * Miss a hole, 1 tr on next tr, 2 tr in the next hole, 1 tr on next tr, 2 ch. From * five times in all, slip st to top of the 3 ch.',
    [
      [12, { 'ch-1': 12 }],
      [24, { 'ch-2': 6 }],
    ],
  ],
  [
    'how often more, where the chains before are the first',
    'UK',
    'Rnd 1: 4 ch (counts as tr and 1 ch), (1 tr, 1 ch) 11 more times in ring, ss to 3rd of 4 ch.',
    [[12, { 'ch-1': 12 }]],
  ],
  [
    'how often behind what one place is filled with',
    'UK',
    'Rnd 1: 4 ch, into the ring work 1 tr and 1 ch eleven times more, ss to 3rd of 4 ch.',
    [[12, { 'ch-1': 12 }]],
  ],
  [
    'a yarn that is broken off, and a count to talk about',
    'UK',
    'Rnd 1: Magic ring, 12 dc in ring, slip st, break off colour. 12 dc - count them!\nRnd 2: Cream. Join to any dc. 1 ch, 1 dc on every dc, slip st, cut the green. 12 dc',
    [[12], [12]],
  ],
  [
    'a slip stitch of older print',
    'UK',
    'Commence with 10 ch.\n1st Row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each of next 8 ch.\n2nd Row: 1 ch., 1 d.c. into each of next 3 d.c., 3 ch., sl.-st. into last d.c. worked (a picot), * 1 d.c. into each of next 3 d.c., 1 picot; repeat from * to end.',
    [[9], [9]],
  ],
  [
    'a stitch in brackets behind its chains, and a spot',
    'US',
    `${RING}Rnd 2: Ch 4 (dc + ch 1), *dc in next st, ch 1; rep from * around, sl st in 3rd ch.\nRnd 3: Start in any ch-1 space: ch 3 (dc), 2 dc in that space, then 3 dc in each of the other spaces, join.\nRnd 4: Ch 3, dc in the same spot, 2 dc in every st after that, join.`,
    [[12], [12, { 'ch-1': 12 }], [36], [72]],
  ],
  [
    'what two asterisks hold, in words behind them',
    'UK',
    `${RING}Rnd 2: 1 ch, *1 dc in next st, 2 dc in next st* do that bit six times. Ss.\nRnd 3: 1 ch, *1 dc in next 2 sts, 2 dc in next st* Keep repeating until you're back where you started, ss.\nRnd 4: 1 ch, *1 dc in next 3 sts, 2 dc in next st*; carry out this sequence 6 times. Ss.`.replaceAll(
      'sc',
      'dc',
    ),
    [[12], [18], [24], [30]],
  ],
  [
    'a pair of operations that is performed again',
    'US',
    `${RING}Rnd 2: Make one single crochet in the next stitch and an increase in the stitch following; perform this pair of operations six times in all.`,
    [[12], [18]],
  ],
  [
    'all in one space, within a bracket',
    'UK',
    'Round 1: Magic ring, (1 dc, 3 ch) 6 times in ring, ss.\nRound 2: Ss into 3-ch space, 3 ch (counts as 1 tr), 1 tr, 3 ch, 2 tr all in same space, 1 ch, then (2 tr, 3 ch, 2 tr, all in next 3-ch space, 1 ch) five times, ss in top of 3 ch.',
    [
      [6, { 'ch-3': 6 }],
      [24, { 'ch-3': 6, 'ch-1': 6 }],
    ],
  ],
  [
    'the cluster that opens a round',
    'US',
    `${RING}Rnd 2: Chain 4 (counts as dc and ch 1), *dc in next st, ch 1; repeat from * around, sl st in 3rd ch.\nRnd 3: Slip stitch into the first space and make an opening cluster there. Chain 2. Now make a cluster and chain 2 in each of the other 11 spaces. Join with a slip stitch in the top of the opening cluster.`,
    [[12], [12, { 'ch-1': 12 }], [12, { 'ch-2': 12 }]],
  ],
  [
    'one more corner, and one last group for it',
    'US',
    'Ch 4, join.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc, ch 2) three times in ring. Join. (12 dc)\nRnd 2: Ch 3, dc in next 2 dc, *(2 dc, ch 2, 2 dc) corner, dc in next 3 dc.* Do the * to * bit 3 times total, then one last (2 dc, ch 2, 2 dc) corner, sl st to top of ch 3. (28 dc)\nRnd 3: Ch 3, dc in next 4 dc, *(2 dc, ch 2, 2 dc) in corner, dc in next 7 dc; rep from * twice more, then one more corner, dc in last 2 dc, join. (44 dc)',
    [
      [12, { 'ch-2': 4 }],
      [28, { 'ch-2': 4 }],
      [44, { 'ch-2': 4 }],
    ],
  ],
  [
    'the post of the chain that began the round before',
    'US',
    'Ch 3 counts as a dc.\nRnd 1: Magic ring, ch 3, 7 dc in ring, join. (8 dc)\nRnd 2: Ch 3, FPdc around post of beg ch-3 of Rnd 1, *dc in next dc, FPdc around post of same dc; rep from * 6 more times, join. (8 dc, 8 FPdc)',
    [[8], [16]],
  ],
  [
    'all of a list so many times, and uprights of an earlier round',
    'UK',
    'Make 6 ch. and join round. 1st row: 5 ch. (the first 3 of which serve for a tr.), then 1 tr., 2 ch., five times into the ring, and join to the 3rd of the 5 ch. 2nd row: Into each space work 1 d.c., 5 tr., 1 d.c. 3rd row: Working behind, 1 d.c. round the upright made by the first 3 ch. of the 1st row, * 5 ch., 1 d.c. round the next upright tr. of the 1st row; repeat from * four times more, 5 ch., and join.',
    [[6, { 'ch-2': 6 }], [42], [6, { 'ch-5': 6 }]],
  ],
  [
    'corners that are stitches, counted',
    'UK',
    'Round 1. Into a magic ring: 3ch (counts as a tr), 2tr, 1dtr, then [3tr, 1dtr] three times. Slip stitch to the top of the 3ch. 12 trebles and 4 corners.',
    [[16]],
  ],
  [
    'two lobes that are joined',
    'US',
    'Lobes (make 2)\nR1: MR, 6 sc (6)\nR2: 2 sc in each st (12)\n\nBody\nR3: sc in all 12 sts of lobe on hook, then sc in all 12 sts of the other lobe (24)\nR4: (sc in next 4 sts, sc2tog) 4 times (20)',
    [[6], [12], [24], [20]],
  ],
  [
    'two lobes, of which the round alone tells that joins them',
    'US',
    'Rnd 1: 6 sc in magic ring. (6)\nRnd 2: sc in each of the 6 sts of the second lobe, sc in each of the 6 sts of the first lobe. (12)',
    [[6], [12]],
  ],
  [
    'a colour behind the number of a round, and dashes before its lines',
    'US',
    'Round 1, white\n- magic ring, ch 1, 12 sc in ring, join.\n\nRound 2, pink\n- ch 1, 2 sc in each sc, join.',
    [[12], [24]],
  ],
  [
    'a corner explained with its place first',
    'US',
    'Corner: in the chain space work 2 dc, ch 2, 2 dc.\n\nRnd 1: Magic ring, [3 dc in ring, ch 2] 4 times, join.\nRnd 2: Ch 1, (dc in next 3 dc, corner) 4 times, join.',
    [
      [12, { 'ch-2': 4 }],
      [28, { 'ch-2': 4 }],
    ],
  ],
  [
    'what the turning chain stands for, by its length',
    'UK',
    'The turning chain stands for the first stitch whenever it is 2ch (htr) or 3ch (tr). 1ch never counts.\nROUND 1 Magic loop; 2ch, 11 htr into loop, join. 12 sts.\nROUND 2 3ch, 1 tr into same st, 2 tr into each rem st, join. 24 sts.\nROUND 3 1ch, 1 dc into each st, join. 24 sts.',
    [[12], [24], [24]],
  ],
  [
    'foundation chains among what is skipped',
    'US',
    'Ch 20.\nRow 1: Dc in 8th ch from hook (7 skipped chs count as 2 foundation chs, dc and ch-2 sp), *ch 2, sk next 2 chs, dc in next ch; rep from * 3 more times; turn.',
    [[6, { 'ch-2': 5 }]],
  ],
  [
    'a middle told before it is reached',
    'UK',
    'Round 1: Magic ring, 1 ch, (1 dc, 5 ch) 4 times in ring, ss to first dc.\nRound 2: Into each 5 ch. sp. work 1 d.c., 1 h.tr., 3 tr., 1 h.tr., 1 d.c.; s.s. to first d.c.\nRound 3: S.s. over next 2 sts. to centre tr. of scallop, s.s. into this tr., 1 d.c. into same place, * 7 ch., 1 d.c. into centre tr. of next scallop; repeat from * all round, 7 ch., s.s. to first d.c.',
    [[4, { 'ch-5': 4 }], [28], [4, { 'ch-7': 4 }]],
  ],
  [
    'a first round without its number',
    'US',
    'Ch 5, sl st to form ring. Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 1, *sc in next st, leave out next st, ch 3; rep from * 5 more times, join. (6 sc)',
    [[12], [6, { 'ch-3': 6 }]],
  ],
  [
    'a ring in other words',
    'US',
    'Begin: magic ring (thread ring).\n\nRound 1: 3 ch (= 1st dc), 14 dc in the ring. = 15 dc',
    [[15]],
  ],
  [
    'a list that is gone around like this, over its semicolon',
    'UK',
    'Round 1: Magic ring, (1 dc, 3 ch, 1 dc, 1 ch) 6 times in ring, ss.\nRound 2: Ss into 3-ch space, 1 ch, then go round like this six times: in the 3-ch space work 1 dc, 1 htr, 1 tr, 1 htr, 1 dc; then 1 dc in the 1-ch space. Finish with ss in first dc.',
    [[12, { 'ch-3': 6, 'ch-1': 6 }], [36]],
  ],
  [
    'what remains, and is worked',
    'US',
    `${RING}Rnd 2: Five times, make 1 sc in next st and an increase in the next. Two stitches remain; work 1 sc in each of them. (17)\nRnd 3: *2 sc in next st, sc in next st; rep from * 7 more times. One stitch remains, in which make one single crochet. The round comprises twenty-five stitches.\nRnd 4: (Sc in next 3 sts, inc) 6 times, and, finally, sc in the stitch that remains. (31)\nRnd 5: (Sc in next 4 sts, inc) 6 times. This leaves one stitch, so sc in it. (37)`,
    [[12], [17], [25], [31], [37]],
  ],
  [
    'increases that are displaced',
    'US',
    `${RING}Rnd 2: Displace the increases once more: sc in the first st, and an increase in the second; then, five times, sc in next st, 2 sc in next st.\nRnd 3: The increases are staggered here. (Sc in next 2 sts, inc) 6 times.`,
    [[12], [18], [24]],
  ],
  [
    'all counted together, and the other side of the chain',
    'US',
    'Make 6 ch.\n1 round: begin from 2nd ch from the hook. 1 sc in each of 4 ch. In the last ch make: 1 sc, 2 ch, 1 sc. Now go by the other side of chain: 1 sc in each of 4 ch. Together 10 stitches.\n2 round: 1 sc in each of 5 st, in the space of 2 ch make 2 sc, 1 sc in each of 5 st. Together: 12 sc\n3 round: 2 sc in each st. Altogether: 24 sc',
    [[10, { 'ch-2': 1 }], [12], [24]],
  ],
  [
    'a table that was copied from a sheet, with a column for the yarn',
    'UK',
    'Round\tYarn\tWhat to do\tStitches\n1\tA\tmagic ring: 1 ch, 12 dc, ss\t12\n2\tB\t1 ch, 2 dc in each st, ss\t24 dc\n3-4\t\t1 ch, 1 dc in each st, ss.\t24\n5\tA\t1 ch, (1 dc in next 3 sts, 2 dc in next st) 6 times, ss\t30',
    [[12], [24], [24], [24], [30]],
  ],
  [
    'where to start, right above the chain, and where to stop and turn',
    'US',
    'START AT THE POINT\nCh 5.\nRow 1: Sc in 2nd ch from hook and in each ch. Turn. = 4\nRow 2: Ch 1. Sc in first 2 sts. Stop there and turn! = 2\nRow 3: Ch 1. Sc in first st. Stop and turn. = 1',
    [[4], [2], [1]],
  ],
  [
    'the spaces of so many groups',
    'US',
    `V-stitch (V-st): (Dc, ch 1, dc) in one stitch.\n${RING}Rnd 2: Ch 1, V-st in each sc, join.\nRnd 3: Ch 1, 4 dc in the ch-1 space of each of the next 9 V-sts, 4 dc in ch-1 sps of next 3 V-sts, join.`,
    [[12], [24, { 'ch-1': 12 }], [48]],
  ],
  [
    'stitches that cross, as they are explained',
    'US',
    `Crossed sc (X): Skip next stitch, sc in following stitch; working in front of sc just made, sc in skipped stitch. Counts as 2 sc.\n${RING}Rnd 2: Ch 1, *sc in next sc, crossed sc over next 2 sc, X, ch 2, sc in next sc; rep from * once more, join.`,
    [[12], [12, { 'ch-2': 2 }]],
  ],
  [
    'chains that count now as one stitch and now as another',
    'US',
    'Chain-4 at beginning of round counts as first double crochet and chain-1 or as first treble crochet as stated.\nRnd 1: Magic ring, ch 4 (counts as dc, ch 1), [dc in ring, ch 1] 7 times, join.\nRnd 2: Ch 1, 2 sc in each ch-1 sp, join. (16 sc)',
    [[8, { 'ch-1': 8 }], [16]],
  ],
  [
    'what goes into a space by what it is called',
    'UK',
    'Round 1: Magic ring, (1dc, 2ch) six times into the ring, ss.\nRound 2: Into every 2ch space work a petal of 1dc, 1htr, 3tr, 1htr, 1dc. Slip stitch to the first dc.',
    [[6, { 'ch-2': 6 }], [42]],
  ],
  [
    'a loop before a number',
    'UK',
    'R1: 6dc in magic ring (6)\nR2: BLO 6dc (6)\nR3: FLO inc x 6 (12)',
    [[6], [6], [12]],
  ],
  [
    'a list of abbreviations with their plurals behind a stroke',
    'UK',
    'ABBREVIATIONS (UK)\nYrh: yarn round hook\nSp/s: space/s\n\nHEXAGON\nUsing Yarn A, make a magic ring.\nRnd 1 3ch (counts as 1tr throughout), 1tr in ring, 1ch, [2tr in ring, 1ch] 5 times, ss in top of beg 3ch. [12 tr, 6 ch-sps]',
    [[12, { 'ch-1': 6 }]],
  ],
  [
    'the stitches that are used, before the rounds',
    'US',
    'BASIC STITCHES USED\nCh, sl st, sc, dc.\n\nSNOWFLAKE\nRnd 1: Ch 6, sl st in first ch to form ring, ch 1, 12 sc in ring, join in first sc. (12 sc made)',
    [[12]],
  ],
  [
    'the chain that began the round before, and the next ones',
    'UK',
    'My 3ch at the start always counts as a treble.\nRound 1 - magic ring, 3ch, 11tr into the ring, sl st to the top of the 3ch.\nRound 2 - 1ch (not a stitch this time), 1dc in the top of the 3ch and in the next 2tr, 2dc in next tr, 1dc in each of next 8 tr. Sl st to the first dc.',
    [[12], [13]],
  ],
  [
    'what the last repeat leaves off, behind the count',
    'US',
    'Rnd 1: Magic ring, (3 sc, ch 3) 5 times in ring, join.\nRnd 2: Sl st in next sc, ch 1, sc in same st, * miss 1 sc, work 3 dc, ch 2 and 3 dc all in next ch-3 sp, miss 1 sc, 1 sc in next sc; repeat from * until there are 5 points, leaving off the sc at the end of the 5th; join with sl st to 1st sc.',
    [
      [15, { 'ch-3': 5 }],
      [35, { 'ch-2': 5 }],
    ],
  ],
  [
    'a space that is skipped before others, and its like behind them passed',
    'US',
    `${RING}Rnd 2: Ch 1, *sc in next 2 sts, ch 2, sc in next st, ch 1, sc in next st, ch 1, sc in next st, ch 2, sc in next st; rep from * once more, join.\nRnd 3: Ch 1, *sc in next sc, ch 3, skip next ch-2 sp, [sc in next ch-1 sp, ch 3] twice; rep from * once more, join.`,
    [[12], [12, { 'ch-2': 4, 'ch-1': 4 }], [6, { 'ch-3': 6 }]],
  ],
]

describe('ways of writing', () => readsWays(CASES))

describe('stitches round posts that have a count of their own', () => {
  const page = (count: string) =>
    `${RING}Rnd 2: Ch 1, *dc in next 2 sts, FPdc around next st; rep from * around, join. (${count})`
  const errors = (text: string) =>
    readRounds(text, { terms: 'US' }).findings.filter(({ severity }) => severity === 'error').length

  it('are none of the others', () => {
    expect(errors(page('8 dc, 4 FPdc'))).toBe(0)
    expect(errors(page('12 dc'))).toBe(0)
    expect(errors(page('12 dc, 4 FPdc'))).toBe(1)
  })
})
