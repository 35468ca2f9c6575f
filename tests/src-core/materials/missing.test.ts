/** What materials say of what they are not told. */
import { describe, expect, it } from 'vitest'
import { materials } from '../../../src-core/materials/materials'
import { resolveGauge, stitchYarn } from '../../../src-core/stitches/gauge'
import { codes, daisy, flower, flowerAccount, input, project, yarn } from './helpers'
import { settled } from '../../../src-core/settled'

describe('what is missing is said', () => {
  it('names yarns without ball band, price or usable values', () => {
    const yarns = [
      { id: 'y1', ballGrams: 50, price: -1 },
      { id: 'y2', ballGrams: 0, ballMetres: 125 },
    ]
    const found = codes(materials(input({ project: project({ yarns }) })))
    expect(found).toEqual(
      expect.arrayContaining([
        'yarn/no-ball-length',
        'yarn/no-ball-weight',
        'yarn/no-price',
        'yarn/invalid-value',
      ]),
    )
  })

  it('tells metres alone where no ball band brings them to grams', () => {
    const yarns = [{ id: 'y1' }, { id: 'y2' }]
    const found = materials(input({ motif: flower, account: flowerAccount, project: project({ yarns }) }))
    const need = yarn(found, 'y1')
    expect(need.metres?.expected).toBeCloseTo((600 + 30) * 1.1, 9)
    expect([need.balls, need.toBuy, need.leftover, need.cost]).toEqual([null, null, null, null])
    expect(codes(found)).toContain('yarn/no-ball-band')
  })

  it('names colours that nothing is known of, and motifs without a colourway', () => {
    const motif = { ...daisy, slots: [{ slot: 'centre', grams: 0.8 }, { slot: 'petals' }] }
    const found = materials(input({ motif, counts: { motifs: 100, byColourway: { c1: 60, '': 40 } } }))
    expect(codes(found)).toEqual(expect.arrayContaining(['yarn/no-weight', 'yarn/no-colourway']))
    expect(found.findings.find((finding) => finding.code === 'yarn/no-colourway')?.message).toContain('40')
    expect(found.ends).toBe(400)
    expect(yarn(found, 'y1').grams.expected).toBe(0)
  })

  it('marks a rule of thumb only where it is used', () => {
    const gauge = resolveGauge({ hook: 4 }, 'US')
    expect(codes(materials(input({ gauge })))).not.toContain('gauge/missing')
    const joined = project({ joining: { rule: 'bridge', bridgeChains: 2, yarn: 'y1' } })
    const found = materials(input({ gauge, project: joined, joinOperations: 10 }))
    expect(codes(found)).toContain('gauge/missing')
    const joins = yarn(found, 'y1').parts.joins
    expect(joins).toBeCloseTo((10 * 4 * stitchYarn('ch', gauge) * 0.4) / 1000, 9)
    const sure = yarn(materials(input({ gauge })), 'y1').grams
    const { grams } = yarn(found, 'y1')
    expect(grams.high - grams.expected - (sure.high - sure.expected)).toBeCloseTo(joins * 0.25 * 1.1, 9)
  })

  it('names weighings and allowances that cannot be, and goes on without them', () => {
    const weighed = { motifs: 0, grams: 43, resolution: -1 }
    const allowance = { wastePercent: -5, tail: -1 }
    const asked = project({ allowance })
    const found = materials(input({ motif: { ...flower, weighed }, account: flowerAccount, project: asked }))
    expect(codes(found).filter((code) => code === 'yarn/invalid-weighing')).toHaveLength(2)
    expect(settled(asked).refused.map(({ code }) => code)).toEqual([
      'yarn/invalid-allowance',
      'yarn/invalid-allowance',
    ])
    expect(yarn(found, 'y1').grams.expected).toBeCloseTo((240 + 12) * 1.1, 9)
  })

  it('answers an empty project', () => {
    const empty = input({ project: { format: 'petalyard-project', version: 1 }, motif: null })
    const found = materials({ ...empty, counts: { motifs: 0, byColourway: {} } })
    expect(found).toEqual({ yarns: [], edging: null, ends: 0, minutes: null, findings: [] })
  })
})
