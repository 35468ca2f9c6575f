/**
 * M27: openings with a narrow neck. Flowers of eight petals, 95 and 60 mm, tip to tip by turns: columns and rows of
 * (95 + 60)/2 = 77.5 mm, diagonals of 109.60 mm. The large ones then are 109.60 − 95 = 14.60 mm apart, more than the
 * joining distance of 8 % of 95 = 7.6 mm (M30), so that two small and two large ones stand round each opening, and a
 * tip of each small one lies 54.80 − 30 = 24.80 mm from its middle. All of it by hand.
 */
import { describe, expect, it } from 'vitest'
import type { Plan, Point } from '../../../shared-types/plan'
import type { Project } from '../../../shared-types/project'
import { distance, distanceToEdge, moveOutline, turnOutline } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import { lostMade } from '../../../src-core/progress/lost'
import { radians } from '../../../src-core/units/quantity'
import { blanket, ROUND } from './additions'

const PITCH = (95 + 60) / 2
const HALF_DIAGONAL = PITCH / Math.SQRT2

const bloom = (overTips: number, overValleys: number) => ({
  ...{ outline: 'petals', petals: 8, overTips, overValleys },
})

/** 5 × 6 motifs: (5 − 1)(6 − 1) = 20 openings. Without a gauge distances follow from sizes alone. */
function large(tips: number, dips: number, across: number, turn = 0): Project {
  const project = blanket(
    bloom(95, 68),
    { outline: 'round', across },
    {
      ...{ columns: 5, rows: 6, turn, alternate: { motifs: ['m', 's'], by: 'cell' } },
      ...{ cells: { fill: { pattern: 'one', colourways: ['a', 'sw'] } }, fillers: { motif: 'f' } },
    },
  )
  const { gauge: _, ...rest } = project
  const small = { id: 's', kind: 'measured', minutes: 8, slots: [{ slot: 'all', grams: 2 }] }
  return {
    ...rest,
    motifs: [...project.motifs!, { ...small, ...bloom(tips, dips) } as never],
    colourways: [...project.colourways!, { id: 'sw', motif: 's', yarns: { all: 'y' } }],
  }
}

const at = (plan: Plan, id: string) => plan.motifs.find((motif) => motif.id === id)!
const fillerCodes = (plan: Plan) =>
  plan.findings.flatMap(({ code, severity }) => (code.startsWith('layout/filler') ? [[code, severity]] : []))

/** How far a placed motif's outline is from a point. */
function farFrom(plan: Plan, id: string, point: Point): number {
  const { turn, x, y, motif } = at(plan, id)
  const account = plan.accounts.find((each) => each.id === motif)!
  const outline = moveOutline(turnOutline(account.outline, radians(turn)), x, y)
  return Math.min(...outline.map((a, i) => distanceToEdge(point, a, outline[(i + 1) % outline.length]!)))
}

