import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

/** Counts by hand: each round has one more group on each of four sides, two more chains' worth of corner, or 6 more increases. */
const SQUARE = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2; join. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * around; join. (24 dc)
Rnd 3: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around; join. (36 dc)
Rnd 4: `
const SOLID = `Rnd 1: Magic ring, ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2; join. (12 dc, 4 ch-2 sps)
Rnd 2: Ch 3, dc in next 2 dc, *(2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 3 dc; rep from * 2 more times, (2 dc, ch 2, 2 dc) in last ch-2 sp; join. (28 dc)
Rnd 3: `
const CIRCLE = `Rnd 1: 6 sc in magic ring. (6)
Rnd 2: 2 sc in each st around. (12)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)
Rnd 4: `
const TALL = `Rnd 1: Magic ring, ch 3 (counts as dc), 11 dc in ring; join. (12)
Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join. (24)
Rnd 3: Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around; join. (36)
Rnd 4: `

const IN_GROUPS = [
  'As Rnd 3, but with 2 groups of 3 dc on each side.',
  'Work as Rnd 3, but there are now 2 ch-1 sps on each side, so work (3 dc, ch 1) in each of them.',
  'As Rnd 3, having one more group of 3 dc on each side.',
  'Same as Rnd 3, with one extra 3-dc group on each side.',
  'Repeat Rnd 3, adding one 3-dc group per side.',
  'Work as before, with one more group along each side.',
  'Continue in pattern, working one more 3-dc group on each side.',
  'As last round, but 2 groups on each side instead of 1.',
  'As Rnd 3, increasing the number of groups on each side by one.',
  'Sl st to the corner. As Rnd 3, but there are now two ch-1 sps along each side, so each side gets two groups.',
]
const ALONG = [
  'Work as last rnd, having 4 more dc on each side.',
  'As Rnd 2, with 4 more dc on each side.',
  'As Rnd 2, but with 7 dc along each side between the corners.',
  'As Rnd 2, there will now be 7 dc between corner groups.',
  'Rep Rnd 2 once more, with 7 dc between the corners.',
]
const BETWEEN = [
  'As Rnd 3, with one more sc between increases.',
  'Continue as before, having 2 sc between increases.',
  'Continue in this way, working one more sc between incs.',
  'Rep Rnd 3 with 2 sc between increases.',
  'As Rnd 3, working 1 more sc before each increase.',
]

const read = (text: string) => {
  const { rounds, findings } = readRounds(text, { terms: 'US' })
  return { made: rounds.at(-1)?.made, findings: findings.map(({ code }) => code) }
}

describe('a round told by one before and what has grown', () => {
  it.each([
    ...IN_GROUPS.map((words) => [words, SQUARE, 48] as const),
    ...ALONG.map((words) => [words, SOLID, 44] as const),
    ...BETWEEN.map((words) => [words, CIRCLE, 24] as const),
    ['As Rnd 3, with one more dc between increases.', TALL, 48] as const,
  ])('%s', (words, before, made) => {
    expect(read(before + words)).toEqual({ made, findings: [] })
    expect(read(`${before}${words} (${made})`)).toEqual({ made, findings: [] })
    // A count that does not fit stays an error.
    expect(read(`${before}${words} (${made + 4})`)).toEqual({ made, findings: ['rounds/wrong-end-count'] })
  })

  it('grows again in every round, and holds each to its count', () => {
    const rounds = `${SQUARE.replace(/Rnd 4: $/, '')}Rnds 4–6: Continue in this way, working one more 3-dc group on each side every round. `
    const counts = (words: string) => readRounds(rounds + words, { terms: 'US' })
    expect(counts('(48, 60, 72 dc)').rounds.map(({ made }) => made)).toEqual([12, 24, 36, 48, 60, 72])
    expect(counts('(48, 60, 72 dc)').findings).toEqual([])
    expect(counts('(48, 60, 70 dc)').findings.map(({ code }) => code)).toEqual(['rounds/wrong-end-count'])
  })

  it('is marked where the round before has no side that could grow', () => {
    const text = `Rnd 1: Magic ring, ch 1, 12 sc in ring; join. (12 sc)\nRnd 2: Continue in this way, working one more group on each side.`
    expect(read(text)).toEqual({ made: null, findings: ['rounds/not-read'] })
  })
})
