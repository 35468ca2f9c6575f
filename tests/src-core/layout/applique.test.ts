import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { AppliqueLayout, Project } from '../../../shared-types/project'
import { MOST_APPLIQUE_ITEMS } from '../../../src-core/fields/applique'
import { perimeter } from '../../../src-core/geometry/points'
import { APPLIQUE } from '../../../src-core/layout/applique/constants'
import { checkProject, planProject } from '../../../src-core/plan'
import { processorTime } from '../../processor-time'

const BASE: Project = {
  format: 'petalyard-project',
  version: 1,
  yarns: [
    { id: 'y1', name: 'Brick', ballGrams: 50, ballMetres: 125 },
    { id: 'y2', name: 'Moss', ballGrams: 50, ballMetres: 125 },
  ],
  motifs: [
    {
      id: 'disc',
      name: 'Disc',
      kind: 'measured',
      outline: 'round',
      across: 40,
      slots: [{ slot: 'all', grams: 2 }],
      minutes: 10,
    },
    {
      id: 'leaf',
      name: 'Leaf',
      kind: 'measured',
      outline: 'leaf',
      length: 50,
      width: 20,
      slots: [{ slot: 'all', grams: 1 }],
      minutes: 5,
    },
  ],
  colourways: [
    { id: 'a', code: 'A', motif: 'disc', yarns: { all: 'y1' } },
    { id: 'b', code: 'B', motif: 'leaf', yarns: { all: 'y2' } },
  ],
}
const RECTANGLE = { shape: 'rectangle', width: 450, height: 300, allowance: 15 } as const
type Items = NonNullable<AppliqueLayout['items']>

function planOf(items: Items, layout: Partial<AppliqueLayout> = {}, project: Partial<Project> = {}): Plan {
  return planProject({
    ...BASE,
    layout: { kind: 'applique', panel: RECTANGLE, items, ...layout },
    ...project,
  })
}
const disc = (x: number, y: number, more: object = {}) => ({ motif: 'disc', colourway: 'a', x, y, ...more })
const codes = (plan: Plan) =>
  plan.findings.filter(({ severity }) => severity !== 'note').map(({ code }) => code)

