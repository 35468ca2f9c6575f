/** M26: squares begin in straight rows, side on side; of what comes as near, what is joined most goes first. */
import { describe, expect, it } from 'vitest'
import type { FitArrangement } from '../../../shared-types/plan'
import type { JoinRule, Project } from '../../../shared-types/project'
import { fitFromHave, fitProject, proposeProject } from '../../../src-core/plan'

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

/** What closes comes first where it is near, each by how near it comes; then all the rest likewise. */
function expectByNearness(
  fits: readonly FitArrangement[],
  wish: { width: number; height: number },
  across: number,
): void {
  const isFirst = ({ leaves, wide, error }: FitArrangement) =>
    leaves === undefined && !wide && Math.max(Math.abs(error.width), Math.abs(error.height)) <= across / 2
  const firsts = fits.filter(isFirst)
  expect(fits.slice(0, firsts.length)).toEqual(firsts)
  for (const part of [firsts, fits.slice(firsts.length)]) {
    const miss = missesOf(part, wish)
    expect(miss).toEqual([...miss].sort((a, b) => a - b))
  }
}

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
    // All others stand by how near they come: those that close, within half a motif; then the rest.
    expectByNearness(others, wish, 100 * Math.SQRT2)
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

  it('hexagons close half a place aside, and begin so; open lace comes behind and says how wide it is open', () => {
    for (const rule of ['edges', 'tips', 'seam'] as const)
      for (const { wish } of cases) {
        const { arrangements } = fitProject(blanket('hexagon', rule), wish)
        expect(arrangements[0]).toMatchObject({ arrangement: 'offset-rows', turn: 0, alternateTurn: 0 })
        expectByNearness(arrangements, wish, (2 * 100) / Math.sqrt(3))
        const straight = arrangements.filter((fit) => fit.arrangement === 'straight-rows')
        // Between hexagons in straight rows lie rhombuses of their sides, 100 / √3, at 60°: as wide as sin 60° of these.
        expect(straight.length).toBeGreaterThan(0)
        for (const { leaves } of straight)
          expect(leaves).toBeCloseTo((100 / Math.sqrt(3)) * Math.sin(Math.PI / 3), 1)
        for (const fit of arrangements)
          if (fit.arrangement !== 'straight-rows' && fit.turn === 0 && fit.alternateTurn === 0)
            expect(fit.leaves).toBeUndefined()
      }
  })

  it('squares corner to corner in straight rows leave squares as large as themselves, octagons those of their sides', () => {
    const wish = { width: 1040, height: 1260 }
    const corner = fitProject(blanket('square', 'edges'), wish).arrangements.filter(
      (fit) => fit.arrangement === 'straight-rows' && fit.turn === 45,
    )
    expect(corner.length).toBeGreaterThan(0)
    for (const { leaves } of corner) expect(leaves).toBeCloseTo(100, 1)
    const [octagons] = fitProject(blanket('octagon', 'edges'), wish).arrangements
    expect(octagons!.leaves).toBeCloseTo(100 / (1 + Math.SQRT2), 1)
  })

  it('what there is is laid closed first, too: so many motifs, or what is made', () => {
    for (const have of [{ count: 100 }, { motifs: 100 }]) {
      const { arrangements } = fitFromHave(blanket('hexagon', 'edges'), {
        ...have,
        like: { width: 9, height: 12 },
      })
      expect(arrangements[0]!.leaves).toBeUndefined()
      expect(arrangements.some(({ leaves = 0 }) => leaves > 20)).toBe(true)
    }
  })

  it('is not told of flowers, which leave openings in any rows, nor where fillers stand in them', () => {
    const wish = { width: 1040, height: 1260 }
    const flower = { ...blanket('square', 'tips') }
    const petals = { id: 'm', kind: 'measured', outline: 'petals', petals: 6, overTips: 100, overValleys: 80 }
    const flowers = { ...flower, motifs: [petals] } as unknown as Project
    expect(fitProject(flowers, wish).arrangements.length).toBeGreaterThan(0)
    const small = { id: 's', kind: 'measured', outline: 'square', sideToSide: 41 }
    const panes = blanket('octagon', 'edges', { fillers: { motif: 's' } })
    const filled = { ...panes, motifs: [...panes.motifs!, small] } as unknown as Project
    for (const fit of [...fitProject(flowers, wish).arrangements, ...fitProject(filled, wish).arrangements])
      expect(fit.leaves).toBeUndefined()
  })

  it('of two of one size, the one that is joined more for each motif', () => {
    // Both are 100 × 130 cm: 130 squares side on side, or 124 half a place aside.
    const { arrangements } = fitProject(blanket('square', 'seam'), { width: 1000, height: 1300 })
    const [straight, offset] = arrangements
    expect([straight?.motifs, offset?.motifs]).toEqual([130, 124])
    expect(straight!.joins! / 130).toBeGreaterThan(offset!.joins! / 124)
  })
})
