/** Shapes as they are worked, in texts of our own: what is counted and compared follows from the stitches alone. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { workedMotif } from './written-motif'

function shape(foundation: RoundsMotif['foundation'], ...rounds: string[]) {
  const { account, drawing } = workedMotif(rounds, foundation)
  const xs = account!.outline.map(({ x }) => x)
  const ys = account!.outline.map(({ y }) => y)
  return {
    account: account!,
    drawing: drawing()!,
    width: Math.max(...xs) - Math.min(...xs),
    height: Math.max(...ys) - Math.min(...ys),
    tips: account!.anchors.filter(({ kind }) => kind === 'tip').map(({ x, y }) => Math.hypot(x, y)),
  }
}

const RING = { ring: 'adjustable' }

describe('shapes as they are', () => {
  it('M16 a heart in one round has its cleft, its two sides and its point, and is wider above than below', () => {
    const { account } = shape(
      RING,
      'ch 3 (does not count), 3 tr in ring, 3 dc in ring, ch 1, 1 tr in ring, ch 1, 3 dc in ring, 3 tr in ring, ch 3, sl st in ring',
    )
    const { outline } = account
    const polar = outline.map(({ x, y }) => ({ radius: Math.hypot(x, y), angle: Math.atan2(x, -y) }))
    const cleft = polar.reduce((least, point) => (point.radius < least.radius ? point : least))
    const mean = polar.reduce((sum, { radius }) => sum + radius, 0) / polar.length
    expect(cleft.radius).toBeLessThan(0.5 * mean)
    // The cleft above: x to the right of it, y down from it.
    const upright = polar.map(({ radius, angle }) => ({
      x: radius * Math.sin(angle - cleft.angle),
      y: -radius * Math.cos(angle - cleft.angle),
    }))
    const widthAt = (from: number, to: number) => {
      const xs = upright.filter(({ y }) => y >= from && y <= to).map(({ x }) => x)
      return Math.max(...xs) - Math.min(...xs)
    }
    const bottom = Math.max(...upright.map(({ y }) => y))
    expect(widthAt(-0.6 * bottom, -0.4 * bottom)).toBeGreaterThan(1.2 * widthAt(0.6 * bottom, 0.8 * bottom))
    // Both sides alike, and the point opposite the cleft.
    const [left, right] = [Math.min(...upright.map(({ x }) => x)), Math.max(...upright.map(({ x }) => x))]
    expect(-left / right).toBeGreaterThan(0.9)
    expect(-left / right).toBeLessThan(1.1)
    const point = upright.reduce((lowest, each) => (each.y > lowest.y ? each : lowest))
    expect(Math.abs(point.x)).toBeLessThan(0.15 * bottom)
  })

  it('M10 a clover of three leaves has three tips alike', () => {
    const { account, tips } = shape(
      RING,
      'ch 1, 6 sc in ring, join with sl st in first sc',
      'ch 1, *sc in next sc, ch 4, sk next sc; rep from * twice more, join with sl st in first sc',
      '(sc, hdc, 4 dc, hdc, sc) in each ch-4 sp around, join with sl st in first sc',
    )
    expect([account.shape, account.petals]).toEqual(['petals', 3])
    expect(tips).toHaveLength(3)
    expect(Math.max(...tips) / Math.min(...tips)).toBeLessThan(1.01)
  })

  it('M10 a star of five points worked back along their chains has five tips alike', () => {
    const { account, tips } = shape(
      RING,
      'ch 1, 10 sc in ring, join with sl st in first sc',
      '*ch 6, sl st in 2nd ch from hook, sc in next ch, hdc in next ch, dc in next 2 chs, sk next sc, sl st in next sc; rep from * 4 more times',
    )
    expect([account.shape, account.petals]).toEqual(['petals', 5])
    expect(Math.max(...tips) / Math.min(...tips)).toBeLessThan(1.01)
  })

  it('M8 a triangle has three corners, and its corners reach twice as far as its sides', () => {
    const { account } = shape(
      RING,
      'ch 3 (counts as dc), 3 dc in ring, ch 3, (4 dc, ch 3) twice in ring, join with sl st in top of beg ch-3',
      'ch 3 (counts as dc), dc in next 3 dc, *(2 dc, ch 3, 2 dc) in next ch-3 sp, dc in next 4 dc; rep from * once more, (2 dc, ch 3, 2 dc) in next ch-3 sp, join with sl st in top of beg ch-3',
    )
    expect([account.shape, account.petals]).toEqual(['straight', 3])
    // 1 / cos 60° = 2, and a little more by the loops of the corners.
    expect(account.overTips / account.overValleys).toBeGreaterThan(1.95)
    expect(account.overTips / account.overValleys).toBeLessThan(2.5)
  })

  it('an oval is longer than wide by its chain, and its end stitches go around', () => {
    const { width, height } = shape(
      { chain: 11 },
      '3 sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch, working along opposite side of chain, sc in next 8 ch, join with sl st in first sc',
    )
    // About ten chains of 5 mm more, and as high on all sides.
    const [long, short] = [Math.max(width, height), Math.min(width, height)]
    expect(long - short).toBeGreaterThan(35)
    expect(long - short).toBeLessThan(60)
  })

  it('petals in one stitch stand between their chains in the chart, one as far from the next as any other', () => {
    const { drawing } = shape(
      RING,
      'ch 1, 6 sc in ring, join with sl st in first sc',
      '*ch 3, 2 dc in same st, ch 3, sl st in same st, sl st in next st; rep from * 5 more times',
    )
    const { elements } = drawing.located[1]!
    const tops = elements
      .filter(({ element }) => element.stitch === 'dc')
      .map(({ top }) => Math.atan2(top.x, -top.y))
    expect(tops).toHaveLength(12)
    const starts = tops
      .filter((_, i) => i % 2 === 0)
      .map((angle) => (angle + 4 * Math.PI) % (2 * Math.PI))
      .sort((a, b) => a - b)
    const steps = starts.slice(1).map((angle, i) => angle - starts[i]!)
    for (const step of steps) expect(step).toBeCloseTo(Math.PI / 3, 6)
    const chains = elements.filter(({ element, chain }) => element.role === 'space' && chain.length === 3)
    expect(chains.length).toBeGreaterThanOrEqual(11)
  })

  it.each([6, 12, 30])(
    'an oval on a chain of %i is as wide all along its sides, and nowhere hollow',
    (along) => {
      const { account, width, height } = shape(
        { chain: along + 2 },
        `2 sc in 2nd ch from hook, sc in next ${along - 1} ch, 4 sc in last ch, working along opposite side of chain, sc in next ${along - 1} ch, 2 sc in last ch, join with sl st in first sc`,
        `ch 1, 2 sc in each of next 2 sc, sc in next ${along - 1} sc, 2 sc in each of next 4 sc, sc in next ${along - 1} sc, 2 sc in each of next 2 sc, join with sl st in first sc`,
      )
      const { outline } = account
      const turns = outline.map((b, i) => {
        const [a, c] = [outline.at(i - 1)!, outline[(i + 1) % outline.length]!]
        return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x)
      })
      expect(Math.min(...turns.map((turn) => turn * Math.sign(turns[0]!)))).toBeGreaterThan(-1e-9)
      const beside = outline.filter(({ y }) => Math.abs(y) < 0.2 * (height - width))
      expect(Math.min(...beside.map(({ x }) => Math.abs(x)))).toBeGreaterThan(0.48 * width)
    },
  )
})
