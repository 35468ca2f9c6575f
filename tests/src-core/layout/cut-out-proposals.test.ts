import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { crookedSteps, rowLengths } from '../../../src-core/layout/proposals'
import { proposeProject } from '../../../src-core/plan'

const WISH = { width: 1700, height: 850 }
const shawl: Project = {
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [{ id: 'a', kind: 'measured', outline: 'petals', petals: 6, overTips: 84, overValleys: 62 }],
  layout: {
    ...{ kind: 'blanket', motif: 'a', target: WISH },
    outlineShape: { kind: 'triangle', size: WISH.width, height: WISH.height },
  },
}

describe('arrangements to start a shawl from', () => {
  it('show the shawl itself, and those with even edges come first', () => {
    const { proposals } = proposeProject(shawl, WISH)
    expect(proposals.length).toBeGreaterThan(0)
    for (const { piece, plan, project } of proposals) {
      expect(piece.plan).toBe(plan)
      expect(piece.project).toBe(project)
    }
    const crooked = proposals.map(crookedSteps)
    expect(crooked).toEqual([...crooked].sort((a, b) => a - b))
  })

  it('have crooked edges where one step is longer than the others (the rows of a shawl, by hand)', () => {
    const rows = (lengths: readonly number[], points: 'down' | 'up' = 'down') => ({
      project: {
        ...shawl,
        layout: { ...shawl.layout, outlineShape: { kind: 'triangle', points } },
      } as Project,
      plan: {
        motifs: lengths.flatMap((count, i) =>
          Array.from({ length: count }, (_, k) => ({ row: i + 1, column: k + 1 })),
        ),
      } as never,
    })
    const stepped = rows([22, 20, 18, 16, 14, 12, 8, 6, 4, 2])
    expect(rowLengths(stepped.plan)).toEqual([22, 20, 18, 16, 14, 12, 8, 6, 4, 2])
    expect(crookedSteps(stepped)).toBe(1)
    expect(crookedSteps(rows([9, 8, 7, 6, 5, 4, 3, 2]))).toBe(0)
    // The point may be a motif longer or shorter.
    expect(crookedSteps(rows([9, 7, 5, 3, 2]))).toBe(0)
    expect(crookedSteps(rows([2, 3, 5, 7, 9], 'up'))).toBe(0)
    expect(crookedSteps({ ...stepped, project: { ...shawl, layout: { kind: 'blanket' } } })).toBe(0)
  })
})
