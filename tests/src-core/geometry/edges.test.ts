import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  areaDistance,
  edgeDistance,
  indexEdges,
  insideDistance,
  lineDistance,
  pointDistance,
  selfCrossing,
} from '../../../src-core/geometry/edges'
import { contains, moveOutline, scaleOutline } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { sharedArea } from '../../../src-core/geometry/polygons'
import { petalOutline, roundOutline } from '../../../src-core/motif/outlines'

const square = (size: number, x = 0, y = 0): Outline => [
  { x, y },
  { x: x + size, y },
  { x: x + size, y: y + size },
  { x, y: y + size },
]
const areas = (a: Outline, b: Outline, limit?: number) => areaDistance(indexEdges(a), indexEdges(b), limit)

/** Every edge against every edge: slow, and hard to get wrong. */
function bruteDistance(a: Outline, b: Outline): number {
  if (contains(a, b[0]!) || contains(b, a[0]!)) return 0
  let best = Infinity
  a.forEach((p, i) =>
    b.forEach((q, k) => {
      best = Math.min(best, edgeDistance(p, a[(i + 1) % a.length]!, q, b[(k + 1) % b.length]!))
    }),
  )
  return best
}

/** Any star-shaped outline, from a triangle to thirty corners. */
const star = fc
  .tuple(fc.array(fc.double({ min: 0.2, max: 1, noNaN: true }), { minLength: 3, maxLength: 30 }), fc.double({ min: 0, max: 6, noNaN: true }))
  .map(([radii, from]): Outline =>
    radii.map((radius, i) => {
      const angle = from + (2 * Math.PI * i) / radii.length
      return { x: radius * Math.cos(angle), y: radius * Math.sin(angle) }
    }),
  ) // prettier-ignore

describe('distance of outlines', () => {
  it('is the gap between sides, and the diagonal between corners', () => {
    expect(areas(square(10), square(10, 13, 2))).toBeCloseTo(3, 12)
    expect(areas(square(10), square(10, 13, 14))).toBeCloseTo(5, 12)
  })

  it('is 0 where they cross, touch, or one lies in the other', () => {
    for (const other of [square(10, 5, 5), square(10, 10, 0), square(2, 4, 4), square(40, -10, -10)])
      expect(areas(square(10), other)).toBe(0)
    // The lines of nested outlines keep a distance all the same.
    expect(lineDistance(indexEdges(square(2, 4, 3)), indexEdges(square(10)))).toBeCloseTo(3, 12)
  })

  it('of petals tip to tip is the distance of centres less both tip radii', () => {
    const flower = petalOutline(6, 40, 25)
    for (const d of [80.01, 83, 120]) expect(areas(flower, moveOutline(flower, 0, d))).toBeCloseTo(d - 80, 9)
  })

  it('is the same both ways and the same as every edge against every edge, from a micrometre to metres', () => {
    fc.assert(
      fc.property(
        star,
        star,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.constantFrom(1e-3, 1, 1e3),
        (one, two, dx, dy, scale) => {
          const a = scaleOutline(one, scale)
          const b = moveOutline(scaleOutline(two, scale), dx * scale, dy * scale)
          const expected = bruteDistance(a, b)
          expect(areas(a, b)).toBeCloseTo(expected, 9)
          expect(areas(b, a)).toBeCloseTo(expected, 9)
          // An independent library agrees on whether they overlap at all.
          if (scale === 1 && sharedArea([a], [b]) > 1e-3) expect(areas(a, b)).toBe(0)
          const limit = expected / 2 + 1e-9
          expect(areas(a, b, limit)).toBeCloseTo(Math.min(limit, expected), 9)
        },
      ),
      { numRuns: 500 },
    )
  })

  it('to a point inside a square is the distance of the nearest side', () => {
    expect(pointDistance({ x: 3, y: 8 }, indexEdges(square(20)))).toBeCloseTo(3, 12)
  })
})

describe('distance inside a panel', () => {
  const panel = indexEdges(square(100))
  const kept = (outline: Outline, ground = panel) => insideDistance(indexEdges(outline), ground)

  it('is the smallest room to the edge', () => {
    expect(kept(moveOutline(roundOutline(10), 30, 60))).toBeCloseTo(20, 9)
    expect(kept(square(10, 0, 40))).toBeCloseTo(0, 12)
  })

  it('is below zero by how far something sticks out, wholly outside too', () => {
    expect(kept(square(10, -4, 40))).toBeCloseTo(-4, 12)
    expect(kept(square(10, 120, 40))).toBeCloseTo(-30, 12)
  })

  it('finds a corner of the panel that pokes into an item', () => {
    const notched = indexEdges([
      { x: 0, y: 0 },
      { x: 45, y: 0 },
      { x: 50, y: 30 },
      { x: 55, y: 0 },
      { x: 100, y: 0 },
      { x: 100, y: 100 },
      { x: 0, y: 100 },
    ])
    expect(kept(square(40, 30, 26), notched)).toBeCloseTo(-4, 12)
  })
})

describe('an outline that crosses itself', () => {
  const crossing = (points: Outline) => selfCrossing(indexEdges(points))
  it('is found: a bow tie, a loop, a side that runs back, a corner on a side', () => {
    const at = (...list: number[][]): Outline => list.map(([x, y]) => ({ x: x!, y: y! }))
    expect(crossing(at([0, 0], [10, 10], [10, 0], [0, 10]))).not.toBeNull()
    expect(crossing(at([0, 0], [10, 0], [10, 10], [4, 10], [4, -3], [0, -3]))).not.toBeNull()
    expect(crossing(at([0, 0], [10, 0], [4, 0], [4, 9]))).not.toBeNull()
    expect(crossing(at([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]))).not.toBeNull()
  })

  it('is none for flowers, squares and stars', () => {
    expect(crossing(petalOutline(8, 40, 20))).toBeNull()
    expect(crossing(square(7))).toBeNull()
    fc.assert(
      fc.property(star, (outline) => {
        expect(crossing(outline)).toBeNull()
      }),
    )
  })
})
