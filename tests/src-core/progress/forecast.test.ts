import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { forecastWords } from '../../../src-core/progress/words'
import { codesOf, findingsOf, first, progressOf, project, weighed } from './project'

/** Moss: 30 g on hand, 3.3 g in each of motifs 1 to 4 and 9 to 12 (3 g and 10 % waste). */
const mossLeft = (left: Parameters<typeof weighed>[2], made = first(4)) =>
  weighed(project({ made }), 'moss', left)
const forecastOf = (of: ReturnType<typeof project>) => progressOf(of).forecast

describe('how far a yarn goes that was weighed again', () => {
  it('takes the place of what was counted before the yarn was weighed', () => {
    const codes = (of: Project) => planProject(of).findings.map(({ code }) => code)
    const { yarns = [], ...all } = project({ made: first(4, '2026-12-01') })
    const begun = {
      ...all,
      yarns: yarns.map((yarn) => (yarn.id === 'moss' ? { ...yarn, onHandGrams: 25 } : yarn)),
    }
    expect(codes(begun)).toContain('yarn/stash-short')
    const told = codes(weighed(begun, 'moss', { grams: 5, at: 4 }))
    expect(told).toContain('progress/runs-out')
    expect(told.filter((code) => code.startsWith('yarn/stash'))).toEqual([])
  })

  it('is told at the rate of the motifs made so far, over the rest of the working order', () => {
    // 4 motifs took 30 − 14 = 16 g: 4 g each, 4 / 3.3 of the plan. 14 g are three motifs more: 9, 10 and 11.
    const [moss, ...others] = forecastOf(mossLeft({ grams: 14, at: 4 }))
    expect(others).toEqual([])
    expect(moss).toMatchObject({
      yarn: 'moss',
      lastsTo: 11,
      enough: false,
      over: 0,
      start: 30,
      left: 14,
      at: 4,
    })
    expect(moss!.rate).toBeCloseTo(4 / 3.3, 9)
    expect(moss!.missing).toBeCloseTo(4 * 4 - 14, 9)
    const [found] = findingsOf(mossLeft({ grams: 14, at: 4 }))
    expect(found).toMatchObject({ code: 'progress/runs-out', target: { yarn: 'moss' } })
    expect(found!.message).toBe('at this rate Moss lasts to motif 11 of 12; 2 g more are needed.')
  })

  it('says what will be left over where it is enough', () => {
    // 4 motifs took 13 g, the other four take as much: of 17 g 4 g stay.
    const [moss] = forecastOf(mossLeft({ grams: 17, at: 4 }))
    expect(moss).toMatchObject({ lastsTo: 12, enough: true, missing: 0 })
    expect(moss!.over).toBeCloseTo(4, 9)
    expect(codesOf(mossLeft({ grams: 17, at: 4 }))).toEqual([])
  })

  it('is only just enough where less is left over than one motif takes', () => {
    const words = (left: number, noMore = false) => {
      const of = mossLeft({ grams: left, at: 4 })
      const yarns = of.yarns!.map((yarn) => (yarn.id === 'moss' && noMore ? { ...yarn, noMore } : yarn))
      const [moss] = forecastOf({ ...of, yarns })
      return { moss: moss!, words: forecastWords(moss!, yarns, 12, 'metric') }
    }
    // 4 motifs took 14 g, 3.5 g each: of 16 g 2 g stay, of 17 g (13 g, 3.25 g each) 4 g.
    expect(words(16).moss).toMatchObject({ enough: true, scant: true })
    expect(words(16).words).toBe(
      'At this rate Moss is only just enough: about 2 g will be left over, less than one motif takes. Weigh it again soon, or have a little more at hand.',
    )
    expect(words(16, true).words).toMatch(
      /less than one motif takes\. No more can be had: weigh it again soon\.$/,
    )
    expect(words(17).moss.scant).toBeUndefined()
    expect(words(17).words).toBe('At this rate Moss is enough: about 4 g will be left over.')
    // Nothing is left to make of it: nothing can go wrong.
    const all = mossLeft({ grams: 1, at: 12 }, first(12))
    expect(forecastOf(all)[0]).toMatchObject({ enough: true })
    expect(forecastOf(all)[0]!.scant).toBeUndefined()
  })

  it('counts a ball that just suffices as enough, and one short by a gram as short', () => {
    expect(forecastOf(mossLeft({ grams: 15, at: 4 }))[0]).toMatchObject({
      lastsTo: 12,
      enough: true,
      over: 0,
    })
    expect(forecastOf(mossLeft({ grams: 14.9, at: 4 }))[0]).toMatchObject({ lastsTo: 11, enough: false })
  })

  it('follows the colours: motifs in other yarns take none of it', () => {
    // Weighed after row 2, which is in clay: it is the same as after row 1.
    const after = forecastOf(mossLeft({ grams: 14, at: 8 }, first(8)))
    expect(after[0]).toMatchObject({ lastsTo: 11, at: 8 })
    expect(after[0]!.rate).toBeCloseTo(4 / 3.3, 9)
  })

  it('stays the same when more is marked of the day on which it was weighed', () => {
    // Row 3 was marked first, all of it with moss; two of row 2, which has none and is worked before, later that day.
    const day = '2026-12-01'
    const third = Object.fromEntries(['3,1', '3,2', '3,3', '3,4'].map((key) => [key, day]))
    const weighed = { grams: 20, at: 4 }
    const before = forecastOf(mossLeft(weighed, third))[0]!
    const after = forecastOf(mossLeft(weighed, { ...third, '2,1': day, '2,2': day }))[0]!
    expect(after.rate).toBeCloseTo(before.rate, 9)
    expect(before.rate).toBeGreaterThan(0)
  })

  it('goes back to what was made when it was weighed, by day and then in the order of marking', () => {
    // Weighed at 4; since then row 2 and motif 9 were made, which takes 4 g of what was left.
    const made = { ...first(8, '2026-12-02'), '3,1': '2026-12-03' }
    expect(forecastOf(mossLeft({ grams: 14, at: 4 }, made))[0]).toMatchObject({ lastsTo: 11, enough: false })
    // The third row was made first: 1 to 4 are still to come.
    const third = { '3,1': '2026-12-01', '3,2': '2026-12-01', '3,3': '2026-12-01', '3,4': '2026-12-01' }
    expect(forecastOf(mossLeft({ grams: 14, at: 4 }, third))[0]).toMatchObject({ lastsTo: 3, enough: false })
  })

  it('ends with the last motif that has it when all is gone', () => {
    // 30 g for 4 motifs are 7.5 g each, far more than the plan says.
    const gone = mossLeft({ grams: 0, at: 4 })
    expect(forecastOf(gone)[0]).toMatchObject({
      lastsTo: 4,
      spent: true,
      next: 9,
      enough: false,
      missing: 30,
    })
    expect(codesOf(gone)).toEqual(['progress/spent', 'progress/rate-far'])
    // One more of 7.5 g, and it goes on.
    expect(forecastOf(mossLeft({ grams: 14.9, at: 4 }))[0]!.spent).toBeUndefined()
  })

  it('of a yarn for joins alone tells how many were joined, not how many are made', () => {
    // All twelve are made and four of them sewn together, in a yarn of their own of which 30 g are far too many.
    const glue = { id: 'glue', name: 'Glue', ballGrams: 50, ballMetres: 125, onHandGrams: 50 }
    const sewn = project({ made: first(12), joined: first(4), joining: { rule: 'seam', yarn: 'glue' } })
    const of = weighed({ ...sewn, yarns: [...sewn.yarns!, glue] }, 'glue', { grams: 20, at: 12 })
    const far = planProject(of).findings.find(({ code }) => code.startsWith('progress/rate-far'))
    expect(far?.code).toBe('progress/rate-far-joins')
    expect(far?.message).toContain('used for 4 motifs joined by then')
  })

  it('counts tails and joins where the yarn of a motif follows from its stitches', () => {
    // Nothing is assumed of the parts: at the rate of the plan itself, what the plan needs is exactly enough.
    const bridged = project({ made: first(4), joining: { rule: 'bridge', bridgeChains: 3, yarn: 'moss' } })
    const [moss] = progressOf(bridged).left.yarns.filter(({ id }) => id === 'moss')
    const need = progressOf({ ...bridged, made: {} }).left.yarns.find(({ id }) => id === 'moss')!
    const exact = weighed(bridged, 'moss', { grams: moss!.grams.expected, at: 4, of: need.grams.expected })
    expect(forecastOf(exact)[0]).toMatchObject({ enough: true, lastsTo: 12 })
    expect(forecastOf(exact)[0]!.rate).toBeCloseTo(1, 9)
  })

  it('keeps something for the edging', () => {
    const edged = { edging: { rounds: ['sc', 'dc'], yarn: 'moss' } }
    const short = weighed(project({ made: first(4) }, edged), 'moss', { grams: 16.8, at: 4 })
    expect(forecastOf(short)[0]).toMatchObject({ lastsTo: 12, enough: false })
    expect(codesOf(short)).toEqual(['progress/edging-short'])
  })

  it('starts from what was on hand, from what was said instead, else from the whole balls to buy', () => {
    expect(forecastOf(mossLeft({ grams: 14, at: 4, of: 34 }))[0]).toMatchObject({ start: 34 })
    // Clay: 13.2 g are needed, none is on hand: one ball of 50 g.
    const clay = weighed(project({ made: first(8) }), 'clay', { grams: 35, at: 8 })
    expect(forecastOf(clay)[0]).toMatchObject({ yarn: 'clay', start: 50, lastsTo: 8, enough: true })
    const bare = { ...clay, yarns: clay.yarns!.map(({ ballGrams: _, ...yarn }) => yarn) }
    // Nobody knows: 35 g are more than the nothing that is left in clay.
    expect(forecastOf(bare)[0]).toMatchObject({ rate: 1, left: 35, enough: true })
    expect(forecastOf(bare)[0]!.plan).toMatchObject({ expected: 0 })
    expect(codesOf(bare)).toEqual(['progress/no-start'])
  })

  it('takes all that is marked where nobody said how many were made', () => {
    expect(forecastOf(mossLeft({ grams: 14 }))[0]).toMatchObject({ at: 4, lastsTo: 11 })
  })

  it('tells nothing while nothing is made', () => {
    for (const left of [{ grams: 14 }, { grams: 14, at: 0 }, {}]) {
      expect(forecastOf(mossLeft(left, {}))).toEqual([])
      expect(codesOf(mossLeft(left, {}))).toEqual([])
    }
  })
})

