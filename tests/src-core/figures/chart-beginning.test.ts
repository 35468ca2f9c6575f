/** What a motif begins with, as its chart draws it: the ring as wide as the round around it needs. */
import { describe, expect, it } from 'vitest'
import { chartFigures } from '../../../src-core/figures/chart'
import { ringRadius } from '../../../src-core/figures/chart/beginning'
import { radiusOf } from '../../../src-core/motif/rounds/ground'
import { workedMotif } from '../motif/written-motif'
import { crossings } from './crossings'

/** Stitch widths from the middle: the ring's own edge, and where the stitches in it begin. */
function drawnRing(chains: number | null, rounds: readonly string[]) {
  const foundation = chains === null ? { ring: 'adjustable' } : { ring: 'chain', chains }
  const { located, beginning } = workedMotif(rounds, foundation).drawing()!
  const feet = located[0]!.elements.map(({ base }) => radiusOf(base) / beginning.stitchWidth)
  const room = { hand: 'right', style: 'ink', width: 170, height: 170 } as const
  return {
    ring: ringRadius(beginning, located[0]) / beginning.stitchWidth,
    feet: Math.min(...feet),
    crossings: chartFigures(located, beginning, room).flatMap(crossings),
  }
}

const JOIN = 'join with sl st in first st'

describe('the ring of a chart', () => {
  it.each([
    ['of 20 chains under 36 sc', 20, [`ch 1, 36 sc in ring, ${JOIN}`]],
    ['that is adjustable under 40 sc', null, [`ch 1, 40 sc in ring, ${JOIN}`]],
    ['that is adjustable under 30 dc', null, [`ch 3 (counts as dc), 29 dc in ring, ${JOIN}`]],
    ['under loops', null, [`*sc in ring, ch 5; rep from * 11 more times, ${JOIN}`]],
  ] as const)('%s is drawn out to its stitches', (_, chains, rounds) => {
    const { ring, feet, crossings: found } = drawnRing(chains, rounds)
    expect(feet).toBeGreaterThan(1.5)
    expect(feet - ring).toBeLessThan(0.6)
    expect(feet - ring).toBeGreaterThan(0.05)
    expect(found).toEqual([])
  })

  it('stays as it is where its stitches begin beside it', () => {
    expect(drawnRing(null, [`ch 1, 6 sc in ring, ${JOIN}`]).ring).toBeCloseTo(0.3, 6)
    expect(drawnRing(6, [`ch 3 (counts as dc), 15 dc in ring, ${JOIN}`]).ring).toBeCloseTo(
      6 / (2 * Math.PI),
      6,
    )
  })

  it('of few chains is drawn no more than twice as wide', () => {
    const { ring, feet } = drawnRing(4, [`ch 1, 30 sc in ring, ${JOIN}`])
    expect(feet).toBeGreaterThan(3)
    expect(ring).toBeCloseTo((2 * 4) / (2 * Math.PI), 6)
  })
})
