import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { GarlandLayout } from '../../../shared-types/project'
import { catenaryFromDrop } from '../../../src-core/geometry/catenary'
import { boxOf, moveOutline, turnOutline } from '../../../src-core/geometry/points'
import { sharedArea } from '../../../src-core/geometry/polygons'
import { planProject } from '../../../src-core/plan'
import { alongs, base, codes, plan } from './garland-project'
import { runs } from '../../runs'

describe('M41: one weight of several colours', () => {
  const six = {
    ...{ id: 'six', kind: 'measured', outline: 'petals', petals: 6, overTips: 60, overValleys: 40 },
    slots: [{ slot: 'centre' }, { slot: 'petals' }],
    weighed: { motifs: 10, grams: 30, resolution: 1 },
  } as const
  const colourways = [{ id: 'b', code: 'B', motif: 'six', yarns: { centre: 'y1', petals: 'y2' } }]
  const changes = { motifs: [six as never], colourways }

  it.each([
    ['a garland', { items: [{ motif: 'six', colourway: 'b' }], cord: { length: 2000, worked: 'bought' } }],
    [
      'an appliqué',
      {
        kind: 'applique',
        panel: { shape: 'rectangle', width: 300, height: 300, allowance: 0 },
        items: [{ motif: 'six', colourway: 'b', x: 150, y: 150 }],
      },
    ],
  ] as const)('is split by the areas of the drawing, ±25 %, in %s and its kit', (_, layout) => {
    const planned = plan({ ...(layout as object), kit: { count: 2, windTo: 0.1 } }, changes)
    const [centre, petals] = ['y1', 'y2'].map((id) => planned.yarns.find((need) => need.id === id)!)
    for (const { grams, split } of [centre!, petals!]) {
      expect(grams.high / grams.expected).toBeCloseTo(1.25, 9)
      expect(split).toEqual(['areas'])
    }
    expect(petals!.grams.expected).toBeGreaterThan(4 * centre!.grams.expected)
    const all = planned.counts.motifs * 3 * 1.1
    expect(petals!.grams.expected + centre!.grams.expected).toBeCloseTo(all, 6)
    const wound = planned.kit!.perKit.find(({ yarn }) => yarn === 'y2')!.grams
    expect(wound).toBeCloseTo(Math.ceil(petals!.grams.high * 10 - 1e-9) / 10, 6)
    expect(codes(planned)).toContain('yarn/split-by-area')
  })
})

