import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  catenaryFromDrop,
  catenaryFromLength,
  catenaryFromLengthAndDrop,
  placeOnCord,
} from '../../../src-core/geometry/catenary'

/** Length over span by drop over span, computed from the closed form (§catenary) to seven digits. */
const LENGTHS = [
  [0.02, 1.001066],
  [0.05, 1.006636],
  [0.1, 1.026187],
  [0.15, 1.057674],
  [0.2, 1.099718],
  [0.25, 1.150791],
  [0.3, 1.20941],
  [0.4, 1.344189],
  [0.5, 1.495834],
] as const

describe('M51: the hanging cord', () => {
  it('span 100, sag 10 is 102.619 long (§cheney-kincaid)', () => {
    const cord = catenaryFromDrop(100, 10)
    expect(cord.length).toBeCloseTo(102.619, 3)
    expect(1 / cord.a).toBeCloseTo(0.00789687, 8)
  })

  it('through (±10, 6) with its lowest point at 0 has a = 9.1889 (§mathhelpforum)', () => {
    const cord = catenaryFromDrop(20, 6)
    expect(cord.a).toBeCloseTo(9.1889, 4)
    expect(cord.length).toBeCloseTo(24.1882, 4)
  })

  it.each(LENGTHS)('drop/span %f gives length/span %f (computed from the closed form)', (drop, length) => {
    expect(catenaryFromDrop(1, drop).length).toBeCloseTo(length, 6)
    expect(catenaryFromDrop(1200, 1200 * drop).length / 1200).toBeCloseTo(length, 6)
    // The table has six decimals: near a straight cord the drop follows from its length less sharply.
    expect(catenaryFromLength(1, length).drop).toBeCloseTo(drop, 4)
  })

  it('half a span of 500 ft with a sag of 80 ft (§vose): 508.43 ft', () => {
    // Vose's two terms of a series give 508.55 and are known to be 0.02 % long; 508.4338 is recomputed.
    expect(catenaryFromDrop(1000, 80).length / 2).toBeCloseTo(508.4338, 4)
  })

  it('wall → cord → wall is the identity, in every way round', () => {
    const shares = fc.double({ min: -2.5, max: 1.5, noNaN: true }).map((power) => 10 ** power)
    const spans = fc.double({ min: -3, max: 5, noNaN: true }).map((power) => 10 ** power)
    fc.assert(
      fc.property(spans, shares, (span, share) => {
        const cord = catenaryFromDrop(span, span * share)
        const back = catenaryFromLength(span, cord.length)
        expect(back.drop / cord.drop).toBeCloseTo(1, 8)
        expect(back.a / cord.a).toBeCloseTo(1, 8)
        const wall = catenaryFromLengthAndDrop(cord.length, cord.drop)
        expect(wall.span / span).toBeCloseTo(1, 8)
      }),
    )
  })

  it('holds the equations of the curve from nearly straight to a deep loop', () => {
    for (const share of [1e-9, 1e-6, 1e-4, 0.01, 0.5, 3, 100, 1e4]) {
      const { a, drop, length, span } = catenaryFromDrop(500, 500 * share)
      expect([a, drop, length].every(Number.isFinite)).toBe(true)
      expect((2 * a * Math.sinh(span / 2 / a)) / length).toBeCloseTo(1, 10)
      expect((2 * a * Math.sinh(span / 4 / a) ** 2) / drop).toBeCloseTo(1, 10)
      expect(length).toBeGreaterThanOrEqual(Math.max(span, 2 * drop))
    }
    expect(catenaryFromDrop(500, 0)).toEqual({ span: 500, drop: 0, length: 500, a: Infinity })
    expect(catenaryFromLength(500, 500).drop).toBe(0)
    expect(catenaryFromLengthAndDrop(500, 0).span).toBe(500)
  })

  it('refuses what no cord can be', () => {
    for (const call of [
      () => catenaryFromDrop(0, 1),
      () => catenaryFromDrop(1, -1),
      () => catenaryFromDrop(Number.NaN, 1),
      () => catenaryFromLength(10, 9),
      () => catenaryFromLengthAndDrop(10, 5),
    ])
      expect(call).toThrow('no cord hangs like this')
  })

  it('places at equal arc lengths lie on the curve, its ends at the height of the wall', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 3, noNaN: true }),
        fc.integer({ min: 2, max: 60 }),
        (share, count) => {
          const cord = catenaryFromDrop(900, 900 * share)
          const places = Array.from({ length: count }, (_, i) =>
            placeOnCord(cord, (cord.length * i) / (count - 1)),
          )
          expect(places[0]!.x).toBeCloseTo(0, 6)
          expect(places[0]!.y).toBeCloseTo(0, 6)
          expect(places.at(-1)!.x).toBeCloseTo(900, 6)
          for (const { x, y, slope } of places) {
            const depth = cord.drop - 2 * cord.a * Math.sinh((x - 450) / 2 / cord.a) ** 2
            expect(y).toBeCloseTo(depth, 5)
            expect(Math.tan(slope)).toBeCloseTo(-Math.sinh((x - 450) / cord.a), 5)
          }
          // The arc between two places, summed over short chords.
          const step = cord.length / (count - 1)
          const fine = Array.from({ length: 401 }, (_, i) => placeOnCord(cord, (step * i) / 400))
          let arc = 0
          for (let i = 1; i < fine.length; i++)
            arc += Math.hypot(fine[i]!.x - fine[i - 1]!.x, fine[i]!.y - fine[i - 1]!.y)
          expect(arc / step).toBeCloseTo(1, 3)
        },
      ),
    )
  })
})
