/** Whole motifs of our own: each round finds what the one before left. */
import { describe, expect, it } from 'vitest'
import { readRoundTexts, readRounds } from '../../../src-core/notation/read'

const made = (text: string, terms: 'US' | 'UK' = 'US') => {
  const { rounds, findings } = readRounds(text, { terms })
  expect(findings).toEqual([])
  return rounds.map((round) => round.made)
}

describe('whole motifs', () => {
  it('a granny square with an edge, its corners found from the rounds (M6, M8)', () => {
    const text = `Ch 4, join with sl st to form ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join in top of beg ch-3. (12 dc, 4 ch-2 sps)
Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more; join. (24 dc)
Rnd 3: Sl st in next 2 dc and in corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next corner sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around; join in top of beg ch-3. Fasten off. (36 dc)
Rnd 4: Join B with sc in any corner sp, (sc, ch 2, 2 sc) in same sp, sc in each dc and in each ch-1 sp across to next corner sp, *(2 sc, ch 2, 2 sc) in corner sp, sc in each dc and in each ch-1 sp across to next corner sp; rep from * around; join.`
    expect(made(text)).toEqual([12, 24, 36, 60])
    const { rounds, worked } = readRounds(text, { terms: 'US' })
    expect(rounds.map((round) => round.corners)).toEqual([0, 4, 4, 4])
    expect(worked[2]!.places.filter((place) => place.corner)).toHaveLength(4)
  })

  it('a layered flower in UK terms, into stitches that were missed', () => {
    expect(
      made(
        `Round 1: Make a magic ring, 1 ch, 6 dc into the ring, ss to first dc. (6 dc)
Round 2: 1 ch, 2 dc in each st around, ss to first dc. (12 dc)
Round 3: *5 ch, miss 1 st, ss in next st; repeat from * to end. (6 5-ch sps)
Round 4: (1 dc, 1 htr, 3 tr, 1 htr, 1 dc) in each 5-ch sp, ss to first dc. (6 petals)
Round 5: Working behind the petals, *6 ch, ss in next missed st of Round 2; rep from * to end.`,
        'UK',
      ),
    ).toEqual([6, 12, 0, 42, 0])
  })

  it('front loops now and back loops later', () => {
    const text = `Rnd 1: Ch 2, 8 sc in 2nd ch from hook, sl st in first sc.
Rnd 2: Working in front loops only, *(sl st, ch 3, 2 dc, ch 3, sl st) in next st; rep from * around.
Rnd 3: Working in back loops of Rnd 1, ch 1, 2 sc in each st around; join. (16 sc)`
    expect(made(text)).toEqual([8, 16, 16])
    const again = `${text}\nRnd 4: In back loops of Rnd 1, sl st in each st around.`
    const { findings } = readRounds(again, { terms: 'US' })
    expect(findings).toMatchObject([
      {
        code: 'rounds/loop-already-used',
        message: expect.stringContaining('Rnd 3 was worked in') as unknown,
      },
    ])
  })

  it('loops closed by a tall stitch, the next round beginning in them', () => {
    const text = `Rnd 1: Ch 8, join; ch 3, 23 dc in ring, join in top of ch-3.
Rnd 2: Ch 4, *dc in next dc, ch 1; rep from * around, join in 3rd ch of ch-4. (24 dc, 24 ch-1 sps)
Rnd 3: Sl st in ch-1 sp, ch 1, sc in same sp, *ch 3, sk next ch-1 sp, sc in next ch-1 sp; rep from * around, ending with ch 1, hdc in first sc. (12 lps)
Rnd 4: Ch 1, sc in lp just made, *ch 5, sc in next lp; rep from * around, ch 5; join.
Rnd 5: *7 sc in next ch-5 lp, sl st in next sc; rep from * around.`
    expect(made(text)).toEqual([24, 24, 12, 12, 84])
    expect(readRounds(text, { terms: 'US' }).rounds[2]!.spaces).toEqual({ 'ch-3': 12 })
  })

  it('a spiral in the shortest words, with rounds worked again', () => {
    expect(
      made(`Rnd 1: 6 sc in magic ring (6)
Rnd 2: inc x 6 (12)
Rnd 3: (sc, inc) x 6 (18)
Rnd 4: (sc 2, inc) x 6 (24)
Rnd 5: sc around (24)
Rnds 6-8: Rep Rnd 5.
Rnd 9: (sc 2, dec) x 6 (18)`),
    ).toEqual([6, 12, 18, 24, 24, 24, 24, 24, 18])
  })

  it('rounds pasted as one block are taken apart', () => {
    const text =
      'Rnd 1: Ch 1, 6 sc in ring; join. (6 sc) Rnd 2: 2 sc in each st around. (12 sc) 3rd rnd: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)'
    const { rounds, findings } = readRounds(text, { terms: 'US', after: { ring: 4 } })
    expect(findings).toEqual([])
    expect(rounds.map((round) => [round.number, round.made])).toEqual([
      [1, 6],
      [2, 12],
      [3, 18],
    ])
  })

  it('an error does not run on into the rounds after it', () => {
    const text = `Rnd 1: Ch 1, 6 sc in ring; join.
Rnd 2: *Sc in next 3 sts, 2 sc in next st; rep from * around.
Rnd 3: Sc in each st around.
Rnd 4: *Sc in next st, 2 sc in next st; rep from * around.`
    const { rounds, findings } = readRounds(text, { terms: 'US', after: { ring: 4 } })
    expect(findings.map((found) => [found.code, found.target?.round])).toEqual([
      ['rounds/repeat-does-not-fit', 2],
    ])
    expect(rounds.map((round) => round.made)).toEqual([6, null, null, null])
  })

  it('a round that is told in sum takes the count that it says, and hands that on', () => {
    const text = `Rnd 2: 2 sc in each st around, work evenly. (12 sc)
Rnd 3: Sc evenly around. (16 sc)
Rnd 4: *Sc in next 3 sts, 2 sc in next st; rep from * around. (20 sc)`
    const { rounds } = readRounds(text, { terms: 'US', after: { stitches: 6 } })
    expect(rounds.map((round) => round.made)).toEqual([12, 16, 20])
  })
})

