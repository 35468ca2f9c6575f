import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  return { made: rounds.map(({ made }) => made), findings: findings.map(({ code }) => code) }
}
const last = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { made, findings } = read(text, terms)
  return { made: made.at(-1), findings }
}

/** Counts by hand throughout. */
describe('a motif completed as the first one', () => {
  const first = `First Motif
Rnd 1: Magic ring, ch 1, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, sc in first sc, ch 5, sk next sc, *sc in next sc, ch 5, sk next sc; rep from * around, join. (6 ch-5 lps)
Second Motif
Rnd 1: Work as for First Motif.
Rnd 2: Ch 1, sc in first sc, ch 2, sl st in any ch-5 lp of First Motif, ch 2, sk next sc, sc in next sc, ch 2, sl st in next ch-5 lp of First Motif, ch 2, sk next sc, `
  it.each([
    'complete as for First Motif.',
    'complete rnd as Rnd 2 of First Motif.',
    'finish off as for First Motif.',
    'work the rest of the round as for First Motif.',
  ])('%s', (words) => {
    expect(last(first + words)).toEqual({ made: 6, findings: [] })
  })
})

describe('a round worked again into another one', () => {
  const rose = `Ch 5, join with sl st to form ring.
Rnd 1: Ch 1, 12 sc in ring, join. (12 sc)
Rnd 2: Ch 1, sc in same st, *ch 3, sk next sc, sc in next sc; rep from * 4 more times, ch 3, sk last sc, join. (6 ch-3 lps)
Rnd 3: In each lp work (sc, hdc, 3 dc, hdc, sc), join. (6 petals)
Rnd 4: Working behind petals, ch 1, sc around post of first sc of Rnd 2, *ch 5, sc around post of next sc of Rnd 2; rep from * 4 more times, ch 5, join. (6 lps)
Rnd 5: In each lp work (sc, hdc, 5 dc, hdc, sc), join.
Rnd 6: `
  it.each([
    'As Rnd 4, but working ch 7 instead of ch 5 and taking each sc around the post of a sc of Rnd 4. (6 lps)',
    'As Rnd 4, but with ch 7 instead of ch 5, working around the sc of Rnd 4. (6 lps)',
  ])('%s', (words) => {
    expect(read(`${rose}${words}\nRnd 7: 9 sc in each ch-7 lp around, join.`).made.slice(5)).toEqual([6, 54])
  })
})

describe('corners of a round that has no spaces', () => {
  const square = `Rnd 1: Magic ring, ch 1, 16 sc in ring, join. (16 sc)
Rnd 2: Ch 1, *3 sc in next sc, sc in next 3 sc; rep from * 3 more times, join. (24 sc)
Rnd 3: `
  it.each([
    'Ch 1, sc in same st, *3 sc in center sc, sc in each sc to next center sc; rep from * around, join.',
    'Ch 1, sc in same st, *3 sc in center sc of corner, sc in each sc to center sc of next 3-sc corner; rep from * 3 times more, join.',
    'Sl st to center sc of corner, ch 1, *3 sc in center sc, sc in each sc up to next corner; rep from * around, join.',
    'Sl st in center sc, ch 1, *3 sc in center sc, sc in next 5 sc; rep from * around, join.',
    'Ch 1, sc in each sc to center sc of corner, 3 sc in center sc, *sc in each sc to center of next corner, 3 sc in center sc; rep from * around, sc in each sc to end, join.',
    'Ch 1, *sc in each sc to center of corner, 3 sc in center st; rep from * around, sc to end, join.',
  ])('%s', (words) => {
    expect(last(`${square}${words} (32 sc)`)).toEqual({ made: 32, findings: [] })
    expect(last(`${square}${words} (36 sc)`).findings).toEqual(['rounds/wrong-end-count'])
  })
})

describe('petals over posts and slip stitches', () => {
  const spokes = `Ch 6, join to form ring.
Rnd 1: Ch 6 (counts as dc, ch 3), (dc in ring, ch 3) 7 times, sl st in 3rd ch of ch 6. (8 dc)
Rnd 2: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around. (8 petals)
Rnd 3: `
  it.each([
    'Work 1 sc at the back round the stem of each spoke of the 1st round, with 5 ch between one and the next, slip-st. to the first sc. (8 loops)',
    'Working behind petals, sc around post of each spoke of Rnd 1 with ch 5 between, join. (8 loops)',
    '*Sc round the next spoke of the first round at the back, ch 5; rep from * around, join. (8 loops)',
    '*At the back sc around next dc of Rnd 1, ch 5; rep from * around, join. (8 loops)',
    'Ch 1, from the back sc around the post of first dc in Rnd 1, *5 ch, sc around the post of next dc in Rnd 1; rep from * 6 more times, ch 5, sl st in first sc. (8 loops)',
  ])('%s', (words) => {
    expect(read(`${spokes}${words}\nRnd 4: 9 sc in each ch-5 lp around, join. (72 sc)`)).toEqual({
      made: [8, 56, 8, 72],
      findings: [],
    })
  })

  const petals = `Round 1: 5ch, ss to form ring, 1ch, 10dc into ring, ss in first dc. (10 dc)
Round 2: *In the next dc work ss, 3ch, 2dtr, 3ch, ss. Ss into the next dc; rep from * 4 more times. (5 petals)
Round 3: `
  it.each([
    'Join the second colour at the back with a dc in one of the single slip stitches between two petals, 3ch, (1dc in the slip stitch between the next two petals, 3ch) 4 times, ss to first dc. 5 loops.',
    'Join B with a dc in the ss between any two petals, 3ch, (1dc in ss between next 2 petals, 3ch) 4 times, ss to first dc. 5 loops.',
  ])('%s', (words) => {
    expect(last(petals + words, 'UK')).toEqual({ made: 5, findings: [] })
  })
})

