/** Motifs without a place of their own that go with others: a leaf of which two belong to each flower. */
import { describe, expect, it } from 'vitest'
import type { Layout, Project, RoundsMotif } from '../../../shared-types/project'
import { checkProject, createPlanner, planProject } from '../../../src-core/plan'

const GAUGE = { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 3.5 }
const motif = (id: string, slot: string, more: Partial<RoundsMotif> = {}): RoundsMotif => ({
  ...{ id, name: id, kind: 'rounds', gauge: GAUGE, foundation: { ring: 'adjustable' } },
  rounds: [{ slot, work: 'ch 1, 12 sc in ring, join with sl st in first sc (12 sc)' }],
  ...more,
})
const LAYOUTS: readonly Layout[] = [
  {
    ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'flower', columns: 3, rows: 4 },
    cells: { fill: { pattern: 'one', colourways: ['c1'] } },
  },
  {
    ...{ kind: 'garland', cord: { length: 1000 }, spacing: { between: 'edges', mm: 30 } },
    items: [{ motif: 'flower', colourway: 'c1' }],
  },
  {
    ...{ kind: 'applique', panel: { shape: 'rectangle', width: 300, height: 300 } },
    items: [{ motif: 'flower', colourway: 'c1', x: 150, y: 150 }],
  },
]
const project = (layout: Layout, goesWith?: RoundsMotif['goesWith']): Project => ({
  ...{ format: 'petalyard-project', version: 1, layout },
  yarns: [
    { id: 'y1', name: 'Saffron', ballGrams: 50, ballMetres: 125 },
    { id: 'y2', name: 'Fern', ballGrams: 50, ballMetres: 125 },
  ],
  motifs: [motif('flower', 'petals'), motif('leaf', 'green', goesWith && { goesWith })],
  colourways: [
    { id: 'c1', code: 'A', motif: 'flower', yarns: { petals: 'y1' } },
    { id: 'c2', code: 'B', motif: 'leaf', yarns: { green: 'y2' } },
  ],
})
const gramsOf = (of: Project, id: string) =>
  planProject(of).yarns.find((yarn) => yarn.id === id)?.grams.expected ?? 0

describe('a motif that goes with another one', () => {
  it.each(LAYOUTS)('is counted with each of those in a $kind', (layout) => {
    const made = project(layout, { motif: 'flower', each: 2 })
    // The same rounds, in as many stitches: two for each flower.
    expect(gramsOf(made, 'y2')).toBeCloseTo(2 * gramsOf(made, 'y1'), 6)
    expect(gramsOf(project(layout), 'y2')).toBe(0)
    const plan = planProject(made)
    const flowers = plan.motifs.length
    expect(plan.beside).toMatchObject([{ motif: 'leaf', to: 'flower', each: 2, count: 2 * flowers }])
    const bare = planProject(project(layout))
    expect(plan.ends - bare.ends).toBe(4 * flowers)
  })

  it('is left to make as far as the other one is', () => {
    const made = { ...project(LAYOUTS[0]!, { motif: 'flower', each: 2 }), made: { '1,1': '', '1,2': '' } }
    const left = planProject(made).progress.left.yarns.find(({ id }) => id === 'y2')
    expect(left?.grams.expected).toBeCloseTo((gramsOf(made, 'y2') * 10) / 12, 6)
  })

  it('says that its yarn is not counted where nobody says how many, and nothing else', () => {
    const codes = (goesWith?: RoundsMotif['goesWith']) =>
      checkProject(project(LAYOUTS[0]!, goesWith)).map(({ code }) => code)
    expect(codes({ motif: 'flower' })).toContain('motif/goes-with')
    expect(codes({ motif: 'flower', each: 2 })).not.toContain('motif/goes-with')
    expect(planProject(project(LAYOUTS[0]!, { motif: 'flower' })).beside).toMatchObject([
      { each: null, count: null },
    ])
    expect(codes({ motif: 'gone', each: 2 })).toContain('file/unknown-motif')
  })

  it('has what is wrong with its rounds told once', () => {
    const wrong = project(LAYOUTS[0]!, { motif: 'flower', each: 2 })
    const leaf = {
      ...wrong.motifs![1]!,
      rounds: [{ slot: 'green', work: '12 sc in ring (13 sc)' }],
    } as RoundsMotif
    const made = { ...wrong, motifs: [wrong.motifs![0]!, leaf] }
    const plan = planProject(made)
    const own = plan.findings.filter(({ target }) => target?.motif === 'leaf')
    expect(own.map(({ code }) => code)).toContain('rounds/wrong-end-count')
    expect(createPlanner().unplaced(made, plan)).toEqual([])
  })
})
