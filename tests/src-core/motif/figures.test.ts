/** M14: figures with a length and a width are called and measured as what they are. Texts of our own. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { shapeName } from '../../../src-core/figures/sentence'
import { chartFigures } from '../../../src-core/figures/chart'
import { leadMeasure } from '../../../src-core/motif/ruler'
import { roundsAccount } from '../../../src-core/motif/rounds/account'
import { angleOf, radiusOf, unwrap } from '../../../src-core/motif/rounds/ground'
import { crossings } from '../figures/crossings'
import { GAUGE, workedMotif } from './written-motif'

const made = (foundation: RoundsMotif['foundation'], ...rounds: string[]) => {
  const { account, located, drawing } = workedMotif(rounds, foundation)
  const [xs, ys] = [account!.outline.map(({ x }) => x), account!.outline.map(({ y }) => y)]
  const size = { width: Math.max(...xs) - Math.min(...xs), height: Math.max(...ys) - Math.min(...ys) }
  return { account: account!, located, drawing, ...size }
}

/** mm: the stitches of the gauge, 20 to 100 mm. */
const WIDTH = 5

describe('M14 an oval round a chain', () => {
  const OVAL = [
    'sc in 2nd ch from hook, sc in next 8 ch, 4 sc in last ch; working along other side of chain, sc in next 8 ch, 3 sc in last ch; join with sl st in first sc',
    'ch 1, 2 sc in first sc, sc in next 8 sc, 2 sc in each of next 4 sc, sc in next 8 sc, 2 sc in each of next 3 sc; join with sl st in first sc',
  ]

  it('is as long as its chains and the rounds at both ends, as wide as the rounds on both sides', () => {
    const { account, width, height } = made({ chain: 11 }, ...OVAL)
    expect([account.shape, account.form, shapeName(account, true)]).toEqual(['leaf', 'oval', 'ovals'])
    // Ten chains are worked along; two rounds of sc, each nearly as high as it is wide, stand at either end.
    const sc = account.overValleys / 4
    expect(account.overTips).toBeGreaterThan(10 * WIDTH + 4 * sc - 1)
    expect(account.overTips).toBeLessThan(10 * WIDTH + 4 * sc + 1)
    expect(height).toBeCloseTo(account.overTips, 6)
    expect(width).toBeCloseTo(account.overValleys, 6)
    expect(leadMeasure(account, 'US')).toEqual([account.overTips, 'long'])
  })

  it('grows from round to round, and counts its chain once', () => {
    const { account } = made({ chain: 11 }, ...OVAL)
    const [first, second] = account.rounds.map(({ outerRadius }) => 2 * outerRadius)
    expect(second).toBeCloseTo(account.overTips, 6)
    expect(first).toBeLessThan(account.overTips - WIDTH)
    expect(account.stitches['']!['ch']).toBe(12)
    const told = made(
      undefined,
      'ch 7, sc in 2nd ch from hook, hdc in next ch, 2 dc in next ch, hdc in next ch, sl st in next 2 ch',
    )
    expect(told.account.stitches['']!['ch']).toBe(7)
  })
})

describe('M14 pieces in rows', () => {
  it('are blocks, wide along their chain and high as their rows', () => {
    const { account } = made(
      { chain: 16 },
      'sc in 2nd ch from hook and in each ch across',
      'turn, ch 1, sc in each sc across',
      'turn, ch 1, sc in each sc across',
    )
    expect([account.form, shapeName(account, false)]).toEqual(['block', 'block'])
    expect(account.overValleys).toBeCloseTo(15 * WIDTH, 6)
    expect(account.overTips).toBeLessThan(4 * WIDTH)
    expect(leadMeasure(account, 'US')).toEqual([account.overValleys, 'wide'])
    expect(account.anchors.map(({ address }) => address)).toContain('top edge')
  })

  it('from a point are triangles, be their last row an edging of many shells', () => {
    const row = (before: number) =>
      `turn, ch 1, 2 sc in first sc, sc in next ${before - 2} sc, 2 sc in last sc`
    const point = [
      '3 sc in 2nd ch from hook',
      'turn, ch 1, 2 sc in first sc, sc in next sc, 2 sc in last sc',
      ...[5, 7, 9, 11].map(row),
    ]
    expect(made({ chain: 2 }, ...point).account.form).toBe('triangle')
    const shells =
      'turn, ch 1, sc in first sc, *sk 1 sc, 5 dc in next sc, sk 1 sc, sc in next sc; rep from * across'
    expect(made({ chain: 2 }, ...point, shells).account.form).toBe('triangle')
  })
})

