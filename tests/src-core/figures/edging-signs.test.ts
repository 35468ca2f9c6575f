/** Letters at the tips and dips of a border, and the chains between its tips: against the counts and the shape of the edge. */
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import { edgingSigns } from '../../../src-core/figures/edging-signs'
import { contains } from '../../../src-core/geometry/points'
import { planProject } from '../../../src-core/plan'
import { readExample } from '../joining-round/flowers'

const planned = (name: string, hand: 'right' | 'left' = 'right'): Plan =>
  planProject({ ...readExample(name), hand })
const counted = (texts: readonly { readonly text: string }[]): Record<string, number> =>
  texts.reduce<Record<string, number>>((sum, { text }) => ({ ...sum, [text]: (sum[text] ?? 0) + 1 }), {})

describe.each(['right', 'left'] as const)('the signs of a border, worked with the %s hand', (hand) => {
  it.each(['estuary-dusk-shawl', 'orangery-cloth'])(
    'of %s: a letter for each place that a round names',
    (name) => {
      const plan = planned(name, hand)
      const { letters, of } = edgingSigns(plan)
      for (const { number, bends = [] } of plan.edging!.rounds)
        for (const { more, count } of bends) {
          const own = of(number)(more).split(', ')
          expect(letters.filter(({ text }) => own.includes(text))).toHaveLength(count)
        }
      // At a tip the work lies behind the sign, at a dip on both sides of it: out of the work is never into it.
      const [outside] = plan.edgingLines
      for (const { x, y, out } of letters) {
        expect(Math.hypot(out.x, out.y)).toBeCloseTo(1, 6)
        expect(contains(outside!, { x: x - out.x, y: y - out.y })).toBe(true)
        expect(contains(outside!, { x: x + out.x, y: y + out.y })).toBe(false)
      }
    },
  )

  it('have the chains of every gap where some from one motif to the next have more', () => {
    const plan = planned('estuary-dusk-shawl', hand)
    const { chains } = edgingSigns(plan)
    expect(counted(chains)).toEqual({ '15': 36, '18': 8 })
    const [line] = plan.edgingLines
    const bottom = Math.max(...line!.map(({ y }) => y))
    // Along the top all are alike; the slanting sides have the wide ones.
    expect(chains.filter(({ text, y }) => text === '18' && y < 0.05 * bottom)).toEqual([])
  })
})

it('tips of one shape are worked alike, however a line was drawn that they were measured along', () => {
  const plan = planned('hearthstone-hexagon')
  // At the edge of 5 rings stand 30 hexagons: one tip each, two at the six corners; a dip between any two.
  for (const { bends } of plan.edging!.rounds)
    expect(bends!.map(({ count, more }) => [count, Math.sign(more)])).toEqual([
      [36, 1],
      [30, -1],
    ])
  expect(edgingSigns(plan).letters).toEqual([])
})
