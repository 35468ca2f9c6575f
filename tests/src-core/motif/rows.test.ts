/** Motifs worked back and forth: counted as written, and told that what is drawn closes. Texts of our own. */
import { describe, expect, it } from 'vitest'
import { workedMotif } from './written-motif'

const RING = { ring: 'chain', chains: 4 } as const
const codes = (rounds: string[]) => workedMotif(rounds, RING).findings.map(({ code }) => code)

describe('a motif in rows', () => {
  it('is told to be one, and not that it ruffles or that petals are too full', () => {
    const half = [
      'Ch 4 (counts as dc and ch 1), dc in ring, *ch 1, dc in ring; rep from * 3 more times, turn.',
      'Ch 3 (counts as dc), 4 dc in each of next 5 ch-1 sps, dc in 3rd ch of beg ch-4, turn.',
      'Ch 3 (counts as dc), dc in next dc, 3 dc in next dc, *dc in next 2 dc, 3 dc in next dc; rep from * across to last st, dc in last st.',
    ]
    expect(codes(half)).toEqual(['motif/in-rows'])
  })

  it('is none where rounds are joined and turned, or go on in a spiral', () => {
    const joined = ', join with sl st in first sc, turn'
    expect(codes([`Ch 1, 8 sc in ring${joined}.`, `Ch 1, 2 sc in each sc around${joined}.`])).not.toContain(
      'motif/in-rows',
    )
    expect(codes(['8 sc in ring.', '2 sc in each sc around.'])).not.toContain('motif/in-rows')
  })
})
