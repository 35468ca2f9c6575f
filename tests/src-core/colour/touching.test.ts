/**
 * "No two alike touching" with several motifs: those of a kind are kept apart where the plan joins them, though others
 * stand between. Large flowers of 95 mm and small ones of 50 mm by turns stand 72.5 mm apart, so that the large ones are
 * 72.5 · √2 − 95 = 7.53 mm apart along the diagonals, within the joining distance of 8 % of 95 = 7.6 mm (M30).
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { holdColours, standingColours } from '../../../src-core/colour/hold'
import { lostMade } from '../../../src-core/progress/lost'
import { blanketOf } from '../../../src-core/plans/layouts'
import { planProject } from '../../../src-core/plan'
import { touchingPairs } from '../../../src-core/layout/touching'

interface Given {
  readonly columns: number
  readonly rows: number
  /** Tip to tip and dip to dip of the small ones. */
  readonly small?: readonly [number, number]
  readonly large?: readonly string[]
  readonly most?: Record<string, number>
  readonly seed?: number
}

const bloom = (id: string, overTips: number, overValleys: number) => ({
  ...{ id, kind: 'measured' as const, outline: 'petals' as const, petals: 8, overTips, overValleys },
  ...{ slots: [{ slot: 'all', grams: 1 }], minutes: 5 },
})

function mixed({ columns, rows, small = [50, 36], large = ['a', 'd'], most, seed = 1 }: Given): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    yarns: [{ id: 'y', ballGrams: 50, ballMetres: 150 }],
    motifs: [bloom('m', 95, 68), bloom('s', ...small)],
    colourways: [
      ...large.map((id) => ({ id, motif: 'm', yarns: { all: 'y' } })),
      { id: 'b', motif: 's', yarns: { all: 'y' } },
    ],
    layout: {
      ...{ kind: 'blanket', motif: 'm', columns, rows, alternate: { motifs: ['m', 's'], by: 'cell' } },
      cells: { fill: { pattern: 'no-two-alike', colourways: [...large, 'b'], seed, ...(most && { most }) } },
    },
  }
}

/** From the plan alone: pairs of large ones that are joined, and of these such as have one colourway. */
function joinedLarge(plan: Plan) {
  const at = new Map(plan.motifs.map((motif) => [motif.id, motif]))
  const pairs = plan.joins.flatMap(({ members }) => {
    const own = members.map(({ motif }) => at.get(motif)!).filter(({ motif }) => motif === 'm')
    return own.length === 2 ? [own as [(typeof own)[0], (typeof own)[0]]] : []
  })
  return { pairs, alike: pairs.filter(([one, other]) => one.colourway === other.colourway).length }
}

const neighboursIn = (plan: Plan) =>
  plan.findings.filter(({ code }) => code.startsWith('colours/') && code !== 'colours/same-grey')

