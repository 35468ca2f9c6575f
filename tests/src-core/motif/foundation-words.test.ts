import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { foundationWords } from '../../../src-core/motif/rounds/foundation-words'
import { readMotif } from '../../../src-core/motif/rounds/read-motif'

const FIRST = 'ch 1, 12 sc in ring, join with sl st in first sc'
const ALONG = 'sc in 2nd ch from hook, sc in next 9 ch, 3 sc in last ch'

function words(
  foundation: RoundsMotif['foundation'],
  work = FIRST,
  terms: 'US' | 'UK' = 'US',
  hand: 'left' | 'right' = 'right',
) {
  const motif: RoundsMotif = { id: 'm', kind: 'rounds', foundation, rounds: [{ work }] }
  return foundationWords(motif, readMotif(motif, 'US'), terms, hand)
}

describe('the foundation in words', () => {
  it('says how the ring is made, in the chosen terms', () => {
    expect(words({ ring: 'chain', chains: 8 })).toBe('ch 8, join with sl st to form a ring')
    expect(words({ ring: 'chain', chains: 8 }, FIRST, 'UK')).toBe('8 ch, join with ss to form a ring')
    expect(words({ ring: 'adjustable' })).toBe('make an adjustable ring (magic ring)')
    expect(words({ ring: 'stitch' }, 'ch 1, 6 sc in ch')).toMatch(/^ch 1 loosely/)
  })

  it.each([
    ['colour A', 'with A, ch 5, join with sl st to form a ring'],
    ['color B', 'with B, ch 5, join with sl st to form a ring'],
    ['main color', 'with MC, ch 5, join with sl st to form a ring'],
    ['petals', 'ch 5, join with sl st to form a ring'],
    [undefined, 'ch 5, join with sl st to form a ring'],
  ])('names the colour that its rounds call by a letter: %s', (slot, expected) => {
    const rounds = [
      { slot, work: FIRST },
      { slot: 'colour C', work: 'sc in each sc around' },
    ]
    const foundation = { ring: 'chain', chains: 5 }
    const motif: RoundsMotif = { id: 'm', kind: 'rounds', foundation, rounds }
    expect(foundationWords(motif, readMotif(motif, 'US'), 'US', 'right')).toBe(expected)
  })

  it('says which way a chain is worked along first, by hand', () => {
    expect(words({ chain: 11 }, ALONG)).toMatch(/^ch 11, worked on both sides: first .* from right to left/)
    expect(words({ chain: 11 }, ALONG, 'US', 'left')).toContain('from left to right')
  })

  it('says nothing where round 1 makes its own, or nothing is known', () => {
    const own = `ch 6, join with sl st to form ring, ${FIRST}`
    expect(words(undefined, own)).toBe('')
    expect(words({ ring: 'stitch' }, 'ch 2, 6 sc in 2nd ch from hook, join with sl st in first sc')).toBe('')
    expect(words(undefined)).toBe('')
    expect(words({ ring: 'chain' })).toBe('')
  })
})
