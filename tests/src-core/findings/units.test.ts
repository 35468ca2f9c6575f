import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { CATALOGUE } from '../../../src-core/findings/catalogue'
import { finding, toldTo } from '../../../src-core/findings/finding'
import { boundValues, fineLengthValue, lengthValue, mostValue } from '../../../src-core/findings/quantities'
import { measureProject } from '../../../src-core/accounts'
import { checkProject, planProject } from '../../../src-core/plan'
import { formatBound } from '../../../src-core/units/format'
import { readQuantity } from '../../../src-core/units/read'

const project = (units: 'metric' | 'imperial'): Project => ({
  format: 'petalyard-project',
  version: 1,
  units,
  motifs: [
    { id: 'm1', kind: 'measured', outline: 'petals', petals: 6, overTips: 76.2 },
    { id: 'm2', kind: 'measured', outline: 'round', across: 1 },
    { id: 'm3', kind: 'measured', outline: 'square', sideToSide: 100, pointToPoint: 101 },
  ],
  layout: { kind: 'blanket', motif: 'm1', columns: 3, rows: 3, edging: { rounds: ['sc'] } },
  joining: { rule: 'apart', gap: 900 },
  forChild: true,
})

describe('findings in the units of their reader', () => {
  it('tell the same lengths in inches or in mm, and keep nothing else behind', () => {
    const told = toldTo({ units: 'imperial' }, [
      finding('layout/gap', 'joining.gap', { received: lengthValue(635), most: mostValue(500) }),
    ])
    expect(told[0]!.message).toBe('a gap of 25 in between motifs is not from 0 to 19⅝ in.')
    expect(told[0]).not.toHaveProperty('values')
    const [metric] = toldTo({ units: 'metric' }, [
      finding('layout/gap', 'joining.gap', { received: lengthValue(635), most: mostValue(500) }),
    ])
    expect(metric!.message).toBe('a gap of 63.5 cm between motifs is not from 0 to 50 cm.')
  })

  it('no plan, check or measure speaks of mm to who measures in inches, nor of inches to others', () => {
    for (const [units, foreign] of [
      ['imperial', /\d (mm|cm|g)\b/],
      ['metric', /\d (in|oz)\b/],
    ] as const) {
      const one = project(units)
      const applique: Project = {
        ...one,
        layout: {
          kind: 'applique',
          panel: { shape: 'circle', diameter: 4000, allowance: 500 },
          clearance: 2000,
          items: [{ motif: 'm1', x: 1e5, y: 0 }],
        },
      }
      const panel: Project = {
        ...applique,
        layout: {
          kind: 'applique',
          panel: { width: 300, height: 300, allowance: 200 },
          items: [{ motif: 'm1', x: 1e5, y: 0 }],
        },
      }
      const findings = [one, applique, panel].flatMap((each) => [
        ...checkProject(each),
        ...planProject(each).findings,
        ...measureProject(each).findings,
        ...measureProject(each).motifs.flatMap((motif) => motif.findings),
      ])
      expect(findings.length).toBeGreaterThan(12)
      for (const { message, mend } of findings) expect(`${message} ${mend}`).not.toMatch(foreign)
      for (const entry of findings) expect(entry).not.toHaveProperty('values')
    }
  })

  it('leaves no unit of length in the catalogue, where every number brings its own', () => {
    for (const [code, { message, mend }] of Object.entries(CATALOGUE))
      expect(`${code}: ${message} ${mend}`).not.toMatch(/\} (mm|cm|g)\b|\d (mm|cm)\b/)
  })

  it('a bound in eighths can be entered as it is told', () => {
    for (const mm of [1, 5, 20, 50, 100, 200, 3000, 10_000])
      for (const side of ['least', 'most'] as const) {
        const read = readQuantity(formatBound(mm, 'imperial', side), { kind: 'length', units: 'imperial' })
        expect(read.ok && (side === 'least' ? read.value >= mm : read.value <= mm)).toBe(true)
      }
    expect(boundValues({ least: 20, most: 3000 })).toEqual({
      least: { metric: '20 mm', imperial: '⅞ in' },
      most: { metric: '300 cm', imperial: '118 in' },
    })
    // An eighth stays itself.
    expect(formatBound(25.4, 'imperial', 'least')).toBe('1 in')
    expect(formatBound(76.2, 'imperial', 'most')).toBe('3 in')
  })

  it('stitches are told finer than eighths', () => {
    expect(fineLengthValue(4.2)).toEqual({ metric: '4.2 mm', imperial: '0.17 in' })
    expect(lengthValue(1)).toEqual({ metric: '1 mm', imperial: '0.039 in' })
  })
})