describe('motifs of a kind that are joined across others', () => {
  it('are kept apart: 10 × 13, 108 joined pairs, two colourways', () => {
    for (const seed of [1, 2, 7]) {
      const plan = planProject(mixed({ columns: 10, rows: 13, seed }))
      const { pairs, alike } = joinedLarge(plan)
      // One in each square of four places: (10 − 1)(13 − 1).
      expect(pairs).toHaveLength(108)
      expect(alike).toBe(0)
      // Rows of five by turns, seven and six of them: the one chequerboard there is.
      const { a = 0, d = 0 } = plan.counts.byColourway
      expect([a, d].sort()).toEqual([6 * 5, 7 * 5])
      expect(neighboursIn(plan).map(({ code }) => code)).toEqual(['colours/uneven-alone'])
    }
  })

  it('2,500 motifs, in two and in three colourways', () => {
    for (const large of [
      ['a', 'd'],
      ['a', 'c', 'd'],
    ]) {
      const { pairs, alike } = joinedLarge(planProject(mixed({ columns: 50, rows: 50, large })))
      expect(pairs).toHaveLength(49 * 49)
      expect(alike).toBe(0)
    }
  })

  it('are not told as uneven where a limit makes them so, whether it is new or stands', () => {
    const ways = ['a', 'c', 'd']
    const told = (project: Project) => neighboursIn(planProject(project)).map(({ code }) => code)
    expect(told(mixed({ columns: 10, rows: 13, large: ways }))).toEqual([])
    const limited = mixed({ columns: 10, rows: 13, large: ways, most: { a: 10 } })
    const plan = planProject(limited)
    // 65 large ones: 55 are left for two.
    expect(plan.counts.byColourway).toMatchObject({ a: 10, c: 28, d: 27 })
    expect(told(limited)).toEqual([])
    // What stands within its limits is filled without asking them.
    const stands = holdColours(limited, { ...limited, joining: { minGap: 1 } })
    expect(blanketOf(stands)?.cells?.kept?.rows).toHaveLength(13)
    expect(planProject(stands).counts.byColourway).toEqual(plan.counts.byColourway)
    expect(told(stands)).toEqual([])
  })

  it('as few pairs are alike as in any colouring of small maps within the limits', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 4 }),
        fc.integer({ min: 2, max: 3 }),
        fc.nat(6),
        (columns, rows, most) => {
          const plan = planProject(mixed({ columns, rows, most: { a: most } }))
          const { pairs, alike } = joinedLarge(plan)
          const own = plan.motifs.filter(({ motif }) => motif === 'm')
          const place = new Map(own.map(({ id }, i) => [id, i]))
          const among = pairs.map((pair) => pair.map(({ id }) => place.get(id)!) as [number, number])
          // Every way of having two colourways: beyond the limit counts before what touches.
          let best = Infinity
          let apart = Infinity
          for (let ways = 0; ways < 2 ** own.length; ways++) {
            const isA = (i: number) => ((ways >> i) & 1) === 0
            const over = Math.max(0, own.filter((_, i) => isA(i)).length - most)
            const touching = among.filter(([i, j]) => isA(i) === isA(j)).length
            if (touching === 0) apart = Math.min(apart, over)
            best = Math.min(best, touching)
          }
          // A chequerboard is always apart: whatever limits say, nothing alike touches.
          expect(best).toBe(0)
          expect(alike).toBe(0)
          const over = own.filter(({ colourway }) => colourway === 'a').length - most
          expect(Math.max(0, over)).toBe(apart)
          expect(plan.findings.some(({ code }) => code.startsWith('colours/limits'))).toBe(apart > 0)
        },
      ),
      { numRuns: 30 },
    )
  })

  it('are no longer kept apart where they are not joined: 77.5 · √2 − 95 = 14.6 mm', () => {
    const plan = planProject(mixed({ columns: 10, rows: 13, small: [60, 43] }))
    expect(joinedLarge(plan).pairs).toEqual([])
    // With nothing to keep apart, one limit is kept exactly.
    const limited = planProject(mixed({ columns: 10, rows: 13, small: [60, 43], most: { a: 15 } }))
    expect(limited.counts.byColourway).toMatchObject({ a: 15, d: 50 })
    expect(neighboursIn(limited).map(({ code }) => code)).not.toContain('colours/limits-impossible')
  })

  it('stand as the plan has them when an edit asks what stands, and stay through one that changes what is joined', () => {
    const near = mixed({ columns: 8, rows: 8 })
    expect(standingColours(near)!.assignment.colourways).toEqual(
      planProject(near).motifs.map(({ colourway }) => colourway),
    )
    const wide = mixed({ columns: 8, rows: 8, small: [60, 43] })
    const was = planProject(wide).motifs.map(({ colourway }) => colourway)
    const edited = holdColours(wide, { ...wide, motifs: near.motifs! })
    const plan = planProject(edited)
    expect(joinedLarge(plan).alike).toBe(0)
    // Back again: nothing needs to change a second time.
    const back = holdColours(edited, { ...edited, motifs: wide.motifs! })
    const colourways = planProject(back).motifs.map(({ colourway }) => colourway)
    expect(colourways).toEqual(plan.motifs.map(({ colourway }) => colourway))
    expect(was).toHaveLength(64)
  })

  it('are asked about where they are made and a size would recolour them', () => {
    const wide = mixed({ columns: 8, rows: 8, small: [60, 43] })
    const plan = planProject(wide)
    const made = { ...wide, made: Object.fromEntries(plan.motifs.map(({ id }) => [id, ''])) }
    const after = { ...made, motifs: mixed({ columns: 8, rows: 8 }).motifs! }
    const now = new Map(planProject(after).motifs.map(({ id, colourway }) => [id, colourway]))
    const changed = plan.motifs.filter(({ id, colourway }) => now.get(id) !== colourway).length
    expect(changed).toBeGreaterThan(0)
    expect(lostMade(made, after)?.recoloured ?? 0).toBe(changed)
  })
})

describe('what touches', () => {
  const at = (row: number, column: number, kind: number) => ({
    ...{ row, kind, halves: 2 * column, x: 10 * column, y: 10 * row },
  })
  const chess = [at(1, 1, 0), at(1, 2, 1), at(2, 1, 1), at(2, 2, 0)]
  const node = (...motifs: number[]) => ({
    ...{ x: 0, y: 0, spread: 0, members: motifs.map((motif) => ({ motif, anchor: 0 })) },
  })

  it('is nothing but neighbours where there is one motif, or four meet at a corner', () => {
    expect(touchingPairs([at(1, 1, 0), at(2, 2, 0)], [node(0, 1)])).toEqual([])
    expect(touchingPairs(chess, [node(0, 1, 2, 3)])).toEqual([])
  })

  it('are pairs of a kind that are joined, once each', () => {
    expect(touchingPairs(chess, [node(0, 3), node(0, 3), node(0, 1), node(1, 3)])).toEqual([[0, 3]])
    expect(touchingPairs(chess, [node(0, 1), node(1, 3)])).toEqual([])
  })

  it('are the nearest of a kind where nothing is joined', () => {
    expect(touchingPairs(chess, [])).toEqual([
      [0, 3],
      [1, 2],
    ])
    // By rows the next in the row is nearer than the one two rows down.
    const rows = [at(1, 1, 0), at(1, 2, 0), at(2, 1, 1), at(2, 2, 1), at(3, 1, 0), at(3, 2, 0)]
    expect(touchingPairs(rows, [])).toEqual([
      [0, 1],
      [2, 3],
      [4, 5],
    ])
  })

  it('two motifs that lie apart, in a plan: no large one beside its like along the diagonals', () => {
    const project = mixed({ columns: 6, rows: 6 })
    const plan = planProject({ ...project, joining: { rule: 'apart', gap: 5 } })
    expect(plan.joins).toEqual([])
    const large = plan.motifs.filter(({ motif }) => motif === 'm')
    const pairs = large.flatMap((one) =>
      large
        .filter((other) => other.row === one.row + 1 && Math.abs(other.column - one.column) === 1)
        .map((other) => [one, other] as const),
    )
    expect(pairs).toHaveLength(25)
    expect(pairs.filter(([one, other]) => one.colourway === other.colourway)).toEqual([])
  })
})