describe('rounds of a project', () => {
  it('are read one after the other, each from its own text', () => {
    const { rounds, worked, findings } = readRoundTexts(
      [
        'ch 1, 18 sc in ring, join with sl st in first sc',
        'ch 1, sc in same st as joining, *ch 6, sk 2, sc in next st; rep from * 4 more times, ch 6, sk 2, join with sl st in first sc',
        '(sc, hdc, 3 dc, ch 2, 3 dc, hdc, sc) in each ch-6 sp around, join with sl st in first sc',
      ],
      { terms: 'US', after: { ring: 8 } },
    )
    expect(findings).toEqual([])
    expect(rounds.map((round) => [round.number, round.made])).toEqual([
      [1, 18],
      [2, 6],
      [3, 60],
    ])
    expect(worked.map((round) => [round.source, round.onto])).toEqual([
      [0, -2],
      [1, 0],
      [2, 1],
    ])
    const petal = worked[2]!.elements.filter((element) => element.group === worked[2]!.elements[0]!.group)
    expect(petal.map((element) => element.stitch)).toEqual([
      'sc',
      'hdc',
      'dc',
      'dc',
      'dc',
      'ch',
      'dc',
      'dc',
      'dc',
      'hdc',
      'sc',
    ])
    expect(petal[0]!.into).toMatchObject([{ kind: 'space', round: 1, index: 1 }])
  })

  it('point at the column of their own text', () => {
    const { findings } = readRoundTexts(['12 sc in ring', '*sc in next 4 sts, inc; rep from * around'], {
      terms: 'US',
      after: { ring: 4 },
    })
    expect(findings).toMatchObject([{ target: { round: 2, column: 1 } }])
  })
})

describe('terms of a text', () => {
  const codes = (text: string) =>
    readRounds(text, { after: { stitches: 12 } }).findings.map((found) => found.code)

  it('are found from its words, or asked for', () => {
    expect(readRounds('Rnd 2: Sc in each st around.', { after: { stitches: 12 } }).terms).toBe('US')
    expect(readRounds('Round 2: Htr in each st to end.', { after: { stitches: 12 } }).terms).toBe('UK')
    expect(
      readRounds('UK terms are used.\nRound 2: Dc in each st to end.', { after: { stitches: 12 } }).terms,
    ).toBe('UK')
    expect(codes('Rnd 2: Dc in each st around.')).toEqual(['rounds/terms-unclear'])
    expect(codes('Rnd 2: Sc in next 6 sts, htr in next 6 sts.')).toEqual(['rounds/mixed-terms'])
    expect(codes('Rnd 2: Sc in each st around.')).toEqual([])
  })
})
