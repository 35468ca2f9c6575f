import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { runs } from '../../runs'

const cobbles = JSON.parse(
  readFileSync(new URL('../../fixtures/cobbles.petalyard', import.meta.url), 'utf8'),
) as Project

const listing = (
  motifs: string[],
  by: 'cell' | 'row',
  arrangement: 'offset-rows' | 'straight-rows',
): Project => {
  const layout = cobbles.layout as BlanketLayout
  return { ...cobbles, layout: { ...layout, arrangement, alternate: { by, motifs } } }
}

describe('motifs that alternate', () => {
  it('are the same blanket however often the list is written', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('cobble', 'stone'), { minLength: 1, maxLength: 3 }),
        fc.integer({ min: 2, max: 5 }),
        fc.constantFrom('cell' as const, 'row' as const),
        fc.constantFrom('offset-rows' as const, 'straight-rows' as const),
        (rest, times, by, arrangement) => {
          const once = ['cobble', ...rest]
          const often = Array.from({ length: times }, () => once).flat()
          const plan = planProject(listing(often, by, arrangement))
          const expected = planProject(listing(once, by, arrangement))
          // The layout as it was typed is the one thing that differs.
          expect({ ...plan, settled: null }).toEqual({ ...expected, settled: null })
        },
      ),
      { numRuns: runs(12) },
    )
  })
})