describe('M50: along the cord', () => {
  it('fills the length edge to edge, the rest shared by both ends', () => {
    // Discs of 40 and gaps of 40: n·80 − 40 ≤ 2000, so 25 on 1960 mm, 20 mm left at each end.
    const planned = plan({})
    expect(planned.garland!.items).toHaveLength(25)
    expect(alongs(planned)[0]).toBeCloseTo(40, 9)
    expect(alongs(planned)[1]).toBeCloseTo(120, 9)
    expect(alongs(planned)[24]).toBeCloseTo(1960, 9)
    expect(planned.counts).toEqual({ motifs: 25, byColourway: { a: 25 } })
  })

  it('counts by centres, and by a count over a length', () => {
    const centres = plan({ spacing: { between: 'centres', mm: 100 } })
    expect(centres.garland!.items).toHaveLength(20)
    expect(alongs(centres)[1]! - alongs(centres)[0]!).toBeCloseTo(100, 9)
    const count = plan({ spacing: { between: 'edges', count: 10 } })
    expect(count.garland!.items).toHaveLength(10)
    expect(count.garland?.spacing).toBeCloseTo(160, 9)
    expect(alongs(count)[0]).toBeCloseTo(100, 9)
    const pitch = plan({ spacing: { between: 'centres', count: 10 } })
    expect(alongs(pitch)).toEqual([100, 300, 500, 700, 900, 1100, 1300, 1500, 1700, 1900])
  })

  it('from spacing and count to the length of the cord, and back', () => {
    const cord = { ties: 0, worked: 'chain' as const, yarn: 'y1' }
    const planned = plan({ cord, spacing: { between: 'edges', mm: 40, count: 12 } })
    expect(planned.garland!.cord.length).toBeCloseTo(12 * 80, 9)
    const back = plan({ cord: { ...cord, length: planned.garland!.cord.length }, spacing: { mm: 40 } })
    expect(alongs(back)).toEqual(alongs(planned))
  })

  it('adds gaps to the spacing, and mirrors the sequence about the middle', () => {
    const items = [{ motif: 'disc' }, { gap: 20 }, { motif: 'leaf' }]
    const planned = plan({ items, spacing: { between: 'edges', mm: 10 } })
    const [first, second, third] = alongs(planned)
    expect(second! - first!).toBeCloseTo(20 + 20 + 10 + planned.garland!.items[1]!.extent / 2, 6)
    expect(third! - second!).toBeCloseTo(planned.garland!.items[1]!.extent / 2 + 10 + 20, 6)
    const mirrored = plan({ items, spacing: { between: 'edges', mm: 10 }, symmetric: true })
    const motifs = mirrored.garland!.items.map(({ motif }) => motif)
    expect(motifs).toEqual([...motifs].reverse())
    expect(motifs.length % 2).toBe(1)
    alongs(mirrored).forEach((along, i, all) => expect(along + all[all.length - 1 - i]!).toBeCloseTo(2000, 6))
  })

  it('counts the cord in chains: by its own gauge, else 0.92 of a stitch', () => {
    const own = plan({})
    expect(own.garland!.cord).toMatchObject({ length: 2000, chains: 440 })
    expect(own.garland!.cord.ties).toEqual({ length: 300, chains: 66 })
    expect(own.garland!.cord.whole).toEqual({ length: 2600, chains: 572 })
    expect(own.garland!.cord.stretched).toEqual({ low: 2100, high: 2200 })
    const swatch = plan({ cord: { length: 2000, worked: 'chain', yarn: 'y1' } })
    // 20 sc to 100 mm: a stitch of 5 mm, a chain of 4.6 mm.
    expect(swatch.garland!.cord.chains).toBe(Math.round(2000 / 4.6))
    const bought = plan({ cord: { length: 2000, ties: 300, worked: 'bought' } })
    expect(bought.garland!.cord).toMatchObject({ chains: null, stretched: null })
    expect(bought.garland!.items.every((item) => item.chains === null)).toBe(true)
    expect(bought.yarns.map(({ id }) => id)).toEqual(['y2'])
  })

  it('one chain of the published garland is 3.8 mm (§simply-crochet-garland: ch 261 for about 100 cm)', () => {
    const planned = plan({
      cord: { length: 1000, worked: 'chain', yarn: 'y1', gauge: { chains: 261, over: 1000 } },
      spacing: { between: 'centres', mm: 77 },
    })
    expect(planned.garland!.cord.chains).toBe(261)
    // "A leaf every 20 stitches".
    const [, ...later] = planned.garland!.items
    for (const item of later) expect(item.chains! + 3).toBeGreaterThanOrEqual(19)
    for (const item of later) expect(item.chains! + 3).toBeLessThanOrEqual(21)
  })

  it('counts yarn: the motifs, and the cord with 5.2 stitch widths to a chain (M40)', () => {
    const planned = plan({}, { allowance: { wastePercent: 0, tail: 0 } })
    const [moss, cream] = planned.yarns
    expect(cream?.grams.expected).toBeCloseTo(50, 9)
    expect(moss?.parts.cord).toBeCloseTo((((572 * 5.2 * (100 / 22)) / 0.92 / 1000) * 50) / 125, 9)
    expect(moss?.parts.joins).toBeGreaterThan(0)
    expect(planned.ends).toBe(25 * 2 + 2)
    // 25 discs of 5 minutes and 1 minute each to fasten, and the cord itself.
    expect(planned.minutes?.expected).toBeGreaterThan(25 * 6)
  })
})

