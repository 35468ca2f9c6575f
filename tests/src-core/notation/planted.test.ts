/** Borders of what a text does not make, second motifs, headings by themselves, and slips that are planted. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { readAlike, toldOf } from './wordings'
import type { Wordings } from './wordings'

const ALIKE: readonly Wordings[] = [
  {
    name: 'A border of what the text does not make',
    before: 'BORDER\n\nFor a blanket with 35 stitches along each edge.\n\n',
    after: '',
    made: [152],
    wordings: [
      'Rnd 1: Join yarn in any corner, ch 1, *3 sc in corner, sc in each of the 35 sts along the edge; rep from * 3 more times; join in first sc. (152 sc)',
      'Rnd 1: Join M in any corner st, ch 1, (3 sc in corner, sc in next 35 sts) 4 times; join in first sc. (152 sc)',
      'Rnd 1: With RS facing, join B in any corner sp, ch 1, *3 sc in corner sp, sc in next 35 sts; rep from * 3 times more; sl st to first sc. (152 sc)',
    ],
  },
  {
    name: 'A corner that the round is joined over',
    before: 'EDGING\n\nJoin in any corner ch-2 sp.\n',
    after: '',
    made: [116, 152],
    wordings: [
      'Rnd 1: Ch 1, sc in same sp, sc in next 27 dc, *(sc, ch 2, sc) in next corner sp, sc in next 27 dc; rep from * twice more, sc in first corner sp, ch 2, sl st in first sc. (116 sc)\nRnd 2: Ch 1, sc in each sc and (4 sc, ch 2, 5 sc) in each corner sp around; join. (152 sc)',
    ],
  },
  {
    name: 'A second motif that goes on from a round of the first',
    before:
      'FIRST MOTIF\nCh 4, join.\nRnd 1: Ch 1, 8 sc in ring; join. (8 sc)\nRnd 2: Ch 1, *sc in next sc, ch 3, sc in same sc, ch 2; rep from * around; join. (16 sc)\nRnd 3: Ch 1, (sc, ch 3, 2 sc) in each ch-3 sp and 3 sc in each ch-2 sp around; join. (48 sc)\n\nSECOND MOTIF\n',
    after: '',
    made: [8, 16, 48, 48],
    wordings: [
      'Work as first motif to end of Rnd 2.\nRnd 3 (joining): Ch 1, (sc, ch 1, sl st in corresponding ch-3 sp of first motif, ch 1, 2 sc) in next ch-3 sp, 3 sc in next ch-2 sp, *(sc, ch 3, 2 sc) in next ch-3 sp, 3 sc in next ch-2 sp; rep from * 6 more times; join.',
      'Work Rnds 1 and 2 as given for first motif.\nRnd 3: Ch 1, (sc, ch 1, sl st in ch-3 sp of first motif, ch 1, 2 sc) in next ch-3 sp, 3 sc in next ch-2 sp, *(sc, ch 3, 2 sc) in next ch-3 sp, 3 sc in next ch-2 sp; rep from * 6 more times; join.',
    ],
  },
  {
    name: 'A heading on a line of its own',
    before: 'Magic ring.\n',
    after: '',
    made: [6, 12, 18],
    wordings: [
      'Round 1\n6 sc in ring. (6)\nRound 2\nInc in each st. (12)\nRound 3\n*Sc in next st, inc in next st; rep from * around. (18)',
      'ROUND 1\nWork 6 sc in ring. (6)\n\nROUND 2\nAs you go, 2 sc in each st. (12)\n\nROUND 3\n(Sc, inc) 6 times. (18)',
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

describe('A join to a space that the first motif has not', () => {
  const motifs = (space: string) =>
    `FIRST MOTIF\nCh 4, join.\nRnd 1: Ch 1, 8 sc in ring; join. (8 sc)\nRnd 2: Ch 1, (sc, ch 3, sc) in each sc around; join. (16 sc)\n\nSECOND MOTIF\nWork Rnd 1 as given for first motif.\nRnd 2: Ch 1, (sc, ch 1, sl st in ${space} of first motif, ch 1, sc) in next sc, (sc, ch 3, sc) in each of next 7 sc; join.`
  it('is told', () => {
    expect(toldOf(motifs('ch-3 sp'))).toEqual([])
    expect(toldOf(motifs('ch-5 sp'))).toHaveLength(1)
  })
})

/** What a tech editor would mark, each in the last round of a small motif. */
const PLANTED = [
  {
    before:
      'Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)\n',
    round: 2,
    slips: [
      'Ch 3, dc in same st, 2 dc in each of next 10 dc; join in top of ch-3. (24 dc)',
      'Ch 3, dc in same st, 2 dc in each dc around; join in top of ch-4. (24 dc)',
      'Ch 3, dc in same st, *2 dc in next dc; rep from * 11 more times; join in top of ch-3.',
      'Ch 3, dc in same st, *2 dc in next dc; rep from * 9 more times; join in top of ch-3.',
      'Ch 4 (counts as dc and ch 1), (dc in next dc, ch 1) 12 times; join in 3rd ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), (dc in next dc, ch 1) 11 times; join in 4th ch of ch-4.',
      'Ch 4 (counts as dc and ch 1), (dc in next dc, ch 1) 11 times; join in 3rd ch of ch-5.',
      'Ch 4 (counts as dc and ch 1), (dc in next dc, ch 1) 11 times; join in 3rd ch of ch-4. (12 dc, 11 ch-1 sps)',
      'Ch 3, dc in same st, 2 dc in each ch-1 sp around; join.',
      'Ch 1, *sc in next dc, ch 3, sk 2 dc; rep from * 4 more times; join in first sc. (4 ch-3 sps)',
      'Ch 1, *sc in next dc, ch 3, sk 2 dc; rep from * around; join in first sc. (5 ch-3 sps)',
      'Ch 1, *sc in next 2 dc, ch 2, sk next 3 dc; rep from * around; join in first sc.',
      'Ch 1, sc in each tr around; join in first sc.',
      'Ch 1, 2 sc in each dc around; join in first sc. (23 sc)',
      'Ch 1, *sc in next dc, 2 sc in next dc; rep from * around; join in first sc. (20 sc)',
      'Ch 3, *FPdc around next dc, dc in next dc; rep from * around; join. (12 FPdc)',
      'Ch 1, dc2tog around; join. (12 sts)',
      'Join B in any ch-2 sp, ch 3, 2 dc in same sp; join.',
      'Ch 1, (sc, ch 3, sc) in each dc around; join. (12 ch-3 sps, 22 sc)',
      'Ch 1, *5 dc in next dc, sk next dc, sc in next dc, sk next dc; rep from * around; join in first dc. (4 shells)',
    ],
  },
  {
    before:
      'Ch 6, join to form ring.\nRnd 1: Ch 1, 12 sc in ring; join in first sc. (12 sc)\nRnd 2: Ch 1, *sc in next sc, ch 5, sk 1 sc; rep from * 5 more times; join. (6 sc, 6 ch-5 sps)\n',
    round: 3,
    slips: [
      '(Sc, hdc, 3 dc, hdc, sc) in each ch-5 sp around; join. (7 petals)',
      '(Sc, hdc, 3 dc, hdc, sc) in each ch-5 sp around; join. (48 sts)',
      '(Sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join.',
      '*(Sc, hdc, 3 dc, hdc, sc) in next ch-5 sp; rep from * 6 more times; join.',
      '*(Sc, hdc, 3 dc, hdc, sc) in next ch-5 sp; rep from * 4 more times; join.',
      'Sl st in ch-5 sp, ch 3, 4 dc in same sp, 5 dc in each of next 6 ch-5 sps; join.',
      'Sl st in ch-5 sp, ch 3, 4 dc in same sp, 5 dc in each of next 4 ch-5 sps; join.',
      '*Sc in next sc, 5 dc in next ch-5 sp; rep from * around; join. (30 dc, 7 sc)',
      '*Ch 7, sl st around post of next sc of Rnd 4; rep from * around.',
      'Sl st in next 3 ch, ch 1, *sc in center ch of next ch-5 sp, ch 6; rep from * 6 more times; join.',
      'Ch 1, 5 sc in each ch-5 sp, sc in each sc around; join in first sc. (30 sc)',
      'Ch 1, *3 sc in next ch-5 sp, ch 3, sk next sc; rep from * around; join in 3rd ch of ch-3.',
    ],
  },
  {
    before:
      'Ch 4, join.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join in top of ch-3. (12 dc, 4 ch-2 sps)\n',
    round: 2,
    slips: [
      'Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times; join. (26 dc)',
      'Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 3 more times; join.',
      'Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * once; join.',
      'Ch 3, dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times; join. (29 dc)',
      'Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-3 sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in next ch-3 sp; rep from * 2 more times; join.',
      'Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 4 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times; join.',
      'Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, *dc in next 2 dc, (2 dc, ch 2, 2 dc) in next ch-2 sp; rep from * 2 more times; join.',
      'Ch 3, dc in each dc around, working (2 dc, ch 2, 2 dc) in each corner; join. (28 dc, 8 per side)',
      'Ch 3, dc in each dc around, (2 dc, ch 2, 2 dc) in each corner; join. (5 corners)',
      'Ch 3, dc in next 2 dc, *(2 dc, ch 2, 2 dc) in corner sp, dc in next 3 dc; rep from * around; join.',
    ],
  },
]

describe.each(PLANTED)('A slip in round $round', ({ before, round, slips }) => {
  it.each(slips)('%s', (words) => {
    const { findings } = readRounds(`${before}Rnd ${round}: ${words}`, { terms: 'US' })
    const told = findings.filter(({ severity }) => severity !== 'note')
    expect(told.length).toBeGreaterThan(0)
    expect(told.every(({ target }) => target?.round === round)).toBe(true)
  })
})
