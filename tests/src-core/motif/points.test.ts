/** A round along both sides of points that were worked back along chains: the star stays one. A text of our own. */
import { expect, it } from 'vitest'
import { chartFigures } from '../../../src-core/figures/chart'
import { crossings } from '../figures/crossings'
import { workedMotif } from './written-motif'

const STAR = [
  'ch 1, 10 sc in ring, join with sl st in first sc',
  'ch 1, *sc in next sc, ch 5, sc in 2nd ch from hook, hdc in next ch, dc in next 2 ch, sk next sc; rep from * 4 more times, join with sl st in first sc',
  'ch 1, *sk sc, working along free side of point sc in next 4 ch, 3 sc in tip, sc in next 4 sts; rep from * 4 more times, join with sl st in first sc',
]

it('a star that is edged up and down its points has five of them, deep between, its stitches on their sides', () => {
  const { account, drawing } = workedMotif(STAR, { ring: 'adjustable' })
  const { located, beginning } = drawing()!
  const room = { width: 186, height: 200, hand: 'right', style: 'ink' } as const
  expect(account!.shape).toBe('petals')
  expect(account!.petals).toBe(5)
  expect(account!.overValleys).toBeLessThan(0.85 * account!.overTips)
  // The tips are crowded; every post lay across the whole before.
  const figures = chartFigures(located, beginning, room)
  expect(figures.flatMap((figure) => crossings(figure)).length).toBeLessThanOrEqual(16)
  const edge = located[2]!.elements.filter(({ element }) => element.standing)
  for (const { base, top } of edge)
    expect(Math.hypot(top.x - base.x, top.y - base.y)).toBeLessThan(3 * beginning.stitchWidth)
})
