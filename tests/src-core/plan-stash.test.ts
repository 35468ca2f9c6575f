import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { holdColours, standingColours } from '../../src-core/colour/hold'
import { gramsOnHand } from '../../src-core/materials/on-hand'
import { planProject } from '../../src-core/plan'
import type { BlanketLayout, Project } from '../../shared-types/project'
import type { Plan } from '../../shared-types/plan'
import { runs } from '../runs'

const GRAMS = { edge: 2, middle: 1 }

/** Squares of 3 g in three colourways: each has a middle and an edge, in another yarn. */
const squares = (
  layout: Partial<BlanketLayout> = {},
  onHand: readonly number[] = [400, 400, 400],
): Project => ({
  format: 'petalyard-project',
  version: 1,
  yarns: ['Moss', 'Chalk', 'Rust'].map((name, index) => ({
    ...{ id: `y${index}`, name, ballGrams: 50, ballMetres: 125 },
    onHandGrams: onHand[index] ?? 0,
  })),
  motifs: [
    {
      ...{ id: 'm1', name: 'Square', kind: 'measured', outline: 'square', sideToSide: 80 },
      slots: [
        { slot: 'middle', grams: GRAMS.middle },
        { slot: 'edge', grams: GRAMS.edge },
      ],
      weighed: { motifs: 1, resolution: 0 },
    },
  ],
  colourways: [0, 1, 2].map((index) => ({
    ...{ id: `c${index}`, code: 'ABC'[index] as string, motif: 'm1' },
    yarns: { middle: `y${index}`, edge: `y${(index + 1) % 3}` },
  })),
  joining: { rule: 'seam', seam: 'whip', yarn: 'y0' },
  allowance: { wastePercent: 10, tail: 150 },
  layout: {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 12, rows: 15 },
    cells: { fill: { pattern: 'scatter', colourways: ['c0', 'c1', 'c2'], seed: 3, withinStash: true } },
    edging: { rounds: ['sc', 'sc'], yarn: 'y1' },
    ...layout,
  },
})

const codes = (plan: Plan) =>
  plan.findings.map(({ code }) => code).filter((code) => code.startsWith('colours/limits'))
const toBuy = (plan: Plan) => plan.yarns.reduce((sum, need) => sum + (need.toBuy ?? 0), 0)
const fillOf = (project: Project) => (project.layout as BlanketLayout).cells!.fill!
const withFill = (project: Project, fill: object): Project => {
  const layout = project.layout as BlanketLayout
  return {
    ...project,
    layout: { ...layout, cells: { ...layout.cells, fill: { ...fillOf(project), ...fill } } },
  }
}

/** By hand: 1.1 × (grams of motifs + joins + edging + tails), as the plan tells the rest of its yarn. */
function gramsByHand(project: Project, plan: Plan): number[] {
  const ways = project.colourways!
  return project.yarns!.map(({ id }) => {
    const motifs = plan.motifs.reduce((sum, { colourway }) => {
      const way = ways.find((each) => each.id === colourway)
      const { middle, edge } = way?.yarns ?? {}
      return sum + (middle === id ? GRAMS.middle : 0) + (edge === id ? GRAMS.edge : 0)
    }, 0)
    const parts = plan.yarns.find((need) => need.id === id)?.parts
    return parts ? 1.1 * (motifs + parts.joins + parts.edging + parts.tails) : 0
  })
}

