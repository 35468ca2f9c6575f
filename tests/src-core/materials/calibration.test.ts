import { describe, expect, it } from 'vitest'
import { materials } from '../../../src-core/materials/materials'
import { codes, flower, flowerAccount, input, project, yarn } from './helpers'

describe('M42, M44 calibration', () => {
  const joining = { rule: 'bridge', bridgeChains: 3, yarn: 'y1' } as const
  const layout = {
    kind: 'blanket' as const,
    edging: { style: 'follow' as const, rounds: ['sc'], yarn: 'y1' },
  }
  const withLayout = project({ joining, layout })
  const edgingBase = { length: 4000, outerCorners: 4, tips: 40, chord: 100 }

  it('M42 corrects joins and edging by a weighed motif, ±5 %', () => {
    const plain = input({
      project: withLayout,
      motif: flower,
      account: flowerAccount,
      joinOperations: 180,
      edgingBase,
    })
    // Stitches and tails say 7 m + 0.6 m = 3.04 g; it weighs 10 % more.
    const shares = { centre: 1 / 7, petals: 6 / 7 }
    const weighed = { motifs: 10, grams: 33.44, resolution: 0, shares }
    const before = yarn(materials(plain), 'y1')
    const after = yarn(materials({ ...plain, motif: { ...flower, weighed } }), 'y1')
    expect(after.parts.edging / before.parts.edging).toBeCloseTo(1.1, 9)
    expect(after.parts.joins / before.parts.joins).toBeCloseTo(1.1, 9)
    const modelled = after.parts.edging + after.parts.joins
    expect(after.grams.high - after.grams.expected).toBeCloseTo(modelled * 0.05 * 1.1, 9)
  })

  it('M44 scales fillers and further motifs that only their stitches tell of, and none that was weighed', () => {
    const two = project({
      colourways: [
        { id: 'c1', code: 'A', motif: 'm1', yarns: { centre: 'y1', petals: 'y1' } },
        { id: 'c2', code: 'B', motif: 'm2', yarns: { centre: 'y2', petals: 'y2' } },
      ],
    })
    const further = { ...flower, id: 'm2' }
    const made = (other: typeof further, weighed?: { motifs: number; grams: number; resolution: number }) =>
      yarn(
        materials(
          input({
            project: two,
            motif: { ...flower, ...(weighed && { weighed }) },
            account: flowerAccount,
            others: [
              {
                ...{ motif: other, account: { ...flowerAccount, id: 'm2' } },
                counts: { motifs: 10, byColourway: { c2: 10 } },
              },
            ],
          }),
        ),
        'y2',
      )
    // 7 m and, all in one yarn, 0.3 m of tails are 2.92 g; it weighs 10 % more.
    const tenMore = { motifs: 10, grams: 32.12, resolution: 0 }
    const [plain, calibrated] = [made(further), made(further, tenMore)]
    expect(calibrated.parts.motifs / plain.parts.motifs).toBeCloseTo(1.1, 9)
    expect(calibrated.parts.motifs).toBeCloseTo(10 * 7 * 0.4 * 1.1, 9)
    const spreadOf = ({ grams, parts }: typeof plain) => (grams.high - grams.expected) / (1.1 * parts.motifs)
    expect(spreadOf(calibrated)).toBeLessThan(spreadOf(plain))
    const weighed = { ...further, weighed: { motifs: 1, grams: 3, resolution: 0 } }
    expect(made(weighed, tenMore).parts.motifs).toBeCloseTo(30, 9)
    expect(made({ ...further, unravelled: { centre: 1, petals: 5 } }, tenMore).parts.motifs).toBeCloseTo(
      24,
      9,
    )
  })

  it('M42 does not believe a weight that is far from the stitches, and says so', () => {
    const weighed = { motifs: 10, grams: 334.4, resolution: 0 }
    const far = input({ project: withLayout, account: flowerAccount, joinOperations: 180, edgingBase })
    const found = materials({ ...far, motif: { ...flower, weighed } })
    expect(codes(found)).toContain('yarn/weight-far-from-stitches')
    const uncalibrated = materials({ ...far, motif: flower })
    expect(yarn(found, 'y1').parts.edging).toBeCloseTo(yarn(uncalibrated, 'y1').parts.edging, 9)
  })
})
