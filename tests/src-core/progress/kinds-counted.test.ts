/** Half motifs count among the pieces that were made when a yarn was counted: they are said apart from whole motifs. */
import { describe, expect, it } from 'vitest'
import type { Project, Yarn } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { apartWords, countKinds, piecesNames, piecesWords } from '../../../src-core/progress/pieces'
import { codesOf, findingsOf, first, progressOf, project } from './project'

/** Rows of 4, 3 and 4 with a half at both ends of the second: 11 motifs and 2 halves, all with moss. */
const withHalves = (moss: Partial<Yarn>, made: Record<string, string> = {}): Project => {
  const of = project(
    { made },
    {
      ...{ arrangement: 'offset-rows', alternateRows: 'oneFewer', halves: true },
      cells: { fill: { pattern: 'rows', colourways: ['a'] } },
    },
  )
  return {
    ...of,
    yarns: of.yarns!.map(({ onHandGrams: _, ...yarn }) => (yarn.id === 'moss' ? { ...yarn, ...moss } : yarn)),
  }
}
/** The first row and the second with its halves, by days. */
const MADE = {
  ...first(4, '2026-12-01'),
  ...{ '2,1': '2026-12-02', '2,left': '2026-12-02', '2,2': '2026-12-03', '2,3': '2026-12-03' },
  '2,right': '2026-12-04',
}

describe('what was made when a yarn was counted', () => {
  it('is said for whole motifs and half motifs apart, day by day as it was made', () => {
    const kinds = (at: number) => progressOf(withHalves({ onHandGrams: 20, onHandAt: at }, MADE)).kinds
    expect(progressOf(withHalves({}, MADE))).toMatchObject({ made: 7, others: 2 })
    expect(kinds(4)).toEqual({ 4: { motif: 4 } })
    expect(kinds(6)).toEqual({ 6: { motif: 5, half: 1 } })
    expect(kinds(8)).toEqual({ 8: { motif: 7, half: 1 } })
    expect(kinds(9)).toEqual({ 9: { motif: 7, half: 2 } })
    // More than are made: the next in working order are taken as made.
    expect(kinds(11)).toEqual({ 11: { motif: 9, half: 2 } })
  })

  it('is left out where all are whole motifs, and where no yarn is counted', () => {
    expect(progressOf(withHalves({}, MADE)).kinds).toBeUndefined()
    expect(
      progressOf(project({ made: first(4), yarns: [{ id: 'moss', onHandGrams: 3, onHandAt: 2 }] })).kinds,
    ).toBeUndefined()
  })

  it('stands so in what is said of the yarn', () => {
    const message = (moss: Partial<Yarn>) => findingsOf(withHalves(moss, MADE)).map((each) => each.message)
    expect(message({ onHandGrams: 2, onHandAt: 9 }).join()).toContain(
      'the 2 g on hand with 7 motifs and 2 half motifs made',
    )
    expect(message({ onHandGrams: 20, onHandAt: 10 }).join()).toContain(
      'was counted with 8 motifs and 2 half motifs made, but 9 are marked',
    )
    expect(message({ left: { grams: 20, at: 12, of: 60 } }).join()).toContain(
      'weighed with 10 motifs and 2 half motifs made, but 9 are marked',
    )
    expect(codesOf(withHalves({ onHandGrams: 2, onHandAt: 9 }, MADE))).toEqual(['progress/plan-short'])
  })

  it('has each kind by itself, and names all of them together', () => {
    expect(apartWords({})).toBe('0 motifs')
    expect(apartWords({ motif: 1 })).toBe('1 motif')
    expect(apartWords({ half: 2 })).toBe('2 half motifs')
    expect(apartWords({ motif: 18, filler: 1, half: 2 })).toBe('18 motifs, 1 filler and 2 half motifs')
    const { halves, motifs } = planProject(withHalves({}))
    const kinds = countKinds([
      ...motifs.map(() => ({ kind: 'motif' as const })),
      ...halves.map(() => ({ kind: 'half' as const })),
    ])
    expect(kinds).toEqual({ motif: 11, half: 2 })
    const plan = planProject(withHalves({}))
    expect([piecesNames(plan), piecesNames(planProject(project()))]).toEqual([
      'motifs and half motifs',
      'motifs',
    ])
    expect([piecesWords(plan, 1), piecesWords(plan, 9)]).toEqual([
      '1 motif or half motif',
      '9 motifs and half motifs',
    ])
    const both = { counts: { ...plan.counts, fillers: 3 } }
    expect(piecesWords(both, 1)).toBe('1 motif, filler or half motif')
    expect(piecesWords(both, 4)).toBe('4 motifs, fillers and half motifs')
  })
})
