/** A yarn of which no more can be had: it is never to be bought, and what is missing of it is said everywhere. */
import { describe, expect, it } from 'vitest'
import type { Project, Yarn } from '../../../shared-types/project'
import { noMoreWords } from '../../../src-core/figures/yarn-words'
import { planProject } from '../../../src-core/plan'
import { missingWords } from '../../../src-core/ways/words'
import { expectKept } from '../ways/expect-kept'
import { SQUARES } from '../ways/squares'
import { first, project } from '../progress/project'

const withMoss = (moss: Partial<Yarn>, more: Partial<Project> = {}): Project => {
  const base = project(more)
  return { ...base, yarns: base.yarns!.map((yarn) => (yarn.id === 'moss' ? { ...yarn, ...moss } : yarn)) }
}
const mossOf = (of: Project) => planProject(of).yarns.find(({ id }) => id === 'moss')!
const about = (of: Project) =>
  planProject(of).findings.filter(
    ({ code, target }) => target?.yarn === 'moss' && /short|tight|runs-out|spent/.test(code),
  )

describe('a yarn of which no more can be had', () => {
  it('is not to be bought, but what is missing is counted by the high end', () => {
    const { noMore: _, ...free } = mossOf(withMoss({ onHandGrams: 10 }))
    expect(free.toBuy).toBe(1)
    const bound = mossOf(withMoss({ onHandGrams: 10, noMore: true }))
    expect(bound).toMatchObject({ toBuy: 0, cost: 0, leftover: 0 })
    expect(bound.noMore!.missing).toBeCloseTo(bound.grams.high - 10, 9)
    expect(mossOf(withMoss({ onHandGrams: 60, noMore: true })).noMore).toEqual({ missing: 0 })
    // Nor where no band says what a ball weighs, or nothing is there.
    const none = mossOf(withMoss({ onHandGrams: 0, noMore: true }))
    expect(none.noMore!.missing).toBeCloseTo(none.grams.high, 9)
  })

  it('says what can be done instead of buying', () => {
    const [free] = about(withMoss({ onHandGrams: 10 }))
    expect(free).toMatchObject({ code: 'yarn/stash-short' })
    expect(free!.mend).toBe('Buy what is missing, or make fewer motifs in this yarn.')
    for (const onHandGrams of [0, 10]) {
      const [bound] = about(withMoss({ onHandGrams, noMore: true }))
      expect(bound!.code).toBe('yarn/stash-short')
      expect(bound!.mend).toMatch(
        /^No more of it can be had: make \d motifs in another color or leave them out\.$/,
      )
    }
    const tight = mossOf(withMoss({ onHandGrams: 10 })).grams.expected + 0.1
    const [bound] = about(withMoss({ onHandGrams: tight, noMore: true }))
    expect(bound!.code).toBe('yarn/stash-tight')
    expect(bound!.mend).toContain('make 1 motif in another color or leave it out')
  })

  it('counts as many motifs too many as what is missing comes to', () => {
    // 8 motifs of 3 g and a tenth for waste; half of them can be made of what is there.
    const high = mossOf(withMoss({})).grams.high
    const [found] = about(withMoss({ onHandGrams: high / 2, noMore: true }))
    expect(found!.mend).toContain('make 4 motifs in')
  })

  it('names the border and the joins where they take of it, what is enough by itself first', () => {
    const edged = withMoss(
      { onHandGrams: 10, noMore: true },
      { terms: 'UK', joining: { rule: 'seam', yarn: 'moss' } },
    )
    const layout = { ...edged.layout!, edging: { rounds: ['dc'], yarn: 'moss' } } as Project['layout']
    const short = mossOf({ ...edged, layout }).grams.high
    const all = withMoss({ onHandGrams: 10, noMore: true }, { ...edged, layout })
    const [found] = about({ ...all, yarns: edged.yarns! })
    expect(found!.mend).toContain('work the edging in another yarn')
    expect(found!.mend).toContain('or join in another yarn')
    const nearly = {
      ...edged,
      layout,
      yarns: edged.yarns!.map((yarn) => (yarn.id === 'moss' ? { ...yarn, onHandGrams: short - 1 } : yarn)),
    }
    expect(about(nearly)[0]!.mend).toMatch(/^No more of it can be had: work the edging in another yarn, make/)
  })

  it('keeps to what was weighed again, and to what was made before', () => {
    const left = { grams: 5, at: 4, of: 20 }
    const bought = withMoss({ left }, { made: first(4, '2026-12-01') })
    const bound = withMoss({ left, noMore: true }, { made: first(4, '2026-12-01') })
    expect(mossOf(bought).toBuy).toBe(1)
    const { forecast } = planProject(bound).progress
    expect(mossOf(bound)).toMatchObject({ toBuy: 0, again: true, noMore: { missing: forecast[0]!.missing } })
    expect(forecast[0]!.missing).toBeGreaterThan(1)
    expect(about(bought)[0]!.mend).toMatch(/^Buy what is missing while/)
    expect(about(bound)[0]!.mend).toMatch(/^No more of it can be had: make some motifs in another color/)
    // Made before it was laid out, 4 motifs take nothing of what is on hand.
    const before = mossOf(withMoss({ onHandGrams: 10, noMore: true }, { made: first(4) }))
    const high = mossOf(withMoss({ onHandGrams: 10 })).grams.high
    expect(before.noMore!.missing).toBeCloseTo(high / 2 - 10, 6)
    expect(about(withMoss({ onHandGrams: 14, noMore: true }, { made: first(4) }))).toEqual([])
  })

  it('is told below tables, and in ways to a size', () => {
    const nameOf = (id: string) => id.toUpperCase()
    const words = (needs: Parameters<typeof noMoreWords>[0]) => noMoreWords(needs, nameOf, 'metric')
    expect(
      words([
        { id: 'moss', noMore: { missing: 13.8 } },
        { id: 'clay', noMore: { missing: 0 } },
        { id: 'sand' },
      ]),
    ).toBe('13.8 g of MOSS missing, and no more can be had')
    expect(words([{ id: 'clay', noMore: { missing: 0 } }])).toBe('')
    const bound: Project = {
      ...SQUARES,
      yarns: [{ id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 125, onHandGrams: 1, noMore: true }],
      colourways: [{ id: 'c', motif: 'm', yarns: { all: 'y' } }],
      layout: {
        ...SQUARES.layout!,
        cells: { fill: { pattern: 'one', colourways: ['c'] } },
      } as Project['layout'],
    }
    const ways = expectKept(bound, { width: 1092 })
    expect(ways.length).toBeGreaterThan(0)
    expect(ways.every(({ buy }) => buy === undefined)).toBe(true)
    const [edged] = ways.filter(({ kinds }) => kinds.join() === 'edging')
    expect(edged!.missing![0]!.grams).toBeGreaterThan(1)
    expect(missingWords(edged!, nameOf, 'metric')).toMatch(/^Missing, and no more to be had: Y [\d.]+ g$/)
  })
})