describe('older print', () => {
  it('says in a bracket behind a stop what chains stand for', () => {
    const text = `Rnd 1: Magic ring, 1 ch., 8 d.c. into ring, s.s. into first d.c. (8 d.c.)
Rnd 2: 3 ch. (1 tr.), 1 tr. into same place, 2 tr. into each d.c. to end, s.s. into top of 3 ch. (16 tr.)
Rnd 3: 1 ch., 1 d.c. into same place, 1 d.c. into next tr., 3 ch., s.s. into the last d.c. (a picot made), * 1 d.c. into each of next 2 tr., 3 ch., s.s. into last d.c.; repeat from * to end, s.s. into first d.c. (8 picots)`
    expect(read(text, 'UK')).toEqual({ made: [8, 16, 16], findings: [] })
  })

  it('ends a round along a chain in the chains that were missed', () => {
    for (const top of ['top of the 3 missed ch', 'top of the missed 3ch', 'top of the 3 skipped chs']) {
      const text = `Begin with 16ch.
Rnd 1: 5tr in 4th ch from hook (the 3 missed ch count as the first tr), 1tr in each of next 11ch, 6tr in last ch, on the other side of the chain work 1tr in each of next 11ch, ss in ${top}. (34tr)`
      expect(last(text, 'UK')).toEqual({ made: 34, findings: [] })
    }
  })

  it('counts a stitch that it explains beside those that it is made of', () => {
    const text = `Long sc: insert hook in the place told, draw up a loop, complete as sc.
Rnd 1: Magic ring, ch 1, 16 sc in ring; join. (16 sc)
Rnd 2: Ch 1, sc in each sc around; join. (16 sc)
Rnd 3: Ch 1, *sc in next sc, long sc in next sc of Rnd 1, sk next sc; rep from * 7 more times; join. `
    expect(last(`${text}(8 sc, 8 long sc)`)).toEqual({ made: 16, findings: [] })
    expect(last(`${text}(10 sc, 8 long sc)`).findings).toEqual(['rounds/wrong-end-count'])
  })
})

describe('a foundation chain that is too long or too short', () => {
  const leaf = (chains: number) => `Ch ${chains}.
Rnd 1: Sc in 2nd ch from hook, hdc in next ch, dc in next 2 chs, tr in next 3 chs, dc in next 2 chs, hdc in next ch, (sc, ch 2, sc) in last ch; working along opposite side of foundation ch, hdc in next ch, dc in next 2 chs, tr in next 3 chs, dc in next 2 chs, hdc in next ch, sc in last ch; join with sl st in first sc.`
  it('is told at the last chain, which would pass over what is left', () => {
    expect(last(leaf(12))).toEqual({ made: 22, findings: [] })
    expect(last(leaf(13)).findings).toEqual(['rounds/chains-left'])
    expect(last(leaf(11)).findings).toEqual(['rounds/chain-worked-twice'])
  })
})

describe('points of a star', () => {
  const star = `R1: magic ring, 10 sc in ring, sl st in first sc. (10)
R2: ch 1, 2 sc in each sc around, sl st in first sc. (20)
R3: *ch 6, sc in 2nd ch from hook, hdc in next ch, dc in next ch, tr in next ch, dtr in last ch, sk next 3 sc of R2, sl st in next sc*; work from * to * 5 times. (5 points)
R4: ch 1; `
  it.each([
    'around each point work: sc in unused loops of the 5 chs, (sc, ch 2, sc) in ch at tip, sc in each of the 5 sts down the other side, sl st in the sl st between points.',
    '*working in the unused loops of the chain, sc in next 5 ch, (sc, ch 2, sc) in ch at tip, sc in next 5 sts, skip the sl st; rep from * 4 more times.',
  ])('%s', (words) => {
    expect(last(`${star}${words} (60 sc)`)).toEqual({ made: 60, findings: [] })
  })

  it('leave a stem that only hangs from them', () => {
    expect(
      last(`Rnd 1: MR, ch 1, 9 sc in ring, sl st to first sc. (9)
Rnd 2: Ch 1, *sc, ch 6, skip 2 sc; rep from * twice more; sl st to first sc. (3 ch-6 loops)
Rnd 3: In each ch-6 loop work (sc, 4 dc, sc, 4 dc, sc). Sl st to first sc. (3 leaves of 11 sts each)
Stem: Ch 12, sc in 2nd ch from hook and in each ch back (11 sc), sl st between two leaves, fasten off.`),
    ).toEqual({ made: 33, findings: [] })
  })
})

it('names stitches of the round before in the terms of the text', () => {
  const text = `1st round: Magic ring, 3ch (counts as 1tr), 11tr into ring, ss to top of 3ch. 12 tr.
2nd round: 3ch, 1tr in same place, 2tr in each dc to end, ss to top of 3ch. 24 tr.`
  const [found] = readRounds(text, { terms: 'UK' }).findings
  expect(found?.message).toBe('there are tr, no dc, in the round before.')
})
