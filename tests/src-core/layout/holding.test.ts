/** M24, M26, M32: what holds comes first, checked by a count of its own. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, MeasuredMotif, Project } from '../../../shared-types/project'
import { OUTLINE_KINDS } from '../../../shared-types/project'
import { createPlanner, fitProject, planProject, proposeProject } from '../../../src-core/plan'
import { holdingOf } from '../../../src-core/joins/holding'
import { remedyOf, withFix } from '../../../src-core/layout/remedy'
import { countTogether } from '../joins/together'

type Measures = Pick<
  MeasuredMotif,
  'outline' | 'petals' | 'overTips' | 'overValleys' | 'across' | 'sideToSide' | 'length' | 'width'
>

const project = (
  motif: Measures,
  layout: Partial<BlanketLayout> = {},
  more: Partial<Project> = {},
): Project => ({
  format: 'petalyard-project',
  version: 1,
  motifs: [{ id: 'm', kind: 'measured', ...motif }],
  layout: { kind: 'blanket', motif: 'm', ...layout },
  ...more,
})

const petals = (count: number): Measures => ({
  outline: 'petals',
  petals: count,
  overTips: 82,
  overValleys: 60,
})
const THROW = { width: 1300, height: 1600 }
const SEVEN = project(petals(7), { arrangement: 'offset-rows', columns: 16, rows: 24 })

describe('holdingOf', () => {
  const point = (...motifs: number[]) => ({ members: motifs.map((motif) => ({ motif })) })

  it('counts pieces and motifs on one join point, over joints of every kind', () => {
    expect(holdingOf(0)).toEqual({ pieces: 0, single: [] })
    expect(holdingOf(1)).toEqual({ pieces: 1, single: [] })
    expect(holdingOf(3, [point(0, 1)])).toEqual({ pieces: 2, single: [0, 1] })
    expect(holdingOf(3, [point(0, 1, 2), point(1, 2)])).toEqual({ pieces: 1, single: [0] })
    expect(holdingOf(4, [point(0, 1), point(2, 3)], [point(0, 1, 2, 3)])).toEqual({ pieces: 1, single: [] })
  })
})

describe('M32 the plan says how it holds', () => {
  it('seven petals of 82/60 mm fall apart at rotation 0', () => {
    const plan = planProject(SEVEN)
    expect(plan).toMatchObject({ pieces: 24, single: 48 })
    expect(plan).toMatchObject(countTogether(plan))
    expect(plan.joins).toHaveLength(360)
    expect(plan.findings.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['joins/pieces', 'joins/one-node']),
    )
  })

  it('fillers hold what joins alone do not', () => {
    const round = { outline: 'round', across: 60 } as const
    const given = project(round, {
      arrangement: 'straight-rows',
      columns: 4,
      rows: 3,
      fillers: { motif: 'f' },
    })
    const apart = { ...given, joining: { rule: 'tips', reach: 0 } } as const
    const filled: Project = {
      ...apart,
      motifs: [...given.motifs!, { id: 'f', kind: 'measured', outline: 'round', across: 24 }],
    }
    const plan = planProject(filled)
    expect(plan.fillers.length).toBeGreaterThan(0)
    expect(plan.pieces).toBe(1)
  })
})

describe('M24 the best rotation', () => {
  it('mends seven petals: 909 join points instead of 360, in one piece', () => {
    const { now, best } = createPlanner().rotation(SEVEN)!
    expect(now).toMatchObject({ pieces: 24, single: 48, points: 360 })
    expect(best).toMatchObject({ pieces: 1, single: 0, points: 909 })
  })

  it.each([4, 5, 7, 8, 10])('%i petals that fall apart at rotation 0 are mended by one change', (count) => {
    const given = project(petals(count), { arrangement: 'offset-rows', columns: 9, rows: 10, turn: 0 })
    const { pieces, single, joins } = planProject(given)
    expect(pieces + single).toBeGreaterThan(1)
    const remedy = remedyOf(given, createPlanner())!
    const mended = planProject(withFix(given, remedy.fix!))
    expect(countTogether(mended)).toEqual({ pieces: 1, single: 0 })
    expect(remedy.fix!.then.points).toBe(mended.joins.length)
    expect(remedy.now.points).toBe(joins.length)
  })

  it('where no arrangement holds by its tips, another way of joining is the remedy', () => {
    const given = project(
      { outline: 'petals', petals: 3, overTips: 82, overValleys: 60 },
      { arrangement: 'offset-rows', columns: 8, rows: 8 },
    )
    const { fix } = remedyOf(given, createPlanner())!
    expect(fix).toMatchObject({ by: 'joining', joining: { rule: 'edges' } })
    expect(countTogether(planProject(withFix(given, fix!)))).toEqual({ pieces: 1, single: 0 })
  })

  it('says so where nothing helps, and keeps out of what is to lie apart', () => {
    const given = project(petals(7), { arrangement: 'straight-rows', columns: 4, rows: 4 })
    expect(remedyOf({ ...given, joining: { rule: 'apart', gap: 5 } }, createPlanner())).toBeNull()
    // One motif in a row can only hang on its neighbours.
    const row = project(
      { outline: 'round', across: 60 },
      { arrangement: 'straight-rows', columns: 2, rows: 1 },
    )
    expect(remedyOf(row, createPlanner())).toMatchObject({ now: { pieces: 1, single: 2 }, fix: null })
  })
})

describe('M26 fits', () => {
  it.each([4, 5, 7, 8, 10])('of %i petals: those that hold first, then by size', (count) => {
    const { arrangements } = fitProject(project(petals(count)), THROW)
    const rank = arrangements.map(({ pieces, single, error }) => ({
      held: pieces === 1 && single === 0,
      miss: Math.abs(error.width) / THROW.width + Math.abs(error.height) / THROW.height,
    }))
    expect(rank[0]?.held).toBe(true)
    expect(rank).toEqual([...rank].sort((a, b) => Number(b.held) - Number(a.held) || a.miss - b.miss))
    for (const {
      arrangement,
      columns,
      rows,
      rings,
      alternateRows,
      turn,
      alternateTurn,
      ...fit
    } of arrangements) {
      const layout = { arrangement, columns, rows, rings, alternateRows, turn, alternateTurn }
      expect({ pieces: fit.pieces, single: fit.single }).toEqual(
        countTogether(planProject(project(petals(count), layout))),
      )
    }
  })
})

describe('proposals', () => {
  const motifs: Measures[] = OUTLINE_KINDS.flatMap((outline): Measures[] => {
    switch (outline) {
      case 'petals':
        return [3, 4, 5, 6, 7, 8, 10, 13, 16].map(petals)
      case 'round':
        return [{ outline, across: 70 }]
      case 'leaf':
        return [{ outline, length: 90, width: 45 }]
      default:
        return [{ outline, sideToSide: 80 }]
    }
  })

  it.each(motifs.map((motif) => [`${motif.outline} ${motif.petals ?? ''}`, motif] as const))(
    '%s: all hold, look different and come near the size',
    (_, motif) => {
      const { proposals } = proposeProject(project(motif), { width: 700, height: 900 })
      expect(proposals.length).toBeGreaterThan(0)
      for (const { plan, fit, points } of proposals) {
        expect(countTogether(plan)).toEqual({ pieces: 1, single: 0 })
        expect(fit).toMatchObject({ pieces: 1, single: 0, motifs: plan.motifs.length })
        expect(points).toBe(plan.joins.length)
      }
      const [first] = proposals
      expect(Math.abs(first!.fit.error.width)).toBeLessThan(80)
      expect(Math.abs(first!.fit.error.height)).toBeLessThan(80)
      const looks = proposals.map(({ fit, rule }) =>
        [fit.arrangement, rule, fit.turn, fit.alternateTurn].join(' '),
      )
      expect(new Set(looks).size).toBe(looks.length)
    },
  )

  it('lay squares in straight rows and join them all along', () => {
    const [first] = proposeProject(project({ outline: 'square', sideToSide: 60 }), THROW).proposals
    expect(first).toMatchObject({
      rule: 'edges',
      fit: { arrangement: 'straight-rows', turn: 0, alternateTurn: 0 },
    })
  })

  it('say that tips alone hold nothing of three petals', () => {
    expect(proposeProject(project(petals(3)), THROW).failed).toEqual(['tips'])
    expect(proposeProject(project(petals(3)), THROW, ['tips'])).toMatchObject({
      failed: ['tips'],
      proposals: [{ rule: 'tips' }],
    })
  })
})
