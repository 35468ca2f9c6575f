/** Overlay rounds, petals and their tips, yarn joined ahead, joins that cannot be, in words. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { readAlike, toldOf } from './wordings'
import type { Wordings } from './wordings'

const ALIKE: readonly Wordings[] = [
  {
    name: 'The tip of each petal',
    before:
      'Magic ring.\nRnd 1: Ch 4 (counts as dc and ch 1), (dc, ch 1) 5 times in ring; join. (6 dc, 6 ch-1 sps)\nRnd 2: Sl st in ch-1 sp, ch 3 (counts as dc), (dc, ch 3, 2 dc) in same sp, (2 dc, ch 3, 2 dc) in each of next 5 ch-1 sps; join in top of ch-3. (24 dc)\nRnd 3: ',
    after: '',
    made: [6, 24, 18],
    wordings: [
      'Sl st in next dc and in ch-3 sp, ch 1, *(sc, ch 3, sc) in ch-3 sp, ch 3, sc in sp between groups, ch 3; rep from * around; join.',
      'Sl st in next dc and in ch-3 sp, ch 1, *(sc, ch 3, sc) in the ch-3 sp, ch 3, sc in the gap between this group of 4 dc and the next group, ch 3; rep from * around (6 times in all); join.',
      'Sl st to ch-3 sp, *(sc, ch 3, sc) in point, ch 3, sc between next two groups, ch 3; rep from * 5 more times; join in first sc.',
      'Sl st to ch-3 sp, *(sc, ch 3, sc) in tip, ch 3, sc between groups, ch 3; rep from * 5 more times; join in first sc.',
      'Sl st to ch-3 sp, *(sc, ch 3, sc) in ch-3 sp at tip of petal, ch 3, sc between groups, ch 3; rep from * 5 more times; join in first sc.',
      'Sl st to ch-3 sp, *(sc, ch 3, sc) in the ch-3 tip, ch 3, sc between groups, ch 3; rep from * 5 more times; join in first sc.',
      'Sl st in next dc, in next ch and into ch-3 sp, ch 1, *(sc, ch 3, sc) in ch-3 sp, ch 3, sc between groups, ch 3; rep from * 5 more times; join.',
    ],
  },
  {
    name: 'A list that ends with and',
    before:
      'Magic ring.\nRnd 1: Ch 1, 12 sc in ring; join. (12 sc)\nRnd 2: Ch 1, *sc in next sc, ch 5, sk 1 sc; rep from * 5 more times; join. (6 ch-5 sps)\nRnd 3: ',
    after: '',
    made: [12, 6, 36],
    wordings: [
      '*3 dc, ch 2 and 3 dc in next ch-5 sp; rep from * 5 more times; join.',
      'Sl st in loop, ch 3, 2 dc, ch 2 and 3 dc in same loop, *3 dc, ch 2 and 3 dc in next loop; rep from * 4 more times; join.',
      '*3 dc, ch 2, and 3 dc in next loop; rep from * around; join.',
      'In each loop work 3 dc, ch 2 and 3 dc; join.',
      '3 dc, ch 2 and 3 dc in each loop around; join.',
    ],
  },
  {
    name: 'Yarn joined behind the end of a round',
    before: 'Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)',
    after: '',
    made: [12, 24, 36],
    wordings: [
      ' Fasten off A.\nJoin B in any st.\nRnd 2: Ch 3, dc in same st, 2 dc in each dc around; join. (24 dc) Fasten off B.\nJoin C to any stitch.\nRnd 3: Ch 3, 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * around; join. (36 dc)',
      ' Fasten off.\nRnd 2: New color in any st. Ch 3, dc in same st, 2 dc in each dc around; join. (24 dc)\nRnd 3: C, start in any st: ch 3, 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * around; join. (36 dc)',
      '\nRnd 2: B: Ch 3, dc in same st, 2 dc in each dc around; join. (24 dc)\nRnd 3: C: Ch 3, 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * around; join. (36 dc)',
      '\nRnd 2) B: Ch 3, dc in same st, 2 dc in each dc around; join. (24 dc)\nRnd 3) C: Ch 3, 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * around; join. (36 dc)',
    ],
  },
  {
    name: 'More than what was worked before',
    before: '',
    after: '',
    made: [12],
    wordings: [
      'Rnd 1: Magic ring. Ch 3 (counts as dc), dc, ch 1, then (2 dc, ch 1) five more times into the ring; join. (12 dc)',
      'Rnd 1: Magic ring. Ch 3 (counts as dc), dc in ring, ch 1, (2 dc in ring, ch 1) 5 more times; join. (12 dc, 6 ch-1 sps)',
      'Rnd 1: Magic ring. Ch 1, (2 dc in ring, ch 1) 5 more times; join. (12 dc, 6 ch-1 sps)',
    ],
  },
  {
    name: 'Places of rounds further down',
    before:
      'Magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)\nRnd 2: Ch 1, 2 sc in BLO of each dc around, join. (24 sc)\nRnd 3: Ch 1, ',
    after: '',
    made: [12, 24, 24],
    wordings: [
      '*sc in BLO of next sc, FPtr around the dc of Rnd 1 below the next sc (skip that sc); rep from * 11 more times; join. (24 sts)',
      '*sc in next sc, FPtr around the dc of Rnd 1 below the next sc, skip that sc; rep from * 11 more times; join. (24 sts)',
      '*sc in next sc, FPtr around corresponding dc of Rnd 1, skip next sc; rep from * around; join. (24 sts)',
      '*sc in next sc, FPtr around dc directly below on Rnd 1, skip next sc; rep from * around; join. (24 sts)',
      '*sc in next sc, FPtr around the dc of Rnd 1 straight below, sk 1 sc; rep from * around; join. (24 sts)',
      '(sc in next sc, FPtr around dc of Rnd 1 below, sk next sc) 12 times; join. (24 sts)',
    ],
  },
  {
    name: 'The turn and the count',
    terms: 'US',
    before: 'Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. (11 sc)\n',
    after: '',
    made: [11, 11, 11],
    wordings: [
      'Row 2: Ch 1, turn, sc in each sc across. 11 sc.\nRow 3: Ch 1, turn, 11 sc. 11 sts. Fasten off.',
      'Row 2: Ch 1, turn, 11 sc. (11 sc)\nRow 3: Ch 1, turn, sc in each st across. 11 sc. Fasten off.',
      'Row 2: Ch 1, turn, sc in each st across. 11 sc. Fasten off.\n\nRow 3: Join yarn in first sc, ch 1, sc in each st across. 11 sc. Fasten off.',
    ],
  },
  {
    name: 'post+same',
    before:
      'Magic ring.\nRnd 1: Ch 2 (does not count as a st throughout), 12 dc in ring; join with sl st in first dc. (12 dc)\nRnd 2: Ch 2, ',
    after: '',
    made: [12, 24],
    wordings: [
      '*FPdc around next dc, dc in same dc; rep from * around; join.',
      '*FPdc around the next dc, dc in the top of the same dc; repeat from * all the way around, join. (24 sts: 12 FPdc and 12 dc)',
      '*FPdc around next dc, dc in top of same dc*; rep from * to * around, join. (12 FPdc, 12 dc)',
      '(FPdc around next st, dc in same st) 12 times, join.',
      '[FPdc around post of next dc, dc in top of that dc] 12 times, join.',
      '(FPdc, dc) in each dc around, join. (24)',
      '*fpdc around next dc, then dc in top of that same stitch; rep from * around; join.',
      '*dc in next dc, FPdc around same dc; rep from * around; join.',
      '*dc in next dc, fpdc around the post of the same dc; rep from * 11 times more; join.',
      '*dc in next st, FPdc around st just worked; rep from * around; join.',
      '*work FPdc around next dc and 1 dc into the top of the same dc, repeat from * around, join.',
      '(dc, FPdc) in each st around. Join.',
      'in each dc work 1 dc and 1 FPdc around the same dc, join.',
      '(1 FPdc, 1 dc) in every st, join.',
    ],
  },
  {
    name: 'posts sweep',
    before:
      'Magic ring.\nRnd 1: Ch 2 (does not count as a st throughout), 12 dc in ring; join with sl st in first dc. (12 dc)\nRnd 2: Ch 2, *FPdc around next dc, dc in same dc; rep from * around; join in first st. (24 sts)\nRnd 3: Ch 2, ',
    after: '',
    made: [12, 24, 36],
    wordings: [
      '*FPdc around next FPdc, 2 dc in next dc; rep from * around; join. (36 sts)',
      'FPdc around each FPdc and 2 dc in each dc around; join. (36 sts)',
      'FPdc around each FPdc and 2 dc in each dc around; join. (12 FPdc, 24 dc)',
      'FPdc around each FPdc, 2 dc in each dc, around; join.',
      'work FPdc around each FPdc and 2 dc in each dc; join.',
      '2 dc in each dc and FPdc around each FPdc around; join. (36 sts: 12 FPdc and 24 dc)',
      '[FPdc around next FPdc, 2 dc in next dc] around; join. (36)',
      '[FPdc around FPdc, 2 dc in dc] around; join. (36)',
      '[FPdc around FPdc, 2 dc in dc] 12 times; join. (36)',
      '*FPdc around FPdc, inc in dc; rep from * around, join. (36)',
      '*FPdc around the FPdc, 2 dc in the dc; rep from * around, join. (36)',
      '*FPdc, 2 dc in next dc; rep from * around, join. (36)',
      '*FPdc in FPdc, 2 dc in next dc; rep from * around, join. (36)',
      '*FPdc over next FPdc, 2 dc in next dc; rep from * around, join. (36)',
      '*fpdc around next fp st, 2 dc in next dc; rep from * around, join. (36)',
      '*FPdc around next post st, 2 dc in next dc; rep from * around, join. (36)',
      '*FPdc around next post stitch, 2 dc in next st; rep from * around, join. (36)',
      '*FPdc around next front post dc, 2 dc in next dc; rep from * around, join. (36)',
      '*front post dc around next front post dc, 2 dc in next dc; rep from * around, join. (36)',
      'keep the raised stitches in line: *FPdc around next FPdc, 2 dc in next dc; rep from * around, join. (36)',
      'FPdc around every FPdc, and work 2 dc in every dc; join. (36)',
      'FPdc in each FPdc and 2 dc in each dc around; join. (36)',
      'working FPdc around each FPdc, work 2 dc in each dc around; join. (36)',
      '*FPdc around next FPdc, 2 dc in next; rep from * around; join. (36)',
    ],
  },
  {
    name: 'posts grow',
    before:
      'Magic ring.\nRnd 1: Ch 2 (does not count as a st throughout), 12 dc in ring; join with sl st in first dc. (12 dc)\nRnd 2: Ch 2, *FPdc around next dc, dc in same dc; rep from * around; join in first st. (24 sts)\nRnd 3: Ch 2, *FPdc around next FPdc, 2 dc in next dc; rep from * around; join.\nRnd 4: Ch 2, ',
    after: '',
    made: [12, 24, 36, 48],
    wordings: [
      '*FPdc around next FPdc, dc in next dc, 2 dc in next dc; rep from * around; join. (48)',
      '*FPdc around next FPdc, dc in dc, 2 dc in next dc; rep from * around; join. (48)',
      '[FPdc around FPdc, dc in next st, 2 dc in next st] around; join. (48 sts: 12 FPdc and 36 dc)',
      '[FPdc around next FPdc, dc, inc] 12 times; join. (48)',
      '*FPdc around FPdc, dc in next, 2 dc in next; rep from * around; join. (12 FPdc, 36 dc)',
    ],
  },
  {
    name: 'posts plain',
    before:
      'Magic ring.\nRnd 1: Ch 2 (does not count as a st throughout), 12 dc in ring; join with sl st in first dc. (12 dc)\nRnd 2: Ch 2, *FPdc around next dc, dc in same dc; rep from * around; join in first st. (24 sts)\nRnd 3: Ch 2, ',
    after: '',
    made: [12, 24, 24],
    wordings: [
      'FPdc around each FPdc and dc in each dc around, join. (24)',
      'FPdc around each FPdc, BPdc around each dc around; join. (24)',
      'BPdc around each st around; join. (24)',
      'BPdc in each st around; join. (24 BPdc)',
      'BPdc around each; join. (24)',
      'BPdc in each. Join. (24)',
      'BPdc around. Join. (24)',
      'FPdc around each FPdc, dc in each dc. Join. (24)',
      '*FPdc around next FPdc, BPdc around next dc; rep from * around. Join. (24)',
      '(FPdc around next FPdc, dc in next dc) around. Join. (24)',
      'FPdc over FPdc, dc over dc around. Join. (24)',
      'FPdc over each FPdc and dc in each dc around, join. (24)',
      'work each st as it appears (FPdc around FPdc, dc in dc) around, join. (24)',
      'FPdc in FPdc and dc in dc around, join. (24)',
      'FPtr around each FPdc and dc in each dc around, join. (24)',
      'dc in each dc and FPdc around each FPdc; join. (12 FPdc, 12 dc)',
    ],
  },
  {
    name: 'fptr below',
    before:
      'Magic ring.\nRnd 1: Ch 1, 12 sc in ring; join. (12 sc)\nRnd 2: Ch 1, 2 sc in each sc around; join. (24 sc)\nRnd 3: Ch 1, *sc in next sc, 2 sc in next sc; rep from * around; join. (36 sc)\nRnd 4: Ch 1, ',
    after: '',
    made: [12, 24, 36, 36],
    wordings: [
      '*sc in next 2 sc, FPtr around next sc of Rnd 2, skip next sc; rep from * around; join. (36)',
      '*sc in next 2 sc, FPtr around sc 2 rnds below, sk next sc; rep from * around; join. (36)',
      '*sc in next 2 sc, FPtr around st of Rnd 2 directly below, sk 1 sc of Rnd 3; rep from * around; join. (36)',
      '*sc in next 2 sc, FPdc around the sc of Rnd 2 below the next sc (skip that sc); rep from * 11 more times; join. (36)',
      '[sc in next 2 sts, FPtr around corresponding st of Rnd 2, skip st behind FPtr] around; join. (36)',
      '[sc in next 2 sts, FPtr around corresponding sc in Rnd 2, skip sc behind] 12 times; join. (36)',
      '(sc in next 2 sc, FPdc around post of next sc in Rnd 2, sk sc behind FPdc just made) 12 times; join. (36)',
      '*sc in 2 sc, fpdc around sc two rounds below, skip the sc behind it; rep from * around. Join. (36)',
      '*sc in next 2 sc, spike sc in st 2 rounds below, sk next sc; rep from * around. Join. (36)',
      '*sc in next 2 sc, long dc in Rnd 2 sc below, sk next sc; rep from * around. Join. (36)',
      '*sc in next 2 sc, dc in next sc of Rnd 2 (sk sc behind it); rep from * around. Join. (36)',
      '*sc in next 2 sc, FPdc around next sc two rnds below, skip next sc of current rnd; rep from * around. Join. (36)',
      '*sc in next 2 sc, work a FPdc around next Rnd 2 sc, miss sc behind; rep from * around. Join. (36)',
      '*sc in next 2 sc, FPdc around sc below next sc, skip that sc; rep from * around. Join. (36)',
    ],
  },
  {
    name: 'overlay dc',
    before:
      'Magic ring.\nRnd 1: Ch 2 (does not count as a st throughout), 12 dc in ring; join with sl st in first dc. (12 dc)\nRnd 2: Ch 1, 2 sc in BLO of each dc around, join. (24 sc)\nRnd 3: Ch 1, ',
    after: '',
    made: [12, 24, 24],
    wordings: [
      '*sc in BLO of next sc, FPtr around the dc of Rnd 1 below the next sc (skip that sc); rep from * 11 more times; join. (24 sts)',
      '*sc in next sc, FPtr around the dc of Rnd 1 below the next sc, skip that sc; rep from * 11 more times; join. (24 sts)',
      '*sc in next sc, FPtr around next dc of Rnd 1, skip next sc; rep from * around; join. (24 sts)',
      '*sc in next sc, dc in the free front loop of next dc of Rnd 1, skip next sc; rep from * around; join. (24 sts)',
      '*sc in next sc, dc in free lp of dc directly below on Rnd 1, skip next sc; rep from * around; join. (24 sts)',
      '*sc in next sc, working in front of Rnd 2, dc in free front lp of next dc of Rnd 1, skip next sc; rep from * around; join. (24 sts)',
      '*sc in next sc, dc in front lp of dc 2 rnds below, skip next sc; rep from * around; join. (24 sts)',
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

const RING =
  'Ch 6, join to form ring.\nRnd 1: Ch 3 (counts as dc), 15 dc in ring; join in top of ch-3. (16 dc)\n'

describe('A join to chains that are not there is told', () => {
  it.each([
    'Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next dc, ch 1; rep from * around; sl st to 6th of the ch-4.',
    'Rnd 2: Sc in same st, *ch 4, sk 1 dc, sc in next dc; rep from * 6 more times, ch 4, sl st to 3rd of ch-5.',
    'Rnd 2: Ch 1, sc in same st, sc in each dc around; join in 3rd ch of beg ch-3.',
    'Rnd 2: Sc in same st and in each dc around; sl st to top of ch-3.',
  ])('%s', (words) => {
    expect(toldOf(`${RING}${words}`).filter((message) => message.startsWith('round 2'))).toHaveLength(1)
  })

  it.each([
    'Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next dc, ch 1; rep from * around; sl st to 3rd of the ch-4.',
    'Rnd 2: Sc in same st, *ch 4, sk 1 dc, sc in next dc; rep from * 6 more times, ch 4, sk 1 dc; sl st to first sc.',
    'Rnd 2: Join B in any st, ch 3, dc in each dc around; sl st to top of ch-3.',
  ])('but not: %s', (words) => expect(toldOf(`${RING}${words}`)).toEqual([]))
})

describe('Points and scallops are counted', () => {
  it('and points are stitches where a translation calls them so', () => {
    const text = (points: number) =>
      `Magic ring.\nRnd 1: Ch 1, 8 sc in ring; join. (8 points)\nRnd 2: Ch 1, 2 sc in each sc around; join. (${points} points)`
    expect(toldOf(text(16))).toEqual([])
    expect(toldOf(text(15))).toHaveLength(1)
  })

  const LOOPS = `${RING}Rnd 2: Ch 1, *sc in next dc, ch 3, sk 1 dc; rep from * around; join. (8 ch-3 sps)\nRnd 3: (Sc, 3 dc, sc) in each ch-3 sp; join. `
  it.each(['(8 points)', '(8 scallops)', '(8 petals)'])('%s', (count) => {
    expect(toldOf(LOOPS + count)).toEqual([])
    expect(toldOf(LOOPS + count.replace('8', '10'))).toHaveLength(1)
  })
})
