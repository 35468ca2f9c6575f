/** The example with a filler of its own in each of two kinds of openings, counted by hand. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { fillersByMotif } from '../../../src-core/figures/filler-list'
import { projectSentence, sentenceText } from '../../../src-core/figures/sentence'
import { planProject } from '../../../src-core/plan'

const plan = planProject(
  JSON.parse(readFileSync('examples/causeway-lap-blanket.petalyard', 'utf8')) as Project,
)

describe('a blanket of large and small rounds with two kinds of pebbles', () => {
  it('has five rows of 5 large ones and four of 4 small ones between them', () => {
    const count = (id: string): number => plan.motifs.filter(({ motif }) => motif === id).length
    expect([count('cobble'), count('stone')]).toEqual([5 * 5, 4 * 4])
    expect(plan.motifs).toHaveLength(41)
    expect(plan.pieces).toBe(1)
    expect(plan.single).toBe(0)
    // Large ones repeat A, B, C over their own places: 25 are 9, 8 and 8.
    expect(plan.counts.byColourway).toEqual({ a: 9, b: 8, c: 8, d: 16 })
  })

  it('is joined where rounds touch: 20 times within rows, and each small one to its four large ones', () => {
    // Five rows of 5 have 4 joins each; small ones of a row stand apart.
    expect(plan.joins).toHaveLength(5 * 4 + 16 * 4)
  })

  it('has a small pebble over and under each small round, and two larger ones between two of them', () => {
    // Over and under each of the 16 stands one where three rounds meet. Between two small ones of a row lie the long
    // openings, 3 in each of 4 rows, with one at both ends.
    const told = fillersByMotif(plan).map(({ account, fillers }) => [account.id, fillers.length])
    expect(Object.fromEntries(told)).toEqual({ pebble: 2 * 16, bead: 2 * 3 * 4 })
    expect(plan.fillers).toHaveLength(56)
    // Three joins each, all of them round fillers among three rounds: 84 + 168 in all.
    for (const { joins } of plan.fillers) expect(joins).toBe(3)
    expect(plan.counts.joins).toBe(84 + 56 * 3)
  })

  it('measures five large rounds across, and is told so', () => {
    expect(plan.size.width).toBeCloseTo(5 * 160, 6)
    // From row to row of large ones the middle of a small one lies at 120 mm from both, 80 aside: 89.4 mm down.
    // Outlines are polygons: each of the eight steps may be 0.05 mm short.
    expect(Math.abs(plan.size.height - 8 * Math.sqrt(120 ** 2 - 80 ** 2) - 160)).toBeLessThan(8 * 0.05)
    expect(sentenceText(projectSentence(plan))).toContain('with 56 fillers')
  })

  it('has nothing to warn of', () => {
    expect(plan.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })
})
