/** Last repeats, stitches counted from the last one, and steps told on the way. Common practice, no source; counts by hand. */
import { describe, expect, it } from 'vitest'
import { made, told } from './telling'

const TWELVE = 'Rnd 1: Magic ring, ch 1, 12 sc in ring; join with sl st in first sc. (12 sc)\n'
const TWENTY = `Rnd 1: Magic ring, ch 1, 10 sc in ring, join with sl st in first sc. (10 sc)
Rnd 2: Ch 1, 2 sc in each sc around, join with sl st in first sc. (20 sc)
`

describe('a last stitch that goes where the round began', () => {
  it.each([
    'rep from * 4 more times, ending last rep with sl st in joining sl st',
    'rep from * 4 more times, working last sl st in joining sl st',
    'rep from * 4 more times, making the last sl st in same place as joining',
    'rep from * around, ending with sl st in joining sl st',
    'rep from * around, the last sl st being worked into the first st',
    'rep from * to end, last sl st in joining st',
    'rep from * around, ending in the same st as you began',
  ])('is the stitch of the joining itself where the round hangs from it: "%s"', (ends) => {
    const text = `${TWENTY}Rnd 3: *Ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next ch, tr in last ch, sk next 3 sc, sl st in next sc; ${ends}. Fasten off. (5 points)`
    expect([told(text), made(text)]).toEqual([[], [10, 20, 20]])
  })

  it.each([
    'working last sc in first sc',
    'placing the last sc into the first sc of the round',
    'replacing last sc with sl st in first sc',
    'but on last repeat sl st in first sc',
    'the last loop ending with a sl st in first sc',
    'ending last rep with sl st in first sc',
  ])('joins a round that has begun: "%s"', (ends) => {
    const text = `${TWELVE}Rnd 2: Ch 1, sc in same st, *ch 5, sk 1 sc, sc in next sc; rep from * around, ${ends}. (6 ch-5 lps)`
    expect([told(text), made(text)]).toEqual([[], [12, 6]])
  })

  it.each([
    'ending last rep with dc in next 3 dc, sl st in top of ch-3',
    'ending last rep with dc in last 3 dc, sl st in top of ch-3',
    'ending last rep dc in last 3 dc, sl st in top of beg ch-3',
    'end last repeat with 1 dc in each of last 3 dc, ss to 3rd ch of beg ch-3',
    'ending last rep with dc in next 3 dc; join with sl st in top of ch-3',
    'omitting last 2 dc on last rep, sl st in top of ch-3',
  ])('is not reckoned among what the last repeat ends with: "%s"', (ends) => {
    const text = `${TWELVE}Rnd 2: Ch 3 (counts as dc), (dc, ch 2, 2 dc) in same st, dc in next sc, *(2 dc, ch 2, 2 dc) in next sc, dc in next sc; rep from * 4 more times, sl st in top of ch-3. (30 dc, 6 ch-2 sps)
Rnd 3: Ch 3, dc in next dc, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 5 dc; rep from * around, ${ends}. (54 dc, 6 ch-2 sps)`
    expect([told(text), made(text)]).toEqual([[], [12, 30, 54]])
  })

  it('is held to what there is all the same', () => {
    const text = `${TWENTY}Rnd 3: *Ch 5, sk next 3 sc, sl st in next sc; rep from * 3 more times, working last sl st in joining sl st.`
    expect(told(text)).toHaveLength(1)
  })

  it('of another kind stands in place of the last one', () => {
    const text = `${TWELVE}Rnd 2: *Ch 5, sk next sc, sc in next sc; rep from * around, ending last rep with sl st in first st instead of last sc.`
    expect(made(text)).toEqual([12, 5])
  })

  it('closes the last loop by its height', () => {
    const text = `${TWELVE}Rnd 2: Ch 1, sc in first sc, *ch 5, sc in next sc; rep from * 10 more times, ch 2, join with dc in first sc. (12 loops)`
    expect(told(text)).toEqual([])
  })
})

