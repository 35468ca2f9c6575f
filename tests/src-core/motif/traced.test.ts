import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Project, Trace } from '../../../shared-types/project'
import {
  contains,
  distanceToEdge,
  moveOutline,
  polar,
  signedArea,
  turnOutline,
} from '../../../src-core/geometry/points'
import { sharedArea } from '../../../src-core/geometry/polygons'
import { planProject } from '../../../src-core/plan'
import { scaledProject } from '../../../src-core/ways/scale'
import { accountOfMeasured as account, traceOf } from './traced'

const traced = (trace: Trace, more: object = {}) => account({ outline: 'traced', traced: trace, ...more })
const codes = (trace: Trace, more: object = {}) => traced(trace, more).findings.map(({ code }) => code)

/** A blanket of one motif. */
const blanket = (motif: object, layout: object = {}, more: object = {}): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [{ id: 'm', kind: 'measured', ...motif } as NonNullable<Project['motifs']>[number]],
  layout: { kind: 'blanket', motif: 'm', rows: 5, columns: 6, ...layout },
  ...more,
})

/** The same line begun elsewhere, run the other way, and turned. */
function retold(trace: Required<Trace>, first: number, back: boolean, turn: number): Required<Trace> {
  const count = trace.points.length
  const place = (old: number) => (back ? first - old + 2 * count : old - first + count) % count
  const points: number[][] = []
  trace.points.forEach(([x = 0, y = 0], old) => {
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
    points[place(old)] = [x * cos - y * sin, x * sin + y * cos]
  })
  return { points, tips: trace.tips.map(place), dips: trace.dips.map(place) }
}

/** An uneven flower: petals of different lengths, dips of different depths. */
const uneven = fc
  .record({
    tips: fc.array(fc.double({ min: 30, max: 45, noNaN: true }), { minLength: 3, maxLength: 12 }),
    dip: fc.double({ min: 12, max: 25, noNaN: true }),
    steps: fc.integer({ min: 3, max: 12 }),
  })
  .map(({ tips, dip, steps }): Required<Trace> => {
    const each = 2 * steps
    const count = tips.length * each
    const points = Array.from({ length: count }, (_, i) => {
      const tip = tips[Math.round(i / each) % tips.length]!
      const lobe = Math.abs(Math.cos((Math.PI * i) / each))
      const { x, y } = polar(dip + (tip - dip) * lobe, (2 * Math.PI * i) / count)
      return [x, y]
    })
    const at = tips.map((_, k) => k * each)
    return { points, tips: at, dips: at.map((tip) => tip + steps) }
  })

