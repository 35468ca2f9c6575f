import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { areaDistance, indexEdges, insideDistance } from '../../../src-core/geometry/edges'
import { placeOutline } from '../../../src-core/geometry/place'
import { distanceOf, distanceWithin } from '../../../src-core/layout/applique/remembered'
import { petalOutline } from '../../../src-core/motif/outlines'

const flower = petalOutline(6, 30, 20)
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const place = fc.record({ x: number(-80, 80), y: number(-80, 80), turn: number(0, 360) })

describe('remembered distances', () => {
  it('are those that are measured anew, whatever limits were asked for before', () => {
    const limits = fc.array(fc.oneof(number(0.1, 150), fc.constant(Infinity)), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(place, place, limits, (one, other, asked) => {
        const [a, b] = [indexEdges(placeOutline(flower, one)), indexEdges(placeOutline(flower, other))]
        for (const limit of asked)
          expect(distanceOf(a, b, limit)).toBeCloseTo(Math.min(limit, areaDistance(a, b)), 9)
      }),
      { numRuns: 200 },
    )
  })

  it('are measured anew on another panel', () => {
    const panel = (half: number) =>
      indexEdges([
        { x: -half, y: -half },
        { x: half, y: -half },
        { x: half, y: half },
        { x: -half, y: half },
      ])
    const own = indexEdges(placeOutline(flower, { x: 20, y: 10, turn: 5 }))
    for (const outer of [panel(100), panel(60), panel(40), panel(60)]) {
      expect(distanceWithin(own, outer)).toBe(insideDistance(own, outer))
      expect(distanceWithin(own, outer)).toBe(insideDistance(own, outer))
    }
  })
})