describe('a stitch counted from the last one', () => {
  it.each(['in 4th sc', 'into fourth sc from last', 'in 4th sc from there'])(
    'passes those between: "%s"',
    (place) => {
      const text = `${TWENTY}Rnd 3: *Ch 5, sl st ${place}; rep from * around. (5 loops)`
      if (place.includes('skipping')) expect(told(text).length).toBeGreaterThan(0)
      else expect(told(text)).toEqual([])
    },
  )

  it('adds nothing to what is skipped in words', () => {
    expect(
      told(`${TWENTY}Rnd 3: *Ch 5, sk 3 sc, sl st in 4th sc; rep from * 4 more times. (5 loops)`),
    ).toEqual([])
  })
})

describe('increases', () => {
  it.each([
    'inc in every other st around',
    'increase in every second stitch',
    'sc in every st, increasing in every 2nd st',
    'sc around, increasing 6 sc evenly spaced',
  ])('spread over a round: "%s"', (words) => {
    const text = `${TWELVE}Rnd 2: Ch 1, ${words}; join. (18 sc)`
    expect([told(text), made(text)]).toEqual([[], [12, 18]])
  })

  it.each(['sc twice in each st around', '2 sc per stitch around'])('in every stitch: "%s"', (words) => {
    const text = `${TWELVE}Rnd 2: Ch 1, ${words}; join. (24 sc)`
    expect([told(text), made(text)]).toEqual([[], [12, 24]])
  })
})

describe('loops that are filled', () => {
  const LOOPS = `${TWELVE}Rnd 2: Ch 1, *sc in next sc, ch 4, sk next sc; rep from * around; join. (6 loops)\n`
  it.each([
    'Fill each ch-4 loop with (sc, 3 dc, sc)',
    'Each ch-4 loop gets sc, 3 dc, sc',
    'Each loop is filled with sc, 3 dc, sc',
    'Make a petal in each ch-4 sp as follows: (sc, 3 dc, sc)',
    'Under every 4 ch work sc, 3 dc, sc',
  ])('in any words: "%s"', (words) => {
    const text = `${LOOPS}Rnd 3: ${words}; join with sl st in first sc. (30 sts)`
    expect([told(text), made(text)]).toEqual([[], [12, 6, 30]])
  })
})

describe('counts', () => {
  const GRANNY =
    'Rnd 1: Ch 4, join to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st in top of ch-3.'
  it.each([
    '(4 clusters of 3 dc)',
    '(four 3-dc clusters)',
    '— 4 x 3 dc and 4 ch-2 spaces',
    'That makes 12 dc.',
  ])('of groups: "%s"', (count) => {
    expect([told(`${GRANNY} ${count}`), made(`${GRANNY} ${count}`)]).toEqual([[], [12]])
  })
  it.each([
    '(5 clusters of 3 dc)',
    '(three 3-dc clusters)',
    '— 3 x 3 dc and 4 ch-2 spaces',
    'That makes 14 dc.',
  ])('that are wrong are told: "%s"', (count) => {
    expect(told(`${GRANNY} ${count}`)).toHaveLength(1)
  })
})

describe('what is told besides the work', () => {
  it.each([
    'For the stalk ch 7, sl st in 2nd ch from hook and in each of next 5 ch.',
    'Fasten off. To hang, ch 40, sc across one edge of each motif, ch 10 between them.',
    'Fasten off.\n\nTo string them up, chain 30, sc along one edge.',
  ])('adds nothing to the last round: "%s"', (words) => {
    const text = `${TWELVE}Rnd 2: Ch 1, 2 sc in each sc around; join with sl st in first sc. ${words}`
    expect([told(text), made(text)]).toEqual([[], [12, 24]])
  })

  it.each([
    'after which you sc in each of the next 6 sts',
    'then you sc in next 6 sts',
    'after that sc in next 6 sts',
  ])('leads to the next step: "%s"', (words) => {
    const text = `${TWELVE}Rnd 2: Ch 1, 2 sc in each of next 6 sc, ${words}; join. (18 sc)`
    expect([told(text), made(text)]).toEqual([[], [12, 18]])
  })
})
