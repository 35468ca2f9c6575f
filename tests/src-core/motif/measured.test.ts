import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif } from '../../../shared-types/project'
import { signedArea } from '../../../src-core/geometry/points'
import { measuredAccount } from '../../../src-core/motif/measured'

type Partial_ = Omit<MeasuredMotif, 'id' | 'kind'>

const measure = (motif: Partial_, hand: 'left' | 'right' = 'right', growth = 0) =>
  measuredAccount({ id: 'm', kind: 'measured', ...motif } as MeasuredMotif, { hand, growth, terms: 'US' })
const codes = (motif: Partial_) => measure(motif).findings.map((entry) => entry.code)
const radii = (motif: Partial_) => measure(motif).account!.outline.map((p) => Math.hypot(p.x, p.y))

describe('M16 measured motifs', () => {
  it('petals: tips and valleys are points of the outline, nothing reaches beyond the tips', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 24 }),
        fc.double({ min: 25, max: 500, noNaN: true }),
        fc.double({ min: 0.15, max: 0.95, noNaN: true }),
        (petals, overTips, share) => {
          const motif: Partial_ = { outline: 'petals', petals, overTips, overValleys: overTips * share }
          const { account } = measure(motif)
          const far = radii(motif)
          expect(Math.max(...far)).toBeCloseTo(overTips / 2, 9)
          expect(Math.min(...far)).toBeCloseTo((overTips * share) / 2, 9)
          const tips = far.filter((r) => Math.abs(r - overTips / 2) < 1e-9)
          expect(tips).toHaveLength(petals)
          expect(account!.outline[0]).toMatchObject({
            x: expect.closeTo(0, 9),
            y: expect.closeTo(-overTips / 2, 9),
          })
          expect(signedArea(account!.outline)).toBeGreaterThan(0)
          expect(account!.anchors.filter((a) => a.kind === 'tip')).toHaveLength(petals)
          expect(account!.anchors.filter((a) => a.kind === 'valley')).toHaveLength(petals)
        },
      ),
    )
  })

  it('numbers petals counter-clockwise for right-handers, clockwise for left-handers, from 12 o’clock', () => {
    const motif: Partial_ = { outline: 'petals', petals: 4, overTips: 80, overValleys: 50 }
    const tip = (hand: 'left' | 'right', k: number) =>
      measure(motif, hand).account!.anchors.find((anchor) => anchor.id === `tip-${k}`)!
    expect(tip('right', 1)).toMatchObject({ x: expect.closeTo(0, 9), y: expect.closeTo(-40, 9) })
    expect(tip('right', 2).x).toBeCloseTo(-40, 9)
    expect(tip('left', 2).x).toBeCloseTo(40, 9)
    expect(tip('right', 3).y).toBeCloseTo(40, 9)
  })

  it('regular polygons from one measure: closed forms', () => {
    const square = measure({ outline: 'square', sideToSide: 100 }).account!
    expect(square.overTips).toBeCloseTo(100 * Math.SQRT2, 9)
    expect(signedArea(square.outline)).toBeCloseTo(10_000, 6)
    const hexagon = measure({ outline: 'hexagon', pointToPoint: 100 }).account!
    expect(hexagon.overValleys).toBeCloseTo(100 * Math.cos(Math.PI / 6), 9)
    expect(signedArea(hexagon.outline)).toBeCloseTo((3 * Math.sqrt(3) * 50 ** 2) / 2, 6)
    const octagon = measure({ outline: 'octagon', sideToSide: 100 }).account!
    expect(signedArea(octagon.outline)).toBeCloseTo(2 * (Math.SQRT2 - 1) * 100 ** 2, 6)
  })

  it('a square and an octagon stand on a flat side, a hexagon on a corner', () => {
    const low = (outline: 'square' | 'hexagon' | 'octagon') => {
      const points = measure({ outline, sideToSide: 60 }).account!.outline
      const bottom = Math.max(...points.map((p) => p.y))
      return points.filter((p) => Math.abs(p.y - bottom) < 1e-9).length
    }
    expect(low('square')).toBeGreaterThan(1)
    expect(low('octagon')).toBeGreaterThan(1)
    expect(low('hexagon')).toBe(1)
  })

  it('both measures of a side hold where it bows', () => {
    const far = radii({ outline: 'square', sideToSide: 100, pointToPoint: 132 })
    expect(Math.max(...far)).toBeCloseTo(66, 9)
    expect(Math.min(...far)).toBeCloseTo(50, 9)
  })

  it.each([
    ['octagon', 101],
    ['hexagon', 103],
    ['square', 101],
  ] as const)(
    'nothing of a bowed %s reaches beyond its corners, even where measures contradict',
    (outline, across) => {
      const far = radii({ outline, sideToSide: 100, pointToPoint: across })
      expect(Math.max(...far)).toBeCloseTo(across / 2, 9)
      expect(Math.min(...far)).toBeCloseTo(50, 9)
    },
  )

  it('a leaf is as long and as wide as measured, its tip at 12 o’clock', () => {
    const { account } = measure({ outline: 'leaf', length: 70, width: 32 })
    const xs = account!.outline.map((p) => p.x)
    const ys = account!.outline.map((p) => p.y)
    expect(Math.min(...ys)).toBeCloseTo(-35, 9)
    expect(Math.max(...ys)).toBeCloseTo(35, 9)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(32, 0)
    expect(measure({ outline: 'leaf', length: 60, width: 70 }).account).not.toBeNull()
  })

  it('says what is missing, out of range or the wrong way round, and gives no outline then', () => {
    expect(codes({ outline: 'petals', petals: 2, overTips: 80 })).toContain('motif/petal-count')
    expect(codes({ outline: 'petals', petals: 6.5, overTips: 80 })).toContain('motif/petal-count')
    expect(codes({ outline: 'petals', petals: 6 })).toEqual(['motif/missing-size'])
    expect(codes({ outline: 'petals', petals: 6, overTips: 80, overValleys: 90 })).toEqual([
      'motif/size-order',
    ])
    expect(codes({ outline: 'round', across: 1e9 })).toEqual(['motif/size-range'])
    expect(codes({ outline: 'round', across: -5 })).toEqual(['motif/size-range'])
    expect(codes({ outline: 'hexagon' })).toEqual(['motif/missing-size'])
    expect(codes({ outline: 'leaf', length: 40, width: 90 })).toEqual(['motif/size-order'])
    expect(measure({ outline: 'leaf', length: 40, width: 90 }).account).toBeNull()
  })

  it('assumes a valley with a note where it was not measured', () => {
    const { account, findings } = measure({ outline: 'petals', petals: 6, overTips: 100 })
    expect(findings.map((entry) => entry.code)).toEqual(['motif/assumed-size'])
    expect(account!.overValleys).toBeCloseTo(68, 9)
  })

  it('M18 grows what was measured before blocking, and nothing else', () => {
    const motif: Partial_ = { outline: 'round', across: 100, blocked: false }
    expect(measure(motif, 'right', 0.06).account!.overTips).toBeCloseTo(106, 9)
    expect(measure({ ...motif, blocked: true }, 'right', 0.06).account!.overTips).toBe(100)
    expect(measure({ outline: 'round', across: 100 }, 'right', 0.06).account!.overTips).toBe(100)
  })
})
