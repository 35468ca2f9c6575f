import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { crookedSteps } from '../../../src-core/layout/nearness'
import { rowLengths } from '../../../src-core/layout/standing'
import { proposeProject } from '../../../src-core/plan'

const WISH = { width: 1700, height: 850 }
const OUTLINE = { kind: 'triangle', size: WISH.width, height: WISH.height } as const
const shawl: Project = {
  ...{ format: 'petalyard-project', version: 1 },
  motifs: [{ id: 'a', kind: 'measured', outline: 'petals', petals: 6, overTips: 84, overValleys: 62 }],
  layout: {
    ...{ kind: 'blanket', motif: 'a', target: WISH },
    outlineShape: OUTLINE,
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
    const crooked = proposals.map(({ fit }) => crookedSteps(fit.lengths!, OUTLINE))
    expect(crooked).toEqual([...crooked].sort((a, b) => a - b))
  })

  it('have crooked edges where one step is longer than the others (the rows of a shawl, by hand)', () => {
    const rows = (lengths: readonly number[], points: 'down' | 'up' = 'down') =>
      crookedSteps(lengths, { kind: 'triangle', points })
    const stepped = [22, 20, 18, 16, 14, 12, 8, 6, 4, 2]
    expect(rows(stepped)).toBe(1)
    expect(rows([9, 8, 7, 6, 5, 4, 3, 2])).toBe(0)
    // The point may be a motif longer or shorter.
    expect(rows([9, 7, 5, 3, 2])).toBe(0)
    expect(rows([2, 3, 5, 7, 9], 'up')).toBe(0)
    expect(crookedSteps(stepped, undefined)).toBe(0)
    const motifs = stepped.flatMap((count, i) => Array.from({ length: count }, () => ({ row: i + 1 })))
    expect(rowLengths({ motifs })).toEqual(stepped)
  })
})
