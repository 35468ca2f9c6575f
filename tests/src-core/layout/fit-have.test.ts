import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { holds } from '../../../src-core/joins/holding'
import { layoutOf } from '../../../src-core/layout/candidates'
import { fitHave, withinStash } from '../../../src-core/layout/fit-have'
import { createPlanner, fitFromHave } from '../../../src-core/plan'

/** Squares of 3 g in two colourways, each of one yarn. */
const squares = (layout: Partial<BlanketLayout>, onHand: readonly number[] = [200, 100]): Project => ({
  format: 'petalyard-project',
  version: 1,
  yarns: onHand.map((grams, index) => ({
    ...{ id: `y${index}`, name: `Yarn ${index}`, ballGrams: 50, ballMetres: 125, onHandGrams: grams },
  })),
  motifs: [
    {
      ...{ id: 'm1', kind: 'measured', outline: 'square', sideToSide: 80 },
      ...{ slots: [{ slot: 'all', grams: 3 }], weighed: { motifs: 1, resolution: 0 } },
    },
  ],
  colourways: [0, 1].map((index) => ({ id: `c${index}`, motif: 'm1', yarns: { all: `y${index}` } })),
  joining: { rule: 'edges' },
  allowance: { wastePercent: 10 },
  layout: {
    ...{ kind: 'blanket', motif: 'm1', columns: 6, rows: 8, target: { width: 960, height: 1280 } },
    cells: { fill: { pattern: 'repeat', colourways: ['c0', 'c1'] } },
    ...layout,
  },
})

it('asks for no arrangement where the yarn on hand is short for a single motif', () => {
  const planner = createPlanner()
  let asked = 0
  const counting = {
    ...planner,
    numbers: (project: Project) => {
      asked++
      return planner.numbers(project)
    },
  }
  const { arrangements, findings } = fitHave(squares({}, [2, 1]), { stash: true }, counting)
  expect(arrangements).toEqual([])
  expect(findings.map(({ code }) => code)).toEqual(['layout/fit-stash'])
  // What it takes as it is: nothing smaller or larger is tried.
  expect(asked).toBeLessThanOrEqual(1)
})

describe('M26 arrangements from motifs that are made', () => {
  it('are rectangles of no more motifs, what holds first, and tell what is left over', () => {
    const { arrangements, findings } = fitFromHave(squares({}), { motifs: 300 })
    expect(findings).toEqual([])
    expect(arrangements[0]).toMatchObject({ arrangement: 'straight-rows', columns: 15, rows: 20, left: 0 })
    for (const fit of arrangements) {
      expect(fit.motifs + fit.left!).toBe(300)
      expect(fit.left).toBeGreaterThanOrEqual(0)
    }
    const held = arrangements.map(holds)
    expect(held).toEqual([...held].sort((a, b) => Number(b) - Number(a)))
    expect(new Set(arrangements.map(({ arrangement }) => arrangement)).size).toBe(2)
  })

  it('fill so many rows that one more would take more than there are', () => {
    for (const motifs of [1, 2, 7, 97, 301])
      for (const fit of fitFromHave(squares({ alternateRows: 'oneFewer' }), { motifs }).arrangements) {
        const { columns, rows, arrangement, alternateRows } = fit
        const fewer = arrangement === 'offset-rows' && alternateRows === 'oneFewer'
        const many = (count: number) => columns * count - (fewer ? Math.floor(count / 2) : 0)
        expect(fit.motifs).toBe(many(rows))
        expect(many(rows + 1)).toBeGreaterThan(motifs)
      }
  })
})

