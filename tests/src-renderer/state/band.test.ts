import { describe, expect, it } from 'vitest'
import { addYarn, confirmBand, findYarn, newYarn, patchYarn } from '../../../src-renderer/state/edits/yarn'
import { ownProject } from '../../../src-renderer/start/own-motif'
import { planProject } from '../../../src-core/plan'
import { SMALL } from '../projects'

describe('the band of a new yarn', () => {
  it('is assumed, field by field, until it is entered or confirmed', () => {
    const project = addYarn(SMALL, newYarn(SMALL))
    const assumed = (changed: typeof project) => findYarn(changed, 'y3')!.assumed
    expect(assumed(project)).toEqual(['ballGrams', 'ballMetres', 'price'])
    expect(assumed(patchYarn(project, 'y3', { ballGrams: 100 }))).toEqual(['ballMetres', 'price'])
    expect(assumed(patchYarn(project, 'y3', { name: 'Oat' }))).toEqual(['ballGrams', 'ballMetres', 'price'])
    const right = confirmBand(project, 'y3')
    expect(findYarn(right, 'y3')).not.toHaveProperty('assumed')
    expect(findYarn(right, 'y3')).toMatchObject({ ballGrams: 50, ballMetres: 125, price: 4 })
  })

  it('is assumed from the start, and the plan says so once for all yarns', () => {
    const settings = {
      ...{ units: 'metric', terms: 'US', hand: 'right', currency: 'EUR', paper: 'A4' },
    } as unknown as Parameters<typeof ownProject>[0]
    const own = { outline: 'petals', petals: 6, lead: 80 } as const
    const project = ownProject(settings, own, { kind: 'blanket', width: 600, height: 600 })
    const weighed = project.motifs!.map((motif) => ({ ...motif, weighed: { motifs: 10, grams: 40 } }))
    const plan = planProject({ ...project, motifs: weighed })
    expect(plan.yarns.map(({ assumed }) => assumed)).toEqual(
      plan.yarns.map(() => ['metres', 'balls', 'toBuy', 'leftover']),
    )
    const said = plan.findings.filter(({ code }) => code === 'yarn/band-assumed')
    expect(said).toHaveLength(1)
    expect(said[0]!.message).toMatch(/^Center yarn \(50 g, 125 m\) and Petal yarn \(50 g, 125 m\): nobody/)
  })
})
