/**
 * What finished rounds come to, told in sentences, columns, lists and tables; words of the page that are no work.
 * Common practice, no source; counted by hand.
 */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  const slips = findings.filter(({ severity }) => severity !== 'note')
  return { made: rounds.map(({ made }) => made), slips: slips.map(({ code }) => code) }
}
const RING = 'Magic ring.\nRnd 1: Ch 1, 12 sc in ring; join. (12 sc)\n'

describe('a count in a sentence', () => {
  it.each([
    'The circle now has 24 sc in all.',
    '24 sc with 12 little increases between them.',
    'Twenty-four sc.',
    'You have 24 sc, 2 in each stitch of the round before.',
    'There are now 2 sc in each stitch.',
  ])('%s', (told) => {
    expect(read(`${RING}Rnd 2: Ch 1, 2 sc in each st around; join. ${told}`)).toEqual({
      made: [12, 24],
      slips: [],
    })
  })

  it('has every number up to a hundred in words', () => {
    const all = (words: string) => read(`Rnd 1: Magic ring, ch 1, 17 sc in ring; join. ${words} sc.`).slips
    expect(all('Seventeen')).toEqual([])
    for (const wrong of ['Nineteen', 'Twenty', 'Forty-one', 'Ninety-nine'])
      expect([wrong, all(wrong)]).toEqual([wrong, ['rounds/wrong-end-count']])
  })

  it('is held to where it counts the whole round', () => {
    const wrong = read(`${RING}Rnd 2: Ch 1, 2 sc in each st around; join. The circle now has 26 sc in all.`)
    expect(wrong.slips).toEqual(['rounds/wrong-end-count'])
  })

  it('is none of the round where it counts a side, a corner or a petal', () => {
    const square = `Magic ring.
Rnd 1: Ch 3, 11 dc in ring; join. You now have 12 dc in the ring.
Rnd 2: Ch 3, (dc, ch 2, 2 dc) in same st, *dc in next 2 dc, (2 dc, ch 2, 2 dc) in next dc; rep from * 2 more times, dc in last 2 dc; join with sl st. The square now has 6 dc on each of its 4 sides.
Rnd 3: Ch 1, sc in each dc and 3 sc in each ch-2 sp around; join. Each side now has 6 sc and 3 ch-1 spaces.`
    expect(read(square)).toEqual({ made: [12, 24, 36], slips: [] })
  })
})

describe('counts elsewhere', () => {
  const rounds = `Rnd 1. MR, ch 2, 8 hdc in ring, sl st to first hdc.
Rnd 2. Ch 2, 2 hdc in each st around, sl st to first hdc.
Rnd 3. Ch 1, [sc in each of next 2 sts] 8 times, sl st to first sc. Fasten off.

STITCH COUNTS
Rnd 1 | 8 hdc
Rnd 2 | 16 hdc
Rnd 3 | `

  it('in a list behind the rounds are no rounds, and are held to', () => {
    expect(read(`${rounds}16 sc`)).toEqual({ made: [8, 16, 16], slips: [] })
    expect(read(`${rounds}18 sc`).slips).toEqual(['rounds/wrong-end-count'])
  })

  it('in columns on a line of their own, and under the numbers of their rounds', () => {
    const row =
      'Row 1: Into a magic ring: ch 4, 3 dc, ch 2, 3 dc, ch 1, dc. Turn.\n  8 dc | 2 ch-1 sps | 1 ch-2 sp'
    expect(read(row)).toEqual({ made: [8], slips: [] })
    const two = (last: number) =>
      `${RING}Rounds 2 and 3: Ch 1, 2 sc in each st around, join. – Round 2: 24 sc, Round 3: ${last} sc in both`
    expect(read(two(48))).toEqual({ made: [12, 24, 48], slips: [] })
    expect(read(two(50)).slips).toEqual(['rounds/wrong-end-count'])
  })
})

describe('repeats between asterisks', () => {
  it.each([
    '*sc in next sc, ch 1* all the way around, 12 times in all; join.',
    '*sc in next sc, ch 1* and so on around; join.',
    '*sc in next sc, ch 1* and do that 12 times in all; join.',
    '*sc in next sc, ch 1* and keep going until every stitch has one; join.',
  ])('%s', (words) => {
    expect(read(`${RING}Rnd 2: Ch 1, ${words} (12 sc, 12 ch-1 sps)`)).toEqual({ made: [12, 12], slips: [] })
  })

  it('lose the last stitch of brackets inside them where that is left out', () => {
    const text = `Ch 6, join to form ring.
Rnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 15 times, join in 3rd ch. (16 dc, 16 ch-1 sps)
Rnd 2: Sl st in first ch-1 sp, ch 1, sc in same sp, *ch 6, sc in next sp, [ch 3, sc in next sp] 3 times; rep from * 3 more times, leaving out the sc at the very end; join. (16 sc, 4 ch-6 sps, 12 ch-3 sps)`
    expect(read(text)).toEqual({ made: [16, 16], slips: [] })
  })
})

