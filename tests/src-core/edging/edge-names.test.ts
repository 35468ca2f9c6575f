/** Edges by what people call them: where each hole lies, and what is said of it in every place. */
import { describe, expect, it } from 'vitest'
import { edgeNames, edgeSigns } from '../../../src-core/edging/edge-names'
import { edgeTitle, plainByLine, plainRoundsWords } from '../../../src-core/edging/words'
import { contains, distance } from '../../../src-core/geometry/points'
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
      'around hole 1 in rows 2–5',
      'around hole 2 in rows 3 and 4',
      'around hole 3 in row 6',
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
      'around hole 1 in row 3',
      'around hole 2 in row 3',
      'around the outside',
    ])
    const [first, second] = edgeNames(plan).flatMap((name, i) =>
      name.includes('hole') ? [{ name, x: plan.edgingLines[i]![0]!.x }] : [],
    )
    expect(first!.x < second!.x).toBe(first!.name < second!.name)
  })
})

describe('signs of edges on the drawing', () => {
  it('stand inside of the holes that their names mean, clear of every edge', () => {
    const plan = without('3,3', '4,3', '6,5', '2,7', '3,7', '4,7', '5,7')
    const signs = edgeSigns(plan)
    expect(signs.map(({ text, short }) => `${text} ${short}`).toSorted()).toEqual([
      ...['hole 1 1', 'hole 2 2', 'hole 3 3'],
    ])
    for (const { line, text, room, ...at } of signs) {
      expect(edgeNames(plan)[line]).toContain(`around ${text} in `)
      expect(contains(plan.edgingLines[line]!, at)).toBe(true)
      for (const point of plan.edgingLines[line]!)
        expect(distance(point, at)).toBeGreaterThanOrEqual(room / 2 - 1e-9)
    }
  })

  it('of the only hole has no number, and without holes there are none', () => {
    expect(edgeSigns(without('3,3')).map(({ text, short }) => [text, short])).toEqual([['hole', '']])
    expect(edgeNames(without('3,3'))).toContain('around the hole in row 3')
    expect(edgeSigns(without())).toEqual([])
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
