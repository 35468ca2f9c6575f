import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const last = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  return {
    made: rounds.at(-1)?.made,
    findings: findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code),
  }
}

/** Counts by hand throughout. */
describe('stitches worked in turn', () => {
  const twelve = `Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: `
  it.each([
    'Alternate sc and inc around.',
    'Alternate between sc and inc.',
    'Alternating 1 sc and 1 inc all the way round.',
    'Six times: sc in next st, 2 sc in next st.',
    'Then six times sc in next st, 2 sc in the one after that.',
  ])('%s', (words) => {
    expect(last(`${twelve}${words} (18)`)).toEqual({ made: 18, findings: [] })
    expect(last(`${twelve}${words} (20)`).findings).toEqual(['rounds/wrong-end-count'])
  })
})

describe('beginnings of clusters and spaces', () => {
  it('takes chains with held stitches for one cluster', () => {
    const text = `Rnd 1: Ch 5, join to form ring, ch 2, holding back last lp of each dc on hook, 2 dc in ring, yo and draw through all 3 lps on hook (beg cl made), ch 3, *holding back last lp of each dc on hook, 3 dc in ring, yo and draw through all 4 lps (cl made), ch 3; rep from * 6 times, join in top of beg cl. (8 cl, 8 ch-3 sps)`
    expect(last(text)).toEqual({ made: 8, findings: [] })
    expect(last(text.replace('6 times', '5 times')).findings).toContain('rounds/wrong-end-count')
  })

  it('reads the steps of a first cluster and what is said of its chains', () => {
    const text = `Rnd 1: Ch 8, join to form ring, ch 3 (to count as dc), 31 dc in ring, join. (32 dc)
Rnd 2: Ch 3, holding back on hook the last loop of each dc make dc in each of next 3 dc, thread over and draw through all loops on hook (first cluster made; ch-3 is a part of it), * ch 5, holding back on hook the last loop of each dc make dc in each of next 4 dc, thread over and draw through all loops on hook (another cluster). Repeat from * around, ending with ch 5. Join to tip of first cluster (8 clusters).`
    expect(last(text)).toEqual({ made: 8, findings: [] })
  })

  it.each(['(= dc, ch 1)', '(= dc and ch 1)', '(= 1 dc + 1 ch)', '(dc + ch 1)'])(
    '%s is a stitch and a space',
    (words) => {
      const text = `FIRST MOTIF
Ch 6, sl st in first ch to make a ring.
R1: Ch 4 ${words}, (dc in ring, ch 1) 11 times, sl st in 3rd ch of ch-4.
SECOND MOTIF
R1: Work as first motif.`
      const { rounds, findings } = readRounds(text, { terms: 'US' })
      expect([rounds.map(({ made }) => made), findings]).toEqual([[12, 12], []])
    },
  )

  it('lets the count that is stated say what two chains stand for', () => {
    const text = `Rnd 1: Magic ring, ch 2, 12 hdc in ring, join with sl st to first hdc. (12 hdc)
Rnd 2: Ch 2, hdc in same st, hdc in next st, *2 hdc in next st, hdc in next st; rep from * around, join.`
    expect(last(`${text} (18 hdc)`)).toEqual({ made: 18, findings: [] })
    expect(last(text).findings).toEqual(['rounds/ch2-not-stated'])
  })

  it('goes on in the space that was reached behind chains that are a stitch and a space', () => {
    const text = `Rnd 1: Ch 5, join, ch 4 (counts as dc and ch 1), (dc in ring, ch 1) 9 times, join in 3rd ch. (10 dc)
Rnd 2: Sl st in ch-1 sp, ch 4, dc in sp, ch 2, *(dc, ch 1, dc) in next sp, ch 2; rep from * around, join to 3rd st of ch-4. (20 dc)`
    expect(last(text)).toEqual({ made: 20, findings: [] })
  })

  it('leaves the spaces between shells where shells go into shells', () => {
    const text = `Shell: (2 dc, ch 2, 2 dc) in ch-2 sp of shell.
Rnd 1: Ch 6, join, ch 3, 15 dc in ring, join in top of ch 3. (16 dc)
Rnd 2: Ch 3, dc in same st, ch 2, sk 1 dc, *2 dc in next dc, ch 2, sk 1 dc; rep from * around, join. (16 dc, 8 ch-2 sps)
Rnd 3: Sl st in next dc and in ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 2, *(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 2; rep from * around, join. (8 shells)
Rnd 4: Sl st in next dc and in ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 2, 8 dc in next shell, ch 2, *shell in next shell, ch 2, 8 dc in next shell, ch 2; rep from * around, join. (48 dc)`
    expect(last(text)).toEqual({ made: 48, findings: [] })
  })

  it('crosses stitches in front of the one just made', () => {
    const text = `Rnd 1: Magic ring, ch 1, 16 sc in ring, join. (16)
Rnd 2: Ch 2 (does not count), *sk next st, dc in next st, working in front of dc just made dc in skipped st; rep from * around, join. (16 dc)`
    expect(last(text)).toEqual({ made: 16, findings: [] })
  })
})

it('works all rounds in the loop that a note says', () => {
  const rounds = `Rnd 1: 6 sc in magic ring, join. (6)
Rnd 2: Ch 1, 2 sc in each st around, join. (12)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18)
Rnd 4: Ch 1, *sc in next 2 sts, dc in free front loop of next st of Rnd 2, sk next st; rep from * around, join. (18)`
  for (const note of [
    'Notes: Work in back loops only throughout unless otherwise stated.',
    'Unless told otherwise work every sc in the BACK LOOP ONLY.',
  ])
    expect(last(`${note}\n\n${rounds}`)).toEqual({ made: 18, findings: [] })
  expect(last(rounds).findings).toEqual(['rounds/loop-already-used'])
})
