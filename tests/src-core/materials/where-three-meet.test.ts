/** M43: where three motifs meet they are one join, in hours as in the count of join points. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'

const hexagons = (
  rule: 'edges' | 'tips' | 'seam',
  blanket: Partial<BlanketLayout> = {},
  more: Partial<Project> = {},
): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  gauge: { stitch: 'dc', stitches: 16, rows: 8, over: 100 },
  motifs: [{ id: 'm', kind: 'measured', outline: 'hexagon', sideToSide: 90, minutes: 20 }],
  layout: {
    ...{ kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns: 4, rows: 4 },
    ...blanket,
  },
  joining: { rule, minutes: 2 },
  ...more,
})
const countsOf = (project: Project) => {
  const { counts, time, joins, progress } = planProject(project)
  const points = counts.joins ?? 0
  return {
    points,
    minutes: time!.joins,
    threes: joins.filter(({ members }) => members.length > 2).length,
    progress,
  }
}

describe.each(['edges', 'tips'] as const)('M43 hexagons that are joined as they are made: %s', (rule) => {
  it('take the time of one join at each join point', () => {
    const { points, minutes, threes } = countsOf(hexagons(rule))
    // (R − 1)(2C − 2) corners of three in R offset rows of C.
    expect(threes).toBe(3 * 6)
    expect(minutes).toBe(2 * points)
  })

  it('do so with half motifs at the ends of rows, too', () => {
    const { points, minutes } = countsOf(hexagons(rule, { alternateRows: 'oneFewer', halves: true }))
    expect(minutes).toBe(2 * points)
  })

  it.each([
    ['nothing', {}],
    ['the first three', { '1,1': '', '1,2': '', '1,3': '' }],
    // The third motif of a corner before the second.
    ['every other', { '1,1': '', '2,1': '', '3,3': '', '2,4': '' }],
  ])('have so many of them left once %s is made', (_, made: Record<string, string>) => {
    for (const halves of [false, true]) {
      const alternateRows = halves ? 'oneFewer' : 'same'
      const { progress } = countsOf(
        hexagons(rule, { alternateRows, halves }, { made: { '1,1': '', ...made } }),
      )
      const { motifs, others, joins, ends, minutes } = progress.left
      const whole = 20 * motifs + 0.55 * 20 * others
      expect(minutes!.expected - whole - ends).toBeCloseTo(2 * joins, 6)
    }
  })
})

describe('M43 hexagons that are sewn', () => {
  it('go by their seams, as before', () => {
    // R(C − 1) + (R − 1)(2C − 1) of them.
    expect(countsOf(hexagons('seam')).minutes).toBe(2 * (4 * 3 + 3 * 7))
  })
})
