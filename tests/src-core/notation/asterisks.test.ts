/**
 * What is repeated and where a round begins, in the words of many hands: asterisks that are named again, closed, left
 * alone or set behind; the way to the first place; rings; what chains stand for. (Common practice, no source.)
 */
import { describe, expect, it } from 'vitest'
import type { Terms } from '../../../shared-types/project'
import { readRounds } from '../../../src-core/notation/read'

/** What each round makes, and everything besides notes that is found. */
function read(text: string, terms: Terms = 'US') {
  const { rounds, findings } = readRounds(text, { terms })
  const told = findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code)
  return { made: rounds.map(({ made }) => made), told }
}

const TWELVE = 'Rnd 1: Magic ring, ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)\n'
const PAIR = 'sc in next sc, 2 sc in next sc'

describe('a repeat', () => {
  it.each([
    `*${PAIR}*, work from * to * 6 times, join.`,
    `*${PAIR}*, work from * to * 6 times in total, join.`,
    `*${PAIR}*. Repeat from * to * 5 more times, join.`,
    `*${PAIR}*; from * to * 6 times; join.`,
    `*${PAIR}. Keep going from * to * until you're back at the beginning. Join.`,
    `*${PAIR}.* Keep repeating from * to * all the way round. Join.`,
    `*${PAIR}; from * repeat 5 times more, join.`,
    `*${PAIR}; repeat 5 times from *, join.`,
    `*${PAIR}*; repeat (from * to *) 5 more times, join.`,
    `*${PAIR}*, continue from * to * around, join.`,
    `*${PAIR}*. Continue repeating from * until the round is complete, join.`,
    `*${PAIR}, repeat from asterisk 5 times, join`,
    `*${PAIR}; repeat * 5 times, join`,
    `*${PAIR}; repeat around, join`,
    `*${PAIR}; rep 5 times, join`,
    `*${PAIR}* - repeat 6 times in total, join`,
    `*${PAIR}*, do this 6 times, join`,
    `*${PAIR}, 6 times in all, join`,
    `*${PAIR}** rep from * to ** 5 more times, join`,
    `${PAIR}*, rep from * around, join`,
    `*${PAIR}*, rep from * to * 4 times more, sc in next sc, 2 sc in last sc, join`,
    `*${PAIR}* 3 times, *${PAIR}* 3 times, join`,
    '(sc, inc)*6, join.',
    '(sc, inc) * 6.',
    '[sc, inc]*6',
    '*sc, inc* 6 times',
    '*sc, inc* * 6',
    '*sc, inc; x6',
    '*sc, inc x 6',
    '*sc, inc, rep x6',
    'sc, inc * 6',
    'sc, inc x 6',
    'inc, sc x 6, join',
    '2 sc in next st, sc in next st x 6',
  ])('%s', (words) => {
    expect(read(`${TWELVE}Rnd 2: Ch 1, ${words} (18 sc)`)).toEqual({ made: [12, 18], told: [] })
  })

  it.each([
    `*${PAIR}*, work from * to * 5 times, join. (18 sc)`,
    `*${PAIR}; from * repeat 6 times more, join. (18 sc)`,
    `*${PAIR}; repeat 4 times from *, join. (18 sc)`,
    '(sc, inc)*5 (18 sc)',
    '*sc, inc; x7 (18 sc)',
    'sc, inc * 7 (18 sc)',
    'sc, inc x 5 (18 sc)',
    `*${PAIR}. Keep going from * to * until you're back at the beginning. Join. (24 sc)`,
  ])('that does not fit is told: %s', (words) => {
    expect(read(`${TWELVE}Rnd 2: Ch 1, ${words}`).told).not.toEqual([])
  })

  it('an amount that is only of its own stitch stays so', () => {
    expect(read(`${TWELVE}Rnd 2: Ch 1, sc x 6, inc x 6 (18)`)).toEqual({ made: [12, 18], told: [] })
    expect(read(`${TWELVE}Rnd 2: Ch 1, inc x 6 (12)`).told).toEqual(['rounds/stitches-left'])
  })
})

