import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { wideWords } from '../../../src-core/figures/holding-words'
import { gapesMostly } from '../../../src-core/joins/checks'
import { fitProject, planProject, proposeProject } from '../../../src-core/plan'

/** Seven petals: nowhere do the tips of all neighbours meet. */
const WISH = { width: 1100, height: 1500 }
const seven = (overTips: number, overValleys: number): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [{ id: 'a', kind: 'measured', outline: 'petals', petals: 7, overTips, overValleys }],
  layout: { kind: 'blanket', motif: 'a', arrangement: 'offset-rows', target: WISH },
})

describe('join points that gape', () => {
  it.each([
    [104, 82],
    [100, 62],
  ])('are counted as the plan finds them, and come last where most do: %d over %d mm', (tips, valleys) => {
    const project = seven(tips, valleys)
    const fits = fitProject(project, WISH).arrangements
    expect(fits.some(({ wide }) => wide)).toBe(true)
    for (const fit of fits) {
      const { arrangement, columns, rows, alternateRows, turn, alternateTurn } = fit
      const plan = planProject({
        ...project,
        layout: {
          ...{ kind: 'blanket', motif: 'a', arrangement, columns, rows, alternateRows, turn, alternateTurn },
        },
      })
      const wide = plan.joins.filter(({ stretched }) => stretched)
      expect(fit.wide?.joins ?? 0).toBe(wide.length)
      const said = plan.findings.find(({ code }) => code === 'joins/stretched')
      expect(said?.target?.cells?.length ?? 0).toBe(
        new Set(wide.flatMap(({ members }) => members.map(({ motif }) => motif))).size,
      )
      if (!fit.wide) continue
      expect(fit.wide).toMatchObject({ of: plan.joins.length })
      expect(fit.wide.widest).toBeCloseTo(Math.max(...wide.map(({ spread }) => spread)), 9)
      expect(said!.message).toContain(`${wide.length} join points`)
    }
    const gape = fits.map(({ wide }) => gapesMostly(wide))
    expect(gape).toEqual([...gape].sort((a, b) => Number(a) - Number(b)))
    const [first] = proposeProject(project, WISH).proposals
    // Straight rows close at every join: more joins that gape do not go before them.
    expect(first!.fit).toMatchObject({ arrangement: 'straight-rows', pieces: 1, single: 0 })
    expect(first!.fit.wide).toBeUndefined()
  })

  it('of finished motifs are sewn loosely: no chain is worked into them any more', () => {
    // Six petals in straight rows, rotated by 4°: their tips pass each other.
    const tilted: Project = {
      ...seven(104, 82),
      motifs: [{ id: 'a', kind: 'measured', outline: 'petals', petals: 6, overTips: 104, overValleys: 82 }],
      layout: { kind: 'blanket', motif: 'a', arrangement: 'straight-rows', columns: 4, rows: 4, turn: 4 },
    }
    const gaps = (project: Project) =>
      planProject(project).findings.filter(({ code }) => code.startsWith('joins/stretched'))
    const [asYouGo] = gaps(tilted)
    expect(asYouGo).toMatchObject({ code: 'joins/stretched' })
    expect(asYouGo!.mend).toContain('a chain more')
    const sewn = gaps({ ...tilted, joining: { rule: 'seam' } })
    expect(sewn.map(({ code }) => code)).toEqual(['joins/stretched-seam'])
    expect(sewn[0]!.mend).toContain('Sew loosely')
    expect(sewn[0]!.mend).not.toContain('chain')
  })

  it('put an arrangement in which most gape behind all that close, and say so', () => {
    // Rotated so, neighbours meet beside their tips only.
    const tilted = { ...seven(104, 82), layout: { ...seven(104, 82).layout, turn: 6 } } as Project
    const fits = fitProject(tilted, WISH).arrangements
    expect(fits[0]!.wide).toBeUndefined()
    expect(gapesMostly({ joins: 5, of: 10 })).toBe(false)
    expect(gapesMostly({ joins: 6, of: 10 })).toBe(true)
    expect(wideWords({ joins: 381, of: 381, widest: 7.84, closes: 6.24 }, 'metric')).toBe(
      'all 381 join points have gaps of up to 7.8 mm; gaps of up to 6.2 mm draw closed as you join',
    )
    expect(wideWords({ joins: 1, of: 9, widest: 7.84, closes: 6.24 }, 'metric')).toMatch(
      /^1 of 9 join points has a gap of up to/,
    )
    expect(wideWords(undefined, 'metric')).toBe('')
  })
})
