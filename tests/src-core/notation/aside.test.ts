/** Remarks of a chatty page between and behind rounds. (Common practice, no source.) */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

const read = (remark: string) =>
  readRounds(
    `Rnd 1: 6 sc in magic ring. (6 sc)\n${remark}\nRnd 2: 2 sc in each st around. (12 sc) ${remark}`,
    { terms: 'US' },
  )

describe('A remark to the reader', () => {
  it.each([
    'So each petal sits in one sc, with a plain sc between it and the next petal.',
    "They'll flop about at this stage.",
    'It should look like a small cup now.',
    'You may want a smaller hook.',
    "Don't panic.",
    'If yours ruffles, your stitches may be loose.',
    "You're doing great!",
    'There is no need to cut the yarn.',
  ])('is no instruction: %s', (remark) => {
    const { findings, rounds } = read(remark)
    expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(rounds.map(({ made }) => made)).toEqual([6, 12])
  })

  it('is held against the round where it tells a count', () => {
    expect(read('You should have 9 sc now.').findings.map(({ code }) => code)).toContain(
      'rounds/wrong-end-count',
    )
  })

  it('leaves what is worked to be read', () => {
    const { rounds } = readRounds(
      'Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: Go round twice in each st: *2 sc in next st; rep from * around. (12 sc)',
      { terms: 'US' },
    )
    expect(rounds.map(({ made }) => made)).toEqual([6, 12])
  })
})
