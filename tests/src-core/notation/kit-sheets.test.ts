/** Steps with numbers of their own, what is left for the end of a repeat, and stitches explained under "How to" (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

describe('The number of a step', () => {
  it.each([
    ['1. ', '2. Rnd 1. ', '3. Rnd 2. '],
    ['1) ', '2) Round 1: ', '3) Round 2: '],
    ['STEP 1. ', 'STEP 2. Round 1\n', 'STEP 3. Round 2\n'],
    ['Step 1: ', 'Step 2 – Rnd 1: ', 'Step 3 – Rnd 2: '],
    ['Step One: ', 'Step Two (round 1): ', 'Step Three (round 2): '],
    ['A. ', 'B. Round 1: ', 'C. Round 2: '],
    ['(1) ', '(2) 1st round: ', '(3) 2nd round: '],
  ])('is not that of the round: %s', (...steps) => {
    const text = (last: string) =>
      `Kit contents: sport weight wool, stuffing, needle, 1 button
${steps[0]}Make a magic ring.
${steps[1]}Ch 1, 6 sc in ring. (6)
${steps[2]}${last} (12)`
    expect(told(text('2 sc in each st.'))).toEqual([])
    expect(made(text('2 sc in each st.'))).toEqual([6, 12])
    expect(told(text('(sc, inc) 4 times.')).join()).toContain('rounds/')
  })
})

describe('What a repeat leaves for its end', () => {
  const text = (rest: string) => `14 ch, s.s. to form ring.
1st Round.—3 ch. (to stand for a tr.), 53 tr. into the ring, join with a s.s. to the top of the 3 ch.
2nd Round.—1 d.c. into the same place as the joining, * 5 ch., miss 2 tr., 1 d.c. into the next tr. ; repeat from * ${rest}, and join to the first d.c.
3rd Round.—Into every space of 5 ch. work 1 d.c., 1 h.tr., 3 tr., 1 h.tr., 1 d.c. Join with a s.s. to the first d.c. Make five more in the same manner.`
  it.each([
    'until two tr. remain, 5 ch., miss these two tr.',
    'until 2 tr. are left, 5 ch., miss these 2 tr.',
    'until only two tr. remain, 5 ch., miss the last two tr.',
    'till two tr. remain unworked, 5 ch., miss 2 tr.',
    'leaving two tr. at the end, 5 ch., miss these two tr.',
    'as far as the last two tr., 5 ch., miss these two',
    'until within two tr. of the end, 5 ch., miss the two tr.',
  ])('is counted: %s', (rest) => {
    expect(told(text(rest), 'UK')).toEqual([])
    expect(made(text(rest), 'UK')).toEqual([54, 18, 126])
  })

  it('has to be as many as are skipped', () => {
    expect(told(text('until three tr. remain, 5 ch., miss these three tr.'), 'UK').join()).toContain(
      'too-many',
    )
  })
})

describe('A stitch that is explained under "How to"', () => {
  const text = (
    label: string,
    row: string,
  ) => `${label}: Pull up a loop in each of the next 3 stitches (4 loops on hook), yarn over, pull through all 4 loops. Counts as 1 stitch.

Chain 6.

Row 1: Sc in 2nd chain from hook and in each chain across. (5 sc)
Row 2: Ch 1, turn. Sc in first sc, sc3tog, ${row}. (3 sts)`
  it.each([
    'How to sc3tog',
    'To sc3tog',
    'Working an sc3tog',
    'How to work the sc3tog',
    'The decrease (sc3tog)',
  ])('is that stitch, and no round: %s', (label) => {
    expect(told(text(label, 'sc in last sc'))).toEqual([])
    expect(made(text(label, 'sc in last sc'))).toEqual([5, 3])
    expect(told(text(label, '2 sc in last sc')).join()).toContain('wrong-end-count')
  })

  it.each([
    'How to join: insert hook in the first sc, yo and pull through both.',
    'How to decrease: Pull up a loop in each of the next 2 stitches, yarn over, pull through all 3 loops.',
  ])('tells of no round: %s', (words) => {
    expect(
      told(`${words}\n\nRnd 1: Magic ring, ch 1, 8 sc in ring. (8)\nRnd 2: Ch 1, 2 sc in each sc. (16)`),
    ).toEqual([])
  })
})

describe('Where the stitches of a count stand', () => {
  const text = (words: string) => `Make a sliding loop.
Round 1: Into the loop work: 3 ch (not counted as a stitch), 3 dtr, 3 tr, 1 dtr, 3 tr, 3 dtr, 3 ch, ss into the loop. Pull the tail to close the loop. ${words}`
  it('is told of parts of it', () => {
    const words =
      'You have 13 stitches: 6 dtr on the two tops, 6 tr down the two sides, and 1 dtr at the point.'
    expect(told(text(words), 'UK')).toEqual([])
    expect(made(text(words), 'UK')).toEqual([13])
    expect(told(text(words.replace('13', '15')), 'UK').join()).toContain('15 stitches')
  })
})

describe('The slip stitch that closes what was worked into the ring', () => {
  it('is not counted with it', () => {
    const text = (count: number) =>
      `Round 1: Into a magic ring work: 3 ch (does not count), 6 tr, ss into first tr. (${count} sts)`
    expect(told(text(6), 'UK')).toEqual([])
    expect(told(text(7), 'UK')).toHaveLength(1)
  })
})

describe('The last stitch of the last repeat', () => {
  const text = (ending: string, count = 4) => `Magic ring.
1st Rnd: 1 ch, 6 dc in ring, ss to first dc. (6 dc)
2nd Rnd: 1 ch, 4 dc in each dc, ss to first dc. (24 dc)
3rd Rnd: 1 ch (does not count), 1 dc in the same dc, *miss 2 dc, 5 tr in next dc, miss 2 dc, 1 dc in next dc; rep from * 3 times more, ${ending} (4 shells of 5 tr, ${count} dc)`
  it.each([
    'but leave off the very last dc and ss to the first dc instead.',
    'ending the last rep with ss to first dc instead of dc.',
    'omitting the final dc, join with ss in first dc.',
    'but leave out the last dc, ss to first dc.',
    'except that the last dc is left off; ss to first dc instead.',
    'ss to the first dc instead of working the last dc.',
    'working a ss into the first dc in place of the last dc.',
    'without the last dc, ss to first dc.',
    'but do not work the last dc, ss to first dc.',
    'but stop before the last dc and ss to the first dc.',
    'the last dc of the last repeat being left out, ss to first dc.',
    'the very last dc being a ss into the first dc.',
  ])('is left out: %s', (ending) => {
    expect(told(text(ending), 'UK')).toEqual([])
    expect(made(text(ending), 'UK')).toEqual([6, 24, 24])
    expect(told(text(ending, 5), 'UK')).toHaveLength(1)
  })

  it('is worked where nothing leaves it out', () => {
    expect(told(text('ss to first dc.'), 'UK').join()).toContain('too-many-used')
  })
})

describe('All the others', () => {
  const text = (
    words: string,
    count = '11 sc',
  ) => `Rnd 1: Magic ring, ch 1, 10 sc in ring; sl st in first sc. (10)
Rnd 2: Ch 1, ${words} (${count})`
  it.each([
    'in the rest of the sts',
    'in the other 9 sts',
    'in every one of the remaining sts',
    'in each rem st',
  ])('are worked in: %s', (words) => {
    expect(told(text(`2 sc in first st, sc ${words}.`))).toEqual([])
    expect(made(text(`2 sc in first st, sc ${words}.`))).toEqual([10, 11])
    expect(told(text(`3 sc in first st, sc ${words}.`))).toHaveLength(1)
  })

  it('may be counted with something that has no number', () => {
    const round = 'sc in first st, ch 12 for the hanging loop, sc in same st, sc in each remaining st.'
    expect(told(text(round, '11 sc and the loop'))).toEqual([])
    expect(told(text(round, '12 sc and the loop'))).toHaveLength(1)
  })
})

describe('An edging of a square that the text does not make', () => {
  const text = (place: string, more: string) => `AN EDGING for any treble square with 21 tr on each side.
1st Rnd: Join the edging colour with ss to ${place}. 1 ch, 1 dc in each of the 21 tr along the side, 3 dc in the corner space, ${more}, ss to first dc. (96 dc)
2nd Rnd: 1 ch, 1 dc in each dc. (96 dc)`
  it.each([
    ['the first tr after a corner space', 'and the same along the other three sides'],
    ['the tr after any corner', 'do the same on the other 3 sides'],
    ['the first tr to the left of a corner space', 'repeat on the remaining three sides'],
    ['the first tr of one side', 'and the same along the other three sides'],
  ])('is begun beside a corner: %s, %s', (place, more) => {
    expect(told(text(place, more), 'UK')).toEqual([])
    expect(made(text(place, more), 'UK')).toEqual([96, 96])
    expect(told(text(place, more).replace('3 dc in the', '2 dc in the'), 'UK')).not.toEqual([])
  })
})

describe('How often behind a place', () => {
  const text = (words: string) => `Rnd 1: Magic ring, 8 sc in ring; join. (8 sc)
Rnd 2: Ch 4 (counts as dc and ch 1), 1 dc and 1 ch into the same stitch, ${words}; join in 3rd ch. (16 dc)`
  it.each([
    'then into each stitch below crochet 2 times 1 double crochet and 1 ch',
    'then in each st work twice 1 dc and ch 1',
    'in each st 2 times (dc, ch 1)',
    'then in every st 2 times dc, ch 1',
  ])('goes for what stands in it: %s', (words) => {
    expect(told(text(words))).toEqual([])
    expect(made(text(words))).toEqual([8, 16])
    expect(told(text(words.replace(/2 times|twice/, '3 times'))).join()).toContain('wrong-end-count')
  })
})
