/** Stitches told by the petal or group they stand in, lists that go into each space, and joins behind them (common practice, no source). */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import { made, told } from './telling'

const spaces = (text: string, terms: 'US' | 'UK' = 'US') =>
  readRounds(text, { terms }).rounds.map((round) => round.spaces)
const last = <One>(list: readonly One[]) => list[list.length - 1]

const PETALS = `Ch 5, join to form ring.
Rnd 1: Ch 1, (sc in ring, ch 2) 6 times, join with sl st in first sc. (6 sc, 6 ch-2 sps)
Rnd 2: Sl st in ch-2 sp, ch 1, 7 dc in each ch-2 sp around, join with sl st in first dc. (42 dc)
Rnd 3: `

describe('Stitches of a petal', () => {
  it.each([
    ['*sc in each of 7 dc of petal, ch 3; rep from * around', 42],
    ['*sc in each of the 7 dc of next petal, ch 3; rep from * around', 42],
    ['*sc in next 7 dc of petal, ch 3; rep from * around', 42],
    ['*sc in each of the next 7 dc of the petal, ch 3; rep from * 5 more times', 42],
    ['*sc in all 7 dc of the group, ch 3; rep from * around', 42],
    ['*sc in the 7 dc of next group, ch 3; rep from * around', 42],
    ['*sc in each dc of petal, ch 3; rep from * around', 42],
    ['*sc in each dc of next petal, ch 3; rep from * 5 times', 42],
    ['*sc in each st of next shell, ch 3; rep from * around', 42],
    ['*sc in each of the dc of next group, ch 3; rep from * around', 42],
    ['*sc in each dc of the 7-dc group, ch 3; rep from * around', 42],
    ['(sc in each dc of petal, ch 3) 6 times', 42],
    ['*sc in first 3 dc of petal, 3 sc in next dc, sc in last 3 dc of petal, ch 3; rep from * around', 54],
    [
      '*sc in each of first 3 dc of next petal, 3 sc in center dc, sc in each of last 3 dc of petal, ch 3; rep from * around',
      54,
    ],
    [
      '*sc in each of 3 dc of petal, 3 sc in next dc, sc in each of 3 dc of petal, ch 3; rep from * around',
      54,
    ],
    ['*sc in center 3 dc of petal, ch 3; rep from * around', 18],
    ['*sc in each of center 3 dc of next petal, ch 3; rep from * around', 18],
    ['*sc in middle 5 dc of next petal, ch 3; rep from * around', 30],
    ['*sc in first 2 dc of petal, skip 3 dc, sc in last 2 dc of petal, ch 3; rep from * around', 24],
  ])('are those that are named: %s', (words, count) => {
    const text = `${PETALS}Ch 1, ${words}, join.`
    expect(told(text)).toEqual([])
    expect(last(made(text))).toBe(count)
    expect(last(spaces(text))).toEqual({ 'ch-3': 6 })
    expect(told(`${text} (${count + 1} sc)`)).toHaveLength(1)
  })

  it.each(['sc in each dc of petals around', 'sc in each dc of each petal', 'sc in each dc of all petals'])(
    'are those of all: %s',
    (words) => {
      expect(made(`${PETALS}Ch 1, ${words}, join.`)).toEqual([6, 42, 42])
    },
  )

  it('that are left over are told', () => {
    const text = `${PETALS}Ch 1, *sc in each dc of petal, ch 3; rep from * 3 times, join.`
    expect(told(text)).toEqual([expect.stringContaining('14 left over')])
  })

  it('are sought in vain where the petal is smaller', () => {
    const text = `${PETALS}Ch 1, *sc in first 9 dc of petal, ch 3; rep from * around, join.`
    expect(told(text).join()).toContain('rounds/group-too-small')
  })
})

const LOOPS = `6 ch, join with ss to form a ring.
Round 1: 1 ch, 16 dc into ring, ss to first dc.
Round 2: 1 ch, *1 dc in next dc, 5 ch, miss 1 dc; rep from * 7 times more, ss to first dc.
Round 3: `

