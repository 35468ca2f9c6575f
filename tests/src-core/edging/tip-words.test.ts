/** M35: which tips and dips of an edge that goes in and out take more stitches of a plain round, and which fewer. */
import { describe, expect, it } from 'vitest'
import type { EdgingRound } from '../../../shared-types/plan'
import type { BlanketLayout, MeasuredMotif, Project } from '../../../shared-types/project'
import { cornerWords, plainRoundsWords } from '../../../src-core/edging/words'
import { planProject } from '../../../src-core/plan'

const told = (...bends: readonly (readonly [count: number, more: number])[]): string =>
  cornerWords({ bends: bends.map(([count, more]) => ({ count, more })) } as unknown as EdgingRound)

const bordered = (motif: Partial<MeasuredMotif>, layout: Partial<BlanketLayout>): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  gauge: { stitch: 'sc', stitches: 18, rows: 20, over: 100 },
  motifs: [{ id: 'm', kind: 'measured', ...motif } as MeasuredMotif],
  joining: { rule: 'tips' },
  layout: {
    ...{ kind: 'blanket', motif: 'm', edging: { style: 'follow', rounds: ['sc', 'dc'] } },
    ...layout,
  } as BlanketLayout,
})

describe('the tips and dips of a border', () => {
  it('are all alike, or told by how sharp they are', () => {
    expect(told([24, 1], [18, -1])).toBe(
      ', 2 in one place at each of 24 outer tips and 2 together at each of 18 dips',
    )
    expect(told([1, 2])).toBe(', 3 in one place at the outer tip')
    expect(told([28, 1], [8, 2], [14, -3])).toBe(
      ', 3 in one place at each of the 8 most pointed outer tips, 2 in one place at each of the 28 bluntest outer tips and 3 together with 1 stitch skipped before them at each of 14 dips',
    )
    expect(told([22, 2], [9, -1], [10, -2], [1, -3])).toBe(
      ', 3 in one place at each of 22 outer tips, 3 together with 1 stitch skipped before them at the narrowest dip, 3 together at each of the 10 less narrow dips and 2 together at each of the 9 widest dips',
    )
    // Of one line among several nobody knows how many.
    expect(told([0, 1], [0, -1])).toBe(', 2 in one place at each outer tip and 2 together at each dip')
    expect(told([0, 2], [0, 1])).toBe(
      ', 3 in one place at each of the most pointed outer tips and 2 in one place at each of the bluntest outer tips',
    )
  })

  it('are told as corners where the most pointed of several kinds stand there, by name where these have names', () => {
    const bends = [
      { count: 2, more: 4, corners: [1, 2] },
      { count: 15, more: 1 },
    ]
    const round = { bends } as unknown as EdgingRound
    expect(cornerWords(round)).toBe(
      ', 5 in one place at each of 2 corners and 2 in one place at each of the 15 other outer tips',
    )
    expect(cornerWords(round, (corner) => `corner ${corner + 1}`)).toBe(
      ', 5 in one place at corner 2 and corner 3 and 2 in one place at each of the 15 other outer tips',
    )
    // All alike: nothing is to be told apart.
    expect(
      cornerWords({ bends: [{ count: 4, more: 2, corners: [0, 1, 2, 3] }] } as unknown as EdgingRound),
    ).toBe(', 3 in one place at each of 4 outer tips')
  })

  it('are those that stand out and lie in between motifs that stand point to point', () => {
    // Squares on a tip, 5 and 4 in 7 rows: 5 tips each at the top and bottom, and the outer tips of four long rows at each side.
    const plan = planProject(
      bordered(
        { outline: 'square', sideToSide: 90 },
        { arrangement: 'offset-rows', alternateRows: 'oneFewer', turn: 45, columns: 5, rows: 7 },
      ),
    )
    const rounds = plainRoundsWords(plan.edging!.rounds, plan)
    expect(rounds).toHaveLength(2)
    expect(rounds[0]).toMatch(
      /^Round 1: \d+ stitches, 3 in one place at each of (\d+) outer tips and 3 together at each of (\d+) dips$/,
    )
    const [tips, dips] = /of (\d+) outer tips and 3 together at each of (\d+) dips/.exec(rounds[0]!)!.slice(1)
    // Five tips at the top and bottom and one at both ends of the four long rows, corners once; a dip between each two.
    expect([Number(tips), Number(dips)]).toEqual([2 * 5 + 2 * 4, 2 * 4 + 2 * 3])
  })
})
