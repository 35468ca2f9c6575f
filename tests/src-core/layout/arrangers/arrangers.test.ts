import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { align, distribute } from '../../../../src-core/layout/arrangers/align'
import { mirrored, mirroredPair } from '../../../../src-core/layout/arrangers/mirror'
import { lineOfPath, rowAlong } from '../../../../src-core/layout/arrangers/row'
import { cornerSpray } from '../../../../src-core/layout/arrangers/spray'
import { wreath } from '../../../../src-core/layout/arrangers/wreath'
import { placeOutline } from '../../../../src-core/geometry/place'
import { boxOf } from '../../../../src-core/geometry/points'
import { leafOutline } from '../../../../src-core/motif/outlines'

const near = (value: number, wished: number, by = 1e-6) => expect(Math.abs(value - wished)).toBeLessThan(by)
const centre = { x: 200, y: 150 }

describe('wreath', () => {
  it('lies on its circle at equal distances, 2·r·sin(π/n), each item facing outward', () => {
    for (const count of [1, 2, 5, 12]) {
      const items = wreath({ count, centre, radiusX: 90, radiusY: 90 })
      expect(items).toHaveLength(count)
      items.forEach((item, i) => {
        near(Math.hypot(item.x - centre.x, item.y - centre.y), 90)
        near(item.turn, (360 / count) * i)
        const next = items[(i + 1) % count]!
        if (count > 1) near(Math.hypot(item.x - next.x, item.y - next.y), 180 * Math.sin(Math.PI / count))
      })
    }
  })

  it('starts where it is told, and faces inward, along or up', () => {
    const at = (facing: 'inward' | 'along' | 'up') =>
      wreath({ count: 4, centre, radiusX: 50, radiusY: 50, start: 90, facing, turn: 10 })[0]!
    near(at('up').x, 250)
    near(at('up').y, 150)
    expect([at('inward').turn, at('along').turn, at('up').turn]).toEqual([280, 190, 10])
  })

  it('on an ellipse is equal along the line, and mirrored both ways', () => {
    const items = wreath({ count: 8, centre, radiusX: 120, radiusY: 60 })
    for (const { x, y } of items) near(((x - centre.x) / 120) ** 2 + ((y - centre.y) / 60) ** 2, 1)
    // Eight places are symmetrical about both axes.
    near(items[1]!.x - centre.x, centre.x - items[7]!.x, 0.01)
    near(items[1]!.y - centre.y, centre.y - items[3]!.y, 0.01)
    // A quarter of the ellipse, by Ramanujan's second formula for its perimeter (1914).
    const h = ((120 - 60) / (120 + 60)) ** 2
    const quarter = (Math.PI * 180 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)))) / 4
    let walked = 0
    const from = Math.atan2((items[1]!.x - centre.x) / 120, (centre.y - items[1]!.y) / 60)
    for (let i = 0; i < 20_000; i++) {
      const angle = ((i + 0.5) / 20_000) * from
      walked += (Math.hypot(120 * Math.cos(angle), 60 * Math.sin(angle)) * from) / 20_000
    }
    near(walked, quarter / 2, 0.01)
  })

  it('of nothing, of no size and of endless numbers is empty', () => {
    for (const count of [0, -3, NaN, Infinity])
      expect(wreath({ count, centre, radiusX: 9, radiusY: 9 })).toEqual([])
    for (const radius of [0, -1, NaN, Infinity])
      expect(wreath({ count: 3, centre, radiusX: radius, radiusY: 9 })).toEqual([])
  })
})

describe('row along a line', () => {
  it('goes from end to end at equal distances along the line', () => {
    const corner = [
      { x: 0, y: 0 },
      { x: 60, y: 0 },
      { x: 60, y: 40 },
    ]
    const items = rowAlong({ count: 6, points: corner })
    expect(items.map(({ x, y }) => [Math.round(x), Math.round(y)])).toEqual([
      [0, 0],
      [20, 0],
      [40, 0],
      [60, 0],
      [60, 20],
      [60, 40],
    ])
    // Outward of a line drawn to the right is up, of one drawn down is to the right.
    expect(items[1]!.turn).toBe(0)
    expect(items[5]!.turn).toBe(90)
    expect(rowAlong({ count: 1, points: corner })[0]).toMatchObject({ x: 50, y: 0 })
  })

  it('on a closed line keeps the last from the first; on path data follows its curve', () => {
    const line = lineOfPath('M 0 -50 A 50 50 0 0 1 0 50 A 50 50 0 0 1 0 -50 Z')
    if (!('points' in line)) throw new Error('a circle is a line')
    const items = rowAlong({ count: 5, ...line })
    for (const [i, { x, y }] of items.entries()) {
      near(Math.hypot(x, y), 50, 0.06)
      const next = items[(i + 1) % 5]!
      near(Math.hypot(x - next.x, y - next.y), 100 * Math.sin(Math.PI / 5), 0.1)
    }
    expect(lineOfPath('M0 0H9M5 5V9')).toEqual({ pieces: 2 })
    expect(lineOfPath('<path/>')).toMatchObject({ trouble: { kind: 'markup' } })
  })

  it('of one point, of no length and of endless numbers is empty', () => {
    const point = { x: 1, y: 1 }
    for (const points of [[], [point], [point, point], [point, { x: NaN, y: 0 }]])
      expect(rowAlong({ count: 3, points })).toEqual([])
  })
})

