import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { differencesOf } from '../../../src-core/fields/differences'

const PLAN: Project = {
  format: 'petalyard-project',
  version: 1,
  units: 'imperial',
  yarns: [{ id: 'y', name: 'Oat', price: 4 }],
  motifs: [{ id: 'm', name: 'Daisy', kind: 'measured', outline: 'petals', petals: 6, overTips: 76.2 }],
  layout: { kind: 'blanket', arrangement: 'straight-rows', motif: 'm', columns: 4, rows: 14 },
}
const other = (more: Partial<Project>) => differencesOf(PLAN, { ...PLAN, ...more })

describe('two versions of a project', () => {
  it('that are the same differ in nothing', () => {
    expect(differencesOf(PLAN, structuredClone(PLAN))).toEqual([])
  })

  it('differ in fields, by their names and in the units of the project', () => {
    const layout = { ...PLAN.layout!, rows: 9 } as Project['layout']
    expect(other({ layout })).toEqual([{ what: 'Rows', here: '14', there: '9' }])
    const motifs = [{ ...PLAN.motifs![0]!, overTips: 101.6 }] as Project['motifs']
    expect(other({ motifs })).toEqual([{ what: 'Daisy: Tip to tip', here: '3 in', there: '4 in' }])
    const { price: _, ...yarn } = PLAN.yarns![0]!
    expect(other({ yarns: [yarn] })).toEqual([
      { what: expect.stringMatching(/^Oat: Price/), here: '4', there: null },
    ])
  })

  it('differ in what is counted: motifs made and painted, yarns, colorways, rounds', () => {
    expect(other({ made: { '1,1': '', '1,2': '' } })).toEqual([
      { what: 'Motifs made', here: '0', there: '2' },
    ])
    const colourways = [{ id: 'a', code: 'A', motif: 'm' }]
    expect(other({ colourways })).toEqual([{ what: 'Colorways', here: '0', there: '1' }])
  })
})
