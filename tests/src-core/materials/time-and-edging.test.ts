/** M43 time and ends, M35 the style of an edging. */
import { describe, expect, it } from 'vitest'
import { materials } from '../../../src-core/materials/materials'
import { resolveGauge } from '../../../src-core/stitches/gauge'
import { timeWords } from '../../../src-core/figures/time-words'
import { codes, daisy, flower, flowerAccount, input, project } from './helpers'

describe('M43 time and ends', () => {
  it('M43 adds minutes per motif, per join, edging and 1 minute per end', () => {
    const found = materials(
      input({
        project: project({ joining: { rule: 'tips', minutes: 2 } }),
        joinOperations: 180,
      }),
    )
    expect(found.ends).toBe(400)
    expect(found.time).toMatchObject({ motifs: 1500, joins: 360, edging: 0, cord: 0, ends: 400 })
    expect(timeWords(found.time!, 'US')).toBe(
      'motifs 25 h, joins 6 h at 2 min each, ends 6 h 40 min at 1 min each (assumed)',
    )
    // Where nobody says how long a join takes, a minute is assumed, and it says so.
    const silent = materials(input({ project: project({ joining: { rule: 'tips' } }), joinOperations: 180 }))
    expect(timeWords(silent.time!, 'UK')).toContain('joins 3 h at 1 min each (assumed)')
    expect(found.minutes?.expected).toBeCloseTo(100 * 15 + 180 * 2 + 400, 9)
    expect(found.findings.find((finding) => finding.code === 'time/ends')?.message).toContain('400 ends')
  })

  it('M43 counts a join of a seam as any other: a long seam closes many', () => {
    const found = materials(
      input({
        project: project({ joining: { rule: 'seam', minutes: 2 } }),
        joinOperations: 180,
        seams: { length: 9000, count: 18 },
      }),
    )
    const tips = materials(
      input({ project: project({ joining: { rule: 'tips', minutes: 2 } }), joinOperations: 180 }),
    )
    // Each of its 18 pieces of yarn has two ends more to weave in, a minute each.
    expect(found.minutes?.expected).toBeCloseTo(tips.minutes!.expected + 18 * 2, 9)
  })

  it('M43 counts neighbours in one yarn as one section, and a colour that comes back as another', () => {
    const colourways = [{ id: 'c1', yarns: { centre: 'y1', petals: 'y1' } }]
    expect(materials(input({ project: project({ colourways }) })).ends).toBe(200)
    const back = { ...flower, rounds: [...(flower.rounds ?? []), { slot: 'centre', work: 'sc around' }] }
    expect(materials(input({ motif: back })).ends).toBe(600)
  })

  it('M43 tells no time where a motif was never timed, and says so', () => {
    const found = materials(input({ motif: { ...daisy, minutes: undefined } }))
    expect(found.minutes).toBeNull()
    expect(found).not.toHaveProperty('time')
    expect(codes(found)).toContain('time/no-minutes')
  })

  it('M43 adds the time of an edging: 3 s for a sc of two loops', () => {
    const layout = {
      kind: 'blanket' as const,
      edging: { style: 'follow' as const, rounds: ['sc'], yarn: 'y1' },
    }
    const gauge = resolveGauge({ stitches: 20 }, 'US')
    const edgingBase = { length: 4000, outerCorners: 4, tips: 40, chord: 100 }
    const edged = materials(input({ gauge, project: project({ layout }), edgingBase }))
    const plain = materials(input({ gauge }))
    const stitches = edged.edging?.rounds[0]?.stitches ?? 0
    const more = (edged.minutes?.expected ?? 0) - (plain.minutes?.expected ?? 0)
    expect(more).toBeCloseTo(stitches * 0.05 + 2, 6)
    expect(edged.ends).toBe(402)
  })
})

describe('M35 style of an edging', () => {
  it('M35 follows straight sides and bridges tips where no style is named', () => {
    const layout = { kind: 'blanket' as const, edging: { rounds: ['sc'], yarn: 'y1' } }
    const edgingBase = { length: 4000, outerCorners: 4, tips: 40, chord: 100 }
    const edged = (shape: 'straight' | 'petals') =>
      materials(
        input({ project: project({ layout }), account: { ...flowerAccount, shape, metres: {} }, edgingBase }),
      ).edging
    expect(edged('straight')?.style).toBe('follow')
    expect(edged('petals')?.style).toBe('bridge')
  })
})
