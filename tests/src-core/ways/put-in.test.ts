/** M29 where motifs are put in or left out by hand: sizes are tried with them, so that exact ways are found. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { blockingWay } from '../../../src-core/ways/words'
import { expectKept, offOf } from './expect-kept'

const square = (id: string, sideToSide: number) => ({
  ...({ id, kind: 'measured', outline: 'square', sideToSide } as const),
  slots: [{ slot: 'all', grams: sideToSide / 12 }],
})

/** Squares of 100 mm, 11 each way, and one of 306 mm in the place of 3 × 3. */
const medallion = (
  cells: NonNullable<Extract<Project['layout'], { kind: 'blanket' }>['cells']>,
): Project => ({
  ...{ format: 'petalyard-project', version: 1, motifs: [square('m', 100), square('large', 306)] },
  yarns: [{ id: 'y', ballGrams: 50, ballMetres: 120 }],
  colourways: [{ id: 'a', yarns: { all: 'y' } }],
  joining: { rule: 'edges' },
  layout: {
    ...({ kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns: 11, rows: 11 } as const),
    cells,
  },
})
const MIDDLE = { motifs: { '6,6': 'large' }, large: { '6,6': 3 } }

describe('M29 ways to a size with a large motif put in by hand', () => {
  it('come to the millimetre: 11 rows of 100 mm and the 6 mm that it is higher than three of them', () => {
    const project = medallion(MIDDLE)
    expect(planProject(project).size.height).toBeCloseTo(1106, 6)
    const ways = expectKept(project, { height: 1140 })
    // 1140 / 1106 = 1.0307.
    expect(ways.filter((way) => offOf(way) === 0).map(({ change }) => change)).toEqual(
      expect.arrayContaining(['Block 3.1 % longer', 'Gauge 3.1 % looser, motifs of 103.1 mm']),
    )
  })

  it('keep what they promise with more and fewer motifs, and where one has its place beyond fewer rows', () => {
    for (const wish of [{ width: 1200 }, { width: 1010, height: 1000 }, { width: 1240, height: 1500 }]) {
      expectKept(medallion(MIDDLE), wish)
      expectKept(medallion({ motifs: { '10,10': 'large' }, large: { '10,10': 3 } }), wish)
      expectKept(medallion({ motifs: { '6,6': null, '6,7': null } }), wish)
    }
  })

  it('say nothing of stretching that vanishes where it is told', () => {
    expect(blockingWay(1.0003, 1.016)).toBe('block 1.6 % longer')
    expect(blockingWay(1.02, 1.0004)).toBe('block 2 % wider')
  })
})