describe('M51: as it hangs', () => {
  const swags = { count: 3, span: 900, drop: 150 }
  const hung = (layout: Partial<GarlandLayout> = {}): Plan =>
    plan({ cord: { worked: 'chain', yarn: 'y1' }, swags, ...layout })

  it('the cord follows from span and drop, the drop from the cord, the span from cord and drop', () => {
    const planned = hung()
    const { length, a } = catenaryFromDrop(900, 150)
    expect(planned.garland!.swags).toMatchObject({ count: 3, span: 900, drop: 150, width: 2700, a, length })
    expect(planned.garland!.cord.length).toBeCloseTo(3 * length, 9)
    const drop = hung({ cord: { length: 3 * length }, swags: { count: 3, span: 900 } })
    expect(drop.garland!.swags?.drop).toBeCloseTo(150, 6)
    const span = hung({ cord: { length: 3 * length }, swags: { count: 3, drop: 150 } })
    expect(span.garland!.swags?.span).toBeCloseTo(900, 6)
  })

  it('places things at equal arc lengths on the curve, straight down or turned with the cord', () => {
    const planned = hung()
    const { x: left, y: top } = planned.garland!.hooks[0]!
    const { a, length } = catenaryFromDrop(900, 150)
    for (const { x, y, along, turn } of planned.garland!.items) {
      const swag = Math.min(2, Math.floor(along / length))
      const fromMiddle = x - left - swag * 900 - 450
      expect(y - top).toBeCloseTo(150 - a * (Math.cosh(fromMiddle / a) - 1), 6)
      expect(a * Math.sinh(fromMiddle / a)).toBeCloseTo(along - swag * length - length / 2, 6)
      expect(turn).toBe(0)
    }
    const turned = hung({ hang: { way: 'along' } })
    const [first] = turned.garland!.items
    // At the left end the cord falls to the right: clockwise.
    expect(first!.turn).toBeGreaterThan(0)
    expect(turned.garland!.items.at(-1)!.turn).toBeCloseTo(-first!.turn, 6)
  })

  it('a flower hangs by two petals, a valley on top; a leaf by its stem; a square by a side', () => {
    const of = (motif: string, layout: Partial<GarlandLayout> = {}) =>
      plan({ items: [{ motif }], spacing: { between: 'centres', count: 3 }, ...layout })
    const six = of('six')
    expect(six.garland!.items[0]!.words).toBe('sc in petal 1, ch 3, sc in next petal')
    expect(six.motifs[0]).toMatchObject({ turn: 30, motif: 'six' })
    expect(six.motifs[0]!.y - six.garland!.items[0]!.y).toBeCloseTo(30 * Math.cos(Math.PI / 6), 9)
    expect(of('leaf').garland!.items[0]!.words).toBe('sc in the stem end')
    expect(of('leaf').motifs[0]!.turn).toBe(180)
    expect(of('square').motifs[0]!.turn % 90).toBe(0)
    expect(of('square').garland!.items[0]!.words).toMatch(/^sc in corner 1, ch 1\d, sc in next corner$/)
    expect(
      planProject({ ...base({ items: [{ motif: 'six' }] }), terms: 'UK' }).garland!.items[0]!.words,
    ).toBe('dc in petal 1, 3 ch, dc in next petal')
    expect(of('six', { cord: { length: 900, worked: 'bought' } }).garland!.items[0]!.words).toBe(
      'sew petal 1 and the next petal to the cord',
    )
    const one = of('six', { hang: { by: 1 } })
    expect(codes(one)).toContain('garland/one-petal')
    expect(codes(six)).not.toContain('garland/one-petal')
  })

  it('reports what collides in the dip, and only that', () => {
    const deep = hung({ swags: { count: 1, span: 60, drop: 400 }, spacing: { between: 'edges', mm: 5 } })
    expect(codes(deep)).toContain('garland/collision')
    expect(codes(hung())).not.toContain('garland/collision')
    const discs = plan({ spacing: { between: 'centres', mm: 39 }, cord: { length: 400, yarn: 'y1' } })
    expect(discs.garland?.collisions[0]).toEqual([0, 1])
    const touching = plan({ spacing: { between: 'edges', mm: 0 }, cord: { length: 400, yarn: 'y1' } })
    expect(touching.garland?.collisions).toEqual([])
  })

  it('points at what it remarks on, beads left out of the count', () => {
    const items = [{ bead: 'bead', size: 2 }, { motif: 'disc' }]
    const swags = { count: 2, span: 900, drop: 100 }
    const hookFinding = plan({ items, swags, spacing: { count: 4 }, cord: { yarn: 'y1' } }).findings
    for (const { code, target } of hookFinding)
      if (code === 'garland/at-hook') expect(target?.cells?.every((cell) => /^1,[12]$/.test(cell))).toBe(true)
    const close = plan({ spacing: { between: 'centres', mm: 39 }, cord: { length: 400, yarn: 'y1' } })
    const told = close.findings.find(({ code }) => code === 'garland/collision')
    expect(told?.target?.cells?.slice(0, 2)).toEqual(['1,1', '1,2'])
  })
})

