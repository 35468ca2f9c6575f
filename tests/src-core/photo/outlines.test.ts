/** The line round known shapes in a picture: area and length as formulas say them. */
import { polygonArea, polygonLength } from 'd3-polygon'
import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { photograph } from './camera'
import { disc, sided } from './flowers'
import type { Shape } from './flowers'
import { trial } from './scenes'

const HALF = 46
/** n right-angled triangles to each side of the middle: n a² tan(π/n) and 2 n a tan(π/n). */
const regular = (sides: number) => {
  const tangent = Math.tan(Math.PI / sides)
  return { area: sides * HALF * HALF * tangent, length: 2 * sides * HALF * tangent }
}

const outlineOf = (shape: Shape) =>
  measurePhoto(
    photograph({
      ...trial(7).scene,
      ...{ shape, sheet: { width: 210, height: 297 }, at: { x: 5, y: -8 }, turn: 4, tilt: 14, filling: 0.72 },
      ...{ picture: { width: 540, height: 720 }, paper: [0.78, 0.78, 0.76], table: [0.25, 0.13, 0.06] },
      ...{ yarns: [[0.35, 0.05, 0.07]], blur: 0.6, noise: 0.005, relief: 0 },
    }),
    { sheet: 'A4' },
  ).measures!.outline.map(([x, y]): [number, number] => [x, y])

describe('the line round a shape in a picture', () => {
  it.each([
    ['a disc', disc(2 * HALF), { area: Math.PI * HALF * HALF, length: 2 * Math.PI * HALF }],
    ['a square', sided(4, 2 * HALF, 0.3), regular(4)],
    ['a hexagon', sided(6, 2 * HALF, 0.2), regular(6)],
    ['an octagon', sided(8, 2 * HALF, 0.1), regular(8)],
  ] as const)('of %s has its area and its length to less than a percent', (_, shape, known) => {
    const outline = outlineOf(shape)
    expect(Math.abs(Math.abs(polygonArea(outline)) / known.area - 1)).toBeLessThan(0.007)
    expect(Math.abs(polygonLength(outline) / known.length - 1)).toBeLessThan(0.007)
  })
})
