import { readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import type { AppliqueLayout, Project } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'
import { FaultFinder } from '../../../src-renderer/drawing/faults'
import { GapFinder } from '../../../src-renderer/drawing/gaps'
import { paintMap } from '../../../src-renderer/drawing/map-painter'
import { measuredOf } from '../../../src-renderer/drawing/measured'
import { faint } from '../../../src-renderer/drawing/palette'
import { differenceOf, PictureMaker } from '../../../src-renderer/drawing/picture'
import type { Picture } from '../../../src-renderer/drawing/picture'
import { circles, FakePath, recorder } from './recorder'
import { palette, picture, project, scene } from './scenes'

beforeAll(() => void vi.stubGlobal('Path2D', FakePath))

const example = (name: string) => JSON.parse(readFileSync(`examples/${name}.petalyard`, 'utf8')) as Project
const garland = example('orchard-gate-garland')
const everything = { left: -1e4, top: -1e4, right: 1e4, bottom: 1e4 }

type Item = NonNullable<AppliqueLayout['items']>[number]

/** A panel of 300 × 200 mm with the flower of the scenes and a leaf. */
function panel(items: Item[], layout: Partial<AppliqueLayout> = {}): Project {
  const own = project()
  return {
    ...own,
    motifs: [
      ...own.motifs!,
      { id: 'l', kind: 'measured', outline: 'leaf', length: 40, width: 18, slots: [{ slot: 'leaf' }] },
    ],
    colourways: [...own.colourways!, { id: 'g', code: 'G', motif: 'l', yarns: { leaf: 'blue' } }],
    layout: {
      kind: 'applique',
      panel: { shape: 'rectangle', width: 300, height: 200, allowance: 10 },
      clearance: 5,
      items,
      ...layout,
    },
  }
}
const flower = (x: number, y: number, more: Partial<Item> = {}): Item => ({
  motif: 'm',
  colourway: 'a',
  x,
  y,
  ...more,
})
const leaf = (x: number, y: number, more: Partial<Item> = {}): Item => ({
  motif: 'l',
  colourway: 'g',
  x,
  y,
  ...more,
})

function draw(own: Picture, scale = 1) {
  const record = recorder()
  paintMap(record.pen, own, { scale, x: 0, y: 0, ratio: 1 }, everything)
  return record
}
/** Where the copies were drawn, each once, in the order of drawing. */
const places = (record: ReturnType<typeof draw>) =>
  record.calls
    .filter(({ name, arguments: given }) => name === 'setTransform' && given[0] !== 1)
    .map(({ arguments: given }) => `${String(given[4])},${String(given[5])}`)
    .filter((place, i, all) => place !== all[i - 1])

describe('a panel as a list of strokes', () => {
  it('draws each item in the outline and colours of its own motif', () => {
    const own = picture(panel([flower(80, 80), leaf(200, 100)]))
    const fills = draw(own).calls.filter(({ name }) => name === 'fill')
    expect(fills.map(({ fill }) => fill)).toEqual([
      faint(palette.hairline, 0.42), // the seam allowance
      '#bb5544',
      '#e2bb5c',
      '#446688',
    ])
    const paths = fills.slice(1).map(({ arguments: given }) => given[0])
    expect(paths[0]).not.toBe(paths[2])
  })

  it('draws them one after the other in the order in which they lie on each other', () => {
    const items = [flower(80, 80, { layer: 2 }), leaf(90, 90), flower(100, 90, { layer: 1 })]
    const own = picture(panel(items, { overlaps: 'allowed' }))
    expect(places(draw(own, 2))).toEqual(['180,180', '200,180', '160,160'])
    expect(own.hit.at({ x: 92, y: 88 })).toBe('1,1')
  })

  it('mirrors what lies wrong side up, before it is turned', () => {
    const turn = 30
    const own = picture(panel([leaf(100, 100, { turn, flipped: true })]))
    const [a, b, c, d] = draw(own).calls.find(
      ({ name, arguments: given }) => name === 'setTransform' && given[4] === 100,
    )!.arguments as number[]
    const [cos, sin] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
    expect([a, b, c, d].map((value) => value!.toFixed(9))).toEqual(
      [-cos, -sin, -sin, cos].map((value) => value.toFixed(9)),
    )
  })

  it('draws the edge in ink, the seam line dashed, and neither for a blanket', () => {
    const { calls } = draw(picture(panel([])))
    expect(calls.some(({ name, stroke }) => name === 'stroke' && stroke === palette.ink)).toBe(true)
    const dashes = calls.filter(({ name }) => name === 'setLineDash').map(({ arguments: given }) => given[0])
    expect(dashes).toEqual([[5, 3.5], []])
    expect(draw(picture(project())).count('setLineDash')).toBe(0)
  })

  it('numbers items where they lie, so that what lies on them covers their numbers', () => {
    const own = picture(panel([flower(80, 80), leaf(200, 100)]), { showLabels: true })
    const { calls } = draw(own, 2)
    const texts = calls.filter(({ name }) => name === 'fillText').map(({ arguments: given }) => given[0])
    expect(texts).toEqual(['1', 'A', '2', 'G'])
    const first = calls.findIndex(({ name }) => name === 'fillText')
    const last = calls.findLastIndex(
      ({ name, arguments: given }) => name === 'fill' && given[0] instanceof FakePath,
    )
    expect(first).toBeLessThan(last)
  })
})

describe('a drag on a panel', () => {
  const items = [flower(80, 80), flower(200, 80), leaf(150, 150)]
  function window() {
    const planner = createPlanner()
    const maker = new PictureMaker()
    return (own: Project) => maker.make(scene(own, {}, planner), palette)
  }

  it('paints anew only where the item lay and where it lies', () => {
    const make = window()
    const own = panel(items)
    const before = make(own)
    const { layout } = own
    if (layout?.kind !== 'applique') throw new Error('the fixture is a panel')
    const moved = [layout.items![0]!, { ...layout.items![1]!, x: 205 }, layout.items![2]!]
    const after = make({ ...own, layout: { ...layout, items: moved } })
    expect(differenceOf(before, after)).toEqual([before.hit.boxOf(1), after.hit.boxOf(1)])
    expect(after.ground).toBe(before.ground)
    expect(after.kinds).toBe(before.kinds)
  })

  it('paints everything anew where the order or the panel changes', () => {
    const make = window()
    const own = panel(items)
    const before = make(own)
    const { layout } = own
    if (layout?.kind !== 'applique') throw new Error('the fixture is a panel')
    const raised = make({
      ...own,
      layout: { ...layout, items: [{ ...layout.items![0]!, layer: 3 }, ...layout.items!.slice(1)] },
    })
    expect(differenceOf(before, raised)).toBe('everything')
    const wider = make({ ...own, layout: { ...layout, panel: { ...layout.panel, width: 310 } } })
    expect(differenceOf(raised, wider)).toBe('everything')
  })

  it('tells the way to the nearest neighbour and to the seam, and what is too short', () => {
    const own = picture(panel([flower(60, 60), flower(142, 60), leaf(250, 150)]))
    const gaps = new GapFinder().find(own, new Set(['1,1']), 5)
    const [neighbour, seam] = gaps
    expect(neighbour).toMatchObject({ what: 'neighbour', isShort: true })
    // 82 mm between centres, 80 mm tip to tip.
    expect(neighbour!.distance).toBeCloseTo(2, 6)
    expect(neighbour!.from.x).toBeCloseTo(100, 6)
    expect(neighbour!.to.x).toBeCloseTo(102, 6)
    // Centre 60 mm from the edges, 40 mm to its tips, 10 mm of allowance.
    expect(seam).toMatchObject({ what: 'seam', isShort: false })
    expect(seam!.distance).toBeCloseTo(10, 6)
    expect(new GapFinder().find(own, new Set(['1,1', '1,2']), 5)[0]!.isShort).toBe(false)
    expect(new GapFinder().find(own, new Set(), 5)).toEqual([])
  })

  it('tells by how much something sticks out over the seam', () => {
    const own = picture(panel([flower(45, 100)]))
    const [seam] = new GapFinder().find(own, new Set(['1,1']), 5)
    expect(seam).toMatchObject({ what: 'seam', isShort: true })
    expect(seam!.distance).toBeCloseTo(-5, 6)
  })
})

describe('faults in place', () => {
  const find = (own: Project) => {
    const { plan } = scene(own)
    return new FaultFinder().find(own, plan)
  }

  it('warns of both items that overlap and shows what they share', () => {
    const faults = find(panel([flower(80, 100), flower(150, 100), leaf(250, 100)]))
    expect([...faults.warned].sort()).toEqual(['1,1', '1,2'])
    expect(faults.parts.length).toBeGreaterThan(0)
    for (const { x } of faults.parts.flat()) expect(x).toBeGreaterThan(109.9)
    for (const { x } of faults.parts.flat()) expect(x).toBeLessThan(120.1)
  })

  it('leaves them where overlaps are allowed', () => {
    const faults = find(panel([flower(80, 100), flower(150, 100)], { overlaps: 'allowed' }))
    expect(faults).toEqual({ warned: new Set(), parts: [] })
  })

  it('shows what lies over the seam line, and warns of what is too close without a part', () => {
    const over = find(panel([flower(45, 100)]))
    expect([...over.warned]).toEqual(['1,1'])
    for (const { x } of over.parts.flat()) expect(x).toBeLessThanOrEqual(10.001)
    const close = find(panel([flower(80, 100), flower(162, 100)]))
    expect([...close.warned].sort()).toEqual(['1,1', '1,2'])
    expect(close.parts).toEqual([])
  })

  it('shows neighbours of a garland that run into each other in the dip', () => {
    const { layout } = garland
    if (layout?.kind !== 'garland') throw new Error('the example is a garland')
    const tight = {
      ...garland,
      layout: {
        ...layout,
        spacing: { between: 'centres' as const, mm: 40 },
        swags: { count: 1, span: 900, drop: 420 },
      },
    }
    const { plan } = scene(tight)
    const faults = new FaultFinder().find(tight, plan)
    expect(plan.garland!.collisions.length).toBeGreaterThan(3)
    expect(faults.warned.size).toBeGreaterThan(3)
    expect(faults.parts.length).toBeGreaterThan(3)
    expect(find(garland).warned.size).toBe(0)
    expect(find(project()).warned.size).toBe(0)
  })

  it('is found once for a plan', () => {
    const own = panel([flower(45, 100)])
    const { plan } = scene(own)
    const finder = new FaultFinder()
    expect(finder.find(own, plan)).toBe(finder.find(own, plan))
  })
})

describe('a garland as a list of strokes', () => {
  it('hangs everything on the cord, in the colours of its own motif, with hooks and fastenings', () => {
    const own = picture(garland, { showJoins: true })
    const record = draw(own)
    expect(own.motifs).toHaveLength(29)
    expect(new Set(places(record)).size).toBe(29)
    const held = own.plan.garland!.items.reduce((sum, item) => sum + item.held.length, 0)
    // Each place that something is fastened by is a dot on its hem.
    expect(circles(record)).toHaveLength(own.plan.garland!.hooks.length + 2 * held)
    const cord = record.calls.filter(({ name, stroke }) => name === 'stroke' && stroke === '#7c8f55')
    expect(cord.length).toBeGreaterThan(0)
  })

  it('holds flowers by two places and leaves by one, on the level at which they hang', () => {
    const { items } = scene(garland).plan.garland!
    for (const item of items) {
      expect(item.held).toHaveLength(item.motif === 'leaf' ? 1 : 2)
      const middle = item.held.reduce((sum, { x }) => sum + x, 0) / item.held.length
      expect(middle).toBeCloseTo(item.x, 6)
      for (const place of item.held) expect(place.y).toBeCloseTo(item.y, 6)
    }
  })

  it('draws beads as circles and counts them in the numbers below', () => {
    const { layout } = garland
    if (layout?.kind !== 'garland') throw new Error('the example is a garland')
    const beaded: Project = {
      ...garland,
      layout: {
        ...layout,
        swags: undefined,
        symmetric: false,
        cord: { ...layout.cord, length: 700 },
        items: [
          { bead: 'wooden bead', size: 20 },
          { motif: 'bloom', colourway: 'a' },
        ],
      },
    }
    const own = picture(beaded, { showJoins: false, showLabels: true })
    const { items } = own.plan.garland!
    const record = draw(own, 2)
    const beads = items.filter(({ bead }) => bead !== '').length
    expect(beads).toBeGreaterThan(2)
    const round = circles(record).filter((radius) => Math.abs(radius - 20) < 1e-6)
    expect(round).toHaveLength(beads)
    // The cord runs through them: they lie over what hangs beside them.
    const motif = record.calls.findLastIndex(({ arguments: given }) => given[0] instanceof FakePath)
    expect(circles({ calls: record.calls.slice(motif) })).toHaveLength(beads)
    const texts = record.calls
      .filter(({ name }) => name === 'fillText')
      .map(({ arguments: given }) => String(given[0]))
    expect(texts.filter((text) => text !== 'A')).toEqual(items.map((_, i) => String(i + 1)))
    expect(own.motifs[0]!.label).toBe('2')
  })

  it('is measured from hook to hook and down to the lowest of the cord', () => {
    const { plan } = scene(garland)
    const { across, down, withHandles } = measuredOf(plan)
    expect(across[1] - across[0]).toBeCloseTo(2100, 6)
    expect(down[1] - down[0]).toBeCloseTo(110, 6)
    expect(withHandles).toBe(false)
  })
})
