import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'
import { rewordRounds } from '../../../src-core/motif/rounds/reword'

const MOTIF: RoundsMotif = {
  id: 'm',
  kind: 'rounds',
  special: 'Twin: (Single crochet, half double crochet) in same stitch',
  rounds: [
    { work: 'Special stitches: Picot: Ch 3, slip stitch in first chain' },
    { work: 'Ch 6, join with sl st to form ring, 12 single crochet in ring, join' },
    { work: '' },
    { work: 'Rnd 2: *twin in next stitch, skip next stitch*, repeat from * to * 5 times more, join' },
    { work: 'Rnds 3 and 4: *sc in next st, 2 sc in next st; rep from * around; join' },
    { work: 'Rep Rnd 3' },
  ],
}
const worked = (motif: RoundsMotif) => {
  const { worked: rounds, entries } = readMotif(motif, 'US')
  return rounds.map(({ number, stitches }, i) => [number, stitches, entries[i]])
}

describe('rounds in another wording', () => {
  it.each(['consistent', 'expanded'] as const)('%s: every entry keeps its own rounds and counts', (style) => {
    const words = rewordRounds(MOTIF, 'US', style)!
    expect(words).toHaveLength(6)
    // What explains stitches and what is not written yet stay as they are.
    expect(words[0]).toBe(MOTIF.rounds![0]!.work)
    expect(words[2]).toBe('')
    expect(words[1]).toMatch(/12 sc in ring/)
    const again = { ...MOTIF, rounds: words.map((work) => ({ work })) }
    expect(worked(again)).toEqual(worked(MOTIF))
    expect(readMotif(again, 'US').findings.map(({ code }) => code)).toEqual(
      readMotif(MOTIF, 'US').findings.map(({ code }) => code),
    )
    expect(rewordRounds(again, 'US', style)).toEqual(words)
  })
})
