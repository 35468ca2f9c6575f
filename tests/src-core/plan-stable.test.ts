/** M46 through whole projects: weighing, stash, paint, rows and marks change few colours of a blanket within limits. */
import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../shared-types/project'
import { leavingWords } from '../../src-core/figures/leaving-words'
import { gramsOnHand } from '../../src-core/materials/on-hand'
import { planProject } from '../../src-core/plan'
import { holdWork } from '../../src-core/progress/hold'
import { weighedWords } from '../../src-core/progress/words'
import { formatMass } from '../../src-core/units/format'

const PATTERNS = ['repeat', 'rows', 'shade', 'scatter', 'no-two-alike'] as const
type Pattern = (typeof PATTERNS)[number]

/** 140 flowers in A B A C: petals in three yarns, centres in one of them; Rust is limited, and so is the stash. */
const throwOf = (pattern: Pattern): Project => ({
  format: 'petalyard-project',
  version: 1,
  yarns: [
    ['Cream', 390],
    ['Rust', 420],
    ['Moss', 310],
  ].map(([name, onHandGrams], index) => ({
    ...{ id: `y${index}`, name: String(name), colour: ['#eee0c0', '#b0512f', '#5f7040'][index] as string },
    ...{ ballGrams: 50, ballMetres: 125, onHandGrams: Number(onHandGrams) },
  })),
  motifs: [
    {
      ...{ id: 'm1', name: 'Flower', kind: 'measured', outline: 'petals', petals: 8 },
      ...{ overTips: 100, overValleys: 70, weighed: { motifs: 1, resolution: 0 } },
      slots: [
        { slot: 'centre', grams: 1.4 },
        { slot: 'petals', grams: 4.7 },
      ],
    },
  ],
  colourways: ['A', 'B', 'C'].map((code, index) => ({
    ...{ id: `c${index}`, code, motif: 'm1' },
    yarns: { centre: `y${index === 0 ? 1 : 0}`, petals: `y${index}` },
  })),
  joining: { rule: 'tips' },
  allowance: { wastePercent: 10, tail: 150 },
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 10, rows: 14 },
    cells: {
      fill: {
        ...{
          pattern,
          seed: 5,
          colourways: pattern === 'repeat' ? ['c1', 'c0', 'c1', 'c2'] : ['c0', 'c1', 'c2'],
        },
        ...{ withinStash: true, mostGrams: { y1: 270 } },
      },
    },
  },
})

/** What colours are chosen by, against what the plan counts: of each yarn with limits, the same grams. */
function agreesWithItsAccount(
  plan: ReturnType<typeof planProject>,
  limitOf: (yarn: string) => number,
): number {
  const { yarns, counts } = plan
  const stash = plan.kind === 'blanket' ? (plan.stash ?? []) : []
  for (const { id, name, left, each, others, isShared } of stash) {
    // Half motifs follow their neighbours, further motifs have an account of their own.
    if (isShared || others) continue
    const rest = limitOf(id) - left
    const motifs = Object.entries(counts.byColourway).reduce(
      (sum, [way, many]) => sum + many * (each[way] ?? 0),
      0,
    )
    expect(rest + motifs, name).toBeCloseTo(yarns.find((need) => need.id === id)!.grams.high, 6)
  }
  return stash.length
}

const layoutOf = (project: Project) => project.layout as BlanketLayout
const edit = (project: Project, patch: Partial<Project>): Project =>
  holdWork(project, { ...project, ...patch })
const layoutEdit = (project: Project, patch: Partial<BlanketLayout>): Project =>
  edit(project, { layout: { ...layoutOf(project), ...patch } })
const paint = (project: Project, painted: Record<string, string>): Project => {
  const { cells } = layoutOf(project)
  return layoutEdit(project, { cells: { ...cells, painted: { ...cells?.painted, ...painted } } })
}
const make = (project: Project, ids: readonly string[]): Project =>
  edit(project, { made: { ...project.made, ...Object.fromEntries(ids.map((id) => [id, ''])) } })
const yarn = (project: Project, id: string, patch: object): Project =>
  edit(project, { yarns: project.yarns!.map((each) => (each.id === id ? { ...each, ...patch } : each)) })