describe('M46 colours within the stash', () => {
  it('stay as they are where the stash is enough', () => {
    const rich = squares({}, [1000, 1000, 1000])
    const plain = planProject(withFill(rich, { withinStash: false }))
    expect(planProject(rich).motifs).toEqual(plain.motifs)
  })

  it.each(['repeat', 'rows', 'shade', 'scatter', 'no-two-alike'] as const)(
    'leave nothing to buy where that can be had: %s',
    (pattern) => {
      // Two thirds in one colourway cannot be kept apart.
      const onHand = pattern === 'no-two-alike' ? [200, 300, 280] : [120, 320, 300]
      const project = withFill(squares({}, onHand), { pattern })
      expect(toBuy(planProject(withFill(project, { withinStash: false })))).toBeGreaterThan(0)
      const plan = planProject(project)
      expect(toBuy(plan)).toBe(0)
      expect(codes(plan)).toEqual([])
      gramsByHand(project, plan).forEach((grams, index) => {
        expect(grams).toBeCloseTo(plan.yarns[index]!.grams.expected, 6)
        expect(grams).toBeLessThanOrEqual(gramsOnHand(project.yarns![index]!))
      })
    },
  )

  it('tell the grams that no choice of colours could save', () => {
    const plan = planProject(squares({}, [100, 200, 200]))
    expect(codes(plan)).toEqual(['colours/limits-impossible'])
    // Nobody set a limit that could be raised.
    const [mended] = plan.findings.filter(({ code }) => code === 'colours/limits-impossible')
    expect(mended!.mend).toBe('Add yarn, choose one more colorway, or make fewer motifs.')
    const missing = plan.yarns.reduce((sum, { grams, onHand }) => sum + Math.max(0, grams.high - onHand), 0)
    // 180 squares of 3 g each take 594 g with the allowance, whatever their colours: joins and edging come on top.
    const all = plan.yarns.reduce((sum, { grams }) => sum + grams.high, 0)
    expect(missing).toBeGreaterThanOrEqual(all - 500 - 1e-6)
    expect(missing).toBeLessThanOrEqual(all - 500 + 3.3)
  })

  it('never take more of a yarn than its own limit', () => {
    const project = withFill(squares({}, []), { withinStash: false, mostGrams: { y2: 90 } })
    const need = planProject(project).yarns.find(({ id }) => id === 'y2')!
    expect(need.grams.high).toBeLessThanOrEqual(90)
    expect(need.grams.high).toBeGreaterThan(80)
  })

  it('count half motifs, which follow their neighbours', () => {
    const project = squares(
      { arrangement: 'offset-rows', alternateRows: 'oneFewer', halves: true },
      [130, 330, 320],
    )
    const plan = planProject(project)
    expect(plan.halves.length).toBeGreaterThan(0)
    expect(toBuy(plan)).toBe(0)
  })

  it('rule nothing out where half motifs follow the colours', () => {
    const project = squares(
      { arrangement: 'offset-rows', alternateRows: 'oneFewer', halves: true },
      [100, 200, 200],
    )
    expect(codes(planProject(project))).toEqual(['colours/limits-not-found'])
  })

  it('hold for 2,500 motifs, and the same file gives the same plan', () => {
    for (const [pattern, ...onHand] of [
      ['scatter', 1700, 4700, 4200],
      ['no-two-alike', 2900, 3900, 3700],
    ] as const) {
      const project = withFill(squares({ columns: 50, rows: 50 }, onHand), { pattern })
      expect(toBuy(planProject(withFill(project, { withinStash: false })))).toBeGreaterThan(0)
      const plan = planProject(project)
      expect(toBuy(plan)).toBe(0)
      expect(codes(plan)).toEqual([])
      expect(planProject(JSON.parse(JSON.stringify(project)) as Project).motifs).toEqual(plan.motifs)
    }
  })

  it('stand while something else is edited, and are the same in the plan', () => {
    let project = squares({}, [120, 320, 300])
    const shown = planProject(project).motifs.map(({ colourway }) => colourway)
    expect(standingColours(project)!.assignment.colourways).toEqual(shown)
    const layout = project.layout as BlanketLayout
    const before = project
    project = holdColours(before, {
      ...before,
      layout: { ...layout, cells: { ...layout.cells, painted: { '3,3': 'c1' } } },
    })
    const after = planProject(project)
    const changed = after.motifs.filter(({ colourway }, index) => colourway !== shown[index])
    expect(changed.length).toBeLessThanOrEqual(4)
    expect(toBuy(after)).toBe(0)
  })

  it('counts what every motif takes where several alternate, and colours stay through edits', () => {
    const one = squares({}, [150, 330, 330])
    const project: Project = {
      ...one,
      motifs: [...one.motifs!, { ...one.motifs![0]!, id: 'm2', name: 'Other square' }],
      colourways: [
        ...one.colourways!,
        ...one.colourways!.map((way) => ({ ...way, id: `d${way.id}`, code: `${way.code}2`, motif: 'm2' })),
      ],
      layout: { ...(one.layout as BlanketLayout), alternate: { motifs: ['m1', 'm2'], by: 'cell' } },
    }
    const every = withFill(project, { colourways: project.colourways!.map(({ id }) => id) })
    expect(toBuy(planProject(withFill(every, { withinStash: false })))).toBeGreaterThan(0)
    const plan = planProject(every)
    expect(codes(plan)).toEqual([])
    expect(toBuy(plan)).toBe(0)
    gramsByHand(every, plan).forEach((grams, index) =>
      expect(grams).toBeCloseTo(plan.yarns[index]!.grams.expected, 6),
    )
    // What stood stays when a motif is painted and another colourway is to be chosen from no more.
    const shown = plan.motifs.map(({ colourway }) => colourway)
    const layout = every.layout as BlanketLayout
    for (const cells of [
      { ...layout.cells, painted: { '3,3': 'c1' } },
      { ...layout.cells, fill: { ...layout.cells!.fill, mostGrams: { y2: 320 } } },
    ]) {
      const after = planProject(holdColours(every, { ...every, layout: { ...layout, cells } }))
      const changed = after.motifs.filter(({ colourway }, index) => colourway !== shown[index])
      expect(changed.length).toBeLessThanOrEqual(8)
      expect(toBuy(after)).toBe(0)
    }
  })

  it.each(['scatter', 'no-two-alike'] as const)(
    'stand with several motifs while rows come: %s',
    (pattern) => {
      const one = squares({}, [])
      const project = withFill(
        {
          ...one,
          motifs: [...one.motifs!, { ...one.motifs![0]!, id: 'm2' }],
          colourways: [
            ...one.colourways!,
            ...[0, 1, 2].map((index) => ({ ...one.colourways![index]!, id: `d${index}`, motif: 'm2' })),
          ],
          layout: { ...(one.layout as BlanketLayout), alternate: { motifs: ['m1', 'm2'], by: 'row' } },
        },
        { withinStash: false, pattern, colourways: ['c0', 'c1', 'c2', 'd0', 'd1', 'd2'] },
      )
      const before = planProject(project)
      const layout = project.layout as BlanketLayout
      const after = planProject(
        holdColours(project, { ...project, layout: { ...layout, rows: 17, columns: 13 } }),
      )
      const now = new Map(after.motifs.map(({ id, colourway }) => [id, colourway]))
      expect(before.motifs.filter(({ id, colourway }) => now.get(id) !== colourway)).toEqual([])
    },
  )

  it('agrees with every count there is on small blankets', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 3, maxLength: 3 }), (onHand) => {
        const small = squares({ columns: 3, rows: 2, edging: undefined }, onHand)
        const bare: Project = { ...small, joining: { rule: 'apart', gap: 5 } }
        const plan = planProject(bare)
        let isPossible = false
        for (let a = 0; a <= 6; a++)
          for (let b = 0; a + b <= 6; b++) {
            const made = [a, b, 6 - a - b]
            const takes = [0, 1, 2].map((yarn) => 1.1 * (made[yarn]! + 2 * made[(yarn + 2) % 3]!))
            if (takes.every((grams, yarn) => grams <= onHand[yarn]! + 1e-9)) isPossible = true
          }
        expect(toBuy(plan) === 0).toBe(isPossible)
        expect(codes(plan)).toEqual(isPossible ? [] : ['colours/limits-impossible'])
      }),
      { numRuns: runs(60) },
    )
  })
})

