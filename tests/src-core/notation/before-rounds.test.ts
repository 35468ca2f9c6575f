/** What stands before the first round and at the seams: rings, yarn in a sentence, prose, counts before "Fasten off". */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'
import type { Terms } from '../../../shared-types/project'

const told = (text: string, terms: Terms) => {
  const { findings, rounds } = readRounds(text, { terms })
  return {
    marked: findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code),
    made: rounds.map(({ made }) => made),
  }
}

const ROUND_US = 'Rnd 1: Ch 1, 10 sc in ring; join with sl st in first sc. (10 sc)'
const ROUND_UK = 'Round 1: 1ch, 10dc into ring, ss to first dc. (10dc)'

describe('the ring before the first round (wordings of our own)', () => {
  it.each([
    [`FAN TRIVET\n\nCh 5, join with sl st in first ch to form a ring.\n${ROUND_US}`, 'US'],
    [`Directions\nWith B, ch 5; join with sl st in first ch to form ring.\n${ROUND_US}`, 'US'],
    [`INSTRUCTIONS\nCh 5; join with sl st to form ring.\n${ROUND_US}`, 'US'],
    [`Using cream yarn chain 5, sl st in first ch to form a ring.\n${ROUND_US}`, 'US'],
    [`Rosette\n\nWith 4mm hook make 5ch and join into a ring with ss.\n${ROUND_UK}`, 'UK'],
    [`UK abbreviations: tr = treble.\n\nWith teal 4-ply cotton 5ch, ss to form ring.\n${ROUND_UK}`, 'UK'],
    [
      `TRIVET\nEach round is worked in another colour. Begin each round with 1ch.\nA pair = 2tr in same place.\n\nMake a magic ring.\n${ROUND_UK}`,
      'UK',
    ],
  ] as const)('is there: %s', (text, terms) => {
    expect(told(text, terms)).toEqual({ marked: [], made: [10] })
  })
})

describe('a colour without a word for joining', () => {
  it.each([
    'Round 2: Colour 2, in any dc. 1ch, 2dc in same place, 2dc in each dc to end, ss to first dc. 20dc.',
    'Round 2: Yarn B. 1ch, 2dc in same place, 2dc in each dc to end, ss to first dc. 20dc.',
    'Round 2: In any dc. 1ch, 2dc in same place, 2dc in each dc to end, ss to first dc. 20dc.',
  ])('begins where it is said: %s', (round) => {
    expect(told(`Make a magic ring.\n${ROUND_UK}\n${round}`, 'UK')).toEqual({ marked: [], made: [10, 20] })
  })

  it('counts pairs that a note explains, and works between them', () => {
    const text = [
      'A pair = 2tr in same place. 3ch at the start of a round counts as 1tr.',
      '',
      'Round 1: 4ch, ss to make a ring. 3ch, 1tr into ring, 1ch, (2tr into ring, 1ch) 3 times, ss to top of 3ch. 4 pairs.',
      'Round 2: Colour 2, in any 1ch sp. 3ch, (1tr, 1ch, 2tr) in same sp, 2tr between next two pairs, *(2tr, 1ch, 2tr) in next 1ch sp, 2tr between next two pairs; rep from * twice more, ss to top of 3ch.',
    ].join('\n')
    expect(told(text.split('\n').slice(2).join('\n'), 'UK').made).toEqual([8, 24])
  })
})

describe('a count that is not the last sentence', () => {
  const first = 'Rnd 1: Ch 1, 10 sc in magic ring; join with sl st in first sc. (10 sc)'
  const body = 'Rnd 2: Ch 1, *sc in next sc, 2 sc in next sc; rep from * around; join with sl st in first sc'
  it.each([`${body}. 15 sc. Fasten off.`, `${body}: 15 sc. Fasten off.`, `${body}: 15 sc. Cut yarn.`])(
    'is no work: %s',
    (round) => {
      expect(told(`${first}\n${round}`, 'US')).toEqual({ marked: [], made: [10, 15] })
    },
  )

  it('is held against what the round makes', () => {
    expect(told(`${first}\n${body}. 16 sc. Fasten off.`, 'US').marked).toEqual(['rounds/wrong-end-count'])
  })
})
