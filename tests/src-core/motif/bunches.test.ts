/** Clusters, puffs, popcorns and bobbles: as named, as explained, else as is usual (common practice, no source). */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { roundsAccount } from '../../../src-core/motif/rounds/account'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }

const account = (round: string, special?: string) => {
  const motif: RoundsMotif = {
    id: 'm',
    kind: 'rounds',
    gauge: GAUGE,
    foundation: { ring: 'chain', chains: 6 },
    special,
    rounds: [
      { work: 'ch 1, 8 sc in ring, join with sl st in first sc' },
      { work: `${round}; rep from * around, join with sl st in first st` },
    ],
  }
  return roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 })
}

const bunch = (round: string, special?: string) => {
  const { located, findings, account: told } = account(round, special)
  const found = located[1]!.round.elements.find((element) => element.form !== 'plain')!
  const notes = findings.filter((entry) => entry.code === 'motif/legs-assumed')
  return { legs: found.legs, stitch: found.stitch, notes, stitches: told!.stitches['']! }
}

describe('bunches of a size that nothing tells', () => {
  it.each([
    ['cl', 3, 'dc'],
    ['puff st', 3, 'hdc'],
    ['popcorn', 5, 'dc'],
    ['bobble', 5, 'dc'],
    ['tr cl', 3, 'tr'],
  ] as const)('a %s is taken as %i %s together, and noted once', (word, legs, stitch) => {
    const found = bunch(`ch 1, *${word} in next st, ch 2`)
    expect(found).toMatchObject({ legs, stitch })
    expect(found.notes).toHaveLength(1)
    expect(found.notes[0]!.message).toContain(`${legs} ${stitch} worked together, as is common`)
    expect(found.notes[0]!.target).toMatchObject({ motif: 'm', round: 2 })
    expect(found.stitches[stitch]).toBe(8 * legs)
  })

  it('take yarn and room for their legs', () => {
    const metres = (word: string) => account(`ch 1, *${word} in next st, ch 2`).account!.metres['']!
    expect(metres('popcorn')).toBeGreaterThan(metres('cl'))
    expect(metres('cl')).toBeGreaterThan(metres('dc'))
    expect(metres('3-dc cl')).toBeCloseTo(metres('cl'), 9)
  })
})

describe('bunches of a size that is told', () => {
  it.each([
    ['4-dc cl', 4, 'dc'],
    ['5-tr popcorn', 5, 'tr'],
    ['dc3tog', 3, 'dc'],
  ] as const)('%s by its name', (word, legs, stitch) => {
    expect(bunch(`ch 1, *${word} in next st, ch 2`)).toMatchObject({ legs, stitch, notes: [] })
  })

  it.each([
    ['Popcorn: 4 dc in same st, drop loop, insert hook in first dc, draw loop through.', 'popcorn', 4, 'dc'],
    [
      'Puff: (yo, insert hook, draw up a loop) 5 times in same st, yo and draw through all lps.',
      'puff',
      5,
      'hdc',
    ],
    ['Cl: dc4tog in same st.', 'cl', 4, 'dc'],
  ] as const)('"%s" by its explanation', (special, word, legs, stitch) => {
    expect(bunch(`ch 1, *${word} in next st, ch 2`, special)).toMatchObject({ legs, stitch, notes: [] })
  })
})
