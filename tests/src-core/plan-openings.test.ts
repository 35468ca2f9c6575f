/** What numbers wait for: openings are looked for only where something hangs on them. */
import { afterAll, expect, it, vi } from 'vitest'
import type { Project } from '../../shared-types/project'
import type * as Holes from '../../src-core/layout/holes'
import { openingsOf } from '../../src-core/layout/holes'
import { createPlanner } from '../../src-core/plan'
import { blanket, ROUND } from './layout/additions'

// Files share modules: this one gets its own, and leaves none behind.
vi.hoisted(() => vi.resetModules())
vi.mock('../../src-core/layout/holes', async (original) => {
  const holes = await original<typeof Holes>()
  return { ...holes, openingsOf: vi.fn(holes.openingsOf) }
})
afterAll(() => {
  vi.doUnmock('../../src-core/layout/holes')
  vi.resetModules()
})

it('tells numbers without looking for openings, unless fillers or a child hang on them', () => {
  const looked = vi.mocked(openingsOf)
  const times = (project: Project, ask: 'numbers' | 'plan') => {
    looked.mockClear()
    createPlanner()[ask](project)
    return looked.mock.calls.length
  }
  const small = { outline: 'round', across: 10 }
  const bare = blanket(ROUND, small, { columns: 3, rows: 3 })
  const filled = blanket(ROUND, small, { columns: 3, rows: 3, fillers: { motif: 'f' } })
  expect(times(bare, 'numbers')).toBe(0)
  expect(times(bare, 'plan')).toBe(1)
  expect(times(filled, 'numbers')).toBe(1)
  expect(times({ ...bare, forChild: true }, 'numbers')).toBe(1)
})
