/** What stops the largest from the yarn on hand: what one more row needs, and what rules of the colours cost. */
import { describe, expect, it } from 'vitest'
import type { FitArrangement } from '../../../shared-types/plan'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { stopWords } from '../../../src-core/figures/stop-words'
import { layoutOf } from '../../../src-core/layout/candidates'
import { fitFromHave, planProject } from '../../../src-core/plan'

type Fill = NonNullable<NonNullable<BlanketLayout['cells']>['fill']>

/** Hexagons of 3 g in three colourways, each of one yarn: 3.3 g with what is allowed for waste. */
const hexagons = (fill: Fill, onHand: readonly number[]): Project => ({
  format: 'petalyard-project',
  version: 1,
  yarns: onHand.map((grams, index) => ({
    ...{ id: `y${index}`, name: ['Cream', 'Moss', 'Rust'][index] as string },
    ...{ ballGrams: 50, ballMetres: 125, onHandGrams: grams },
  })),
  motifs: [
    {
      ...{ id: 'm1', kind: 'measured', outline: 'hexagon', sideToSide: 80 },
      ...{ slots: [{ slot: 'all', grams: 3 }], weighed: { motifs: 1, resolution: 0 } },
    },
  ],
  colourways: onHand.map((_, index) => ({ id: `c${index}`, motif: 'm1', yarns: { all: `y${index}` } })),
  joining: { rule: 'edges' },
  allowance: { wastePercent: 10, tail: 0 },
  layout: {
    ...{ kind: 'blanket', motif: 'm1', arrangement: 'offset-rows', alternateRows: 'oneFewer' },
    ...{ columns: 6, rows: 8, cells: { fill } },
  },
})
const all = ['c0', 'c1', 'c2']

const laid = (project: Project, fit: FitArrangement, more: Partial<Fill>, rows = 0): Project => {
  const layout = project.layout as BlanketLayout
  const { fill } = layout.cells!
  return {
    ...project,
    layout: {
      ...layout,
      ...layoutOf({ ...fit, rows: fit.rows + rows }),
      cells: { fill: { ...fill, ...more } },
    },
  }
}
const missing = (project: Project) =>
  planProject(project).yarns.flatMap(({ id, grams, onHand }) =>
    grams.high - onHand > 0.5 ? [{ id, grams: grams.high - onHand }] : [],
  )

