/** M26: what is tried is the kind of arrangement that was asked for, whatever the rotation was taken from. */
import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { nearest } from '../../../src-core/layout/candidates'
import { createPlanner } from '../../../src-core/plan'

const flowers: Project = {
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [{ id: 'm', kind: 'measured', outline: 'petals', petals: 6, overTips: 80, overValleys: 60 }],
  layout: {
    ...{ kind: 'blanket', arrangement: 'offset-rows', motif: 'm', columns: 7, rows: 6 },
    ...{ alternateRows: 'oneMore', turn: 30, alternateTurn: 10 },
  },
}
const wish = { width: 700, height: 600 }

describe('M26 counts nearest a size', () => {
  const tryout = createPlanner().tryout(flowers)!
  const { turn, alternateTurn } = tryout.counts

  it.each(['same', 'oneFewer', 'oneMore'] as const)('are those of rows of the kind asked for: %s', (rows) => {
    const kind = { arrangement: 'offset-rows', alternateRows: rows } as const
    // Counts are a rotation, too, with rows of their own.
    const found = nearest(tryout, kind, tryout.counts, wish)
    expect(found.length).toBeGreaterThan(0)
    expect(new Set(found.map(({ counts }) => counts.alternateRows))).toEqual(new Set([rows]))
    expect(found).toEqual(nearest(tryout, kind, { turn, alternateTurn }, wish))
  })

  it('are those of the arrangement asked for', () => {
    for (const arrangement of ['straight-rows', 'rings'] as const) {
      const found = nearest(tryout, { arrangement, alternateRows: 'same' }, tryout.counts, wish)
      expect(new Set(found.map(({ counts }) => counts.arrangement))).toEqual(new Set([arrangement]))
    }
  })
})
