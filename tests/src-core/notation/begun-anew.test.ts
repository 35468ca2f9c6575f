/** Where rounds begin and end, in further wordings. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'
import { readAlike } from './wordings'
import type { Wordings } from './wordings'

const ALIKE: readonly Wordings[] = [
  {
    name: 'A decrease that the chains begin, in a place of their own',
    before:
      'Rnd 1: Magic ring, ch 1, 12 sc in ring, sl st in first sc. (12 sc)\nRnd 2: Join B with sl st in any sc, ',
    after: '\nRnd 3: Ch 1, 5 hdc in each ch-3 sp around, sl st in first hdc. (30 hdc)',
    made: [12, 6, 30],
    wordings: [
      'ch 2, dc in next sc (counts as dc2tog), ch 3, [dc2tog over next 2 sc, ch 3] 5 times, sl st in top of first dc. (6 dc2tog, 6 ch-3 sps)',
      'ch 2, dc in next sc (first dc2tog made), ch 3, [dc2tog over next 2 sts, ch 3] 5 times, sl st in top of first dc.',
      'ch 2, dc in next sc (counts as first cluster), ch 3, *dc2tog over next 2 sts, ch 3; rep from * around, sl st in first cluster. (6 clusters)',
      'ch 3, dc in next sc (counts as dc2tog), ch 3, *dc2tog over next 2 sc, ch 3; rep from * 4 more times, join in first dc.',
      'ch 2, dc in next st, ch 3, [dc2tog over next 2 sts, ch 3] 5 times, sl st in top of first dc. (6 dc2tog)',
    ],
  },
  {
    name: 'Yarn joined around a stitch of another round',
    before:
      'Rnd 1: Ch 6, join to form ring; ch 1, (sc in ring, ch 4) 8 times, join in first sc. (8 sc)\nRnd 2: In each ch-4 lp around work (sc, 4 dc, sc); join in first sc; fasten off Pink. (8 petals)\nRnd 3: ',
    after: '',
    made: [8, 48, 8],
    wordings: [
      'From behind, join Green around any sc of Rnd 1, ch 1, sc around same sc, ch 3, *sc around next sc of Rnd 1, ch 3; rep from * 6 times more; join in first sc. (8 ch-3 sps)',
      'Join Green around any sc of 1st rnd, ch 1, sc around same sc, ch 3, *sc around next sc of 1st rnd, ch 3; rep from * around; join. (8 ch-3 sps)',
      'Join Green around post of any sc of Rnd 1, ch 1, sc around same sc, ch 3, *sc around next sc of Rnd 1, ch 3; rep from * 6 more times; join in first sc.',
      'Join Moss Green around any sc of Rnd 1, ch 1, sc around same sc, ch 3, *sc around next sc of Rnd 1, ch 3; rep from * 6 more times; join in first sc.',
      'Join Green with sl st around any sc of Rnd 1, ch 1, sc around same sc, ch 3, *sc around next sc of Rnd 1, ch 3; rep from * 6 more times; join in first sc.',
      'Join B around any sc of Rnd 1, ch 1, sc around same sc, ch 3, *sc around next sc of Rnd 1, ch 3; rep from * 6 more times; join in first sc.',
    ],
  },
  {
    name: 'The last loop, joined',
    before:
      'Magic ring.\nRnd 1: Ch 1, 12 sc in ring, join in first sc. (12 sc)\nRnd 2: Ch 1, sc in same place, ',
    after: '\nRnd 3: Ch 1, 6 sc in each ch-5 sp around; join. (18 sc)',
    made: [12, 3, 18],
    wordings: [
      '*ch 5, skip 3 sc, sc in next sc, repeat from * around, joining last ch 5 with a sl st in first sc.',
      '*ch 5, skip 3 sc, sc in next sc, repeat from * around, joining last ch-5 with sl st in first sc.',
      '*ch 5, skip 3 sc, sc in next sc, repeat from * around, joining last 5 ch to first sc with sl st.',
      '*ch 5, skip 3 sc, sc in next sc, repeat from * around, joining the last ch-5 lp to first sc.',
      '*ch 5, skip 3 sc, sc in next sc, repeat from * around, last ch 5 being joined with sl st to first sc.',
    ],
  },
  {
    name: 'Abbreviations with blanks',
    before: '',
    after: '',
    made: [8, 40, 64],
    wordings: [
      '1st row—Ch 6, join in a ring, ch 6 (for 1 d c and ch 3), * 1 d c in ring, ch 3, repeat from * 6 times more, join to 3rd st of ch 6. 2nd row—Sl st into 1st space, ch 4 (for 1 tr c), 4 tr c in same space, ch 2, * 5 tr c in next space, ch 2, repeat from * around, join to top of ch 4. 3rd row—Ch 1, * 1 s c in each of next 5 tr c, 3 s c in next ch-2 space, repeat from * around, join to 1st s c.',
      'Rnd 1: Ch 6, join. Ch 6, * d c in ring, ch 3, rep from * 6 times more, join to 3rd ch. Rnd 2: Sl st into 1st sp, ch 5 (for 1 d tr c), 4 d tr c in same sp, ch 2, * 5 d tr c in next sp, ch 2, rep from * around, join. Rnd 3: Ch 1, * s c in each of next 5 d tr c, 3 s c in next ch-2 sp, rep from * around, join.',
      'Rnd 1: Ch 6, join. Ch 6, * d c in ring, ch 3, rep from * 6 times more, join to 3rd ch. Rnd 2: Sl st into 1st sp, ch 4 (for 1 Tr c), 4 tr c in same sp, ch 2, * 5 tr c in next sp, ch 2, rep from * around, join. Rnd 3: Ch 1, * s c in each of next 5 tr c, 3 s c in next ch-2 sp, rep from * around, join.',
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

describe('A ring that is made under a title', () => {
  it.each(['FAN PIECE', 'LARGE FAN', 'SHELL MOTIF', 'Fan coaster', 'Fan piece (make 2)', 'Popcorn piece'])(
    '%s',
    (title) => {
      const text = `${title}\nMake a magic ring.\nRow 1: Ch 4 (counts as dc, ch 1), (dc in ring, ch 1) 5 times, dc in ring; turn. (7 dc, 6 ch-1 sps)`
      expect(told(text)).toEqual([])
      expect(made(text)).toEqual([7])
    },
  )
})

describe('What becomes of a finished strip', () => {
  const strip = (words: string) =>
    `Ch 34.\nRow 1: Sc in 2nd ch from hook and in each ch across; turn. (33 sc)\nRow 2: Ch 1, sc in first sc, [sk next sc, 5 dc in next sc, sk next sc, sc in next sc] 8 times. Fasten off. (9 sc, 8 shells)\n${words}`

  it.each([
    'Coil strip, first shell at center; stitch through all layers at bottom edge.',
    'Roll up strip and stitch in place through all layers.',
    'Roll the strip from the beginning, first shell innermost, and stitch through the base.',
    'Stitch through all layers to secure.',
    'Stitch a button to center of rose, 5 shells from the end.',
    'Coil the strip into a rose, stitching through the base as you go.',
    'Arrange petals, last shell outermost.',
    'Wind into a rose, last shell outside, and sew the layers together.',
    'Spiral the strip around itself, first shell in the middle.',
    'Gather the lower edge, first shell at center.',
  ])('works no stitch: %s', (words) => {
    expect(told(strip(words))).toEqual([])
    expect(made(strip(words))).toEqual([33, 49])
  })
})

describe('Petals that are joined to those of another flower', () => {
  const flower = (
    last: string,
    petals: number,
  ) => `R1: Magic ring, ch 1, 8 sc in ring, sl st in first sc. (8 sc)
R2: Ch 5 (counts as dc, ch 2), (dc in next sc, ch 2) 7 times, sl st in 3rd of ch-5. (8 dc)
R3: (Sc, 2 dc, ch 3, 2 dc, sc) in each of next 6 ch-2 sps, [(sc, 2 dc, ch 1) in next ch-2 sp, sl st in ${last}, (ch 1, 2 dc, sc) in same ch-2 sp] twice, sl st in first sc. (${petals} petals)`

  it.each([
    'ch-3 lp of a petal of previous flower',
    'ch-3 lp of any petal of first flower',
    'the ch-3 lp of next petal on previous flower',
    'corresponding ch-3 lp on previous flower',
  ])('are as many: %s', (place) => {
    expect(told(flower(place, 8))).toEqual([])
    expect(made(flower(place, 8))).toEqual([8, 8, 48])
  })

  it('are told where there are not so many', () => {
    expect(told(flower('ch-3 lp of a petal of previous flower', 9))).toEqual([
      expect.stringContaining('9 petals'),
    ])
  })
})
