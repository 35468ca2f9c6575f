/** Places within petals, groups and loops, and at the base of the beginning chain, in words. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { readAlike, toldOf } from './wordings'
import type { Wordings } from './wordings'

const ALIKE: readonly Wordings[] = [
  {
    name: 'center of group',
    before:
      'Ch 6, join to form ring.\nRnd 1: Ch 1, *sc in ring, ch 5; rep from * 5 more times; join. (6 sc, 6 ch-5 sps)\nRnd 2: Ch 1, *7 dc in next ch-5 sp, sc in next sc; rep from * around; join. (42 dc, 6 sc)\nRnd 3: ',
    after: '',
    made: [6, 48, 12],
    wordings: [
      'Ch 1, *sc in center dc of next 7-dc group, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in center dc of next 7-dc group, ch 5, sc in sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in 4th dc of next 7-dc group, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in middle dc of 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in center of next 7-dc group, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in center dc of next group of 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in 4th dc of 7 dc group, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in the fourth of the next 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in 4th of 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in center of 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in middle of next 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in center st of next 7-dc shell, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in center dc of next 7 dc, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in the 4th of 7 dc of next petal, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in top of 4th dc of next petal, ch 5, sc in sc between petals, ch 5; rep from * around; join.',
      'Ch 1, *sc in center dc of petal, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in centre of petal, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in 4th dc of petal, ch 5, sc in next sc, ch 5; rep from * 5 more times; join.',
      'Ch 1, *skip 3 dc, sc in next dc, ch 5, skip 3 dc, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in the center dc of each group, ch 5, sc in next sc, ch 5; rep from * around; join.',
      'Ch 1, *sc in the middle one of the 7 dc, ch 5, sc in the sc, ch 5; rep from * around; join.',
    ],
  },
  {
    name: 'center of loop',
    before:
      'Ch 6, join to form ring.\nRnd 1: Ch 1, 12 sc in ring; join in first sc. (12 sc)\nRnd 2: *Ch 5, sk 1 sc, sl st in next sc; rep from * 5 more times. (6 loops)\nRnd 3: ',
    after: '',
    made: [12, 0, 6],
    wordings: [
      'Sl st in next 2 ch, ch 1, *sc in middle ch of next loop, ch 5; rep from * around; join.',
      'Sl st to center of first loop, ch 1, *sc in center ch of next loop, ch 5; rep from * around; join in first sc.',
      '*Sc in 3rd ch of next loop, ch 5; rep from * around; join.',
      '*Sc in the third of the 5 ch, ch 5; rep from * around; join.',
      '*Sc in 3rd ch of ch-5, ch 5; rep from * around; join.',
      '*Sc in center ch of ch-5, ch 5; rep from * around; join.',
      '*Sc in center ch of next ch-5 loop, ch 5; rep from * around; join.',
      '*Sc in center of ch-5 loop, ch 5; rep from * around; join.',
      '*Sc in center of next loop, ch 5; rep from * around; join.',
      '*Sc in centre ch of 5-ch loop, ch 5; rep from * around; join.',
      '*Sc in 3rd ch of next 5-ch loop, ch 5; rep from * around; join.',
      '*Sc in 3d ch of 5 ch, ch 5; rep from * around; join.',
      '*Sc in middle of next loop, ch 5; rep from * around; join.',
      '*Sc in 3rd of 5 ch of next loop, ch 5; rep from * around; join.',
      '*Sc in middle ch of 5-ch, ch 5; rep from * around; join.',
      '*Sc in center st of next ch-5 loop, ch 5; rep from * around; join.',
      '*Sc in the middle chain of the next 5-chain loop, ch 5; rep from * around; join.',
      '*Sc in center ch of loop, ch 5; rep from * around; join.',
      '*Sc under next loop, ch 5; rep from * around; join.',
      '*Sc in the 3rd chain stitch of the next chain loop, ch 5; rep from * around; join.',
      'Sc in center ch of each loop around with ch 5 between; join.',
      '*Sc in next loop (into the loop, not the chs), ch 5; rep from * around; join.',
    ],
  },
  {
    name: 'base of ch',
    terms: 'UK',
    before: 'Magic ring.\nRnd 1: 3 ch (counts as tr), 11 tr in ring; ss in top of 3 ch. (12 tr)\nRnd 2: ',
    after: '',
    made: [12, 24],
    wordings: [
      '3 ch, 1 tr in st at base of 3 ch, 2 tr in each tr to end, ss in top of 3 ch.',
      '1 ch, 2 dc in st at base of ch, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc into st at base of 1ch, 2 dc in each tr around, ss in first dc.',
      '3 ch, 1 tr in same place as join, 2 tr in each tr around, ss in top of 3 ch.',
      '3 ch, 1 tr in base of 3 ch, *2 tr in next tr; rep from * to end, ss in top of 3 ch.',
      '3 ch, 1 tr at base of 3 ch, 2 tr in each tr to end, ss in top of 3 ch.',
      '3 ch, 1 tr in same st as ss, 2 tr in each tr to end, ss in 3rd of 3 ch.',
      '3 ch, 1 tr in same st as slip stitch, 2 tr in each tr, ss in 3rd of 3 ch.',
      '3 ch, 1 tr into same place, 2 tr in each tr, ss in 3rd of 3 ch.',
      '3 ch, 1 tr into the same st as the join, 2 tr in each of the next 11 tr, ss in 3rd of 3 ch.',
      '(3 ch, 1 tr) in st at base of ss, 2 tr in each of next 11 tr, ss to 3rd ch.',
      '3 ch, 1 tr in the stitch at the base of the ch, 2 tr in each rem st, ss in 3rd of 3 ch.',
      '1 ch, 2 dc in same place as ss was made, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc in same st as the ch-1, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc in the st where you joined, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc in joining st, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc in the joined st, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc in st at bottom of ch, 2 dc in each st around, ss in first dc.',
      '1 ch, 2 dc at the base of the ch, 2 dc in each st around, ss in first dc.',
      '3 ch, 1 tr at the foot of the ch, 2 tr in each st around, ss in top of 3 ch.',
      '3 ch, 1 tr in the same stitch (at the base of the 3 ch), 2 tr in each st around, ss in top of 3 ch.',
      '3 ch, 1 tr in same st as beginning chain, 2 tr in each st around, ss in top of 3 ch.',
      '3 ch, 1 tr in the foot of the 3 ch, 2 tr in each st around, ss in top of 3 ch.',
      '3 ch, 1 tr in same st as turning ch, 2 tr in each st around, ss in top of 3 ch.',
    ],
  },
  {
    name: 'between two',
    terms: 'UK',
    before:
      'Magic ring.\nRnd 1: 3 ch (counts as tr), 11 tr in ring; ss in top of 3 ch. (12 tr)\nRnd 2: 3 ch (counts as tr), 1 tr in same st, 2 tr in each tr around; ss in top of 3 ch. (24 tr)\nRnd 3: ',
    after: '',
    made: [12, 24, 12],
    wordings: [
      '*1 dc between the two trebles of next pair, 3 ch; rep from * 11 more times, ss in first dc.',
      '*1 dc between the two trebles, 3 ch; rep from * 11 more times, ss in first dc.',
      '*1 dc between the 2 tr of next group, 3 ch; rep from * 11 more times, ss in first dc.',
      '*1 dc in space between next two pairs of tr, 3 ch; rep from * 11 more times, ss in first dc.',
      '*1 dc between next 2 groups, 3 ch; rep from * 11 more times, ss in first dc.',
      '*1 dc in between the two treble groups, 3 ch; rep from * to end, ss in first dc.',
      '*1 dc between the 2-tr groups, 3 ch; rep from * to end, ss in first dc.',
      '*1 dc between 2-tr groups, 3 ch; rep from * around, ss in first dc.',
      '*1 dc between pairs of tr, 3 ch; rep from * around, ss in first dc.',
      '*1 dc between each pair of tr, 3 ch; rep from * around, ss in first dc.',
      '*1 dc in gap between this group of 2 tr and the next group, 3 ch; rep from * around, ss in first dc.',
      '*1 dc in the space between this group and the next, 3 ch; rep from * around, ss in first dc.',
      '*1 dc between next group and the one after, 3 ch; rep from * around, ss in first dc.',
      '*1 dc in space before next group, 3 ch; rep from * around, ss in first dc.',
      '*1 dc in space between groups, 3 ch; rep from * around, ss in first dc.',
      '(1 dc between groups, 3 ch) 12 times, ss in first dc.',
      '1 dc between each group with 3 ch between dcs, ss in first dc.',
      '*1 dc in sp between two 2-tr groups, 3 ch; rep from * around, ss in first dc.',
    ],
  },
  {
    name: 'v',
    before:
      'Magic ring.\nRnd 1: Ch 4 (counts as dc and ch 1), (dc in ring, ch 1) 7 times; join in 3rd ch of ch-4. (8 dc, 8 ch-1 sps)\nRnd 2: Sl st in ch-1 sp, ch 4 (counts as dc and ch 1), dc in same sp, (dc, ch 1, dc) in each ch-1 sp around; join in 3rd ch of ch-4. (8 V-sts)\nRnd 3: ',
    after: '',
    made: [8, 16, 24],
    wordings: [
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in the V of next V-st; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in center of next V-st; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in next V-st; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in next V; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in ch-1 sp of next V; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, 3 dc in each V around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, 3 dc in ch-1 sp of each V-st around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in ch of next V-st; rep from * around; join.',
      'Sl st in V, ch 3 (counts as dc), 2 dc in same V, *3 dc in next V; rep from * around; join.',
      'Sl st in center of V-st, ch 3 (counts as dc), 2 dc in same place, *3 dc in center of next V-st; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in sp of next V-stitch; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in middle of next V stitch; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc in ch sp in middle of next V-st; rep from * around; join.',
      'Sl st in ch-1 sp, ch 3 (counts as dc), 2 dc in same sp, *3 dc over next V-st; rep from * around; join.',
    ],
  },
  {
    name: 'corner ch',
    before:
      'Ch 4, join.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 3, (3 dc in ring, ch 3) 3 times; join in top of ch-3. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in next 2 dc, ch 5, *dc in next 3 dc, ch 5; rep from * 2 more times; join. (12 dc)\nRnd 3: Ch 3 (counts as dc), dc in next 2 dc, ',
    after: '',
    made: [12, 12, 20],
    wordings: [
      'ch 2, (dc, ch 3, dc) in center ch of ch-5, ch 2, *dc in next 3 dc, ch 2, (dc, ch 3, dc) in center ch of ch-5, ch 2; rep from * 2 more times; join. (20 dc)',
    ],
  },
  {
    name: 'raised stitches',
    terms: 'UK',
    before:
      'Magic ring.\nRnd 1: 3 ch (counts as tr), 11 tr in ring; ss in top of 3 ch. (12 tr)\nRnd 2: 2 ch (does not count as a st), ',
    after: '',
    made: [12, 24],
    wordings: [
      '*rtrf around next tr, 1 tr in same tr; rep from * to end, ss in first st. (12 rtrf, 12 tr)',
      '*tr/rf around next tr, 1 tr in same tr; rep from * to end, ss in first st. (24 sts)',
      '*tr/RF around next tr, 1 tr in same tr; rep from * 11 more times, ss in first st. (24 sts: 12 tr/rf and 12 tr)',
      '(rtrb, 1 tr) in each tr around, ss in first st. (24 sts)',
      '*FPtr around next tr, 1 tr in same tr; rep from * to end, ss in first st. (24 sts)',
    ],
  },
  {
    name: 'ends of rounds',
    before:
      'Magic ring.\nRnd 1: ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each dc around; join in 3rd ch',
    after: '',
    made: [12, 24],
    wordings: [
      ' <24 dc>\nFasten off.',
      ' <24dc>\nFasten off.',
      '. 24 dc\nFO. Weave in ends.',
      '. 24 dc\nFasten off and weave in ends',
      '. (24 dc)\nFasten off.',
      ': 24 dc\nFO.',
    ],
  },
]

describe.each(ALIKE)('$name', (alike) => readAlike(alike))

describe('A place that is not there is told', () => {
  const LOOPS =
    'Ch 6, join to form ring.\nRnd 1: Ch 1, 12 sc in ring; join. (12 sc)\nRnd 2: *Ch 5, sk 1 sc, sl st in next sc; rep from * 5 more times. (6 loops)\nRnd 3: '
  it.each([
    '*Sc in center ch of next ch-4 loop, ch 5; rep from * around; join.',
    '*Sc in 3rd ch of next loop, ch 5; rep from * 6 more times; join.',
    '*Sc in center ch of each loop around, ch 5; join. (7 sc)',
    '*Sc in the middle ch of next loop, ch 5; rep from * around; join. (8 sc)',
  ])('%s', (words) => {
    const told = toldOf(`${LOOPS}${words}`)
    expect(told.length).toBeGreaterThan(0)
    expect(told.every((message) => message.startsWith('round 3'))).toBe(true)
  })

  it('where a group has no such stitch for one more lap', () => {
    const text =
      'Ch 6, join to form ring.\nRnd 1: Ch 1, *sc in ring, ch 5; rep from * 5 more times; join. (6 sc, 6 ch-5 sps)\nRnd 2: Ch 1, *7 dc in next ch-5 sp, sc in next sc; rep from * around; join.\nRnd 3: Ch 1, *sc in the middle of next 7 dc, ch 5, sc in next sc, ch 5; rep from * 6 more times; join.'
    expect(toldOf(text).length).toBeGreaterThan(0)
  })
})
