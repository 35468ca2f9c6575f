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

describe('a yarn of which no more can be had, in colours within the yarn on hand', () => {
  const mossNeed = (of: Project) => planProject(of).yarns.find(({ id }) => id === 'moss')!

  it.each(['scatter', 'by-stash'] as const)('runs short last where not all can be kept: %s', (pattern) => {
    const fill = { pattern, withinStash: true, seed: 1 } as const
    // 100 rims of 3.3 g in all: 330 g, and 200 g are there.
    const onHand = { onHandGrams: 100 }
    const [free, firm] = [begun(fill, onHand), begun(fill, { ...onHand, noMore: true }, onHand)]
    expect(mossNeed(free).grams.high).toBeGreaterThan(110)
    expect(mossNeed(firm).noMore).toEqual({ missing: 0 })
    expect(counts(firm)['a']).toBeLessThan(counts(free)['a']!)
    expect(planProject(firm).yarns.find(({ id }) => id === 'clay')!.toBuy).toBeGreaterThan(0)
    const [found] = limits(firm)
    expect(found!.message).toContain('g of Clay missing')
    expect(found!.message).not.toContain('Moss')
    expect(found!.mend).toMatch(/add yarn/i)
  })

  it('says nothing of adding yarn where none can be had', () => {
    const bound = { onHandGrams: 100, noMore: true }
    for (const pattern of ['scatter', 'by-stash'] as const) {
      const [found] = limits(begun({ pattern, withinStash: true, seed: 1 }, bound))
      expect(found!.message).toMatch(/g of (Moss|Clay) missing/)
      expect(found!.mend).not.toMatch(/add yarn/i)
      expect(found!.mend).toMatch(/^(Choose|Shuffle the colors, or choose) one more colorway/)
    }
  })

  it('is enough with its high end at the rate at which it goes', () => {
    const fill = { pattern: 'scatter', withinStash: true, seed: 1 } as const
    const inexact = (of: Project): Project => ({
      ...of,
      motifs: [{ ...of.motifs![0]!, weighed: { motifs: 1, resolution: 1 } } as never],
    })
    const told = (of: Project) =>
      planProject(inexact(of)).progress.forecast.find(({ yarn }) => yarn === 'moss')!
    const [free, firm] = [
      begun(fill, left(60), left(170)),
      begun(fill, { ...left(60), noMore: true }, left(170)),
    ]
    expect(told(free)).toMatchObject({ enough: true, tight: true })
    expect(told(firm)).toMatchObject({ enough: true })
    expect(told(firm).tight).toBeUndefined()
    expect(planProject(inexact(firm)).counts.byColourway['a']).toBeLessThan(
      planProject(inexact(free)).counts.byColourway['a']!,
    )
  })
})
