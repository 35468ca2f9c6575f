/** Words that cannot be read are told, never passed in silence; the account goes on from the count that the text states. */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const RING = 'Rnd 1: Magic ring, ch 1, 6 sc in ring; join. (6 sc)\n'

const told = (round: string) => {
  const { rounds, findings } = readRounds(`${RING}Rnd 2: ${round}\nRnd 3: Ch 1, sc in each st around; join.`)
  const words = findings.map(({ code, where }) => [code, /"(.*)"/.exec(where)?.[1]])
  return { words, made: rounds.map(({ made }) => made) }
}

describe('words that cannot be read', () => {
  it('are a slip where a single one stands in the middle of a round', () => {
    expect(told('Ch 1, *2 sc in next st, glub; rep from * around; join. (12 sc)')).toEqual({
      words: [['rounds/unknown-abbreviation', 'glub']],
      made: [6, null, 12],
    })
    expect(told('Ch 1, *2 sc in next stt; rep from * around; join. (12 sc)').words).toEqual([
      ['rounds/unknown-abbreviation', 'stt'],
    ])
    expect(told('Ch 1, *2 sc in nexr st; rep from * around; join. (12 sc)').words).toEqual([
      ['rounds/unknown-abbreviation', 'in nexr st'],
    ])
  })

  it('leave the round as the text counts it where they tell of stitches', () => {
    expect(
      told('Ch 1, sc in next 3 sts, make the corner as in the photo, sc in last 3 sts; join. (10 sc)'),
    ).toEqual({ words: [['rounds/taken-as-stated', 'make the corner as in the photo']], made: [6, 10, 10] })
    expect(told('Ch 1, sc in next 2 sts. Continue in this way around. (12 sc)')).toEqual({
      words: [['rounds/taken-as-stated', 'Continue in this way around']],
      made: [6, 12, 12],
    })
  })

  it('leave it uncounted where no count is told, or one that is too small for the rest alone', () => {
    expect(told('Ch 1, sc in next 3 sts, make the corner as in the photo, sc in last 3 sts; join.')).toEqual({
      words: [['rounds/not-read', 'make the corner as in the photo']],
      made: [6, null, null],
    })
    expect(told('Ch 1, 2 sc in next 6 sts, make the corner as in the photo; join. (10 sc)').words).toEqual([
      ['rounds/not-read', 'make the corner as in the photo'],
    ])
  })

  it('are passed over and noted where the stated count confirms the rest', () => {
    expect(
      told('Ch 1, 2 sc in next st, work rather loosely from here on, 2 sc in each rem st; join. (12 sc)'),
    ).toEqual({
      words: [['rounds/words-passed', 'work rather loosely from here on']],
      made: [6, 12, 12],
    })
  })

  it.each([
    'Ch 1, 2 sc in each st around, making sure not to twist; join. Weave in ends. (12 sc)',
    'Ch 1, 2 sc in first st, mark the st just made, 2 sc in each st around, covering the tail; join. Enjoy! (12 sc)',
    'Ch 1, *2 sc in next st, loosely; rep from * around; join. Pull the tail tight and sew it down. (12 sc)',
  ])('are asides in "%s"', (round) => {
    expect(told(round)).toEqual({ words: [], made: [6, 12, 12] })
  })
})

it('of how often something is made are told, not passed', () => {
  const { words } = told('Ch 1, 2 sc in each st around, picot every 4th stitch; join. (12 sc, 3 picots)')
  expect(words).toEqual([['rounds/taken-as-stated', 'every 4th stitch']])
})

it('on how to work alone leave the count as it is, stated or not', () => {
  expect(told('Ch 1, 2 sc in each st around, working over the tail as you go; join.').made).toEqual([
    6, 12, 12,
  ])
})

describe('a part that only refers to another', () => {
  it.each([
    'Work as for First Motif through Rnd 2, joining at the corners.',
    'Work Rounds 1–2. On Round 2, to join a corner replace “ch 5” with “ch 2, sl st in corresponding ch-5 sp, ch 2”.',
  ])('is noted and not counted: %s', (words) => {
    const text = `FIRST MOTIF
Rnd 1: Magic ring, ch 1, 8 sc in ring; join. (8 sc)
Rnd 2: Ch 1, (sc, ch 5, sc) in each st around; join. (16 sc, 8 ch-5 sps)

ALL OTHER MOTIFS
${words}`
    const { rounds, findings } = readRounds(text)
    expect(findings.map(({ code }) => code)).toEqual(['rounds/part-in-prose'])
    expect(rounds.map(({ made }) => made)).toEqual([8, 16])
  })
})
