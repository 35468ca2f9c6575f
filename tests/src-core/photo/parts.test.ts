import { converter, parse } from 'culori'
import { polygonArea, polygonLength } from 'd3-polygon'
import { describe, expect, it } from 'vitest'
import { evenPoints, boundary } from '../../../src-core/photo/contour'
import { homography, inverse, mapped, sheetCorners } from '../../../src-core/photo/homography'
import type { Corners } from '../../../src-core/photo/homography'
import { toOklab } from '../../../src-core/photo/oklab'
import { petalled } from '../../../src-core/photo/lobes'
import { openAlong } from '../../../src-core/photo/motif-mask'
import type { FoundMotif } from '../../../src-core/photo/motif-mask'
import { asSheet, bestPose } from '../../../src-core/photo/pose'
import type { Plane } from '../../../src-core/photo/rectify'
import { fourSides } from '../../../src-core/photo/regions'
import { fitLine } from '../../../src-core/photo/sheet-edges'
import { findSymmetry } from '../../../src-core/photo/symmetry'
import { byteOfLight } from '../../../src-core/photo/picture'
import { chance } from './flowers'

const corners = (...at: [number, number][]): Corners => at.map(([x, y]) => ({ x, y })) as unknown as Corners

describe('the plane of the sheet', () => {
  const from = sheetCorners({ width: 210, height: 297 })
  const to = corners([100, 80], [640, 130], [700, 900], [60, 820])
  const matrix = homography(from, to)

  it('takes corners to corners, and back', () => {
    from.forEach((corner, at) => {
      expect(mapped(matrix, corner).x).toBeCloseTo(to[at]!.x, 8)
      expect(mapped(matrix, corner).y).toBeCloseTo(to[at]!.y, 8)
      expect(mapped(inverse(matrix), to[at]!).x).toBeCloseTo(corner.x, 8)
      expect(mapped(inverse(matrix), to[at]!).y).toBeCloseTo(corner.y, 8)
    })
  })

  it('takes the middle to where the diagonals meet: a fact of projective geometry', () => {
    const [a, b, c, d] = to
    const middle = mapped(matrix, { x: 105, y: 148.5 })
    const offLine = (from: typeof a, to: typeof a) =>
      (to.x - from.x) * (middle.y - from.y) - (to.y - from.y) * (middle.x - from.x)
    expect(offLine(a, c)).toBeCloseTo(0, 6)
    expect(offLine(b, d)).toBeCloseTo(0, 6)
  })

  it('tells tilt and the way round of a sheet (§zhang) seen by a pinhole of its own', () => {
    const view = (tilt: number, lying: boolean) => {
      const turned = (tilt * Math.PI) / 180
      const [w, h] = lying ? [297, 210] : [210, 297]
      const seen = [
        [-w / 2, -h / 2],
        [w / 2, -h / 2],
        [w / 2, h / 2],
        [-w / 2, h / 2],
      ].map(([x, y]) => {
        const z = 500 + y! * Math.sin(turned)
        return [500 + (900 * x!) / z, 600 + (900 * y! * Math.cos(turned)) / z] as [number, number]
      })
      return corners(...(seen as [[number, number], [number, number], [number, number], [number, number]]))
    }
    const picture = { width: 1000, height: 1200 }
    for (const tilt of [5, 20, 35, 50])
      expect(
        Math.abs(bestPose(view(tilt, false), { width: 210, height: 297 }, picture).tilt - tilt),
      ).toBeLessThan(6)
    const lying = view(15, true)
    expect(asSheet(lying, { width: 210, height: 297 }, picture).corners[0]).toEqual(lying[1])
  })
})

