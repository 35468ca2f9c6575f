/** M30: two motifs by themselves joined in another way. Every number is made up. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Joining, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { holdWork } from '../../../src-core/progress/hold'
import { cellsProject } from '../cells/projects'

/** 4 × 3 flowers of eight petals, straight: 2mn − m − n = 17 join points of two (M31). */
const grid = (
  single?: Joining['single'],
  joining: Joining = {},
  layout: Partial<BlanketLayout> = {},
): Project =>
  cellsProject(
    ['flower'],
    { arrangement: 'straight-rows', columns: 4, rows: 3, ...layout },
    {
      gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
      joining: { rule: 'tips', ...joining, ...(single && { single }) },
    },
  )
const between = (of: Project, one: string, other: string) =>
  planProject(of).joins.filter(({ members }) => {
    const ids = members.map(({ motif }) => motif)
    return ids.includes(one) && ids.includes(other)
  })
const codes = (of: Project) =>
  planProject(of)
    .findings.map(({ code }) => code)
    .filter((code) => code.startsWith('joins/single'))

describe('M30 a pair with a joining rule of its own', () => {
  it('that is not joined has its join point no more, and all others stay', () => {
    expect(planProject(grid()).joins).toHaveLength(17)
    const apart = grid([{ places: ['2,2', '2,3'], rule: 'apart' }])
    const plan = planProject(apart)
    expect(plan.joins).toHaveLength(16)
    expect(between(apart, '2,2', '2,3')).toEqual([])
    expect(plan.size).toEqual(planProject(grid()).size)
    expect(codes(apart)).toEqual([])
    // The one worked later has one petal more to work without joining.
    const words = (of: Project, id: string) => planProject(of).order.find(({ motif }) => motif === id)!
    const later = ['2,2', '2,3'].find((id) => words(apart, id).joins.length < words(grid(), id).joins.length)!
    expect(words(apart, later).joins.length).toBe(words(grid(), later).joins.length - 1)
  })

  it('that is kept apart and would not meet says that its rule changes nothing, also round a round', () => {
    const apart = (one: string, other: string, layout: Partial<BlanketLayout> = {}) =>
      codes(grid([{ places: [one, other], rule: 'apart' }], {}, layout))
    expect(apart('1,1', '3,4')).toEqual(['joins/single-apart'])
    expect(apart('1,1', '1,3')).toEqual(['joins/single-apart'])
    expect(apart('1,1', '2,1')).toEqual([])
    const round = { inTheRound: true, columns: 8 }
    expect(apart('1,1', '1,8', round)).toEqual([])
    expect(apart('1,1', '1,5', round)).toEqual(['joins/single-apart'])
  })

  it('at tips and shoulders has more join points than its neighbours, whose tips alone are joined', () => {
    const own = grid([{ places: ['1,1', ' 1, 2 '], rule: 'edges' }], { reach: 20 })
    const usual = grid(undefined, { reach: 20 })
    expect(between(own, '1,1', '1,2').length).toBeGreaterThan(between(usual, '1,1', '1,2').length)
    expect(planProject(own).joins.length - between(own, '1,1', '1,2').length).toBe(
      planProject(usual).joins.length - between(usual, '1,1', '1,2').length,
    )
  })

  it('with joining chains says so in its step, and takes yarn for them', () => {
    const own = grid([{ places: ['1,1', '1,2'], rule: 'bridge', bridgeChains: 5 }])
    const plan = planProject(own)
    const joins = plan.order.flatMap(({ joins }) => joins).filter(({ chains }) => chains)
    expect(joins).toHaveLength(between(own, '1,1', '1,2').length)
    expect(joins[0]!.chains).toBe(5)
    expect(joins[0]!.words).toMatch(/ across 5 chains$/)
    const grams = (of: Project) => planProject(of).yarns.reduce((sum, { parts }) => sum + parts.joins, 0)
    expect(grams(own)).toBeGreaterThan(grams(grid()))
  })

  it('names what it cannot join', () => {
    expect(codes(grid([{ places: ['1,1'] }]))).toEqual(['joins/single-count'])
    expect(codes(grid([{ places: ['1,1', '1,1'] }]))).toEqual(['joins/single-count'])
    expect(codes(grid([{ places: ['1,1', '9,9'] }]))).toEqual(['joins/single-place'])
    expect(codes(grid([{ places: ['1,1', '3,4'], rule: 'tips' }]))).toEqual(['joins/single-far'])
    expect(codes(grid([{ places: ['1,1', '3,4'], rule: 'apart' }]))).toEqual(['joins/single-apart'])
    expect(planProject(grid([{ places: ['1,1', '9,9'] }])).joins).toHaveLength(17)
  })

  it('goes with its motifs where a ring moves their addresses', () => {
    const rings = grid([{ places: ['2,2', '2,3'], rule: 'apart' }], {}, { arrangement: 'rings', rings: 1 })
    const layout = rings.layout as BlanketLayout
    const more = holdWork(rings, { ...rings, layout: { ...layout, rings: 2 } })
    expect(more.joining!.single).toEqual([{ places: ['3,3', '3,4'], rule: 'apart' }])
  })
})
