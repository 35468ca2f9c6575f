/** From a picture to a blanket: what was traced is planned like what was measured. */
import { describe, expect, it } from 'vitest'
import type { MeasuredMotif, Project } from '../../../shared-types/project'
import { signedArea } from '../../../src-core/geometry/points'
import { measuredFrom } from '../../../src-core/photo/motif'
import { measurePhoto } from '../../../src-core/photo/photo'
import { planProject } from '../../../src-core/plan'
import { photograph } from './camera'
import { chance, disc, flower } from './flowers'
import type { Shape } from './flowers'
import { trial } from './scenes'

const measured = (shape: Shape) =>
  measurePhoto(
    photograph({
      ...trial(7).scene,
      ...{ shape, sheet: { width: 210, height: 297 }, at: { x: 0, y: 0 }, turn: 3, tilt: 8, filling: 0.72 },
      ...{ picture: { width: 540, height: 720 }, paper: [0.78, 0.78, 0.76], table: [0.25, 0.13, 0.06] },
      ...{ yarns: [[0.35, 0.05, 0.07]], blur: 0.6, noise: 0.005, relief: 0.1 },
    }),
    { sheet: 'A4' },
  ).measures!

const blanketOf = (motif: MeasuredMotif, arrangement: 'straight-rows' | 'offset-rows'): Project => ({
  ...{ format: 'petalyard-project', version: 1, motifs: [motif] },
  layout: { kind: 'blanket', motif: motif.id, arrangement, rows: 5, columns: 6 },
})

describe('a motif from a photo', () => {
  it('of six petals is traced, and its blanket has the joins of the measured one', () => {
    const motif = measuredFrom(measured(flower('rounded', 6, 96, 0.68, 0.3, 0.02, chance(3))), 'Rose')
    expect(motif).toMatchObject({ name: 'Rose', kind: 'measured', outline: 'traced', petals: 6 })
    const { overTips, overValleys } = motif
    const plain: MeasuredMotif = { ...motif, outline: 'petals', petals: 6, overTips, overValleys }
    for (const arrangement of ['straight-rows', 'offset-rows'] as const) {
      const own = planProject(blanketOf(motif, arrangement))
      const other = planProject(blanketOf(plain, arrangement))
      const told = (plan: typeof own) =>
        plan.joins.map(({ members }) => members.map((each) => `${each.motif} ${each.anchor}`).join(' + '))
      expect(own.findings.filter(({ severity }) => severity === 'error')).toEqual([])
      expect(own.joins.length).toBeGreaterThan(40)
      expect(told(own)).toEqual(told(other))
      expect(own.pieces).toBe(1)
      expect(own.motif).toMatchObject({ shape: 'petals', petals: 6 })
      expect(own.motif!.overTips).toBeCloseTo(overTips!, 6)
      expect(own.motif!.overValleys).toBeCloseTo(overValleys!, 6)
    }
  })

  it('that does not repeat keeps its line as it stands', () => {
    const wide = 44
    // A half moon: its middle is not where it would be round.
    const moon: Shape = {
      ...disc(2 * wide),
      covers: (x, y) => Math.hypot(x, y) < wide && y < 0.5 * wide && x < 0.72 * wide,
    }
    const measures = measured(moon)
    const motif = measuredFrom(measures, 'Moon')
    expect(measures.kind).toBe('other')
    expect(motif).toMatchObject({ outline: 'traced' })
    expect(motif.traced!.points!.length).toBeLessThan(400)
    const account = planProject(blanketOf(motif, 'straight-rows')).motif!
    const whole = measures.outline.map(([x, y]) => ({ x, y }))
    expect(signedArea(account.outline) / Math.abs(signedArea(whole))).toBeCloseTo(1, 2)
    expect(account.petals).toBeGreaterThanOrEqual(3)
  })
})
