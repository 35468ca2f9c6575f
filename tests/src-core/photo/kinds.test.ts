import { describe, expect, it } from 'vitest'
import { measurePhoto } from '../../../src-core/photo/photo'
import { photograph } from './camera'
import { chance, disc, flower, sided } from './flowers'
import type { Shape } from './flowers'
import { trial } from './scenes'

/** A plain picture of a shape on A4. */
const taken = (shape: Shape, more = {}) =>
  photograph({
    ...trial(7).scene,
    shape,
    sheet: { width: 210, height: 297 },
    at: { x: 5, y: -8 },
    turn: 4,
    tilt: 14,
    picture: { width: 540, height: 720 },
    filling: 0.72,
    paper: [0.78, 0.78, 0.76],
    table: [0.25, 0.13, 0.06],
    yarns: [[0.35, 0.05, 0.07]],
    blur: 0.6,
    noise: 0.005,
    relief: 0.1,
    ...more,
  })
const codes = (answer: ReturnType<typeof measurePhoto>) => answer.findings.map(({ code }) => code)

describe('kinds of motifs in a picture', () => {
  it.each([
    ['square', 4, sided(4, 90, 0.3, 4)],
    ['hexagon', 6, sided(6, 100, 0.2, 3)],
    ['octagon', 8, sided(8, 110, 0.1, 2)],
    ['petals', 8, flower('rounded', 8, 100, 0.7, 0.4, 0, chance(5))],
  ] as const)('tells a %s', (kind, petals, shape) => {
    const { measures } = measurePhoto(taken(shape), { sheet: 'A4' })
    expect(measures).toMatchObject({ kind, petals })
    expect(Math.abs(measures!.overTips / shape.overTips - 1)).toBeLessThan(0.015)
    expect(Math.abs(measures!.overValleys / shape.overValleys - 1)).toBeLessThan(0.025)
  })

  it('measures a round card to half a percent', () => {
    const card = taken(disc(92), { relief: 0 })
    const { measures, findings, sheet } = measurePhoto(card, { sheet: 'A4' })
    expect(sheet).toBe('A4')
    expect(measures!.kind).toBe('round')
    expect(measures!.petals).toBe(0)
    expect(Math.abs(measures!.overTips / 92 - 1)).toBeLessThan(0.005)
    expect(findings).toEqual([])
    // Said to lie on another sheet, it is measured on the one that has the shape, and that is said.
    for (const asked of ['Letter', 'A5'] as const) {
      const other = measurePhoto(card, { sheet: asked })
      expect(other.sheet).toBe(asked === 'A5' ? 'A5' : 'A4')
      expect(codes(other)).toEqual(asked === 'A5' ? [] : ['photo/other-sheet'])
      const right = asked === 'A5' ? 92 * Math.SQRT1_2 : 92
      expect(Math.abs(other.measures!.overTips / right - 1)).toBeLessThan(0.01)
    }
  })

  // Drawing the pictures takes most of the time, and a machine that is busy takes several times as long.
  it('says what is in the way', () => {
    const shape = disc(90)
    // What is told here is told of small pictures too; that they are small is told besides.
    const small = (more: object) => taken(shape, { picture: { width: 360, height: 480 }, ...more })
    const inTheWay = ['sheet-cut-off', 'motif-over-edge', 'tilt', 'no-motif', 'blurred'].map(
      (each) => `photo/${each}`,
    )
    expect(codes(measurePhoto(small({}), { sheet: 'A4' })).filter((code) => inTheWay.includes(code))).toEqual(
      [],
    )
    expect(codes(measurePhoto(small({ filling: 1.25 }), { sheet: 'A4' }))).toContain('photo/sheet-cut-off')
    expect(codes(measurePhoto(small({ at: { x: 75, y: 0 } }), { sheet: 'A4' }))).toContain(
      'photo/motif-over-edge',
    )
    expect(codes(measurePhoto(small({ tilt: 48 }), { sheet: 'A4' }))).toContain('photo/tilt')
    expect(
      codes(measurePhoto(small({ yarns: [[0.76, 0.76, 0.75]], relief: 0, shadow: 0 }), { sheet: 'A4' })),
    ).toContain('photo/no-motif')
    expect(codes(measurePhoto(small({ blur: 5 }), { sheet: 'A4' }))).toContain('photo/blurred')
  })

  it('finds dips in a large and sharp picture as well, where stitches are seen', () => {
    const { scene, sheet } = trial(5, 1440)
    const { measures } = measurePhoto(photograph(scene), { sheet })
    expect(measures!.petals).toBe(8)
    // Its clefts are narrower than 0.2 mm over the last fifteenth of the reach.
    expect(Math.abs(measures!.overValleys / scene.shape.overValleys - 1)).toBeLessThan(0.045)
  })

  it('names the colours of the rings from the middle outwards', () => {
    const { measures } = measurePhoto(
      taken(disc(100), {
        yarns: [
          [0.35, 0.05, 0.07],
          [0.05, 0.15, 0.4],
        ],
        lamp: [1, 0.9, 0.75],
      }),
      { sheet: 'A4' },
    )
    expect(measures!.colours).toHaveLength(2)
    const [inner, outer] = measures!.colours
    // The inner ring reaches to half the radius: a quarter of the area.
    expect(inner!.share).toBeCloseTo(0.25, 1)
    expect(outer!.share).toBeCloseTo(0.75, 1)
    expect(parseInt(inner!.colour.slice(1, 3), 16)).toBeGreaterThan(parseInt(inner!.colour.slice(5, 7), 16))
    expect(parseInt(outer!.colour.slice(5, 7), 16)).toBeGreaterThan(parseInt(outer!.colour.slice(1, 3), 16))
  })
})
