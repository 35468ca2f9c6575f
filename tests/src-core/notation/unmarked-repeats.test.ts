/** Chains told behind the stitches they part, and repeats that no asterisk marks. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { readAlike, toldOf } from './wordings'
import type { Wordings } from './wordings'

const ALIKE: readonly Wordings[] = [
  {
    name: 'ch between',
    before:
      'Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)\nRnd 2: ',
    after: '\nRnd 3: Ch 1, 2 sc in each ch-1 sp around; join. (24 sc)',
    made: [12, 12, 24],
    wordings: [
      'Ch 4 (counts as dc and ch 1), dc in each dc around with ch 1 between; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), (dc in next dc, ch 1) around; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc, ch 1), 1 dc in each st with 1 ch between; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc + ch 1), dc in each dc with ch 1 between each, join.',
      'Ch 4 (counts as dc and ch 1), dc in each dc around, with ch 1 between each 2 dc, join to 3rd of ch 4.',
      'Ch 4 (counts as dc and ch 1), dc in each st, working ch 1 between sts; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), dc in each st, making ch 1 between all sts; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), 1 dc in every dc, always with ch 1 in between; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), dc in each dc, separated by ch 1; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), dc in each dc with 1 chain between each stitch; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), dc in each dc, ch 1 between each; join in 3rd ch of ch-4.',
      "Ch 4 (counts as dc and ch 1), dc in each dc having ch 1 between dc's; join in 3rd ch of ch-4.",
    ],
  },
  {
    name: 'every other',
    before:
      'Magic ring.\nRnd 1: Ch 3 (counts as dc), 23 dc in ring; join with sl st in top of ch-3. (24 dc)\nRnd 2: ',
    after: '\nRnd 3: Ch 1, 3 sc in each ch-2 sp around; join. (36 sc)',
    made: [24, 12, 36],
    wordings: [
      'Ch 5 (counts as dc and ch 2), dc in every other dc with ch 2 between; join in 3rd ch of ch-5.',
      'Ch 5 (counts as dc and ch 2), skip 1 dc, *dc in next dc, ch 2, skip 1 dc; rep from * around; join in 3rd ch of ch-5.',
      'Ch 5 (counts as dc, ch 2), (sk 1, dc in next dc, ch 2) 11 times; join in 3rd ch of ch-5.',
      'Ch 5 (counts as dc and ch 2), dc in every other dc around with 2 ch between; join in 3rd ch of ch-5. (12 dc)',
      'Ch 5 (counts as dc and ch 2), 1 dc in every second dc, with ch 2 between; join in 3rd ch of ch-5.',
      'Ch 5 (counts as dc and ch 2), dc in every 2nd dc with ch 2 between each; join in 3rd ch of ch-5.',
      'Ch 5 (counts as dc and ch 2), dc in every alternate dc with ch 2 between, join.',
      'Ch 5 (counts as dc and ch 2), dc into each alternate dc with 2 ch between, join to 3d ch of ch 5.',
      'Ch 5 (counts as dc and ch 2), skip a st, (dc in next, ch 2, skip a st) around; join in 3rd ch of ch-5.',
    ],
  },
  {
    name: 'in bare',
    before:
      'Popcorn (pc): 4 dc in same st, drop loop, insert hook in first dc, pull loop through.\nMagic ring.\nRnd 1: Ch 1, 8 sc in ring; join with sl st in first sc. (8 sc)\nRnd 2: Ch 1, *pc in next sc, sc in same sc; rep from * around; join. (8 pc, 8 sc)\nRnd 3: Ch 1, ',
    after: '',
    made: [8, 16, 24],
    wordings: [
      '(sc in pc, 2 sc in sc) 8 times; join.',
      'sc in pc, 2 sc in sc, repeat to end; join.',
      '*sc in pc, 2 sc in sc; rep from * around; join.',
      '*sc in pc, 2 sc in sc, rep from * to end; join.',
      'sc in pc, 2 sc in sc, rep around; join. (24 sc)',
      'sc in pc, 2 sc in sc around; join. (24 sc)',
      '*sc in popcorn, 2 sc in sc*, repeat around, join. (24)',
      'sc in pc, 2 sc in next sc, repeat 7 more times; join. (24)',
      'sc in pc and 2 sc in sc around, join. (24)',
      '[sc in pc, inc in sc] x 8, join. (24)',
      'sc in pc, 2 sc in sc, and so on around; join. (24)',
      'sc in pc, 2 sc in sc, continue around in this way, join. (24)',
      'sc in each pc, 2 sc in each sc; join. (24)',
      '1 sc in each pc and 2 in each sc, join. (24)',
      'sc in the pc, 2 sc in the sc; rep 7 times more. Join. (24)',
      'Rep [sc in pc, 2 sc in sc] around, join. (24)',
    ],
  },
  {
    name: 'repeat without star',
    before: 'MR\nR1: Ch 1, 12 sc in ring, join. (12)\nR2: Ch 1, ',
    after: '',
    made: [12, 18],
    wordings: [
      'sc in sc, 2 sc in sc, repeat to end, join. (18)',
      'sc in next st, 2 sc in next st, repeat to end of round, join. (18)',
      'sc in sc, inc in sc, repeat around, join. (18)',
      'sc, inc, repeat to end. Join. (18)',
      'sc in 1 st, 2 sc in next st, rep around. Join. (18)',
      '1 sc in next st, 2 sc in next; repeat 5 more times. (18)',
      'sc in first st, inc in next, repeat around. (18)',
      'sc in next sc, 2 sc in next sc, repeat this around, join. (18)',
      'sc in next sc, 2 sc in next sc; repeat these 2 steps around, join. (18)',
      'sc in next sc, 2 sc in next sc; keep repeating to the end, join. (18)',
      'sc in next sc, 2 sc in next sc; repeat 6 times, join. (18)',
      'sc in next sc, 2 sc in next sc; repeat six times in total, join. (18)',
      'sc in next sc, 2 sc in next sc; repeat until end of rnd, join. (18)',
      'sc in next, inc in next, all the way around, join. (18)',
      'sc in next, inc in next, and repeat all around, join. (18)',
      'sc 1, inc 1, repeat until the end. (18)',
      '1 sc, inc, rep x6. (18)',
      '*sc in next, inc in next** repeat around, join. (18)',
    ],
  },
  {
    name: 'ordinals',
    before:
      'Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)\n2d rnd: ',
    after: '\n3d rnd: Ch 1, 2 sc in each ch-1 sp; join. (24 sc)',
    made: [12, 12, 24],
    wordings: [
      'Ch 4, *dc in next dc, ch 1; rep from * around; join to 3d ch of ch 4.',
      'Ch 4, *dc in next dc, ch 1; rep from * around; join in 3d of ch 4.',
      'Ch 4, *dc in next dc, ch 1; rep from * around; sl st in 3d ch of starting ch.',
    ],
  },
  {
    name: 'chat',
    before: 'Hi friends! :) Here is my easy circle :D\n\n',
    after: '',
    made: [6, 12, 18],
    wordings: [
      "Make a magic ring ;)\nRound 1: 6 sc in ring, lol don't pull too tight! (6)\nRound 2: inc in each st (12) :)\nRound 3: (sc, inc) around (18) <3",
      'MR\nRound 1: 6 sc in ring :-) [6]\nRound 2: 2 sc in each st, easy peasy! [12]\nRound 3: *sc in next, 2 sc in next*; repeat around ;-) [18]',
      'MR\n#1: 6 sc in ring (6)\n#2: 2 sc in each st (12)\n#3: *sc in next st, 2 sc in next st*, repeat around (18)',
      'MR\nRnd #1: 6 sc in ring (6)\nRnd #2: 2 sc in each st (12)\nRnd #3: *sc in next st, 2 sc in next st*, repeat around (18)',
      'MR\n1 row: 6 sc in ring (6)\n2 row: 2 sc in each st (12)\n3 row: *sc in next st, 2 sc in next st*, repeat around (18)',
      'MR\n1 round: 6 sc in ring (6)\n2 round: 2 sc in each st (12)\n3 round: *sc in next st, 2 sc in next st*, repeat around (18)',
      'MR\n1 rnd. 6 sc in ring (6).\n2 rnd. 2 sc in each st (12).\n3 rnd. *sc in next st, 2 sc in next st*, repeat around (18).',
      'MR\nRow 1 – 6 sc in ring (6)\nRow 2 – 2 sc in each st (12)\nRow 3 – *sc in next st, 2 sc in next st*, repeat around (18)',
      'MR\nRound 1: 6 sc in ring (6)\nRound 2: 2 sc in each st (12), yay!\nRound 3: *sc in next st, 2 sc in next st*, repeat around (18) Woohoo, you did it!!',
      "MR\nRound 1: OK here we go, 6 sc in ring (6)\nRound 2: Now we double: 2 sc in each st (12)\nRound 3: Almost there! *sc in next st, 2 sc in next st*, repeat around (18). That's it lol",
      'MR\nRound 1 – 6 sc in ring (6)\nRound 2 – 2 sc in each st (12). See? Not hard at all ;)\nRound 3 – *sc in next st, 2 sc in next st*, repeat around (18). xo',
    ],
  },
  {
    name: 'petals same',
    before: 'MR\nRnd 1: Ch 1, *sc in ring, ch 3; rep from * 5 more times; join. (6 sc)\nRnd 2: ',
    after: '',
    made: [6, 30],
    wordings: [
      'In first ch-3 sp work (sc, 3 dc, sc). For each of the other petals work the same in each of the other 5 sps. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, make 5 more petals the same; join. (6 petals)',
      '(Sc, 3 dc, sc) in next ch-3 sp (petal made), make 5 more petals in the same way, join. (6 petals)',
      '(Sc, 3 dc, sc) in ch-3 sp: 1 petal made. Make 5 more petals in same manner. Join. (6 petals)',
      '(Sc, 3 dc, sc) in ch-3 sp; repeat in each of the other 5 sps; join. (6 petals)',
      '(Sc, 3 dc, sc) in ch-3 sp; repeat for the other 5 sps; join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, do the same in the other 5 sps, join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, and the same in each of remaining 5 sps, join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, work 5 more petals like this, join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, repeat in each sp around, join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, repeat for each petal, join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp, and in every ch-3 sp around; join. (6 petals)',
      '(Sc, 3 dc, sc) in first ch-3 sp and in each of the next 5 ch-3 sps; join. (6 petals)',
      '(Sc, 3 dc, sc) in each ch-3 sp; join. (6 petals)',
      '*(Sc, 3 dc, sc) in next ch-3 sp (petal); rep from * for 5 more petals; join. (6 petals)',
      '*(Sc, 3 dc, sc) in next ch-3 sp; rep from * for remaining 5 petals; join. (6 petals)',
      '*(Sc, 3 dc, sc) in next ch-3 sp; rep from * until you have 6 petals; join. (6 petals)',
      '*(Sc, 3 dc, sc) in next ch-3 sp; rep from * until 6 petals are made; join. (6 petals)',
      '*(Sc, 3 dc, sc) in next ch-3 sp; rep from * in each sp; join. (6 petals)',
      '*(Sc, 3 dc, sc) in next ch-3 sp; rep from * for all petals; join. (6 petals)',
    ],
  },
  {
    name: 'within',
    before: 'MR\nRnd 1: Ch 1, 8 sc in ring, join. (8 sc)\nRnd 2: Ch 1, ',
    after: '',
    made: [8, 16],
    wordings: [
      '2 sc with ch 2 between in each sc around, join. (16 sc, 8 ch-2 sps)',
      'in each sc work 2 sc with ch 2 between, join. (16 sc, 8 ch-2 sps)',
      '2 sc in each sc with ch 2 between them, join. (16 sc, 8 ch-2 sps)',
      '(2 sc with 2 ch between) in each sc, join. (16 sc, 8 ch-2 sps)',
      '2 sc, with ch 2 between, in each sc around, join. (16 sc, 8 ch-2 sps)',
      '*2 sc with ch-2 between in next sc; rep from * around, join. (16 sc, 8 ch-2 sps)',
      '2 sc separated by ch 2 in each sc around, join. (16 sc, 8 ch-2 sps)',
    ],
  },
  {
    name: 'ring',
    before: 'MR\nRnd 1: ',
    after: ' (8 dc, 8 ch-1 sps)\nRnd 2: Ch 1, 2 sc in each ch-1 sp, join. (16 sc)',
    made: [8, 16],
    wordings: [
      'Ch 4 (counts as dc and ch 1), 7 dc in ring with ch 1 between each; join with ch 1 and sl st in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), 7 dc with ch 1 between in ring, ch 1; join in 3rd ch of ch-4.',
      'Ch 1, 8 dc in ring with ch 1 between each dc, join in first dc.',
      '8 dc in ring, with ch 1 between each, ch 1, join in first dc.',
      'Ch 4, dc in ring, (ch 1, dc) 6 times in ring, ch 1, join in 3rd ch.',
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

const RING = 'Magic ring.\nRnd 1: Ch 1, 12 sc in ring; join. (12 sc)\n'

describe('A slip in them is told at its round', () => {
  it.each([
    'Ch 1, sc in each sc with ch 2 between; join. (12 sc, 11 ch-2 sps)',
    'Ch 1, 2 sc in each sc with ch 2 between them; join. (24 sc, 24 ch-2 sps)',
    'Ch 1, sc in next 2 sc, 2 sc in next sc, repeat 4 more times; join. (20 sc)',
    'Ch 1, sc in next 4 sc, 2 sc in next sc, repeat to end; join.',
    'Ch 1, (sc, ch 3, sc) in next sc, make 12 more petals the same; join.',
    'Ch 1, sc in sc, 2 sc in sc, repeat 8 times; join.',
  ])('%s', (words) => {
    const told = toldOf(`${RING}Rnd 2: ${words}`)
    expect(told.length).toBeGreaterThan(0)
    expect(told.every((message) => message.startsWith('round 2'))).toBe(true)
  })
})

describe('Signs of a chat', () => {
  it('close no bracket that was not opened, and one that was', () => {
    expect(toldOf(`${RING}Rnd 2: Ch 1, 2 sc in each sc; join (so easy :) (24 sc)`)).toEqual([])
    expect(toldOf(`${RING}Rnd 2: Ch 1, 2 sc in each sc); join. (24 sc)`)).toHaveLength(1)
  })

  it('leave stitches with a stop alone', () => {
    const text = 'Magic ring.\nRnd 1: 1 ch., 2d.c. in ring, 3d.c. in ring, s.s. to first d.c. (5 d.c.)'
    expect(toldOf(text, 'UK')).toEqual([])
  })
})
