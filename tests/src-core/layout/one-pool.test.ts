/** M26: the start and "What fits best" choose from the same arrangements. Sizes are those of a maker's trial. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, MeasuredMotif, Project } from '../../../shared-types/project'
import { holds } from '../../../src-core/joins/holding'
import { gapesMostly } from '../../../src-core/joins/checks'
import { missOf } from '../../../src-core/layout/candidates'
import { closedFirst, isSameBlanket } from '../../../src-core/layout/nearness'
import { isLaidAs, layoutOfFit } from '../../../src-core/layout/taken'
import { fitProject, planProject, proposeProject } from '../../../src-core/plan'
import type { FitArrangement } from '../../../shared-types/plan'

const SHAWL = { width: 1600, height: 800 }
const THROW = { width: 760, height: 950 }

function start(
  motif: Partial<MeasuredMotif>,
  wish: typeof SHAWL,
  layout: Partial<BlanketLayout> = {},
): Project {
  return {
    ...{ format: 'petalyard-project', version: 1 },
    motifs: [{ id: 'm', kind: 'measured', ...motif } as MeasuredMotif],
    layout: {
      ...{ kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns: 8, rows: 8, target: wish },
      ...layout,
    } as BlanketLayout,
  }
}
const triangle = {
  outlineShape: { kind: 'triangle', size: SHAWL.width, height: SHAWL.height, points: 'down' },
} as const
const SEVEN: Partial<MeasuredMotif> = { outline: 'petals', petals: 7, overTips: 72, overValleys: 54 }
const EIGHT: Partial<MeasuredMotif> = { outline: 'petals', petals: 8, overTips: 95, overValleys: 68 }

describe.each([
  ['a shawl of seven petals', start(SEVEN, SHAWL, triangle), SHAWL],
  ['a shawl of hexagons', start({ outline: 'hexagon', sideToSide: 70 }, SHAWL, triangle), SHAWL],
  ['a blanket of eight petals', start(EIGHT, THROW), THROW],
])('%s', (_, project, wish) => {
  const { proposals } = proposeProject(project, wish)
  const asked = { most: 6, withPresent: true }

  it('has in its fits what the start offered under its way of joining, and what is laid out itself', () => {
    for (const { project: taken, rule } of proposals) {
      const { arrangements } = fitProject(taken, wish, asked)
      expect(arrangements.filter((fit) => isLaidAs(taken, fit))).toHaveLength(1)
      const started = proposals.filter((each) => each.rule === rule && !gapesMostly(each.fit.wide))
      for (const { fit } of started)
        expect(arrangements.filter((each) => isSameBlanket(each, fit))).toHaveLength(1)
    }
  })

  it('tells of each fit what comes of it when it is taken', () => {
    const taken = proposals[0]!.project
    for (const fit of fitProject(taken, wish, asked).arrangements) {
      const layout = { ...taken.layout, ...layoutOfFit(taken, fit) } as BlanketLayout
      const plan = planProject({ ...taken, layout })
      expect(plan.size.width).toBeCloseTo(fit.size.width, 6)
      expect(plan.size.height).toBeCloseTo(fit.size.height, 6)
      expect(plan.counts.motifs).toBe(fit.motifs)
      const rows = new Set(plan.motifs.map(({ row }) => row))
      if (fit.lengths) {
        expect(fit.lengths).toHaveLength(rows.size)
        expect(fit.lengths.reduce((sum, each) => sum + each, 0)).toBe(fit.motifs)
      }
    }
  })

  it.each(['start', 'fits'] as const)(
    'puts nothing that gapes above what lies closed and comes nearer: %s',
    (from) => {
      const list =
        from === 'start'
          ? proposals.map(({ fit }) => fit)
          : fitProject(proposals[0]!.project, wish, asked).arrangements
      list.forEach((fit, i) => {
        const better = list
          .slice(i + 1)
          .filter((each) => !each.wide && holds(each) && missOf(each.size, wish) < missOf(fit.size, wish))
        if (fit.wide) expect(better).toEqual([])
      })
    },
  )
})

describe('the order of arrangements', () => {
  const fit = (width: number, wide = false): FitArrangement =>
    ({
      ...{ motifs: 4, pieces: 1, single: 0, size: { width, height: 950 } },
      ...(wide && { wide: { joins: 1, of: 9, widest: 7, closes: 6 } }),
    }) as FitArrangement

  it('stays where nothing gapes, and else what is closed and nearer goes before', () => {
    const order = (list: readonly FitArrangement[]) =>
      closedFirst(list, (one) => one, THROW).map(({ size }) => size.width)
    expect(order([fit(800), fit(760), fit(790)])).toEqual([800, 760, 790])
    expect(order([fit(800), fit(790, true), fit(760)])).toEqual([800, 760, 790])
    // What gapes and comes nearer stays.
    expect(order([fit(770, true), fit(800)])).toEqual([770, 800])
  })
})