describe('the way to where a round begins', () => {
  const square = (way: string) =>
    'Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 more times, join. (12 dc)\n' +
    `Rnd 2: ${way}, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, join. (24 dc)`

  it.each([
    'With sl sts go to the first corner',
    'Go with sl sts to first ch-2 sp',
    'Move with slip stitches to next ch-2 sp',
    'Travel with sl st to the corner space',
    'Sl st your way to the corner sp',
    'Work sl sts to next corner',
    'Sl st in each st to the corner sp',
    'Sl st in next 2 dc and corner sp',
    'Sl st in next 2 dc and sp',
    'Sl st over the next 2 dc and into the corner',
    'Sl st up to the corner space',
  ])('%s', (way) => {
    expect(read(square(way))).toEqual({ made: [12, 24], told: [] })
  })

  it('slip stitches lead behind the stitch of the joining, without chains too', () => {
    const text = `Rnd 1: Magic ring, ch 1, *sc in ring, ch 3; rep from * 3 more times, join to first sc. (4 loops)
Rnd 2: Sl st in first loop, ch 3 (counts as dc), 6 dc in same loop, *7 dc in next loop; rep from * twice more, join to top of ch-3. (28 dc)
Rnd 3: Sl st in next 3 dc, sc in same place as last sl st, *ch 9, sc in center dc of next 7-dc group; rep from * around, ending with ch 9, sl st in first sc. (4 loops)`
    expect(read(text)).toEqual({ made: [4, 28, 4], told: [] })
  })

  it('“in joining” is the stitch of the joining, which the sweep behind it leaves', () => {
    const text = `${TWELVE}Rnd 2: Ch 1, sc in joining, sc in each st around, join. (12 sc)`
    expect(read(text)).toEqual({ made: [12, 12], told: [] })
  })

  it('a chain behind yarn joined with sc is a space', () => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 2, join. (12 dc)
Rnd 2: Join B with sc in any ch-2 sp, (ch 2, sc) in same sp, *sc in next 3 dc**, (sc, ch 2, sc) in next ch-2 sp; rep from * around, ending last rep at **, join. (20 sc, 4 ch-2 sps)`
    expect(read(text)).toEqual({ made: [12, 20], told: [] })
  })

  it('chains that count as no stitch are a space where another like them closes the ring', () => {
    const text =
      'Rnd 1: Magic ring: ch 4 (does not count as a stitch), 4 tr, 3 dc, tr, 3 dc, 4 tr, ch 4, sl st in ring. (15 sts, 2 ch-4 sps)\n' +
      'Rnd 2: Ch 1, 4 sc in first ch-4 sp, sc in each of next 15 sts, 4 sc in last ch-4 sp, sl st in center of ring. (23 sc)'
    expect(read(text)).toEqual({ made: [15, 23], told: [] })
  })
})

describe('what everything begins with', () => {
  it.each([
    'Form with 8 ch a ring.',
    'With 8 ch form a ring.',
    'Make a ring with 8 ch.',
    'Close 8 ch to a ring.',
    '8 ch, close to a ring with 1 sl st.',
    'With No. 8 steel hook ch 6, join with sl st.',
    'mr',
    'Using A, mr',
  ])('%s', (words) => {
    const text = `Square (make 20)\n${words}\nRnd 1: Ch 3 (counts as dc), 11 dc in ring; join with sl st in top of ch-3. (12 dc)`
    expect(read(text)).toEqual({ made: [12], told: [] })
  })

  it('a heading may tell what the round is worked with', () => {
    expect(read(`${TWELVE}2nd round, with white: Ch 1, 2 sc in each sc around, join. (24 sc)`)).toEqual({
      made: [12, 24],
      told: [],
    })
  })
})

describe('said once', () => {
  it('chains that are no stitch', () => {
    const text =
      'The ch 2 at the start of a round is NOT a stitch.\n\nRnd 1: Magic ring, ch 2, 12 dc in ring, join to first dc. (12 dc)\n' +
      'Rnd 2: Ch 2, 2 dc in each st around, join. (24 dc)'
    expect(read(text)).toEqual({ made: [12, 24], told: [] })
  })

  it('a shell that was made is explained by what stands before it', () => {
    const text = `Rnd 1: Magic ring, ch 1, *sc in ring, ch 5; rep from * 5 more times, join to first sc. (6 loops)
Rnd 2: Sl st in next loop, ch 3, in same loop make 2 dc, ch 2 and 3 dc; in each loop around make 3 dc, ch 2 and 3 dc (shell made). Join. (6 shells)
Rnd 3: Sl st to ch-2 sp of shell, ch 3, in same sp make 2 dc, ch 2 and 3 dc; *ch 2, shell in ch-2 sp of next shell. Repeat from * around, ending with ch 2. Join. (6 shells)
Rnd 4: Sl st to ch-2 sp of shell, ch 3, 6 dc in same sp, sc in ch-2 sp between shells, *7 dc in ch-2 sp of next shell, sc in ch-2 sp between shells. Repeat from * around. Join. (42 dc, 6 sc)`
    expect(read(text)).toEqual({ made: [6, 36, 36, 48], told: [] })
  })

  it('what a stitch of its own is called tells its form', () => {
    const text =
      'MB (make bobble): 5dctog, working all five into the same stitch.\n\nRnd 1: Magic ring, ch 1, 8 sc in ring, join. (8)\n' +
      'Rnd 2: Ch 1, *MB in next st, ch 2; rep from * 7 more times, join to top of first bobble. (8 bobbles, 8 ch-2 sps)'
    expect(read(text)).toEqual({ made: [8, 8], told: [] })
  })

  it('a stitch goes on behind a statement', () => {
    const text =
      'Ch 33.\nRow 1: Hdc in 3rd ch from hook (skipped chs count as first hdc) and in each ch across, turn. (32 hdc)'
    expect(read(text)).toEqual({ made: [32], told: [] })
  })
})

describe('at the end', () => {
  it('a slip stitch without a place closes the round where all is worked', () => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, join. (12)
Rnd 2: Ch 3, 2 dc in next st. *Dc in next st, 2 dc in next st.* Keep going from * to * until you're back at the beginning. Slip stitch. (18)`
    expect(read(text)).toEqual({ made: [12, 18], told: [] })
  })

  it.each([
    'Join every following circle the same way over two lps wherever sides touch.',
    'Make four, or make forty!',
    'Sew the pieces together.',
  ])('a paragraph behind “fasten off” that works nothing is prose: %s', (words) => {
    const text = `${TWELVE}Rnd 2: Ch 1, 2 sc in each sc around, join. Fasten off.\n\n${words}`
    expect(read(text)).toEqual({ made: [12, 24], told: [] })
  })

  it('a paragraph that works something is not passed', () => {
    const text = `${TWELVE}Rnd 2: Ch 1, 2 sc in each sc around, join. Fasten off.\n\nSc in next 30 sts.`
    expect(read(text).told).not.toEqual([])
  })

  it('“first sc of Rnd 2” in round 2 is where it is joined', () => {
    expect(read(`${TWELVE}Rnd 2: 2 sc in each sc around. Sl st in first sc of Rnd 2. (24 sc)`)).toEqual({
      made: [12, 24],
      told: [],
    })
  })

  it('corners are put, placed or worked behind a sweep', () => {
    for (const verb of ['placing', 'putting', 'working', 'place', 'put'])
      expect(
        read(`Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 2, join. (12 dc)
Rnd 2: Ch 1, sc in the same stitch and in every dc around, ${verb} 3 sc in each corner space. Join. (24 sc)`),
      ).toEqual({ made: [12, 24], told: [] })
  })
})
