/** The plane of the sheet against what others worked out (§homography-examples), and against a camera that only looks. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { homography, inverse, mapped, sheetCorners } from '../../../src-core/photo/homography'
import type { Corners, Homography } from '../../../src-core/photo/homography'
import type { Spot } from '../../../src-core/photo/picture'

const corners = (...at: [number, number][]): Corners => at.map(([x, y]) => ({ x, y })) as unknown as Corners
/** Nine numbers mean the same times any factor; published ones have 1 at the end. */
const ofUnitEnd = (matrix: Homography): number[] => matrix.map((value) => value / matrix[8]!)
const expectNear = (found: readonly number[], published: readonly number[], digits: number) =>
  found.forEach((value, at) => expect(value).toBeCloseTo(published[at]!, digits))

describe('four points to four points, as published', () => {
  it('has matrix, inverse and points of the worked example of a library (§homography-examples)', () => {
    const from = corners([158, 64], [494, 69], [495, 404], [158, 404])
    const to = corners([100, 500], [152, 564], [148, 604], [100, 560])
    const matrix = homography(from, to)
    const there = mapped(matrix, { x: 250, y: 120 })
    // The library counts its matrix to ten digits, and its points with that.
    expectNear([there.x, there.y], [117.27521125839255, 530.9202410878403], 4)
    const back = mapped(inverse(matrix), { x: 130, y: 570 })
    expectNear([back.x, back.y], [338.99465637447327, 278.6450957956236], 4)
    expectNear(
      ofUnitEnd(matrix),
      [
        ...[0.3869749384, 0.0426817448, 59.2427947969],
        ...[0.9589610618, 0.4562821238, 434.8644299345],
        ...[0.0012901794, 0.0004268174, 1],
      ],
      9,
    )
    expectNear(
      ofUnitEnd(inverse(matrix)),
      [
        ...[1.9955408809, -0.1282507787, -62.4497171511],
        ...[-2.9335671323, 2.2894572644, -821.8108124927],
        ...[-0.0013225082, -0.0008117138, 1],
      ],
      7,
    )
  })

  it('has the matrix of a solution by singular values (§homography-examples)', () => {
    const matrix = homography(
      corners([2, 2], [2, 4], [4, 4], [4, 2]),
      corners([2, 2], [2.5, 4], [3.5, 3.5], [4, 2]),
    )
    const published = [-0.22664, -0.17434, 0.62761, -0.06973, -0.33124, 0.62761, -0.03487, -0.06102, 0.1046]
    const by = 0.1046 / matrix[8]!
    expectNear(
      matrix.map((value) => value * by),
      published,
      // Five digits were printed, and all are scaled by the last of them.
      3,
    )
  })
})

/** Where a pinhole sees points of the table: turned three ways, moved, divided by their distance. No matrix of ours. */
function pinhole(turns: readonly [number, number, number], far: number, focal: number) {
  const [a, b, c] = turns
  return ({ x, y }: Spot): Spot => {
    const [x1, y1] = [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)]
    const [y2, z2] = [y1 * Math.cos(b), y1 * Math.sin(b)]
    const [x3, z3] = [x1 * Math.cos(c) + z2 * Math.sin(c), z2 * Math.cos(c) - x1 * Math.sin(c)]
    return { x: 800 + (focal * x3) / (far + z3), y: 600 + (focal * y2) / (far + z3) }
  }
}

describe('four points to four points (§heckbert), by a camera', () => {
  const tilt = fc.double({ min: -0.7, max: 0.7, noNaN: true })
  const taken = fc.record({
    turns: fc.tuple(fc.double({ min: -3.2, max: 3.2, noNaN: true }), tilt, tilt),
    far: fc.double({ min: 450, max: 2000, noNaN: true }),
    focal: fc.double({ min: 300, max: 4000, noNaN: true }),
    at: fc.tuple(fc.double({ min: 0, max: 210, noNaN: true }), fc.double({ min: 0, max: 297, noNaN: true })),
  })
  const sheet = sheetCorners({ width: 210, height: 297 })
  const about = ({ x, y }: Spot): Spot => ({ x: x - 105, y: y - 148.5 })

  it('puts every place of the sheet where the camera sees it, and finds it again', () => {
    fc.assert(
      fc.property(taken, ({ turns, far, focal, at: [x, y] }) => {
        const look = pinhole(turns, far, focal)
        const matrix = homography(sheet, sheet.map((corner) => look(about(corner))) as unknown as Corners)
        const seen = look(about({ x, y }))
        const found = mapped(matrix, { x, y })
        expect(Math.hypot(found.x - seen.x, found.y - seen.y)).toBeLessThan(1e-6 * focal)
        const again = mapped(inverse(matrix), seen)
        expect(Math.hypot(again.x - x, again.y - y)).toBeLessThan(1e-5)
      }),
    )
  })
})
