/** A list of abbreviations that the trade knows anyway explains no stitch of its own. (Common practice, no source.) */
import { expect, it } from 'vitest'
import { readRounds } from '../../../src-core/notation/read'

it('leaves chains to be chains where the list explains "ch-sp" and "st(s)"', () => {
  const { findings, rounds } = readRounds(
    `Abbreviations: ch = chain; ch-sp = chain space; tr = treble; ss = slip stitch; st(s) = stitch(es).

Foundation: 4ch, join with ss into a ring.
Rnd 1: 3ch, 2tr into ring, 2ch, [3tr into ring, 2ch] 3 times, ss into 3rd of 3ch. 12tr, 4 2ch-sps
Rnd 2: 3ch, 1tr into each of next 2tr, (2tr, 2ch, 2tr) into 2ch-sp, [1tr into each of next 3tr, (2tr, 2ch, 2tr) into 2ch-sp] 3 times, ss into 3rd of 3ch. 28tr`,
    { terms: 'UK' },
  )
  expect(findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  expect(rounds.map(({ made, spaces }) => [made, spaces])).toEqual([
    [12, { 'ch-2': 4 }],
    [28, { 'ch-2': 4 }],
  ])
})