describe('what is to buy of a yarn that was weighed again', () => {
  const mossOf = (of: Project) => planProject(of).yarns.find(({ id }) => id === 'moss')!

  it('is what the forecast says is missing, and nothing where it says that there is enough', () => {
    // Of 26.4 g there are 25, of which four took 13.2: the plan alone buys a ball. Weighed at half the rate of the plan, nothing is missing.
    const { yarns = [], ...all } = project({ made: first(4, '2026-12-01') })
    const begun = {
      ...all,
      yarns: yarns.map((yarn) => (yarn.id === 'moss' ? { ...yarn, onHandGrams: 25 } : yarn)),
    }
    expect(mossOf(begun)).toMatchObject({ toBuy: 1, cost: 4 })
    const slow = weighed(begun, 'moss', { grams: 17, at: 4 })
    expect(forecastOf(slow)[0]).toMatchObject({ enough: true })
    // 8 g for four, 8 g for the other four: 9 g stay.
    expect(mossOf(slow)).toMatchObject({ toBuy: 0, cost: 0 })
    expect(mossOf(slow).leftover).toBeCloseTo(9, 9)
    // 4 g each: 16 g for four more, and 14 are left. The plan alone had enough of 30.
    const fast = mossLeft({ grams: 14, at: 4 })
    expect(mossOf(mossLeft({}))).toMatchObject({ toBuy: 0 })
    expect(mossOf(fast)).toMatchObject({ toBuy: 1, cost: 4 })
    expect(mossOf(fast).leftover).toBeCloseTo(50 - 2, 9)
  })

  it('is what is missing alone where nothing was on hand: what was weighed was bought', () => {
    const bare = (left: Parameters<typeof weighed>[2]) => {
      const of = weighed(project({ made: first(4, '2026-12-01') }), 'moss', left)
      return { ...of, yarns: of.yarns!.map((yarn) => ({ ...yarn, onHandGrams: 0 })) }
    }
    // One ball of 50 g was bought, 10 of it used for four: 40 are enough for the other four.
    expect(mossOf(bare({ grams: 40, at: 4 }))).toMatchObject({ toBuy: 0, cost: 0 })
    // 40 g used for four, 10 left: 30 are missing, one ball.
    expect(mossOf(bare({ grams: 10, at: 4 }))).toMatchObject({ toBuy: 1, cost: 4 })
    // Three times the plan is no rate: the ball that was taken for bought was not what there was.
    expect(forecastOf(bare({ grams: 10, at: 4 }))[0]).toMatchObject({ rate: 1, lastsTo: 10 })
    expect(codesOf(bare({ grams: 10, at: 4 }))).toEqual(['progress/plan-short', 'progress/no-start'])
  })
})

