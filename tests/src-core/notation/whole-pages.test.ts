/** What stands around the rounds on whole pages: numbered parts, borders of joined pieces, counts in sentences (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const BLOCK = `Ch 22.
Row 1: Sc in 2nd ch from hook and in each ch across. (21 sc)
`

describe('Parts of a page', () => {
  it('begin under a number before their name', () => {
    const text = `1. FULL SQUARE
Magic ring.
R1: Ch 3, 11 dc in ring, sl st in top of ch-3. (12 dc)
Fasten off.

2) The Leaf (make 2)
Ch 5; join with sl st.
R1: Ch 3, 13 dc in ring, sl st in top of ch-3. (14 dc)`
    expect([made(text), told(text)]).toEqual([[12, 14], []])
  })

  it('are no parts where numbered lines are the rounds', () => {
    const text = `1. Ch 4, join.
2. Ch 3, 11 dc in ring, sl st in top of ch-3. (12 dc)
3. Ch 1, sc in each st around. (12 sc)`
    expect(made(text).slice(-2)).toEqual([12, 12])
    expect(told(text)).toEqual([])
  })

  it.each(['US TERMS', 'US abbreviations', 'Terms'])('are not begun by the list under "%s:"', (label) => {
    const text = `${label}: ch, sc, dc, sl st, sp(s)

Ch 6, sl st in first ch to form a ring.
Rnd 1: Ch 1, 12 sc in ring, sl st in first sc. (12 sc)`
    expect([made(text), told(text)]).toEqual([[12], []])
  })

  it.each(['MB – make bobble:', 'MB make bobble:', 'MB = make bobble:', 'MB (make bobble):'])(
    'explain a stitch as "%s"',
    (label) => {
      const text = `Abbreviations
ch chain; sc single crochet; RS right side; rep repeat
${label} (yo, insert hook in next st, yo, draw loop through, yo, draw through 2 loops) 4 times all in the same st, yo and draw through all 5 loops on hook.

${BLOCK}Row 2: Ch 1, turn, sc in first 3 sc, *MB in next sc, sc in next 5 sc; rep from * across. (21 sts)`
      expect([made(text), told(text)]).toEqual([[21, 21], []])
    },
  )
})

const SQUARE = `SQUARE
Magic ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, [3 dc in ring, ch 2] 3 times, sl st in top of ch-3. (12 dc, 4 ch-2 sps)
Fasten off.
`

describe('A border', () => {
  it.each([
    [
      'told behind the motif',
      'Whipstitch nine squares together, three by three.\n\nBORDER\nRnd 1: Join B in any corner sp, ch 1, *3 sc in corner sp, sc in next 3 dc, [sc in next 3 dc] twice',
    ],
    [
      'seen at its seams',
      'BORDER\nRnd 1: Join B in any corner sp, ch 1, *3 sc in corner sp, sc in next 3 dc, [sc in seam, sc in next 3 dc] twice',
    ],
    [
      'seen at its sides',
      'EDGING\nRnd 1: Join B in any outer corner, ch 1, *3 sc in corner, sc in each of next 9 dc along the side',
    ],
  ])('of joined motifs is not held against one of them: %s', (_, border) => {
    const seam = border.includes('seam') ? 14 : 12
    const text = `${SQUARE}${border}; rep from * 3 more times, sl st in first sc. (${seam * 4} sc)`
    expect([made(text), told(text)]).toEqual([[12, seam * 4], []])
  })

  it('of one motif is', () => {
    const text = `${SQUARE}BORDER\nRnd 1: Join B in any corner sp, ch 1, *3 sc in corner sp, sc in next 9 dc; rep from * 3 more times, sl st in first sc. (48 sc)`
    expect(told(text)).not.toEqual([])
  })

  it('goes round the part that it is named after', () => {
    const text = `LATTICE ${SQUARE}
SPOT
Magic ring.
Rnd 1: Ch 1, 9 sc in ring, join. (9 sc)
Rnd 2: Ch 1, 2 sc in each sc around, join. (18 sc)

BORDER FOR A SINGLE SQUARE
Rnd 1: Join B in any corner ch-2 sp, ch 1, *3 sc in corner sp, sc in next 3 dc; rep from * 3 more times, sl st in first sc. (24 sc)`
    expect([made(text), told(text)]).toEqual([[12, 9, 18, 24], []])
  })

  it.each(['join a fresh color in the top of the ch-3', 'join yarn with sl st in top of ch-3'])(
    'begins where the round before began: %s',
    (join) => {
      const text = `${SQUARE}BORDER
Rnd 1: ${join}, ch 1, sc in same place, sc in each of next 2 dc, *3 sc in ch-2 sp, sc in each of next 3 dc; rep from * 2 more times, 3 sc in last sp, sl st to first sc. (24 sc)`
      expect([made(text), told(text)]).toEqual([[12, 24], []])
    },
  )
})

describe('Sentences in a round', () => {
  it.each([
    ', changing to B in last st',
    ', changing to B in the last sc',
    ' and change to B in last st',
    '; change to B on last st',
    ', switching to B in final stitch',
    ', changing color to B on the last sc',
    ', changing to B in last step of last sc',
  ])('change the color in the last stitch without working it again: "%s"', (change) => {
    const text = `${BLOCK}Row 2: Ch 1, turn, sc in each sc across${change}. (21 sc)`
    expect([made(text), told(text)]).toEqual([[21, 21], []])
  })

  it('count before the work is turned', () => {
    const text = `Ch 4.
1st row. 2 dc in 4th ch from hook (skipped 3 ch counts as 1 dc). 3 dc. Turn.
2nd row. 3 ch, 1 dc in first dc, 1 dc in next dc, 2 dc in top of turning ch. 5 dc. Turn.
3rd row. 3 ch, 1 dc in first dc, (1 ch, skip 1 dc, 1 dc in next dc) once, 1 ch, skip 1 dc, 2 dc in top of turning ch. 5 dc and two ch-1 sps. Turn.`
    expect([made(text), told(text)]).toEqual([[3, 5, 5], []])
  })

  it('say again how many stand in each row end', () => {
    const text = `${BLOCK}Rows 2-10: Ch 1, turn, sc in each sc across. (21 sc)
EDGING
Rnd 1: Ch 1, turn, sc in each of 21 sc across the top, ch 2, 10 sc evenly down the side (one in each row end), ch 2, sc in each of 21 ch along the bottom, ch 2, 10 sc evenly up the other side (1 sc in each row end), ch 2, sl st in first sc. (62 sc, 4 ch-2 sps)`
    expect([made(text).at(-1), told(text)]).toEqual([62, []])
  })

  it.each([
    'Fasten off, or keep going in the same way with one more (sc, ch 1) per side each round.',
    'Fasten off and weave in ends. Repeat Round 1 with (sc, ch 1) for a larger square.',
  ])('leave what may follow to the maker: "%s"', (rest) => {
    const text = `Rnd 1: Magic ring, ch 1, (sc, ch 2) 4 times in ring, join. [4 sc, 4 ch-2 corners]\n${rest}`
    expect([made(text), told(text)]).toEqual([[4], []])
  })

  it('work on where yarn is joined behind "fasten off"', () => {
    const text = `Rnd 1: Magic ring, ch 1, 8 sc in ring, join. Fasten off A. Join B in any sc, or keep A
Rnd 2: Ch 1, 2 sc in each sc around. (16 sc)`
    expect(made(text)).toEqual([8, 16])
  })

  it.each([
    'To join as you go, work Round 1 of the next square with (dc, ch 1, sl st into neighbor’s ch-2 sp, ch 1, dc) at the two shared corners.',
    'As-you-go join: in Round 1 of the second and all later squares replace each shared corner with (dc, ch 1, dc round neighbor’s ch-2 sp, ch 1, dc).',
  ])('tell how motifs are joined: "%s"', (joins) => {
    const text = `${SQUARE}${joins}`
    expect([made(text), told(text)]).toEqual([[12], []])
  })
})

describe('Loops of stitches', () => {
  const PETALS = `Rnd 1: Magic ring, ch 1, 16 sc in ring.
Rnd 2: Join P in any sc, *ch 4, sc in 2nd ch from hook, hdc in next ch, dc in next ch, skip next sc, sl st in front loop of next sc; rep from * 7 times more. Fasten off P.
`
  it.each([
    'Rnd 3 (back loops only of Rnd 1): join G in the back loop of any sc, ch 3 (counts as dc), dc in same loop, 2 dc in each back loop around',
    'Rnd 3 (back loops only of Rnd 1): join G in any sc, ch 3 (counts as dc), dc in same st, 2 dc in each sc around',
    'Rnd 3 (back loops only of Rnd 1): join G in any sc, ch 3 (counts as dc), dc in same loop, 2 dc in each loop around',
    'Rnd 3: Working in back loops of Rnd 1, join G in any sc, ch 3 (counts as dc), dc in same loop, 2 dc in each back loop around',
    'Rnd 3 (BLO of Rnd 1): join G in any sc, ch 3 (counts as dc), dc in same loop, 2 dc in each loop around',
  ])('are told once for the round, or in its heading: %s', (round) => {
    const text = `${PETALS}${round}, sl st to top of ch-3. (32 dc)`
    expect(readRounds(text, { terms: 'US' }).rounds.at(-1)?.made).toBe(32)
    expect(told(text)).toEqual([])
  })
})
