/** Ways of writing of one more set by fresh hands, each with others of its kind and with what must not be taken for it. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { readsWays } from './ways-of-writing'
import type { Way } from './ways-of-writing'

const SQUARE =
  'Round 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join. (12 dc)\n'
const FLOWER =
  'Rnd 1: Magic ring, 12 sc in ring, sl st in first sc.\nRnd 2: Ch 1, 2 sc in each sc, sl st in first sc. (24 sc)\nRnd 3: Work in the FRONT loops only. Join yellow in any st, *3 dc in next st, sl st in next st; rep from * 11 more times. (12 petals)\n'
const STAR =
  'Rnd 1: Magic ring, ch 1, 10 sc, sl st to first sc. (10)\nRnd 2: Ch 1, [sc in next st, 2 sc in next st] 5 times, sl st to first sc. (15)\n\nPOINTS\nRow 1: Ch 1, sc in same st and in next 2 sts. Turn, leaving the other sts for later. (3)\nRow 2: Ch 1, sc3tog. Keep going until you have 5 points. (1)\n\nEDGING\n'

const CASES: readonly Way[] = [
  [
    'a last repeat that ends after the stitch that is named',
    'US',
    `Round 1: Magic ring, 12 sc in ring, join.\nRound 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. (24 dc)\nRound 3: Ch 1, sc in first 3 dc, dtr in next dc, *ch 2, sc in next 3 dc, dtr in next dc; rep from * around, ending the last rep after the dtr, ch 2, join.`,
    [[12], [24], [24, { 'ch-2': 6 }]],
  ],
  [
    'a last repeat that stops after the corner',
    'US',
    `${SQUARE}Round 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in corner sp, dc in next 3 dc; rep from * around, stopping the last repeat after the corner; join.`,
    [
      [12, { 'ch-2': 4 }],
      [28, { 'ch-2': 4 }],
    ],
  ],
  [
    'a last repeat that goes up to a space, told in front',
    'US',
    `${SQUARE}Round 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in next ch-2 sp, dc in next 3 dc; rep from * 3 more times, but on the last repeat stop after the ch-2 sp; join.`,
    [
      [12, { 'ch-2': 4 }],
      [28, { 'ch-2': 4 }],
    ],
  ],
  [
    'a last repeat that ends before a stitch',
    'US',
    `${SQUARE}Round 2: Ch 1, *sc in next 2 dc, hdc in next dc, sc in ch-2 sp; rep from * around, ending last rep before the hdc; sc in last dc and last sp; join in first sc.`,
    [
      [12, { 'ch-2': 4 }],
      [16, {}],
    ],
  ],
  [
    'petals that are folded while a round below is worked in',
    'US',
    `${FLOWER}Rnd 4: Fold the small petals toward you and work in the BACK loops of Rnd 2. Join white in any st, ch 1, *sc in next st, 2 dc in next st, sc in next st; rep from * 7 more times, sl st in first sc.`,
    [[12], [24], [36], [32]],
  ],
  [
    'petals that are pushed forward, by another verb',
    'US',
    `${FLOWER}Rnd 4: Push petals forward and crochet into the back loops of Rnd 2. Join white in any st, ch 1, *sc in next st, 2 dc in next st, sc in next st; rep from * 7 more times, sl st in first sc.`,
    [[12], [24], [36], [32]],
  ],
  [
    'a turning chain that counts except in some rows',
    'US',
    'The turning chain counts as a stitch except in Rows 3 and 4, where the ch-1 is just for height.\n\nRow 1: Ch 10, dc in 4th ch from hook (the 3 skipped chs count as a dc) and in each ch across. Turn. (8 dc)\nRow 2: Ch 3, dc in next 6 dc, dc in top of ch-3. Turn. (8 dc)\nRow 3: Ch 1, sc in first dc, *ch 1, sk next dc, sc in next dc; rep from * 2 more times, sc in top of ch-3. Turn.\nRow 4: Ch 1, sc in each sc and ch-1 sp across.',
    [[8], [8], [5, { 'ch-1': 3 }], [8]],
  ],
  [
    'the other stitches of a row left for later, in several ways',
    'UK',
    'Make 10ch.\nRow 1: 1dc in 2nd ch from hook, 1dc in each ch to end. Turn. (9)\nRow 2: 1ch, 1dc in each of next 5 sts, turn and leave the other sts for now. (5)\nRow 3: 1ch, 1dc in each of next 3 sts. Turn here, the remaining stitches wait. (3)',
    [[9], [5], [3]],
  ],
  [
    'a chain slipped into a ring behind a dash',
    'UK',
    'Round 1 – chain 5 and slip stitch into a ring. 3ch (this is your first treble), 1tr into the ring, 2ch, then (2tr into the ring, 2ch) seven times. Slip stitch to the top of the 3ch.\nRound 2 – ss into the next tr and into the 2ch window, 3ch (first treble again), 6tr in the same window, 1dc in the gap before the next block of trebles, *7tr in the next 2ch window, 1dc in the gap before the next block; repeat from * 6 more times. Slip stitch to the top of the 3ch.',
    [
      [16, { 'ch-2': 8 }],
      [64, {}],
    ],
  ],
  [
    'an edging along the row ends of pieces of which the text makes one',
    'US',
    `${STAR}Rnd 3: Ch 1, *sc in each of the 2 row ends up the side of the point, (sc, ch 2, sc) in the tip, sc in each of the 2 row ends down the other side; rep from * 4 more times, sl st to the first sc.`,
    [[10], [15], [3], [1], [30, { 'ch-2': 5 }]],
  ],
  [
    'a spiral that ends in its own first loop, behind its count',
    'UK',
    '1st round: Magic ring, [4ch, 3dc into ring] 6 times. 18dc.\n2nd round: [4ch, 2dc into next 4ch loop, 1dc into each of next 2dc, miss 1dc] 6 times. 24dc.\nSs into next 4ch loop and fasten off.',
    [
      [18, { 'ch-4': 6 }],
      [24, { 'ch-4': 6 }],
    ],
  ],
  [
    'the first space of the next fan, where fans are single stitches side by side',
    'US',
    '1st rnd: Magic ring, 24 sc in ring, join.\n2nd rnd: Ch 4 (to count as 1 dc and ch 1), (dc in next sc, ch 1) 4 times, dc in next sc, sc in next 2 sc, * (dc in next sc, ch 1) 5 times, dc in next sc, sc in next 2 sc. Repeat from * around. Join to 3rd ch of ch-4 (3 fans).\n3rd rnd: Sl st in first ch-1 sp, ch 1, sc in same sp, (ch 3, sc in next ch-1 sp) 4 times, * sc in first ch-1 sp of next fan, (ch 3, sc in next ch-1 sp) 4 times. Repeat from * around. Join to first sc.',
    [[24], [24, { 'ch-1': 15 }], [15, { 'ch-3': 12 }]],
  ],
  [
    'chains told in words beside the stitch that they count as',
    'UK',
    'First round: Magic ring, five chain (standing for one treble and two chain), then one treble and two chain into the ring seven times; slip stitch to the third of the five chain. Eight treble.',
    [[8, { 'ch-2': 8 }]],
  ],
  [
    'a stitch and chains into a space so many times, behind the chain that the round rises with',
    'UK',
    'Round 1: Magic ring, 5 ch (stands for 1 tr and 2 ch), 1 tr and 2 ch into the ring seven times; ss to the third of the 5 ch. 8 tr.\nRound 2: Ss into next sp, 1 ch, 1 dc and 3 ch into next sp eight times, ss to first dc. 8 dc',
    [
      [8, { 'ch-2': 8 }],
      [8, { 'ch-3': 8 }],
    ],
  ],
  [
    'as many stitches in a ring of chains as close it with one more',
    'US',
    'Round 1: Ch 5 and join to form a ring; ch 1, 16 sc in ring, sl st to first sc. (16 sc)',
    [[16]],
  ],
]

describe('as makers write besides', () => readsWays(CASES))

const messages = (text: string): readonly string[] =>
  readRounds(text, { terms: 'US' })
    .findings.filter(({ severity }) => severity !== 'note')
    .map(({ message }) => message)

describe('what is not taken for it', () => {
  it('asks nothing of a ring that is slipped behind a dash, or holds one stitch more than three to a chain', () => {
    const ring = 'chain 5 and slip stitch into a ring'
    expect(messages(`Round 1 – ${ring}. Ch 1, 15 sc in the ring, sl st to first sc.`)).toEqual([])
    expect(
      messages('Round 1: Ch 5 and join to form a ring; ch 1, 16 sc in ring, sl st to first sc.'),
    ).toEqual([])
    expect(
      messages('Round 1: Ch 5 and join to form a ring; ch 1, 17 sc in ring, sl st to first sc.'),
    ).toHaveLength(1)
  })

  it('takes the rows out in which a turning chain of any length does not count', () => {
    const rows = (except: string): string =>
      `The turning chain counts as a stitch${except}.\n\nRow 1: Ch 10, hdc in 3rd ch from hook (the 2 skipped chs count as an hdc) and in each ch across. Turn. (9 hdc)\nRow 2: Ch 2, hdc in next 7 hdc, hdc in top of turning ch. Turn. (9 hdc)\nRow 3: Ch 2, hdc in each st across. Turn. (9 hdc)`
    expect(messages(rows(' except in Row 3'))).toEqual([])
    expect(messages(rows(' except in Rows 1-2'))).not.toEqual([])
  })

  it('tells where a last repeat ends after something else than the count wants', () => {
    expect(
      messages(
        `${SQUARE}Round 2: Ch 3 (counts as dc), dc in next 2 dc, *(2 dc, ch 2, 2 dc) in corner sp, dc in next 3 dc; rep from * around, stopping the last repeat after the corner; join. (31 dc)`,
      ),
    ).toEqual([expect.stringContaining('the round makes 28')])
  })

  it('counts a turning chain in the rows that are not taken out', () => {
    expect(
      messages(
        'The turning chain counts as a stitch except in Row 3.\n\nRow 1: Ch 10, dc in 4th ch from hook (the 3 skipped chs count as a dc) and in each ch across. Turn. (8 dc)\nRow 2: Ch 3, dc in next 6 dc, dc in top of ch-3. Turn. (7 dc)',
      ),
    ).toEqual([expect.stringContaining('the round makes 8')])
  })

  it('tells a single stitch that is left where more are', () => {
    expect(
      messages(
        'Row 1: Ch 10, sc in 2nd ch from hook and in next 8 ch. Turn. (9)\nRow 2: Ch 1, sc in next 5 sts, leave the other st unworked. Turn. (5)',
      ),
    ).toEqual([expect.stringContaining('4 left over')])
  })

  it('tells a loop too many in a round that does not end with it', () => {
    expect(
      messages(
        'Rnd 1: Magic ring, [ch 4, 3 sc in ring] 6 times. (18 sc)\nRnd 2: [Ch 4, sc in next ch-4 sp] 6 times, sl st in next ch-4 sp, ch 1, sc in next sc.',
      ),
    ).not.toEqual([])
  })

  it('still counts a repeat in a row that takes more than there is', () => {
    expect(
      messages(
        'Row 1: Ch 10, sc in 2nd ch from hook and in next 8 ch. Turn. (9)\nRow 2: Ch 1, *sc in next 2 sts; rep from * 4 more times. Turn.',
      ),
    ).toHaveLength(1)
  })
})
