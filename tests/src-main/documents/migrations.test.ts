import { afterAll, describe, expect, it, vi } from 'vitest'
import { PROJECT_VERSION } from '../../../shared-types/project'
import { readProjectText } from '../../../src-main/documents'
import {
  checkMigrations,
  CURRENT_MIGRATIONS,
  migrate,
  MIGRATIONS,
} from '../../../src-main/documents/migrations'
import type { Migration } from '../../../src-main/documents/migrations'

/** Every real step is watched; at the end each must have been run by a test of this file. */
const watched = MIGRATIONS.map((migration) => ({ migration, change: vi.fn(migration.change) }))

describe('migrations', () => {
  afterAll(() => {
    const idle = watched.filter(({ change }) => change.mock.calls.length === 0)
    expect(idle.map(({ migration }) => migration.name)).toEqual([])
  })

  it('lead from version 1 to the current one without a gap', () => {
    expect(() => checkMigrations(CURRENT_MIGRATIONS)).not.toThrow()
    expect(MIGRATIONS).toHaveLength(PROJECT_VERSION - 1)
  })

  const steps: Migration[] = [
    { to: 2, name: 'call the name a title', change: ({ name, ...rest }) => ({ ...rest, title: name }) },
    {
      to: 3,
      name: 'add notes',
      change: (document) => ({ ...document, notes: `from ${String(document.title)}` }),
    },
  ]
  const set = { migrations: steps, current: 3 }
  const first = { format: 'petalyard-project', version: 1, name: 'Old throw', unknown: { kept: true } }

  it('run one after the other and keep what they do not know', () => {
    expect(migrate(first, 1, set)).toEqual({
      format: 'petalyard-project',
      version: 3,
      title: 'Old throw',
      notes: 'from Old throw',
      unknown: { kept: true },
    })
    expect(first).toHaveProperty('name')
  })

  it('start at the version of the file', () => {
    expect(migrate({ version: 2, title: 'Newer' }, 2, set)).toEqual({
      version: 3,
      title: 'Newer',
      notes: 'from Newer',
    })
    expect(migrate({ version: 3, title: 'Current' }, 3, set)).toEqual({ version: 3, title: 'Current' })
  })

  it('refuse a list with a gap or out of order', () => {
    expect(() => checkMigrations({ migrations: steps.slice(1), current: 3 })).toThrow('expected [2,3]')
    expect(() => checkMigrations({ migrations: [...steps].reverse(), current: 3 })).toThrow('[3,2]')
  })

  it('that fail are an outcome of opening, with both versions', () => {
    const failing: Migration = {
      to: 2,
      name: 'fails',
      change: () => {
        throw new Error('motif m1 has no rounds.')
      },
    }
    const outcome = readProjectText(JSON.stringify(first), { migrations: [failing], current: 2 })
    expect(outcome).toEqual({ kind: 'not-migrated', from: 1, to: 2, detail: 'motif m1 has no rounds.' })
  })

  it('count versions beyond the list as newer', () => {
    const outcome = readProjectText(JSON.stringify({ ...first, version: 4 }), set)
    expect(outcome).toEqual({ kind: 'newer', version: 4 })
  })
})
