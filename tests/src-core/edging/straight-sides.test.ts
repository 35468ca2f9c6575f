/** M35: the straight sides of half motifs are edges to work along, in every style of an edging. */
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, EdgingStyle, Hand, Project } from '../../../shared-types/project'
import { gapsToNext } from '../../../src-core/edging/bridge-spans'
import { planProject } from '../../../src-core/plan'
import { firstRoundWords } from '../../../src-main/paper/words-materials'

/** mm. Tip to tip; 20 sc in 10 cm. */
const ACROSS = 80
const WIDTH = 5

const flowers = (
  columns: number,
  rows: number,
  style: EdgingStyle,
  more: Partial<BlanketLayout> & { readonly hand?: Hand } = {},
): Project => {
  const { hand = 'right', ...layout } = more
  return {
    format: 'petalyard-project',
    version: 1,
    hand,
    gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100 },
    yarns: [{ id: 'y', name: 'Cream', ballGrams: 100, ballMetres: 200 }],
    motifs: [{ id: 'm', name: 'Flower', kind: 'measured', outline: 'petals', petals: 6, overTips: ACROSS }],
    joining: { rule: 'tips' },
    layout: {
      ...{ kind: 'blanket', motif: 'm', arrangement: 'offset-rows', columns, rows, halves: true },
      edging: { style, rounds: ['sc'], yarn: 'y' },
      ...layout,
    },
  }
}

const sum = (counts: readonly number[]): number => counts.reduce((total, each) => total + each, 0)

describe('M35 the straight sides of half motifs under a border that bridges', () => {
  it.each([
    [4, 5],
    [5, 6],
    [12, 30],
  ])(
    'M35 are worked along at the gauge, with chains across dips alone (%i columns, %i rows)',
    (columns, rows) => {
      for (const hand of ['right', 'left'] as const) {
        const { halves, edging } = planProject(flowers(columns, rows, 'bridge', { hand }))
        const [round] = edging!.rounds
        const [gaps, straight] = [round!.gaps!.flat(), round!.straight!.flat()]
        const sides = straight.filter((count) => count > 0)
        // Every half stands at a side: each of its straight sides takes 80 mm less the stitches at its ends.
        expect(halves.length).toBeGreaterThan(2)
        expect(sides).toEqual(halves.map(() => ACROSS / WIDTH - 1))
        expect(round!.stitches).toBe(gaps.length + sum(straight))
        expect(round!.chains).toBe(sum(gaps))
        expect(gaps.filter((_, i) => straight[i])).toEqual(sides.map(() => 0))
        // No gap is longer than from the tip of one motif to that of the next.
        expect(Math.max(...gaps) * WIDTH).toBeLessThan(1.2 * ACROSS)
      }
    },
  )

  it('M35 are told in words that make what the round has', () => {
    const plan = planProject(flowers(4, 5, 'bridge'))
    const words = firstRoundWords(plan.edging!, { plan, terms: 'US', units: 'metric' }, 'sc')
    const [, many, more] = /straight side of each of (\d+) half motifs (\d+) more sc/.exec(words)!.map(Number)
    expect(many).toBe(plan.halves.length)
    const { gaps, stitches } = plan.edging!.rounds[0]!
    expect(words).toContain('at both ends of the straight side of each half motif')
    expect(gaps!.flat().length + more! * plan.halves.length).toBe(stitches)
  })

  it('M35 have their stitches in a round that written rounds are worked into', () => {
    const plan = planProject(
      flowers(4, 5, 'bridge', {
        edging: {
          ...{ style: 'bridge', yarn: 'y', rounds: ['sc'] },
          written: [{ work: '*sc in next st; rep from * around' }],
        },
      }),
    )
    const [loop] = plan.edging!.loops!
    const { gaps, straight } = loop!.bridged!
    expect(straight!.filter((count) => count > 0)).toHaveLength(plan.halves.length)
    expect(gaps.length + sum(gaps) + sum(straight!)).toBe(loop!.stitches)
    const [round] = plan.edging!.rounds
    expect(round!.stitches).toBe(gaps.length + sum(straight!))
  })

  it('M35 take the dip of the motif between two of them for one of that motif', () => {
    const plan = planProject(flowers(4, 5, 'bridge'))
    const toNext = gapsToNext(plan, 0)
    const { gaps, straight } = plan.edging!.rounds[0]!
    const across = gaps!.flat().filter((_, i) => !toNext[i] && !straight!.flat()[i])
    // 0.95 of half the way across, in stitches of 5 mm.
    expect(new Set(across)).toEqual(new Set([Math.round((0.95 * ACROSS) / 2 / WIDTH)]))
  })
})

describe('M35 the straight sides of half motifs under other borders', () => {
  it.each(['follow', 'level'] as const)('M35 lie on the line of one that runs so: %s', (style) => {
    const plan = planProject(flowers(5, 6, style))
    const [line] = plan.edgingLines
    for (const { x, y } of plan.halves)
      for (const down of [-0.4, 0, 0.4]) {
        const at = { x, y: y + down * ACROSS }
        const off = Math.min(
          ...line!.map((a, i) => {
            const b = line![(i + 1) % line!.length]!
            const [dx, dy] = [b.x - a.x, b.y - a.y]
            const long = dx * dx + dy * dy
            const share =
              long > 0 ? Math.min(1, Math.max(0, ((at.x - a.x) * dx + (at.y - a.y) * dy) / long)) : 0
            return Math.hypot(a.x + share * dx - at.x, a.y + share * dy - at.y)
          }),
        )
        expect(off).toBeLessThan(0.5)
      }
  })
})