describe('an appliqué', () => {
  it('places items where they are told, on a size that is the panel', () => {
    const plan = planOf([
      disc(100, 80),
      { motif: 'leaf', colourway: 'b', x: 300, y: 150, turn: 375, flipped: true },
    ])
    expect(plan.size).toMatchObject({ width: 450, height: 300 })
    expect(plan.motifs).toMatchObject([
      { id: '1,1', label: '1', x: 100, y: 80, turn: 0, colourway: 'a', motif: 'disc', flipped: false },
      { id: '1,2', label: '2', x: 300, y: 150, turn: 15, colourway: 'b', motif: 'leaf', flipped: true },
    ])
    expect(plan.counts).toEqual({ motifs: 2, byColourway: { a: 1, b: 1 } })
    expect(plan.joins).toEqual([])
    expect(codes(plan)).toEqual([])
    const note = plan.findings.find(({ code }) => code === 'applique/wrong-side')!
    expect(note).toMatchObject({
      severity: 'note',
      message: 'item 2 (Leaf): wrong side up.',
      target: { cells: ['1,2'] },
    })
  })

  it('tells the smallest distances: between outlines, and to the edge of the panel', () => {
    const plan = planOf([disc(100, 80), disc(160, 160), disc(400, 200)])
    expect(plan.clearances!.items).toBeCloseTo(100 - 40, 2)
    expect(plan.clearances!.edge).toBeCloseTo(30, 9)
    expect(planOf([disc(100, 80)]).clearances).toEqual({ items: null, edge: expect.closeTo(60, 9) as number })
    expect(planOf([]).clearances).toEqual({ items: null, edge: null })
    expect(planOf([]).findings.map(({ code }) => code)).toContain('applique/no-items')
  })

  it('a leaf that is turned keeps its own distances, not those of a circle round it', () => {
    const leaf = (x: number, turn: number) => ({ motif: 'leaf', colourway: 'b', x, y: 150, turn })
    // Side by side upright 20 mm wide; end to end lying 50 mm long.
    expect(planOf([leaf(100, 0), leaf(130, 0)]).clearances!.items).toBeCloseTo(10, 2)
    expect(planOf([leaf(100, 90), leaf(160, 90)]).clearances!.items).toBeCloseTo(10, 9)
  })

  it('in a circle the room to the edge is the rest of the radius', () => {
    const panel = { shape: 'circle', diameter: 200, allowance: 0 } as const
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 79, noNaN: true }),
        fc.integer({ min: 0, max: 11 }),
        (far, hour) => {
          const angle = (hour * Math.PI) / 6
          const plan = planOf([disc(100 + far * Math.sin(angle), 100 - far * Math.cos(angle))], { panel })
          expect(Math.abs(plan.clearances!.edge! - (80 - far))).toBeLessThan(2 * APPLIQUE.roundness)
          expect(codes(plan)).toEqual([])
        },
      ),
    )
  })

  it('in an ellipse and on drawn outlines the allowance is a line at the same distance everywhere', () => {
    const ellipse = planOf([disc(150, 100)], {
      panel: { shape: 'ellipse', width: 300, height: 200, allowance: 20 },
    })
    expect(ellipse.clearances!.edge).toBeCloseTo(80, 2)
    expect(ellipse.panel!.inner).toHaveLength(1)
    const path = 'M 50 50 h 300 v 200 h -300 z'
    const drawn = planOf([disc(35, 100)], { panel: { shape: 'outline', path, allowance: 15 } })
    expect(drawn.size).toMatchObject({ width: 300, height: 200 })
    expect(drawn.clearances!.edge).toBeCloseTo(15, 9)
    expect(codes(drawn)).toEqual([])
    const points = [
      [0, 0],
      [300, 0],
      [300, 200],
      [0, 200],
    ]
    const typed = planOf([disc(35, 100)], { panel: { shape: 'outline', points, allowance: 15 } })
    expect(typed.panel!.outline).toEqual(drawn.panel!.outline)
  })

  it('refuses what overlaps, and names both', () => {
    const plan = planOf([disc(100, 80), disc(130, 80)])
    expect(plan.clearances!.items).toBe(0)
    expect(plan.findings[0]).toMatchObject({
      code: 'applique/overlap',
      severity: 'error',
      where: 'items 1 and 2',
      message: 'item 1 (Disc) and item 2 (Disc) overlap.',
      target: { cells: ['1,1', '1,2'] },
    })
    // The lens that two circles share: 2r²·acos(d/2r) − (d/2)·√(4r² − d²).
    const lens = 2 * 400 * Math.acos(30 / 40) - 15 * Math.sqrt(1600 - 900)
    expect(Math.abs(plan.overlaps![0]!.area - lens)).toBeLessThan(0.5)
    // Touching is no overlap.
    expect(codes(planOf([disc(100, 80), disc(140, 80)]))).toEqual([])
  })

  it('or allows it, in an order: by layer, then by place in the list', () => {
    const items = [disc(100, 80, { layer: 2 }), disc(130, 80), disc(115, 100)]
    const plan = planOf(items, { overlaps: 'allowed' })
    expect(codes(plan)).toEqual([])
    expect(plan.stacking).toEqual(['1,2', '1,3', '1,1'])
    expect(plan.overlaps!.map(({ below, above }) => [below, above])).toEqual([
      ['1,2', '1,1'],
      ['1,3', '1,1'],
      ['1,2', '1,3'],
    ])
  })

  it('warns of what lies closer than asked, with the distance', () => {
    const plan = planOf([disc(100, 80), disc(143, 80)], { clearance: 5 })
    expect(plan.findings[0]).toMatchObject({
      code: 'applique/too-close',
      severity: 'warning',
      message: 'item 1 (Disc) and item 2 (Disc) are 3 mm apart; the minimum gap is 5 mm.',
    })
    expect(codes(planOf([disc(100, 80), disc(145, 80)], { clearance: 5 }))).toEqual([])
  })

  it('lets nothing into the seam allowance or out of the panel', () => {
    const [finding] = planOf([disc(32, 80)]).findings
    expect(finding).toMatchObject({
      code: 'applique/in-allowance',
      message: 'item 1 (Disc) reaches 3 mm into the seam allowance of 15 mm.',
    })
    const out = planOf([disc(440, 80)])
    expect(out.findings[0]).toMatchObject({
      code: 'applique/outside',
      message: 'item 1 (Disc) sticks out of the panel by 10 mm.',
    })
    expect(out.clearances!.edge).toBeCloseTo(-10, 2)
    expect(codes(planOf([disc(35, 35)]))).toEqual([])
  })

  it('adds up yarn, ends and time of all its motifs, and sewing thread apart from the yarn', () => {
    const items = [disc(100, 80), disc(200, 80), { motif: 'leaf', colourway: 'b', x: 300, y: 150 }]
    const plan = planOf(
      items,
      {},
      { allowance: { wastePercent: 0, tail: 100 }, joining: { rule: 'seam', yarn: 'y1' } },
    )
    expect(plan.yarns.map(({ id, grams }) => [id, grams.expected])).toEqual([
      ['y1', 4],
      ['y2', 1],
    ])
    expect(plan.ends).toBe(6)
    const [round, leaf] = plan.accounts!.map((account) => perimeter(account.outline))
    const outline = 2 * round! + leaf!
    expect(round).toBeCloseTo(40 * Math.PI, 1)
    expect(plan.stitching!.outline).toBeCloseTo(outline, 9)
    // Model, §8: thread about 2.5 × outline and two tails for each item.
    expect(plan.stitching).toMatchObject({
      tails: 6,
      thread: expect.closeTo((2.5 * outline + 600) / 1000, 9) as number,
    })
    expect(plan.minutes!.expected).toBeCloseTo(25 + 6 + outline * APPLIQUE.stitchMinutes, 9)
  })

  it('shows what can be shown when there are errors', () => {
    const plan = planOf([
      disc(100, 80),
      { x: 5, y: 5 },
      { motif: 'nobody', x: 9, y: 9 },
      { motif: 'disc', x: 7 },
    ])
    expect(plan.motifs.map(({ label }) => label)).toEqual(['1'])
    expect(codes(plan)).toEqual(['file/unknown-motif', 'applique/no-motif', 'applique/no-place'])
    const bare = planOf([disc(100, 80)], { panel: { shape: 'circle' } })
    expect(bare.motifs).toHaveLength(1)
    expect(bare.panel).toBeUndefined()
    expect(codes(bare)).toEqual(['applique/panel-size'])
    expect(codes(planOf([disc(100, 80, { colourway: 'b' })]))).toContain('applique/other-motif')
  })

  it.each([
    ['applique/panel-size', { shape: 'rectangle', width: 450, height: 0 }],
    ['applique/panel-size', { shape: 'ellipse', width: 1e9, height: 40 }],
    ['applique/allowance', { ...RECTANGLE, allowance: -3 }],
    ['applique/allowance', { ...RECTANGLE, allowance: NaN }],
    ['applique/allowance-takes-all', { ...RECTANGLE, allowance: 150 }],
    ['applique/path-missing', { shape: 'outline' }],
    ['applique/path-missing', { shape: 'outline', points: [] }],
    ['applique/path-markup', { shape: 'outline', path: '<path d="M0 0H100V100Z" onload="x()"/>' }],
    ['applique/path-too-long', { shape: 'outline', path: 'M0 0'.padEnd(100_001) }],
    ['applique/path-too-many-points', { shape: 'outline', path: 'M0 0' + 'l1 1'.repeat(6000) }],
    [
      'applique/path-too-many-points',
      { shape: 'outline', points: Array.from({ length: 6000 }, (_, i) => [i, i * i]) },
    ],
    ['applique/path-unreadable', { shape: 'outline', path: 'M 0 0 L 100 0 L 100 x' }],
    ['applique/path-number', { shape: 'outline', path: 'M 0 0 L 1e400 0 L 100 100 Z' }],
    [
      'applique/path-number',
      {
        shape: 'outline',
        points: [
          [0, 0],
          [NaN, 1],
          [100, 100],
        ],
      },
    ],
    ['applique/path-number', { shape: 'outline', points: [[0, 0], [100], [100, 100]] }],
    ['applique/path-pieces', { shape: 'outline', path: 'M0 0H100V100H0Z M20 20H50V50H20Z' }],
    ['applique/path-flat', { shape: 'outline', path: 'M 0 0 L 100 100 Z' }],
    ['applique/path-flat', { shape: 'outline', path: 'M 0 0' }],
    ['applique/path-crosses', { shape: 'outline', path: 'M 0 0 L 100 100 L 100 0 L 0 120 Z' }],
    // A figure of eight whose halves cancel each other out.
    ['applique/path-crosses', { shape: 'outline', path: 'M 0 0 L 400 400 L 0 400 L 400 0 Z' }],
    ['applique/panel-size', { shape: 'outline', path: 'M 0 0 H 9 V 9 H 0 Z' }],
  ] as const)('tells %s of a panel that cannot be used', (code, panel) => {
    const began = processorTime()
    const plan = planOf([disc(60, 60)], { panel: panel as unknown as AppliqueLayout['panel'] })
    expect(codes(plan)).toContain(code)
    expect(processorTime() - began).toBeLessThan(2000)
  })

  it('notes an outline that is not closed, and closes it', () => {
    const panel = { shape: 'outline', path: 'M 0 0 H 200 V 150 H 0', allowance: 0 } as const
    const plan = planOf([disc(100, 80)], { panel })
    expect(plan.findings.map(({ code }) => code)).toContain('applique/path-open')
    expect(plan.clearances!.edge).toBeCloseTo(50, 2)
    const back = planOf([disc(100, 80)], { panel: { ...panel, path: 'M 0 0 H 200 V 150 H 0 L 0 0' } })
    expect(back.findings.map(({ code }) => code)).not.toContain('applique/path-open')
  })

  it('answers a heap of items in time, and says what it did not look at', () => {
    const began = processorTime()
    const heap = planOf(Array.from({ length: MOST_APPLIQUE_ITEMS }, () => disc(200, 150)))
    expect(codes(heap)).toContain('applique/heap')
    expect(heap.findings.filter(({ code }) => code === 'applique/overlap')).toHaveLength(APPLIQUE.toldPairs)
    expect(codes(planOf(Array.from({ length: 501 }, () => disc(200, 150))))).toEqual(['applique/too-many'])
    expect(processorTime() - began).toBeLessThan(20_000)
  })

  it('check tells the findings of plan and of motifs that lie nowhere', () => {
    const unused = { id: 'odd', name: 'Odd', kind: 'measured', outline: 'round' } as const
    const found = checkProject({
      ...BASE,
      motifs: [...BASE.motifs!, unused],
      layout: { kind: 'applique', panel: RECTANGLE, items: [disc(440, 80)], clearance: -1 },
    })
    const told = found.map(({ code }) => code)
    expect(told).toEqual(
      expect.arrayContaining(['applique/clearance', 'applique/outside', 'motif/missing-size']),
    )
  })

  it('does not change with the order of the list but for its numbers', () => {
    const place = fc.record({
      x: fc.integer({ min: 0, max: 450 }),
      y: fc.integer({ min: 0, max: 300 }),
      turn: fc.integer({ min: 0, max: 359 }),
    })
    fc.assert(
      fc.property(fc.array(place, { minLength: 2, maxLength: 12 }), (places) => {
        const items = places.map((at, i) => ({ ...at, motif: i % 2 ? 'leaf' : 'disc' }))
        const one = planOf(items)
        const other = planOf([...items].reverse())
        expect(other.clearances!.items).toBeCloseTo(one.clearances!.items!, 9)
        expect(other.clearances!.edge).toBeCloseTo(one.clearances!.edge!, 9)
        expect(codes(other).sort()).toEqual(codes(one).sort())
      }),
      { numRuns: 60 },
    )
  })
})