describe('What goes into each loop', () => {
  it.each([
    'in each loop work 1 dc, 1 htr, 5 tr, 1 htr, 1 dc, ss into first dc.',
    'into each loop work 1 dc, 1 htr, 5 tr, 1 htr, 1 dc, ss to first dc.',
    'into every loop work: 1 d.c., 1 h.tr., 5 tr., 1 h.tr., 1 d.c., s.s. into the first d.c. of the round.',
    'in each 5-ch loop: 1 dc, 1 htr, 5 tr, 1 htr, 1 dc, join with ss to first dc.',
    'in each 5-ch loop: 1 dc, 1 htr, 5 tr, 1 htr, 1 dc, and join with a ss in the first dc.',
    'in each of the 8 loops work 1 dc, 1 htr, 5 tr, 1 htr, 1 dc, slip stitch in top of first dc.',
    'in each loop work (1 dc, 1 htr, 5 tr, 1 htr, 1 dc), ss into first dc.',
    'fill each loop with 1 dc, 1 htr, 5 tr, 1 htr, 1 dc, ss into first dc.',
    'work 1 dc, 1 htr, 5 tr, 1 htr and 1 dc into each loop, ss into first dc.',
    '1 ch, 1 dc, 1 htr, 5 tr, 1 htr, 1 dc into each loop, ss into first dc.',
    '1 ch, 1 dc, 1 htr, 5 tr, 1 htr, 1 dc into each of the 8 loops, ss into first dc.',
    '1 dc, 1 htr, 5 tr, 1 htr and 1 dc all in each loop, ss into first dc.',
    '1 ch, (1 dc, 1 htr, 5 tr, 1 htr, 1 dc) into each loop, ss into first dc.',
    '1 ch, *in next loop work 1 dc, 1 htr, 5 tr, 1 htr, 1 dc; rep from * 7 times more, ss into first dc.',
    '1 ch, *(1 dc, 1 htr, 5 tr, 1 htr, 1 dc) into next loop; rep from * to end, ss into first dc.',
  ])('is a petal, and the round is joined once: %s', (words) => {
    const text = LOOPS + words
    expect(told(text, 'UK')).toEqual([])
    expect(made(text, 'UK')).toEqual([16, 8, 72])
    const { worked, rounds } = readRounds(text, { terms: 'UK' })
    const slips = worked[2]!.elements.filter(({ stitch }) => stitch === 'sl st')
    expect(slips.map(({ role }) => role)).toEqual(['join'])
    expect(rounds[2]!.stitches['sl st']).toBe(1)
  })
})

describe('A new colour', () => {
  it.each([
    ['Join A in first dc', 'A'],
    ['Join A with sl st in first dc', 'A'],
    ['Attach A to any dc', 'A'],
    ['Join B in first dc of any group', 'B'],
    ['Join A in center dc of any petal', 'A'],
  ])('is that of its round: %s', (words, colour) => {
    const text = `${PETALS}${words}, ch 1, sc in same st and in each dc around, join.`
    expect(told(text)).toEqual([])
    const { worked } = readRounds(text, {})
    expect(worked[2]!.elements.every((element) => element.colour === colour)).toBe(true)
  })
})

