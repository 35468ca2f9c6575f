/** What pages of today's designers say beside the rounds, and slips in their words that a count alone does not show. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string) => readRounds(text, { terms: 'US' })
const codesOf = (text: string) => read(text).findings.map(({ code }) => code)

describe('counts behind a sign', () => {
  it.each(['//', '|', '→', '=', '—'])('%s tells what the round comes to', (sign) => {
    const { rounds, findings } = read(
      `Rnd 1: Ch 6, join to form a ring. Ch 3 (counts as dc), 17 dc into ring, sl st into top of ch-3. ${sign} 18 dc
Rnd 2: Ch 1, sc into same st, ch 5, skip 2 dc, [sc into next dc, ch 5, skip 2 dc] 5 times, sl st into first sc. ${sign} 6 sc, 6 ch-5 sps`,
    )
    expect(findings).toEqual([])
    expect(rounds.map(({ made }) => made)).toEqual([18, 6])
  })
})

describe('a stitch of a group that has not so many', () => {
  const shells = (words: string) => `Rnd 1: 16 sc in magic ring, join. (16 sc)
Rnd 2: Ch 1, *sc in next sc, sk next sc, 5 dc in next sc, sk next sc; rep from * 3 more times, join. (4 sc, 4 shells)
Rnd 3: Ch 1, *sc in next sc, ch 3, sc in ${words}, ch 3; rep from * 3 more times, join. (8 sc)`

  it.each(['6th dc of next 5-dc shell', '6th dc of next shell', '7th dc of next shell'])('%s', (words) => {
    expect(codesOf(shells(words))).toEqual(['rounds/group-too-small'])
  })

  it.each(['3rd dc of next 5-dc shell', '5th dc of next shell', 'center dc of next shell'])(
    '%s is there',
    (words) => expect(codesOf(shells(words))).toEqual([]),
  )
})

describe('chains that count once and for all', () => {
  const square = (
    said: string,
    last: number,
  ) => `Rnd 1: Magic ring. Ch 3 (${said}), 15 dc in ring. Sl st to top of ch-3. (16 dc)
Rnd 2: Ch 3, (dc, ch 2, 2 dc) in same st, dc in each of next 3 sts, *(2 dc, ch 2, 2 dc) in next st, dc in each of next 3 sts; rep from * 2 more times. Sl st to top of ch-3. (28 dc, 4 ch-2 sps)
Rnd 3: Ch 3, dc in next dc, (2 dc, ch 2, 2 dc) in corner sp, *dc in each of next 7 dc, (2 dc, ch 2, 2 dc) in next corner sp; rep from * 2 more times, dc in each of last ${last} dc. Sl st to top of ch-3. (44 dc, 4 ch-2 sps)`

  it.each(['counts as first dc, now and always', 'counts as dc throughout', 'always counts as a dc'])(
    '%s: one stitch too many is told',
    (said) => {
      expect(codesOf(square(said, 5))).toEqual([])
      expect(codesOf(square(said, 6))).toContain('rounds/too-many-used')
    },
  )
})

describe('what is needed, with words before it', () => {
  it.each([
    'Fingering weight yarn: Colors 1, 2 and 3',
    'Worsted weight yarn: Color 1',
    'Cotton thread: white',
    'Steel hook: 1.5 mm',
  ])('%s is no round', (line) => {
    const { rounds, findings } = read(
      `Materials\n${line}\n\nRnd 1: 16 dc in magic ring, join. (16 dc)\nRnd 2: Ch 1, sc in each dc around, join. (16 sc)`,
    )
    expect(findings).toEqual([])
    expect(rounds.map(({ made }) => made)).toEqual([16, 16])
  })
})
