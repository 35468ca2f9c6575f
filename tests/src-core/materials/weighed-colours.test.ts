/** M41: what was weighed by colour, whichever of measures and written rounds a motif goes by. */
import { describe, expect, it } from 'vitest'
import type { Motif } from '../../../shared-types/project'
import { motifYarn } from '../../../src-core/materials/motif-yarn'
import { daisy, flower, flowerAccount } from './helpers'

const told = (motif: Motif) => {
  const { slots, findings } = motifYarn(motif, flowerAccount, 'motif m1')
  return {
    amounts: Object.fromEntries(slots.map(({ slot, source, amount }) => [slot, [source, amount.expected]])),
    lost: findings.filter(({ code }) => code === 'yarn/weighed-other-colours'),
  }
}
const beside = (more: object): Motif => ({ ...flower, ...more }) as Motif

describe('M41 written rounds of a motif that was weighed by colour', () => {
  it('keep the grams of the colours that were weighed, and count the others by their stitches', () => {
    const one = told(beside({ slots: [{ slot: 'centre', grams: 0.8 }, { slot: 'petals' }] }))
    expect(one).toEqual({ amounts: { centre: ['weighed', 0.8], petals: ['stitches', 6] }, lost: [] })
  })

  it('leave the rest of a whole weight to the colours that were not weighed by themselves', () => {
    const { amounts, lost } = told(
      beside({ slots: [{ slot: 'centre', grams: 0.8 }], weighed: { motifs: 10, grams: 42 } }),
    )
    expect(amounts['centre']).toEqual(['weighed', 0.8])
    expect(amounts['petals']![1]).toBeCloseTo(3.4, 9)
    expect(lost).toEqual([])
  })

  it('go by the shares of a whole weight where there are any', () => {
    const weighed = { motifs: 1, grams: 5, shares: { centre: 0.1, petals: 0.9 } }
    const { amounts, lost } = told(beside({ slots: daisy.slots, weighed }))
    expect(amounts['centre']![1]).toBeCloseTo(0.5, 9)
    expect(amounts['petals']![1]).toBeCloseTo(4.5, 9)
    expect(lost).toEqual([])
  })

  it.each([
    [
      'grams',
      {
        slots: [
          { slot: 'middle', grams: 0.8 },
          { slot: 'rim', grams: 3.4 },
        ],
      },
    ],
    ['shares', { weighed: { motifs: 1, grams: 4.2, shares: { middle: 0.2, rim: 0.8 } } }],
  ])('tell of %s of colours that no round has, by name', (_, more) => {
    const { lost } = told(beside(more))
    expect(lost).toHaveLength(1)
    expect(lost[0]!.message).toContain('what was weighed of middle and rim counts for nothing')
    expect(lost[0]!.target).toEqual({ motif: 'm1' })
  })

  it('say nothing once every colour is known, where one weight is all of one colour, or before a round is written', () => {
    const shares = { middle: 0.2, rim: 0.8, centre: 0.3, petals: 0.7 }
    expect(told(beside({ weighed: { motifs: 1, grams: 4.2, shares } })).lost).toEqual([])
    const single = { rounds: [{ slot: 'all', work: '18 sc in ring' }] }
    expect(told(beside({ ...single, weighed: { motifs: 1, grams: 4.2, shares: { rim: 1 } } })).lost).toEqual(
      [],
    )
    expect(told(beside({ rounds: [], slots: daisy.slots })).lost).toEqual([])
  })

  it.each([[null], ['x'], [[null, 3, { slot: 4, grams: 'x' }, { slot: 'centre', grams: -1 }]]])(
    'leave out what is no weight: %j',
    (slots) => expect(told(beside({ slots }))).toEqual(told(flower)),
  )
})

describe('M41 a measured motif that was weighed by its rounds', () => {
  it('tells of shares of colours that it does not have', () => {
    const slots = [{ slot: 'middle' }, { slot: 'rim' }]
    const weighed = { motifs: 1, grams: 4.2, shares: { centre: 0.2, petals: 0.8 } }
    expect(told({ ...daisy, slots, weighed }).lost[0]!.message).toContain('weighed of centre and petals')
    const same = [{ slot: 'centre' }, { slot: 'petals' }]
    const { amounts, lost } = told({ ...daisy, slots: same, weighed })
    expect(amounts['centre']![1]).toBeCloseTo(0.84, 9)
    expect(lost).toEqual([])
  })
})