describe('M27 openings with a narrow neck', () => {
  const plan = planProject(large(60, 43, 22))

  it('hold a filler in each lobe, joined to three motifs: 20 openings, 40 fillers, 120 joins', () => {
    expect(
      plan.openings.map(({ between, count, stands }) => [between.join(' '), count, stands.length]),
    ).toEqual([['m m s s', 20, 2]])
    expect(plan.fillers).toHaveLength(40)
    expect(
      plan.fillers.every(
        ({ joins, motifs, points }) => joins === 3 && motifs.length === 3 && points!.length === 3,
      ),
    ).toBe(true)
    // Neighbours in rows and columns meet at one tip each: 4·6 + 5·5 = 49.
    expect(plan.joins).toHaveLength(49)
    expect(plan.counts.joins).toBe(49 + 120)
    expect(new Set(plan.fillers.map(({ id }) => id)).size).toBe(40)
    expect(fillerCodes(plan)).toEqual([])
  })

  it('each 24.80 mm less its own circle from the middle, at the tip of a small one, mirrored in the middle', () => {
    for (const filler of plan.fillers) {
      const small = filler.motifs.filter((id) => at(plan, id).motif === 's')
      const both = filler.motifs.filter((id) => at(plan, id).motif === 'm').map((id) => at(plan, id))
      expect(small).toHaveLength(1)
      expect(both).toHaveLength(2)
      const middle = { x: (both[0]!.x + both[1]!.x) / 2, y: (both[0]!.y + both[1]!.y) / 2 }
      expect(distance(filler, middle)).toBeCloseTo(HALF_DIAGONAL - 30 - filler.radius, 1)
      for (const id of filler.motifs) expect(farFrom(plan, id, filler)).toBeCloseTo(filler.radius, 1)
      const twin = plan.fillers.find((other) => other !== filler && distance(other, middle) < 20)!
      expect(twin.x + filler.x).toBeCloseTo(2 * middle.x, 1)
      expect(twin.y + filler.y).toBeCloseTo(2 * middle.y, 1)
    }
  })

  it('the order makes each after its three motifs and joins it to nothing beyond', () => {
    expect(plan.fillerSteps).toHaveLength(40)
    for (const step of plan.fillerSteps)
      expect(step.joins.map(({ motif }) => motif).sort()).toEqual(
        [...plan.fillers[step.filler]!.motifs].sort(),
      )
    const steps = plan.order.filter(({ kind }) => kind === 'filler')
    expect(steps).toHaveLength(40)
    expect(steps.flatMap(({ words }) => words).join(' ')).not.toContain('undefined')
  })

  it('a small one that grows from 50 to 60 mm keeps all fillers, one for each of three motifs', () => {
    // 72.5 · √2 − 95 = 7.53 mm: the large ones are joined, which halves each opening.
    const before = planProject(large(50, 36, 22))
    expect(
      before.openings.map(({ between, count, stands }) => [between.join(' '), count, stands.length]),
    ).toEqual([['m m s', 40, 1]])
    expect(before.fillers.map(({ id }) => id).sort()).toEqual(plan.fillers.map(({ id }) => id).sort())
  })

  it('one that is smaller than the neck stands in the lobes as well, and its gaps are warned of', () => {
    const small = planProject(large(60, 43, 4))
    expect(small.fillers).toHaveLength(40)
    const { radius } = small.fillers[0]!
    for (const { bridge, joins } of small.fillers) {
      expect(joins).toBe(3)
      expect(bridge).toBeCloseTo(radius - 2, 1)
    }
    // 11.67 − 2 = 9.67 mm is more than 7.6 and the millimetre that crochet gives.
    expect(fillerCodes(small)).toEqual([['layout/filler-far', 'warning']])
  })

  it('where no lobe closes, one stands where it joins, and what it does not reach is told', () => {
    // Turned by half a petal, dips face each other: each lobe ends between two small ones.
    const turned = planProject(large(60, 43, 22, 22.5))
    expect(turned.fillers).toHaveLength(20)
    for (const { motifs, bridge } of turned.fillers) {
      expect(motifs.length).toBeLessThan(3)
      expect(bridge).toBeLessThan(8.6)
    }
    expect(turned.counts.joins).toBe(turned.joins.length + 2 * 20)
    expect(fillerCodes(turned)).toContainEqual(['layout/filler-short', 'warning'])
  })

  it('a made one in a lobe is asked about before its opening is left open', () => {
    const project = large(60, 43, 22)
    const own = (motif: string | null): Project => ({
      ...project,
      made: { [plan.fillers[0]!.id]: '' },
      layout: {
        ...(project.layout as object),
        fillers: { openings: [{ between: ['m', 's', 's', 'm'], motif }] },
      } as never,
    })
    expect(lostMade(own('f'), own(null))).not.toBeNull()
    expect(lostMade(own('f'), own('f'))).toBeNull()
  })
})

describe('M27 openings without a neck', () => {
  it('keep the one in the middle, however small: four circles of 80 mm, (33.14 − 4)/2 mm to each', () => {
    const plan = planProject(blanket(ROUND, { outline: 'round', across: 4 }, { fillers: { motif: 'f' } }))
    expect(plan.fillers).toHaveLength(12)
    for (const { joins, bridge } of plan.fillers) {
      expect(joins).toBe(4)
      expect(bridge).toBeCloseTo((80 * (Math.SQRT2 - 1) - 4) / 2, 1)
    }
    expect(fillerCodes(plan)).toEqual([['layout/filler-far', 'warning']])
  })
})
