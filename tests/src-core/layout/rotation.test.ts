import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { createPlanner } from '../../../src-core/plan'

function project(motif: object, layout: object): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    motifs: [{ id: 'm', kind: 'measured', ...motif } as never],
    layout: { kind: 'blanket', motif: 'm', columns: 4, rows: 4, ...layout } as never,
  }
}

describe('M24 best rotation', () => {
  it('turns eight petals by 22.5° in a grid: two points to each side instead of one', () => {
    const given = project(
      { outline: 'petals', petals: 8, overTips: 95, overValleys: 70 },
      { arrangement: 'straight-rows' },
    )
    const { now, best } = createPlanner().rotation(given)!
    expect(best.turn).toBeCloseTo(22.5, 9)
    expect(best.alternateTurn).toBe(0)
    expect(best.meetings).toBe(2 * now.meetings)
  })

  it('faces valleys in a honeycomb of six petals', () => {
    const given = project(
      { outline: 'petals', petals: 6, overTips: 78, overValleys: 52 },
      { arrangement: 'offset-rows', turn: 30 },
    )
    const { now, best } = createPlanner().rotation(given)!
    expect(best.turn % 60).toBeCloseTo(0, 9)
    expect(best.meetings).toBeGreaterThan(now.meetings)
  })

  it('rotates every other row where five petals need it', () => {
    const given = project(
      { outline: 'petals', petals: 5, overTips: 70, overValleys: 44 },
      { arrangement: 'straight-rows' },
    )
    const { now, best } = createPlanner().rotation(given)!
    expect(best.alternateTurn).not.toBe(0)
    expect(best.meetings).toBeGreaterThan(now.meetings)
  })

  it('leaves circles and motifs that stand apart as they are', () => {
    const round = project({ outline: 'round', across: 50 }, { arrangement: 'straight-rows', turn: 10 })
    const { now, best } = createPlanner().rotation(round)!
    expect(best).toEqual(now)
  })
})
