/**
 * §patterns-corpus: whole patterns as they stand on the page (`tests/fixtures/patterns.jsonl`, and `patterns-own.jsonl` and `patterns-fresh.jsonl` of later), worded by us, with
 * their accounts or the slip that a tech editor would mark. Common practice, no source; counted by hand.
 */
import { describe, expect, it } from 'vitest'
import { readRounds } from '../../src-core/notation/read'
import { judge, loadPatterns, summary } from './whole-patterns'

/** Patterns that are not read right yet, by file. Only ever taken off this list. */
const NOT_YET: Readonly<Record<string, readonly string[]>> = {
  patterns: [],
  'patterns-own': [],
  // By hands that knew no code.
  'patterns-fresh': [
    'c207',
    'e218',
    'e219',
    'd208',
    'd216',
    'd235',
    'h405',
    'h407',
    'h409',
    'h417',
    'h432',
    'h444',
    'h450',
    'h516',
    'h723',
    'h1121',
    'h1313',
    'h1503',
    'h1907',
    'h1915',
    'h2104',
    'h2120',
    'h2420',
    'h2706',
    'h2503',
    'h2505',
    'h2507',
    'h2513',
    'h2516',
    'h2518',
    'h2521',
    'h3123',
    'h3124',
    'h3716',
    'h3802',
    'h4005',
    'h4804',
    'h5205',
    'h5815',
    'h6003',
    'h5909',
    'h5912',
    'h5913',
    'h7907',
    'h7932',
    'h8436',
  ],
}

describe.each(Object.keys(NOT_YET))('whole patterns (%s.jsonl)', (name) => {
  const verdicts = loadPatterns(name).map(judge)

  it(`are read as a tech editor reads them, but for those on the list: ${summary(verdicts)}`, () => {
    const wrong = verdicts.filter(({ clean }) => !clean)
    expect(wrong.map(({ id }) => id)).toEqual(NOT_YET[name])
  })
})

describe('a round told in prose', () => {
  const text = `Rnd 1: Magic ring, ch 1, 6 sc in ring; join with sl st in first sc. (6 sc)
Rnd 2: Continue in this way, doubling the stitches. (12 sc)
Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around; join with sl st in first sc. (18 sc)`

  it('is marked as unread, and the account goes on from the count that the text states', () => {
    const { rounds, findings } = readRounds(text)
    expect(findings.map(({ code, target }) => [code, target?.round])).toEqual([['rounds/not-read', 2]])
    expect(rounds.map(({ made }) => made)).toEqual([6, null, 18])
  })
})
