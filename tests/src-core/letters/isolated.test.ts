import { describe, expect, it } from 'vitest'
import type { Project } from '../../../shared-types/project'
import { nameIsolator } from '../../../src-core/letters/isolated'

const project = {
  format: 'petalyard',
  title: 'Lap blanket',
  notes: 'הערות',
  yarns: [
    { id: 'a', name: 'כחול 5' },
    { id: 'b', name: 'כחול' },
    { id: 'c', name: 'Blue (sky)' },
    { id: 'd', name: 'ورد (٣)' },
  ],
} as unknown as Project

const shown = (text: string): string =>
  nameIsolator(project)!(text)
    .replace(/\u2068/g, '[')
    .replace(/\u2069/g, ']')

describe('names from right to left in a text of the window (UAX #9)', () => {
  it('are isolated as they are called, the longest first, and nothing else is', () => {
    expect(shown('כחול 5 petals, כחול eye, Blue (sky) edge')).toBe(
      '[כחול 5] petals, [כחול] eye, Blue (sky) edge',
    )
    expect(shown('Skeins of ورد (٣) on hand')).toBe('Skeins of [ورد (٣)] on hand')
    expect(shown('12 motifs')).toBe('12 motifs')
  })

  it('are left alone within other words, in notes of their own, and where they are isolated already', () => {
    expect(shown('כחולה 5')).toBe('כחולה 5')
    expect(shown('הערות 5')).toBe('הערות 5')
    const once = nameIsolator(project)!('כחול 5, 40 balls')
    expect(nameIsolator(project)!(once)).toBe(once)
  })

  it('cost nothing where a project has none', () => {
    expect(
      nameIsolator({ title: 'Lap blanket', yarns: [{ id: 'a', name: 'Blue' }] } as unknown as Project),
    ).toBeNull()
  })
})