describe('beginnings', () => {
  it('St-BPsc and "standing stitches" of rounds 2 to 5 make one stitch each', () => {
    const text = `Rounds 2 to 3 start with a standing stitch: with a slip knot on the hook, work the first st in the usual way.

Rnd 1: Ch 4, join to form a ring. Ch 1, [sc in ring, ch 3] 6 times, join. (6 sc, 6 ch-3 sps)
Rnd 2: St-BPsc around any sc of Rnd 1, ch 4, [BPsc around next sc of Rnd 1, ch 4] 5 times, join. (6 BPsc, 6 ch-4 sps)
Rnd 3: Starting at a BPsc: *sc in next BPsc, 3 sc in next ch-4 sp; rep from * around; join. (24 sc)`
    expect(read(text)).toEqual({ made: [6, 6, 24], slips: [] })
  })

  it('"ch 2 and dc2tog" before dc3tog are its first leg, whatever ch 2 is in other rounds', () => {
    const text = `Ch 2 does not count as a stitch.

Rnd 1: Magic ring, ch 2, 12 dc in ring, sl st to first dc. (12 dc)
Rnd 2: Ch 2 and dc2tog over next 2 dc (this makes your first dc3tog), ch 5, [dc3tog over next 3 dc, ch 5] 3 times, sl st to top of first dc3tog. (4 dc3tog, 4 ch-5 sps)`
    expect(read(text)).toEqual({ made: [12, 4], slips: [] })
  })

  it('chains of all rows are none to begin on, and a note turns every row', () => {
    const text = `Ch 4 at the beginning of a row = dc + ch 1. Turn after every row.

Row 1: Magic ring, ch 4, (2 dc, ch 1) 3 times, dc into ring. (8 dc)
Row 2: Ch 4, dc in first ch-sp, dc in next 2 dc, dc in next ch-sp, dc in next 2 dc, dc in next ch-sp, dc in next 2 dc, dc in last ch-sp, ch 1, dc in 3rd ch of ch-4. (12 dc)`
    expect(read(text)).toEqual({ made: [8, 12], slips: [] })
  })

  it('"Join to a space" is where the round begins', () => {
    const text = `Rnd 1: Magic ring, ch 4 (counts as dc and ch 1), [dc, ch 1] 11 times in ring, join in 3rd ch. (12 dc)
Rnd 2: Join to a space, ch 3 (counts as dc), dc in same space, [2 dc in next space] 11 times, join. (24 dc)`
    expect(read(text)).toEqual({ made: [12, 24], slips: [] })
  })
})

describe('words of the page', () => {
  it('of other terms are none of its own, and 1st colour is a colour', () => {
    const text = `I write in UK terms (my dc is an American sc, so take care).
With 1st colour make 6 ch and join into a ring with a ss.
1st round. 3 ch to stand for 1st tr, 11 tr into ring, ss to top of 3 ch. 12 tr.`
    expect(read(text, 'UK')).toEqual({ made: [12], slips: [] })
  })

  it('in a table are abbreviations, and stitches that the rounds work', () => {
    const text = `| Term | What it means |
|------|---------------|
| ch-sp | chain space |
| petal | (sc, hdc, 5 dc, hdc, sc) |

Rnd 1: Magic ring, ch 1, [sc in ring, ch 5] 6 times, join. (6 sc, 6 ch-5 sps)
Rnd 2: Sl st in ch-5 sp, ch 1, 1 petal in each ch-5 sp around, join. (6 petals; 54 sts)`
    expect(read(text)).toEqual({ made: [6, 54], slips: [] })
  })

  it('behind a colon before the rounds are no round', () => {
    const text = `UK crochet terms: ch chain, dc double crochet, tr treble, ss slip stitch, sp space.
Worked in two colours: A (centre) and B. Change colours as directed, or simply slip stitch into the next space.

To make a beginning puff: 2ch, [yarn over, insert hook in same space, yarn over and draw up a loop] 3 times, yarn over and draw through all 7 loops on hook.

ROUND 1: With A, magic ring, 3ch (counts as tr), 11tr in ring, ss in top of 3ch. (12tr)`
    expect(read(text, 'UK')).toEqual({ made: [12], slips: [] })
  })

  it('P.C. is a popcorn', () => {
    const text = `6 ch., join with s.s. to form a ring.
1st round.—(P.C. into ring, 3 ch.) 6 times, s.s. to top of first P.C. (6 P.C. and 6 3-ch. sps.)`
    expect(read(text, 'UK')).toEqual({ made: [6], slips: [] })
  })
})

