/** Charts of every motif in written rounds that the tree has: symbols that lie on each other, and how evenly they stand. */
import { describe, expect, it } from 'vitest'
import { chartFigures, segmentFigures } from '../../../src-core/figures/chart'
import { angleOf } from '../../../src-core/motif/rounds/ground'
import type { LocatedRound } from '../../../src-core/motif/rounds/ground'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { corpus } from './chart-corpus'
import { crossings } from './crossings'

const ROOM = { width: 186, height: 200, hand: 'right', style: 'ink' } as const

const drawn = corpus().flatMap((motif) => {
  const drawing = roundsAccount(motif, { hand: 'right', terms: 'US', growth: 0 }).drawing()
  return drawing
    ? [{ id: motif.id, ...drawing, figures: chartFigures(drawing.located, drawing.beginning, ROOM) }]
    : []
})

/**
 * Pairs of symbols that lie on each other, at most. Crossed stitches cross, and so do posts of a round with what stands
 * on their tops; elsewhere one dot lies on what it joins. Only ever taken off.
 */
const MOST_CROSSINGS: Readonly<Record<string, number>> = {
  'patterns x08': 1,
  'patterns-own o16': 8,
  'patterns-own w06': 2,
  'patterns-own x02': 2,
  'patterns-own f02': 1,
  'patterns-own f08': 2,
  'patterns-own f12': 5,
  'patterns-own f23': 1,
  'patterns-own f25': 1,
  'patterns-own f28': 1,
}

/**
 * Plain rounds that stand unevenly: on what leans itself, around posts of older rounds, or along a chain. Only ever
 * taken off.
 */
const UNEVEN: ReadonlySet<string> = new Set([
  'sampler round 7',
  'patterns d12 round 4',
  'patterns-own o17 round 2',
  'patterns-own o18 round 3',
  'patterns-own o29 round 2',
  'patterns-own q06 round 3',
  'patterns-own s01 round 4',
  'patterns-own t01 round 7',
  'patterns-own x03 round 2',
  'patterns-own x03 round 3',
  'patterns-own f27 round 2',
  'patterns-own f27 round 3',
  'patterns-own f27 round 4',
])

/** Largest and smallest gap between neighbours of a plain round: stitches and no chains, on stitches or the ring. */
function unevenness({ round, elements, petals, corners }: LocatedRound): number | null {
  const upright = elements.filter(({ element, chain }) => element.standing && chain.length === 0)
  const plain = round.elements.every(
    ({ role, form, legs, into }) =>
      role !== 'space' && role !== 'picot' && form === 'plain' && legs === 1 && into[0]?.kind !== 'chain',
  )
  if (!plain || petals.length > 0 || corners > 0 || upright.length < 6 || round.turned) return null
  const turns = upright.map(({ top }) => angleOf(top)).sort((one, other) => one - other)
  const gaps = turns.map((turn, i) => (turns[i + 1] ?? turns[0]! + 2 * Math.PI) - turn)
  return Math.max(...gaps) / Math.min(...gaps)
}

describe('charts of the whole corpus', () => {
  it('have hardly a symbol that lies on another', () => {
    const over = drawn.flatMap(({ id, figures }) => {
      const found = figures.flatMap((figure) => crossings(figure))
      return found.length > (MOST_CROSSINGS[id] ?? 0) ? [`${id}: ${found.slice(0, 4).join(', ')}`] : []
    })
    expect(over).toEqual([])
    expect(drawn.length).toBeGreaterThan(110)
  })

  it('have repeats that show a part of the whole, and no symbol on another that is not so there', () => {
    const narrow = { ...ROOM, width: 123 }
    const repeats = drawn.flatMap(({ located, beginning }) =>
      segmentFigures(located, beginning, narrow).map((figure) => {
        const figures = chartFigures(located, beginning, narrow)
        const of = figures.find(({ rounds }) => figure.rounds.every((round) => rounds.includes(round)))!
        return { figure, of }
      }),
    )
    for (const { figure, of } of repeats) {
      const elements = new Set(of.marks.map(({ element }) => element))
      expect(figure.marks.every(({ element }) => elements.has(element))).toBe(true)
      expect(figure.marks.length).toBeLessThan(0.75 * of.marks.length)
      expect(crossings(figure).length).toBeLessThanOrEqual(crossings(of).length)
    }
    expect(repeats.length).toBeGreaterThan(4)
  })

  it('have the stitches of plain rounds at even distances', () => {
    const uneven = drawn.flatMap(({ id, located }) =>
      located.flatMap((round) => {
        const found = unevenness(round)
        const where = `${id} round ${round.round.number}`
        return found !== null && found > 1.6 && !UNEVEN.has(where) ? [`${where}: ${found.toFixed(2)}`] : []
      }),
    )
    expect(uneven).toEqual([])
  })
})
