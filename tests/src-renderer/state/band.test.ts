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

  it('sets it for the words that skeins are named by: of that hue, and as light or dark as they say', () => {
    const part = (at: number) => (name: string) => parseInt(coloured(name)!.slice(at, at + 2), 16)
    const [red, green, blue] = [part(1), part(3), part(5)]
    const light = (name: string) => red(name) + green(name) + blue(name)
    for (const name of ['Sea foam', 'Seafoam', 'Moss', 'Bottle green', 'Pine', 'Leaf'])
      expect([name, green(name) > red(name) && green(name) >= blue(name)]).toEqual([name, true])
    for (const name of ['Poppy', 'Cranberry', 'Terracotta', 'Blossom', 'Hot pink'])
      expect([name, red(name) > green(name) && red(name) > blue(name)]).toEqual([name, true])
    for (const name of ['Cornflower', 'Royal blue', 'Midnight', 'Petrol'])
      expect([name, blue(name) > red(name)]).toEqual([name, true])
    expect(light('Oatmeal')).toBeGreaterThan(light('Walnut'))
    expect(light('Dark oatmeal')).toBeLessThan(light('Oatmeal'))
    expect(coloured('Merino 4')).toBe(findYarn(added, 'y3')!.colour)
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
