/** Motifs, half motifs and fillers are counted one way, and only what there is is spoken of. */
import { describe, expect, it } from 'vitest'
import { planProject } from '../../../src-core/plan'
import { leftWords, madeWords, madeYarnWords } from '../../../src-core/progress/words'
import { othersWords, piecesWords } from '../../../src-core/progress/pieces'
import { hexagons } from '../edging/helpers'
import type { Project } from '../../../shared-types/project'

const counts = (more: { fillers?: number; halves?: number }) => ({
  counts: { motifs: 20, byColourway: {}, ...more },
})

describe('pieces of a work', () => {
  it.each([
    [{ halves: 14 }, '12 half motifs', '12 motifs and half motifs', '1 motif or half motif'],
    [{ fillers: 6 }, '12 fillers', '12 motifs and fillers', '1 motif or filler'],
    [
      ...[{ fillers: 6, halves: 2 }, '12 fillers and half motifs'],
      ...['12 motifs, fillers and half motifs', '1 motif, filler or half motif'],
    ],
    [{}, null, '12 motifs', '1 motif'],
  ] as const)('%j: %s', (more, others, pieces, one) => {
    if (others !== null) expect(othersWords(counts(more as object), 12)).toBe(others)
    expect(piecesWords(counts(more as object), 12)).toBe(pieces)
    expect(piecesWords(counts(more as object), 1)).toBe(one)
  })

  it('a blanket with halves alone: made, left and bought for speak of half motifs, and of no fillers', () => {
    const rings = hexagons(2, {})
    const layout = {
      ...{ kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns: 4, rows: 5 },
      ...{ alternateRows: 'oneFewer', halves: true },
    } as Project['layout']
    const made = { '1,1': '2026-11-30', '1,2': '2026-11-30', '2,left': '2026-11-30' }
    const plan = planProject({ ...rings, layout, made })
    expect(plan.halves).toHaveLength(4)
    expect(madeWords(plan, 'US')).toContain('2 of 18 motifs made')
    expect(madeWords(plan, 'US')).toContain('1 of 4 half motifs made')
    expect(leftWords(plan)).toMatch(/^16 motifs, 3 half motifs, /)
    expect(madeYarnWords(plan.progress, 'US', plan)).toContain('3 motifs and half motifs;')
  })
})
