/** M12: what a shell or a group in a space has room for, where it fans out. The motifs are ours; common practice, no source. */
import { describe, expect, it } from 'vitest'
import { accountOf } from '../../../src-core/accounts'
import { fanEdge } from '../../../src-core/motif/rounds/fan-edge'
import { projectOfPage } from '../../../src-core/page/project-of-page'
import { settled } from '../../../src-core/settled'

const crowded = (rounds: string) => {
  const text = rounds
    .split('\n')
    .map((round, i) => `Rnd ${i + 1}: ${round}`)
    .join('\n')
  const project = projectOfPage(text, 'US', 'Motif')!
  const { findings } = accountOf(project, settled(project).motifs[0]!)
  return findings.map(({ code }) => code).filter((code) => /^motif\/petal-(too-)?full$/.test(code))
}

const CIRCLE = `Magic ring, ch 3 (counts as dc), 11 dc in ring, join in top of ch-3.
Ch 3 (counts as dc), dc in same st, 2 dc in each dc around, join in top of ch-3.
Ch 3 (counts as dc), 2 dc in next dc, *dc in next dc, 2 dc in next dc; rep from * around, join in top of ch-3.`

describe('groups that fan out (M12)', () => {
  it.each([
    ['a shell edging', '*Sc in next dc, sk 1, 5 dc in next dc, sk 1; rep from * around, join.'],
    ['wider shells', '*Sc in next dc, sk 2, 7 dc in next dc, sk 2; rep from * around, join.'],
    ['small shells', '*Sl st in next dc, 3 dc in next dc, sk 1; rep from * around, join.'],
  ])('%s on a circle is not too full', (_, edging) => {
    expect(crowded(`${CIRCLE}\n${edging}`)).toEqual([])
  })

  it('groups in the spaces of a round lie flat as the stitches that they are', () => {
    const spaces = `Magic ring, ch 3 (counts as dc), 23 dc in ring, join in top of ch-3.
Ch 5 (counts as dc, ch 2), *sk next dc, dc in next dc, ch 2; rep from * around, join in 3rd ch of ch-5.
*4 dc in next ch-2 sp; rep from * around, join.`
    expect(crowded(spaces)).toEqual([])
  })

  it.each([12, 16])('%i stitches in every second one are too many', (count) => {
    expect(crowded(`${CIRCLE}\n*Sl st in next dc, ${count} dc in next dc; rep from * around, join.`)).toEqual(
      ['motif/petal-too-full'],
    )
  })

  /** Half the circumference of an ellipse by its polygon of many sides. */
  const halfEllipse = (a: number, b: number): number => {
    const steps = 20_000
    const point = (k: number) =>
      [a * Math.cos((Math.PI * k) / steps), b * Math.sin((Math.PI * k) / steps)] as const
    let sum = 0
    for (let k = 1; k <= steps; k++) {
      const [[x, y], [u, v]] = [point(k - 1), point(k)]
      sum += Math.hypot(u - x, v - y)
    }
    return sum
  }

  it.each([
    [20, 10],
    [12, 10],
    [40, 10],
  ])('has half an ellipse for its edge: shells %d mm apart, %d mm high', (apart, high) => {
    const gauge = { width: 4, height: () => high } as unknown as Parameters<typeof fanEdge>[2]
    const shell = (at: number) =>
      ({
        element: { role: 'stitch', stitch: 'dc', countsAs: null },
        base: { x: at, y: 0 },
        top: { x: at, y: high },
        petal: at,
      }) as unknown as Parameters<typeof fanEdge>[0][number]
    const order = [shell(0), shell(apart), shell(2 * apart)]
    const edge = fanEdge([order[1]!], order, gauge)
    expect(Math.abs(edge / halfEllipse(apart / 2, high) - 1)).toBeLessThan(0.001)
  })
})