describe('places', () => {
  it('the middle stitch at each corner, the gap between last and first, edges of the foundation', () => {
    const square = `Magic ring.
Round 1: Ch 1, (3 sc in ring, ch 2) 4 times, join. (12 sc)
Round 2: Ch 1, sc in each sc and 3 sc in each ch-2 sp, join. (24 sc)
Round 3: Ch 1, sc in each sc, working 3 sc in the middle sc at each corner, join. (32 sc)`
    expect(read(square)).toEqual({ made: [12, 24, 32], slips: [] })
    const star = `Rnd 1: Ch 5, sl st in first ch to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 5 times, join in 3rd ch. (18 dc, 6 ch-2 sps)
Rnd 2: Sl st to ch-2 sp, ch 1, 3 sc in same sp, *sc in sp between next two 3-dc groups, 3 sc in next ch-2 sp; rep from * 4 times, sc in sp between last and first groups, join. (24 sc)`
    expect(read(star).slips).not.toContain('rounds/too-many-used')
    const edge = `Ch 6.
Row 1: Sc in 2nd ch from hook and in each ch to end. (5 sc)
Row 2: Ch 1, sc in each sc. (5 sc)
Round 1: Ch 1, 3 sc in first sc, sc in next 3 sc, 3 sc in last sc, 2 sc evenly down the side, 3 sc in corner ch, 3 sc along the foundation edge, 3 sc in corner ch, 2 sc evenly up the other side, join. (22 sc)`
    expect(read(edge).made.at(-1)).toBe(22)
  })

  it('one place and each of the others stand before what goes into them', () => {
    const text = `Rnd 1: Ch 6, join to form ring, ch 1, (sc in ring, ch 6) 8 times, join. (8 sc, 8 ch-6 sps)
Rnd 2: Sl st in first ch-6 sp, ch 1, in same sp and in each ch-6 sp around work sc, hdc, 2 dc, hdc and sc, join. (48 sts)`
    expect(read(text)).toEqual({ made: [8, 48], slips: [] })
  })

  it('a beginning cluster goes over the first stitches as others over the next', () => {
    const text = `Beg cl: Ch 2, holding back last loop of each dc on hook, dc in each of next 2 dc, yo and draw through all loops on hook.
Cl: Holding back last loop of each dc on hook, dc in each of next 3 dc, yo and draw through all loops on hook.

Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)
Rnd 2: Beg cl over first 3 dc, ch 5, *cl over next 3 dc, ch 5; rep from * around, join in top of beg cl. (4 clusters, 4 ch-5 sps)`
    expect(read(text)).toEqual({ made: [12, 4], slips: [] })
  })

  it('"RtrF round RtrF" goes round the next one, "round any tr (round next tr on repeats)" round each in turn', () => {
    const text = `ROUND 1 (shade 1)
In a magic ring, ch3 (counts as tr), 15tr. Close.
Total: 16 tr.

ROUND 2 (shade 2)
*RtrF round any tr (round next tr on repeats), (1tr, ch1, 1tr) in next tr*, 8 times. Close.
Total: 8 RtrF, 16 tr, 8 ch-1 spaces.

ROUND 3 (shade 2)
Starting at a RtrF: *RtrF round RtrF, 1tr in next tr, (1tr, ch1, 1tr) in ch-1 space, 1tr in next tr*, 8 times. Close.
Total: 8 RtrF, 32 tr, 8 ch-1 spaces.`
    expect(read(text, 'UK')).toEqual({ made: [16, 24, 40], slips: [] })
  })

  it('brackets right behind the number of a round are worked where they go somewhere', () => {
    const text = `Round 1 Ch 4, join to form a ring, ch 1, 8 sc in ring, join. [8 sc]
Round 2 (Ch 3, dc) in first sc, 2 dc in each of next 7 sc, join. [16 dc]`
    expect(read(text).made[0]).toBe(8)
    expect(read(text).slips).not.toContain('rounds/stitches-left')
  })
})