describe('M50, M51: properties', () => {
  const layouts = fc.record({
    items: fc.array(
      fc.oneof(
        fc.record({ motif: fc.constantFrom('disc', 'six', 'leaf', 'square') }),
        fc.record({ gap: fc.integer({ min: 0, max: 80 }) }),
        fc.record({ bead: fc.constant('bead'), size: fc.integer({ min: 5, max: 30 }) }),
      ),
      { minLength: 1, maxLength: 5 },
    ),
    spacing: fc.record({ between: fc.constant('edges' as const), mm: fc.integer({ min: 0, max: 120 }) }),
    swags: fc.record({
      count: fc.integer({ min: 1, max: 4 }),
      span: fc.integer({ min: 300, max: 1200 }),
      drop: fc.integer({ min: 0, max: 900 }),
    }),
    symmetric: fc.boolean(),
    hang: fc.record({ way: fc.constantFrom('plumb' as const, 'along' as const), by: fc.constantFrom(1, 2) }),
  })

  it('things stand in order, no nearer than the spacing, evenly at both ends, inside the size', () => {
    fc.assert(
      fc.property(layouts, (layout) => {
        const planned = plan({ cord: { yarn: 'y1' }, ...layout })
        const items = planned.garland?.items ?? []
        if (items.length === 0) return
        const spacing = planned.garland!.spacing
        for (let i = 1; i < items.length; i++) {
          const gap = items[i]!.along - items[i - 1]!.along - (items[i]!.extent + items[i - 1]!.extent) / 2
          expect(gap).toBeGreaterThanOrEqual(spacing - 1e-6)
          expect(items[i]!.chains).toBeGreaterThanOrEqual(0)
        }
        const before = items[0]!.along - items[0]!.extent / 2
        const after = planned.garland!.cord.length - items.at(-1)!.along - items.at(-1)!.extent / 2
        expect(before).toBeGreaterThanOrEqual(-1e-6)
        expect(before).toBeCloseTo(after, 5)
        for (const { x, y } of [...planned.garland!.line, ...items]) {
          expect(x).toBeGreaterThanOrEqual(-1e-9)
          expect(y).toBeGreaterThanOrEqual(-1e-9)
          expect(x).toBeLessThanOrEqual(planned.size.width + 1e-9)
          expect(y).toBeLessThanOrEqual(planned.size.height + 1e-9)
        }
      }),
      { numRuns: runs(150) },
    )
  })

  it('collisions are the pairs whose outlines, set down anew, share an area', () => {
    fc.assert(
      fc.property(layouts, (layout) => {
        const withoutBeads = layout.items.filter((item) => !('bead' in item))
        const planned = plan({ cord: { yarn: 'y1' }, ...layout, items: withoutBeads })
        const { motifs, accounts } = planned
        const outlines = motifs.map(({ x, y, turn, motif }) => {
          const { outline } = accounts!.find(({ id }) => id === motif)!
          return moveOutline(turnOutline(outline, (turn * Math.PI) / 180), x, y)
        })
        const boxes = outlines.map((outline) => boxOf(outline))
        const found: number[][] = []
        outlines.forEach((outline, i) => {
          for (let j = i + 1; j < outlines.length; j++) {
            if (boxes[j]!.left > boxes[i]!.right || boxes[i]!.left > boxes[j]!.right) continue
            if (sharedArea([outline], [outlines[j]!]) > 0.01) found.push([i, j])
          }
        })
        expect(planned.garland?.collisions ?? []).toEqual(found)
      }),
      { numRuns: runs(40) },
    )
  })
})