describe('M16 traced outlines', () => {
  it('a measured flower traced is the flower: size, outline, places to join at', () => {
    for (const hand of ['right', 'left'] as const)
      for (const petals of [3, 5, 6, 12, 24]) {
        const sizes = { overTips: 80, overValleys: 56 }
        const plain = account({ outline: 'petals', petals, ...sizes }, hand).account!
        const own = account({ outline: 'traced', traced: traceOf(petals, 80, 56), ...sizes }, hand).account!
        expect(own).toMatchObject({ shape: 'petals', petals, overTips: 80, overValleys: 56 })
        expect(own.anchors.map(({ id }) => id)).toEqual(plain.anchors.map(({ id }) => id))
        own.anchors.forEach((anchor, i) => {
          const other = plain.anchors[i]!
          expect(Math.hypot(anchor.x - other.x, anchor.y - other.y), anchor.id).toBeLessThan(0.03)
          expect(anchor.address).toBe(other.address)
        })
        own.outline.forEach(({ x, y }, i) =>
          expect(Math.hypot(x - plain.outline[i]!.x, y - plain.outline[i]!.y)).toBeLessThan(0.02),
        )
      }
  })

  it('has the tip that is named first at 12 o’clock, however the line is told', () => {
    fc.assert(
      fc.property(
        uneven,
        fc.nat(),
        fc.boolean(),
        fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
        (trace, first, back, turn) => {
          const own = traced(trace).account!
          const other = traced(retold(trace, first % trace.points.length, back, turn)).account!
          expect(own.outline[0]!.x).toBeCloseTo(0, 6)
          expect(own.outline[0]!.y).toBeLessThan(0)
          expect(signedArea(other.outline)).toBeCloseTo(signedArea(own.outline), 6)
          expect(other.outline).toHaveLength(own.outline.length)
          other.outline.forEach((point, i) => {
            expect(point.x).toBeCloseTo(own.outline[i]!.x, 6)
            expect(point.y).toBeCloseTo(own.outline[i]!.y, 6)
          })
          expect(other.anchors.map(({ id }) => id)).toEqual(own.anchors.map(({ id }) => id))
          other.anchors.forEach((anchor, i) => expect(anchor.x).toBeCloseTo(own.anchors[i]!.x, 6))
        },
      ),
    )
  })

  it('comes to the measures beside it, nothing beyond the tips, every place on the line', () => {
    fc.assert(
      fc.property(
        uneven,
        fc.double({ min: 40, max: 300, noNaN: true }),
        fc.double({ min: 0.15, max: 0.95, noNaN: true }),
        (trace, overTips, share) => {
          const overValleys = overTips * share
          const own = traced(trace, { overTips, overValleys }).account!
          const far = own.outline.map(({ x, y }) => Math.hypot(x, y))
          expect(Math.max(...far)).toBeCloseTo(overTips / 2, 6)
          expect(Math.min(...far)).toBeCloseTo(overValleys / 2, 6)
          expect(own.petals).toBe(trace.tips.length)
          const at = (kind: string) => own.anchors.filter((anchor) => anchor.kind === kind)
          expect(at('tip')).toHaveLength(own.petals)
          expect(at('valley')).toHaveLength(own.petals)
          expect(at('shoulder')).toHaveLength(2 * own.petals)
          for (const anchor of own.anchors) {
            const off = own.outline.map((a, i) =>
              distanceToEdge(anchor, a, own.outline[(i + 1) % own.outline.length]!),
            )
            expect(Math.min(...off), anchor.id).toBeLessThan(1e-6)
          }
          expect(contains(own.outline, { x: 0, y: 0 })).toBe(true)
        },
      ),
    )
  })

  it('keeps its own size, or its shape where only one measure was taken', () => {
    const trace = traceOf(6, 80, 56)
    expect(traced(trace).account).toMatchObject({ overTips: 80, overValleys: 56 })
    expect(traced(trace, { overTips: 160 }).account!.overValleys).toBeCloseTo(112, 9)
    expect(traced(trace, { overValleys: 28 }).account!.overTips).toBeCloseTo(40, 9)
    const grown = account({ outline: 'traced', traced: trace, blocked: false }, 'right', 0.1).account!
    expect(grown.overTips).toBeCloseTo(88, 9)
    expect(grown.overValleys).toBeCloseTo(61.6, 9)
  })

  it('finds tips and dips that are not named; an oval is joined at four places', () => {
    const { points } = traceOf(7, 90, 60)
    const found = traced({ points }).account!
    expect(found).toMatchObject({ petals: 7, overTips: 90 })
    expect(found.overValleys).toBeCloseTo(60, 1)
    const oval = Array.from({ length: 60 }, (_, i) => {
      const angle = (2 * Math.PI * i) / 60
      return [30 * Math.sin(angle), -50 * Math.cos(angle)]
    })
    expect(traced({ points: oval }).account).toMatchObject({ petals: 4, overTips: 100 })
  })

  it('refuses what cannot be planned, each with its own finding', () => {
    const { points, tips, dips } = traceOf(6, 80, 56)
    expect(codes({})).toEqual(['motif/trace-short'])
    expect(codes({ points: points.slice(0, 5) })).toEqual(['motif/trace-short'])
    expect(codes({ points: points.map(() => [3, 4]) })).toEqual(['motif/trace-short'])
    expect(codes({ points: [...points, [4]] })).toEqual(['motif/trace-numbers'])
    expect(codes({ points: points.map(([x = 0, y = 0]) => [x * 1e9, y]) })).toEqual(['motif/size-range'])
    expect(codes({ points: points.map(([x = 0, y = 0]) => [x / 1e3, y / 1e3]) })).toEqual([
      'motif/size-range',
    ])
    expect(codes({ points: points.map(([x = 0, y = 0]) => [x + 90, y]) })).toEqual(['motif/trace-middle'])
    const eight = Array.from({ length: 24 }, (_, i) => {
      const angle = (2 * Math.PI * (i + 0.5)) / 24
      return [40 * Math.sin(2 * angle), -40 * Math.cos(angle)]
    })
    expect(codes({ points: eight })).toEqual(['motif/trace-crosses'])
    // Back along its own way.
    expect(codes({ points: [...points, ...points.slice(3, 9).reverse()] })).toEqual(['motif/trace-crosses'])
    for (const wrong of [
      { tips, dips: dips.slice(1) },
      { tips: tips.slice(4), dips: dips.slice(4) },
      { tips: dips, dips: tips },
      { tips: tips.map((tip) => tip + 0.5), dips },
      { tips: [...tips.slice(1), 1e9], dips },
      { tips: [...tips.slice(1), -1], dips },
      { tips, dips: tips },
      { tips },
    ])
      expect(codes({ points, ...wrong }), JSON.stringify(wrong)).toEqual(['motif/trace-places'])
    expect(codes({ points, tips, dips }, { overTips: 50, overValleys: 60 })).toEqual(['motif/size-order'])
    expect(codes({ points, tips, dips })).toEqual([])
  })

  it('a point told twice counts once', () => {
    const { points, tips, dips } = traceOf(6, 80, 56)
    const twice = { points: points.flatMap((point) => [point, point]) }
    const own = traced({ ...twice, tips: tips.map((i) => 2 * i + 1), dips: dips.map((i) => 2 * i) }).account!
    expect(own.outline).toHaveLength(points.length)
    expect(own.anchors).toEqual(traced({ points, tips, dips }).account!.anchors)
  })
})

