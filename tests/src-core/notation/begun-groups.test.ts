/** Clusters, popcorns and shells that a round begins with, and stitches held on the hook. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'
import { readAlike } from './wordings'
import type { Wordings } from './wordings'

const ALIKE: readonly Wordings[] = [
  {
    name: 'Beginning clusters',
    before: '',
    after: '\nRnd 2: Ch 1, 3 sc in each ch-3 sp around; join. (24 sc)',
    made: [8, 24],
    wordings: [
      'Cluster (cl): [Yo, insert hook in indicated sp, yo and pull up lp, yo and draw through 2 lps] 3 times, yo and draw through all 4 lps on hook.\nBeg cl: Ch 3, [yo, insert hook in same sp, yo and pull up lp, yo and draw through 2 lps] twice, yo and draw through all 3 lps on hook.\nCh 6, join to form ring.\nRnd 1: Beg cl in ring, ch 3, (cl in ring, ch 3) 7 times; join in top of beg cl. (8 cl)',
      'Cluster (cl): [Yo, insert hook in indicated sp, yo and pull up lp, yo and draw through 2 lps] 3 times, yo and draw through all 4 lps on hook.\nBeginning cluster (beg cl): Ch 2, [yo, insert hook in sp, yo and pull up lp, yo and draw through 2 lps] 2 times, yo and draw through all 3 lps on hook.\nCh 6, join to form ring.\nRnd 1: Beg cl, ch 3, (cl, ch 3) 7 times in ring; join in top of beg cl. (8 cl)',
      'Cluster (cl): [Yo, insert hook in indicated sp, yo and pull up lp, yo and draw through 2 lps] 3 times, yo and draw through all 4 lps on hook.\nCh 6, join to form ring.\nRnd 1: (Ch 3, dc2tog) in ring (counts as first cl), ch 3, (cl in ring, ch 3) 7 times; join in top of first cl. (8 cl)',
      'Ch 6, join to form ring.\nRnd 1: Ch 3, dc2tog in ring (beg cl made), ch 3, (dc3tog in ring, ch 3) 7 times; join in top of beg cl. (8 cl)',
      'Ch 6, join to form ring.\nRnd 1: Ch 2, dc2tog in ring (counts as first cluster), ch 3, *3-dc cl in ring, ch 3; rep from * 6 more times; join in top of first cl. (8 cl)',
      'Ch 6, join to form ring.\nRnd 1: Beg 3-dc cl in ring, ch 3, *3-dc cl in ring, ch 3; rep from * 6 more times; join in top of beg cl. (8 cl)',
      'Ch 6, join to form ring.\nRnd 1: Ch 3 (counts as first dc of cluster), 2 dc in ring holding back last lp of each, yo and draw through all 3 lps, ch 3, (3-dc cl in ring, ch 3) 7 times; join in top of first cl. (8 cl)',
      'Ch 6, join to form ring.\nRnd 1: First cl in ring, ch 3, (cl in ring, ch 3) 7 times; join in first cl. (8 clusters)',
      'Ch 6, join to form ring.\nRnd 1: Starting cluster in ring, ch 3, (cluster in ring, ch 3) 7 times; join to starting cluster. (8 clusters)',
      'Cluster (cl): [Yo, insert hook in indicated sp, yo and pull up lp, yo and draw through 2 lps] 3 times, yo and draw through all 4 lps on hook.\nCh 6, join to form ring.\nRnd 1: Ch 3, work beg cluster in ring, ch 3, (cluster in ring, ch 3) 7 times; join to first cluster. (8 clusters)',
      'CL: *yo, insert hook, pull up loop, yo, pull through 2; rep from * twice in same sp, yo, pull through all 4 loops.\nbeg-CL: ch 2, *yo, insert hook, pull up loop, yo, pull through 2; rep from * once in same sp, yo, pull through all 3 loops.\nCh 6, join to form ring.\nRnd 1: beg-CL in ring, ch 3, (CL in ring, ch 3) 7 times, sl st in beg-CL. – 8 clusters',
      'beg-CL = ch 2, dc2tog\nCL = dc3tog\nCh 6, join to form ring.\nRnd 1: beg-CL in ring, ch 3, (CL in ring, ch 3) 7 times, sl st in beg-CL. 8 clusters.',
      'Beg-cl: ch 2, dc2tog in same sp. Cl: dc3tog in same sp.\n\nCh 6, join to form ring.\nRnd 1: Beg-cl in ring, ch 3, (cl in ring, ch 3) 7 times; join. (8 cl)',
      'SPECIAL STITCHES\nBeg-Cl: Ch 2, 2 dc together in same sp.\nCl: 3 dc together in same sp.\n\nCh 6, join to form ring.\nRnd 1: Beg-Cl in ring, ch 3, *Cl in ring, ch 3; rep from * 6 more times; join to top of Beg-Cl. (8 Cl)',
      'SPECIAL STITCHES\nBCL (beginning cluster): Ch 2, dc2tog in same sp.\nCL (cluster): dc3tog in same sp.\n\nCh 6, join to form ring.\nRnd 1: BCL in ring, ch 3, *CL in ring, ch 3; rep from * 6 more times; join to top of BCL. (8 CL)',
      'Ch 6, join to form ring.\nRnd 1: Standing cl in ring, ch 3, (cl in ring, ch 3) 7 times; join in first cl. (8 clusters)',
      'Ch 6, join to form ring.\nRnd 1: Chainless starting cluster in ring, ch 3, (cluster in ring, ch 3) 7 times; join in first cluster. (8 clusters)',
    ],
  },
  {
    name: 'Beginning popcorns and puffs',
    before: '',
    after: '\nRnd 2: Ch 1, 3 sc in each ch-3 sp around; join. (24 sc)',
    made: [8, 24],
    wordings: [
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nBeg pc: Ch 3, 4 dc in same place, drop lp, insert hook in top of ch-3, draw dropped lp through, ch 1.\nCh 6, join to form ring.\nRnd 1: Beg pc in ring, ch 3, (pc in ring, ch 3) 7 times; join in top of beg pc. (8 pc)',
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nBeginning popcorn (beg pc): Ch 3 (counts as dc), 4 dc in same place, drop lp from hook, insert hook in top of ch 3, pick up dropped lp and draw through.\nCh 6, join to form ring.\nRnd 1: Beg pc in ring, ch 3, *pc in ring, ch 3; rep from * 6 more times; join in top of beg pc. (8 popcorns)',
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nCh 6, join to form ring.\nRnd 1: Ch 3, 4 dc in ring, drop lp, insert hook in top of ch-3, draw lp through (beg pc made), ch 3, (pc in ring, ch 3) 7 times; join in first pc. (8 pc)',
      'Ch 6, join to form ring.\nRnd 1: Ch 3 (counts as first dc of popcorn), 4 dc in ring, drop lp from hook, insert hook in 3rd ch of ch-3, pull lp through (first popcorn), ch 3, *5 dc in ring, drop lp, insert hook in first of 5 dc, pull lp through (popcorn made), ch 3; rep from * 6 more times; join in top of first popcorn. (8 popcorns)',
      'Puff st: [yo, insert hook, pull up a lp] 4 times, yo, pull through all lps, ch 1.\nCh 6, join to form ring.\nRnd 1: Ch 1, puff st in ring, ch 3, (puff st in ring, ch 3) 7 times; join in first puff. (8 puffs)',
      'Ch 6, join to form ring.\nRnd 1: Beg puff in ring, ch 3, (puff in ring, ch 3) 7 times; join in top of beg puff. (8 puffs)',
      'Ch 6, join to form ring.\nRnd 1: Ch 2, [yo, insert hook in ring, pull up lp] 3 times, yo and draw through all lps (counts as first puff), ch 3, (puff in ring, ch 3) 7 times; join in first puff. (8 puffs)',
      'Ch 6, join to form ring.\nRnd 1: Ch 2 (does not count), puff st in ring, ch 3, (puff st in ring, ch 3) 7 times; join to first puff st. (8 puff sts)',
      'Ch 6, join to form ring.\nRnd 1: Ch 3, 4-dc bobble in ring (ch 3 and bobble count as first bobble), ch 3, (5-dc bobble in ring, ch 3) 7 times; join in first bobble. (8 bobbles)',
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nCh 6, join to form ring.\nRnd 1: First pc in ring (ch 3 in place of first dc), ch 3, (pc in ring, ch 3) 7 times; join to first pc. (8 pc)',
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nFor the first popcorn of a round, ch 3 in place of first dc.\nCh 6, join to form ring.\nRnd 1: Pc in ring, ch 3, (pc in ring, ch 3) 7 times; join to first pc. (8 pc)',
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nCh 6, join to form ring.\nRnd 1: (Pc in ring, ch 3) 8 times, beginning the first pc with ch 3; join to first pc. (8 pc)',
      'Popcorn (pc): 5 dc in same place, drop lp, insert hook in first dc, draw dropped lp through, ch 1.\nCh 6, join to form ring.\nRnd 1: Work 8 pc in ring with ch 3 between; join to first pc. (8 pc)',
    ],
  },
  {
    name: 'Beginning shells',
    before:
      'Magic ring.\nRnd 1: Ch 4 (counts as dc and ch 1), (dc in ring, ch 1) 7 times; join in 3rd ch of ch-4. (8 dc)\nRnd 2: ',
    after: '',
    made: [8, 40],
    wordings: [
      'Sl st in ch-1 sp, ch 3 (counts as dc), 4 dc in same sp (beg shell made), 5 dc in each ch-1 sp around; join. (8 shells)',
      'Sl st in ch-1 sp, (ch 3, 4 dc) in same sp (first shell), *5 dc in next ch-1 sp (shell); rep from * around; join in top of ch-3. (8 shells)',
      'Sl st in ch-1 sp, ch 3 (counts as dc here and throughout), 4 dc in same sp, *shell of 5 dc in next ch-1 sp; rep from * around; join. (8 shells)',
      'Sl st in ch-1 sp, ch 3, 4 dc in same sp for beg shell, 5-dc shell in each of next 7 ch-1 sps; join. (8 shells)',
      '5-dc shell in each ch-1 sp around; join. (8 shells)',
      'Sl st in ch-1 sp, beg 5-dc shell in same sp, 5-dc shell in each ch-1 sp around; join. (8 shells)',
      'Standing dc in any ch-1 sp, 4 dc in same sp, *5 dc in next ch-1 sp; rep from * around; join in first dc. (40 dc)',
      'With a standing stitch, work 5 dc in any ch-1 sp, *5 dc in next ch-1 sp; rep from * around; join in first dc. (40 dc)',
      'Join B with standing dc in any ch-1 sp, 4 dc in same sp, (5 dc in next ch-1 sp) 7 times; join in standing dc. (40 dc)',
      'Chainless starting dc in any ch-1 sp, 4 dc in same sp, (5 dc in next ch-1 sp) 7 times; join to first dc. (40 dc)',
      'Join B in any ch-1 sp with a standing dc, 4 dc in same sp, (5 dc in next ch-1 sp) 7 times; join in first dc. (40 dc)',
    ],
  },
  {
    name: 'Loops held on the hook',
    before: 'Ch 6, join to form ring.\nRnd 1: ',
    after: '\nRnd 2: Ch 1, 3 sc in each ch-3 sp around; join. (24 sc)',
    made: [8, 24],
    wordings: [
      'Ch 3, 2 dc in ring holding back last lp of each on hook, yo and draw through all 3 lps (beg cl made), ch 3, (3-dc cl in ring, ch 3) 7 times; join in top of beg cl. (8 cl)',
      'Ch 3, holding back last loop of each dc on hook, work 2 dc in ring, yo and draw through all 3 loops on hook (cluster made), ch 3, *holding back last loop of each dc on hook, work 3 dc in ring, yo and draw through all 4 loops on hook, ch 3; rep from * 6 more times; join in top of first cluster. (8 clusters)',
      'Ch 3, leaving last loop of each on hook work 2 dc into ring, yo and draw through all 3 loops, ch 3, *leaving last loop of each on hook work 3 dc into ring, yo and draw through all 4 loops, ch 3; rep from * 6 times more; join to top of first cluster. (8 clusters)',
      'Ch 3, keeping last loop of each st on hook, make 2 dc in ring, yo and pull through all loops, ch 3, (keeping last loop of each st on hook, make 3 dc in ring, yo and pull through all loops, ch 3) 7 times; join. (8 clusters)',
      'Ch 3 (counts as first leg), 2 dc in ring holding back last lp of each, yo and draw through all 3 lps, ch 3, (3-dc cl in ring, ch 3) 7 times; join in first cl. (8 cl)',
    ],
  },
  {
    name: 'Clusters begun with a chain that a note counts as a stitch',
    before:
      'Note: Beg ch-3 counts as dc unless told otherwise.\nRnd 1: Ch 4, join with sl st to form ring; ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)\nRnd 2: ',
    after: '\nRnd 3: Ch 1, 4 sc in each ch-4 sp around; join. (24 sc)',
    made: [6, 6, 24],
    wordings: [
      'Ch 3, dc2tog in same st (counts as first petal), ch 4, *dc3tog in next sc, ch 4; rep from * 4 more times; join with sl st to top of first petal. (6 petals, 6 ch-4 sps)',
      'Ch 3, dc2tog in same st, ch 4, *dc3tog in next sc, ch 4; rep from * 4 more times; join with sl st to top of first petal. (6 petals, 6 ch-4 sps)',
      'Ch 3, dc2tog in same st (first petal made), ch 4, *dc3tog in next sc, ch 4; rep from * 4 more times; join with sl st to top of first petal. (6 petals, 6 ch-4 sps)',
      'Ch 3 (counts as dc), dc2tog in same st, ch 4, *dc3tog in next sc, ch 4; rep from * 4 more times; join. (6 clusters, 6 ch-4 sps)',
      'Ch 3, dc2tog in same sc (counts as cluster), ch 4, (3-dc cl in next sc, ch 4) 5 times; join. (6 cl)',
      'Ch 3, 2-dc cl in same sc, ch 4, (3-dc cl in next sc, ch 4) 5 times; join. (6 cl)',
      'Ch 3, 2 dc in same sc (counts as first petal), ch 4, (3-dc cl in next sc, ch 4) 5 times; join. (6 petals)',
      'Ch 3, dc2tog in same sc (equals first puff), ch 4, (dc3tog in next sc, ch 4) 5 times; join.',
      'Ch 3, dc2tog in same sc (this is your first petal), ch 4, (dc3tog in next sc, ch 4) 5 times; join.',
      'Ch 3 and dc2tog in same sc for first petal, ch 4, (dc3tog in next sc, ch 4) 5 times; join.',
      'Ch 3, dc2tog in same sc (first petal), ch 4, (dc3tog in next sc for petal, ch 4) 5 times; join. (6 petals)',
      'Ch 3, dc2tog in same sc (counts as 1 petal here and throughout), ch 4, (dc3tog in next sc, ch 4) 5 times; join. (6 petals)',
      'Ch 3, dc2tog in same sc (beg petal), ch 4, (dc3tog in next sc, ch 4) 5 times; join. (6 petals)',
      'Ch 3, dc2tog in same sc (counts as a leaf), ch 4, (dc3tog in next sc, ch 4) 5 times; join. (6 leaves)',
      'Ch 3, dc2tog in same sc - counts as first petal -, ch 4, (dc3tog in next sc, ch 4) 5 times; join. (6 petals)',
      'Ch 3, dc2tog in same sc. This counts as the first petal. Ch 4, (dc3tog in next sc, ch 4) 5 times; join. (6 petals)',
    ],
  },
  {
    name: 'Shells begun with a chain that a note counts as a stitch',
    before:
      'Beg ch-3 counts as dc unless told otherwise.\nRnd 1: Ch 4, join with sl st to form ring; ch 1, 6 sc in ring; join. (6 sc)\nRnd 2: ',
    after: '',
    made: [6, 30],
    wordings: [
      'Ch 3, 4 dc in same st (counts as first shell), ch 2, *5 dc in next sc, ch 2; rep from * around; join. (30 dc)',
      'Ch 3, 4 dc in same st (counts as first petal), ch 2, *5 dc in next sc, ch 2; rep from * around; join. (30 dc)',
      'Ch 3, 4 dc in same sc (first fan), *5 dc in next sc; rep from * around; join. (6 fans)',
      'Ch 3, 4 dc in same sc (beg shell made), (5-dc shell in next sc) 5 times; join. (6 shells)',
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

describe('Chains of which the text says what they are', () => {
  const second = (words: string) =>
    `Rnd 1: Ch 1, 12 sc in a magic ring, sl st in first sc. (12 sc)\nRnd 2: ${words}`

  it.each([
    ['Ch 3 (does not count as a st), dc in same st, 2 dc in each sc around, sl st in first dc. (24 dc)', 23],
    ['Ch 3 (not a stitch), dc in next 11 sc, sl st in first dc. (12 dc)', 11],
    ['Ch 3 (counts as a st), 2 dc in same st, 2 dc in each sc around, sl st in top. (24 dc)', 25],
  ])('are read in no other way: %s', (words, stitches) => {
    expect(told(second(words))).not.toEqual([])
    expect(made(second(words))).toEqual([12, stitches])
  })

  it.each(['dc in same st, 2 dc in each sc around', 'dc in same st, *2 dc in next sc; rep from * around'])(
    'are told where the first group lacks what they do not count for: %s',
    (words) => {
      const text = (chains: string) => second(`${chains}, ${words}, sl st in first dc.`)
      expect(told(text('Ch 3 (does not count as a st)'))).toEqual([
        expect.stringContaining('first group is of 1'),
      ])
      expect(told(text('Ch 3 (counts as a dc)'))).toEqual([])
    },
  )

  it('are no denial where only their place is', () => {
    const text = `3 ch always counts as a dc and sits in a gap, never on top of a stitch.
Rnd 1: Magic ring, ch 3, 11 dc in ring, join. (12 dc)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([12])
  })
})

describe('A name in a bracket behind what is worked', () => {
  const square = (
    first: string,
    corner: string,
  ) => `Rnd 1: Ch 4, sl st to form a ring; ch 3 (first dc), 11 dc in ring; sl st to top. (12)
Rnd 2: Ch 3 (first dc), (dc, ch 2, 2 dc) in same st${first}, dc in next 2 dc, *(2 dc, ch 2, 2 dc) in next dc ${corner}, dc in next 2 dc; rep from * 2 more times; sl st to top. (24 dc)
Rnd 3: Ch 3, dc in next dc, corner in ch-2 sp, *dc in next 6 dc, corner in ch-2 sp; rep from * 2 more times, dc in last 4 dc; sl st to top. (40 dc)`

  it.each([
    [' [corner]', '[corner]'],
    [' (corner made)', '(corner made)'],
    ['', '(corner)'],
  ])('is what it is called later on: %s %s', (first, corner) => {
    expect(told(square(first, corner))).toEqual([])
    expect(made(square(first, corner))).toEqual([12, 24, 40])
  })

  it('leaves the popcorn that a round begins with a popcorn', () => {
    const text = `Popcorn: 4 dc in same st, remove hook, insert in first dc and pull dropped lp through.
Rnd 1: Ch 5, join to form ring. Ch 3, 3 dc in ring, remove hook from lp, insert in top of ch-3 and pull lp through, ch 2, [popcorn in ring, ch 2] 5 times, join. (6 popcorns)
Rnd 2: Ch 1, (sc in popcorn, 3 sc in ch-2 sp) around, join. (24 sc)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([6, 24])
  })
})

describe('Clusters that are stated and not there', () => {
  const flower = (laps: string, petals: number) =>
    `Beg ch-3 counts as dc.
Rnd 1: Magic ring; ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)
Rnd 2: Ch 3, dc2tog in same st (counts as first petal), ch 4, *dc3tog in next sc, ch 4; rep from * ${laps}; join. (${petals} petals)`

  it.each([
    ['4 more times', 7, '7 petals, the round makes 6 petals'],
    ['3 more times, sk last sc', 6, '6 petals, the round makes 5 petals'],
  ])('are told: %s, %i', (laps, petals, message) => {
    expect(told(flower(laps, petals))).toEqual([expect.stringContaining(message)])
  })

  it('leaves a decrease behind a chain that counts beside it', () => {
    const text = `Beg ch-3 counts as dc.
Rnd 1: Magic ring, ch 1, 24 sc in ring; join in first sc. (24 sc)
Rnd 2: Ch 3, dc2tog over next 2 sts, (dc in next st, dc2tog over next 2 sts) 7 times; join in top of ch-3. (16 sts)`
    expect(told(text)).toEqual([])
    expect(made(text)).toEqual([24, 16])
  })
})