describe('A repeat that is told by its spaces', () => {
  it.each([
    ['in each of the 12 spaces around', 12],
    ['in each of the 12 spaces', 12],
    ['in each of the remaining 11 spaces', 12],
    ['in each of next 11 spaces', 12],
    ['in every space around', 12],
    ['in all 12 spaces', 12],
  ])('goes as often as there are: %s', (words, count) => {
    const text = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, sl st to top of ch 3. (12 dc)
Rnd 2: Join B between any 2 dc, *puff in space between dc, ch 1; rep from * ${words}, sl st to first puff.`
    expect(told(text).filter((each) => !each.includes('not explained'))).toEqual([])
    expect(last(made(text))).toBe(count)
  })
})

describe('What lies further down', () => {
  const text = (words: string) => `Spike sc: work a sc into the top of the Rnd 2 cluster, drawing the loop up.
Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring, sl st to top of ch 3. (12 dc)
Rnd 2: Ch 2, dc2tog in same st, ch 2, *dc3tog in next dc, ch 2; rep from * 10 more times, sl st to top of dc2tog. (12 clusters)
Rnd 3: Sl st in ch-2 sp, ch 3 (counts as dc), 3 dc in same sp, 4 dc in each ch-2 sp around, sl st to top of ch 3. (48 dc)
Rnd 4: Ch 1, *sc in next 4 dc, ${words}; rep from * 11 more times, sl st to first sc. (48 sc, 12 spike sc)`
  it.each([
    'spike sc in cluster below',
    'spike sc in the cluster below',
    'spike sc in cluster of Rnd 2 below',
    'spike sc',
  ])('is found by its name: %s', (words) => {
    expect(told(text(words))).toEqual([])
    expect(last(made(text(words)))).toBe(60)
    expect(told(text(words).replace('12 spike', '11 spike'))).toHaveLength(1)
  })
})

describe('The way to where a round begins', () => {
  const text = (words: string) => `beg cl = ch 2, dc2tog in same sp; cl = dc3tog in same sp
Ch 3 = dc, ch 4 = dc + ch 1.

R1: MR, ch 1, 12 sc, join to first sc (12)
R2: ch 4, (dc in next sc, ch 1) x 11, join to 3rd ch of ch 4 (12 dc, 12 ch-1 sps)
R3: sl st in ch-1 sp, ch 3, dc in same sp, ch 1, (2 dc in next ch-1 sp, ch 1) x 11, join (24 dc, 12 ch-1 sps)
R4: ${words}, ch 3, (cl in next ch-1 sp, ch 3) x 11, join (12 cl, 12 ch-3 sps)`
  it.each([
    'sl st in next dc and in ch-1 sp, beg cl',
    'sl st in next dc and in next ch-1 sp, beg cl in same sp',
    'sl st in next dc, sl st in ch-1 sp, beg cl',
  ])('passes nothing: %s', (words) => {
    expect(told(text(words))).toEqual([])
    expect(made(text(words))).toEqual([12, 12, 24, 12])
  })

  it.each(['1-ch. sp.', 'next 1-ch. sp.', '1-ch sp', 'the 1-ch. sp.'])(
    'is the space that is named: %s',
    (sp) => {
      const words = `Commence with 6 ch., join with s.s. to form a ring.
1st round: 3 ch. (counts as 1 tr.), 15 tr. into ring, s.s. to 3rd of 3 ch. (16 tr.)
2nd round: 5 ch. (counts as 1 tr. and 2 ch.), * 1 tr. into next tr., 2 ch.; rep. from * to end, s.s. to 3rd of 5 ch.
3rd round: s.s. into first 2-ch. sp., 3 ch. (counts as 1 tr.), 2 tr. into same sp., 1 ch., * 3 tr. into next 2-ch. sp., 1 ch.; rep. from * to end, s.s. to 3rd of 3 ch.
4th round: s.s. into each of next 2 tr. and into ${sp}, 1 ch., 1 d.c. into same sp., 5 ch., * 1 d.c. into next 1-ch. sp., 5 ch.; rep. from * to end, s.s. to first d.c.`
      expect(made(words, 'UK')).toEqual([16, 16, 48, 16])
    },
  )
})

describe('Behind the stop of a round', () => {
  it.each(['(12 sc, 4 spikes)', '(4 spikes)', '(12 sc, and 4 tall ones)', '[12 sc, 4 spikes]'])(
    'a bracket of figures works nothing: %s',
    (words) => {
      const text = `Ch 17.
Row 1: Sc in 2nd ch from hook and in each ch across. (16 sc)
Row 2: Ch 1, turn, sc in first sc, *spike st over next sc, sc in next 3 sc; rep from * 2 more times, spike st over next sc, sc in last 2 sc. ${words}`
      expect(told(text)).toEqual([])
      expect(made(text)).toEqual([16, 16])
    },
  )
})

describe('Stitches of another kind', () => {
  const text = (words: string) => `Make 6 ch and close into a ring with a slip stitch.
Round 1: 1 ch, work 12 dc into the ring, ss to the first dc. (12 dc)
Round 2: 1 ch, 1 dc in same st, *miss 1 dc, (3 tr, 2 ch, 3 tr) in next dc, miss 1 dc, 1 dc in next dc; rep from * once, miss 1 dc, (3 tr, 2 ch, 3 tr) in next dc, miss 1 dc, ss to the first dc.
Round 3: 7 ch (counts as 1 dtr and 3 ch), 1 dc in next 2-ch sp, 3 ch, *${words}, 3 ch, 1 dc in next 2-ch sp, 3 ch; rep from * once, ss to the 4th of the 7 ch. (3 dtr, 3 dc)`
  it('are passed where those between them are named', () => {
    expect(told(text('1 dtr in next dc'), 'UK')).toEqual([])
    expect(made(text('1 dtr in next dc'), 'UK')).toEqual([12, 21, 6])
  })

  it('are told where nothing names the next one', () => {
    expect(told(text('1 dtr in next st'), 'UK')).toEqual([expect.stringContaining('rounds/stitches-passed')])
  })
})
