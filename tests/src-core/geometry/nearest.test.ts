import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { areaDistance, indexEdges, insideDistance, lineDistance } from '../../../src-core/geometry/edges'
import { areaGap, insideGap, lineGap } from '../../../src-core/geometry/nearest'
import { placeOutline } from '../../../src-core/geometry/place'
import { distance, distanceToEdge } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { petalOutline } from '../../../src-core/motif/outlines'

const flower = petalOutline(5, 32, 20)
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const place = fc.record({ x: number(-90, 90), y: number(-90, 90), turn: number(0, 360) })
const laid = (at: { x: number; y: number; turn: number }) => indexEdges(placeOutline(flower, at))
/** Distance of a point from the line of an outline, edge by edge. */
const off = (outline: Outline, point: { x: number; y: number }) =>
  Math.min(...outline.map((a, i) => distanceToEdge(point, a, outline[(i + 1) % outline.length]!)))

describe('where outlines come nearest', () => {
  it('is as far as their distance, and ends on both lines', () => {
    fc.assert(
      fc.property(place, place, (one, other) => {
        const [a, b] = [laid(one), laid(other)]
        const gap = lineGap(a, b)!
        expect(gap.distance).toBeCloseTo(lineDistance(a, b), 9)
        expect(distance(gap.from, gap.to)).toBeCloseTo(gap.distance, 9)
        expect(off(a.outline, gap.from)).toBeLessThan(1e-6)
        expect(off(b.outline, gap.to)).toBeLessThan(1e-6)
      }),
      { numRuns: 150 },
    )
  })

  it('is no distance where areas overlap, and nothing beyond a limit', () => {
    fc.assert(
      fc.property(place, place, number(1, 60), (one, other, limit) => {
        const [a, b] = [laid(one), laid(other)]
        const far = areaDistance(a, b)
        const gap = areaGap(a, b, limit)
        if (far >= limit) expect(gap).toBeNull()
        else expect(gap!.distance).toBeCloseTo(far, 9)
      }),
      { numRuns: 150 },
    )
  })

  it('tells inside a panel what the distance tells, below zero from the corner that sticks out farthest', () => {
    const panel = indexEdges([
      { x: -100, y: -70 },
      { x: 100, y: -70 },
      { x: 100, y: 70 },
      { x: -100, y: 70 },
    ])
    fc.assert(
      fc.property(place, (at) => {
        const own = laid(at)
        expect(insideGap(own, panel).distance).toBeCloseTo(insideDistance(own, panel), 9)
      }),
      { numRuns: 150 },
    )
  })
})
