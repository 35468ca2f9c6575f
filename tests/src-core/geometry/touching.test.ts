import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { moveOutline, scaleOutline, turnOutline } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { grow, sharedArea } from '../../../src-core/geometry/polygons'
import { touchingDistance } from '../../../src-core/geometry/touching'
import type { Point } from '../../../shared-types/plan'
import { randomOutline, regular, testRandom } from './shapes'
import { runs } from '../../runs'

const EAST: Point = { x: 1, y: 0 }
const SOUTH: Point = { x: 0, y: 1 }

/** Area that two outlines share at a distance, by the general polygon library: independent of profiles. */
const overlap = (a: Outline, b: Outline, along: Point, lateral: number) => (d: number) =>
  sharedArea([a], [moveOutline(b, along.x * d - along.y * lateral, along.y * d + along.x * lateral)])

describe('M20 touching distance', () => {
  it('has closed forms: circles, squares, hexagons', () => {
    const square = regular(4, 10 * Math.SQRT2)
    const upright = turnOutline(square, Math.PI / 4)
    expect(touchingDistance(upright, upright, EAST)).toBeCloseTo(20, 10)
    expect(touchingDistance(upright, upright, SOUTH, 19.99)).toBeCloseTo(20, 10)
    expect(touchingDistance(upright, upright, SOUTH, 20.01)).toBeNull()
    const hexagon = regular(6, 10)
    expect(touchingDistance(hexagon, hexagon, EAST)).toBeCloseTo(10 * Math.sqrt(3), 10)
    expect(touchingDistance(hexagon, hexagon, SOUTH, 5 * Math.sqrt(3))).toBeCloseTo(15, 10)
    const circle = regular(144, 10)
    expect(touchingDistance(circle, circle, EAST)).toBeCloseTo(20, 10)
    expect(touchingDistance(circle, circle, SOUTH, 10)! / 20).toBeCloseTo(Math.sqrt(3) / 2, 10)
  })

  it('does not take a graze along a side for a touch', () => {
    const square = turnOutline(regular(4, 10 * Math.SQRT2), Math.PI / 4)
    expect(touchingDistance(square, square, SOUTH, 20)).toBeNull()
  })

  it('sees into a cup whose rim runs backwards', () => {
    const cup: Outline = [
      { x: -10, y: -10 },
      { x: 10, y: -10 },
      { x: 10, y: 10 },
      { x: 6, y: 10 },
      { x: 6, y: -6 },
      { x: -6, y: -6 },
      { x: -6, y: 10 },
      { x: -10, y: 10 },
    ]
    const stick: Outline = [
      { x: -2, y: -20 },
      { x: 2, y: -20 },
      { x: 2, y: 20 },
      { x: -2, y: 20 },
    ]
    expect(touchingDistance(cup, stick, SOUTH)).toBeCloseTo(14, 10)
    expect(touchingDistance(cup, stick, SOUTH, 5)).toBeCloseTo(30, 10)
  })

  it('agrees with a general polygon library on random outlines to 0.01 mm', () => {
    const random = testRandom(20)
    for (let round = 0; round < 400; round++) {
      const a = randomOutline(random, 5 + Math.floor(random() * 40))
      const b = randomOutline(random, 5 + Math.floor(random() * 40))
      const angle = random() * 2 * Math.PI
      const along = { x: Math.sin(angle), y: -Math.cos(angle) }
      const lateral = (random() - 0.5) * 120
      const fast = touchingDistance(a, b, along, lateral)
      const shared = overlap(a, b, along, lateral)
      // Sliding in from far away nothing overlaps until 0.01 mm before the touch; there outlines that are grown by
      // 0.005 mm do. (Grown, since two points that just catch each other share too little for the library's grid.)
      const last = fast ?? -110
      for (let d = 110; d > last + 0.01; d -= 0.5) expect(shared(d)).toBe(0)
      if (fast === null) continue
      expect(shared(fast + 0.01)).toBe(0)
      const grown = overlap(grow([a], 0.005)[0]!, grow([b], 0.005)[0]!, along, lateral)
      expect(grown(fast - 0.001)).toBeGreaterThan(0)
    }
  })

  it('is the same however the outline runs, and grows with it from 1e-3 to 1e3', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), fc.constantFrom(1e-3, 1e-1, 10, 1e3), (seed, factor) => {
        const random = testRandom(seed)
        const a = randomOutline(random, 24)
        const b = randomOutline(random, 17)
        const lateral = (random() - 0.5) * 60
        const plain = touchingDistance(a, b, EAST, lateral)!
        expect(touchingDistance([...a].reverse(), b, EAST, lateral)).toBeCloseTo(plain, 9)
        expect(
          touchingDistance(scaleOutline(a, factor), scaleOutline(b, factor), EAST, lateral * factor)! /
            factor,
        ).toBeCloseTo(plain, 6)
        // Seen from the other outline it is the same distance the other way.
        expect(touchingDistance(b, a, { x: -1, y: 0 }, lateral)).toBeCloseTo(plain, 9)
      }),
      { numRuns: runs(200) },
    )
  })

  it('turns with the outlines', () => {
    const random = testRandom(3)
    const a = randomOutline(random, 30)
    const b = randomOutline(random, 30)
    const plain = touchingDistance(a, b, EAST, 7)!
    for (const angle of [0.3, 1, 2.5, 4]) {
      const along = { x: Math.cos(angle), y: Math.sin(angle) }
      expect(touchingDistance(turnOutline(a, angle), turnOutline(b, angle), along, 7)).toBeCloseTo(plain, 8)
    }
  })
})
