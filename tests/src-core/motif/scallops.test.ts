/** M14: edgings of shells, scallops and picots leave the shape that the rounds before them made. Texts of our own. */
import { describe, expect, it } from 'vitest'
import type { RoundsMotif } from '../../../shared-types/project'
import { workedMotif } from './written-motif'

const RING: RoundsMotif['foundation'] = { ring: 'adjustable' }

function made(...rounds: string[]) {
  const { account } = workedMotif(rounds, RING)
  const { shape, petals, overTips, overValleys, anchors } = account!
  return { account: account!, told: [shape, petals], overTips, overValleys, anchors }
}

/** Rounds of dc with so many corners, from groups in the ring, and a round of sc over them. */
function polygon(corners: number, rounds: number): string[] {
  const group = corners > 4 ? 2 : 3
  const texts = [
    `ch 3, ${group - 1} dc in ring, ch 2, *${group} dc in ring, ch 2; rep from * ${corners - 2} more times, join with sl st in top of ch-3`,
  ]
  for (let round = 2; round <= rounds; round++)
    texts.push(
      'ch 3, dc in each dc around, working (dc, ch 2, dc) in each ch-2 sp, join with sl st in top of ch-3',
    )
  return [...texts, 'ch 1, sc in each dc around, working 3 sc in each ch-2 sp, join with sl st in first sc']
}

/** Shells over so many stitches each, all round. */
const shells = (stitches: number, over: 4 | 5 | 6): string => {
  const [before, behind] = [over === 6 ? 2 : 1, over === 4 ? 1 : 2]
  const repeats = stitches / over
  return `ch 1, *sc in next sc, sk ${before}, 5 dc in next sc, sk ${behind}; rep from * ${repeats - 1} more times, join with sl st in first sc`
}
const PICOTS = (repeats: number): string =>
  `ch 1, *sc in next 3 sc, ch 3, sl st in third ch from hook; rep from * ${repeats - 1} more times, join with sl st in first sc`

/** mm that a round of dc is high: 1.91 stitches of 20 in 100 mm, squatter as these rows are. */
const DC = { least: 7, most: 11 }