describe('colours', () => {
  it('has the Oklab of culori', () => {
    const lab = new Float64Array(3)
    const [linear, oklab] = [converter('lrgb'), converter('oklab')]
    for (const colour of ['#7fb5a8', '#ffffff', '#101418', '#c03a2b', '#123456']) {
      const { r, g, b } = linear(parse(colour)!)
      toOklab(r, g, b, lab)
      const known = oklab(parse(colour)!)
      expect(lab[0]).toBeCloseTo(known.l, 5)
      expect(lab[1]).toBeCloseTo(known.a, 5)
      expect(lab[2]).toBeCloseTo(known.b, 5)
      expect(byteOfLight(r)).toBe(parseInt(colour.slice(1, 3), 16))
    }
  })
})

describe('lines and areas', () => {
  it('reduces a hull with cut corners to the four sides that it had', () => {
    const sides = fourSides(
      [
        [2, 0],
        [98, 0],
        [100, 2],
        [100, 60],
        [1, 60],
        [0, 59],
        [0, 1.5],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    )!
    const sorted = sides.map(({ x, y }) => `${Math.round(x)},${Math.round(y)}`).sort()
    expect(sorted).toEqual(['0,0', '0,60', '100,0', '100,60'])
  })

  it('fits a line past a tenth of points that lie elsewhere', () => {
    const points = Array.from({ length: 100 }, (_, at) => ({
      x: at,
      y: 3 + 0.25 * at + (at % 10 === 0 ? 9 : 0),
    }))
    const line = fitLine(points)!
    const slope = (line.to.y - line.from.y) / (line.to.x - line.from.x)
    expect(slope).toBeCloseTo(0.25, 4)
  })

  it('walks round a disc: area and length of a circle', () => {
    const [size, radius] = [220, 100.3]
    const on = Uint8Array.from({ length: size * size }, (_, at) =>
      Math.hypot((at % size) - 110.2, Math.floor(at / size) - 109.7) < radius ? 1 : 0,
    )
    const line = evenPoints(boundary({ width: size, height: size, on }), 6).map(
      ({ x, y }) => [x, y] as [number, number],
    )
    expect(Math.abs(polygonArea(line)) / (Math.PI * radius * radius)).toBeCloseTo(1, 2)
    expect(polygonLength(line) / (2 * Math.PI * radius)).toBeCloseTo(1, 1)
  })
})

describe('symmetry', () => {
  it('finds every order from 3 to 24, the middle and the direction of the tips', () => {
    for (let order = 3; order <= 24; order++) {
      const outline = Array.from({ length: 1500 }, (_, at) => {
        const angle = (2 * Math.PI * at) / 1500
        const far = 40 + 6 * Math.abs(Math.cos((order * (angle - 0.1)) / 2))
        return { x: 11 + far * Math.sin(angle), y: 7 - far * Math.cos(angle) }
      })
      const found = findSymmetry(outline, { x: 12, y: 6 })
      expect(found.order).toBe(order)
      expect(found.turn).toBeCloseTo(0.1, 2)
      expect(Math.hypot(found.middle.x - 11, found.middle.y - 7)).toBeLessThan(0.1)
    }
  })

  /** A line of this reach by angle, with stitches as chance has them, slowly and quickly. */
  const lineOf = (far: (angle: number) => number, seed: number, stitches = 0.15) => {
    const random = chance(seed)
    const waves = Array.from({ length: 40 }, (_, k) => ({
      by: (stitches * (random() + random() - 1)) / Math.sqrt(1 + k / 4),
      from: 6.283 * random(),
    }))
    return Array.from({ length: 1500 }, (_, at) => {
      const angle = (2 * Math.PI * at) / 1500
      const reach =
        far(angle) + waves.reduce((sum, { by, from }, k) => sum + by * Math.cos((k + 2) * angle + from), 0)
      return { x: reach * Math.sin(angle), y: -reach * Math.cos(angle) }
    })
  }
  const notch = (angle: number, count: number) => {
    const off = (((angle * count) / (2 * Math.PI)) % 1) - 0.5
    return Math.exp(-((((Math.abs(off) * 2 * Math.PI) / count) * 40) ** 2) / 8)
  }

  it('counts petals that all but close a circle by their narrow dips', () => {
    for (const petals of [5, 6, 7, 9])
      for (const seed of [1, 2, 3]) {
        const found = findSymmetry(
          lineOf((angle) => 40 - 1.6 * notch(angle, petals), seed),
          { x: 0, y: 0 },
        )
        expect(found).toMatchObject({ order: petals, stands: true })
      }
  })

  it('counts hearts, not their lobes', () => {
    for (const seed of [1, 2, 3]) {
      // Seven hearts whose own notch is three fifths as deep as what parts them.
      const heart = (angle: number) => 40 - 2.2 * notch(angle, 14) - 1.6 * notch(angle, 7)
      expect(findSymmetry(lineOf(heart, seed), { x: 0, y: 0 }).order).toBe(7)
      // Twice as many petals, uneven as they come, are as many.
      const petals = (angle: number) => 40 - 2.2 * notch(angle, 14)
      expect(findSymmetry(lineOf(petals, seed), { x: 0, y: 0 }).order).toBe(14)
    }
  })

  it('sees no petals in the stitches of a round', () => {
    for (let seed = 1; seed <= 60; seed++)
      expect(
        findSymmetry(
          lineOf(() => 40, seed),
          { x: 0, y: 0 },
        ).stands,
      ).toBe(false)
  })

  it('counts petals that touch at their tips by the slits behind these', () => {
    const [size, middle, radius] = [220, { x: 110, y: 110 }, 90]
    const slit = (count: number) => (at: number) => {
      const [x, y] = [(at % size) - middle.x, Math.floor(at / size) - middle.y]
      const far = Math.hypot(x, y)
      const off = (((Math.atan2(x, -y) * count) / (2 * Math.PI) + 1000.3) % 1) - 0.5
      const isOpen = far > 0.72 * radius && far < 0.93 * radius && Math.abs(off) * far * 6.283 < count * 1.5
      return far < radius && !isOpen ? 1 : 0
    }
    const look = (count: number) => {
      const distance = Float32Array.from({ length: size * size }, (_, at) => slit(count)(at))
      const plane = { width: size, height: size } as Plane
      const found = { distance, level: 0.5 } as FoundMotif
      return findSymmetry(
        lineOf(() => radius, 5, 0.3).map(({ x, y }) => ({ x: x + middle.x, y: y + middle.y })),
        middle,
        (at, reach) => openAlong(plane, found, at, reach),
      )
    }
    for (const petals of [3, 5, 6, 8]) expect(look(petals)).toMatchObject({ order: petals, hidden: true })
    expect(look(0).order).toBe(0)
  })
  it('counts hearts by the slits that part them where their own notches are nearly as deep', () => {
    const [size, middle, radius] = [220, { x: 110, y: 110 }, 90]
    const lobes = lineOf((angle) => radius - 2.6 * notch(angle, 14) - 0.9 * notch(angle + 0.3, 7), 4, 0.2)
    // Slits of a width each, at every dip or only at those between hearts.
    const look = (count: number) => {
      const distance = Float32Array.from({ length: size * size }, (_, at) => {
        const [x, y] = [(at % size) - middle.x, Math.floor(at / size) - middle.y]
        const far = Math.hypot(x, y)
        const off = ((((Math.atan2(x, -y) + 0.3) * count) / (2 * Math.PI) + 1000) % 1) - 0.5
        return far < radius &&
          !(far > 0.6 * radius && far < 0.85 * radius && Math.abs(off) * far * 6.283 < 2 * count)
          ? 1
          : 0
      })
      const plane = { width: size, height: size } as Plane
      const found = { distance, level: 0.5 } as FoundMotif
      return petalled(
        findSymmetry(
          lobes.map(({ x, y }) => ({ x: x + middle.x, y: y + middle.y })),
          middle,
          (at, reach) => openAlong(plane, found, at, reach),
        ),
      )
    }
    expect(petalled(findSymmetry(lobes, { x: 0, y: 0 })).order).toBe(14)
    expect(look(7)).toMatchObject({ order: 7, repeat: 7, hidden: true })
    expect(look(14)).toMatchObject({ order: 14 })
  })
})
