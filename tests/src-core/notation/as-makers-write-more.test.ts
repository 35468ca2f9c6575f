/** More ways of writing that fresh hands used: each reads as its plain form does. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { RING, readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const POINT =
  'Ch 2.\nRow 1: 3 sc in 2nd ch from hook, turn.\nRow 2: Ch 1, 2 sc in first st, sc in next st, 2 sc in last st, turn.\nRow 3: Ch 1, 2 sc in first st, sc in next 3 sts, 2 sc in last st, turn.\n'

const CASES: readonly Way[] = [
  [
    'a second piece that goes back to a row, which then has only what the first one left',
    'US',
    `${POINT}FIRST HUMP\nRow 4: Ch 1, sc in first 3 sts. Leave the rest unworked. Turn.\nRow 5: Ch 1, sc3tog. Fasten off.\nSECOND HUMP\nGo back to Row 3. Skip the middle st, join yarn in the next st.\nRow 6: Ch 1, sc in same st and in the last 2 sts. Turn.\nRow 7: Ch 1, sc3tog. Fasten off.`,
    [[3], [5], [7], [3], [1], [3], [1]],
  ],
  [
    'a second piece on the stitches that a row has left, named once',
    'US',
    `${POINT}Row 4: Ch 1, sc in next 3 sts, leave the rest unworked, turn.\nRow 5: Ch 1, sc3tog. Fasten off.\nRow 6: Skip next unworked st of Row 3, join yarn in next st, ch 1, sc in same st and in the next 2 sts, turn.`,
    [[3], [5], [7], [3], [1], [3]],
  ],
  [
    'a stitch of its own name that is told to take the place of the one behind it',
    'US',
    `Stitches to know\ndrop dc – double crochet in the free front loop of the stitch two rounds down; do not work the stitch behind it\n\n${RING}Rnd 2: Ch 1, sc blo in each sc around, join.\nRnd 3, with B, through both loops: *Sc in next 3 sc, drop dc; rep from * 2 more times, join. (9 sc, 3 drop dc)`,
    [[12], [12], [12]],
  ],
  [
    'a stitch in a list of two to know first',
    'UK',
    'Two stitches to know first:\n- Spike: a dc worked over the round below. Leave out the stitch behind the spike.\n\nRound 1: 8dc into a magic ring, slip stitch to the first dc. (8)\nRound 2: 1ch, *1dc in the next 3 stitches, 1 spike; repeat from * once more. Slip stitch to the first dc. (8)',
    [[8], [8]],
  ],
  [
    'a name with a hyphen whose halves are known',
    'US',
    `Special stitches\nfl-tr: treble crochet worked into the free front loop of the stitch indicated.\n\n${RING}Rnd 2: Ch 1, *sc in next 2 sc, fl-tr in next sc; rep from * 3 more times, join.`,
    [[12], [12]],
  ],
  [
    'a round that begins in the second of any pair, and comes back to the first',
    'US',
    `Rnd 1: Magic ring, 6 sc in ring, join.\nRnd 2: 2 dc in each sc around, join. (12 dc)\nRnd 3: Standing sc in second dc of any pair, sc in next dc, *sc in next 2 dc; rep from * 4 more times, join. (12 sc)`,
    [[6], [12], [12]],
  ],
  [
    'a decrease told in its steps',
    'UK',
    '1st round: Magic ring, 12 d.c. into ring.\n2nd round: (Draw up a loop in each of next 2 d.c., yarn over hook and draw through all 3 loops) 6 times. (6 sts.)',
    [[12], [6]],
  ],
  [
    'what a chain becomes, told before it',
    'UK',
    '1st round: Magic ring, 6 d.c. into ring.\n2nd round: 1 d.c. into each st., s.s. into first d.c., then for the stem work 8 ch., s.s. into 2nd ch. from hook and into each of next 6 ch., s.s. into first d.c. again. Fasten off. (6 d.c.)',
    [[6], [6]],
  ],
  [
    'a border along a foundation chain of which every other chain was skipped',
    'US',
    'Ch 10.\nRow 1: Sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * to end. Turn. (5 sc, 4 ch-1 sps)\n\nBORDER\nRnd 1: Ch 1, (sc, ch 2, sc) in first sc, (sc in next ch-1 sp, sc in next sc) 3 times, sc in next ch-1 sp, (sc, ch 2, sc) in last sc; working along foundation ch, (sc, ch 2, sc) in first ch, sc in each of next 7 ch, (sc, ch 2, sc) in last ch; join with sl st in first sc. (22 sc)',
    [
      [5, { 'ch-1': 4 }],
      [22, { 'ch-2': 4 }],
    ],
  ],
  [
    'counts in pointed brackets, in turn',
    'US',
    'The (ch 1, sc) that ends each round stands for the last ch-2 sp. Ch 3 counts as dc.\n\nRnd 1: Magic ring, ch 3, 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 1, sc in top of ch-3. <12 dc, 4 ch-2 sps>\nRnds 2-3: Ch 3, dc in sp made by joining sc, dc in each dc to next corner, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in each dc to next corner; rep from * 2 more times, 2 dc in first sp, ch 1, sc in top of ch-3. <28, 44 dc; 4 ch-2 sps>\nRnd 4: Ch 1, sc in each dc and 2 sc in each sp around, join.',
    [[12, { 'ch-2': 4 }], [28, { 'ch-2': 4 }], [44, { 'ch-2': 4 }], [52]],
  ],
  [
    'a count and talk behind it',
    'UK',
    'Round 1: Magic ring, 12 dc in ring, slip stitch to first dc.\nRound 2: 2 dc in each dc round. Slip stitch to first dc and fasten off. 24 dc, a pot of tea, and on to the next one.',
    [[12], [24]],
  ],
  [
    'a repeat that ends in the slip stitch it began with',
    'US',
    `${RING}Rnd 2: Join with sl st in any sc, *(ch 2, 2 dc) in same sc, (2 dc, ch 2, sl st) in next sc, sl st in next sc; rep from * 5 more times, ending with sl st in joining sl st.`,
    [[12], [24, { 'ch-2': 12 }]],
  ],
  [
    'spaces beside V-stitches, which have their own',
    'US',
    `V-st: (dc, ch 1, dc) in same st.\n\n${RING}Rnd 2: Ch 1, (V-st in next sc, ch 1, sk next 2 sc) 4 times, join. (4 V-sts, 4 ch-1 sps)`,
    [[12], [8, { 'ch-1': 8 }]],
  ],
  [
    'a shell that is told with its place, and its beginning that leads there',
    'UK',
    'Shell = (2tr, 2ch, 2tr) all into 2ch-sp of next shell.\nBeg shell = ss across to 2ch-sp of first shell, 3ch (counts as 1tr), (1tr, 2ch, 2tr) all into same sp.\n\nRound 1: Magic ring, 1ch, 12dc into ring, ss into first dc.\nRound 2: 3ch (counts as 1tr), (1tr, 2ch, 2tr) into same dc, *miss next dc, (2tr, 2ch, 2tr) into next dc; repeat from * 4 times more, miss last dc, ss into 3rd ch.\nRound 3: Beg shell, 3ch, *shell, 3ch; repeat from * to end, ss into 3rd ch. (6 shells, six 3ch-sps)',
    [[12], [24, { 'ch-2': 6 }], [24, { 'ch-2': 6, 'ch-3': 6 }]],
  ],
  [
    'the first and the next of a fan, beside shells of which the space is worked',
    'UK',
    'Round 1: Magic ring, 1 ch, 4 dc in ring, ss.\nRound 2: 1 ch, *7 tr in next dc, 1 ch, (2tr, 2ch, 2tr) in next dc, 1 ch; repeat from * once more, ss.\nRound 3: *1tr into first tr of fan, (1ch, 1tr into next tr of fan) 6 times, 2 ch, (2tr, 2ch, 2tr) in next 2ch-sp, 2 ch; repeat from * to end, ss.',
    [[4], [22, { 'ch-1': 4, 'ch-2': 2 }], [22, { 'ch-1': 12, 'ch-2': 6 }]],
  ],
  [
    'points joined in a slip stitch between two of them',
    'US',
    'Rnd 1: Magic ring, 15 dc in ring, join.\nRnd 2: *Ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in last ch, sk 2 dc, sl st in next dc* 5 times. Cut yarn.\nRnd 3: Join with sl st in a sl st between 2 points. *Sc in free loops of next 5 chs, ch 2, sc in next 5 sts down the other side of the point, sl st in next sl st* 5 times. Then block and hang it up. (50 sc)',
    [[15], [20], [50, { 'ch-2': 5 }]],
  ],
  [
    'what chains stand for, in a bracket without a verb',
    'US',
    'Round One. Ch 6, sl st to the first ch (ring). Ch 5 (a dc and a ch-2 space), [dc in ring, ch 2] 7 times; sl st to 3rd ch of ch-5. Eight dc, eight ch-2 spaces.',
    [[8, { 'ch-2': 8 }]],
  ],
  [
    'a round that closes in "the 3ch"',
    'UK',
    '1. Magic ring. 3ch (= 1tr), 11tr in the ring. Ss to the 3ch. (12tr)\n2. 3ch, 1tr in the same place, 2tr in every stitch to the end. Ss to the 3ch. (24tr)',
    [[12], [24]],
  ],
  [
    'the name of a yarn alone where a round begins',
    'UK',
    'hook 3mm, 4ply cotton in ecru and indigo\n\nto start: ecru, 5ch, ss in the first ch for a ring\n\nround 1: 1ch, 8dc in ring, ss in first dc\n\nround 2: indigo, join in any dc, 1ch, 2dc in each dc, cut indigo',
    [[8], [16]],
  ],
  [
    'a key with bars between its entries',
    'UK',
    'Key (UK): ch = chain | ss = slip stitch | cnr = (3 tr, 3 ch, 3 tr) into the 3-ch-sp\n\nROUND 1: Magic ring. 3 ch (counts as 1 tr), 2 tr into the ring, [3 ch, 3 tr into the ring] twice, 3 ch. Join with ss into 3rd ch of 3 ch.\nROUND 2:\n3 ch (counts as 1 tr), 1 tr into each of next 2 tr, cnr, [1 tr into each of next 3 tr, cnr] twice.',
    [
      [9, { 'ch-3': 3 }],
      [27, { 'ch-3': 3 }],
    ],
  ],
  [
    'the title of a part with how many of it',
    'US',
    'The Flower\n\nR1: magic ring, ch 1, 10 sc into the ring, sl st to the first sc.\n\nThe Leaf – make 2\n\nIn green, ch 4.\n\nR1: sc in second ch from hook, sc in next ch, sc in last ch.',
    [[10], [3]],
  ],
  [
    'a way that goes on until there are so many',
    'US',
    'Rnd 1: Magic ring, ch 3 (counts as dc), 15 dc in ring, join.\nRnd 2: Ch 1, 5 dc in same st, ch 3, skip next dc, 5 dc in next dc, ch 3, skip next dc; continue in this way around until there are 8 groups in all and 8 ch-3 spaces; join.',
    [[16], [40, { 'ch-3': 8 }]],
  ],
  [
    'rounds between bars with their counts, and how every round ends',
    'US',
    'ch 3 = 1 dc\nEnd every round: sl st in first st.\n\nR1 | MR: ch 3, 15 dc | 16 dc\nR2 | ch 3, (dc, ch 1, dc) in next dc, [dc in next dc, (dc, ch 1, dc) in next dc] x7 | 24 dc, 8 ch-1',
    [[16], [24, { 'ch-1': 8 }]],
  ],
  [
    'how one goes on from gap to gap, and a count with what lies between',
    'US',
    'Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, join.\nRnd 2: (3 dc between dc, ch 2) 12 times, moving on one gap each time.\nRnd 3: Standing sc in any ch-2 sp, skip 1 dc, 5 dc in next dc, skip 1 dc, (sc in next ch-2 sp, skip 1 dc, 5 dc in next dc, skip 1 dc) 11 times. — 12 shells of 5 dc with 12 sc between (72 sts)',
    [[12], [36, { 'ch-2': 12 }], [72]],
  ],
  [
    'what you will have left',
    'US',
    `${RING}Rnd 2: Ch 1, sc in same place, *2 sc in next st, sc in next st.* Five times in total. You'll have one stitch left: put 1 sc in it and slip stitch to your first sc. (17 sc)`,
    [[12], [17]],
  ],
  [
    'a turn told within what goes into the ring',
    'UK',
    '1st row Magic ring, 4ch (counts as 1tr, 1ch), into ring work 3tr, 3ch, 3tr, 1ch, 1tr, turn.\n2nd row 4ch (counts as 1tr, 1ch), 3 tr in next 1ch sp, 1ch, [3tr, 3ch, 3tr] in 3ch sp, 1ch, 3 tr in last sp, 1ch, 1tr in 3rd of 4ch, turn.',
    [
      [8, { 'ch-1': 2, 'ch-3': 1 }],
      [14, { 'ch-1': 4, 'ch-3': 1 }],
    ],
  ],
  [
    'what is left out of the last repeat',
    'US',
    'Rnd 1: Magic ring, 12 sc in ring, join.\nRnd 2: Sc in first sc, *5 dc in next sc, sc in next sc. Repeat from * around, omitting last sc of last repeat. Join in first sc.',
    [[12], [36]],
  ],
  [
    'rounds whose parts stand between slashes',
    'US',
    'ch 3 at start = 1 dc\n\nrnd 1 / magic ring / ch 3, 3 dc, ch 3, *4 dc, ch 3* x2 / 12 dc, 3 sps\nrnd 2 / ch 1, sc 4, (sc, ch 2, sc) in sp, *sc 4, (sc, ch 2, sc) in sp* x2 / 18 sc',
    [
      [12, { 'ch-3': 3 }],
      [18, { 'ch-2': 3 }],
    ],
  ],
  [
    'what was put right since the last version, before the rounds',
    'UK',
    'Changes since 2.0\n• Rd 2: number of repeats corrected\n• Rd 3: corner changed from 2 dc to 3 dc\n\nRd 1: Magic ring, 8 dc into ring, ss to first dc. [8 dc]\nRd 2: 2 dc into each dc, ss to first dc. [16 dc]',
    [[8], [16]],
  ],
  [
    'a spine, and the chain that a row began with by its length',
    'US',
    'The ch-4 at the start of a row is 1 dc plus a ch-1 space.\n\nRow 1: Magic ring, ch 4, 3 dc in ring, ch 2 (spine), 3 dc in ring, ch 1, dc in ring. Turn.\nRow 2: Ch 4, 3 dc in first ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in spine, ch 1, 3 dc in ch-4 sp, ch 1, dc in 3rd ch of same ch-4. Turn. (14 dc)',
    [
      [8, { 'ch-1': 2, 'ch-2': 1 }],
      [14, { 'ch-1': 4, 'ch-2': 1 }],
    ],
  ],
  [
    'a count along each side, and what it is for',
    'UK',
    'Round 1: Magic ring, 3 ch (counts as tr), 3 tr into ring, 2 ch, (4 tr into ring, 2 ch) 3 times, ss into top of 3 ch.\nRound 2: 3 ch (counts as tr), 1 tr into each of next 3 tr, (2 tr, 2 ch, 2 tr) into 2 ch sp, * 1 tr into each of next 4 tr, (2 tr, 2 ch, 2 tr) into 2 ch sp, rep from * twice more, ss into top of 3 ch—8 tr along each side, to match octagon. Fasten off.',
    [
      [16, { 'ch-2': 4 }],
      [32, { 'ch-2': 4 }],
    ],
  ],
  [
    'from one star to the other, so many times',
    'US',
    'Rnd 1: Amigurumi ring, ch 3 (a dc), 11 dc in ring, join.\nRnd 2: Ch 1. *Sc in each of the next 2 dc, ch 3.* Make * to * 6 times. Sl st to first sc. (12 sc)',
    [[12], [12, { 'ch-3': 6 }]],
  ],
  [
    'scallops between corners',
    'US',
    'Rnd 1: Magic ring, ch 1, *(sc, ch 3, sc) in ring, ch 4, sc in ring, ch 4; rep from * 3 more times, join. (12 sc)\nRnd 2: Sl st in ch-3 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, (sc, hdc, 2 dc, hdc, sc) in each of next 2 ch-4 sps, *(3 dc, ch 2, 3 dc) in next ch-3 sp, (sc, hdc, 2 dc, hdc, sc) in each of next 2 ch-4 sps; rep from * twice more, join. (8 scallops; 4 ch-2 sps)',
    [
      [12, { 'ch-3': 4, 'ch-4': 8 }],
      [72, { 'ch-2': 4 }],
    ],
  ],
  [
    'so many bobbles in as many stitches, and their tops',
    'US',
    `Bobble: 5 dc in one st, held together.\n\n${RING}Rnd 2: Ch 1, 6 bobbles in next 6 sts, sc in next 6 sts, join. (12)\nRnd 3: Ch 1, 2 sc in top of each bobble, sc in each sc around, join. (18 sc)\nRnd 4: Ch 1, sc in each st, join.`,
    [[12], [12], [18], [18]],
  ],
  [
    'the top of a bobble that is told without "next"',
    'US',
    `Bobble: 5 dc in one st, held together.\n\n${RING}Rnd 2: Ch 1, *sc in next st, bobble in next st; rep from * around, join.\nRnd 3: Ch 1, *sc in next sc, 2 sc in top of bobble; rep from * around, join. (18 sc)`,
    [[12], [12], [18]],
  ],
  [
    'any stitch of a round that has popcorns besides',
    'US',
    `Popcorn (pc): Work 4 dc in the st indicated, take the loop off the hook, insert hook in the first of the 4 dc, pick up the dropped loop and draw it through.\n\n${RING}Rnd 2: Ch 1, *pc in next sc, ch 1, dc in next sc, ch 1; rep from * 5 times more; join. (6 pc, 6 dc)\nRnd 3: Join B with sl st in any dc, ch 1, *2 sc in dc, sc in next ch-1 sp, sc in next pc, sc in next ch-1 sp; rep from * around, join.`,
    [[12], [12, { 'ch-1': 12 }], [30]],
  ],
  [
    'the chain that stands for a stitch of an earlier round, gone around',
    'UK',
    '1st round.—Magic ring, 5 ch. (to stand for 1 tr., 2 ch.), (1 tr. into ring, 2 ch.) 7 times, s.s. into 3rd of 5 ch.\n2nd round.—1 ch., into each space work 1 d.c., 2 tr. and 1 d.c., s.s. into first d.c.\n3rd round.—Working behind the petals, 1 ch., 1 d.c. round the 3 ch. which stand for the first tr. of 1st round, * 5 ch., 1 d.c. round the stem of next tr. of 1st round; repeat from * 6 times more, 5 ch., s.s. into first d.c.',
    [[8, { 'ch-2': 8 }], [32], [8, { 'ch-5': 8 }]],
  ],
  [
    'a stitch left out of the last repeat behind what goes into a loop',
    'US',
    'RND 1) Magic ring, 6 sc in ring, sl st in first sc.\nRND 2) Ch 1; *3 sc in next sc, ch 7; rep from * around, sl st in first sc. (18 sc)\nRND 3) Sl st in next sc; ch 1, sc in same sc; *skip next sc, in ch-7 space work (3 hdc, 2 dc, ch 4, 2 dc, 3 hdc), skip next sc, sc in next sc*, rep between *s 5 more times, leaving off the very last sc of the last repeat; sl st in first sc. (66 sts)',
    [[6], [18, { 'ch-7': 6 }], [66, { 'ch-4': 6 }]],
  ],
  [
    'a repeat that ends with a piece of it',
    'US',
    'Rnd 1: Magic ring, 16 sc in ring, join.\nRnd 2: Ch 1, sc in first sc, *skip 1 sc, 5 dc in next sc, skip 1 sc, sc in next sc; rep from * around, ending with skip 1, sl st to first sc.',
    [[16], [24]],
  ],
  [
    'the same from the middle of it, where the place goes without saying',
    'UK',
    'Round 1: Magic ring, 16 dc in ring, ss.\nRound 2: 1 dc in any st, *miss 1 dc, 5 tr in next dc, miss 1 dc, 1 dc in next dc; rep from * around, ending with 5 tr, miss 1 dc, ss in first dc.',
    [[16], [24]],
  ],
  [
    'a corner that ends the last repeat, and what stood before it in the lap',
    'US',
    'Rnd 1: Magic ring, [sc in ring, ch 4, dc in ring, ch 4] 6 times, join.\nRnd 2: Sl st in next ch-4 sp, ch 3 (counts as dc), 3 dc in same sp, *4 dc in next ch-4 sp, (dc, ch 2, dc) in next sc, 4 dc in next ch-4 sp; rep from * around, ending with (dc, ch 2, dc) in last sc; join with sl st in top of beg ch-3. (60 dc, 6 corners)',
    [
      [12, { 'ch-4': 12 }],
      [60, { 'ch-2': 6 }],
    ],
  ],
  [
    'chains that are no stitch, said for what follows as well',
    'US',
    'PUFF: [yo, insert hook, pull up a long loop] 3 times in same place, yo, pull through all 7 loops on hook.\n\nRnd 1: Magic ring, ch 1, 8 sc in ring, sl st to first sc.\nRnd 2: Attach B to any sc with a sl st, ch 2 (not a stitch, here and below), [puff in next sc, ch 2] 8 times beginning in the same sc, sl st to first puff. {8 puffs, 8 ch-2 sps}\nRnd 3: Attach C to any ch-2 sp with a sl st, ch 2, [(puff, ch 2, puff) in ch-2 sp, ch 1] 8 times, sl st to first puff.',
    [[8], [8, { 'ch-2': 8 }], [16, { 'ch-2': 8, 'ch-1': 8 }]],
  ],
  [
    'the foundation chain behind a corner of chains',
    'US',
    'Ch 8.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn.\nRow 2: Ch 1, sc in each st across; do not turn.\n\nBORDER\nRnd 1: Ch 1, sc in end of each of 2 rows, ch 2; working along foundation ch, sc in each of next 7 chs, ch 2; sc in end of each of 2 rows, ch 2; sc in each of next 7 sc of Row 2, ch 2; join with sl st in first sc.',
    [[7], [7], [18, { 'ch-2': 4 }]],
  ],
  [
    'the same stitch where the round begins in an earlier one',
    'US',
    'Rnd 1: Ch 2, 12 sc in 2nd ch from hook, join with sl st in first sc.\nRnd 2: Working in front lps only, *ch 3, sl st in next sc; rep from * 11 times, ending with sl st in first sc.\nRnd 3: Working behind Rnd 2 in back lps of Rnd 1, ch 3 (counts as dc), dc in same st, 2 dc in each of next 11 sc, join with sl st in top of ch-3.',
    [[12], [0, { 'ch-3': 12 }], [24]],
  ],
  [
    'yarn that is joined by a slip stitch without another word',
    'US',
    'Rnd 1: Magic ring, ch 1, [hdc in ring, ch 2] 6 times, sl st in first hdc.\nRnd 2: Sl st Cloud into a ch-2 sp; ch 3 (= dc), 3 dc in same sp, ch 1, [4 dc in next ch-2 sp, ch 1] 5 times; sl st in top of ch 3.',
    [
      [6, { 'ch-2': 6 }],
      [24, { 'ch-1': 6 }],
    ],
  ],
  [
    'a corner of the first piece, called by its name, joined to',
    'US',
    'First Hexie\nRd 1: Magic ring, ch 1, [sc in ring, ch 2] 6 times, sl st in first sc.\n\nNext Hexie\nRd 1 (join): Magic ring, ch 1, sc in ring, ch 1, sl st in a corner ch-2 sp of First Hexie, ch 1, [sc in ring, ch 2] 5 times, sl st in first sc.',
    [
      [6, { 'ch-2': 6 }],
      [6, { 'ch-2': 6 }],
    ],
  ],
  [
    'a stitch whose whole name stands before how it is made, and posts that are gone round',
    'UK',
    'ftr = front treble: 1tr worked into the free front loop of the dc stated, in front of the rounds between\nrtrf = raised treble front: 1tr worked round the stem of the st stated, from the front\n\nRound 1: Magic ring, 1ch, 8dc into ring, ss to first dc.\nRound 2: 1ch, 2dc in each dc around, ss to first dc.\nRound 3: 1ch, *1dc in next dc, 1ftr in dc of Round 1 below, 1dc in next dc; rep from * 7 more times, ss to first dc. [16dc, 8ftr]\nRound 4: 1ch, 1dc in each st around, ss to first dc.\nRound 5: 1ch, *1dc in next dc, 1rtrf round ftr of Round 3 below, miss the dc of Round 4 behind it, 2dc in next dc; rep from * 7 more times, ss to first dc. [24dc, 8rtrf]',
    [[8], [16], [24], [24], [32]],
  ],
  [
    'stitches of two that cross, counted by their own name beside others',
    'US',
    'STITCH KEY\nX-st (crossed stitch, worked over 2 sts): Sk next st, dc in next st, dc in skipped st, working in front of dc just made. One X-st = 2 dc.\n\nCh 20.\nROW 1: Dc in 4th ch from hook (skipped 3 chs count as dc), dc in each ch across, turn.\nROW 2: Ch 3 (counts as dc), X-st 8 times, dc in top of beg ch, turn. 8 X-sts, 2 dc.',
    [[18], [18]],
  ],
  [
    'picots of two lengths, each counted by its own name',
    'US',
    'Picot (p): Ch 3, sl st in 3rd ch from hook.\nLarge picot (lp): Ch 5, sl st in 5th ch from hook.\n\nRnd 1: Magic ring, ch 1, [2 sc in ring, lp, 2 sc in ring, p] 3 times, join. (12 sc, 3 lp, 3 p)',
    [[12]],
  ],
  [
    'row ends that are skipped, and one alone',
    'US',
    'Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn.\nRows 2-5: Ch 1, sc in each sc across; turn.\n\nEDGING\nRnd 1: Ch 1, sc in each sc across. Working down row ends, sk next 2 row ends, 8 dc in next row end, sk next row end, sl st in last row end. Working across free loops of foundation ch, sc in each ch. Working up row ends, sc in each of next 5 row ends; join. (8 dc, 15 sc)',
    [[5], [5], [5], [5], [5], [23]],
  ],
  [
    'the bottom of the chain that the work is turned to use',
    'US',
    'Ch 12.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 9 chs, 3 sc in last ch, turn work to use the bottom of the chain, sc in next 9 chs, sl st to first sc.',
    [[24]],
  ],
]

const told = (text: string) =>
  readRounds(text, { terms: 'US' }).findings.map(({ code, message }) => [code, message])

describe('ways of writing', () => readsWays(CASES))

it('takes a cluster of a chain and two legs for explained', () => {
  const text = `Beginning cluster (beg cl): Ch 2, [yo, insert hook in same st, pull up a loop, yo and draw through 2 loops] twice, yo and draw through all 3 loops on hook.\n\n${RING}Rnd 2: Beg cl in same st, ch 2, sk next st, sc in next 10 sts, join in top of beg cl.`
  const { findings, worked } = readRounds(text, { terms: 'US' })
  expect(findings.map(({ code }) => code)).not.toContain('rounds/special-not-explained')
  expect(worked[1]!.elements.find(({ standing }) => standing)!.legs).toBe(3)
})

it('tells a stitch within petals that have none of its kind', () => {
  const text = `Rnd 1: Magic ring, [sc in ring, ch 4] 5 times, join.\nRnd 2: In each loop make sc, hdc, 5 dc, hdc, sc. Join.\nRnd 3: Sl st to center dc of first petal, sc in same place, *ch 10, sc in center tr of next petal; rep from * 3 more times, ch 10, sl st in first sc.`
  expect(told(text)).toEqual([['rounds/no-such-stitch', expect.stringContaining('no tr')]])
})

it('warns of no ring where one is among the materials', () => {
  const text =
    'You need thread and a 1-inch plastic ring.\nRnd 1: Attach thread to ring, ch 1, 36 sc over ring, sl st in first sc.'
  expect(told(text).map(([code]) => code)).not.toContain('rounds/no-ring')
  expect(told(text.replace('plastic ', '')).map(([code]) => code)).toContain('rounds/no-ring')
})

it('counts a stitch with its whole name before how it is made as the one that it is', () => {
  const text = (count: number) =>
    `ftr = front treble: 1tr worked into the free front loop of the dc stated\n\nRound 1: Magic ring, 1ch, 8dc into ring, ss to first dc.\nRound 2: 1ch, *1dc in next dc, 1ftr in next dc; rep from * 3 more times, ss to first dc. [4dc, ${count}ftr]`
  const { findings, worked, tree } = readRounds(text(4), { terms: 'UK' })
  expect(tree.definitions.map(({ form }) => form)).toEqual(['special'])
  expect(findings).toEqual([])
  expect(worked[1]!.elements.filter(({ stitch }) => stitch === 'dc')).toHaveLength(4)
  expect(readRounds(text(5), { terms: 'UK' }).findings.map(({ code }) => code)).toEqual([
    'rounds/wrong-end-count',
  ])
})

it('tells a popcorn where there are puffs', () => {
  const text = `Rnd 1: Magic ring, 8 sc in ring, join.\nRnd 2: Ch 1, (hdc, puff st) in each sc around, join.\nRnd 3: Ch 1, *sc in next hdc, 2 sc in next popcorn; rep from * around, join.`
  expect(told(text)).toContainEqual(['rounds/no-such-stitch', expect.stringContaining('no popcorn')])
  expect(told(text.replace('popcorn', 'puff st')).map(([code]) => code)).not.toContain(
    'rounds/no-such-stitch',
  )
})

it.each([
  ['ch 3 (counts as tr), tr', true],
  ['ch 4 (counts as tr), tr', false],
  ['ch 2 (counts as dc), dc', false],
])('a chain too short for what it counts as: %s', (begins, isTold) => {
  const text = `${RING}Rnd 2: ${begins} in each sc around, join.`
  expect(told(text).some(([code]) => code === 'rounds/chain-too-short')).toBe(isTold)
})
