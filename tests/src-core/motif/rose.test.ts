/** Petals apart: a rose in layers, each worked behind the one before it, and a pansy with petals of two sizes. */
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

describe('a pansy', () => {
  const petal = (inside: string) => `(sl st, ch 2, ${inside}, ch 2, sl st) in next`
  const [large, small] = [petal('7 tr'), petal('4 dc')]
  const LOOPS = 'ch 1, *sc in ring, ch 4; rep from * 4 more times; join with sl st in first sc'
  const UNEVEN = 'ch 1, (sc in ring, ch 3) 3 times, (sc in ring, ch 6) 2 times; join with sl st in first sc'

  it.each([
    [
      'with chains beside its stitches',
      LOOPS,
      [large, large, small, small, small].map((each) => `${each} ch-4 sp`).join(', '),
      0.6,
    ],
    [
      'in loops of two sizes',
      UNEVEN,
      '(sc, hdc, 3 dc, hdc, sc) in each of next 3 ch-3 sps, (sc, hdc, 2 dc, 7 tr, 2 dc, hdc, sc) in each of next 2 ch-6 sps; join with sl st in first sc',
      0.8,
    ],
  ])('%s, has dips between all of them, and two sides alike', (_, loops, petals, deep) => {
    const { account, drawing } = workedMotif([loops, petals], { ring: 'chain', chains: 5 })
    const placesOf = (kind: string) => account!.anchors.filter((anchor) => anchor.kind === kind)
    const [tips, dips] = [placesOf('tip').map(radiusOf), placesOf('valley').map(radiusOf)]
    expect([tips.length, dips.length]).toEqual([5, 5])
    expect(Math.max(...dips)).toBeLessThan(deep * Math.min(...tips))
    // Each side is the other's mirror image, about the line between the two large petals.
    const reach = account!.outline.map(radiusOf)
    const { length } = reach
    const off = (axis: number): number =>
      Math.max(...reach.map((radius, i) => Math.abs(radius - reach[(2 * length + axis - i) % length]!)))
    const least = Math.min(...reach.map((__, axis) => off(axis)))
    expect(least / Math.max(...tips)).toBeLessThan(0.12)
    const drawn = drawing()!
    const room = { hand: 'right', style: 'ink', width: 186, height: 200 } as const
    const charts = chartFigures(drawn.located, drawn.beginning, room)
    expect(charts.flatMap((figure) => crossings(figure))).toEqual([])
  })

  it('has one outline, whether its petals are told one by one or together', () => {
    const outlineOf = (petals: string) =>
      workedMotif([LOOPS, petals], { ring: 'chain', chains: 5 }).account!.outline
    const told = outlineOf([large, large, small, small, small].map((each) => `${each} ch-4 sp`).join(', '))
    const together = outlineOf(
      `${large.replace('next', 'each of next 2')} ch-4 sps, ${small.replace('next', 'each of next 3')} ch-4 sps`,
    )
    const repeated = outlineOf(`[${large} ch-4 sp] twice, [${small} ch-4 sp] 3 times`)
    for (const other of [together, repeated]) {
      expect(other).toHaveLength(told.length)
      for (const [i, point] of other.entries())
        expect(Math.hypot(point.x - told[i]!.x, point.y - told[i]!.y)).toBeLessThan(1e-6)
    }
  })
})
