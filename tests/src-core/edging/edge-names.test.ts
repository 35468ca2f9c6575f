/** Edges by what people call them: where each hole lies, and what is said of it in every place. */
import { describe, expect, it } from 'vitest'
import { edgeNames } from '../../../src-core/edging/edge-names'
import { edgeTitle, plainByLine, plainRoundsWords } from '../../../src-core/edging/words'
import { planProject } from '../../../src-core/plan'
import { squares } from './helpers'

const without = (...addresses: readonly string[]) => {
  const project = squares(9, 7, { rounds: ['sc', 'hdc'] })
  const motifs = Object.fromEntries(addresses.map((address) => [address, null]))
  return planProject({ ...project, layout: { ...project.layout!, cells: { motifs } } } as typeof project)
}

describe('edges of a blanket with holes', () => {
  it('are named by the rows in which each hole lies', () => {
    const plan = without('3,3', '4,3', '6,5', '2,7', '3,7', '4,7', '5,7')
    const names = [...edgeNames(plan)]
    expect(names.toSorted()).toEqual([
      'around the hole in row 6',
      'around the hole in rows 2–5',
      'around the hole in rows 3 and 4',
      'around the outside',
    ])
    const { edging, edgingLines } = plan
    for (const round of edging!.rounds) {
      const told = plainByLine(round, plan)
      for (const [i, name] of names.entries()) {
        expect(told).toContain(`${round.byLine![i]!} ${name}`)
        // A hole of one square has fewer stitches than the outside.
        if (name.endsWith('row 6')) expect(round.byLine![i]!).toBeLessThan(60)
      }
    }
    expect(edgingLines.map((_, line) => edgeTitle(plan, { line })).join()).not.toMatch(/Edge \d/)
  })

  it('are counted from the left where they lie in the same rows', () => {
    const plan = without('3,7', '3,3')
    expect(edgeNames(plan).toSorted()).toEqual([
      'around the 1st of 2 holes in row 3 from the left',
      'around the 2nd of 2 holes in row 3 from the left',
      'around the outside',
    ])
    const [first, second] = edgeNames(plan).flatMap((name, i) =>
      name.includes('holes') ? [{ name, x: plan.edgingLines[i]![0]!.x }] : [],
    )
    expect(first!.x < second!.x).toBe(first!.name < second!.name)
  })
})

describe('what a dip takes away', () => {
  it('is never more than three together, and the rest of them is skipped beside', () => {
    const told = (more: number): string =>
      plainRoundsWords(
        [
          {
            ...{
              number: 1,
              stitch: 'sc',
              stitches: 90,
              chains: 0,
              length: 1,
              metres: 1,
              height: 1,
              yarn: '',
            },
            bends: [{ count: 1, more }],
          },
        ],
        without(),
      )[0]!
    for (let fewer = 1; fewer < 12; fewer++) {
      const words = told(-fewer)
      const together = Number(/(\d+) together/.exec(words)![1])
      const [, half, side] = /with (\d+) stitch(?:es)? skipped (on each side|before)/.exec(words) ?? []
      const after = Number(/and (\d+) after/.exec(words)?.[1] ?? 0)
      const skipped = Number(half ?? 0) * (side === 'on each side' ? 2 : 1) + after
      expect(together).toBeLessThanOrEqual(3)
      expect(together - 1 + skipped).toBe(fewer)
    }
  })
})
