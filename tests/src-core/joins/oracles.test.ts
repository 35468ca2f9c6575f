/**
 * M31. Lattice oracles: joins and gaps of grids, offset rows and hexagonal patches by Euler's formula (§lattice-geometry)
 * (V − E + F = 1); 3n(n+1)+1 motifs in n rings are the centred hexagonal numbers, §oeis.
 */
import { describe, expect, it } from 'vitest'
import type { Anchor } from '../../../shared-types/plan'
import { petalAnchors } from '../../../src-core/motif/anchors'
import { petalOutline } from '../../../src-core/motif/outlines'
import { polar } from '../../../src-core/geometry/points'
import type { Outline } from '../../../src-core/geometry/points'
import { bySize, lay, nodesOf } from './blanket'

/** Other smooth profiles than the program's own: the oracles hold whatever profile is taken. */
const PROFILES: Record<string, (petals: number, tip: number, valley: number) => Outline> = {
  own: petalOutline,
  'plain cosine': (petals, tip, valley) =>
    lobes(petals, (t) => valley + (tip - valley) * Math.abs(Math.cos(Math.PI * t))),
  'pointed wave': (petals, tip, valley) =>
    lobes(petals, (t) => valley + (tip - valley) * Math.cos(Math.PI * t) ** 2),
}

function lobes(petals: number, radius: (t: number) => number): Outline {
  const each = 24
  return Array.from({ length: petals * each }, (_, i) =>
    polar(radius((i % each) / each), (2 * Math.PI * i) / (petals * each)),
  )
}

const tips = (petals: number, tip: number, valley: number): Anchor[] =>
  petalAnchors(petals, tip, valley, (tip + valley) / 2, 'right').filter((anchor) => anchor.kind === 'tip')

const SIZES = [30, 61.3, 95, 150]
const RATIOS = [0.5, 0.58, 0.66, 0.73, 0.8]

describe.each(Object.entries(PROFILES))('M31 oracles, %s', (_, profile) => {
  const each = (
    check: (outline: (n: number) => Outline, anchors: (n: number) => Anchor[], size: number) => void,
  ) => {
    for (const size of SIZES)
      for (const ratio of RATIOS)
        check(
          (n) => profile(n, size / 2, (size * ratio) / 2),
          (n) => tips(n, size / 2, (size * ratio) / 2),
          size,
        )
  }

  it('straight m × n grid, eight petals, tips to neighbours: 2mn − m − n nodes of two', () => {
    each((outline, anchors, size) => {
      for (const [m, n] of [
        [1, 1],
        [2, 2],
        [5, 3],
        [4, 9],
      ] as const) {
        const laid = lay(outline(8), { columns: m, rows: n })
        expect(laid.lattice.column).toBeCloseTo(size, 9)
        const nodes = 2 * m * n - m - n
        expect(bySize(nodesOf(laid, anchors(8), size))).toEqual(nodes ? { 2: nodes } : {})
      }
    })
  })

  it('n rings, six petals, tips to neighbours: 9n² + 3n nodes of two', () => {
    each((outline, anchors, size) => {
      for (const n of [1, 2, 4]) {
        const laid = lay(outline(6), { arrangement: 'rings', rings: n, turn: 30 })
        expect(laid.placements).toHaveLength(3 * n * (n + 1) + 1)
        expect(bySize(nodesOf(laid, anchors(6), size))).toEqual({ 2: 9 * n * n + 3 * n })
      }
    })
  })

  it('n rings, six petals, valleys to neighbours: 6n² nodes of three and 6n of two', () => {
    each((outline, anchors, size) => {
      for (const n of [1, 2, 4]) {
        const laid = lay(outline(6), { arrangement: 'rings', rings: n })
        expect(bySize(nodesOf(laid, anchors(6), size))).toEqual({ 2: 6 * n, 3: 6 * n * n })
      }
    })
  })

  it('offset rows C × R, six petals, valleys facing: (R−1)(2C−2) nodes of three, 2(R+C−2) of two', () => {
    each((outline, anchors, size) => {
      for (const [columns, rows] of [
        [2, 2],
        [5, 4],
        [7, 9],
      ] as const) {
        const laid = lay(outline(6), { arrangement: 'offset-rows', columns, rows })
        expect(bySize(nodesOf(laid, anchors(6), size))).toEqual({
          2: 2 * (rows + columns - 2),
          3: (rows - 1) * (2 * columns - 2),
        })
      }
    })
  })
})