describe('M14 a heart in a ring', () => {
  const HEART =
    'ch 3 (does not count), 3 tr in ring, 3 dc in ring, ch 1, 1 tr in ring, ch 1, 3 dc in ring, 3 tr in ring, ch 3, sl st in ring'

  const INNER =
    'ch 2 (does not count as a st), 3 dc in ring, 2 hdc in ring, sc in ring, dc in ring, sc in ring, 2 hdc in ring, 3 dc in ring, ch 2, sl st in ring'
  const outer = (end: string) =>
    `ch 2 (does not count as a st), 2 dc in each of next 3 dc, 2 hdc in next hdc, hdc in next hdc, sc in next sc, (sc, dc, sc) in next dc, sc in next sc, hdc in next hdc, 2 hdc in next hdc, 2 dc in each of next 3 dc, ch 2, sl st in ${end}`

  it.each([
    ['in one round', [HEART]],
    ['in two', [INNER, outer('ring')]],
    ['in two, back to the center', [INNER, outer('center')]],
    ['in two, into the center', [INNER, outer('the center')]],
  ])('stands upright, its cleft above and its point below: %s', (_, rounds) => {
    const { account, width, height, drawing } = made({ ring: 'adjustable' }, ...rounds)
    expect(account.findings).toEqual([])
    expect([account.shape, account.form, shapeName(account, false)]).toEqual(['leaf', 'heart', 'heart'])
    expect([width, height]).toEqual([
      expect.closeTo(account.overValleys, 6) as number,
      expect.closeTo(account.overTips, 6) as number,
    ])
    const { outline } = account
    const above = outline.filter(({ x }) => Math.abs(x) < 0.05 * width).filter(({ y }) => y < 0)
    const cleft = Math.max(...above.map(({ y }) => y))
    const [left, right] = [-1, 1].map((side) =>
      Math.min(...outline.flatMap(({ x, y }) => (side * x > 0.15 * width ? [y] : []))),
    )
    expect(cleft).toBeGreaterThan(Math.max(left!, right!) + 0.1 * height)
    const lowest = outline.reduce((best, point) => (point.y > best.y ? point : best))
    expect(Math.abs(lowest.x)).toBeLessThan(0.2 * width)
    expect(account.anchors.map(({ address }) => address)).toEqual(expect.arrayContaining(['cleft', 'point']))
    // In the chart, too, the last slip stitch of each round lies in the ring, below the cleft.
    const { located, beginning } = drawing()!
    for (const { elements } of located) {
      const slip = elements.find(({ element }) => element.role === 'slip')!.top
      const off = unwrap(angleOf(slip) + beginning.turn, 0)
      expect(Math.abs(off)).toBeLessThan(0.1)
      expect(radiusOf(slip)).toBeLessThan(0.5 * located.at(-1)!.radius)
    }
    const room = { hand: 'right', style: 'ink', width: 186, height: 200 } as const
    expect(chartFigures(located, beginning, room).flatMap((figure) => crossings(figure))).toEqual([])
  })

  it('is no clover', () => {
    const { account } = made(
      { ring: 'adjustable' },
      'ch 1, 6 sc in ring, join with sl st in first sc',
      'ch 1, *sc in next sc, ch 4, sk next sc; rep from * twice more, join with sl st in first sc',
      '(sc, hdc, 4 dc, hdc, sc) in each ch-4 sp around, join with sl st in first sc',
    )
    expect([account.shape, account.form, account.petals]).toEqual(['petals', undefined, 3])
  })
})

describe('M14 half a motif, in rows from a ring', () => {
  const first = (groups: number) =>
    `ch 3 (counts as dc), 2 dc in ring, *ch 2, 3 dc in ring; rep from * ${groups - 2} more times`
  const next = (end: number, side: number) =>
    `turn, ch 3 (counts as dc), dc in first dc, dc in next ${end} dc, (dc, ch 2, dc) in next ch-2 sp, dc in next ${side} dc, (dc, ch 2, dc) in next ch-2 sp, dc in next ${end} dc, 2 dc in top of ch-3`
  const RING: RoundsMotif['foundation'] = { ring: 'adjustable' }
  const half = (...rounds: string[]) => {
    const motif = {
      id: 'm',
      kind: 'rounds',
      gauge: GAUGE,
      foundation: RING,
      rounds: rounds.map((work) => ({ work })),
    }
    return roundsAccount(motif as RoundsMotif, { hand: 'right', terms: 'US', growth: 0 }).account!
  }

  it('is half a circle, twice as wide as high', () => {
    const account = half(
      'ch 3 (counts as dc), 6 dc in ring (7)',
      'turn, ch 3 (counts as dc), dc in first dc, 2 dc in each of next 6 dc (14)',
      'turn, ch 3 (counts as dc), dc in first dc, *dc in next dc, 2 dc in next dc; rep from * 5 more times, dc in last dc (21)',
    )
    expect([account.form, shapeName(account, true)]).toEqual(['half-circle', 'half circles'])
    expect(account.overValleys).toBeCloseTo(2 * account.overTips, 6)
    // Three rounds of dc, each 1.91 stitches high, squatter as these rows are, about a small ring.
    expect(account.overTips).toBeGreaterThan(3 * 1.6 * WIDTH)
    expect(account.overTips).toBeLessThan(3 * 1.91 * WIDTH + WIDTH)
  })

  it('is half a hexagon with two corners between its ends', () => {
    const account = half(first(3), next(2, 3), next(4, 5))
    expect(account.form).toBe('half-hexagon')
    // From corner to corner over half of side to side.
    expect(account.overValleys / account.overTips).toBeCloseTo(4 / Math.sqrt(3), 2)
  })

  it('is no circle that goes on in a spiral, nor one turned after each joined round', () => {
    const disc = [
      'ch 1, 6 sc in ring',
      '2 sc in each sc around (12)',
      '*sc in next sc, 2 sc in next sc; rep from * 5 more times (18)',
    ]
    expect(half(...disc).form).toBeUndefined()
    const joined = disc.map((work, i) => `${i > 0 ? 'turn, ch 1, ' : ''}${work}, join with sl st in first sc`)
    expect(half(...joined).form).toBeUndefined()
  })
})
