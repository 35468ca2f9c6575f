import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { projectSchema } from '../../shared-types/project'
import type { Project } from '../../shared-types/project'
import { DEFAULTS, settled } from '../../src-core/settled'

const EXAMPLES = new URL('../../examples/', import.meta.url)
const examples = readdirSync(EXAMPLES).filter((name) => name.endsWith('.petalyard'))
const readExample = (name: string): Project =>
  projectSchema.parse(JSON.parse(readFileSync(new URL(name, EXAMPLES), 'utf8')))

const EMPTY: Project = { format: 'petalyard-project', version: 1 }

describe('a settled project', () => {
  it('has every default where the file says nothing', () => {
    expect(settled(EMPTY)).toMatchObject({
      units: 'metric',
      terms: 'US',
      hand: 'right',
      currency: 'EUR',
      order: 'there-and-back',
      joining: { rule: 'tips', seam: 'whip', bridgeChains: 0, gap: 0 },
      allowance: { wastePercent: 10, tail: 150 },
      sheet: { paper: 'A4', style: 'ink', terms: 'US' },
      yarns: [],
      motifs: [],
      colourways: [],
      refused: [],
    })
    expect(settled(EMPTY).layout).toBeUndefined()
  })

  it('takes the terms of the sheet from the project, and the gauge of a motif too', () => {
    const gauge = { stitches: 18 }
    const own = { stitches: 22 }
    const { sheet, motifs } = settled({
      ...EMPTY,
      terms: 'UK',
      gauge,
      motifs: [
        { id: 'a', kind: 'measured', outline: 'round', across: 60 },
        { id: 'b', kind: 'measured', outline: 'round', across: 60, gauge: own },
      ],
    })
    expect(sheet.terms).toBe('UK')
    expect(motifs.map((motif) => motif.gauge)).toEqual([gauge, own])
  })

  it('refuses waste and tails below zero, says so, and takes the default', () => {
    const { allowance, refused } = settled({ ...EMPTY, allowance: { wastePercent: -5, tail: 80 } })
    expect(allowance).toEqual({ wastePercent: DEFAULTS.allowance.wastePercent, tail: 80 })
    expect(refused.map(({ code, where }) => [code, where])).toEqual([
      ['yarn/invalid-allowance', 'allowance.wastePercent'],
    ])
  })

  it('takes a field without a value as one that is not there', () => {
    const layout = { kind: 'blanket', arrangement: undefined, blocking: { width: undefined } } as const
    expect(settled({ ...EMPTY, layout }).layout).toMatchObject({
      arrangement: 'straight-rows',
      blocking: { width: 1, height: 1 },
    })
  })

  it.each(examples)('is the same object again, and its own: %s', (name) => {
    const project = readExample(name)
    expect(settled(project)).toBe(settled(project))
    expect(settled(settled(project))).toBe(settled(project))
  })

  it.each(examples)('stays a project file, with nothing changed that is written in it: %s', (name) => {
    const project = readExample(name)
    expect(projectSchema.safeParse(settled(project)).success).toBe(true)
    expect(settled(project)).toMatchObject({ ...project, motifs: project.motifs ?? [] })
  })

  it.each(examples)('keeps the parts that did not change: %s', (name) => {
    const project = readExample(name)
    const before = settled(project)
    const after = settled({ ...project, title: 'Another' })
    expect(after.layout).toBe(before.layout)
    expect(after.motifs).toBe(before.motifs)
    expect(after.joining).toBe(before.joining)
  })
})
