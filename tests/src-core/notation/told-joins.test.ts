/** Joins as you go, told in sentences behind the rounds of the first motif. (Common practice, no source.) */
import { takeApart } from '../../../src-core/notation/take-apart'
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const SQUARE = `Rnd 1: Ch 4, join to form ring. Ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times; join in top of ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next corner sp; rep from * 2 more times, ch 1; join. (24 dc)
Fasten off.`

describe('Joining told in sentences', () => {
  it.each([
    'Joining round: Work Rnd 2 as written; at corners 3 and 4, in place of ch 2, ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1.',
    'Joining round: Work Rnd 2 as written; at corners 3 and 4, instead of the ch 2 work: ch 1, sl st in corresponding ch-2 sp of neighbor, ch 1.',
    'Second and following motifs: work as first motif to end of Rnd 1. On Rnd 2, join to first motif at the corners by replacing the ch 2 with ch 1, sl st in corner sp of first motif, ch 1.',
    'Joining round: Work as Rnd 2, but on the sides to be joined work (3 dc, ch 1, sl st in corner sp of adjacent motif, ch 1, 3 dc) in each corner and replace each ch 1 with sl st in ch-1 sp of adjacent motif.',
    'Join as you go: Make the next motif to the end of Rnd 1. In Rnd 2, work along to the first corner, then 3 dc, ch 1, sl st into the corner of the first motif, ch 1, 3 dc in corner sp. Carry on around the square, joining the sides as you go with a sl st in each ch-1 sp of the first motif.',
    'Joining\nMake 4 squares. On the second square replace the ch-2 at two corners by ch 1, sc in corner of first square, ch 1. Join the sides in the same way, working sc in the ch-1 sp of the first square instead of ch 1.',
    'Note on joining: when a corner meets a finished motif, work ch 1, sl st into its corner, ch 1 instead of ch 2.',
    'To join: on Rnd 2 work (3 dc, ch 1, sl st in corner of previous square, ch 1, 3 dc) in the corners to be joined, and sl st into the ch-1 sps of the previous square instead of ch 1.',
  ])('is no round of the motif, and is told to be text: %s', (words) => {
    expect(told(`${SQUARE}\n${words}`)).toEqual([])
    expect(made(`${SQUARE}\n${words}`)).toEqual([12, 24])
  })

  it('stands in place of the round of its number', () => {
    const text = `${SQUARE}\nRnd 2 (joining): Work as Rnd 2, joining to first motif at the corners by replacing the ch 2 with ch 1, sl st in corner sp of first motif, ch 1. (24 dc)`
    expect(told(text)).toEqual([])
    expect(told(text.replace('(joining)', '(yellow)')).join()).toMatch('rounds/number-twice')
  })

  it('is a round where it is written out', () => {
    const round =
      'Joining round: Ch 1, *sc in each dc to next corner, (sc, ch 1, sl st in corner sp of adjacent motif, ch 1, sc) in corner sp; rep from * 3 more times; join.'
    expect(made(`${SQUARE}\n${round}`)).toHaveLength(3)
  })
})

describe('a round that is told once more, as later motifs join it', () => {
  const OWN = `First Hexagon
Rnd 1: 6 sc in magic ring. (6 sc)
Rnd 2: 2 sc in each sc around, join. (12 sc)
Rnd 3: *Sc in next sc, ch 3, sk next sc; rep from * around, join. (6 ch-3 sps)
`
  it.each([
    'Second and Following Hexagons\nWork as for First Hexagon to end of Rnd 2.\nRnd 3 (joining rnd): Work as Rnd 3, but along each side that meets another hexagon replace each ch-3 with (ch 1, sl st in corresponding ch-3 sp of other hexagon, ch 1).',
    'Rnd 3 (joining): *Sc in next sc, ch 1, sl st in corresponding ch-3 sp of previous hexagon, ch 1, sk next sc; rep from * once, (sc in next sc, ch 3, sk next sc) 4 times, join.',
  ])('is no round of its motif: %s', (again) => {
    const { rounds } = takeApart(`${OWN}${again}`, 'US')
    expect(rounds.map(({ work }) => work)).toHaveLength(3)
  })

  it('is one where nothing else tells that round', () => {
    const { rounds } = takeApart(OWN.replace('Rnd 3:', 'Rnd 3 (joining rnd):'), 'US')
    expect(rounds).toHaveLength(3)
  })
})

describe('another piece of the same kind', () => {
  const dots = (join: string) => `FIRST DOT
R1: 8 sc in magic ring, sl st to first sc. {8 sc}
R2: *sc in next sc, ch 3; rep from * around, sl st to first sc. {8 ch-3 sps}

NEXT DOTS
R1: work as for First Dot.
R2: [sc in next sc, ch 1, sl st in ${join}, ch 1] twice, [sc in next sc, ch 3] 6 times, sl st to first sc. {8 sc}`
  it.each(['a ch-3 sp of previous dot', 'a ch-3 sp of first dot', 'next ch-3 sp of the finished dot'])(
    'is what %s belongs to',
    (join) => {
      expect(told(dots(join))).toEqual([])
      expect(made(dots(join)).at(-1)).toBe(8)
    },
  )

  it('is met again where its gaps are named once', () => {
    const text = `FIRST SQUARE
R1: (3 dc, ch 2) 4 times in magic ring, join. (12 dc)
R2: *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 3 more times, join. (24 dc)

NEXT SQUARE
R1: As First Square.
R2: 3 dc in next ch-2 sp, ss in a corner of first square, 3 dc in same ch-2 sp, sl st in next gap of first square, 3 dc in next ch-2 sp, sl st in next gap, 3 dc in same ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * once, join. (24 dc)`
    expect(told(text.replace('ss in a', 'sl st in a'))).toEqual([])
  })
})
