import { describe, expect, it } from 'vitest'
import {
  addYarn,
  confirmBand,
  findYarn,
  nameYarn,
  newYarn,
  patchYarn,
} from '../../../src-renderer/state/edits/yarn'
import { ownProject } from '../../../src-renderer/start/own-motif'
import { planProject } from '../../../src-core/plan'
import { SMALL } from '../projects'

describe('the first name of a yarn', () => {
  const added = addYarn(SMALL, newYarn(SMALL))
  const coloured = (name: string, project = added) => findYarn(nameYarn(project, 'y3', name), 'y3')!.colour

  it('sets the colour that it says', () => {
    const begun = findYarn(added, 'y3')!.colour
    expect(coloured('Cream')).toBe('#f3e7cb')
    // A name of CSS Color Module Level 4.
    expect(coloured('Salmon')).toBe('#fa8072')
    expect(coloured('Harbour')).toBe(begun)
    expect(findYarn(nameYarn(added, 'y3', 'Cream'), 'y3')!.name).toBe('Cream')
  })

  it('leaves one that was chosen, and that of a yarn which has a name', () => {
    expect(coloured('Cream', patchYarn(added, 'y3', { colour: '#123456' }))).toBe('#123456')
    expect(coloured('Moss', nameYarn(added, 'y3', 'Cream'))).toBe('#f3e7cb')
  })
})

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
