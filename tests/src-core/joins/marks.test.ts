/** M30: circles of which only the measures are known are joined at marks that divide their edge evenly. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { legendsOf, marksIn } from '../../../src-core/joins/words'
import { createPlanner } from '../../../src-core/plan'

const circles = (arrangement: 'straight-rows' | 'offset-rows', more: object = {}): Project =>
  ({
    format: 'petalyard-project',
    version: 1,
    motifs: [{ id: 'm', kind: 'measured', outline: 'round', across: 90, slots: [{ slot: 'all' }] }],
    layout: { kind: 'blanket', arrangement, motif: 'm', columns: 4, rows: 4, ...more },
    joining: { rule: 'tips' },
  }) as unknown as Project

const stepsOf = (project: Project) => {
  const plan = createPlanner().plan(project)
  return { plan, steps: plan.order.map(({ words }) => words) }
}

describe.each([
  ['straight-rows', 4, 'four'],
  ['offset-rows', 6, 'six'],
] as const)('circles in %s', (arrangement, count, numeral) => {
  it.each(['right', 'left'] as const)(
    'are divided in as many parts as they have neighbors, %s-handed',
    (hand) => {
      const { plan, steps } = stepsOf({ ...circles(arrangement), hand })
      expect(plan.motif!.spaces).toMatchObject({ count, marks: true })
      const told = steps.join(' ')
      expect(told).not.toMatch(/o'clock|half past|space/)
      const numbers = [...told.matchAll(/\bmark (\d+)/gi)].map(([, number]) => Number(number))
      expect(numbers.length).toBeGreaterThan(20)
      expect(Math.max(...numbers)).toBeLessThanOrEqual(count)
      // The second of row 1 has the first on one side alone: that is joined last.
      expect(steps[1]).toMatch(new RegExp(`^mark ${count}: join to 1, at its mark \\d$`))
      const [legend] = legendsOf(steps, marksIn([plan.motif]))
      expect(legend).toContain(`Divide the edge of each circle evenly in ${numeral} with stitch markers`)
      expect(legend).toContain('mark 1 is where its last round begins')
    },
  )
})

it('circles whose rounds are written keep to what these make', () => {
  const own = circles('offset-rows')
  const written = [
    {
      ...{ id: 'm', kind: 'rounds', outline: 'round' },
      rounds: [{ work: 'Ch 4, join with sl st to form a ring. Ch 1, 12 sc in ring, join.' }],
    },
  ]
  const { plan } = stepsOf({ ...own, motifs: written as never })
  expect(plan.motif!.spaces?.marks).toBeUndefined()
})