describe('M26 what stops the largest from the yarn on hand', () => {
  it('is what one more row would need, of each arrangement', () => {
    const project = hexagons({ pattern: 'scatter', colourways: all }, [200, 150, 100])
    const { arrangements } = fitFromHave(project, { stash: true })
    expect(arrangements.length).toBeGreaterThan(2)
    for (const fit of arrangements) {
      const { next } = fit.stops!
      expect(missing(laid(project, fit, { withinStash: true }))).toEqual([])
      const more = planProject(laid(project, fit, { withinStash: true }, 1))
      expect(next).toMatchObject({ of: 'row', motifs: more.motifs.length - fit.motifs })
      const short = missing(laid(project, fit, { withinStash: true }, 1))
      expect(next!.missing.map(({ id }) => id)).toEqual(short.map(({ id }) => id))
      next!.missing.forEach(({ grams }, at) => expect(grams).toBeCloseTo(short[at]!.grams, 6))
      // As scarce as it is, all of the yarn that is there together does not make another row.
      const lacked = next!.missing.reduce((sum, { grams }) => sum + grams, 0)
      expect(lacked).toBeGreaterThanOrEqual(3.3 * more.motifs.length - 450 - 1e-6)
    }
  })

  it('is the rule that no two alike touch, where without it there were more', () => {
    const project = hexagons({ pattern: 'no-two-alike', colourways: all }, [400, 150, 100])
    const { arrangements } = fitFromHave(project, { stash: true })
    const [first, ...others] = arrangements
    const [rule] = first!.stops!.rules
    expect(rule).toMatchObject({ rule: 'apart' })
    // 30 of the third at the most, and about as many of each other; of what is there 196 could be made.
    expect(first!.motifs).toBeLessThan(110)
    expect(first!.motifs + rule!.motifs).toBeGreaterThan(150)
    expect(first!.motifs + rule!.motifs).toBeLessThanOrEqual(650 / 3.3)
    const free = fitFromHave(hexagons({ pattern: 'scatter', colourways: all }, [400, 150, 100]), {
      stash: true,
    })
    expect(free.arrangements.some(({ motifs }) => motifs === first!.motifs + rule!.motifs)).toBe(true)
    expect(free.arrangements.every(({ stops }) => stops!.rules.length === 0)).toBe(true)
    expect(others.every(({ stops }) => (stops?.rules ?? []).length === 0)).toBe(true)
  })

  it('is a limit of its own, and no limit that costs nothing', () => {
    const most = (mostGrams: Record<string, number>) =>
      fitFromHave(hexagons({ pattern: 'repeat', colourways: all, mostGrams }, [150, 150, 150]), {
        stash: true,
      }).arrangements[0]!
    // Of 150 g there is no reason to go beyond 1,000.
    expect(most({ y0: 1000 }).stops!.rules).toEqual([])
    const limited = most({ y0: 20 })
    expect(limited.motifs).toBeLessThanOrEqual((20 + 300) / 3.3)
    expect(limited.stops!.rules[0]).toMatchObject({ rule: 'limits' })
  })

  it('takes less than is shown for nothing missing, as the shopping list does', () => {
    // 30 motifs of 3.3 g are 99 g; of the third yarn a fifth of a gram is missing for a third of 90.
    const project = hexagons({ pattern: 'repeat', colourways: all }, [99, 99, 98.8])
    const { arrangements } = fitFromHave(project, { stash: true })
    const best = Math.max(...arrangements.map(({ motifs }) => motifs))
    expect(best).toBeGreaterThanOrEqual(90)
    for (const fit of arrangements)
      expect(
        planProject(laid(project, fit, { withinStash: true })).yarns.every(({ toBuy }) => toBuy === 0),
      ).toBe(true)
  })

  it('is told in words', () => {
    const nameOf = (id: string) => ({ y1: 'Moss', y2: 'Rust' })[id] ?? id
    const words = (stops: FitArrangement['stops']) =>
      stopWords({ motifs: 119, ...(stops && { stops }) }, nameOf, 'metric', 'US')
    expect(words(undefined)).toEqual([])
    expect(
      words({
        next: {
          of: 'row',
          motifs: 8,
          missing: [
            { id: 'y1', grams: 30.4 },
            { id: 'y2', grams: 20 },
          ],
        },
        rules: [
          { rule: 'apart', motifs: 14 },
          { rule: 'limits', motifs: 1 },
        ],
      }),
    ).toEqual([
      'One more row, 8 motifs, would need 30 g of Moss and 20 g of Rust more than you have.',
      'That no two alike touch costs 14 motifs: without it there would be 133.',
      'The limits of colorways and yarns cost 1 motif: without them there would be 120.',
    ])
  })
})

describe('colours that can be kept apart in one way alone', () => {
  const findings = (project: Project) =>
    planProject(project).findings.flatMap(({ code, mend }) =>
      code.startsWith('colours/') ? [{ code, mend }] : [],
    )
  it('are no reason to shuffle', () => {
    // Rows of 5 and 4 in turn: the shorter ones lack the same colour each time.
    const fill: Fill = { pattern: 'no-two-alike', colourways: all, seed: 1 }
    const uneven = hexagons(fill, [400, 400, 400])
    const nine = { ...uneven, layout: { ...uneven.layout, columns: 9, rows: 14 } as BlanketLayout }
    const counts = Object.values(planProject(nine).counts.byColourway).sort((a, b) => a - b)
    expect(counts).toEqual([35, 42, 42])
    expect(findings(nine)).toEqual([
      { code: 'colours/uneven-alone', mend: 'Choose one more colorway for more even numbers.' },
    ])
  })
})
