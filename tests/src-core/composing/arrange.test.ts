import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { AppliqueLayout, Project } from '../../../shared-types/project'
import {
  arrange,
  completeRow,
  completeSpray,
  completeWreath,
  CORNERS,
  roomFinding,
} from '../../../src-core/composing/arrange'
import type { Wish } from '../../../src-core/composing/arrange'
import { groundOf } from '../../../src-core/composing/ground'
import { planProject } from '../../../src-core/plan'

const panelOf = (
  panel: AppliqueLayout['panel'],
  clearance = 5,
  items: AppliqueLayout['items'] = [],
): Project => ({
  format: 'petalyard-project',
  version: 1,
  motifs: [
    {
      id: 'star',
      name: 'Star',
      kind: 'measured',
      outline: 'petals',
      petals: 5,
      overTips: 60,
      overValleys: 36,
    },
    { id: 'leaf', name: 'Leaf', kind: 'measured', outline: 'leaf', length: 40, width: 18 },
    { id: 'bud', name: 'Bud', kind: 'measured', outline: 'round', across: 20 },
  ],
  layout: { kind: 'applique', panel, clearance, items },
})
const SQUARE = { shape: 'rectangle', width: 450, height: 450, allowance: 15 } as const
const ROUND = { shape: 'circle', diameter: 400, allowance: 10 } as const
/** A bag that narrows towards its bottom. */
const BAG = {
  shape: 'outline',
  path: 'M 0 0 H 340 L 325 300 Q 322 360 260 360 H 80 Q 18 360 15 300 Z',
  allowance: 12,
} as const
const STAR = [{ motif: 'star' }]
const BY_TURNS = [{ motif: 'star', colourway: 'a' }, { motif: 'leaf' }, { motif: 'bud' }]

const trouble = (project: Project) =>
  planProject(project)
    .findings.filter(({ code, severity }) => severity !== 'note' && code.startsWith('applique/'))
    .map(({ code }) => code)
const itemsOf = (project: Project) => (project.layout as AppliqueLayout).items ?? []