/** What else may be worked in the yarn that runs short. */
interface Besides {
  readonly edging?: BlanketLayout['edging']
  readonly joining?: Project['joining']
}
const BORDER: Besides = { edging: { rounds: ['sc', 'dc'], yarn: 'y2' } }
const JOINS: Besides = { joining: { rule: 'seam', yarn: 'y2' } }

describe('a yarn of all motifs that runs short, with half motifs', () => {
  const short = (pattern: string, besides: Besides = {}, onHandGrams = 60) => {
    const own = squares({
      ...{ arrangement: 'offset-rows', alternateRows: 'oneFewer', columns: 11, rows: 16, halves: true },
      cells: { fill: { pattern, colourways: ['c0', 'c1'], seed: 1, withinStash: true } as never },
      edging: besides.edging ?? {},
    })
    return planProject({
      ...own,
      motifs: [{ ...own.motifs![0]!, outline: 'hexagon' } as never],
      joining: besides.joining ?? { rule: 'edges' },
      colourways: own
        .colourways!.slice(0, 2)
        .map((way, i) => ({ ...way, yarns: { middle: 'y2', edge: `y${i}` } })),
      yarns: own.yarns!.map((yarn) => ({ ...yarn, onHandGrams: yarn.id === 'y2' ? onHandGrams : 900 })),
    })
  }
  const found = (plan: Plan, start: string) => plan.findings.find(({ code }) => code.startsWith(start))!

  const toldOf = (plan: Plan) => {
    const missing = Number(/missing, for (\d+) motifs/.exec(found(plan, 'colours/limits').message)![1])
    const [, enough, all] = /at least (\d+) of the (\d+) motifs/.exec(
      plan.findings.find(({ code, target }) => code === 'yarn/stash-short' && target?.yarn === 'y2')!.message,
    )!
    return { missing, enough: Number(enough), all: Number(all) }
  }

  it('is missing for as many motifs as it is not enough for', () => {
    const plan = short('by-stash')
    expect(plan.halves.length).toBeGreaterThan(10)
    const { missing, enough, all } = toldOf(plan)
    expect(all).toBe(plan.motifs.length)
    expect(missing + enough).toBe(all)
    // By hand: 1 g a motif, halves a little over half of it, a tenth more for waste; what is on hand goes into the first.
    expect(missing).toBeGreaterThan(plan.motifs.length - 60 / 1.1)
  })

  it.each([
    ['a border', BORDER],
    ['joins', JOINS],
    ['both', { ...BORDER, ...JOINS }],
  ])('is so too where %s is worked in it', (_, besides) => {
    for (let grams = 60; grams < 66; grams += 0.5) {
      const { missing, enough, all } = toldOf(short('by-stash', besides, grams))
      expect([grams, missing + enough]).toEqual([grams, all])
    }
  })

  it('is mended by what there is: no shuffling where nothing goes by chance', () => {
    for (const pattern of ['by-stash', 'scatter'] as const) {
      const { code, mend } = found(short(pattern), 'colours/limits')
      if (pattern === 'by-stash') expect(mend).not.toContain('Shuffle')
      if (code === 'colours/limits-not-found')
        expect(mend).toBe(
          pattern === 'scatter'
            ? 'Shuffle the colors, add yarn, or choose one more colorway in other yarns.'
            : 'Add yarn, or choose one more colorway in other yarns.',
        )
    }
  })
})