const coloursOf = (project: Project): Map<string, string> =>
  new Map(planProject(project).motifs.map(({ id, colourway }) => [id, colourway ?? '']))
const countsOf = (colours: ReadonlyMap<string, string>): number[] =>
  ['c0', 'c1', 'c2'].map((way) => [...colours.values()].filter((each) => each === way).length)
/** Motifs of before whose colourway is another one after an edit. */
function changed(before: Project, after: Project): string[] {
  const now = coloursOf(after)
  return [...coloursOf(before)].flatMap(([id, way]) => (now.has(id) && now.get(id) !== way ? [id] : []))
}
/** Motifs that the counts alone make change. */
function counted(before: Project, after: Project): number {
  const [was, is] = [before, after].map((project) => countsOf(coloursOf(project)))
  return was!.reduce((sum, many, at) => sum + Math.abs(many - is![at]!), 0) / 2
}
const firstRows = (rows: number): string[] =>
  Array.from({ length: rows * 10 }, (_, at) => `${Math.floor(at / 10) + 1},${(at % 10) + 1}`)

describe('M46 the yarn of an edging that names none', () => {
  const onHand = (project: Project) => (id: string) =>
    gramsOnHand(project.yarns!.find((yarn) => yarn.id === id)!)

  it.each(readdirSync('examples').filter((name) => name.endsWith('.petalyard')))(
    'is the one that colours are chosen by: %s',
    (name) => {
      const example = JSON.parse(readFileSync(`examples/${name}`, 'utf8')) as Project
      const { layout } = example
      if (layout?.kind !== 'blanket' || !layout.cells?.fill) return
      const needs = planProject(example).yarns
      for (const rounds of [undefined, ['sc'], ['dc', 'dc', 'dc', 'dc', 'sc', 'sc']]) {
        const { yarn: _, ...edging } = layout.edging ?? {}
        const short: Project = {
          ...example,
          terms: 'US',
          yarns: example.yarns!.map(({ left: _, ...yarn }, at) => ({
            ...yarn,
            onHandBalls: 0,
            onHandGrams: (needs.find(({ id }) => id === yarn.id)?.grams.high ?? 0) * (at % 2 ? 1.3 : 0.8),
          })),
          layout: {
            ...layout,
            ...(rounds && { edging: { ...edging, rounds } }),
            cells: { ...layout.cells, fill: { ...layout.cells.fill, withinStash: true } },
          },
        }
        agreesWithItsAccount(planProject(short), onHand(short))
      }
    },
  )

  it('is the same in the closest fit and in the account, where rounds of edging come to a blanket within limits', () => {
    for (let rounds = 0; rounds <= 6; rounds++) {
      const before = throwOf('repeat')
      const wider = layoutEdit(before, { edging: { rounds: new Array<string>(rounds).fill('dc') } })
      for (const project of [wider, make(wider, firstRows(4)), make(wider, firstRows(11))]) {
        const plan = planProject(project)
        const limit = (id: string) => Math.min(onHand(project)(id), id === 'y1' ? 270 : Infinity)
        expect(agreesWithItsAccount(plan, limit)).toBe(3)
        // What is missing is said of the yarns that lack it, by as much.
        const told = plan.findings.find(({ code }) => code.startsWith('colours/limits'))?.message ?? ''
        for (const { id, grams } of plan.yarns) {
          const short = grams.high - limit(id)
          const name = project.yarns!.find((yarn) => yarn.id === id)!.name!
          expect(told.includes(`g of ${name} missing`), `${rounds}: ${told}`).toBe(short > 0.5)
          if (short > 0.5) expect(told).toContain(`${formatMass(short, 'metric')} of ${name} missing`)
        }
      }
    }
  })
})