describe('arrangers on a project', () => {
  it.each([SQUARE, ROUND, { shape: 'ellipse', width: 500, height: 300, allowance: 12 }, BAG] as const)(
    'a wreath that nobody counted is as wide as there is room, and as full as the distance allows: %j',
    (panel) => {
      for (const turns of [STAR, BY_TURNS]) {
        const project = panelOf(panel)
        const laid = arrange(project, turns, { how: 'wreath' }, true)
        const ground = { ...groundOf(project)!, panel: groundOf(project)!.panel! }
        const { count, radiusX } = completeWreath(ground, turns, { how: 'wreath' })
        expect(itemsOf(laid)).toHaveLength(count)
        expect(count % turns.length).toBe(0)
        expect(count).toBeGreaterThan(8)
        expect(trouble(laid)).toEqual([])
        const plan = planProject(laid)
        expect(plan.clearances!.items).toBeGreaterThanOrEqual(5 - 0.01)
        // One turn more would not do.
        const more = arrange(project, turns, { how: 'wreath', count: count + turns.length }, true)
        expect(trouble(more)).not.toEqual([])
        expect(
          trouble(arrange(project, turns, { how: 'wreath', radiusX: radiusX + 20, count }, true)),
        ).not.toEqual([])
      }
    },
  )

  it('a wreath lays what is told, by turns, and keeps or replaces what lies there', () => {
    const there = panelOf(SQUARE, 5, [{ motif: 'bud', x: 225, y: 225, turn: 0 }])
    const wish: Wish = { how: 'wreath', count: 6, radiusX: 120, radiusY: 90, centre: { x: 200, y: 230 } }
    const kept = itemsOf(arrange(there, BY_TURNS, wish, true))
    expect(kept.map(({ motif }) => motif)).toEqual(['bud', 'star', 'leaf', 'bud', 'star', 'leaf', 'bud'])
    expect(kept[1]).toEqual({ motif: 'star', colourway: 'a', x: 200, y: 140, turn: 0 })
    expect(kept[2]).not.toHaveProperty('colourway')
    expect(itemsOf(arrange(there, BY_TURNS, wish, false))).toEqual(kept.slice(1))
  })

  it('a row fills its line, open or closed', () => {
    const points = [
      { x: 60, y: 225 },
      { x: 225, y: 180 },
      { x: 390, y: 225 },
    ]
    const project = panelOf(SQUARE)
    const laid = arrange(project, BY_TURNS, { how: 'row', points }, true)
    expect(itemsOf(laid).length).toBeGreaterThanOrEqual(6)
    expect(itemsOf(laid)[0]).toMatchObject({ x: 60, y: 225 })
    expect(itemsOf(laid).at(-1)).toMatchObject({ x: 390, y: 225 })
    expect(trouble(laid)).toEqual([])
    const { count } = completeRow(groundOf(project)!, BY_TURNS, { how: 'row', points })
    expect(trouble(arrange(project, BY_TURNS, { how: 'row', points, count: count + 3 }, true))).not.toEqual(
      [],
    )
    const closed = arrange(
      project,
      STAR,
      { how: 'row', points: [...points, { x: 225, y: 380 }], closed: true },
      true,
    )
    expect(trouble(closed)).toEqual([])
  })

  it.each(CORNERS)('a spray out of the corner %s keeps its distances', (corner) => {
    for (const panel of [SQUARE, { shape: 'rectangle', width: 500, height: 350, allowance: 12 }] as const)
      for (const turns of [STAR, BY_TURNS]) {
        const laid = arrange(panelOf(panel), turns, { how: 'spray', corner }, true)
        expect(itemsOf(laid)).toHaveLength(6)
        expect(trouble(laid)).toEqual([])
        const first = itemsOf(laid)[0]!
        expect(first.x! < panel.width / 2).toBe(corner.endsWith('left'))
        expect(first.y! < panel.height / 2).toBe(corner.startsWith('top'))
      }
    const complete = completeSpray(
      { ...groundOf(panelOf(SQUARE))!, panel: groundOf(panelOf(SQUARE))!.panel! },
      STAR,
      { how: 'spray', corner, opening: 60 },
    )
    expect(complete).toMatchObject({ count: 6, first: 45, step: 65, opening: 60 })
  })

  it('a scatter always keeps its distance, from what lies there too, as the plan measures it', () => {
    const taken = fc.array(
      fc.record({ x: fc.integer({ min: 50, max: 350 }), y: fc.integer({ min: 50, max: 350 }) }),
      { maxLength: 3 },
    )
    fc.assert(
      fc.property(
        fc.integer(),
        fc.integer({ min: 0, max: 25 }),
        fc.constantFrom(SQUARE, ROUND),
        taken,
        fc.boolean(),
        (seed, distance, panel, places, keep) => {
          const there = panelOf(
            panel,
            0,
            places.map((at) => ({ motif: 'bud', ...at, turn: 0 })),
          )
          const laid = arrange(there, BY_TURNS, { how: 'scatter', distance, seed }, keep)
          const own = itemsOf(laid).slice(keep ? places.length : 0)
          expect(own.length).toBeGreaterThan(10)
          // Judged by the plan, which knows nothing of how it was laid; what lay there may lie as it likes.
          const plan = planProject({
            ...laid,
            layout: { ...(laid.layout as AppliqueLayout), clearance: distance },
          })
          const fresh = new Set(own.map((_, i) => `1,${i + 1 + itemsOf(laid).length - own.length}`))
          const told = plan.findings.filter(({ target, code }) => {
            const cells = target?.cells ?? []
            return (
              code.startsWith('applique/') &&
              code !== 'applique/no-items' &&
              cells.some((id) => fresh.has(id))
            )
          })
          expect(told).toEqual([])
          if (!keep) expect(plan.clearances!.items).toBeGreaterThanOrEqual(distance)
          expect(plan.panel && plan.clearances!.edge! >= panel.allowance - (keep ? 400 : 0)).toBe(true)
        },
      ),
      { numRuns: 15 },
    )
  })

  it('the same seed lays the same, another another; no more than is asked for', () => {
    const project = panelOf(SQUARE)
    const lay = (seed: number, most?: number) =>
      itemsOf(arrange(project, STAR, { how: 'scatter', seed, ...(most !== undefined && { most }) }, true))
    expect(lay(3)).toEqual(lay(3))
    expect(lay(4)).not.toEqual(lay(3))
    expect(lay(3, 4)).toEqual(lay(3).slice(0, 4))
  })

  it('answers the same project where nothing can be laid', () => {
    const project = panelOf(SQUARE)
    const wish: Wish = { how: 'scatter', seed: 1 }
    expect(arrange(project, [{ motif: 'nobody' }], wish, true)).toBe(project)
    expect(arrange(project, [], wish, true)).toBe(project)
    const bare = panelOf({ shape: 'circle' })
    expect(arrange(bare, STAR, wish, true)).toBe(bare)
    const blanket: Project = { ...project, layout: { kind: 'blanket' } }
    expect(arrange(blanket, STAR, wish, true)).toBe(blanket)
    const small = panelOf({ ...SQUARE, width: 40, height: 40 })
    expect(arrange(small, STAR, wish, true)).toBe(small)
  })

  it('says how many there is room for, where more are asked for', () => {
    const small = panelOf({ ...SQUARE, width: 300, height: 300 })
    const ground = groundOf(small)!
    const told = (wish: Wish) =>
      roomFinding(ground, STAR, wish, itemsOf(arrange(small, STAR, wish, true)).length)
    const { count } = completeWreath({ ...ground, panel: ground.panel! }, STAR, { how: 'wreath' })
    expect(told({ how: 'wreath', count: count + 3 })).toMatchObject({
      code: 'applique/room',
      message: `you asked for ${count + 3}; there is room for ${count}.`,
    })
    for (const wish of [{ how: 'wreath', count }, { how: 'wreath' }, { how: 'scatter', seed: 1 }] as const)
      expect(told(wish)).toBeNull()
    const laid = itemsOf(arrange(small, STAR, { how: 'scatter', seed: 1, most: 400 }, true)).length
    expect(told({ how: 'scatter', seed: 1, most: 400 })!.message).toContain(`room for ${laid}.`)
    const points = [
      { x: 40, y: 150 },
      { x: 260, y: 150 },
    ]
    expect(told({ how: 'row', points, count: 40 })!.message).toContain('you asked for 40')
  })

  it('lays a single item in the middle of its panel, where nobody asked for more', () => {
    for (const panel of [
      { ...SQUARE, width: 110, height: 96 },
      { ...ROUND, diameter: 95 },
    ] as const) {
      const tight = panelOf(panel)
      const { width, height } = groundOf(tight)!.panel!
      for (const wish of [{ how: 'wreath' }, { how: 'scatter', seed: 3 }] as const) {
        const items = itemsOf(arrange(tight, STAR, wish, true))
        expect(items).toEqual([expect.objectContaining({ x: width / 2, y: height / 2 })])
        expect(trouble(arrange(tight, STAR, wish, true))).toEqual([])
      }
    }
    // One that is asked for lies on its line.
    const asked = itemsOf(arrange(panelOf(SQUARE), STAR, { how: 'wreath', count: 1, radiusX: 100 }, true))
    expect(asked[0]!.y).toBeCloseTo(125, 3)
  })

  it('lays no more than a panel holds', () => {
    const full = panelOf({ ...SQUARE, width: 3000, height: 3000 }, 0)
    const laid = arrange(full, [{ motif: 'bud' }], { how: 'wreath', count: 2000 }, true)
    expect(itemsOf(laid)).toHaveLength(500)
    expect(arrange(laid, [{ motif: 'bud' }], { how: 'spray', corner: 'top-left' }, true)).toBe(laid)
  })
})