describe('mirrored pair', () => {
  const leaf = leafOutline(40, 18).map((p) => ({ x: p.x + (p.y > 0 ? 3 : 0), y: p.y }))
  it.each(['upright', 'level'] as const)(
    'flipped is the image in the looking glass: %s line',
    (direction) => {
      fc.assert(
        fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: -90, max: 300 }), (turn, at) => {
          const [one, other] = mirroredPair({ x: 30, y: 70, turn, flipped: false }, { direction, at }, true)
          const image = placeOutline(leaf, one).map(({ x, y }) =>
            direction === 'upright' ? { x: 2 * at - x, y } : { x, y: 2 * at - y },
          )
          placeOutline(leaf, other).forEach((point, i) => {
            near(point.x, image[i]!.x)
            near(point.y, image[i]!.y)
          })
        }),
      )
    },
  )

  it('twice is the item itself, and flips nothing unless told to', () => {
    const item = { x: 12, y: 34, turn: 56, motif: 'm1' }
    const axis = { direction: 'level', at: 100 } as const
    expect(mirrored(mirrored(item, axis), axis)).toEqual(item)
    expect(mirroredPair(item, axis)[1]).not.toHaveProperty('flipped')
  })
})

describe('corner spray', () => {
  it('has one, two, three items on its arcs, opening evenly about its middle', () => {
    const items = cornerSpray({ count: 6, corner: { x: 0, y: 0 }, toward: 135, first: 40, step: 50 })
    const radii = items.map(({ x, y }) => Math.round(Math.hypot(x, y)))
    expect(radii).toEqual([40, 90, 90, 140, 140, 140])
    expect(items.map(({ turn }) => turn)).toEqual([135, 100, 170, 100, 135, 170])
    for (const { x, y } of items) expect(x > 0 && y > 0).toBe(true)
  })

  it('spreads what is left on the last arc, and is empty where a number is none', () => {
    const options = { corner: { x: 0, y: 0 }, toward: 135, first: 40, step: 50 }
    expect(cornerSpray({ ...options, count: 4 }).at(-1)!.turn).toBe(135)
    for (const step of [0, -5, NaN]) expect(cornerSpray({ ...options, count: 4, step })).toEqual([])
  })
})

describe('align and distribute', () => {
  const box = (left: number, top: number, width: number, height: number) => ({
    left,
    top,
    right: left + width,
    bottom: top + height,
  })
  const boxes = [box(0, 10, 20, 20), box(50, 0, 40, 10), box(30, 60, 10, 30)]
  const moved = (moves: readonly { dx: number; dy: number }[]) =>
    moves.map(({ dx, dy }, i) => {
      const { left, top, right, bottom } = boxes[i]!
      return { left: left + dx, right: right + dx, top: top + dy, bottom: bottom + dy }
    })

  it('aligns to the sides and middles of the box round all', () => {
    for (const side of ['left', 'right', 'top', 'bottom'] as const) {
      const all = boxOf(
        boxes.flatMap((b) => [
          { x: b.left, y: b.top },
          { x: b.right, y: b.bottom },
        ]),
      )
      for (const b of moved(align(boxes, side))) expect(b[side]).toBeCloseTo(all[side], 9)
    }
    for (const b of moved(align(boxes, 'centre'))) expect((b.left + b.right) / 2).toBeCloseTo(45, 9)
    for (const b of moved(align(boxes, 'middle'))) expect((b.top + b.bottom) / 2).toBeCloseTo(45, 9)
  })

  it('distributes with equal gaps, the outermost staying', () => {
    const across = moved(distribute(boxes, 'across')).sort((a, b) => a.left - b.left)
    expect([across[0]!.left, across[2]!.right]).toEqual([0, 90])
    expect(across[1]!.left - across[0]!.right).toBeCloseTo(across[2]!.left - across[1]!.right, 9)
    expect(distribute(boxes.slice(0, 2), 'down')).toEqual([
      { dx: 0, dy: 0 },
      { dx: 0, dy: 0 },
    ])
    expect(align([], 'left')).toEqual([])
  })
})
