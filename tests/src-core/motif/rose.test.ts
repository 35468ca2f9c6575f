/** A rose in layers, each worked behind the one before it: every layer has its petals apart. */
import { describe, expect, it } from 'vitest'
import { chartFigures } from '../../../src-core/figures/chart'
import { angleOf, radiusOf } from '../../../src-core/motif/rounds/ground'
import { crossings } from '../figures/crossings'
import { workedMotif } from './written-motif'

const FRONT = [
  'ch 1, 16 sc in ring; join with sl st in first sc (16 sc)',
  'ch 1, sc in first sc, *ch 4, skip next sc, sc in next sc; rep from * 6 more times, ch 4; join with sl st in first sc',
  '(sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around; join with sl st in first sc',
]
const MIDDLE = '(sc, hdc, 5 dc, hdc, sc) in each ch-5 sp around; join with sl st in first sc'
const BACK = '(sc, hdc, 2 dc, 3 tr, 2 dc, hdc, sc) in each ch-6 sp around; join with sl st in first sc'
const BEHIND = 'working behind petals, *ch 5, sl st around post of next sc of Rnd 2; rep from * around'

describe('a third layer, hung between the slip stitches that carry the second', () => {
  it.each([
    ['around their posts', BEHIND, 'sl st around post of next sl st of Rnd 4'],
    ['into them', BEHIND, 'sl st in next sl st of Rnd 4'],
    [
      'into them, that round closed',
      `${BEHIND}; join with sl st in base of first ch-5`,
      'sl st in next sl st of Rnd 4',
    ],
  ])('%s, has its petals evenly apart', (_, behind, slip) => {
    const loops = `working behind petals, *ch 6, ${slip}; rep from * around (8 ch-6 sps)`
    const { account, located, drawing } = workedMotif([...FRONT, behind, MIDDLE, loops, BACK], {
      ring: 'chain',
      chains: 6,
    })
    expect(account!.petals).toBe(8)
    const [carried, hung] = [located[3]!, located[5]!]
    expect(hung.round.onto).toBe(3)
    const slips = hung.seats.filter(({ kind }) => kind === 'slip').map(({ point }) => point)
    const gaps = slips.map((point, i) => angleOf(slips[(i + 1) % 8]!) - angleOf(point))
    for (const gap of gaps) expect((gap + 2 * Math.PI) % (2 * Math.PI)).toBeCloseTo(Math.PI / 4, 6)
    for (const point of slips) expect(radiusOf(point)).toBeGreaterThan(carried.radius)
    // The first loop is as the others are.
    const loopsAt = hung.seats.filter(({ kind }) => kind === 'space').map(({ point }) => radiusOf(point))
    for (const radius of loopsAt) expect(radius).toBeCloseTo(loopsAt[1]!, 6)
    const reach = account!.outline.map(radiusOf)
    const eighth = reach.length / 8
    for (const [i, radius] of reach.entries())
      expect(Math.abs(radius - reach[(i + eighth) % reach.length]!)).toBeLessThan(0.1)
    const drawn = drawing()!
    const room = { hand: 'right', style: 'ink', width: 186, height: 200 } as const
    const charts = chartFigures(drawn.located, drawn.beginning, room)
    expect(charts.map((figure) => crossings(figure).length)).toEqual([0, 0, 0])
  })
})
