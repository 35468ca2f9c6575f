import { describe, expect, it } from 'vitest'
import type { Settings } from '../../../shared-types/bridge'
import { OUTLINE_KINDS } from '../../../shared-types/project'
import { planProject } from '../../../src-core/plan'
import { ownRoundsProject } from '../../../src-renderer/places/motif/rounds/own-rounds'
import type { Made } from '../../../src-renderer/start/own-motif'
import { ownProject } from '../../../src-renderer/start/own-motif'

const SETTINGS: Settings = {
  theme: 'light',
  units: 'metric',
  terms: 'US',
  hand: 'right',
  currency: 'EUR',
  paper: 'A4',
}
const MADE: readonly Made[] = [
  { kind: 'blanket', width: 1000, height: 1300 },
  { kind: 'garland', length: 2000 },
  { kind: 'garland', wall: 2100, swags: 3 },
  { kind: 'applique', width: 450, height: 400 },
]

describe('your own motif', () => {
  it.each(OUTLINE_KINDS)('%s: a whole project of every kind, without an error', (outline) => {
    for (const made of MADE) {
      const project = ownProject(SETTINGS, { outline, petals: 6, lead: 70, second: 40 }, made)
      expect(project.layout?.kind).toBe(made.kind)
      const plan = planProject(project)
      expect(plan.findings.filter(({ severity }) => severity === 'error')).toEqual([])
      expect(plan.motifs.length).toBeGreaterThan(0)
    }
  })

  it('hangs over the wall or along the cord that was wished for', () => {
    const own = { outline: 'petals', petals: 6, lead: 70, second: 40 } as const
    expect(planProject(ownProject(SETTINGS, own, MADE[1]!)).cord?.length).toBe(2000)
    expect(planProject(ownProject(SETTINGS, own, MADE[2]!)).swags).toMatchObject({ count: 3, width: 2100 })
    expect(planProject(ownProject(SETTINGS, own, MADE[3]!)).size).toMatchObject({ width: 450, height: 400 })
  })

  it('written rounds lead on to the same', () => {
    for (const made of MADE) {
      const project = ownRoundsProject(SETTINGS, made)
      expect(project.layout?.kind).toBe(made.kind)
      expect(project.motifs?.[0]).toMatchObject({ kind: 'rounds' })
    }
  })
})