describe('a weighing that cannot be right', () => {
  it.each([
    ['it weighs less than nothing', { grams: -1, at: 4 }, 'progress/weighed-value'],
    ['half a motif was made', { grams: 14, at: 4.5 }, 'progress/weighed-value'],
    ['more were made than there are', { grams: 14, at: 13 }, 'progress/weighed-beyond'],
  ])('is told, and no forecast: %s', (_, left, code) => {
    expect(forecastOf(mossLeft(left))).toEqual([])
    expect(codesOf(mossLeft(left))).toEqual([code])
  })

  it.each([31, 30])('is held against the plan where nothing of it was used: %s g left of 30', (grams) => {
    const of = mossLeft({ grams, at: 4 })
    // Four more of 3.3 g, each with the range of a weight: ±5 %.
    expect(forecastOf(of)[0]).toMatchObject({ rate: 1, left: grams, lastsTo: 12, enough: true })
    expect(forecastOf(of)[0]!.plan!.expected).toBeCloseTo(13.2, 9)
    expect(forecastOf(of)[0]!.plan!.high).toBeCloseTo(13.86, 9)
    expect(codesOf(of)).toEqual(['progress/nothing-used'])
  })

  it('is told where none of the made motifs has the yarn', () => {
    const clay = weighed(project({ made: first(4) }), 'clay', { grams: 40, at: 4, of: 50 })
    expect(forecastOf(clay)).toEqual([])
    expect(codesOf(clay)).toEqual(['progress/none-in-yarn'])
  })

  it('is told where more were made than are marked, and the next ones are taken as made', () => {
    const ahead = mossLeft({ grams: 14, at: 4 }, first(3))
    expect(codesOf(ahead)).toEqual(['progress/weighed-ahead', 'progress/runs-out'])
    expect(forecastOf(ahead)[0]).toMatchObject({ lastsTo: 11 })
  })
})
