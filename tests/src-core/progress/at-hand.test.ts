/** Colours by what is on hand, once yarn was weighed or counted while the work was made. */
import { describe, expect, it } from 'vitest'
import type { Project, Yarn } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { holdWork } from '../../../src-core/progress/hold'
import { markMade } from '../../../src-core/progress/mark'
import { project } from './project'

type Fill = { pattern: 'by-stash' | 'scatter'; withinStash?: boolean; seed?: number }

/** 100 motifs with a rim of moss or of clay, 40 of them made. */
function begun(fill: Fill, moss: Partial<Yarn>, clay: Partial<Yarn> = moss): Project {
  const bare = project(
    {
      yarns: [
        { id: 'sand', name: 'Sand', ballGrams: 50, ballMetres: 125, onHandGrams: 1000 },
        { id: 'moss', name: 'Moss', ballGrams: 50, ballMetres: 125, onHandGrams: 250 },
        { id: 'clay', name: 'Clay', ballGrams: 50, ballMetres: 125, onHandGrams: 250 },
      ],
    },
    { columns: 10, rows: 10, cells: { fill: { ...fill, colourways: ['a', 'b'] } } },
  )
  const made = markMade(bare, planProject(bare).motifs.slice(0, 40), '2026-12-01')
  const more: Record<string, Partial<Yarn>> = { moss, clay }
  return holdWork(made, { ...made, yarns: made.yarns!.map((yarn) => ({ ...yarn, ...more[yarn.id] })) })
}

const counts = (of: Project) => planProject(of).counts.byColourway
const missing = (of: Project, id: string) =>
  planProject(of).progress.forecast.find(({ yarn }) => yarn === id)!.missing
const limits = (of: Project) =>
  planProject(of).findings.filter(({ code }) => code.startsWith('colours/limits'))
/** 70 g were used for the 20 that are made. */
const left = (grams: number): Partial<Yarn> => ({ left: { grams, at: 40, of: grams + 70 } })

describe('colours within the yarn on hand, in a work that is begun', () => {
  it('take what was weighed last, at the rate at which it went', () => {
    const fill = { pattern: 'scatter', withinStash: true, seed: 1 } as const
    // Plenty at the beginning; of moss little is left, of clay enough.
    const even = begun(fill, {})
    expect(limits(even)).toEqual([])
    const short = begun(fill, left(60), left(170))
    expect(counts(short)['a']).toBeLessThan(counts(even)['a']!)
    expect(limits(short)).toEqual([])
    expect(missing(short, 'moss')).toBe(0)
    expect(missing(short, 'clay')).toBe(0)
  })

  it('are short by just as much as the forecast says', () => {
    for (const [moss, clay] of [
      [left(40), left(60)],
      [
        { onHandGrams: 40, onHandAt: 40 },
        { onHandGrams: 60, onHandAt: 40 },
      ],
    ]) {
      const short = begun({ pattern: 'scatter', withinStash: true, seed: 1 }, moss!, clay)
      const [found] = limits(short)
      const told = ['moss', 'clay'].map((id) => missing(short, id))
      expect(told.reduce((sum, grams) => sum + grams, 0)).toBeGreaterThan(20)
      for (const [at, id] of ['Moss', 'Clay'].entries()) {
        const [, grams] = new RegExp(`([\\d.]+) g of ${id} missing`).exec(found!.message) ?? []
        // As exactly as it is shown.
        expect(Math.abs(Number(grams ?? 0) - told[at]!), id).toBeLessThanOrEqual(0.5)
      }
    }
  })

  it('go as what is left of the stash goes', () => {
    const even = begun({ pattern: 'by-stash' }, {})
    const short = begun({ pattern: 'by-stash' }, left(60), left(170))
    expect(counts(even)['a']).toBe(50)
    expect(counts(short)['a']).toBeLessThan(45)
    expect(missing(short, 'moss') + missing(short, 'clay')).toBe(0)
  })
})
