import { describe, expect, it } from 'vitest'
import { OUTLINE_KINDS } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import type { Made, OwnMotif } from '../../../src-renderer/start/own-motif'
import { ownProject, secondAssumed } from '../../../src-renderer/start/own-motif'
import { addYarn, newYarn } from '../../../src-renderer/state/edits/yarn'
import { SETTINGS } from '../memory-bridge'

const MADE: readonly Made[] = [
  { kind: 'blanket', width: 1000, height: 1300 },
  { kind: 'garland', length: 2000 },
  { kind: 'garland', wall: 2100, swags: 3 },
  { kind: 'applique', width: 450, height: 400 },
  { kind: 'applique', diameter: 450 },
]

describe('your own motif', () => {
  it.each(OUTLINE_KINDS)('%s: a whole project of every kind, without an error', (outline) => {
    for (const made of MADE) {
      const project = ownProject(SETTINGS, { outline, petals: 6, lead: 70, second: 40 }, made)
      expect(project.layout?.kind).toBe(made.kind)
      const plan = planProject(project)
      expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
      expect(plan.motifs.length).toBeGreaterThan(0)
    }
  })

  it('of one colour has no centre to name its yarn by, and a yarn that is added is told from it', () => {
    const own = { outline: 'hexagon', petals: 6, lead: 70, second: 40 } as const
    const project = ownProject(SETTINGS, own, MADE[0]!)
    const [yarn, ...others] = project.yarns!
    expect(others).toEqual([])
    expect(yarn!.name).toBe('Main yarn')
    let more = project
    for (let count = 0; count < 7; count++) more = addYarn(more, newYarn(more))
    expect(new Set(more.yarns!.map(({ colour }) => colour)).size).toBe(8)
  })

  it('from a photo has its colours, a part and a yarn for each from the middle outwards', () => {
    const own = { outline: 'petals', petals: 6, lead: 70, second: 40 } as const
    const partsWith = (colours: string[], of: OwnMotif = own) => {
      const project = ownProject(SETTINGS, { ...of, colours }, MADE[0]!)
      expect(planProject(project).findings.filter(({ severity }) => severity === 'error')).toEqual([])
      const { yarns } = project.colourways![0]!
      return Object.entries(yarns!).map(([slot, id]) => {
        const { name, colour } = project.yarns!.find((yarn) => yarn.id === id)!
        return [slot, name, colour]
      })
    }
    expect(partsWith(['#d4ad48', '#b44a6e'])).toEqual([
      ['center', 'Center yarn', '#d4ad48'],
      ['petals', 'Petal yarn', '#b44a6e'],
    ])
    expect(partsWith(['#d4ad48', '#ffffff', '#b44a6e'], { ...own, outline: 'square' })).toEqual([
      ['center', 'Center yarn', '#d4ad48'],
      ['ring 2', 'Yarn of ring 2', '#ffffff'],
      ['edge', 'Edge yarn', '#b44a6e'],
    ])
    expect(partsWith(['#b44a6e'])).toEqual([['motif', 'Main yarn', '#b44a6e']])
    expect(partsWith([]).map(([slot]) => slot)).toEqual(['center', 'petals'])
  })

  it('hangs over the wall or along the cord that was wished for', () => {
    const own = { outline: 'petals', petals: 6, lead: 70, second: 40 } as const
    expect(planProject(ownProject(SETTINGS, own, MADE[1]!)).garland!.cord.length).toBe(2000)
    expect(planProject(ownProject(SETTINGS, own, MADE[2]!)).garland!.swags).toMatchObject({
      count: 3,
      width: 2100,
    })
    expect(planProject(ownProject(SETTINGS, own, MADE[3]!)).size).toMatchObject({ width: 450, height: 400 })
  })

  it('takes what a ruler shows of odd petals, and lets the second measure follow', () => {
    const motif = (own: OwnMotif) => ownProject(SETTINGS, own, MADE[0]!).motifs![0]
    const five = { outline: 'petals', petals: 5, ruler: 'opposite', lead: 82 } as const
    expect(motif({ ...five, second: 30 })).toMatchObject({
      ...{ ruler: 'opposite', overTips: 104, overValleys: 60 },
    })
    expect(secondAssumed(five)).toBeCloseTo((82 * 0.68) / 1.68)
    expect(motif(five)).toMatchObject({ overTips: expect.closeTo(164 / 1.68, 5), overValleys: undefined })
    expect(motif({ outline: 'petals', petals: 6, lead: 80 })).not.toHaveProperty('ruler')
  })

  it('begins with round sizes in inches for who measures in inches', () => {
    const inches = { ...SETTINGS, units: 'imperial' } as const
    const own = { outline: 'petals', petals: 6, lead: 76.2 } as const
    const garland = planProject(ownProject(inches, own, { kind: 'garland', length: 1828.8 }))
    expect(garland.garland!.spacing).toBeCloseTo(38.1)
    const panel = ownProject(inches, own, { kind: 'applique', diameter: 457.2 })
    expect(panel.layout).toMatchObject({
      ...{ panel: { shape: 'circle', diameter: 457.2, allowance: 12.7 }, clearance: 6.35 },
      items: [{ x: 228.6, y: 228.6 }],
    })
    expect(panel.allowance?.tail).toBeCloseTo(152.4)
  })

  it('written rounds lead on to the same', () => {
    for (const made of MADE) {
      const project = ownRoundsProject(SETTINGS, made)
      expect(project.layout?.kind).toBe(made.kind)
      expect(project.motifs?.[0]).toMatchObject({ kind: 'rounds' })
    }
  })
})
