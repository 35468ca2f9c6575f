import { describe, expect, it } from 'vitest'
import type { Project, Yarn } from '../../../shared-types/project'
import { fitFromHave, planProject } from '../../../src-core/plan'
import { heldAgainst } from '../../../src-core/progress/held-against'
import { forecastWords, weighedWords } from '../../../src-core/progress/words'
import { blanketOf } from '../../../src-core/plans/layouts'
import { codesOf, findingsOf, first, progressOf, project } from './project'

/** Moss goes into motifs 1 to 4 and 9 to 12: 3.3 g each (3 g and 10 % waste), ±5 %; four are made. */
const withMoss = (moss: Partial<Yarn>, made = first(4, '2026-12-01')): Project => {
  const of = project({ made })
  return {
    ...of,
    yarns: of.yarns!.map(({ onHandGrams: _, ...yarn }) => (yarn.id === 'moss' ? { ...yarn, ...moss } : yarn)),
  }
}
const mossOf = (of: Project) => planProject(of).yarns.find(({ id }) => id === 'moss')!
const told = (of: Project) => progressOf(of).forecast[0]!
const allCodes = (of: Project) => planProject(of).findings.map(({ code }) => code)

describe('M42: yarn that is counted while a work is made', () => {
  it('is held against what is left to make, not against the whole', () => {
    // 26.4 g go into all of it: 14 g would be short at the beginning, and do for the four that are left.
    const [before, now] = [withMoss({ onHandGrams: 14 }), withMoss({ onHandGrams: 14, onHandAt: 4 })]
    expect(allCodes(before)).toContain('yarn/stash-short')
    expect(allCodes(now).filter((code) => /stash|progress/.test(code))).toEqual([])
    expect(mossOf(now)).toMatchObject({ onHand: 14, toBuy: 0, cost: 0 })
    expect(mossOf(now).leftover).toBeCloseTo(14 - 13.2, 9)
    expect(told(now)).toMatchObject({ enough: true, rate: 1, left: 14, at: 4, lastsTo: 12 })
    expect(told(now).plan!.high).toBeCloseTo(4 * 3.3 * 1.05, 9)
    expect(heldAgainst(mossOf(now), progressOf(now))).toEqual({
      need: expect.closeTo(13.86, 9) as number,
      there: 14,
    })
  })

  it('says how far it goes by the plan, what is missing at the most, and buys that', () => {
    const of = withMoss({ onHandGrams: 10, onHandAt: 4 })
    // 3.465 g at the most: two motifs more, 9 and 10.
    expect(told(of)).toMatchObject({ enough: false, lastsTo: 10 })
    expect(told(of).missing).toBeCloseTo(3.86, 9)
    expect(mossOf(of)).toMatchObject({ toBuy: 1, cost: 4 })
    const [found] = findingsOf(of)
    expect(found).toMatchObject({ code: 'progress/plan-short', target: { yarn: 'moss' } })
    expect(found!.message).toBe(
      'Moss: by the plan, the 10 g on hand with 4 motifs made last to motif 10 of 12; up to 3.9 g more are needed.',
    )
    expect(forecastWords(told(of), of.yarns!, 12, 'metric')).toBe(
      'By the plan Moss lasts to motif 10 of 12: up to 13.9 g go into what is left, so up to 3.9 g more are needed.',
    )
    expect(weighedWords(told(of), 'metric')).toBe(
      '10 g on hand now for up to 13.9 g still to use, up to 3.9 g short',
    )
    expect(codesOf(withMoss({ onHandGrams: 13.4, onHandAt: 4 }))).toEqual(['progress/plan-tight'])
    expect(told(withMoss({ onHandGrams: 0, onHandAt: 4 }))).toMatchObject({ spent: true, next: 9 })
  })

  it('is counted in balls as well, and of nothing it says nothing', () => {
    expect(told(withMoss({ onHandBalls: 0.2, onHandAt: 4 }))).toMatchObject({ left: 10, lastsTo: 10 })
    expect(progressOf(withMoss({ onHandAt: 4 })).forecast).toEqual([])
    expect(progressOf(withMoss({ onHandGrams: 14, onHandAt: 0 })).forecast).toEqual([])
  })

  it('is where a later weighing starts from', () => {
    // 14 g with four made, 7 g with ten: motifs 9 and 10 took 7 g, 3.5 g each; two more take as much.
    const of = withMoss({ onHandGrams: 14, onHandAt: 4, left: { grams: 7, at: 10 } }, first(10, '2026-12-01'))
    expect(told(of)).toMatchObject({ start: 14, left: 7, at: 10, enough: true })
    expect(told(of).plan).toBeUndefined()
    expect(told(of).rate).toBeCloseTo(3.5 / 3.3, 9)
    expect(told(of).over).toBeCloseTo(0, 9)
    // Weighed before it was counted, it says nothing any more.
    const older = withMoss({ onHandGrams: 14, onHandAt: 4, left: { grams: 1, at: 3 } })
    expect(told(older)).toMatchObject({ left: 14, at: 4, rate: 1 })
    // Counted and weighed at once: what was weighed is there.
    const both = withMoss({ onHandGrams: 14, onHandAt: 4, left: { grams: 12, at: 4 } })
    expect(told(both)).toMatchObject({ left: 12, at: 4, rate: 1 })
    expect(codesOf(both)).toEqual(['progress/plan-short'])
  })

  it('takes the next in working order as made where fewer are marked', () => {
    const of = withMoss({ onHandGrams: 14, onHandAt: 9 })
    expect(codesOf(of)).toEqual(['progress/counted-ahead'])
    expect(told(of).plan!.expected).toBeCloseTo(3 * 3.3, 9)
  })

  it('is what a filling within the stash may take beside what is made', () => {
    // Clay for the middle row; of 14 g of moss eight motifs cannot be made, but the four that are left can.
    const within = (moss: Partial<Yarn>): Project => {
      const of = withMoss(moss)
      const layout = blanketOf(of)!
      const fill = { ...layout.cells!.fill!, withinStash: true }
      const yarns = of.yarns!.map((yarn) => (yarn.id === 'moss' ? yarn : { ...yarn, onHandGrams: 500 }))
      return { ...of, yarns, layout: { ...layout, cells: { ...layout.cells, fill } } }
    }
    const mossy = (of: Project) => planProject(of).counts.byColourway.a
    expect(mossy(within({ onHandGrams: 14, onHandAt: 4 }))).toBe(8)
    expect(mossy(within({ onHandGrams: 14 }))).toBeLessThan(8)
  })

  it('is what the largest from the yarn on hand is asked of', () => {
    const enough = { onHandGrams: 500 }
    const of = withMoss({ onHandGrams: 14, onHandAt: 4 })
    const rich = {
      ...of,
      yarns: of.yarns!.map((yarn) => (yarn.id === 'moss' ? yarn : { ...yarn, ...enough })),
    }
    const most = Math.max(...fitFromHave(rich, { stash: true }).arrangements.map(({ motifs }) => motifs))
    const poor = { ...rich, yarns: rich.yarns.map(({ onHandAt: _, ...yarn }) => yarn) }
    const least = Math.max(...fitFromHave(poor, { stash: true }).arrangements.map(({ motifs }) => motifs))
    expect(most).toBeGreaterThan(least)
  })
})
