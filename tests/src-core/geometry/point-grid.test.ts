import { describe, expect, it } from 'vitest'
import { PointGrid } from '../../../src-core/geometry/point-grid'
import { seededRandom } from '../../../src-core/units/random'

describe('points by squares', () => {
  const { next: random } = seededRandom(7)
  /** Points, and how far is looked at most; some lie so far apart that squares have to grow. */
  const fields = Array.from({ length: 200 }, (_, field) => {
    const count = 1 + Math.floor(random() * 80)
    const [width, height] = [
      [300, 200],
      [1e7, 1],
      [0, 500],
      [0, 0],
    ][field % 4]!
    return {
      x: Float64Array.from({ length: count }, () => Math.round(random() * width!) - width! / 2),
      y: Float64Array.from({ length: count }, () => Math.round(random() * height!)),
      range: [0, 1, 40, 900][Math.floor(random() * 4)]!,
    }
  })

  it('are found as by looking at each of them', () => {
    let found = 0
    for (const { x, y, range } of fields) {
      const grid = new PointGrid(x, y, range)
      for (let i = 0; i < x.length; i++) {
        const near = [...x.keys()].filter((j) => j > i && Math.hypot(x[j]! - x[i]!, y[j]! - y[i]!) <= range)
        const count = grid.look(x[i]!, y[i]!, range, i)
        expect([...grid.found.subarray(0, count)]).toEqual(near)
        found += near.length
      }
    }
    expect(found).toBeGreaterThan(10_000)
  })
})