describe('M14 edgings of scallops', () => {
  it.each([
    ['square', 4, 4, 4],
    ['pentagon', 5, 4, 5],
    ['hexagon', 6, 4, 6],
  ] as const)('a %s keeps its sides under shells all round', (_, corners, rounds, over) => {
    const plain = polygon(corners, rounds)
    const before = made(...plain)
    expect(before.told).toEqual(['straight', corners])
    const stitches = before.account.rounds.at(-1)!.stitches
    expect(stitches % over).toBe(0)
    const edged = made(...plain, shells(stitches, over))
    expect(edged.told).toEqual(['straight', corners])
    const grows = (edged.overValleys - before.overValleys) / 2
    expect(grows).toBeGreaterThan(DC.least)
    expect(grows).toBeLessThan(DC.most)
    expect(edged.anchors.filter(({ kind }) => kind === 'corner')).toHaveLength(corners)
    // Joins are where they were: no corner has moved to another place of the motif.
    const at = (anchors: typeof edged.anchors) =>
      anchors
        .filter(({ kind }) => kind === 'corner')
        .map(({ x, y }) => Math.round((Math.atan2(x, -y) * 180) / Math.PI))
    expect(at(edged.anchors)).toEqual(at(before.anchors))
  })

  it.each([
    ['square', 4, 4, 4],
    ['hexagon', 6, 4, 6],
  ] as const)(
    'a %s under shells is round at its corners, as far out as its stitches',
    (_, corners, rounds, over) => {
      const plain = polygon(corners, rounds)
      const stitches = made(...plain).account.rounds.at(-1)!.stitches
      const { account, overTips, overValleys, anchors } = made(...plain, shells(stitches, over))
      const sharp = overValleys / Math.cos(Math.PI / corners)
      expect(overTips).toBeLessThan(sharp - 1)
      // As far as its stitches reach, to half of one: corners under a shell are not all alike.
      const reach = account.rounds.at(-1)!.outerRadius
      expect(overTips / 2 - reach).toBeGreaterThan(-2.5)
      expect(overTips / 2 - reach).toBeLessThan(3)
      const radii = account.outline.map(({ x, y }) => Math.hypot(x, y))
      expect(Math.max(...radii)).toBeCloseTo(overTips / 2, 6)
      expect(Math.min(...radii)).toBeCloseTo(overValleys / 2, 6)
      // In the middle of a side it runs straight, and it is nowhere hollow.
      const corner = anchors.find(({ id }) => id === 'corner-1')!
      const middle = anchors.find(({ id }) => id === 'side-1-2')!
      const across = Math.hypot(middle.x, middle.y)
      const out = account.outline.map(({ x, y }) => (x * middle.x + y * middle.y) / across)
      expect(Math.max(...out)).toBeCloseTo(overValleys / 2, 6)
      expect(out.filter((far) => Math.abs(far - overValleys / 2) < 1e-6).length).toBeGreaterThan(3)
      expect(Math.hypot(corner.x, corner.y)).toBeCloseTo(overTips / 2, 6)
      account.outline.forEach((point, i) => {
        const next = account.outline[(i + 1) % account.outline.length]!
        const after = account.outline[(i + 2) % account.outline.length]!
        const turn = (next.x - point.x) * (after.y - next.y) - (next.y - point.y) * (after.x - next.x)
        expect(turn).toBeGreaterThan(-1e-6)
      })
    },
  )

  it('a square keeps its sides under picots in every third stitch', () => {
    const plain = polygon(4, 4)
    const before = made(...plain)
    const stitches = before.account.rounds.at(-1)!.stitches
    const edged = made(...plain, PICOTS(Math.floor(stitches / 3)))
    expect(edged.told).toEqual(['straight', 4])
    expect(edged.overValleys - before.overValleys).toBeLessThan(2 * 12)
  })

  const DISC = (rounds: number): string[] => [
    'ch 3, 11 dc in ring, join with sl st in top of ch-3 (12)',
    'ch 3, dc in same st, 2 dc in each dc around, join with sl st in top of ch-3 (24)',
    ...Array.from(
      { length: rounds - 2 },
      (_, k) =>
        `ch 3, dc in same st, dc in next ${k + 1} dc, *2 dc in next dc, dc in next ${k + 1} dc; rep from * 10 more times, join with sl st in top of ch-3`,
    ),
  ]

  it('a circle with many small shells is round, as far as they reach', () => {
    const before = made(...DISC(6))
    const edged = made(
      ...DISC(6),
      'ch 1, *sc in next dc, sk 1, 4 dc in next dc, sk 1; rep from * 17 more times, join with sl st in first sc',
    )
    expect(edged.told).toEqual(['round', 0])
    const grows = (edged.overTips - before.overTips) / 2
    expect(grows).toBeGreaterThan(DC.least)
    expect(grows).toBeLessThan(DC.most)
    // Who sees it as a flower may say so.
    expect(edged.account.shapes).toContain('petals')
  })

  it('few large petals on a round centre are a flower', () => {
    const flower = made(
      ...DISC(2),
      'ch 1, *sc in next dc, sk 1, 7 tr in next dc, sk 1; rep from * 5 more times, join with sl st in first sc',
    )
    expect(flower.told).toEqual(['petals', 6])
  })

  it('points on the corners of a small hexagon are those of a star', () => {
    const star = made(
      'ch 3, dc in ring, ch 2, *2 dc in ring, ch 2; rep from * 4 more times, join with sl st in top of ch-3',
      'ch 1, *sc in next 2 dc, (sc, hdc, dc, tr, ch 3, tr, dc, hdc, sc) in next ch-2 sp; rep from * 5 more times, join with sl st in first sc',
    )
    expect(star.told).toEqual(['petals', 6])
  })
})