describe('M26 the largest arrangement from the yarn on hand', () => {
  it('leaves nothing to buy, and one more row or column would', () => {
    const project = squares({})
    const { arrangements } = fitFromHave(project, { stash: true })
    const best = arrangements.find(({ arrangement }) => arrangement === 'straight-rows')!
    const planner = createPlanner()
    const buys = (columns: number, rows: number) => {
      const rich = withinStash(project)
      const { fill } = (rich.layout as BlanketLayout).cells!
      expect(fill!.withinStash).toBe(true)
      const layout = {
        ...(rich.layout as BlanketLayout),
        ...layoutOf({ ...best, columns, rows }),
      }
      return planner.plan({ ...rich, layout }).yarns.some(({ toBuy }) => toBuy! > 0)
    }
    const { columns, rows, motifs } = best
    // 300 g at 3.3 g each make 60 of the one (200 g) and 30 of the other (100 g).
    expect(motifs).toBeLessThanOrEqual(90)
    expect(motifs).toBeGreaterThanOrEqual(80)
    expect(buys(columns, rows)).toBe(false)
    expect(buys(columns, rows + 1)).toBe(true)
    expect(buys(columns + 1, rows)).toBe(true)
  })

  it('says what its fields are to be taken with, and keeps to the stash with it', () => {
    // In the repeat of the project every other motif is of the yarn of which there is little.
    const project = squares({}, [400, 100])
    const { arrangements } = fitFromHave(project, { stash: true })
    expect(arrangements.length).toBeGreaterThan(0)
    const planner = createPlanner()
    const toBuy = (of: Project, fit: (typeof arrangements)[number]) => {
      const taken = { ...of, layout: { ...of.layout, ...layoutOf(fit) } as BlanketLayout }
      return planner.plan(taken).yarns.reduce((sum, { toBuy: need }) => sum + (need ?? 0), 0)
    }
    for (const fit of arrangements) {
      expect(fit.withinStash).toBe(true)
      expect(toBuy(withinStash(project), fit)).toBe(0)
    }
    expect(toBuy(project, arrangements[0]!)).toBeGreaterThan(0)
    const within = fitFromHave(withinStash(project), { stash: true })
    expect(within.arrangements).toEqual(arrangements.map(({ withinStash: _, ...fit }) => fit))
  })

  it('says why there is none', () => {
    const codes = (project: Project) => fitFromHave(project, { stash: true }).findings.map(({ code }) => code)
    const none = fitFromHave(squares({}, [0, 0]), { stash: true })
    expect(none.arrangements).toEqual([])
    expect(none.findings.map(({ code }) => code)).toEqual(['layout/fit-stash'])
    expect(none.findings[0]!.message).toContain('not enough for a single motif: there is too little Yarn 0')
    expect(codes(squares({ cells: {} }))).toEqual(['layout/fit-no-yarn'])
    expect(codes({ ...squares({}), layout: { kind: 'garland' } })).toEqual(['layout/fit-kind'])
  })
})

it('finds the same best arrangement however the blanket is rotated now', () => {
  const flowers = (turn: number): Project => {
    const { motifs: [square] = [], ...rest } = squares({ arrangement: 'offset-rows', turn })
    const flower = { ...square!, outline: 'petals' as const, petals: 6, overTips: 82, overValleys: 61 }
    return { ...rest, joining: { rule: 'tips' }, motifs: [flower as NonNullable<Project['motifs']>[number]] }
  }
  for (const have of [{ stash: true }, { motifs: 90 }] as const) {
    const [upright] = fitFromHave(flowers(0), have).arrangements
    const [rotated] = fitFromHave(flowers(30), have).arrangements
    expect(upright).toBeDefined()
    expect(upright).toEqual(rotated)
  }
})

describe('what was weighed again', () => {
  const weighed = (left: number): Project => {
    const made = Object.fromEntries(
      [1, 2, 3].flatMap((row) => Array.from({ length: 6 }, (_, i) => [`${row},${i + 1}`, '2026-12-01'])),
    )
    const project = { ...squares({ columns: 6, rows: 8 }, [200]), made }
    return {
      ...project,
      colourways: project.colourways!.slice(0, 1),
      yarns: project.yarns!.map((yarn) => ({ ...yarn, left: { grams: left, at: 18 } })),
      layout: {
        ...(project.layout as BlanketLayout),
        cells: { fill: { pattern: 'one', colourways: ['c0'] } },
      },
    }
  }

  it('counts by its forecast: nothing is to be bought of what is proposed, and one motif more would need it', () => {
    // 18 motifs took 100 g of 200 instead of 18 × 3.3 = 59.4: what is left makes 18 more, 36 in all, not 60.
    const { arrangements } = fitFromHave(weighed(100), { stash: true })
    expect(arrangements.length).toBeGreaterThan(0)
    const planner = createPlanner()
    for (const fit of arrangements) {
      const project = weighed(100)
      const plan = planner.plan({
        ...project,
        layout: { ...(project.layout as BlanketLayout), target: undefined, ...layoutOf(fit) },
      })
      expect(plan.yarns.map(({ toBuy }) => toBuy)).toEqual([0])
      expect(fit.motifs).toBeLessThanOrEqual(36)
    }
    expect(Math.max(...arrangements.map(({ motifs }) => motifs))).toBeGreaterThan(30)
    // Where they took less than planned there is more: 18 of 40 g, so 200 g make 90 at that rate.
    const thrifty = fitFromHave(weighed(160), { stash: true }).arrangements
    expect(Math.max(...thrifty.map(({ motifs }) => motifs))).toBeGreaterThan(70)
  })
})

it('plans each arrangement once', () => {
  const project = squares({ edging: { style: 'follow', rounds: ['sc', 'sc'], yarn: 'y0' } }, [150, 90])
  const inner = createPlanner()
  const asked: string[] = []
  const planner = {
    ...inner,
    numbers: (of: Project) => {
      const { arrangement, columns, rows, turn, alternateTurn, alternateRows } = of.layout as BlanketLayout
      asked.push([arrangement, columns, rows, turn, alternateTurn, alternateRows].join())
      return inner.numbers(of)
    },
  }
  expect(fitHave(project, { stash: true }, planner).arrangements.length).toBeGreaterThan(0)
  // The project as it is may be one of them.
  expect(asked.length - new Set(asked).size).toBeLessThanOrEqual(1)
})