describe('M46 a blanket within limits as it is made', () => {
  it.each(PATTERNS)('limits bind here, and are kept: %s', (pattern) => {
    const plan = planProject(throwOf(pattern))
    expect(plan.yarns.find(({ id }) => id === 'y1')!.grams.high).toBeLessThanOrEqual(270)
    const { cells, ...layout } = layoutOf(throwOf(pattern))
    const fill = { ...cells!.fill, withinStash: false, mostGrams: {} }
    const free: Project = { ...throwOf(pattern), layout: { ...layout, cells: { fill } } }
    expect(changed(free, throwOf(pattern)).length).toBeGreaterThan(0)
  })

  it('says of a yarn that was weighed again what it is bought by', () => {
    const told = { left: 195, start: 310, missing: 48.2, enough: false }
    expect(weighedWords(told, 'metric')).toBe('195 g left of 310 g, 48 g short at this rate')
    expect(weighedWords({ ...told, missing: 0, enough: true }, 'metric')).toBe('195 g left of 310 g')
  })

  it('says how many motifs leave the order, and for which limits', () => {
    const plan = planProject(throwOf('repeat'))
    const turns = ['c1', 'c0', 'c1', 'c2']
    const leaving = plan.motifs.filter(({ colourway }, at) => colourway !== turns[at % 4]).length
    expect(plan.leaving).toEqual({
      motifs: leaving,
      yarns: [{ id: 'y1', most: 270 }],
      colourways: [],
    })
    expect(leavingWords(plan)).toBe(
      `${leaving} of 140 motifs leave the order, so that Rust stays within 270 g.`,
    )
    const begun = make(throwOf('repeat'), firstRows(6))
    expect(leavingWords(planProject(begun))).toBe(leavingWords(plan))
  })

  it.each(PATTERNS)('grams that nothing hangs on change none: %s', (pattern) => {
    const begun = make(throwOf(pattern), firstRows(4))
    expect(changed(throwOf(pattern), begun)).toEqual([])
    // Rust is limited to less than there is: five grams of it less are nothing to its motifs.
    expect(changed(begun, yarn(begun, 'y1', { onHandGrams: 415 }))).toEqual([])
    expect(changed(begun, make(begun, ['5,1', '9,4', '14,10', '12,2', '6,6']))).toEqual([])
  })

  it.each(PATTERNS)('grams that decide over a few motifs change as few: %s', (pattern) => {
    const begun = make(throwOf(pattern), firstRows(4))
    for (const onHandGrams of [305, 300, 290, 270]) {
      const less = yarn(begun, 'y2', { onHandGrams })
      const moved = counted(begun, less)
      const most = pattern === 'rows' ? 2 * moved + 10 : 2 * moved
      expect(changed(begun, less).length, `${onHandGrams} g`).toBeLessThanOrEqual(most)
      expect(changed(begun, less).filter((id) => firstRows(4).includes(id))).toEqual([])
    }
  })

  it.each(PATTERNS)(
    'weighing a ball changes as few of those still to come, and none that is made: %s',
    (pattern) => {
      const begun = make(throwOf(pattern), firstRows(4))
      const weighed = yarn(begun, 'y2', { left: { grams: 195, at: 40 } })
      const moved = counted(begun, weighed)
      expect(changed(begun, weighed).length).toBeLessThanOrEqual(
        pattern === 'rows' ? 2 * moved + 10 : 2 * moved,
      )
      expect(changed(begun, weighed).filter((id) => firstRows(4).includes(id))).toEqual([])
    },
  )

  it.each(PATTERNS)('one motif that is painted changes a few others at most: %s', (pattern) => {
    for (const begun of [throwOf(pattern), make(throwOf(pattern), firstRows(4))])
      for (const [id, way] of [
        ['14,10', 'c0'],
        ['8,5', 'c1'],
        ['9,2', 'c2'],
      ] as const) {
        const others = changed(begun, paint(begun, { [id]: way })).filter((each) => each !== id)
        // Where one motif decides whether whole rows keep the limits, these change as rows.
        expect(others.length, `${id} in ${way}`).toBeLessThanOrEqual(pattern === 'rows' ? 30 : 4)
      }
  })

  it.each(['repeat', 'rows', 'shade', 'scatter'] as const)(
    'a new row leaves the others as far as counts allow: %s',
    (pattern) => {
      const before = throwOf(pattern)
      expect(changed(before, layoutEdit(before, { rows: 15 })).length).toBeLessThanOrEqual(10)
    },
  )
})