describe('a blanket of a traced flower', () => {
  const sizes = { overTips: 80, overValleys: 56 }
  it.each([
    ['straight-rows', 'tips', 0],
    ['offset-rows', 'tips', 0],
    ['offset-rows', 'tips', 30],
    ['offset-rows', 'edges', 0],
    ['straight-rows', 'bridge', 0],
    ['rings', 'tips', 30],
  ] as const)('has the joins of the measured one: %s, %s, turned by %i°', (arrangement, rule, turn) => {
    const layout = { arrangement, turn, rings: 3 }
    const joining = { joining: { rule, bridgeChains: rule === 'bridge' ? 4 : 0 } }
    const plain = planProject(blanket({ outline: 'petals', petals: 6, ...sizes }, layout, joining))
    const own = planProject(
      blanket({ outline: 'traced', traced: traceOf(6, 80, 56), ...sizes }, layout, joining),
    )
    const told = (plan: typeof plain) =>
      plan.joins.map(({ members }) => members.map(({ motif, anchor }) => `${motif} ${anchor}`).join(' + '))
    expect(plain.joins.length).toBeGreaterThan(20)
    expect(told(own)).toEqual(told(plain))
    expect(own).toMatchObject({ pieces: plain.pieces, single: plain.single })
    expect(own.pitch!.column).toBeCloseTo(plain.pitch!.column, 1)
    expect(own.size!.width).toBeCloseTo(plain.size!.width, 0)
  })

  it('of petals that are not alike plans, and keeps them from lying over each other', () => {
    fc.assert(
      fc.property(
        uneven,
        fc.constantFrom('straight-rows' as const, 'offset-rows' as const, 'rings' as const),
        fc.double({ min: 0, max: 360, noNaN: true }),
        (trace, arrangement, turn) => {
          const plan = planProject(
            blanket({ outline: 'traced', traced: trace }, { arrangement, rings: 2, turn }),
          )
          expect(plan.motifs.length).toBeGreaterThan(6)
          expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
          expect(plan.motif!.outline.length).toBe(trace.points.length)
          const lying = plan.motifs.map((placed) => {
            const outline = turnOutline(plan.motif!.outline, (placed.turn * Math.PI) / 180)
            return { ...placed, outline: moveOutline(outline, placed.x, placed.y) }
          })
          const [first, ...others] = lying
          for (const other of others) expect(sharedArea([first!.outline], [other.outline])).toBeLessThan(0.5)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('worked looser, a trace without measures grows with its blanket, and back', () => {
    const project = blanket({ outline: 'traced', traced: traceOf(6, 80, 56) })
    const larger = scaledProject(project, 1.25)
    expect(planProject(larger).motif).toMatchObject({ overTips: 100, overValleys: 70 })
    expect(larger.motifs![0]).toMatchObject({ asMeasured: { overTips: 80, overValleys: 56 } })
  })
})
