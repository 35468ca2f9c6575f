import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { texturesFor } from '../../../src-core/figures/ink-textures'
import { colourwayMarks, fillerMarks } from '../../../src-core/figures/marks'
import { textureKind, TEXTURE_COUNT } from '../../../src-core/figures/textures'
import { samplePlan } from './sample'
import { settled } from '../../../src-core/settled'

describe('the textures of colourways', () => {
  it('are denser the darker the yarns, and all distinct as long as there are enough', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 40 }),
        (lightnesses) => {
          const textures = texturesFor(lightnesses)
          expect(textures).toHaveLength(lightnesses.length)
          if (lightnesses.length <= TEXTURE_COUNT) expect(new Set(textures).size).toBe(textures.length)
          lightnesses.forEach((one, i) =>
            lightnesses.forEach((other, k) => {
              if (one > other) expect(textures[i]!).toBeLessThanOrEqual(textures[k]!)
            }),
          )
          for (const texture of textures) expect(textureKind(texture)).toBeDefined()
        },
      ),
    )
  })

  it('leave cream blank or nearly so, and ink what is nearly black', () => {
    const [cream, black] = texturesFor([92, 15])
    expect(textureKind(cream!).ink).toBeLessThan(0.1)
    expect(textureKind(black!).ink).toBeGreaterThan(0.5)
  })

  it('keep two light yarns apart by more than their lightness asks for', () => {
    const [lighter, light] = texturesFor([88, 84])
    expect(textureKind(light!).ink - textureKind(lighter!).ink).toBeGreaterThan(0.15)
  })

  it('weigh every part of a motif by its area: dark petals ask for more than a dark centre', () => {
    const { project, plan } = samplePlan({ columns: 4, rows: 4, colourways: 2 })
    const yarns = [
      { id: 'dark', colour: '#222222' },
      { id: 'light', colour: '#eeeeee' },
    ]
    const [first, second] = project.colourways!
    const colourways = [
      { ...first!, yarns: { petals: 'dark', centre: 'light' } },
      { ...second!, yarns: { petals: 'light', centre: 'dark' } },
    ]
    const [dark, light] = colourwayMarks({ ...plan, settled: settled({ ...project, yarns, colourways }) })
    expect(dark!.texture).toBeGreaterThan(light!.texture)
  })

  it('are one choice for motifs and fillers together, and what has no colourway gets its own', () => {
    const { plan } = samplePlan({ columns: 4, rows: 4, colourways: 2 })
    const filler = { id: '1,1+1,2', label: '', x: 0, y: 0, turn: 0, colourway: '', points: [] }
    const all = { ...plan, fillers: [{ ...filler } as unknown as (typeof plan.fillers)[number]] }
    const marks = colourwayMarks(all)
    const [own] = fillerMarks(all)
    expect(new Set([...marks.map(({ texture }) => texture), own!.texture]).size).toBe(3)
  })
})
