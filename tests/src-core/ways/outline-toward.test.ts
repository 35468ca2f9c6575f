/** M19, M26: what is cut out comes as near to a size as whole motifs do. Sizes are made up. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, MeasuredMotif, Project } from '../../../shared-types/project'
import { cutOutWords } from '../../../src-core/figures/outline-words'
import { holds } from '../../../src-core/joins/holding'
import { createPlanner, planProject, proposeProject } from '../../../src-core/plan'
import { outlineToward } from '../../../src-core/ways/outline'

const MOTIFS: Readonly<Record<string, Partial<MeasuredMotif>>> = {
  flowers: { outline: 'petals', petals: 6, overTips: 80, overValleys: 60 },
  'five petals': { outline: 'petals', petals: 5, overTips: 95, overValleys: 68 },
  squares: { outline: 'square', sideToSide: 100 },
  hexagons: { outline: 'hexagon', sideToSide: 90 },
}

/** A triangle of exactly the size, as the start lays it out. */
function shawl(motif: Partial<MeasuredMotif>, width: number, height: number): Project {
  return {
    format: 'petalyard-project',
    version: 1,
    motifs: [{ id: 'm1', name: 'Flower', kind: 'measured', ...motif } as MeasuredMotif],
    joining: { rule: motif.outline === 'petals' ? 'tips' : 'edges' },
    layout: {
      ...{ kind: 'blanket', arrangement: 'straight-rows', motif: 'm1', columns: 8, rows: 8 },
      target: { width, height },
      outlineShape: { kind: 'triangle', size: width, height, points: 'down' },
    } as BlanketLayout,
  }
}

describe('M19 a shawl comes out at the size that was asked for, to about half a motif', () => {
  it.each(
    Object.entries(MOTIFS).flatMap(([name, motif]) =>
      [
        [1600, 800],
        [1800, 900],
        [1700, 700],
      ].map(([width, height]) => [name, width!, height!, motif] as const),
    ),
  )('%s, %i × %i mm', (_, width, height, motif) => {
    const { proposals } = proposeProject(shawl(motif, width, height), { width, height })
    const [first] = proposals
    expect(holds(first!.fit)).toBe(true)
    const plan = planProject(first!.project)
    const half = (motif.overTips ?? motif.sideToSide!) * 0.62
    expect(Math.abs(plan.size.width - width)).toBeLessThan(half)
    expect(Math.abs(plan.size.height - height)).toBeLessThan(half)
    // What the card tells is what the plan is.
    expect(first!.fit.error.width).toBeCloseTo(plan.size.width - width, 6)
    // Its rows reach to the edges of what is cut out of them.
    const codes = plan.findings.map(({ code }) => code)
    expect(codes).not.toContain('layout/outline-larger')
    const rows = plan.motifs.map(({ row }) => row)
    expect(Math.min(...rows)).toBe(1)
  })

  it.each([
    [{ outline: 'petals', petals: 6, overTips: 65, overValleys: 44 }, 1500, 750],
    [MOTIFS['flowers']!, 1700, 700],
    // Of squares rows are odd all through, or even: seventeen in the longest of nine.
    [MOTIFS['squares']!, 1700, 900],
  ] as const)(
    'and comes to a point of one motif where that is as near as half a motif',
    (motif, width, height) => {
      const { proposals } = proposeProject(shawl(motif, width, height), { width, height })
      const { fit, project } = proposals[0]!
      const half = (motif.overTips ?? motif.sideToSide!) / 2
      expect(Math.abs(fit.error.width)).toBeLessThanOrEqual(half)
      expect(Math.abs(fit.error.height)).toBeLessThanOrEqual(half)
      expect(fit.lengths!.at(-1)).toBe(1)
      expect(cutOutWords(planProject(project))).toMatch(/It ends in a point of 1 motif\.$/)
    },
  )

  it('says how wide a blunt point is, and how large it comes out beside the outline', () => {
    const blunt = planProject(shawl(MOTIFS['squares']!, 850, 480))
    const last = Math.max(...blunt.motifs.map(({ row }) => row))
    const many = blunt.motifs.filter(({ row }) => row === last).length
    expect(many).toBeGreaterThan(1)
    expect(cutOutWords(blunt)).toContain(`Its point is ${many} motifs wide`)
    expect(cutOutWords(blunt)).toContain('it comes out ')
    const full = {
      ...blunt,
      settled: planProject({
        ...shawl(MOTIFS['squares']!, 850, 480),
        layout: { kind: 'blanket', motif: 'm1', arrangement: 'straight-rows', columns: 3, rows: 3 },
      }).settled,
    }
    expect(cutOutWords(full)).toBe('')
  })

  it('squares of 10 cm meet 160 × 80 cm, and no row or column stands empty', () => {
    const project = outlineToward(
      shawl(MOTIFS['squares']!, 1500, 700),
      { width: 1600, height: 800 },
      createPlanner(),
    )
    expect(planProject(project).size).toMatchObject({ width: 1600, height: 800 })
  })

  it('a circle keeps its proportions and comes nearer on its worse side', () => {
    const square = shawl(MOTIFS['squares']!, 1000, 1000)
    const layout = {
      ...(square.layout as BlanketLayout),
      outlineShape: { kind: 'circle', size: 700 } as const,
    }
    const wish = { width: 1000, height: 1000 }
    const project = outlineToward({ ...square, layout }, wish, createPlanner())
    expect(planProject(project).size).toMatchObject(wish)
    expect((project.layout as BlanketLayout).outlineShape).not.toHaveProperty('height')
  })

  it('what is made stays: nothing is cut out anew', () => {
    const made: Project = { ...shawl(MOTIFS['squares']!, 1500, 700), made: { '4,4': '' } }
    expect(outlineToward(made, { width: 1600, height: 800 }, createPlanner())).toBe(made)
  })
})
