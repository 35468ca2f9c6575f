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
})
