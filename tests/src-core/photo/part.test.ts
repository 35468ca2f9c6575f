/** Parts of a picture are measured from no more of its pixels than they show. */
import { describe, expect, it } from 'vitest'
import { sheetCorners } from '../../../src-core/photo/homography'
import { evenLight, fitLight } from '../../../src-core/photo/light'
import { byteOfLight, halved, LIGHT_OF_BYTE, reduced } from '../../../src-core/photo/picture'
import { rectify, rectifyPart } from '../../../src-core/photo/rectify'
import { filled, regions } from '../../../src-core/photo/regions'
import { SHEET_SIZES } from '../../../src-core/photo/sheet-sizes'

/** A sheet that fills the picture, its light a smooth wave over it. */
function waves(width: number, height: number) {
  const data = new Uint8Array(4 * width * height)
  for (let at = 0; at < width * height; at++) {
    const [x, y] = [(at % width) / width, Math.floor(at / width) / height]
    data[4 * at] = 150 + 60 * Math.sin(40 * x)
    data[4 * at + 1] = 160 + 60 * Math.cos(30 * y)
    data[4 * at + 2] = 140
    data[4 * at + 3] = 255
  }
  return { width, height, data }
}

describe('a part of a large picture', () => {
  const size = SHEET_SIZES.A5
  const picture = waves(12 * size.width, 12 * size.height)
  const corners = sheetCorners({ width: picture.width - 1, height: picture.height - 1 })
  const part = { left: 30, top: 40, right: 110, bottom: 120 }

  it('is the same from half of its pixels, and is told by as many as the whole has', () => {
    const half = halved(picture, 1_000_000)!
    expect(half.step).toBe(2)
    const [whole, small] = [
      rectify(picture, corners, size, part),
      rectifyPart(picture, half, corners, size, part),
    ]
    expect(small.density).toBe(whole.density)
    expect([small.width, small.height]).toEqual([whole.width, whole.height])
    let most = 0
    for (let at = 0; at < whole.light.length; at++)
      most = Math.max(most, Math.abs(whole.light[at]! - small.light[at]!))
    expect(most).toBeLessThan(0.01)
  })

  it('is halved by the mean light of four pixels, and a last odd row and column are left off', () => {
    const odd = waves(7, 5)
    odd.data.forEach((_, at) => at % 4 < 3 && (odd.data[at] = (at * 97) % 256))
    const half = halved(odd, 8)!
    expect([half.width, half.height, half.step]).toEqual([3, 2, 2])
    for (let at = 0; at < half.data.length; at++) {
      const [c, x, y] = [at % 4, (at >> 2) % 3, Math.floor((at >> 2) / 3)]
      const of = (i: number, j: number) => LIGHT_OF_BYTE[odd.data[4 * ((2 * y + j) * 7 + 2 * x + i) + c]!]!
      const mean = (of(0, 0) + of(1, 0) + of(0, 1) + of(1, 1)) / 4
      expect(Math.abs(half.data[at]! - (c === 3 ? 255 : byteOfLight(mean)))).toBeLessThanOrEqual(1)
    }
  })

  it('is taken from the whole where half of it has too few', () => {
    const half = halved(picture, 1_000_000)!
    const thirds = { ...half, step: 3 }
    const [one, other] = [
      rectifyPart(picture, thirds, corners, size, part),
      rectify(picture, corners, size, part),
    ]
    expect(one.light.every((light, at) => light === other.light[at])).toBe(true)
  })

  it('is found in a smaller one that says by how much it is smaller than the first', () => {
    expect(halved(picture, picture.width * picture.height)).toBeNull()
    expect(reduced(halved(picture, 1_000_000)!, 300_000)).toMatchObject({ step: 4, width: 444 })
  })

  it('is divided by the light that was fitted, place by place', () => {
    const plane = rectify(picture, corners, size, part)
    const fit = fitLight(plane, true)
    const { ratio } = evenLight(plane, fit)
    for (const [column, row] of [
      [0, 0],
      [7, 300],
      [plane.width - 1, plane.height - 1],
    ] as const) {
      const x = (plane.left + column / plane.scale - fit.middle.x) / fit.half.x
      const y = (plane.top + row / plane.scale - fit.middle.y) / fit.half.y
      const terms = [1, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y]
      for (const c of [0, 1, 2]) {
        const log = terms.reduce((sum, term, at) => sum + term * fit.powers[c]![at]!, 0)
        const at = 3 * (row * plane.width + column) + c
        expect(ratio[at]).toBeCloseTo(plane.light[at]! / Math.exp(log), 5)
      }
    }
  })
})

describe('a piece of a mask', () => {
  it('has its holes filled, and nothing that the rim leads to', () => {
    const rows = ['.......', '.#####.', '.#...#.', '.#.#.#.', '.#####.', '.#...#.', '.#.#.##', '...#...']
    const [width, height] = [7, 8]
    const on = Uint8Array.from(rows.join(''), (mark) => (mark === '#' ? 1 : 0))
    const [largest] = regions({ width, height, on }, 5).sort((a, b) => b.places.length - a.places.length)
    const marks = [...filled(largest!, width, height).on].map((each) => (each ? '#' : '.')).join('')
    expect(marks.match(/.{7}/g)).toEqual([
      '.......', '.#####.', '.#####.', '.#####.', '.#####.', '.#...#.', '.#...##', '.......',
    ]) // prettier-ignore
  })
})
