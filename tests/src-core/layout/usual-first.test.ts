/** M26: squares begin in straight rows, side on side; of what comes as near, what is joined most goes first. */
import { describe, expect, it } from 'vitest'
import type { FitArrangement } from '../../../shared-types/plan'
import type { JoinRule, Project } from '../../../shared-types/project'
import { fitProject, proposeProject } from '../../../src-core/plan'

const blanket = (outline: string, rule: JoinRule, more: object = {}): Project =>
  ({
    ...{ format: 'petalyard-project', version: 1 },
    motifs: [{ id: 'm', kind: 'measured', outline, sideToSide: 100 }],
    layout: { kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns: 8, rows: 8, ...more },
    joining: { rule },
  }) as unknown as Project

/** Sizes that squares of 100 mm do not come to, and what they come nearest to in straight rows. */
const SIZES = [
  [{ width: 1040, height: 1260 }, 10, 13],
  [{ width: 950, height: 1240 }, 9, 12],
  [{ width: 1060, height: 1270 }, 11, 13],
  [{ width: 1000, height: 1300 }, 10, 13],
] as const

/** To a billionth, within which they are the same. */
const missesOf = (fits: readonly FitArrangement[], wish: { width: number; height: number }) =>
  fits.map(({ error: { width, height } }) =>
    Number((Math.abs(width) / wish.width + Math.abs(height) / wish.height).toFixed(9)),
  )

describe('M26 what fits best of squares', () => {
  const cases = SIZES.flatMap(([wish, columns, rows]) =>
    (['edges', 'tips', 'seam'] as const).map((rule) => ({ wish, columns, rows, rule })),
  )
  it.each(cases)('$rule, $wish.width × $wish.height: $columns × $rows in straight rows', (asked) => {
    const { wish, columns, rows, rule } = asked
    const [first, ...others] = fitProject(blanket('square', rule), wish).arrangements
    expect(first).toMatchObject({ arrangement: 'straight-rows', turn: 0, alternateTurn: 0 })
    // At 950 either count is as near.
    expect(Math.abs(first!.columns - columns)).toBeLessThanOrEqual(wish.width === 950 ? 1 : 0)
    expect(first!.rows).toBe(rows)
    // All others stand by how near they come.
    const miss = missesOf(others, wish)
    expect(miss).toEqual([...miss].sort((a, b) => a - b))
    expect(proposeProject(blanket('square', rule), wish).proposals[0]!.fit.arrangement).toBe('straight-rows')
  })

  it('the same whichever rows it is in now, and of octagons', () => {
    for (const arrangement of ['offset-rows', 'straight-rows']) {
      const now = blanket('square', 'edges', { arrangement, turn: 45 })
      const [first] = fitProject(now, { width: 1040, height: 1260 }).arrangements
      expect(first).toMatchObject({ arrangement: 'straight-rows', columns: 10, rows: 13, turn: 0 })
    }
    const [first] = fitProject(blanket('octagon', 'edges'), { width: 1040, height: 1260 }).arrangements
    expect(first).toMatchObject({ arrangement: 'straight-rows', columns: 10, rows: 13 })
  })

  it('hexagons and flowers are in no such order: what comes nearest goes first', () => {
    const wish = { width: 1040, height: 1260 }
    const { arrangements } = fitProject(blanket('hexagon', 'edges'), wish)
    const miss = missesOf(arrangements, wish)
    expect(miss).toEqual([...miss].sort((a, b) => a - b))
  })

  it('of two of one size, the one that is joined more for each motif', () => {
    // Both are 100 × 130 cm: 130 squares side on side, or 124 half a place aside.
    const { arrangements } = fitProject(blanket('square', 'seam'), { width: 1000, height: 1300 })
    const [straight, offset] = arrangements
    expect([straight?.motifs, offset?.motifs]).toEqual([130, 124])
    expect(straight!.joins! / 130).toBeGreaterThan(offset!.joins! / 124)
  })
})
