/** M34, M43: closing the ends of what is joined in the round: laid flat, front and back are seamed along their edges. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { closingsTold, heightWords, openWords } from '../../../src-core/figures/closing-words'
import { SEAM_YARN } from '../../../src-core/materials/constants'
import { planProject } from '../../../src-core/plan'
import { runs } from '../../runs'

const SQUARE = { outline: 'square', sideToSide: 60 } as const
const FLOWER = { outline: 'petals', petals: 6, overTips: 80, overValleys: 56 } as const

const tube = (
  layout: Partial<BlanketLayout>,
  motif: typeof SQUARE | typeof FLOWER = SQUARE,
  more: Partial<Project> = {},
): Project => ({
  ...{ format: 'petalyard-project', version: 1 },
  gauge: { stitch: 'sc', stitches: 20, rows: 22, over: 100, hook: 4 },
  yarns: [
    { id: 'y', name: 'Moss', ballGrams: 50, ballMetres: 125 },
    { id: 'z', name: 'Rust', ballGrams: 50, ballMetres: 125 },
  ],
  motifs: [{ id: 'm', kind: 'measured', minutes: 10, ...motif }],
  joining: { rule: 'edges', yarn: 'y' },
  allowance: { wastePercent: 0, tail: 100 },
  ...more,
  layout: {
    ...{ kind: 'blanket', motif: 'm', arrangement: 'straight-rows', columns: 8, rows: 4, inTheRound: true },
    ...layout,
  },
})
const ZIGZAG = { arrangement: 'offset-rows', columns: 6, rows: 3, turn: 45 } as const

describe('closed ends of a round', () => {
  it('take half the circumference where they are straight', () => {
    const { closed, round } = planProject(tube({ closedEnds: 'both' }))
    expect(closed).toHaveLength(2)
    // Eight squares of 60 mm: four at the front. 5 mm to a stitch.
    for (const end of closed!)
      expect(end).toMatchObject({ depth: 0, length: 240, stitches: 48, seam: 'whip', yarn: 'y' })
    expect(closed!.map(({ end }) => end)).toEqual(['bottom', 'mouth'])
    expect(round!.flat).toBe(240)
  })

  it('take a side for each side of the squares at the front, where these stand on a corner', () => {
    const { closed, round, size } = planProject(tube({ ...ZIGZAG, closedEnds: 'bottom' }))
    // Six points, two sides each, one half of them at the front: 6 · 60 mm, not the 6 · 60/√2 straight across.
    expect(closed).toHaveLength(1)
    expect(closed![0]!.length / (6 * 60)).toBeCloseTo(1, 1)
    expect(closed![0]!.length).toBeGreaterThan(1.38 * round!.flat)
    // From tip to dip half a diagonal.
    expect(closed![0]!.depth / (30 * Math.SQRT2)).toBeCloseTo(1, 1)
    expect(round!.depth.mouth).toBeCloseTo(round!.depth.bottom, 2)
    expect(size.height).toBeCloseTo(2 * 60 * Math.SQRT2, 0)
  })

  it('are sewn straight over an edging that levels them, in its yarn', () => {
    const edging: BlanketLayout['edging'] = { style: 'level', rounds: ['sc'], yarn: 'z', ends: 'both' }
    const plan = planProject(tube({ ...ZIGZAG, closedEnds: 'bottom', edging }))
    expect(plan.closed![0]).toMatchObject({ depth: 0, yarn: 'z' })
    expect(plan.closed![0]!.length).toBeCloseTo(plan.round!.flat, 6)
    // At the mouth alone it leaves the bottom as it is.
    const mouth = planProject(tube({ ...ZIGZAG, closedEnds: 'bottom', edging: { ...edging, ends: 'mouth' } }))
    expect(mouth.closed![0]).toMatchObject({ yarn: 'y' })
    expect(mouth.closed![0]!.length).toBeGreaterThan(1.38 * mouth.round!.flat)
    expect(mouth.round!.depth.mouth).toBe(0)
    expect(heightWords(mouth)).toMatch(/over the tips, .* without them \(.* at the bottom\)$/)
  })

  it('cost three times their length of yarn, two tails, two ends and 0.08 min for each stitch', () => {
    const [open, closed] = (['none', 'both'] as const).map((closedEnds) => planProject(tube({ closedEnds })))
    const metres = (2 * (SEAM_YARN.whip * 240 + 2 * 100)) / 1000
    const need = closed!.yarns.find(({ id }) => id === 'y')!
    expect(open!.yarns.find(({ id }) => id === 'y')).toBeUndefined()
    expect(need.grams.expected).toBeCloseTo((metres * 50) / 125, 6)
    expect(closed!.closed!.reduce((sum, each) => sum + each.metres, 0)).toBeCloseTo(metres, 9)
    expect(closed!.ends - open!.ends).toBe(4)
    expect(closed!.time!.joins - open!.time!.joins).toBeCloseTo(2 * 48 * 0.08, 9)
    expect(open!.closed).toBeUndefined()
  })

  it('are told with their folds, and what stays open', () => {
    const of = (layout: Partial<BlanketLayout>) => planProject(tube(layout))
    const even = of({ closedEnds: 'bottom' })
    expect(closingsTold(even, 'US')).toEqual([
      [
        'Close the bottom',
        'Lay it flat with both folds between motifs, edge on edge, and sew front and back together with whip stitch in Moss straight across: 240 mm, about 48 stitches, 0.9 m of yarn with its tails.',
      ],
    ])
    expect(openWords(even)).toBe('The mouth stays open.')
    const odd = of({ closedEnds: 'both', columns: 7 })
    expect(closingsTold(odd, 'US')[0]![1]).toContain('the other down the middle of one')
    expect(closingsTold(odd, 'US')[1]![1]).toMatch(/Put the pad in before you close it\.$/)
    expect(openWords(odd)).toBe('')
    expect(openWords(of({}))).toContain('Both ends are open')
    expect(heightWords(even)).toBe('')
  })

  it('are left alone by what is not joined in the round, and told of a missing yarn', () => {
    const flat = planProject(tube({ closedEnds: 'both', inTheRound: false }))
    expect(flat.closed).toBeUndefined()
    const { findings } = planProject(tube({ closedEnds: 'both' }, SQUARE, { joining: { rule: 'edges' } }))
    expect(findings.filter(({ code }) => code === 'yarn/no-closing-yarn')).toHaveLength(1)
  })

  it('are never shorter than straight across, and add just their yarn, whatever is laid', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(SQUARE, FLOWER),
        fc.constantFrom('straight-rows', 'offset-rows'),
        fc.integer({ min: 3, max: 12 }),
        fc.integer({ min: 1, max: 5 }),
        fc.constantFrom(0, 30, 45),
        fc.constantFrom('follow', 'bridge', 'level', null),
        fc.constantFrom('both', 'mouth', 'bottom'),
        (motif, arrangement, columns, rows, turn, style, ends) => {
          const layout = { arrangement, columns, rows, turn } as const
          const edging = style ? { style, ends, rounds: ['sc'], yarn: 'y' } : undefined
          const [open, closed] = (['none', 'both'] as const).map((closedEnds) =>
            planProject(tube({ ...layout, closedEnds, ...(edging && { edging }) }, motif)),
          )
          if (!closed!.round || closed!.pieces !== 1) return
          const all = closed!.closed ?? []
          for (const { length, depth } of all) {
            expect(length).toBeGreaterThan(closed!.round.flat - 1e-6)
            // Straight across it is no longer, and only there.
            expect(length < closed!.round.flat + 1e-6).toBe(depth === 0)
          }
          const grams = (plan: typeof open) => plan!.yarns.reduce((sum, each) => sum + each.grams.expected, 0)
          const metres = all.reduce((sum, each) => sum + each.metres, 0)
          expect(grams(closed) - grams(open)).toBeCloseTo(metres * 0.4, 6)
          expect(closed!.size).toEqual(open!.size)
        },
      ),
      { numRuns: runs(60) },
    )
  })
})
