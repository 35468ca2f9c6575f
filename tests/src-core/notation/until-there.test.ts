/** Counts that a repeat goes on to, and talk before what is worked. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const RING = 'Ch 4, join with sl st in first ch to form a ring.\nRnd 1: Ch 1, 12 sc in ring, join. (12 sc)\n'
const PETALS = '\nRnd 3: (Sc, hdc, 3 dc, hdc, sc) in each loop around, join. (42 sts)'
const LOOP = 'ch 3, skip next st, sc in next st'

describe('what a repeat goes on to', () => {
  const wordings = [
    `*${LOOP}; repeat from * until you have 6 loops, join.`,
    `*${LOOP}; repeat from * until there are 6 loops. Join.`,
    `*${LOOP}; repeat from * until 6 loops are made, join.`,
    `*${LOOP}; rep from * until you have made 6 ch-3 loops, sl st in first ch.`,
    `*${LOOP}; repeat from * until you've got 6 loops all round, join.`,
    `*${LOOP}* Repeat from * to * until you have 6 loops. Join.`,
    `*${LOOP}; keep going from * until you have 6 loops in total, join.`,
    `Continue like this: *${LOOP}; repeat from * till you have 6 ch-3 sps, join.`,
    `(${LOOP}) until you have 6 loops, join.`,
    `[${LOOP}] around until there are 6 loops; join.`,
    `*${LOOP}; repeat from * around, making 6 loops. Join.`,
    `*${LOOP}; repeat from * around so you have 6 loops. Join.`,
    `*${LOOP}; repeat from * around for a total of 6 loops, join.`,
    `*${LOOP}; repeat from * around to give 6 loops, join.`,
    `*${LOOP}; repeat from * around = 6 loops, join.`,
  ]

  it.each(wordings)('is read: "%s"', (words) => {
    const text = `${RING}Rnd 2: ${words}${PETALS}`
    expect([told(text), made(text)]).toEqual([[], [12, 6, 42]])
  })

  it.each(wordings)('is checked: "%s"', (words) => {
    for (const wrong of ['7', '5']) {
      const text = `${RING}Rnd 2: ${words.replace(/6(?= (?:ch-3 )?(?:loops|sps))/, wrong)}${PETALS}`
      expect(told(text).join(' ')).toMatch(new RegExp(`wrong-end-count .*${wrong}`))
    }
  })

  it('is how often something goes into a ring', () => {
    const text =
      'Ch 6, sl st in first ch to form a ring.\nRnd 1: *Sc in ring, ch 3; rep from * until you have 8 loops, join. (8 sc)'
    expect([told(text), made(text)]).toEqual([[], [8]])
  })
})

describe('talk before what is worked', () => {
  const round = (talk: string, count: string) =>
    `${RING}Rnd 2: *${LOOP}; repeat from * around, join. (6 loops)\nRnd 3: ${talk} (Sc, hdc, 3 dc, hdc, sc) in each loop around, join. ${count}`

  it.each([
    'Now the fun bit - petals!',
    'Time for the petals!',
    'Now make the petals:',
    'Okay, petals now!',
    'Almost there, last round!',
    "Now it's time to shape the petals, which is easier than it looks.",
    'Yay, you made it to the petals :)',
    'Finally - the petals.',
    'Next, the petals.',
    'Here comes the fun part: petals!',
  ])('leaves the round to be read and checked: "%s"', (talk) => {
    expect([told(round(talk, '(42 sts)')), made(round(talk, '(42 sts)'))]).toEqual([[], [12, 6, 42]])
    expect(told(round(talk, '(6 petals)'))).toEqual([])
    expect(told(round(talk, '(48 sts)')).join(' ')).toContain('wrong-end-count')
    expect(told(round(talk, '(7 petals)')).join(' ')).toContain('wrong-end-count')
  })

  it('is none where something is worked that nobody here knows', () => {
    for (const words of ['Now work a whirl in each loop.', 'Make the whirls in next 6 loops.'])
      expect(told(round(words, ''))).not.toEqual([])
  })
})

describe('stitches that are put somewhere', () => {
  it.each(['pop', 'squeeze', 'throw', 'stick'])('are no stitch by the name of the verb: "%s"', (verb) => {
    const text = `Ch 4, join with sl st in first ch to form a ring.\nRnd 1: ${verb} 12 half double crochets into the ring. Join.\nRnd 2: ${verb} 3 dc in each st around, join. (36 dc)`
    expect([told(text), made(text)]).toEqual([[], [12, 36]])
  })

  it('are popcorns where that is what they are', () => {
    const text = `${RING}Rnd 2: Ch 1, *sc in next st, pop in next st; rep from * around, join. (6 pops and 6 sc)`
    expect([told(text), made(text)]).toEqual([[], [12, 12]])
  })
})

describe('how often, where that is said of all', () => {
  const round = (words: string, count: string) => `${RING}Rnd 2: Ch 1, ${words}. Join. ${count}`

  it.each([
    '*sc in next st, 2 sc in next st*, repeat from * to * 6 times',
    '*sc in next st, 2 sc in next st; repeat from * 5 times',
    '*sc in next st, 2 sc in next st; repeat from * 5 more times',
  ])('is read as fits places and count: "%s"', (words) => {
    expect([told(round(words, '(18 sc)')), made(round(words, '(18 sc)'))]).toEqual([[], [12, 18]])
  })

  it('is told where the asterisk stands in front alone, or no count says so', () => {
    const words = '*sc in next st, 2 sc in next st; repeat from * 6 times'
    expect(told(round(words, '(18 sc)')).join(' ')).toContain('repeat-off-by-one')
    expect(told(round(words, '')).join(' ')).toContain('repeat-off-by-one')
    expect(told(round(words, '(21 sc)')).join(' ')).toContain('repeat-off-by-one')
  })
})

describe('what goes over all places', () => {
  it.each(['and across', 'and across the row', 'and to end', 'and all across'])(
    'of a chain: "%s"',
    (words) => {
      const text = `Ch 10.\nRow 1: Sc in 2nd ch from hook ${words}. (9 sc)\nRow 2: Ch 1, turn, sc in each st across. (9 sc)`
      expect([told(text), made(text)]).toEqual([[], [9, 9]])
    },
  )

  it.each(['skipping the ch-3 corners', 'skipping all ch-3 sps', 'ignoring the corners'])(
    'but for those that are passed: "%s"',
    (words) => {
      const text = `Ch 6, join to form ring.\nRnd 1: Ch 3 (counts as dc), 4 dc in ring, ch 3, *5 dc in ring, ch 3; repeat from * 2 more times, join to top of ch-3. (20 dc, 4 ch-3 corners)\nRnd 2: Ch 1, sc in each dc around, ${words}. Join. (20 sc)`
      expect([told(text), made(text)]).toEqual([[], [20, 20]])
    },
  )
})
